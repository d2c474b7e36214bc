"""The steps of a quilt's top: rows, centre and borders, a card for each; and the key to its parts."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Final

from ....cutting.plan_model import CuttingPlan
from ....diagnostics.wording import count_of
from ....drafting.model import Draft, Edge
from ....drafting.transform import move_by, turn_about
from ....measure.tolerance import near
from ....quilt.assembly_model import Kind, QuiltAssembly, Row, Stage
from ....quilt.model import Quilt
from ....sewing.model import Assembly, Copy, Size, Unit
from ....sewing.pressing.pressing_model import Pressing, Toward
from ...pressing_words import ROWS, pressing_words, tells_rows, ways_told
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
    yield Paragraph(f"Checked by sewing it from the printed numbers: {made.proof.sentence}.", strong=True)
    yield Table(COLUMNS, tuple(_kind_rows(quilt, made.kinds, cuts, plan.ruler_step)), "Parts of the top")
    if not made.stages:
        yield Paragraph("The top is one block: there is nothing to sew round it.")
        return
    yield Paragraph(READ)
    names, trimmed = made.row_names, _trimmed_rows(made, cuts)
    staged = [
        tuple(_card(quilt, made, row, names, row.makes in trimmed) for row in stage.rows)
        for stage in made.stages
    ]
    if any(tells_rows(line) for cards in staged for card in cards for line in card.lines):
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


def _card(quilt: Quilt, made: QuiltAssembly, row: Row, names: dict[str, str], trimmed: bool) -> Card:
    words = _row_words(made, row, trimmed)
    marks, tall = draw_row(_scene(quilt, made, row, names), quilt_fills(quilt))
    name = names[row.makes]
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


def _row_words(made: QuiltAssembly, row: Row, trimmed: bool) -> tuple[str, ...]:
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
        _press_words(made, row),
        *((f"Trim to {_size(row.unfinished)}, {TRIM[row.way == 'slantwise']}.",) if trimmed else ()),
        sizes,
    )


def _scene(quilt: Quilt, made: QuiltAssembly, row: Row, names: dict[str, str]) -> RowScene:
    """The row where its first copy lies."""
    pieces = _unit_pieces(made.assembly, row.makes)
    groups = _part_groups(made.assembly, row, pieces)
    parts = tuple(
        RowPart(
            _name(made, part, names),
            _rings(made.top, group),
            not part.startswith("u") and made.kind_of(group[0]).block is None,
        )
        for part, group in groups
    )
    inside = _Inside(made.top, pieces)
    cloth = tuple(Shown(piece.outline, piece.fabric) for piece in quilt.pieces if inside.holds(piece.outline))
    return RowScene(parts, cloth, tuple(_seams(made, row)))


def _seams(made: QuiltAssembly, row: Row) -> Iterator[Pressed]:
    """Every seam of the row where its first copy lies."""
    within = set(_unit_pieces(made.assembly, row.makes))
    for number in row.steps:
        for copy, way in _sewn_copies(made, number):
            if within.issuperset(copy.pieces):
                turn, move = turn_about(ORIGIN, copy.turned), move_by(copy.to.x, copy.to.y)
                seam = made.assembly.steps[number - 1].seam
                yield Pressed(tuple(move.edge(turn.edge(edge)) for edge in seam), way)


def _sewn_copies(made: QuiltAssembly, number: int) -> Iterator[tuple[Copy, Toward]]:
    """Every copy that a step makes, and which way its seam is pressed."""
    yield from zip(made.assembly.units[number - 1].copies, made.pressing.seams[number - 1].ways, strict=True)


def _press_words(made: QuiltAssembly, row: Row) -> str:
    """`Press as the arrows show.`; where copies of the row are pressed differently, which of them so."""
    unit = made.assembly.units[int(row.makes[1:]) - 1]
    pressing = Pressing(row.steps[-1], tuple(_row_ways(made, row, unit)), "opposite")
    return f"Press {ways_told(made.top, unit, pressing, WAYS)}."


def _row_ways(made: QuiltAssembly, row: Row, unit: Unit) -> Iterator[Toward]:
    """For each copy of the row whether its seams lie as those of the first ('first'), all the other way, or
    neither ('open')."""
    ways = {(number, frozenset(copy.pieces)): way
            for number in row.steps for copy, way in _sewn_copies(made, number)}
    own = [(key, way) for key, way in ways.items() if key[1].issubset(unit.pieces)]
    place = {piece: at for at, piece in enumerate(unit.pieces)}
    for copy in unit.copies:
        there = [(way, ways[number, frozenset(copy.pieces[place[piece]] for piece in pieces)])
                 for (number, pieces), way in own]
        if all(one == two for one, two in there):
            yield "first"
        else:
            yield "second" if all({one, two} == {"first", "second"} for one, two in there) else "open"


def _name(made: QuiltAssembly, part: str, names: dict[str, str]) -> str:
    return names.get(part, part) if part.startswith("u") else made.kind_of(int(part)).label


def _unit_pieces(assembly: Assembly, unit: str) -> tuple[int, ...]:
    return assembly.units[int(unit[1:]) - 1].pieces


def _part_groups(assembly: Assembly, row: Row, pieces: tuple[int, ...]) -> list[tuple[str, tuple[int, ...]]]:
    """The row's parts with their pieces: units that its own steps make are taken apart."""
    own = {assembly.steps[number - 1].makes for number in row.steps}

    def apart(part: str, of: tuple[int, ...]) -> list[tuple[str, tuple[int, ...]]]:
        if part not in own:
            return [(part if part.startswith("u") else str(of[0]), of)]
        first, second = assembly.steps[int(part[1:]) - 1].parts
        count = len(_unit_pieces(assembly, first)) if first.startswith("u") else 1
        return [*apart(first, of[:count]), *apart(second, of[count:])]

    return apart(row.makes, pieces)


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
