"""What makes a block hard, and what each cause asks of the sewer."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from ...sewing.difficulty import Trouble
    from ...sheets.work import CutOut

TITLE: Final = "What makes it hard"
NO_SCORE: Final = "There is no score: these are the causes, and what each asks of you."
NO_SCORES: Final = "There is no score: these are the causes in each block, and what each asks of you."
NOT_SHARP: Final = "no point is sharp"

ADVICE: Final[dict[Trouble, dict[CutOut, str]]] = {
    "smallest-angle": {
        "template": "sharp points need trimmed tips and a careful first stitch",
        "paper-shape": "fold one edge over the other there, and let the tail hang",
        "": "sew exactly on the lines, and the point comes out sharp",
    },
    "bias-edges": {
        "template": "do not pull them while you sew or press; stay-stitch them if they wait",
        "paper-shape": "the papers hold them; be gentle once the papers are out",
        "": "leave the paper in until they are sewn to what comes next",
    },
    "set-in-seams": {
        "template": "stop exactly at the dots",
        "paper-shape": "bend the papers at the corner, and whip on",
    },
    "partial-seams": {
        "template": "sew only as far as the step says, and close it when the step says",
        "paper-shape": "sew only as far as the step says, and close it when the step says",
    },
    "seams-all-round": {
        "template": "pin at all marks before you sew",
        "paper-shape": "pin at four places first, and begin anywhere",
    },
    "curved-seams": {
        "template": "pin at the marks, and sew slowly with the hollow edge on top",
        "paper-shape": "clip the hollow edges, and baste them smooth",
    },
    "points-that-meet": {
        "template": "pin through the points before you sew",
        "paper-shape": "whip right into the corner, so that no hole stays",
        "": "pin through the points before you join sections",
    },
    "most-at-one-point": {
        "template": "press as the steps show, or open where it grows too thick to lie flat",
        "paper-shape": "fold all tails the same way round, so that it lies flat",
        "": "press open, so that it lies flat",
    },
}
"""What each cause asks of the sewer, by the way the block is sewn."""
