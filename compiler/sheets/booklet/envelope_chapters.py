"""The short chapters at a booklet's end: what makes the block hard, storage card, safety, glossary."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import Final

from ...cutting.model import Template
from ...drafting.model import Draft
from ...sewing.difficulty import Difficulty, causes
from ..arrange.block_sheets import finished_size
from ..arrange.table import box_words, cut_words
from ..quilts.flow import Column, Row
from ..quilts.tools import safety_words
from .content import Chapter, CutLine, List, Paragraph, Part, Section, Table

CARD_COLUMNS: Final = (
    Column("template", 60.0, bold=True),
    Column("cut", 220.0),
    Column("finished, its box", 100.0),
    Column("which way up", 0.0),
)

GLOSSARY: Final[dict[str, str]] = {
    "allowance": "The strip of cloth between the cut edge and the seam.",
    "backstitch": "A stitch back over the last one, so that a seam holds at its end.",
    "backing": "The cloth of the quilt's back, larger than the top all round until it is quilted.",
    "baste": "To hold with long stitches that come out again.",
    "batting": "The soft layer between top and back.",
    "bias": "The slant across the threads, where cloth stretches most. Handle bias edges gently.",
    "binding": "A strip of cloth folded round the quilt's edge.",
    "border": "Strips or patchwork round the middle of a quilt.",
    "crosswise grain": "The threads from selvage to selvage; they give a little.",
    "dot": "Where two seams meet on a template: needles start, stop or turn there.",
    "ease": "To take up a little fullness between pins, without a pleat.",
    "finished size": "The size when all seams are sewn; unfinished size has the outer allowances still on.",
    "foundation": "Paper or cloth on whose lines the pieces are sewn, in order of their numbers.",
    "grain": "The way the threads run. The arrow on a template lies along the straight of grain.",
    "half-square triangle": "Half of a square cut corner to corner: straight of grain on its short sides.",
    "lock": "To make a few stitches on the spot, so that a seam does not open.",
    "mitre": "A corner where two strips meet along a slant, as on a picture's frame.",
    "match mark": "A tick across a seam line; it meets the tick on the piece it is sewn to.",
    "nest": "To push together two seams that are pressed opposite ways, so that they lie flat.",
    "on point": "Set cornerwise: a block that stands on one of its corners.",
    "paper piece": "A paper of finished size over which cloth is folded to be sewn by hand.",
    "partial seam": "A seam sewn only part of the way, and closed when the pieces round it are on.",
    "patch": "One piece of cloth of a foundation.",
    "post": "A square where strips of sashing meet.",
    "quarter-square triangle": "A quarter of a square cut twice: straight of grain on its long side.",
    "reversed": "Cut with the template turned face down.",
    "rotary cutter": "A round blade in a handle, used along a ruler on a mat.",
    "sashing": "Strips between blocks.",
    "selvage": "The woven edge of the cloth; it is cut off.",
    "set in": "To sew a piece into a corner: the seam turns at a dot.",
    "strip set": "Strips sewn side by side along their length, then cut across into rows.",
    "template": "A pattern of card or plastic to cut one shape by.",
    "true up": "To trim to the exact size.",
    "unit": "Pieces sewn together that go into the block as one.",
    "whip": "To sew over two edges with small slanted stitches.",
}
"""Terms of the trade, each explained once. A booklet lists those that its own pages use."""

MINDED: Final = (
    "Mind the cords: nobody should trip over iron or machine.",
    "Good light and a chair of the right height save eyes and back; stop before you are tired.",
)
"""What to mind with any work at the machine, besides the tools."""


def difficulty_chapter(found: Difficulty, cut_out: str = "template") -> Chapter:
    """What makes the block hard, each cause by itself. `cut_out`: as in `cause_lines`."""
    return Chapter(
        "What makes it hard",
        (
            Paragraph("There is no score: these are the causes, and what each asks of you."),
            List(tuple(cause_lines(found, cut_out))),
        ),
        joins=True,
    )


ADVICE: Final = (
    ("smallest angle", "sharp points need trimmed tips and a careful first stitch"),
    ("bias edge", "do not pull them while you sew or press; stay-stitch them if they wait"),
    ("set-in seam", "stop exactly at the dots"),
    ("partial seam", "leave them open as the step says"),
    ("curved seam", "pin at the marks, and sew slowly with the hollow edge on top"),
    ("where points meet", "pin through the points before you sew"),
    ("at one point", "press toward one side all round, or open, so that it lies flat"),
)
"""What each cause asks of the sewer, by a word of it."""

SHARP: Final = 50.0
"""Degrees of the widest corner that is called a sharp point: half a square's, and what is near it, is one."""


def cause_lines(found: Difficulty, cut_out: str = "template") -> Iterator[str]:
    """The causes with what each asks, a line each. `cut_out`: what there is one of for each shape, a
    `template` or a `paper shape`; empty where the block is sewn on foundations."""
    for cause in causes(found, cut_out):
        words = next((advice for word, advice in ADVICE if word in cause), "")
        if words == ADVICE[0][1] and found.smallest_angle > SHARP:
            words = "no point is sharp"
        yield f"{cause[:1].upper()}{cause[1:]}{f': {words}' if words else ''}."


def card_chapter(draft: Draft, templates: Sequence[Template], papers: bool = False) -> Chapter:
    """The storage card of one block."""
    return Chapter("Storage card", tuple(card_parts(draft, templates, papers)))


def card_parts(draft: Draft, templates: Sequence[Template], papers: bool = False) -> Iterator[Part]:
    """The storage card: every template that belongs in the envelope, with a box to tick; or every kind of
    paper."""
    rows = tuple(
        Row(
            (
                each.label,
                cut_words(each),
                box_words(each.sew),
                "either" if each.reversible else "this side up",
            ),
            each.label,
        )
        for each in templates
    )
    one = "paper" if papers else "template"
    number = len(draft.pieces) if papers else len(templates)
    held = f"its one {one}" if number == 1 else f"its {number} {one}s"
    title = f"{draft.title}, version {draft.version}, {finished_size(draft)} finished"
    yield Section(title)
    yield Paragraph(
        f"Cut this card off and keep it in the envelope with {held}. Tick each kind as you put it away; a "
        f"box without a tick is a {one} to look for, or to cut again."
    )
    columns = (replace(CARD_COLUMNS[0], title=one), *CARD_COLUMNS[1:])
    yield Table(columns, rows, f"{one.capitalize()}s of {draft.title} in the envelope", ticks=True)
    yield List(("Check square measured, 1in", "Test block sewn and measured"), "box")
    yield List(("Made for", "Date"), "blank")
    yield CutLine()


def safety_chapter(rotary: bool) -> Chapter:
    """What to mind with the tools that are used, the rotary cutter among them or not, and at the machine."""
    return Chapter("Safety", (List((*safety_words(rotary), *MINDED)),), joins=True)


def glossary_chapter(words: Iterable[str]) -> Chapter:
    """The terms that the booklet's own words use."""
    text = " ".join(words).lower()
    rows = tuple(Row((term, meaning), term) for term, meaning in GLOSSARY.items()
                 if re.search(rf"\b{term}", text))
    columns = (Column("word", 110.0, bold=True), Column("what it means", 0.0))
    parts: tuple[Part, ...] = (Table(columns, rows, "Terms and what they mean"),)
    return Chapter("Glossary", parts, joins=True)
