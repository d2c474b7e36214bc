"""Foundations in a booklet: how they are sewn, a picture of the sections, the joins, cloth for each patch."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Final

from ...drafting.model import Draft, Piece
from ...measure.length import POINTS_PER_INCH
from ...sewing.foundations.foundation import cloth_allowance
from ...sewing.foundations.foundation_model import Foundations
from ...words.numbers import ruler_text
from ...words.pages import foundations as words
from ...words.pages.papers import copies_words
from ...words.say import INCHES
from ...words.work.foundations import refusal_words
from ..arrange.fills import Fill
from ..arrange.options import SheetOptions
from ..arrange.paths import Placement, flat_ring, open_path, ring_path
from ..arrange.room import Room
from ..arrange.style import line_mark
from ..arrange.swatches import fabric_order
from ..content import Chapter, Column, List, Paragraph, Part, Picture, Row, Table
from ..content import Section as Heading
from ..page import Mark
from ..papers.foundation_paper import join_name, section_papers
from ..papers.foundation_sheets import foundation_leaves
from ..papers.foundation_strip import join_cards, strip_parts
from ..papers.inside_labels import label_marks
from ..quilts.wearing import always_worn
from ..quilts.words import about
from ..work import WorkBlock

PATCH_COLUMNS: Final = (
    Column(words.PATCH, 60.0, bold=True),
    Column(words.PIECE, 60.0),
    Column(words.FABRIC, 120.0),
    Column(words.SIZE, 110.0),
)

PICTURE: Final = 190.0  # points of the longer side of the picture of sections
PICTURE_SIZES: Final = (13.0, 10.5, 8.5, 7.0)

COLUMNS: Final = (
    Column(words.FABRIC, 120.0, bold=True),
    Column(words.CUT, 24.0, "end", bold=True),
    Column(words.SIZE, 110.0, bold=True),
    Column(words.FOR_PATCHES, 0.0),
)


def foundations(block: WorkBlock, options: SheetOptions) -> Chapter:
    """The chapter with its papers; where the block cannot go on paper, why. In the fabrics of the block; but
    in its own roles where those are not always the same, for the papers serve all its copies."""
    draft, found, title = block.draft, block.found, block.titled(words.TITLE)
    if not found.possible:
        return Chapter(title, tuple(_refused(found)), joins=True)
    worn = always_worn(draft, block.worn)
    found = worn.foundations(found)
    first, *parts = _parts(draft, found, worn.fills)
    told = [*(copies_words(block) if not block.cut_out else ()), *worn.words]
    if worn.prints:
        told.append(words.prints_words(worn.prints))
    sheets = foundation_leaves(draft, found, options, block.under)
    return Chapter(title, (first, *map(Paragraph, told), *parts), tuple(sheets))


def patches(block: WorkBlock, options: SheetOptions) -> Chapter:
    """Without papers and pictures: every patch in the order of sewing, with its piece and its cloth, and the
    joins; where the block cannot go on paper, why."""
    found = block.found
    if not found.possible:
        return Chapter(words.TITLE, tuple(_refused(found)))
    rows = tuple(
        Row((each.label, str(each.piece), each.fabric, options.say.size_on_ruler(*each.size)), each.label)
        for section in found.sections
        for each in section.patches
    )
    table = Table(PATCH_COLUMNS, rows, words.CLOTH)
    joins = (List(tuple(join_words(found)), "number"),) if found.joins else ()
    return Chapter(words.TITLE, (Paragraph(words.can_words(len(found.sections))), table, *joins))


def _refused(found: Foundations) -> Iterator[Part]:
    yield Paragraph(words.CANNOT, strong=True)
    yield Paragraph(refusal_words(INCHES, found.why_not))
    yield Paragraph(words.OTHERWISE)


def _parts(draft: Draft, found: Foundations, fills: Mapping[str, Fill]) -> Iterator[Part]:
    yield Paragraph(words.sections_words(len(found.sections)), strong=True)
    yield _picture(draft, found)
    margin = ruler_text(found.margin)
    yield Heading(words.CLOTH, words.cloth_under(margin))
    wider = any(cloth_allowance(draft, piece) != draft.allowance for piece in draft.pieces)
    yield Paragraph(words.cloth_words(ruler_text(draft.allowance), margin, wider))
    yield Table(COLUMNS, tuple(_rows(draft, found)), words.CLOTH)
    yield Heading(words.HOW)
    yield List((*words.how_words(draft.allowance), words.OUT if found.joins else words.OUT_OF_ONE), "number")
    yield from strip_parts(draft, section_papers(draft, found), fills)
    if found.joins:
        yield Heading(words.JOIN, words.JOIN_UNDER)
        yield join_cards(draft, found, tuple(join_words(found)), fills)


def join_words(found: Foundations) -> Iterator[str]:
    """The joins, a sentence each, as the papers name them."""
    for number, join in enumerate(found.joins):
        yield words.join_words(join.first, join.second, join_name(number), about(join.seam.length))


def _rows(draft: Draft, found: Foundations) -> Iterator[Row]:
    """What is cut of each fabric, the largest first; pieces of one size together."""
    patches = [patch for section in found.sections for patch in section.patches]
    fabrics = dict.fromkeys((*fabric_order(draft), *(patch.fabric for patch in patches)))
    for fabric in fabrics:
        sizes: dict[tuple[Fraction, Fraction], list[str]] = {}
        for patch in patches:
            if patch.fabric == fabric:
                sizes.setdefault(patch.size, []).append(patch.label)
        for (width, height), labels in sorted(sizes.items(), key=lambda each: each[0], reverse=True):
            size = f"{ruler_text(width)} x {ruler_text(height)}"
            yield Row((fabric, str(len(labels)), size, ", ".join(labels)), fabric)


def _picture(draft: Draft, found: Foundations) -> Picture:
    """The block from the front, its sections outlined and every patch named."""
    longest = max(float(draft.width), float(draft.height)) * POINTS_PER_INCH
    placement = Placement(0.0, 0.0, 0.0, PICTURE / longest)
    marks: list[Mark] = []
    for section in found.sections:
        for patch in section.patches:
            marks += _patch_marks(draft.pieces[patch.piece - 1], patch.label, placement)
        marks += [
            line_mark(open_path((patch.line,), placement), "seam", 0.5)
            for patch in section.patches
            if patch.line
        ]
    marks += [line_mark(ring_path(section.outline, placement), "section", 1.6) for section in found.sections]
    far = placement.spot_at(draft.width, draft.height)
    pictured = words.pictured([(section.label, len(section.patches)) for section in found.sections])
    return Picture(tuple(marks), far.x, far.y, pictured, words.PICTURE)


def _patch_marks(piece: Piece, label: str, placement: Placement) -> list[Mark]:
    room = Room((flat_ring([side.edge for side in piece.ring], placement),))
    return list(label_marks(room, label, (), label, PICTURE_SIZES) or ())
