"""Units and cells into the grid: rows, places, alternation and rounds; how each unit is turned and scaled."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Container, Iterator, Mapping

from ..diagnostics.source import Span
from ..geometry.edge import Edge, Point
from ..geometry.motion import IDENTITY, Transform, move_by, stretch, turn_about
from ..language import tree
from ..measure.tolerance import NEAR, Number, near
from ..words.messages import units as complain
from ..words.messages.seams import copies_outside
from .context import Bench, Context
from .frame import Frame, rectangle
from .model import Draft
from .points import place_of
from .sketch import Placed, Sketch, Unit

Box = tuple[Number, Number, Number, Number]  # left, top, right, bottom

HEADINGS = {
    "top": 0,
    "top-right": 45,
    "right": 90,
    "bottom-right": 135,
    "bottom": 180,
    "bottom-left": 225,
    "left": 270,
    "top-left": 315,
}
ORIGIN = Point(0, 0)
MIRROR = Transform(a=-1)


def place_row(row: tree.Row, here: Context, units: Mapping[str, Unit | None], sketch: Sketch) -> None:
    """Fills the next row of the grid from the left."""
    frame = here.bench.frame
    wanted, down = len(frame.across) - 1, len(frame.down) - 1
    cells = [item.cell for item in row.items for _ in range(item.count.value if item.count else 1)]
    if sketch.rows >= down:
        here.bench.say(complain.rows_too_many(row, down))
        return
    top, bottom = frame.down[sketch.rows], frame.down[sketch.rows + 1]
    sketch.rows += 1
    if len(cells) != wanted:
        widths = [right - left for left, right in zip(frame.across, frame.across[1:], strict=False)]
        if all(near(each, widths[0]) for each in widths):
            here.bench.say(complain.row_wrong_count(row, len(cells), wanted, widths[0]))
        else:
            here.bench.say(complain.row_uneven_count(row, len(cells), wanted))
        return
    for column, cell in enumerate(cells):
        _put(cell, (frame.across[column], top, frame.across[column + 1], bottom), here, units, sketch)


def place_in_regions(
    place: tree.Place, here: Context, units: Mapping[str, Unit | None], sketch: Sketch
) -> None:
    """Puts one cell's worth into each region."""
    for region in place.regions:
        box = region_box(region, here)
        if box is not None:
            _put(place.cell, box, here, units, sketch, region.span)


def alternate_cells(
    alternate: tree.Alternate, here: Context, units: Mapping[str, Unit | None], sketch: Sketch
) -> None:
    """Fills the cells that nothing else covers, by (across + down) mod n."""
    frame = here.bench.frame
    covered = {cell for each in sketch.placed for cell in _cells_under(each.box, frame)}
    filled: set[int] = set()
    for row in range(len(frame.down) - 1):
        for column in range(len(frame.across) - 1):
            if (row, column) in covered:
                continue
            box = (frame.across[column], frame.down[row], frame.across[column + 1], frame.down[row + 1])
            number = (row + column) % len(alternate.cells)
            filled.add(number)
            _put(alternate.cells[number], box, here, units, sketch)
    say_idle(alternate, filled, here.bench)


def say_idle(alternate: tree.Alternate, filled: Container[int], bench: Bench) -> None:
    """Remarks on what stands in an `alternate` and fills no cell. `filled`: the numbers of what does."""
    seen = [cell for number, cell in enumerate(alternate.cells) if number in filled]
    for cell in alternate.cells:
        if cell not in seen and not bench.failed:
            bench.say(complain.alternate_idle(cell))


def _cells_under(box: Box, frame: Frame) -> Iterator[tuple[int, int]]:
    """Row and column of each cell whose middle lies under a box."""
    for row in range(max(bisect_right(frame.down, box[1]) - 1, 0), len(frame.down) - 1):
        if frame.down[row] >= box[3]:
            return
        for column in range(max(bisect_right(frame.across, box[0]) - 1, 0), len(frame.across) - 1):
            if frame.across[column] >= box[2]:
                break
            x = (frame.across[column] + frame.across[column + 1]) / 2
            y = (frame.down[row] + frame.down[row + 1]) / 2
            if box[0] < x < box[2] and box[1] < y < box[3]:
                yield row, column


def place_rounds(rounds: tree.Rounds, here: Context, sketch: Sketch) -> None:
    """Strips round a rectangle: top, right, bottom, left, each lapping the last unless its corners say
    else."""
    box = region_box(rounds.region, here)
    if len(rounds.roles) > 4:
        here.bench.say(complain.rounds_roles(rounds))
        return
    if box is None:
        return
    for _ in range(rounds.count.value):
        strips, box = _strips(box, rounds.width.inches, rounds.corners)
        for at, corners in enumerate(strips):
            points = [here.to_block(p) for p in corners]
            outline = tuple(Edge(p, points[(k + 1) % 4]) for k, p in enumerate(points))
            role = rounds.roles[at % len(rounds.roles)].text
            _add(
                Placed(rounds.span, _clockwise(outline, here), role, copy=here.copy, turn=_turn_span(here)),
                here,
                sketch,
            )


def _strips(box: Box, wide: Number, corners: str | None) -> tuple[list[list[Point]], Box]:
    """The four strips of one round as corners clockwise, and the box with them round it."""
    left, top, right, bottom = box
    outer = (left - wide, top - wide, right + wide, bottom + wide)
    if corners == "mitred":
        inner_corners = [Point(left, top), Point(right, top), Point(right, bottom), Point(left, bottom)]
        outer_corners = [
            Point(outer[0], outer[1]),
            Point(outer[2], outer[1]),
            Point(outer[2], outer[3]),
            Point(outer[0], outer[3]),
        ]
        return [
            [outer_corners[k], outer_corners[(k + 1) % 4], inner_corners[(k + 1) % 4], inner_corners[k]]
            for k in range(4)
        ], outer
    if corners == "butted":
        boxes: list[Box] = [
            (outer[0], outer[1], outer[2], top),
            (right, top, outer[2], bottom),
            (outer[0], bottom, outer[2], outer[3]),
            (outer[0], top, left, bottom),
        ]
    else:
        boxes = [
            (left, outer[1], right, top),
            (right, outer[1], outer[2], bottom),
            (left, bottom, outer[2], outer[3]),
            (outer[0], outer[1], left, outer[3]),
        ]
    return [[edge.start for edge in rectangle(*each)] for each in boxes], outer


def region_box(region: tree.Region, here: Context) -> Box | None:
    """The box between two grid points; None where a complaint was made."""
    first, second = place_of(region.first, here), place_of(region.second, here)
    if first is None or second is None:
        return None
    box = (min(first.x, second.x), min(first.y, second.y), max(first.x, second.x), max(first.y, second.y))
    if near(box[0], box[2]) or near(box[1], box[3]):
        here.bench.say(complain.region_not_cells(region))
        return None
    return box


def _put(
    cell: tree.Cell,
    box: Box,
    here: Context,
    units: Mapping[str, Unit | None],
    sketch: Sketch,
    origin: Span | None = None,
) -> None:
    """One cell into one box of this body's places."""
    span = origin or cell.span
    if isinstance(cell, tree.PlainCell):
        outline = tuple(here.to_block.edge(edge) for edge in rectangle(*box))
        _add(
            Placed(span, _clockwise(outline, here), cell.role.text, copy=here.copy, turn=_turn_span(here)),
            here,
            sketch,
        )
        return
    if cell.unit.text not in units:
        here.bench.say(complain.unit_unknown(cell.unit, tuple(units)))
        return
    unit = units[cell.unit.text]
    if unit is None:
        return
    size = (box[2] - box[0], box[3] - box[1])
    if (cell.span, size) not in sketch.fitted:
        sketch.fitted[cell.span, size] = fit_unit(cell, unit.draft, size, here.bench)
    fitted = sketch.fitted[cell.span, size]
    if fitted is None:
        return
    fitted = fitted.shifted(box[0], box[1])
    transform = fitted if here.to_block is IDENTITY else here.to_block.after(fitted)
    outline = _clockwise(tuple(transform.edge(edge) for edge in unit.draft.outline), here, transform.mirrors)
    _add(
        Placed(span, outline, None, unit, transform, written_poses(cell), here.copy, _turn_span(here)),
        here,
        sketch,
    )


def _add(placed: Placed, here: Context, sketch: Sketch) -> None:
    frame = here.bench.frame
    left, top, right, bottom = placed.box
    if left >= -NEAR and top >= -NEAR and right <= frame.width + NEAR and bottom <= frame.height + NEAR:
        sketch.placed.append(placed)
        return
    far = max(
        (Point(left, top), Point(right, bottom)),
        key=lambda p: max(-float(p.x), -float(p.y), float(p.x - frame.width), float(p.y - frame.height)),
    )
    size = (frame.width, frame.height)
    if placed.copy and placed.turn is not None:
        here.bench.say(
            copies_outside(
                "unit", placed.origin, placed.turn, far, size, placed.copy, placed.turn in here.bench.repeats
            )
        )
    else:
        here.bench.say(complain.unit_outside(placed.origin, far, size))


def _clockwise(outline: tuple[Edge, ...], here: Context, mirrored: bool | None = None) -> tuple[Edge, ...]:
    if here.to_block.mirrors if mirrored is None else mirrored:
        return tuple(edge.reversed() for edge in reversed(outline))
    return outline


def _turn_span(here: Context) -> Span | None:
    return here.statement.span if here.statement else None


def pose_of(cell: tree.UnitCell, draft: Draft, bench: Bench) -> Transform | None:
    """How the unit lies, about the origin: its poses from left to right; None where a complaint was made."""
    lies = IDENTITY
    faces: Number | None = HEADINGS[draft.faces] if draft.faces else None
    for pose in cell.poses:
        match pose:
            case tree.Mirrored():
                lies = MIRROR.after(lies)
                faces = None if faces is None else -faces % 360
            case tree.Turned() | tree.Facing():
                angle = _turn_of(pose, faces, draft, bench)
                if angle is None:
                    return None
                lies = turn_about(ORIGIN, angle).after(lies)
                faces = None if faces is None else (faces + angle) % 360
            case tree.Stretched():
                pass  # size is fitted later
    return lies


def _turn_of(
    pose: tree.Turned | tree.Facing, faces: Number | None, draft: Draft, bench: Bench
) -> Number | None:
    """Degrees that a pose turns a unit which faces that heading now; None where a complaint was made."""
    if isinstance(pose, tree.Turned):
        assert pose.angle.degrees % 90 == 0, "the parser has looked at the angle"
        return pose.angle.degrees
    if draft.faces is None or faces is None:
        bench.say(complain.faces_missing(pose, draft.title))
        return None
    angle = HEADINGS[pose.side] - faces
    if angle % 90:
        bench.say(complain.facing_corner(pose, draft.title, draft.faces))
        return None
    return angle


def fit_unit(
    cell: tree.UnitCell, draft: Draft, size: tuple[Number, Number], bench: Bench
) -> Transform | None:
    """The unit, posed, into a box of that size at the origin: scaled the same both ways, or stretched where
    the cell says so; None where a complaint was made."""
    posed = pose_of(cell, draft, bench)
    if posed is None:
        return None
    corners = [
        posed(p)
        for p in (ORIGIN, Point(draft.width, 0), Point(0, draft.height), Point(draft.width, draft.height))
    ]
    left, top = min(p.x for p in corners), min(p.y for p in corners)
    width, height = max(p.x for p in corners) - left, max(p.y for p in corners) - top
    across, down = size[0] / width, size[1] / height
    if abs(float(across - down)) * max(float(width), float(height)) > NEAR:
        if not any(isinstance(pose, tree.Stretched) for pose in cell.poses):
            bench.say(complain.proportions_differ(cell, (width, height), size))
            return None
        if any(side.edge.arc is not None for piece in draft.pieces for side in piece.ring):
            bench.say(complain.stretch_bends(cell))
            return None
    else:
        down = across  # the same scale, to the last bit
    return stretch(across, down).after(move_by(-left, -top)).after(posed)


def written_poses(cell: tree.UnitCell) -> tuple[str, ...]:
    """Each pose in the language's words."""
    words = []
    for pose in cell.poses:
        match pose:
            case tree.Turned():
                words.append(f"turned {float(pose.angle.degrees):g}deg")
            case tree.Facing():
                words.append(f"facing {pose.side}")
            case tree.Mirrored():
                words.append("mirrored")
            case tree.Stretched():
                words.append("stretched")
    return tuple(words)
