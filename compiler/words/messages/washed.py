"""Complaints about washed blocks, and what is told of how they were drafted."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from ...diagnostics.diagnostic import Diagnostic, Label, error, note, warning
from ...measure.length import change_percent
from ...measure.tolerance import NEAR, Number, near
from ..numbers import exact_text
from ..phrases import count_of
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from collections.abc import Iterator

    from ...diagnostics.source import Span
    from ...drafting.washed.model import Measured, Ruler, Snapped
    from ...language import tree

SIXTEENTHS: Final = 16  # of an inch: the marks of a tape, which distances that are only about so are told by

LABELS_MOST: Final = 12
"""Readings shown one by one under the note; the rest stand in the drafted file."""

USUAL: Final = Fraction(98, 100)
"""A scale between what most old cottons have kept, for guessing at a size."""

AMISS: Final = 2
"""Marks by which a washed size may differ from what the readings make of it: one at each end."""

AGREEING_LEAST: Final = 2
"""Readings that must lie on the grid before another can be said to disagree with them."""


@message
def size_before_missing(say: Say, washed: tree.Washed) -> Diagnostic:
    """`washed` beside nothing that says how large the block was made."""
    sizes = [
        say.length(max(round(each.inches / USUAL), 1))
        for each in (washed.width, washed.height or washed.width)
    ]
    likely = sizes[0] if sizes[0] == sizes[1] else " x ".join(sizes)
    return error(
        "washed-alone",
        "This block says how large it is now, and not how large it was made.",
        washed.span,
        help=f"Write the size it was drafted to, perhaps `finished {likely}`.",
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


def all_said(measured: Measured) -> Iterator[Diagnostic]:
    """What there is to tell of a measured draft."""
    yield from _sizes_amiss(measured)
    yield from _disagreements(measured)
    yield _drafted(measured)


def _sizes_amiss(measured: Measured) -> Iterator[Diagnostic]:
    """A washed size that the readings contradict."""
    washed, fitted = measured.washed, measured.shrinkage
    for axis, length, drafted, scale in (
        ("across", washed.width, measured.width, fitted.across),
        ("down", washed.height, measured.height, fitted.down),
    ):
        agreeing = [each for each in measured.snapped if each.on_grid and each.reading.axis == axis]
        if length is None or len(agreeing) < AGREEING_LEAST:
            continue
        size = float(drafted) * scale
        if abs(size - float(length.inches)) > AMISS * float(measured.error):
            yield size_amiss(
                length.span, axis, size, max(agreeing, key=lambda each: each.reading.length), measured.ruler
            )


@message
def size_amiss(say: Say, span: Span, axis: str, size: float, longest: Snapped, ruler: Ruler) -> Diagnostic:
    """`washed 7 3/8in` beside readings of a block 7 7/8in wide."""
    about = ruler.text(Fraction(round(size * SIXTEENTHS), SIXTEENTHS))
    return warning(
        "washed-disagrees",
        f"By its readings the block is about {about} {axis} now.",
        span,
        related=(Label(longest.reading.span, f"drafted as {drafted_text(longest, ruler)}"),),
        help="Measure this side again. It was drafted by the readings.",
    )


def _disagreements(measured: Measured) -> Iterator[Diagnostic]:
    """Readings that lie off the grid on which the others lie."""
    for each in measured.snapped:
        agreeing = [
            other for other in measured.snapped if other.on_grid and other.reading.axis == each.reading.axis
        ]
        if (
            each.on_grid
            or each.reading.origin is None
            or each.reading.axis == "slanted"
            or len(agreeing) < AGREEING_LEAST
        ):
            continue
        yield _disagrees(each, max(agreeing, key=lambda other: float(other.length)), measured)


def _disagrees(odd: Snapped, other: Snapped, measured: Measured) -> Diagnostic:
    across = odd.reading.axis == "across"
    grid = measured.grids[0]
    cell = float(measured.width) / grid.across if across else float(measured.height) / grid.down
    scale = measured.shrinkage.across if across else measured.shrinkage.down
    assert odd.reading.origin is not None
    start = float(odd.reading.origin.x if across else odd.reading.origin.y)
    way = odd.reading.step[0 if across else 1]
    end = start + way * float(odd.reading.length) / scale
    line = round(end / cell) * cell
    nearest = max(abs(line - start), cell)
    implied = change_text(change_percent(nearest, float(odd.reading.length)))
    theirs = change_text(change_percent(float(other.length), float(other.reading.length)))
    return warning(
        "reading-disagrees",
        f"This reading lies {measured.ruler.text(_by_tape(abs(end - line)))} off the grid of"
        f" {measured.ruler.text(cell)} that others lie on.",
        odd.reading.span,
        f"to lie on it, the block must have {implied}",
        related=(Label(other.reading.span, f"by this one it has {theirs}"),),
        help=f"Measure both again. If it stands, it was drafted as {drafted_text(odd, measured.ruler)}.",
    )


def _by_tape(length: float) -> Fraction:
    """To the nearest 1/16in, and not nothing."""
    return max(Fraction(round(length * SIXTEENTHS), SIXTEENTHS), Fraction(1, SIXTEENTHS))


def _drafted(measured: Measured) -> Diagnostic:
    """What was fitted, and every reading that was changed."""
    changed = [each for each in measured.snapped if not near(each.reading.length, each.length)]
    labels = tuple(
        Label(each.reading.span, f"drafted as {change_of(each, measured.ruler)}")
        for each in changed[:LABELS_MOST]
    )
    what = f"{len(changed)} of {count_of(len(measured.snapped), 'reading')} changed"
    if not measured.snapped:
        what = "no `point` line holds a reading"
    return note(
        "washed-drafted",
        f"{washing_text(measured)}; {what}.",
        measured.washed.span,
        related=labels,
        help="`piecewright draft` prints the drafted block, to be kept in place of this one.",
    )


def washing_text(measured: Measured) -> str:
    """`Washed, it shrank by 1.6% across and grew by 1.5% down`; the verb once where it is the same."""
    shrinkage = measured.shrinkage
    across, down = (change_words(change_percent(1, scale)) for scale in (shrinkage.across, shrinkage.down))
    if across == down:
        return f"Washed, it {across} each way"
    verb = across.partition("by ")
    if verb[1] and down.startswith(verb[0]):
        down = down.removeprefix(verb[0])
    return f"Washed, it {across} across and {down} down"


def change_words(percent: float) -> str:
    """`shrank by 1.6%`, `grew by 0.5%`, `kept its size`."""
    if abs(percent) < 0.05:
        return "kept its size"
    return f"{'shrank' if percent < 0 else 'grew'} by {abs(percent):.1f}%"


def change_text(percent: float) -> str:
    """`shrunk by 1.6%`, `grown by 0.5%`, `kept its size`."""
    return change_words(percent).replace("shrank", "shrunk").replace("grew", "grown")


def change_of(snapped: Snapped, ruler: Ruler) -> str:
    """`2in, 1/16in more`: a drafted length, and how it differs from what was read."""
    return f"{drafted_text(snapped, ruler)}, {difference_text(snapped, ruler)}"


def drafted_text(snapped: Snapped, ruler: Ruler) -> str:
    """`2in`, or `1/3 of the way (2 2/3in)`."""
    length = ruler.text(snapped.length)
    if snapped.share is None:
        return length
    return f"{exact_text(snapped.share)} of the way ({length})"


def difference_text(snapped: Snapped, ruler: Ruler) -> str:
    """`1/16in more` than was read."""
    difference = float(snapped.length) - float(snapped.reading.length)
    if abs(difference) <= NEAR:
        return "as read"
    return f"{ruler.text(abs(difference))} {'more' if difference > 0 else 'less'}"
