"""Terms of the trade, each explained once."""

from __future__ import annotations

from typing import Final

from ..say import Say

TITLE: Final = "Glossary"
TERM: Final = "word"
MEANING: Final = "what it means"
CAPTION: Final = "Terms and what they mean"

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

IN_CENTIMETRES: Final = {
    "fat eighth": "Half a fat quarter: about 23cm x 53cm of cloth.",
    "fat quarter": "A quarter of a length of cloth, cut in two across its width: about 46cm x 53cm.",
}
"""Meanings with sizes, for who reads in centimetres."""


def meaning_words(say: Say, term: str) -> str:
    """What a term means."""
    return IN_CENTIMETRES.get(term, GLOSSARY[term]) if say.unit == "cm" else GLOSSARY[term]


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
