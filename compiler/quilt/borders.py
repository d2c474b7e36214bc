"""Borders, from the inside out: plain, butted or mitred; pieced from units; of a width or up to a size."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from ..drafting.context import Bench
from ..drafting.sketch import Unit
from ..geometry.edge import Point
from ..geometry.motion import Transform, move_by, turn_about
from ..language import quilt_tree, tree
from ..measure.tolerance import NEAR, Number, near
from ..sewing.order.row_tree import InRows, Way, line_of
from ..words.messages import quilts as complain
from .cells import posed_size
from .ground import Single, Top, box, polygon
from .laying import ORIGIN, put_cell

SIDES = ("top", "right", "bottom", "left")


def add_border(top: Top, border: quilt_tree.Border, units: Mapping[str, Unit | None], bench: Bench) -> None:
    """One border round everything so far."""
    widths = _widths(top, border, bench)
    if widths is None:
        return
    side, end = widths
    inner = (top.width, top.height)
    top.move(side, end)
    top.borders += 1
    top.width, top.height = inner[0] + 2 * side, inner[1] + 2 * end
    if border.fabric is not None:
        _plain(top, border, inner, side, end)
    else:
        _pieced(top, border, inner, side, units, bench)


def _widths(top: Top, border: quilt_tree.Border, bench: Bench) -> tuple[Number, Number] | None:
    """The finished width at the sides, and at top and bottom."""
    if border.width is not None:
        return border.width.inches, border.width.inches
    assert border.to is not None, "a border has a width or a size"
    want = (border.to.width.inches, (border.to.height or border.to.width).inches)
    side, end = (want[0] - top.width) / 2, (want[1] - top.height) / 2
    if side < -NEAR or end < -NEAR or (side <= NEAR and end <= NEAR):
        bench.say(complain.border_no_room(border.to.span, want, (top.width, top.height)))
        return None
    if not near(side, end) and (border.style == "mitred" or border.cells):
        bench.say(complain.border_unequal_mitre(border.span, side, end))
        return None
    return side, end


def _plain(
    top: Top, border: quilt_tree.Border, inner: tuple[Number, Number], side: Number, end: Number
) -> None:
    """Four strips, sides first; or four mitred ones."""
    w, h = top.width, top.height
    left, right, upper, lower = side, side + inner[0], end, end + inner[1]
    zero = Fraction(0)
    assert border.fabric is not None
    if border.style == "mitred":
        outer = [Point(zero, zero), Point(w, zero), Point(w, h), Point(zero, h)]
        inside = [Point(left, upper), Point(right, upper), Point(right, lower), Point(left, lower)]
        rings = [polygon([outer[k], outer[(k + 1) % 4], inside[(k + 1) % 4], inside[k]]) for k in range(4)]
        grains = [90.0, 0.0, 90.0, 0.0]
    else:
        rings = [box(zero, upper, left, lower), box(right, upper, w, lower)] if side > NEAR else []
        grains = [0.0, 0.0] if side > NEAR else []
        if end > NEAR:
            rings += [box(zero, zero, w, upper), box(zero, lower, w, h)]
            grains += [90.0, 90.0]
    strips = [
        top.put(
            Single(ring, border.fabric.text, "border", "border-strip", border.span, grain, border.unjoined)
        )
        for ring, grain in zip(rings, grains, strict=True)
    ]
    if border.style == "mitred":
        _mitre(top, *strips)
        return
    _frame(top, strips[:2] if side > NEAR else (), strips[-2:] if end > NEAR else ())


def _mitre(top: Top, above: int, right: int, below: int, left: int) -> None:
    """Sews mitred strips on, the longer ones first. Round a mitred border they are sewn to its strips before,
    and both are mitred as one."""
    ring = top.borders
    sides: list[tuple[Way, int, int]] = [("down", above, below), ("across", left, right)]
    if top.width < top.height:
        sides.reverse()
    rows, *within = [top.rows]
    if isinstance(rows, InRows) and rows.way == "mitred" and rows.ring == ring - 1:
        rows, *within = rows.parts
    inner = [part.parts if isinstance(part, InRows) else (part,) for part in within] or [()] * 4
    strips = [
        line_of(way, parts, ring)
        for at, (way, low, high) in enumerate(sides)
        for parts in ((low, *inner[2 * at]), (*inner[2 * at + 1], high))
    ]
    top.rows = InRows("mitred", (rows, *strips), ring)


def _frame(top: Top, sides: Sequence[InRows | int], ends: Sequence[InRows | int]) -> None:
    """Sews a border on: left and right sides first, then top and bottom; either may be none."""
    if sides:
        top.rows = InRows("across", (sides[0], top.rows, sides[1]), top.borders)
    if ends:
        top.rows = InRows("down", (ends[0], top.rows, ends[1]), top.borders)


def _pieced(
    top: Top,
    border: quilt_tree.Border,
    inner: tuple[Number, Number],
    wide: Number,
    units: Mapping[str, Unit | None],
    bench: Bench,
) -> None:
    """Units along each side, their faces (or their tops as drawn) outward.

    With corner blocks the sides are as long as what lies inside; without, the sides go first and the top and
    bottom lap them.
    """
    w, h = top.width, top.height
    lap = Fraction(0) if border.corners else wide
    lengths = {"top": inner[0] + 2 * lap, "right": inner[1], "bottom": inner[0] + 2 * lap, "left": inner[1]}
    starts = {
        "top": move_by(wide - lap, 0),
        "bottom": _about(w - wide + lap, h, 180),
        "right": _about(w, wide, 90),
        "left": _about(0, h - wide, 270),
    }
    sewn: dict[str, list[int]] = {}
    for side in SIDES:
        run = _run(border, lengths[side], wide, side, units, bench)
        if run is None:
            return
        x: Number = Fraction(0)
        sewn[side] = []
        for cell, length in run:
            along, room = starts[side].after(move_by(x, 0)), (length, wide)
            sewn[side].append(
                put_cell(top, _outward(cell, units), room, along, units, bench, "border", cell.span)
            )
            x = x + length
    above, below = sewn["top"], sewn["bottom"][::-1]
    if border.corners is not None:
        corners = [
            put_cell(top, border.corners, (wide, wide), at, units, bench, "border", border.corners.span)
            for at in (move_by(0, 0), _about(w, 0, 90), _about(w, h, 180), _about(0, h, 270))
        ]
        above = [corners[0], *above, corners[1]]
        below = [corners[3], *below, corners[2]]
    ring = top.borders
    sides = [line_of("down", side, ring, whole=True) for side in (sewn["left"][::-1], sewn["right"])]
    _frame(top, sides, [line_of("across", end, ring, whole=True) for end in (above, below)])


def _about(x: Number, y: Number, angle: int) -> Transform:
    """Carries a side drawn along the x axis, its outside up, to where it starts, going clockwise round."""
    return move_by(x, y).after(turn_about(ORIGIN, Fraction(angle)))


def _outward(cell: tree.Cell, units: Mapping[str, Unit | None]) -> tree.Cell:
    """The cell with its unit's `faces` side up, where it faces a side and no pose is written."""
    if isinstance(cell, tree.PlainCell) or cell.poses:
        return cell
    unit = units.get(cell.unit.text)
    if unit is None or unit.draft.faces is None or "-" in unit.draft.faces:
        return cell
    return tree.UnitCell(unit=cell.unit, poses=(tree.Facing(side="top", span=cell.span),), span=cell.span)


def _run(
    border: quilt_tree.Border,
    length: Number,
    wide: Number,
    side: str,
    units: Mapping[str, Unit | None],
    bench: Bench,
) -> list[tuple[tree.Cell, Number]] | None:
    """The cells that fill one side, with the length of each; None where they do not come out."""
    each: list[tuple[tree.Cell, Number]] = []
    for cell in border.cells:
        if isinstance(cell, tree.PlainCell):
            each.append((cell, wide))
            continue
        size = posed_size(_outward(cell, units), units, bench)
        if size is None:
            return None
        each.append((cell, size[0] / size[1] * wide))
    run: list[tuple[tree.Cell, Number]] = []
    done: Number = Fraction(0)
    while float(done) < float(length) - NEAR:
        cell, step = each[len(run) % len(each)]
        if float(done + step) > float(length) + NEAR:
            bench.say(
                complain.border_unfit(
                    border.span, side, length, (len(run), done), (len(run) + 1, done + step)
                )
            )
            return None
        run.append((cell, step))
        done = done + step
    return run
