"""The words of every complaint about a quilt."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from ...diagnostics.diagnostic import Diagnostic, Label, error, note, warning
from ..phrases import did_you_mean, one_of
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from ...diagnostics.source import Span
    from ...language import quilt_tree
    from ...measure.tolerance import Number

Several = Literal["borders", "colourways"]


@message
def set_missing(say: Say, quilt: quilt_tree.Quilt) -> Diagnostic:
    """A quilt that sets no blocks."""
    return error(
        "set-missing",
        "This quilt sets no blocks.",
        quilt.title.span,
        help="Write `set straight 4 across 5 down { ... }`, `set on point ...` or `set rows ...`.",
    )


@message
def block_too_small(
    say: Say, span: Span, title: str, size: tuple[Number, Number], width: float
) -> Diagnostic:
    """A block drafted so small that a piece of it can be neither cut nor sewn."""
    return error(
        "block-too-small",
        f'At {say.size(*size)} a piece of "{title[:40]}" is at most {say.fine(width)} wide.',
        span,
        help="Write a larger size, or take a block of fewer pieces.",
    )


@message
def too_many_pieces(say: Say, span: Span, count: int, most: int) -> Diagnostic:
    """More pieces than the compiler takes on."""
    return error(
        "quilt-too-large",
        f"This quilt has {count:,} pieces, and {most:,} is the most.",
        span,
        help="Are the counts right? Make it of fewer or simpler blocks.",
    )


@message
def too_many_of(say: Say, span: Span, things: Several, count: int, most: int) -> Diagnostic:
    """More borders, or colourways, than a quilt may have."""
    return error(
        "quilt-too-large",
        f"This quilt has {count:,} {things}, and {most:,} is the most.",
        span,
        help="Take some away, or make it two quilts.",
    )


@message
def border_no_room(
    say: Say, span: Span, want: tuple[Number, Number], have: tuple[Number, Number]
) -> Diagnostic:
    """`border to` a size that the quilt has reached already."""
    return error(
        "border-no-room",
        f"The quilt is {say.size(*have)} here already, and this border goes to {say.size(*want)}.",
        span,
        help="Write a larger size, or take the border away.",
    )


@message
def border_unequal_mitre(say: Say, span: Span, side: Number, end: Number) -> Diagnostic:
    """Mitred borders of two widths."""
    return error(
        "border-unequal",
        f"This border would be {say.length(side)} wide at the sides and {say.length(end)} at top and bottom.",
        span,
        help="Only plain butted borders may differ: a mitre or a unit needs one width.",
    )


@message
def border_unfit(
    say: Say, span: Span, side: str, length: Number, under: tuple[int, Number], over: tuple[int, Number]
) -> Diagnostic:
    """A pieced border that does not come out."""
    return error(
        "border-unfit",
        f"The {side} is {say.length(length)} long: "
        f"{under[0]} units make {say.length(under[1])}, {over[0]} make {say.length(over[1])}.",
        span,
        help="Put a plain border of the missing width inside this one, or change the unit's size.",
    )


@message
def border_across_print(
    say: Say, span: Span, width: Number, length: Number, fabric: str, wide: Number
) -> Diagnostic:
    """A border strip that may not be joined, across a print with a direction that is not so wide."""
    size = say.size(width, length)
    return error(
        "border-too-long",
        f"This border needs a strip {size} with its print up, and `{fabric}` is {say.length(wide)} wide.",
        span,
        help="Take `unjoined` away, or cut the border from cloth without a direction.",
    )


@message
def border_too_long(say: Say, span: Span, width: Number, length: Number, fabric: str) -> Diagnostic:
    """A border strip that may not be joined, longer than every scrap or fat quarter."""
    return error(
        "border-too-long",
        f"This border needs a strip {say.size(width, length)}, and no piece of `{fabric}` is as long.",
        span,
        help="Take `unjoined` away, or cut the border off the bolt, where it runs along the cloth.",
    )


@message
def mattress_unknown(say: Say, fits: quilt_tree.Fits, known: Sequence[str]) -> Diagnostic:
    """A bed that no list has."""
    words = " ".join(each.text for each in fits.mattress)
    return error(
        "mattress-unknown",
        f"No list here has the mattress `{words}`.",
        fits.span,
        help=did_you_mean(words, known) or f"Known are {one_of(list(known), 'and')}.",
    )


@message
def fits_not(
    say: Say,
    span: Span,
    want: tuple[Number, Number],
    made: tuple[Number, Number],
    across: Number,
    down: Number,
) -> Diagnostic:
    """A quilt that misses the size it should reach, by so much; 0 where that is too little to say."""
    wanted = say.size(*want)

    def off(length: Number, more: str, less: str) -> str:
        return f"{say.length(max(length, -length))} {more if length > 0 else less}" if length else ""

    both = (off(across, "too wide", "too narrow"), off(down, "too long", "too short"))
    parts = [each for each in both if each]
    return note(
        "fits-not",
        f"The quilt is {say.size(*made)} and this bed wants {wanted}: {one_of(parts, 'and')}.",
        span,
        help=f"`border to {wanted} in sand` as a last border makes it up."
        if max(across, down) <= 0
        else "Take a border or some blocks away, or change the drop.",
    )


@message
def statement_missing(say: Say, quilt: quilt_tree.Quilt, words: Sequence[str]) -> Diagnostic:
    """Binding, backing or batting that is not mentioned."""
    return note(
        "quilt-incomplete", f"This quilt mentions no {one_of(words)}, so none is cut.", quilt.title.span
    )


@message
def quilt_twice(say: Say, title: str, version: int, span: Span, first: Span) -> Diagnostic:
    """Two quilts of one title and version."""
    return error(
        "quilt-twice",
        f'There are two quilts "{title[:60]}" version {version} in this file.',
        span,
        related=(Label(first, "the first"),),
    )


@message
def block_no_rectangle(say: Say, span: Span, title: str) -> Diagnostic:
    """A block that does not fill its cell, told where it is first set."""
    return error(
        "block-no-rectangle",
        f"`{title}` is no rectangle: beside it this quilt would have holes.",
        span,
        help="Use it in a block with a rectangular outline, which gives it a ground.",
    )


@message
def allowances_differ(say: Say, span: Span, title: str, over: float, usual: Number) -> Diagnostic:
    """A block whose outside has another allowance than strips and borders."""
    return warning(
        "quilt-allowances-differ",
        f"`{title}` has {say.length(over)} of allowance outside, the quilt's own pieces {say.length(usual)}.",
        span,
        help=f"Write `allowance {say.length(over)}` in the quilt, or `allowance {say.length(usual)}` in the "
        "block; or match the sewing lines, not the cut edges.",
    )


@message
def width_unlikely(
    say: Say, span: Span, what: Literal["binding", "sashing", "border", "over"], width: Number
) -> Diagnostic:
    """`binding 100in in sand`."""
    told = {
        "binding": "A binding cut {} wide",
        "sashing": "Sashing {} wide",
        "border": "A border {} wide",
        "over": "{} over on each side",
    }[what]
    return _unlikely(span, told.format(say.length(width)))


@message
def shrinkage_unlikely(say: Say, span: Span, fabric: str, share: Fraction) -> Diagnostic:
    """`shrinks 30%`."""
    return _unlikely(span, f"`{fabric}` loses {float(share) * 100:.4g}% in the wash")


def _unlikely(span: Span, what: str) -> Diagnostic:
    return note(
        "size-unlikely",
        f"{what}: is this meant?",
        span,
        help="It is taken as written. Look at the number and its unit.",
    )
