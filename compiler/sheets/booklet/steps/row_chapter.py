"""The steps of a quilt's top: rows, centre and borders, a card for each; and the key to its parts."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from ....cutting.plan_model import CuttingPlan
from ....drafting.model import Draft
from ....geometry.edge import Edge
from ....geometry.motion import move_by, turn_about
from ....measure.tolerance import near
from ....quilt.assembly_model import Kind, QuiltAssembly, Row, Stage
from ....quilt.model import Quilt
from ....sewing.model import Copy, Size, Unit
from ....sewing.pressing.copies import by_rows
from ....sewing.pressing.pressing_model import Pressing, Toward
from ....words.phrases import count_of, one_of
from ....words.work.pressing import ROWS, pressing_words, ways_told
from ....words.work.proofs import proof_text
from ...quilts.drawing import quilt_fills
from ...quilts.flow import Column
from ...quilts.flow import Row as TableRow
from ...quilts.tables import CutRow, box_of, fabric_cuts, fabric_titles, measured_shape
from ...quilts.words import about, size_words
from ..block_cuts import ORIGIN
from ..content import Card, Cards, Chapter, Paragraph, Part, Picture, Section, Table
from .row_picture import Pressed, RowPart, RowScene, Shown, draw_row
from .step_picture import WIDE

TITLE: Final = "Steps: the quilt"

COLUMNS: Final = (
    Column("name", 28.0, bold=True),
    Column("count", 28.0, "end", bold=True),
    Column("what", 100.0),
    Column("fabric", 0.0),
    Column("key", 18.0),
    Column("sewn, or cut", 104.0),
    Column("finished", 92.0),
)

READ: Final = (
    "First or left, the parts as they lie, with their names from the table; cloth is shaded. Then the row "
    "sewn together: small arrows show which way the seams are pressed. Units are named by the step that "
    "makes them. A key is the letter of a cut in the cutting chart."
)

OVERSIZE: Final = Fraction(1, 64)
"""Inches that a piece is cut larger than it needs be: by more, what it is sewn into is trimmed."""


def row_chapter(quilt: Quilt, plan: CuttingPlan, made: QuiltAssembly) -> Chapter:
    """The chapter."""
    return Chapter(TITLE, tuple(_parts(quilt, plan, made)))


def _parts(quilt: Quilt, plan: CuttingPlan, made: QuiltAssembly) -> Iterator[Part]:
    cuts = kind_cuts(quilt, plan, made.kinds)
    yield Paragraph(f"Checked by sewing it from the printed numbers: {proof_text(made.proof)}.", strong=True)
    yield Table(COLUMNS, tuple(_kind_rows(quilt, made.kinds, cuts, plan.ruler_step)), "Parts of the top")
    if not made.stages:
        yield Paragraph("The top is one block: there is nothing to sew round it.")
        return
    yield Paragraph(READ)
    ways, trimmed = _Ways(made), _trimmed_rows(made, cuts)
    staged = [
        tuple(_card(quilt, made, row, ways, row.makes in trimmed) for row in stage.rows)
        for stage in made.stages
    ]
    pressed = [row for stage in made.stages for row in stage.rows if row.way != "mitred"]
    if any(by_rows(made.top, *_pressed(row, ways)) for row in pressed):
        yield Paragraph(ROWS.format("top"))
    for stage, cards in zip(made.stages, staged, strict=True):
        yield Section(stage.title)
        yield from map(Paragraph, _laid_words(stage, cuts))
        yield Cards(cards)
    yield Section("Pressing")
    yield Paragraph(pressing_words(made.pressing))


def kind_cuts(quilt: Quilt, plan: CuttingPlan, kinds: Sequence[Kind]) -> dict[str, CutRow]:
    """The chart's row for each kind of cloth, by the kind's label."""
    rows = [row for cuts in fabric_cuts(quilt, plan) for row in cuts.rows if row.need is not None]
    found: dict[str, CutRow] = {}
    for kind in kinds:
        size = sorted((kind.finished.width, kind.finished.height))
        for row in rows:
            need = row.need
            assert need is not None
            same = (need.fabric, need.part, need.what) == (kind.fabric, kind.part, kind.what)
            if same and all(map(near, box_of(need), size)):
                found[kind.label] = row
    return found


def _trimmed_rows(made: QuiltAssembly, cuts: Mapping[str, CutRow]) -> set[str]:
    """The units that are trimmed to size once they are rectangles, for something in them is cut too large."""
    large = {label for label, row in cuts.items() if row.cut.excess > OVERSIZE}
    trimmed: set[str] = set()
    for row in (row for stage in made.stages for row in stage.rows):
        if large.isdisjoint(row.parts) or row.way == "mitred":
            continue
        (trimmed if made.assembly.units[int(row.makes[1:]) - 1].rectangle else large).add(row.makes)
    return trimmed


def _cut_size(row: CutRow, step: Fraction) -> str:
    """`4 1/2in x 46in`; `square 9 3/4in, cut into 4`."""
    cut = row.cut
    if cut.kind == "template":
        return "round the template"
    size = size_words(cut, step)
    return f"{measured_shape(cut)} {size}, cut into {cut.yields}" if cut.yields > 1 else size


def _kind_rows(
    quilt: Quilt, kinds: Sequence[Kind], cuts: Mapping[str, CutRow], step: Fraction
) -> Iterator[TableRow]:
    titles = fabric_titles(quilt)
    for kind in kinds:
        what = kind.what + (", mirrored" if kind.mirrored else "")
        if kind.block is None:
            fabric = titles.get(kind.fabric, kind.fabric)
        else:
            fabric = ", ".join(f"{role} {titles.get(own, own)}" for role, own in kind.fabrics)
        row = cuts.get(kind.label)
        key, made = (row.key, _cut_size(row, step)) if row else ("", _size(kind.unfinished))
        cells = (kind.label, str(kind.count), what, fabric, key, made, _size(kind.finished))
        yield TableRow(cells, kind.label)


def _size(size: Size) -> str:
    return f"{about(size.width)} x {about(size.height)}"


def _laid_words(stage: Stage, cuts: Mapping[str, CutRow]) -> list[str]:
    """How triangles that are cut large are laid."""
    parts = {part for row in stage.rows if row.way == "slantwise" for part in row.parts if part in cuts}
    large = {cuts[part].cut.kind for part in parts if cuts[part].cut.excess > OVERSIZE}
    return [words for kind, words in LAID.items() if kind in large]


def _card(quilt: Quilt, made: QuiltAssembly, row: Row, ways: _Ways, trimmed: bool) -> Card:
    words = _row_words(made, row, ways, trimmed)
    marks, tall = draw_row(_scene(quilt, made, row, ways), quilt_fills(quilt))
    name = made.row_names[row.makes]
    last = row.steps[-1] == len(made.assembly.steps)
    title = f"{name} · the top" if last else f"{name} · make {row.batch}" if row.batch > 1 else name
    picture = Picture(marks, WIDE, tall, f"Row {name} apart, and sewn together. {words[0]}")
    return Card(title, picture, words)


HOW: Final = {
    "across": "side by side, left to right",
    "down": "one under another, from the top",
    "slantwise": "along the slant, in this order",
    "set in": "round the corner: stop at the dot, turn, sew on",
}


WAYS: Final[dict[Toward, str]] = {
    "first": "as the arrows show",
    "second": "the other way",
    "open": "so that seams that meet lie opposite",
}

TRIM: Final = ("as much off one side as off the other", "1/4in beyond the blocks’ points")
"""How a unit is trimmed; on point."""


LAID: Final = {
    "quarter-square triangle": "Lay side triangles even at the square corner; their points reach beyond.",
    "half-square triangle": "Lay corner triangles with the middle of their long side on the edge's middle.",
}
"""How triangles that are cut large are laid (common practice, no published source)."""


def _row_words(made: QuiltAssembly, row: Row, ways: _Ways, trimmed: bool) -> tuple[str, ...]:
    """What is joined, how long the seams are, and the sizes; whether it is trimmed to them."""
    parts = made.names_in(row)
    sizes = f"Unfinished {_size(row.unfinished)}, finished {_size(row.finished)}."
    if row.way == "mitred":
        return (
            f"Sew {', '.join(parts[1:])} to the four sides of {parts[0]}, each from dot to dot: lock the "
            "stitch there, the allowances beyond stay free. Press as the arrows show.",
            "Then close the four mitres, the strips right sides together, each from the dot out; trim the "
            "ends to 1/4in from the seam, and press open.",
            sizes,
        )
    seams = count_of(len(parts) - 1, "seam")
    return (
        f"Sew {', '.join(parts)} {HOW[row.way]}: {seams}, the longest {about(row.seam_length)}.",
        _press_words(made, row, ways),
        *((f"Trim to {_size(row.unfinished)}, {TRIM[row.way == 'slantwise']}.",) if trimmed else ()),
        *_kept_words(made, row),
        sizes,
    )


def _kept_words(made: QuiltAssembly, row: Row) -> Iterator[str]:
    """`Keep 2 for Border 1.`, where a later stage uses some of them."""
    kept = [f"{count} for {title}" for title, count in made.kept_for(row).items()]
    if kept:
        yield f"Keep {one_of(kept, 'and')}."


def _scene(quilt: Quilt, made: QuiltAssembly, row: Row, ways: _Ways) -> RowScene:
    """The row where its first copy lies."""
    names = made.row_names
    parts = tuple(
        RowPart(
            names.get(part, part),
            _rings(made.top, place),
            part not in names and made.kind_of(place[0]).block is None,
        )
        for part, place in zip(row.parts, row.places, strict=True)
    )
    inside = _Inside(made.top, [piece for place in row.places for piece in place])
    cloth = tuple(Shown(piece.outline, piece.fabric) for piece in quilt.pieces if inside.holds(piece.outline))
    return RowScene(parts, cloth, tuple(_seams(made, row, ways)))


def _seams(made: QuiltAssembly, row: Row, ways: _Ways) -> Iterator[Pressed]:
    """Every seam of the row where the unit's first copy lies, pressed as in the first that is made so."""
    for join, way in zip(row.joins, ways.of(row, row.copies[0]), strict=True):
        copy = ways.copies[join.step, min(join.pieces)]
        turn, move = turn_about(ORIGIN, copy.turned), move_by(copy.to.x, copy.to.y)
        seam = made.assembly.steps[join.step - 1].seam
        yield Pressed(tuple(move.edge(turn.edge(edge)) for edge in seam), way)


def _press_words(made: QuiltAssembly, row: Row, ways: _Ways) -> str:
    """`Press as the arrows show.`; where copies of the row are pressed differently, which of them so."""
    return f"Press {ways_told(made.top, *_pressed(row, ways), WAYS)}."


def _pressed(row: Row, ways: _Ways) -> tuple[Unit, Pressing]:
    """The copies of a row, and how each is pressed."""
    unit = replace(ways.unit(row), copies=row.copies)
    return unit, Pressing(row.steps[-1], tuple(_row_ways(row, ways)), "opposite")


def _row_ways(row: Row, ways: _Ways) -> Iterator[Toward]:
    """For each copy of the row whether its seams lie as those of the first ('first'), all the other way, or
    neither ('open')."""
    first = ways.of(row, row.copies[0])
    for copy in row.copies:
        pairs = list(zip(first, ways.of(row, copy), strict=True))
        if all(one == two for one, two in pairs):
            yield "first"
        else:
            yield "second" if all({one, two} == {"first", "second"} for one, two in pairs) else "open"


class _Ways:
    """Which way each seam of a top is pressed. A copy of a unit is found by its least piece: copies of one
    unit share none."""

    def __init__(self, made: QuiltAssembly) -> None:
        self.units = made.assembly.units
        self.copies: dict[tuple[int, int], Copy] = {}
        self.ways: dict[tuple[int, int], Toward] = {}
        for seam, unit in zip(made.pressing.seams, self.units, strict=True):
            for copy, way in zip(unit.copies, seam.ways, strict=True):
                self.copies[seam.step, min(copy.pieces)] = copy
                self.ways[seam.step, min(copy.pieces)] = way

    def unit(self, row: Row) -> Unit:
        """What a row makes."""
        return self.units[row.steps[-1] - 1]

    def of(self, row: Row, copy: Copy) -> list[Toward]:
        """Which way each join of the row is pressed in one of its copies."""
        there = dict(zip(self.unit(row).pieces, copy.pieces, strict=True))
        return [self.ways[join.step, min(there[piece] for piece in join.pieces)] for join in row.joins]


def _rings(top: Draft, pieces: Sequence[int]) -> tuple[tuple[Edge, ...], ...]:
    return tuple(tuple(side.edge for side in top.pieces[number - 1].ring) for number in pieces)


class _Inside:
    """Which outlines lie in some pieces of the top, told by their middles."""

    def __init__(self, top: Draft, pieces: Sequence[int]) -> None:
        from shapely import STRtree
        from shapely.geometry import Polygon

        self.shapes = [
            Polygon([(float(edge.start.x), float(edge.start.y)) for edge in ring]).buffer(1e-3)
            for ring in _rings(top, pieces)
        ]
        self.tree = STRtree(self.shapes)

    def holds(self, edges: Sequence[Edge]) -> bool:
        """Whether the middle of the edges' corners lies in one of the pieces."""
        from shapely.geometry import Point

        ends = [(float(point.x), float(point.y)) for edge in edges for point in (edge.start, edge.end)]
        spot = Point(sum(x for x, _ in ends) / len(ends), sum(y for _, y in ends) / len(ends))
        return len(self.tree.query(spot, predicate="intersects")) > 0
