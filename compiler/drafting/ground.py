"""The size, grid and outline of a block, from its statements: the Frame that everything else is drawn on."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeVar

from ..diagnostics.source import Span
from ..geometry.edge import Edge, Point
from ..geometry.motion import move_by
from ..language import tree
from ..language.limits import LENGTH_MOST, OUTLINE_SIDES
from ..measure.angle import cosine_sine
from ..measure.tolerance import NEAR, Number, near
from ..words.messages import blocks as complain
from ..words.messages import seams as complain_seams
from .context import Bench, Context
from .curves import box_of, same_place
from .frame import Frame, grid_lines, rectangle
from .noding import pair_meetings
from .seams import path_edges, ring_area

ONE_CELL = (Fraction(1),)
S = TypeVar("S", bound=tree.Node)


@dataclass(frozen=True)
class Written:
    """The statements that a block may have once, as written; None where it has none."""

    finished: tree.Finished | None
    grid: tree.Grid | None
    outline: tree.OutlinePath | tree.OutlineRegular | None


def once(
    body: tuple[tree.Node, ...],
    kinds: type[S] | tuple[type[S], ...],
    word: str,
    bench: Bench,
    whole: str = "block",
) -> S | None:
    """The one statement of those kinds; every later one is complained of."""
    first: S | None = None
    for each in body:
        if isinstance(each, kinds):
            if first is None:
                first = each
            else:
                bench.say(complain.statement_twice(whole, word, each.span, first.span))
    return first


def lay_ground(block: tree.Block, bench: Bench) -> Frame | None:
    """The block's frame with its outline; None where a complaint stops it."""
    frame = _laid(block, bench)
    if frame is not None and max(frame.width, frame.height) > LENGTH_MOST:
        bench.say(complain.size_too_large(block.title.span, frame.width, frame.height, LENGTH_MOST))
        return None
    return frame


def _laid(block: tree.Block, bench: Bench) -> Frame | None:
    """The frame, of whatever size."""
    written = Written(
        once(block.body, tree.Finished, "finished", bench),
        once(block.body, tree.Grid, "grid", bench),
        once(block.body, (tree.OutlinePath, tree.OutlineRegular), "outline", bench),  # type: ignore[arg-type]
    )
    size = _size(written, bench)
    if isinstance(written.outline, tree.OutlineRegular):
        return _regular(written.outline, written, size, bench)
    if size is not None:
        frame = _frame(*size, written.grid)
        if written.outline is None:
            return frame.with_outline(rectangle(Fraction(0), Fraction(0), *size))
        return _outline_in_box(written.outline, frame, block, bench)
    if written.outline is not None:
        return _outline_alone(written.outline, written, block, bench)
    bench.say(complain.size_missing(block.title.span))
    return None


def _size(written: Written, bench: Bench) -> tuple[Number, Number] | None:
    """Width and height by `finished` or `grid ... of`."""
    sizes: list[tuple[Number, Number, Span]] = []
    if (finished := written.finished) is not None:
        sizes.append((finished.width.inches, (finished.height or finished.width).inches, finished.span))
    if (grid := written.grid) is not None and grid.cell_width is not None:
        cell_height = (grid.cell_height or grid.cell_width).inches
        sizes.append(
            (
                sum(grid.across.parts) * grid.cell_width.inches,  # one share is one cell
                sum(grid.down.parts) * cell_height,
                grid.span,
            )
        )
    if not sizes:
        return None
    (width, height, first), last = sizes[0], sizes[-1]
    if not (near(width, last[0]) and near(height, last[1])):
        bench.say(complain.size_disagrees(last[2], first, (width, height), last[:2]))
    return last[0], last[1]  # by the grid where they disagree: units are drafted for its cells


def _frame(
    width: Number,
    height: Number,
    grid: tree.Grid | None,
    corners: tuple[Point, ...] = (),
    start: Point | None = None,
) -> Frame:
    across = grid.across.parts if grid else ONE_CELL
    down = grid.down.parts if grid else ONE_CELL
    return Frame(
        width,
        height,
        grid_lines(across, width),
        grid_lines(down, height),
        None,
        corners,
        start,
        grid is not None,
    )


def _regular(
    outline: tree.OutlineRegular, written: Written, size: tuple[Number, Number] | None, bench: Bench
) -> Frame | None:
    """A regular outline: corner1 up, the rest clockwise; in the middle of `finished` where that is
    written."""
    sides = outline.sides.value
    assert sides >= 3, "the parser has counted the sides"
    turned = outline.turned.degrees if outline.turned else Fraction(0)
    half_angle = Fraction(180, sides)
    radius = outline.side.inches / (2 * cosine_sine(half_angle)[1])
    around = []
    for corner in range(sides):
        cosine, sine = cosine_sine(2 * half_angle * corner + turned)
        around.append(Point(radius * sine, -radius * cosine))
    left, top = min(p.x for p in around), min(p.y for p in around)
    width, height = max(p.x for p in around) - left, max(p.y for p in around) - top
    shift = move_by(-left, -top)
    if size is not None:
        if width > size[0] + NEAR or height > size[1] + NEAR:
            bench.say(complain_seams.outline_outside(outline.span, *size))
            return None
        shift = move_by((size[0] - width) / 2 - left, (size[1] - height) / 2 - top)
        width, height = size
    corners = tuple(shift(p) for p in around)
    frame = _frame(width, height, written.grid, corners)
    return frame.with_outline(tuple(Edge(p, corners[(at + 1) % sides]) for at, p in enumerate(corners)))


def _outline_in_box(outline: tree.OutlinePath, frame: Frame, block: tree.Block, bench: Bench) -> Frame | None:
    """An outline path inside the box of `finished`."""
    bench.frame = frame
    ring = _ring(outline, Context(bench, block.body), bench)
    if ring is None:
        return None
    left, top, right, bottom = box_of(ring)
    if left < -NEAR or top < -NEAR or right > frame.width + NEAR or bottom > frame.height + NEAR:
        bench.say(complain_seams.outline_outside(outline.span, frame.width, frame.height))
        return None
    return frame.with_outline(ring)


def _outline_alone(
    outline: tree.OutlinePath, written: Written, block: tree.Block, bench: Bench
) -> Frame | None:
    """An outline path drawn from `start`; its own box serves as the block's size."""
    zero = Fraction(0)
    loose = Frame(zero, zero, (zero, zero), (zero, zero), None, (), Point(zero, zero), False)
    for name in [each for each in loose.predefined if each != "start"]:
        del loose.predefined[name]
    bench.frame = loose
    ring = _ring(outline, Context(bench, block.body), bench)
    if ring is None:
        return None
    left, top, right, bottom = box_of(ring)
    shift = move_by(-left, -top)
    frame = _frame(right - left, bottom - top, written.grid, (), shift(Point(zero, zero)))
    return frame.with_outline(tuple(shift.edge(each) for each in ring))


def _ring(outline: tree.OutlinePath, here: Context, bench: Bench) -> tuple[Edge, ...] | None:
    """The outline's edges, closed and clockwise; None where a complaint was made."""
    said = len(bench.diagnostics)
    if len(outline.path.hops) > OUTLINE_SIDES:
        bench.say(complain.outline_too_long(outline.span, len(outline.path.hops), OUTLINE_SIDES))
        return None
    edges = [edge for edge, _ in path_edges(outline.path, here)]
    if len(bench.diagnostics) > said or not edges:
        return None
    if not same_place(edges[-1].end, edges[0].start):
        edges.append(Edge(edges[-1].end, edges[0].start))
    if _crosses_itself(edges):
        bench.say(complain_seams.outline_crosses_itself(outline.span))
        return None
    area = ring_area(tuple(edges))
    if abs(float(area)) <= NEAR:
        bench.say(complain.outline_single(outline.span))
        return None
    if area < 0:
        edges = [each.reversed() for each in reversed(edges)]
    return tuple(edges)


def _crosses_itself(edges: list[Edge]) -> bool:
    """Whether a ring meets itself anywhere but at its corners. Rings have few edges: all pairs are tried."""
    for at, one in enumerate(edges):
        for step, other in enumerate(edges[at + 1 :], at + 1):
            shared = [one.end] if step == at + 1 else []
            if at == 0 and step == len(edges) - 1:
                shared.append(one.start)
            for p in pair_meetings(one, other):
                if not any(same_place(p, corner) for corner in shared):
                    return True
    return False
