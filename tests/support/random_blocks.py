"""Random blocks: seams and arcs on grid points, in turns and mirrors, and rows of posed units.

A block is kept as data, so that a test can turn it, mirror it, double it, spell it in another unit or write
its
statements in another order, and draft it again. Every seam starts and ends on the outline or closes on
itself,
so nothing hangs; what may still be complained of is a sliver, or a name that clashes.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

from hypothesis import strategies as st
from piecewright.words.numbers import number_text

Steps = tuple[Fraction, Fraction]  # grid steps right and down from the top left
Move = Callable[[Steps], Steps]

EXCUSED = frozenset({"piece-sliver", "piece-clash", "piece-fabrics-clash", "piece-ambiguous"})
"""The complaints that a random block may meet with."""


@dataclass(frozen=True)
class Seam:
    """`kind` is line (all its points), arc (start, end, centre) or circle (centre; radius in inches)."""

    kind: str
    points: tuple[Steps, ...]
    radius: Fraction = Fraction(0)


@dataclass(frozen=True)
class Group:
    """Seams drawn once, by turns (`turn 4`), by a part turn (`turn 2 of 90deg`), or mirrored in an axis."""

    seams: tuple[Seam, ...]
    count: int = 1
    step: int | None = None
    axis: tuple[Steps, Steps] | None = None


@dataclass(frozen=True)
class RandomBlock:
    """A square block of `cells` x `cells`, each of `cell` inches."""

    cells: int
    cell: Fraction
    groups: tuple[Group, ...]
    names: tuple[tuple[str, Steps, str], ...] = ()

    def text(self, *, unit: str = "in", scale: int = 1, extra: str = "", order: tuple[int, ...] = ()) -> str:
        """The block as the language writes it."""
        size = length(self.cells * self.cell * scale, unit)
        said = [group_text(group, unit, scale) for group in self.groups]
        said += [f"piece {name} at {place(at)} in {role}" for name, at, role in self.names]
        said = [f"finished {size}", f"grid {self.cells} x {self.cells}", *said]
        if order:
            said = [said[at] for at in order]
        body = "\n  ".join([*said, extra] if extra else said)
        return f'edition 1\nblock "Random" {{\n  {body}\n}}\n'

    @property
    def statements(self) -> int:
        """How many statements the text has."""
        return 2 + len(self.groups) + len(self.names)

    def moved(self, move: Move) -> RandomBlock:
        """The block with every place moved."""
        return replace(
            self,
            groups=tuple(_moved(group, move) for group in self.groups),
            names=tuple((name, move(at), role) for name, at, role in self.names),
        )

    def turned(self) -> RandomBlock:
        """The block a quarter turn clockwise."""
        return self.moved(lambda at: (self.cells - at[1], at[0]))

    def mirrored(self) -> RandomBlock:
        """The block with left and right changed about."""
        block = self.moved(lambda at: (self.cells - at[0], at[1]))
        return replace(
            block, groups=tuple(replace(group, step=group.step and -group.step) for group in block.groups)
        )

    @property
    def curved(self) -> bool:
        """Whether any seam is an arc or a circle."""
        return any(seam.kind != "line" for group in self.groups for seam in group.seams)


def _moved(group: Group, move: Move) -> Group:
    seams = tuple(replace(seam, points=tuple(move(at) for at in seam.points)) for seam in group.seams)
    axis = group.axis and (move(group.axis[0]), move(group.axis[1]))
    return replace(group, seams=seams, axis=axis)


def length(inches: Fraction, unit: str) -> str:
    """A length, exactly, in inches or centimetres."""
    if unit == "cm":
        inches = inches * Fraction(254, 100)
    whole, rest = divmod(inches, 1)
    parts = [str(whole)] if whole else []
    if rest or not whole:
        parts.append(f"{rest.numerator}/{rest.denominator}" if rest else "0")
    return " ".join(parts) + unit


def place(at: Steps) -> str:
    """Grid steps as written."""
    return f"({_exact(at[0])}, {_exact(at[1])})"


def _exact(value: Fraction) -> str:
    return str(value) if value.denominator == 1 else f"{value.numerator}/{value.denominator}"


def group_text(group: Group, unit: str, scale: int) -> str:
    """A group as written."""
    seams = "  ".join(seam_text(seam, unit, scale) for seam in group.seams)
    if group.axis:
        return f"mirror in {place(group.axis[0])}--{place(group.axis[1])} {{ {seams} }}"
    if group.count == 1:
        return seams
    part = f" of {group.step}deg" if group.step else ""
    return f"turn {group.count}{part} about center {{ {seams} }}"


def seam_text(seam: Seam, unit: str, scale: int) -> str:
    """A seam as written."""
    points = [place(at) for at in seam.points]
    if seam.kind == "circle":
        return f"seam circle around {points[0]} radius {length(seam.radius * scale, unit)}"
    if seam.kind == "arc":
        return f"seam {points[0]} ~~ {points[1]} around {points[2]}"
    return f"seam {' -- '.join(points)}"


# ---- strategies -------------------------------------------------------------------------------------------


@st.composite
def random_blocks(draw: st.DrawFn, curves: bool = True, names: bool = True) -> RandomBlock:
    """Blocks of two to five cells across with up to four groups of seams."""
    cells = draw(st.integers(2, 5))
    cell = draw(st.sampled_from([Fraction(1), Fraction(3, 2), Fraction(2), Fraction(7, 4)]))
    groups = draw(st.lists(_groups(cells, cell, curves), min_size=1, max_size=4))
    spots = st.builds(
        lambda x, y: (x + Fraction(37, 100), y + Fraction(41, 100)),
        st.integers(0, cells - 1),
        st.integers(0, cells - 1),
    )
    places = draw(st.lists(spots, max_size=2, unique=True)) if names else []
    roles = st.sampled_from(["dark", "pale"])
    return RandomBlock(
        cells, cell, tuple(groups), tuple((f"leaf{at}", spot, draw(roles)) for at, spot in enumerate(places))
    )


@st.composite
def _groups(draw: st.DrawFn, cells: int, cell: Fraction, curves: bool) -> Group:
    seams = tuple(draw(st.lists(_seams(cells, cell, curves), min_size=1, max_size=2)))
    kind = draw(st.sampled_from(["once", "once", "turn", "part", "mirror"]))
    half, zero, full = Fraction(cells, 2), Fraction(0), Fraction(cells)
    if kind == "turn":
        return Group(seams, draw(st.sampled_from([2, 4])))
    if kind == "part":
        return Group(seams, draw(st.integers(2, 4)), 90)
    if kind == "mirror":
        axes = [((half, zero), (half, full)), ((zero, half), (full, half)), ((zero, zero), (full, full))]
        return Group(seams, axis=draw(st.sampled_from(axes)))
    return Group(seams)


def _seams(cells: int, cell: Fraction, curves: bool) -> st.SearchStrategy[Seam]:
    kinds = [_lines(cells)]
    if curves:
        kinds += [_corner_arcs(cells), _circles(cells, cell)]
    return st.one_of(*kinds)


@st.composite
def _lines(draw: st.DrawFn, cells: int) -> Seam:
    """From the outline to the outline, straight or bent at an inner grid point."""
    first, last = draw(st.lists(st.integers(0, 4 * cells - 1), min_size=2, max_size=2, unique=True))
    points = [_on_outline(cells, first)]
    if cells > 1 and draw(st.booleans()):
        points.append((Fraction(draw(st.integers(1, cells - 1))), Fraction(draw(st.integers(1, cells - 1)))))
    return Seam("line", (*points, _on_outline(cells, last)))


def _on_outline(cells: int, at: int) -> Steps:
    side, step = divmod(at, cells)
    places = [(step, 0), (cells, step), (cells - step, cells), (0, cells - step)]
    return Fraction(places[side][0]), Fraction(places[side][1])


@st.composite
def _corner_arcs(draw: st.DrawFn, cells: int) -> Seam:
    """A quarter circle about a corner of the block, or half a fan about a point of its side."""
    reach = draw(st.integers(1, cells))
    corner = draw(st.sampled_from([(0, 0), (cells, 0), (cells, cells), (0, cells)]))
    center = (Fraction(corner[0]), Fraction(corner[1]))
    across = center[0] + (reach if corner[0] == 0 else -reach)
    down = center[1] + (reach if corner[1] == 0 else -reach)
    return Seam("arc", ((across, center[1]), (center[0], down), center))


@st.composite
def _circles(draw: st.DrawFn, cells: int, cell: Fraction) -> Seam:
    """A circle about an inner grid point that stays inside."""
    center = (draw(st.integers(1, cells - 1)), draw(st.integers(1, cells - 1)))
    room = min(center[0], center[1], cells - center[0], cells - center[1])
    share = draw(st.sampled_from([Fraction(1, 2), Fraction(3, 4), Fraction(1)]))
    return Seam("circle", ((Fraction(center[0]), Fraction(center[1])),), room * share * cell)


# ---- rows of units ----------------------------------------------------------------------------------------

UNITS = """edition 1
block "Pair" { finished 2in  faces top-left
  seam top-right -- bottom-left
  piece half at top-left in dark
  piece rest at bottom-right in pale }
block "Fan" { finished 2in  faces top-left
  seam top-right ~~ bottom-left around top-left
  piece fan at top-left in dark
  piece ground at bottom-right in pale }
block "Kite" { finished 2in
  point toe = 1/2in from top-right to top-left
  seam bottom-left -- toe
  seam bottom-left -- right
  piece kite at top-right in red }
"""


@dataclass(frozen=True)
class RandomRows:
    """Rows of cells; a cell is a unit with a quarter turn and whether it is then mirrored, or plain
    (None)."""

    rows: tuple[tuple[tuple[str, int, bool] | None, ...], ...]

    def text(self) -> str:
        """The rows as the language writes them."""
        size = f"grid {len(self.rows[0])} x {len(self.rows)} of 2in"
        used = dict.fromkeys(cell[0] for row in self.rows for cell in row if cell)
        uses = [f'use "{unit.capitalize()}" as {unit}' for unit in used]
        rows = ["row " + ", ".join(_cell_text(cell) for cell in row) for row in self.rows]
        return 'edition 1\nblock "Rows" {\n  ' + "\n  ".join([size, *uses, *rows]) + "\n}\n"

    def mirrored(self) -> RandomRows:
        """Left and right changed about."""
        return RandomRows(
            tuple(
                tuple(cell and (cell[0], cell[1], not cell[2]) for cell in reversed(row)) for row in self.rows
            )
        )

    def turned(self) -> RandomRows:
        """A quarter turn clockwise: columns from the bottom up become rows."""
        across, down = len(self.rows[0]), len(self.rows)
        return RandomRows(
            tuple(
                tuple(_turned(self.rows[down - 1 - at][column]) for at in range(down))
                for column in range(across)
            )
        )


def _turned(cell: tuple[str, int, bool] | None) -> tuple[str, int, bool] | None:
    """A turn after mirroring is the turn the other way before it."""
    return cell and (cell[0], (cell[1] + (3 if cell[2] else 1)) % 4, cell[2])


def _cell_text(cell: tuple[str, int, bool] | None) -> str:
    if cell is None:
        return "plain pale"
    turn = f" turned {number_text(90 * cell[1])}deg" if cell[1] else ""
    return cell[0] + turn + (" mirrored" if cell[2] else "")


@st.composite
def random_rows(draw: st.DrawFn) -> RandomRows:
    """One to four rows of one to four cells."""
    cells = st.one_of(
        st.none(), st.tuples(st.sampled_from(["pair", "fan", "kite"]), st.integers(0, 3), st.booleans())
    )
    across = draw(st.integers(1, 4))
    rows = draw(st.lists(st.tuples(*[cells] * across), min_size=1, max_size=4))
    return RandomRows(tuple(rows))
