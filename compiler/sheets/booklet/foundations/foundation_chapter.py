"""Foundations in a booklet: how they are sewn, a picture of the sections, the joins, cloth for each patch."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Final

from ....drafting.model import Draft, Piece
from ....measure.length import POINTS_PER_INCH
from ....measure.tolerance import Number
from ....sewing.foundations.foundation import cloth_allowance
from ....sewing.foundations.foundation_model import Foundations
from ....words.numbers import ruler_text
from ....words.phrases import count_of, one_of
from ....words.say import INCHES
from ....words.work.foundations import refusal_words
from ...arrange.fills import Fill
from ...arrange.leaves import Leaf
from ...arrange.options import SheetOptions
from ...arrange.paths import Placement, flat_ring, open_path, ring_path
from ...arrange.room import Room
from ...arrange.style import line_mark
from ...arrange.swatches import fabric_order
from ...page import Mark
from ...quilts.flow import Column, Row
from ...quilts.wearing import Worn, always_worn
from ...quilts.words import about
from ..content import Chapter, List, Paragraph, Part, Picture, Table
from ..content import Section as Heading
from ..inside_labels import label_marks
from .foundation_paper import join_name, section_papers
from .foundation_sheets import foundation_leaves
from .foundation_strip import join_cards, strip_parts

TITLE: Final = "Foundations"
PICTURE: Final = 190.0  # points of the longer side of the picture of sections
PICTURE_SIZES: Final = (13.0, 10.5, 8.5, 7.0)

COLUMNS: Final = (
    Column("fabric", 120.0, bold=True),
    Column("cut", 24.0, "end", bold=True),
    Column("size", 110.0, bold=True),
    Column("for patches", 0.0),
)

OUT: Final = "Leave the paper in until the sections are joined; then tear it away."
OUT_OF_ONE: Final = (
    "Leave the paper in until what comes next to the block is sewn on: it keeps the edges from stretching. "
    "Then tear it away."
)


def how_words(allowance: Number) -> tuple[str, ...]:
    """How a block is sewn on foundations, step by step (common practice, no published source)."""
    wide = ruler_text(allowance)
    return (
        "Cut out the paper of each section along the solid line; one that lies on several pages is taped "
        "together first. The paper is printed mirrored: the print faces you while you sew, the cloth lies "
        "behind it.",
        "Set the machine to a short stitch, 15 to 20 to the inch, so that the paper tears away clean.",
        "Lay patch 1 behind the paper, wrong side to the paper, so that it covers its area and "
        f"{wide} all round: hold it up to the light. Pin.",
        f"Lay the next patch on it, right sides together, so that it reaches {wide} over the line between "
        "the two. Sew on the line, from the print side, two stitches past each end.",
        f"Fold the paper back along the line and trim the allowance to {wide}. Lay the paper flat again, "
        "flip the new patch over its area, and press it there with a dry iron: so after every seam.",
        "Go on in the order of the numbers. Then press the section and trim the cloth along the edge of the "
        "paper, the solid line.",
    )


def foundation_chapter(
    draft: Draft, found: Foundations, options: SheetOptions, under: str, worn: Worn | None = None
) -> Chapter:
    """The chapter with its papers; where the block cannot go on paper, why. `worn`: in which fabrics; but in
    the block's own roles where those are not always the same, for the papers serve all its copies."""
    if not found.possible:
        return Chapter(TITLE, tuple(_refused(found)), joins=True)
    worn = always_worn(draft, worn)
    found = worn.foundations(found)
    sheets: list[Leaf] = foundation_leaves(draft, found, options, under)
    first, *parts = _parts(draft, found, worn.fills)
    said = [Paragraph(each) for each in worn.words]
    if worn.prints:
        said.append(
            Paragraph(
                f"Cut the patches of {one_of(worn.prints, 'and')} by the cutting chart, not by the sizes "
                "here: its print stands up in the quilt, and so the cloth lies on the paper."
            )
        )
    return Chapter(TITLE, (first, *said, *parts), tuple(sheets))


def _refused(found: Foundations) -> Iterator[Part]:
    yield Paragraph("This block cannot be sewn on paper foundations.", strong=True)
    yield Paragraph(refusal_words(INCHES, found.why_not))
    yield Paragraph("Sew it with its templates, or over paper pieces by hand.")


def _parts(draft: Draft, found: Foundations, fills: Mapping[str, Fill]) -> Iterator[Part]:
    several = count_of(len(found.sections), "section")
    yield Paragraph(f"This block is sewn on paper in {several}.", strong=True)
    yield _picture(draft, found)
    margin = ruler_text(found.margin)
    yield Heading("Cloth for the patches", f"allowance and {margin} more on every side counted in")
    wider = any(cloth_allowance(draft, piece) != draft.allowance for piece in draft.pieces)
    allowance = ruler_text(draft.allowance) + (", or its widest side’s," if wider else "")
    yield Paragraph(
        f"Each size covers its patch with the seam allowance of {allowance} and a margin of "
        f"{margin} on every side, rounded up to the next quarter inch: cut without fuss, and trim on the "
        "paper. Pin its name to each."
    )
    yield Table(COLUMNS, tuple(_rows(draft, found)), "Cloth for the patches")
    yield Heading("How to sew on a foundation")
    yield List((*how_words(draft.allowance), OUT if found.joins else OUT_OF_ONE), "number")
    yield from strip_parts(draft, section_papers(draft, found), fills)
    if found.joins:
        yield Heading("Join the sections", "in this order")
        yield join_cards(draft, found, tuple(join_words(found)), fills)


def join_words(found: Foundations) -> Iterator[str]:
    """The joins, a sentence each, as the papers name them."""
    for number, join in enumerate(found.joins):
        name = join_name(number)
        yield (
            f"Join {join.first} to {join.second} along the edges marked {name}, {about(join.seam.length)} "
            "long: pin through the corners and the match marks first. Press the seam open or to one side."
        )


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
    names = ", ".join(
        f"{section.label} with {count_of(len(section.patches), 'patch', 'patches')}"
        for section in found.sections
    )
    return Picture(
        tuple(marks),
        far.x,
        far.y,
        f"The block from the front, in sections: {names}.",
        "From the front. Heavy lines part the sections; the papers are mirrored.",
    )


def _patch_marks(piece: Piece, label: str, placement: Placement) -> list[Mark]:
    room = Room((flat_ring([side.edge for side in piece.ring], placement),))
    return list(label_marks(room, label, (), label, PICTURE_SIZES) or ())
