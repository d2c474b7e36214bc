"""What settings and borders lay: a cell's worth, or a piece of cloth."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from ..cutting.needs import Part, SingleKind
from ..diagnostics.source import Span
from ..drafting.context import Bench
from ..drafting.placing import fit_unit
from ..drafting.sketch import Unit
from ..geometry.edge import Edge, Point
from ..geometry.motion import IDENTITY, Transform
from ..language import tree
from ..measure.tolerance import near
from ..sewing.order.row_tree import InRows
from .cells import Size, posed_size
from .ground import Laid, Single, Top, box

ORIGIN = Point(Fraction(0), Fraction(0))


FewEnough = Callable[[Sequence[tree.Cell]], bool]
"""Whether a set's cells have no more pieces than a top may have; complains of more."""


def put_cell(
    top: Top,
    cell: tree.Cell,
    size: Size,
    to_quilt: Transform,
    units: Mapping[str, Unit | None],
    bench: Bench,
    part: Part,
    origin: Span,
) -> int:
    """One cell's worth into a box of that size whose top left `to_quilt` carries into the quilt: its index;
    -1 where that was complained of."""
    if isinstance(cell, tree.PlainCell):
        outline = tuple(to_quilt.edge(edge) for edge in box(ORIGIN.x, ORIGIN.y, *size))
        what: SingleKind = "plain-square" if near(*size) else "plain-rectangle"
        grain = to_quilt.turned % 90
        return top.put(Single(outline, cell.role.text, part, what, origin, grain))
    unit = units.get(cell.unit.text)
    natural = posed_size(cell, units, bench)
    if unit is None or natural is None:
        return -1
    fitted = fit_unit(cell, unit.draft, size, bench)
    if fitted is None:
        return -1
    across = max(fitted.a, -fitted.a) + max(fitted.c, -fitted.c)  # one of the two is nothing
    down = max(fitted.b, -fitted.b) + max(fitted.d, -fitted.d)
    width, height = unit.draft.width * across, unit.draft.height * down
    shrink = Transform(a=1 / across, d=1 / down) if (across, down) != (1, 1) else IDENTITY
    return top.put(Laid(unit, width, height, to_quilt.after(fitted.after(shrink)), part, origin))


def centre_of(rows: InRows | int) -> InRows | int:
    """The rows of a whole centre."""
    return rows if isinstance(rows, int) else replace(rows, joins=True, whole=True)


def put_cloth(
    top: Top,
    outline: tuple[Edge, ...],
    word: str,
    part: Part,
    what: SingleKind,
    origin: Span,
    grain: float = 0.0,
) -> int:
    return top.put(Single(outline, word, part, what, origin, grain))
