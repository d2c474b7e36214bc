"""A block piece by piece: its templates with their sides, corners and grain, its pieces, its units. And what
heads a report of it, and the defaults that are in force."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import cos, radians, sin
from typing import Final

from ...cutting.methods.rotary import template_method_of
from ...cutting.model import Template
from ...drafting.fingerprint import fingerprint_of
from ...drafting.model import Default, Draft
from ...geometry.corners import corner_angles
from ...geometry.curves import box_of, flattened
from ...geometry.edge import Edge
from ...measure.tolerance import Number
from ...words.pages import pieces as words
from ...words.pages.booklet import TEMPLATES
from ...words.say import Say
from ...words.work.defaults import default_words
from ..arrange.options import SheetOptions
from ..content import Chapter, Column, List, Paragraph, Part, Row, Section, Table
from ..work import Work, WorkBlock

PIECE_COLUMNS: Final = (
    Column(words.NUMBER, 28.0),
    Column(words.NAME, 90.0, bold=True),
    Column(words.FABRIC, 90.0),
    Column(words.TEMPLATE, 80.0),
    Column(words.ALONG, 110.0),
    Column(words.AREA, 60.0),
)

UNIT_COLUMNS: Final = (
    Column(words.UNIT, 60.0, bold=True),
    Column(words.BLOCK, 110.0),
    Column(words.AT, 80.0),
    Column(words.SIZE, 80.0),
    Column(words.LIES, 120.0),
)


def about_block(block: WorkBlock, options: SheetOptions, *, elsewhere: bool) -> Chapter:
    """Title, size and counts, what the writer says of it; `elsewhere`: it was written in another file."""
    draft, templates = block.draft, len(block.templates)
    facts = words.facts_of_block(options.say, draft, templates, fingerprint_of(draft), elsewhere=elsewhere)
    return Chapter(words.titled(draft.title, "", draft.version), tuple(map(Paragraph, facts)))


def about_quilt(work: Work, options: SheetOptions) -> Chapter:
    """Title, colourway, size and counts, what the writer says of it."""
    quilt = work.quilt
    title = words.titled(quilt.title, quilt.colourway, quilt.version)
    return Chapter(title, tuple(map(Paragraph, words.facts_of_quilt(options.say, quilt))))


def defaults(found: Sequence[Default], options: SheetOptions) -> Iterator[Chapter]:
    """Every default in force; nothing where there is none."""
    if found:
        told = tuple(words.fact(*default_words(options.say, each)) for each in found)
        yield Chapter(words.DEFAULTS, (List(told),))


def pieces(block: WorkBlock, options: SheetOptions) -> Iterator[Chapter]:
    """Templates, pieces and units, a chapter each."""
    draft, say = block.draft, options.say
    templates = [part for each in block.templates for part in _template(say, each, draft)]
    yield Chapter(TEMPLATES, tuple(templates))
    yield Chapter(words.PIECES, (Table(PIECE_COLUMNS, tuple(_rows(say, block)), words.PIECES),))
    if draft.units:
        rows = tuple(Row(words.unit_cells(each), each.alias) for each in draft.units)
        yield Chapter(words.UNITS, (Paragraph(words.LYING), Table(UNIT_COLUMNS, rows, words.UNITS)))


def _template(say: Say, template: Template, draft: Draft) -> Iterator[Part]:
    """One template: how many of what, its sizes, its sides and corners."""
    piece = draft.pieces[template.pieces[0] - 1]
    heading = template.grain[0].heading if template.grain else 0.0
    boxes = (_box(say, template.sew, heading), _box(say, template.cut, heading))
    angles = corner_angles([side.edge for side in piece.ring])
    method = template_method_of(draft, template, say.ruler)
    yield Section(template.label, words.count_words(template))
    yield List(tuple(words.facts_of_template(say, template, piece.ring, angles, boxes, piece.area, method)))


def _box(say: Say, edges: Sequence[Edge], heading: float) -> str:
    """The box around a ring, arcs and all; along the grain where that slants."""
    aslant = bool(heading % 90)
    return words.box_words(say, *extent(edges, heading if aslant else 0.0), aslant=aslant)


def extent(edges: Sequence[Edge], heading: float) -> tuple[Number, Number]:
    """How far a ring reaches along a heading and across it, in inches; exact where it is level or upright."""
    if not heading % 90:
        left, top, right, bottom = box_of(edges)
        across, down = right - left, bottom - top
        return (across, down) if heading % 180 else (down, across)
    points = [point for edge in edges for point in flattened(edge)]
    xs, ys = [point.x for point in points], [point.y for point in points]
    c, s = cos(radians(heading)), sin(radians(heading))
    along = [float(x) * s - float(y) * c for x, y in zip(xs, ys, strict=True)]
    aside = [float(x) * c + float(y) * s for x, y in zip(xs, ys, strict=True)]
    return max(along) - min(along), max(aside) - min(aside)


def _rows(say: Say, block: WorkBlock) -> Iterator[Row]:
    """Number, name, fabric, template, finished size and area of every piece."""
    sizes = _piece_sizes(say, block.templates)
    labels = {
        member.piece: words.template_words(shape.label, turned_over=member.reversed)
        for shape in block.draft.shapes
        for member in shape.members
    }
    for each in block.draft.pieces:
        told = (each.name or "-", each.fabric, labels[each.number], sizes[each.number])
        yield Row((str(each.number), *told, words.area_cell(each)), str(each.number))


def _piece_sizes(say: Say, templates: Sequence[Template]) -> dict[int, str]:
    """`3 1/4in x 2in` for each piece, along its grain first: the same however it lies in the block."""
    sizes: dict[int, str] = {}
    for template in templates:
        arrows = [(arrow.heading, arrow.pieces) for arrow in template.grain] or [(0.0, template.pieces)]
        for heading, numbers in arrows:
            sizes.update(dict.fromkeys(numbers, say.size(*extent(template.sew, heading))))
    return sizes
