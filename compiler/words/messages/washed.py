"""Complaints about washed blocks, and what is told of how they were drafted."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Final

from ...diagnostics.diagnostic import Diagnostic, Label, error, note, warning
from ...measure.length import UNITS, change_percent
from ...measure.tolerance import NEAR, Number
from ..numbers import exact_text, ruler_text
from ..phrases import count_of
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from ...diagnostics.source import Span
    from ...drafting.washed.model import Disagreement, Ruler, Shrinkage, Snapped

SIXTEENTHS: Final = 16  # of an inch: the marks of a tape, which distances that are only about so are told by

LABELS_MOST: Final = 12
"""Readings shown one by one under the note; the rest stand in the drafted file."""


@message
def size_before_missing(say: Say, span: Span, likely: tuple[Number, Number]) -> Diagnostic:
    """`washed` beside nothing that says how large the block was made."""
    size = say.length(likely[0]) if likely[0] == likely[1] else say.size(*likely)
    return error(
        "washed-alone",
        "This block says how large it is now, and not how large it was made.",
        span,
        help=f"Write the size it was drafted to, perhaps `finished {size}`.",
    )


@message
def read_too_coarsely(say: Say, span: Span, read_to: Fraction, most: Fraction) -> Diagnostic:
    """`read to 3in`."""
    return error(
        "washed-read-coarsely",
        f"Readings to {say.length(read_to)} are too coarse to draft from: over {say.length(most)}.",
        span,
        help="Write the finest mark that you read by, as in `read to 1/16in`.",
    )


@message
def washed_too_far(say: Say, span: Span, washed: Number, drafted: Number) -> Diagnostic:
    """A washed size that no washing makes."""
    change = change_text(change_percent(float(drafted), float(washed)))
    return error(
        "washed-too-far",
        f"From {say.length(drafted)} to {say.length(washed)} the block would have {change}.",
        span,
        help="Mend this size or the finished one. Cotton seldom changes by more than a tenth.",
    )


@message
def size_amiss(say: Say, span: Span, axis: str, size: float, longest: Snapped, ruler: Ruler) -> Diagnostic:
    """`washed 7 3/8in` beside readings of a block 7 7/8in wide, the longest of them shown."""
    about = by_ruler(say, Fraction(round(size * SIXTEENTHS), SIXTEENTHS), ruler)
    return warning(
        "washed-disagrees",
        f"By its readings the block is about {about} {axis} now.",
        span,
        related=(Label(longest.reading.span, f"drafted as {drafted_text(say, longest, ruler)}"),),
        help="Measure this side again. It was drafted by the readings.",
    )


@message
def reading_disagrees(say: Say, found: Disagreement, ruler: Ruler) -> Diagnostic:
    """A reading that lies off the grid on which others lie."""
    off, cell = (by_ruler(say, each, ruler) for each in (_by_tape(found.off), found.cell))
    return warning(
        "reading-disagrees",
        f"This reading lies {off} off the grid of {cell} that others lie on.",
        found.odd.reading.span,
        f"to lie on it, the block must have {change_text(found.implied)}",
        related=(Label(found.other.reading.span, f"by this one it has {change_text(found.theirs)}"),),
        help=f"Measure both again. If it stands, it was drafted as {drafted_text(say, found.odd, ruler)}.",
    )


def _by_tape(length: float) -> Fraction:
    """To the nearest 1/16in, and not nothing."""
    return max(Fraction(round(length * SIXTEENTHS), SIXTEENTHS), Fraction(1, SIXTEENTHS))


@message
def washed_drafted(
    say: Say, span: Span, shrinkage: Shrinkage, changed: Sequence[Snapped], readings: int, ruler: Ruler
) -> Diagnostic:
    """What was fitted, and every reading that was changed."""
    labels = tuple(
        Label(each.reading.span, f"drafted as {change_of(say, each, ruler)}")
        for each in changed[:LABELS_MOST]
    )
    what = f"{len(changed)} of {count_of(readings, 'reading')} changed"
    if not readings:
        what = "no `point` line holds a reading"
    return note(
        "washed-drafted",
        f"{washing_text(shrinkage)}; {what}.",
        span,
        related=labels,
        help="`piecewright draft` prints the drafted block, to be kept in place of this one.",
    )


# ---- parts of sentences ------------------------------------------------------------------------------


def by_ruler(say: Say, length: Number, ruler: Ruler) -> str:
    """A length as the block's own ruler shows it, `2 2/3in` or `5 1/2cm`: who is spoken to in centimetres
    hears them of every block."""
    return ruler_text(length / UNITS[ruler.unit], ruler.unit) if say.unit == "in" else say.length(length)


def washing_text(shrinkage: Shrinkage) -> str:
    """`Washed, it shrank by 1.6% across and grew by 1.5% down`; the verb once where it is the same."""
    changes = change_percent(1, shrinkage.across), change_percent(1, shrinkage.down)
    across, down = map(change_words, changes)
    if across == down:
        return f"Washed, it {across} each way"
    if min(map(abs, changes)) >= KEPT and (changes[0] < 0) == (changes[1] < 0):
        down = f"by {abs(changes[1]):.1f}%"
    return f"Washed, it {across} across and {down} down"


KEPT: Final = 0.05
"""Per cent under which a size is kept: the last decimal that is told."""


def _change(percent: float, shrunk: str, grown: str) -> str:
    if abs(percent) < KEPT:
        return "kept its size"
    return f"{shrunk if percent < 0 else grown} by {abs(percent):.1f}%"


def change_words(percent: float) -> str:
    """`shrank by 1.6%`, `grew by 0.5%`, `kept its size`."""
    return _change(percent, "shrank", "grew")


def change_text(percent: float) -> str:
    """`shrunk by 1.6%`, `grown by 0.5%`, `kept its size`."""
    return _change(percent, "shrunk", "grown")


def change_of(say: Say, snapped: Snapped, ruler: Ruler) -> str:
    """`2in, 1/16in more`: a drafted length, and how it differs from what was read."""
    return f"{drafted_text(say, snapped, ruler)}, {difference_text(say, snapped, ruler)}"


def drafted_text(say: Say, snapped: Snapped, ruler: Ruler) -> str:
    """`2in`, or `1/3 of the way (2 2/3in)`."""
    length = by_ruler(say, snapped.length, ruler)
    if snapped.share is None:
        return length
    return f"{exact_text(snapped.share)} of the way ({length})"


def difference_text(say: Say, snapped: Snapped, ruler: Ruler) -> str:
    """`1/16in more` than was read."""
    difference = float(snapped.length) - float(snapped.reading.length)
    if abs(difference) <= NEAR:
        return "as read"
    return f"{by_ruler(say, abs(difference), ruler)} {'more' if difference > 0 else 'less'}"
