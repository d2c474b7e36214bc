"""What can be told about an order of sewing."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Final

from ...diagnostics.diagnostic import Diagnostic, error
from ..phrases import count_of
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from ...diagnostics.source import Span
    from ...sewing.proof.misfit import Flaw, FlawKind

OUT: Final = "comes out {fine[0]} and is printed as {fine[1]}"
PLACES: Final = "at {0} other than the {1} printed"

REASONS: Final[Mapping[FlawKind, str]] = {
    "dot-off-corner": "a dot of template {0} lies on no corner",
    "mark-off-line": "a match mark of template {0} lies on no sewing line",
    "outline-open": "a printed outline is not closed",
    "cut-uneven": "a cutting line does not run even with its sewing line",
    "arc-misses-its-end": "an arc of {ruled[0]} does not pass through its own end",
    "no-template": "piece {0} has no template {1}",
    "cut-count": "template {0} is cut {1} times of {2}, not {3}",
    "edge-counts": "one side has {0} edges and the seam {1}",
    "side-lengths": "the seam is {ruled[1]} long and one side of it {ruled[0]}",
    "straight-to-curved": "a straight edge is to be sewn to a curved one",
    "no-length": "a seam has no length",
    "sides-apart": "the two sides of the seam lie {fine[0]} apart",
    "allowances-differ": "the allowance is {ruled[0]} on one side and {ruled[1]} on the other",
    "edge-inside": "an edge to be sewn is not on the outside of its part",
    "seam-length": f"the seam {OUT}",
    "seam-not-curved": "the seam is not curved as printed",
    "seam-turns": f"the seam turns {PLACES}",
    "seam-pins": f"curved edges are pinned {PLACES}",
    "seam-not-closed": "the seam does not close as printed",
    "needle-stops": "the needle is to stop where no seam ends",
    "none-to-leave-open": "no earlier seam can be left open there",
    "left-open-elsewhere": "the seam to be left open does not end there",
    "no-plain-side": "a strip has no side that is sewn from dot to dot",
    "mitre-allowances": "a mitre has two allowances",
    "mitre-count": "{0} can be closed, not {1}",
    "numbers-disagree": "the numbers of the steps, the units and their copies disagree",
    "part-missing": "there is no {0} yet",
    "part-taken": "a {0} is taken that is not there",
    "parts-left": "{0} are left, not one block",
    "window-count": "{0} has {1} windows, not {2}",
    "finished-width": f"the finished width of {{0}} {OUT}",
    "finished-height": f"the finished height of {{0}} {OUT}",
    "unfinished-width": f"the unfinished width of {{0}} {OUT}",
    "unfinished-height": f"the unfinished height of {{0}} {OUT}",
    "printed-a-rectangle": "{0} is printed as a rectangle",
    "not-printed-a-rectangle": "{0} is not printed as a rectangle",
    "other-pieces": "{0} is not made of the pieces printed for it",
    "its-outline-open": "its printed outline is not closed",
    "its-length-round": "it comes out {fine[0]} round and is printed as {fine[1]}",
    "its-area": "it covers another area than is printed",
    "its-outline": "its outline is not the one printed",
    "outer-allowance": f"the outer allowance {OUT}",
    "piece-twice-or-never": "not every piece of the block is sewn into it once",
    "piece-of-other-cloth": "piece {0} is of {1}, not of {2}",
    "first-copy-moved": "the first {0} does not lie where it is printed",
    "copy-of-other-pieces": "a copy of {0} has piece {1} where {2} should be",
}
"""Each flaw in words: its names by number, its lengths as a ruler shows them or to a thousandth."""

COUNTED: Final[Mapping[FlawKind, str]] = {
    "seam-turns": "place",
    "seam-pins": "place",
    "mitre-count": "mitre",
    "parts-left": "part",
}
"""What the first number of a flaw counts."""


@message
def does_not_sew(say: Say, span: Span, title: str, step: int, flaw: Flaw) -> Diagnostic:
    """The printed templates and steps, cut and sewn again, do not make the block: no sheet may leave.
    `step` counts from 1; 0 is before the first."""
    where = f"At step {step}" if step else "As cut"
    return error(
        "block-does-not-sew",
        f"{where}, {_reason(say, flaw)}.",
        span,
        "sewn again from what would be printed",
        help=f"This is a mistake in Piecewright, not in `{title}`: nothing was printed.",
    )


def _reason(say: Say, flaw: Flaw) -> str:
    names = list(flaw.names)
    if flaw.kind in COUNTED:
        names[0] = count_of(int(names[0]), COUNTED[flaw.kind])
    return REASONS[flaw.kind].format(
        *names,
        ruled=[say.length(each) for each in flaw.lengths],
        fine=[say.fine(each) for each in flaw.lengths],
    )
