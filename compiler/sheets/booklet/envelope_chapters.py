"""The short chapters at a booklet's end: what makes the block hard, storage card, safety, glossary."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import Final, Literal

from ...cutting.model import Template
from ...drafting.model import Draft
from ...sewing.difficulty import Difficulty, Trouble, causes
from ...words.pages.labels import cut_words
from ...words.work.difficulty import cause_words
from ..arrange.block_sheets import finished_size
from ..arrange.table import box_words
from ..quilts.flow import Column, Row
from ..quilts.tools import safety_words
from .content import Chapter, CutLine, List, Paragraph, Part, Section, Table

CARD_COLUMNS: Final = (
    Column("template", 60.0, bold=True),
    Column("cut, for one block", 220.0),
    Column("finished, over all", 100.0),
    Column("which way up", 0.0),
)

GLOSSARY: Final[dict[str, str]] = {
    "allowance": "The strip of cloth between the cut edge and the seam.",
    "backing": "The cloth of the quilt's back, larger than the top all round until it is quilted.",
    "backstitch": "A stitch back over the last one, so that a seam holds at its end.",
    "baste": "To hold with long stitches that come out again.",
    "batting": "The soft layer between top and back.",
    "bias": "The slant across the threads, where cloth stretches most. Handle bias edges gently.",
    "binding": "A strip of cloth folded round the quilt's edge.",
    "border": "Strips or patchwork round the middle of a quilt.",
    "crosswise grain": "The threads from selvage to selvage; they give a little.",
    "dot": "Where two seams meet: the needle starts, stops or turns there.",
    "ease": "To take up a little fullness between pins, without a pleat.",
    "fat eighth": "Half a fat quarter: about 9in x 21in of cloth.",
    "fat quarter": "Half a yard of cloth cut in two across its width: about 18in x 21in.",
    "finger-press": "To crease a seam with a fingernail or a wooden tool, without the iron.",
    "finished size": "The size when all seams are sewn; unfinished size has the outer allowances still on.",
    "foundation": "Paper or cloth on whose lines the pieces are sewn, in order of their numbers.",
    "grain": "The way the threads run. The arrow on a template lies along the straight of grain.",
    "half-square triangle": "Half of a square cut corner to corner: straight of grain on its short sides.",
    "lock": "To make a few stitches on the spot, so that a seam does not open.",
    "match mark": "A tick across a seam line; it meets the tick on the piece it is sewn to.",
    "mitre": "A corner where two strips meet along a slant, as on a picture's frame.",
    "nest": "To push together two seams that are pressed opposite ways, so that they lie flat.",
    "on point": "Set cornerwise: a block that stands on one of its corners.",
    "paper piece": "A paper of finished size over which cloth is folded to be sewn by hand.",
    "partial seam": "A seam sewn only part of the way, and closed when the pieces round it are on.",
    "patch": "One piece of cloth of a foundation.",
    "post": "A square where strips of sashing meet.",
    "quarter-square triangle": "A quarter of a square cut twice: straight of grain on its long side.",
    "press": "To set the iron down and lift it again: pushing it along would stretch the cloth.",
    "reversed": "Cut with the template turned face down.",
    "right side": "The side of cloth that shows in the quilt; the other is its wrong side.",
    "rotary cutter": "A round blade in a handle, used along a ruler on a mat.",
    "running stitch": "Small even stitches in and out of the cloth along a line.",
    "sashing": "Strips between blocks.",
    "seam ripper": "A small forked blade that cuts the stitches of a seam.",
    "selvage": "The woven edge of the cloth; it is cut off.",
    "set in": "To sew a piece into a corner: the seam turns at a dot.",
    "side triangle": "Half of a block, cut large: it fills the edge of blocks that stand on their corners.",
    "stay-stitch": "To sew a line just inside a bias edge, so that it does not stretch.",
    "strip set": "Strips sewn side by side along their length, then cut across into rows.",
    "template": "A pattern of card or plastic to cut one shape by.",
    "true up": "To trim to the exact size.",
    "two-triangle square": "A square of two triangles, sewn along its diagonal.",
    "unit": "Pieces sewn together that go into the block as one.",
    "whip": "To sew over two edges with small slanted stitches.",
}
"""Terms of the trade, each explained once. A booklet lists those that its own pages use."""

FORMS: Final[dict[str, str]] = {
    "baste": "bast(e|ed|ing)",
    "ease": "eas(e|ed|ing)",
    "finger-press": "finger-press(ed)?",
    "finished size": "(un)?finished",
    "lock": "lock (it|the stitch)",
    "nest": "nest(s|ed)?",
    "press": "press(ed)?",
    "right side": "(right|wrong) sides?",
    "set in": "set-in|set in[,:]",
    "whip": "whip(s|ped)?",
}
"""How pages write a term otherwise than as it stands, or with an s: as patterns."""

AT_MACHINE: Final = (
    "The machine: keep your fingers clear of the needle, and switch it off before you thread it or change a "
    "needle or foot.",
    "Mind the cords: nobody should trip over iron or machine.",
)
BY_HAND: Final = (
    "Count needles and pins before you put your work away: one left in a quilt hurts whoever finds it.",
    "Mind the iron’s cord: nobody should trip over it.",
)
MINDED: Final = "Good light and a chair of the right height save eyes and back; stop before you are tired."
"""What to mind with any work, besides the tools that cut (common practice, no published source)."""

CutOut = Literal["template", "paper shape", ""]
"""What there is one of for each shape, by the way a block is sewn; on foundations nothing."""

ADVICE: Final[dict[Trouble, dict[CutOut, str]]] = {
    "smallest-angle": {
        "template": "sharp points need trimmed tips and a careful first stitch",
        "paper shape": "fold one edge over the other there, and let the tail hang",
        "": "sew exactly on the lines, and the point comes out sharp",
    },
    "bias-edges": {
        "template": "do not pull them while you sew or press; stay-stitch them if they wait",
        "paper shape": "the papers hold them; be gentle once the papers are out",
        "": "leave the paper in until they are sewn to what comes next",
    },
    "set-in-seams": {
        "template": "stop exactly at the dots",
        "paper shape": "bend the papers at the corner, and whip on",
    },
    "partial-seams": {
        "template": "sew only as far as the step says, and close it when the step says",
        "paper shape": "sew only as far as the step says, and close it when the step says",
    },
    "seams-all-round": {
        "template": "pin at all marks before you sew",
        "paper shape": "pin at four places first, and begin anywhere",
    },
    "curved-seams": {
        "template": "pin at the marks, and sew slowly with the hollow edge on top",
        "paper shape": "clip the hollow edges, and baste them smooth",
    },
    "points-that-meet": {
        "template": "pin through the points before you sew",
        "paper shape": "whip right into the corner, so that no hole stays",
        "": "pin through the points before you join sections",
    },
    "most-at-one-point": {
        "template": "press as the steps show, or open where it grows too thick to lie flat",
        "paper shape": "fold all tails the same way round, so that it lies flat",
        "": "press open, so that it lies flat",
    },
}
"""What each cause asks of the sewer, by the way the block is sewn."""

SHARP: Final = 50.0
"""Degrees of the widest corner that is called a sharp point: half a square's, and what is near it, is one."""


def difficulty_chapter(found: Difficulty, cut_out: CutOut) -> Chapter:
    """What makes the block hard, each cause by itself."""
    return Chapter(
        "What makes it hard",
        (
            Paragraph("There is no score: these are the causes, and what each asks of you."),
            List(tuple(cause_lines(found, cut_out))),
        ),
        joins=True,
    )


def cause_lines(found: Difficulty, cut_out: CutOut = "template") -> Iterator[str]:
    """The causes with what each asks, a line each."""
    for cause in causes(found):
        if cause.what == "shapes" and not cut_out:
            continue
        words, advice = cause_words(cause, cut_out), ADVICE.get(cause.what, {}).get(cut_out, "")
        if cause.what == "smallest-angle" and found.smallest_angle > SHARP:
            advice = "no point is sharp"
        yield f"{words[:1].upper()}{words[1:]}{f': {advice}' if advice else ''}."


def card_chapter(draft: Draft, templates: Sequence[Template], papers: bool = False) -> Chapter:
    """The storage card of one block."""
    return Chapter("Storage card", tuple(card_parts(draft, templates, papers)))


def card_parts(draft: Draft, templates: Sequence[Template], papers: bool = False) -> Iterator[Part]:
    """The storage card: every template that belongs in the envelope, with a box to tick; or every kind of
    paper."""
    ways = () if papers else (("this side up", "either"),)  # papers are all laid print up
    rows = tuple(
        Row(
            (each.label, cut_words(each), box_words(each.sew), *(way[each.reversible] for way in ways)),
            each.label,
        )
        for each in templates
    )
    one = "paper" if papers else "template"
    number = len(draft.pieces) if papers else len(templates)
    held = {1: f"its one {one}", 2: f"both {one}s"}.get(number, f"its {number} {one}s")
    title = f"{draft.title}, version {draft.version}, {finished_size(draft)} finished"
    yield Section(title)
    yield Paragraph(
        f"Cut this card off and keep it in the envelope with {held}. Tick each kind as you put it away; a "
        f"box without a tick is a {one} to look for, or to cut again."
    )
    columns = (replace(CARD_COLUMNS[0], title=one), *CARD_COLUMNS[1 : 3 if papers else 4])
    yield Table(columns, rows, f"{one.capitalize()}s of {draft.title} in the envelope", ticks=True)
    yield List(("Check square measured, 1in", "Test block sewn and measured"), "box")
    yield List(("Made for", "Date"), "blank")
    yield CutLine()


def safety_chapter(rotary: bool, machine: bool = True) -> Chapter:
    """What to mind with the tools that are used, the rotary cutter and the sewing machine among them or
    not."""
    minded = (*(AT_MACHINE if machine else BY_HAND), MINDED)
    return Chapter("Safety", (List((*safety_words(rotary), *minded)),), joins=True)


def glossary_chapter(words: Iterable[str]) -> Chapter:
    """The terms that the booklet's own words use."""
    text = " ".join(words).lower()
    rows = tuple(
        Row((term, meaning), term)
        for term, meaning in GLOSSARY.items()
        if re.search(rf"\b({FORMS.get(term, f'{term}(e?s)?')})(?!\w)", text)
    )
    columns = (Column("word", 110.0, bold=True), Column("what it means", 0.0))
    parts: tuple[Part, ...] = (Table(columns, rows, "Terms and what they mean", title="Glossary"),)
    return Chapter("Glossary", parts, joins=True)
