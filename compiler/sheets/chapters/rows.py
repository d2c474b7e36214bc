"""The steps of a quilt's top: rows, centre and borders, a card for each; and the key to its parts."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from ...drafting.model import Draft
from ...geometry.edge import Edge, Point
from ...geometry.motion import move_by, turn_about
from ...measure.tolerance import TOGETHER, near
from ...quilt.assembly_model import Kind, QuiltAssembly, Stage
from ...quilt.assembly_model import Row as QuiltRow
from ...quilt.model import Quilt
from ...sewing.model import Copy, Size, Unit
from ...sewing.pressing.copies import by_rows
from ...sewing.pressing.pressing_model import Pressing, Toward
from ...words.pages import rows as words
from ...words.pages.booklet import checked
from ...words.work.pressing import ROWS, meeting_words, pressing_words, ways_told
from ...words.work.quilts import kept_words, kind_words, part_words, stage_words
from ...words.work.shapes import shape_word
from ..arrange.options import SheetOptions
from ..content import (
    NOT_DRAWN,
    Card,
    Cards,
    Chapter,
    Column,
    Paragraph,
    Part,
    Picture,
    Row,
    Section,
    Table,
)
from ..pictures.quilt import quilt_fills
from ..pictures.row_picture import Pressed, RowPart, RowScene, Shown, draw_row
from ..pictures.step_picture import WIDE
from ..quilts.tables import CutRow, FabricCuts, box_of, fabric_titles, measured_shape
from ..quilts.words import about, size_words
from ..work import Work

COLUMNS: Final = (
    Column(words.NAME, 28.0, bold=True),
    Column(words.COUNT, 28.0, "end", bold=True),
    Column(words.WHAT, 100.0),
    Column(words.FABRIC, 0.0),
    Column(words.KEY, 18.0),
    Column(words.SEWN, 104.0),
    Column(words.FINISHED, 92.0),
)

ORIGIN: Final = Point(Fraction(0), Fraction(0))

OVERSIZE: Final = Fraction(1, 64)
"""Inches that a piece is cut larger than it needs be: by more, what it is sewn into is trimmed."""


def rows(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """Rows, centre and borders, a card for each; and the key to their parts."""
    yield Chapter(words.TITLE, tuple(_parts(work, options)))


def _parts(work: Work, options: SheetOptions) -> Iterator[Part]:
    quilt, made = work.quilt, work.assembly
    cuts = kind_cuts(work.cuts, made.kinds)
    yield Paragraph(checked(made.proof), strong=True)
    kinds = _kind_rows(quilt, made.kinds, cuts, work.plan.ruler_step)
    yield Table(COLUMNS, tuple(kinds), words.PARTS)
    if not options.pictures:
        yield from _unfinished(made.kinds, cuts)
    if not made.stages:
        yield Paragraph(words.ONE_BLOCK)
        return
    yield Paragraph(words.READ if options.pictures else words.READ_TOLD)
    ways = _Ways(made) if options.pictures else None
    trimmed = _trimmed_rows(made, cuts)
    staged = [
        tuple(_card(quilt, made, row, ways, row.makes in trimmed) for row in stage.rows)
        for stage in made.stages
    ]
    pressed = [row for stage in made.stages for row in stage.rows if row.way != "mitred"]
    if ways and any(by_rows(made.top, *_pressed(row, ways)) for row in pressed):
        yield Paragraph(ROWS.format("top"))
    for stage, cards in zip(made.stages, staged, strict=True):
        yield Section(stage_words(stage))
        yield from map(Paragraph, _laid_words(stage, cuts))
        yield Cards(cards)
    yield Section(words.PRESSING)
    yield Paragraph(pressing_words(made.pressing) if options.pictures else meeting_words(made.pressing))


def kind_cuts(cuts: Sequence[FabricCuts], kinds: Sequence[Kind]) -> dict[str, CutRow]:
    """The chart's row for each kind of cloth, by the kind's label."""
    rows = [row for each in cuts for row in each.rows if row.need is not None]
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


def _unfinished(kinds: Sequence[Kind], cuts: Mapping[str, CutRow]) -> Iterator[Part]:
    """The unfinished sizes of what is cut in another shape: on paper the pictures show it."""
    for kind in kinds:
        if kind.label in cuts:
            cut, size = cuts[kind.label].cut, kind.unfinished
            if not all(map(near, sorted((cut.width, cut.height)), sorted((size.width, size.height)))):
                yield Paragraph(words.unfinished(kind.label, _size(size)))


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
        return words.ROUND_TEMPLATE
    return words.cut_into(shape_word(measured_shape(cut)), size_words(cut, step), cut.yields)


def _kind_rows(
    quilt: Quilt, kinds: Sequence[Kind], cuts: Mapping[str, CutRow], step: Fraction
) -> Iterator[Row]:
    titles = fabric_titles(quilt)
    for kind in kinds:
        what = kind_words(kind) + (words.MIRRORED if kind.mirrored else "")
        if kind.block is None:
            fabric = titles.get(kind.fabric, kind.fabric)
        else:
            fabric = ", ".join(f"{role} {titles.get(own, own)}" for role, own in kind.fabrics)
        row = cuts.get(kind.label)
        key, made = (row.key, _cut_size(row, step)) if row else ("", _size(kind.unfinished))
        cells = (kind.label, str(kind.count), what, fabric, key, made, _size(kind.finished))
        yield Row(cells, kind.label)


def _size(size: Size) -> str:
    return f"{about(size.width)} x {about(size.height)}"


def _laid_words(stage: Stage, cuts: Mapping[str, CutRow]) -> list[str]:
    """How triangles that are cut large are laid."""
    parts = {part for row in stage.rows if row.way == "slantwise" for part in row.parts if part in cuts}
    large = {cuts[part].cut.kind for part in parts if cuts[part].cut.excess > OVERSIZE}
    return [text for kind, text in words.LAID.items() if kind in large]


def _card(quilt: Quilt, made: QuiltAssembly, row: QuiltRow, ways: _Ways | None, trimmed: bool) -> Card:
    """A row's card; without `ways` no picture is drawn, and nothing is said of what its arrows show."""
    lines = _row_words(made, row, ways, trimmed)
    if ways is None:
        return Card(_title(made, row), NOT_DRAWN, lines)
    marks, tall = draw_row(_scene(quilt, made, row, ways), quilt_fills(quilt))
    picture = Picture(marks, WIDE, tall, words.pictured(made.row_names[row.makes], lines[0]))
    return Card(_title(made, row), picture, lines)


def _title(made: QuiltAssembly, row: QuiltRow) -> str:
    last = row.steps[-1] == len(made.assembly.steps)
    return words.card_title(made.row_names[row.makes], row.batch, last)


def _row_words(made: QuiltAssembly, row: QuiltRow, ways: _Ways | None, trimmed: bool) -> tuple[str, ...]:
    """What is joined, how long the seams are, and the sizes; whether it is trimmed to them."""
    parts = part_words(made, row)
    sizes = words.sizes(_size(row.unfinished), _size(row.finished))
    if row.way == "mitred":
        return (*words.mitred(parts, pictured=ways is not None), sizes)
    kept = kept_words(made, row)
    return (
        words.sew(parts, row.way, about(row.seam_length)),
        *((words.press(_ways_words(made, row, ways)),) if ways else ()),
        *((words.trim(_size(row.unfinished), row.way),) if trimmed else ()),
        *((words.keep(kept),) if kept else ()),
        sizes,
    )


def _scene(quilt: Quilt, made: QuiltAssembly, row: QuiltRow, ways: _Ways) -> RowScene:
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


def _seams(made: QuiltAssembly, row: QuiltRow, ways: _Ways) -> Iterator[Pressed]:
    """Every seam of the row where the unit's first copy lies, pressed as in the first that is made so."""
    for join, way in zip(row.joins, ways.of(row, row.copies[0]), strict=True):
        copy = ways.copies[join.step, min(join.pieces)]
        turn, move = turn_about(ORIGIN, copy.turned), move_by(copy.to.x, copy.to.y)
        seam = made.assembly.steps[join.step - 1].seam
        yield Pressed(tuple(move.edge(turn.edge(edge)) for edge in seam), way)


def _ways_words(made: QuiltAssembly, row: QuiltRow, ways: _Ways) -> str:
    """`as the arrows show`; where copies of the row are pressed differently, which of them so."""
    return ways_told(made.top, *_pressed(row, ways), words.WAYS)


def _pressed(row: QuiltRow, ways: _Ways) -> tuple[Unit, Pressing]:
    """The copies of a row, and how each is pressed."""
    unit = replace(ways.unit(row), copies=row.copies)
    return unit, Pressing(row.steps[-1], tuple(_row_ways(row, ways)), "opposite")


def _row_ways(row: QuiltRow, ways: _Ways) -> Iterator[Toward]:
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

    def unit(self, row: QuiltRow) -> Unit:
        """What a row makes."""
        return self.units[row.steps[-1] - 1]

    def of(self, row: QuiltRow, copy: Copy) -> list[Toward]:
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
            Polygon([(float(edge.start.x), float(edge.start.y)) for edge in ring]).buffer(TOGETHER)
            for ring in _rings(top, pieces)
        ]
        self.tree = STRtree(self.shapes)

    def holds(self, edges: Sequence[Edge]) -> bool:
        """Whether the middle of the edges' corners lies in one of the pieces."""
        from shapely.geometry import Point

        ends = [(float(point.x), float(point.y)) for edge in edges for point in (edge.start, edge.end)]
        spot = Point(sum(x for x, _ in ends) / len(ends), sum(y for _, y in ends) / len(ends))
        return len(self.tree.query(spot, predicate="intersects")) > 0
