"""What the checks of `lint` say: habits of good pattern files."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from ...diagnostics.diagnostic import Diagnostic, Fix, Severity, warning
from ...diagnostics.source import Span
from ...measure.tolerance import Number
from ..phrases import did_you_mean
from ..say import INCHES, Say
from .mends import taken_away, written
from .message import message

TITLE_SHOWN: Final = 60
"""Letters of a title that a message repeats."""

NAME_SHOWN: Final = 40
"""Letters of the name of a check that a message repeats."""


@message
def told_again(say: Say, first: Diagnostic, idle: Span | None) -> Diagnostic:
    """What compiling said that is a habit, too; with the mend that takes idle words away."""
    fix = taken_away(idle) if idle else first.fix
    return replace(first.said(say), severity=Severity.WARNING, related=(), fix=fix)


@message
def family_missing(say: Say, span: Span, title: str) -> Diagnostic:
    """A block without a family."""
    return warning(
        "family-missing",
        f'"{title[:TITLE_SHOWN]}" has no family to be found by.',
        span,
        help="Write `family` and a word such as `star` or `nine-patch`.",
    )


@message
def maker_missing(say: Say, span: Span, title: str) -> Diagnostic:
    """A block or quilt of which nobody can tell where it comes from."""
    return warning(
        "maker-missing",
        f'Nothing says where "{title[:TITLE_SHOWN]}" comes from.',
        span,
        help='Write `maker "..."`, or a `note` with the source of its name.',
    )


@message
def version_missing(say: Say, span: Span, title: str) -> Diagnostic:
    """A block or quilt without a version."""
    return warning(
        "version-missing",
        f'"{title[:TITLE_SHOWN]}" has no version; it counts as 1.',
        span,
        help="Write `version 1` after the title.",
        fix=Fix("Write `version 1`", Span(span.source, span.end, span.end), " version 1"),
    )


@message
def use_unversioned(say: Say, span: Span, title: str, version: int) -> Diagnostic:
    """A use of a block from elsewhere that takes whatever version is the newest."""
    return warning(
        "use-unversioned",
        f'This takes the newest "{title[:TITLE_SHOWN]}", whichever that is.',
        span,
        help=f"Write `version {version}` after the title: that is today's.",
        fix=Fix(f"Write `version {version}`", Span(span.source, span.end, span.end), f" version {version}"),
    )


@message
def title_blanks(say: Say, span: Span, tidy: str) -> Diagnostic:
    """A title that begins or ends with a blank, or has two together; and as it is written without."""
    return warning(
        "title-blanks",
        "This title has blanks that nobody sees.",
        span,
        help=f"Write `{tidy}`.",
        fix=Fix("Take the blanks away", span, tidy),
    )


@message
def also_repeats(say: Say, span: Span, name: str, mended: Span, text: str) -> Diagnostic:
    """A name that the block has already; what takes the place of the statement, or of its words."""
    return warning(
        "also-repeats",
        f'"{name[:TITLE_SHOWN]}" is a name of this block already.',
        span,
        help="Take it away.",
        fix=Fix("Take it away", mended, text),
    )


@message
def size_off_ruler(say: Say, span: Span) -> Diagnostic:
    """A size that neither an inch nor a centimetre ruler marks."""
    return warning(
        "size-off-ruler",
        "A ruler does not mark this size.",
        span,
        "neither an eighth of an inch nor a quarter of a centimetre",
        help="Every piece that is cut by it falls between two marks.",
    )


@message
def length_decimal(say: Say, span: Span, words: str, inches: Fraction) -> Diagnostic:
    """Inches written as a decimal that a ruler shows as a fraction: mended in inches for every reader."""
    new = INCHES.length(inches)
    return warning(
        "length-decimal",
        f"A ruler shows `{words}` as `{new}`.",
        span,
        help=f"Write `{new}`.",
        fix=written(span, new),
    )


@message
def piece_all_allowance(
    say: Say, span: Span, name: str, number: int, label: str, allowance: Fraction
) -> Diagnostic:
    """A piece that is nowhere wider than its allowance; `name` is empty where the writer gave none."""
    called = f"The piece `{name}`" if name else f"Piece {number}, template {label},"
    return warning(
        "piece-all-allowance",
        f"{called} is nowhere wider than its {say.length(allowance)} seam allowance.",
        span,
        help="Behind it would lie nothing but seams. Make it wider.",
    )


@message
def template_near_twin(say: Say, span: Span, one: str, two: str, apart: Number) -> Diagnostic:
    """Two templates that cannot be told apart in a pile of cut cloth."""
    return warning(
        "template-near-twin",
        f"Templates {one} and {two} differ by less than {say.length(apart)}.",
        span,
        help="Is one shape meant? Then one of the points is a little off.",
    )


@message
def allow_unknown(say: Say, span: Span, name: str, known: Sequence[str]) -> Diagnostic:
    """A silence of a check that does not exist."""
    return warning(
        "allow-unknown",
        f"There is no check called `{name[:NAME_SHOWN]}`.",
        span,
        help=did_you_mean(name, known) or "See `piecewright lint --list`.",
    )


@message
def allow_idle(say: Say, span: Span, name: str) -> Diagnostic:
    """A silence where there is nothing to silence."""
    return warning("allow-idle", f"`{name}` has nothing to say here.", span, help="Take the name away.")
