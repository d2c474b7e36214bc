"""What a writer can be told about cloth that is not enough."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ...diagnostics.diagnostic import Diagnostic, error, warning
from ...diagnostics.source import NOWHERE, Span
from ..phrases import count_of, one_of
from ..rulers import length_text
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from ...cutting.needs import Fabric
    from ...measure.tolerance import Number

Size = tuple["Number", "Number"]
Box = tuple[str, "Number", "Number"]
"""What a box of cloth is called, and its size."""

SHOWN: Final = 3  # kinds of missing pieces that a message names


def place_of(fabric: Fabric) -> Span:
    """The words that bring the fabric in."""
    return fabric.origin or NOWHERE


@message
def cloth_short(
    say: Say, fabric: Fabric, missing: Sequence[tuple[int, Box]], needed: int | None, step: Fraction
) -> Diagnostic:
    """Fat quarters or scraps that do not hold every piece: how many of each kind are left."""
    quarters = all(scrap.fat_quarter for scrap in fabric.scraps)
    thing, things = ("fat quarter", "fat quarters") if quarters else ("scrap", "scraps")
    have = count_of(len(fabric.scraps), thing, things)
    verb = "leaves" if len(fabric.scraps) == 1 else "leave"
    more = f", and {len(missing) - SHOWN} more kinds" if len(missing) > SHOWN else ""
    told = [f"{_things(count, box[0])} {_size(say, box[1:], step)}" for count, box in missing[:SHOWN]]
    larger = "Give it larger pieces of cloth, or cut it off the bolt."
    help = f"It takes {needed} like the largest." if needed else larger
    return error(
        "cloth-short",
        f"{have} of `{fabric.name}` {verb} no room for {one_of(told, 'and')}{more}.",
        place_of(fabric),
        help=help,
    )


@message
def scrap_too_small(say: Say, fabric: Fabric, size: Size, smallest: Size, step: Fraction) -> Diagnostic:
    """A scrap that holds none of the pieces."""
    return warning(
        "scrap-too-small",
        f"No piece of `{fabric.name}` can be cut from the scrap {_size(say, size, step)}.",
        place_of(fabric),
        help=f"The smallest is {_size(say, smallest, step)}.",
    )


@message
def piece_too_wide(say: Say, fabric: Fabric, piece: Box, step: Fraction) -> Diagnostic:
    """A piece that the cloth does not hold whichever way it lies."""
    return error(
        "piece-too-wide",
        f"`{fabric.name}` is {_length(say, fabric.usable_width, step)} wide, "
        f"too narrow for a {piece[0]} {_size(say, piece[1:], step)}.",
        place_of(fabric),
        help="Divide the piece by a seam, or use wider cloth.",
    )


@message
def backing_not_off_bolt(say: Say, fabric: Fabric) -> Diagnostic:
    """A back from scraps."""
    return error(
        "backing-from-scraps",
        f"The back is cut off the bolt, and `{fabric.name}` is in pieces.",
        place_of(fabric),
        help="Bring in another fabric for the backing, by its width.",
    )


def _length(say: Say, length: Number, step: Fraction) -> str:
    """As the maker's own ruler shows it, whose marks are `step` apart; who is spoken to in centimetres hears
    them by any ruler."""
    return length_text(length, step) if say.unit == "in" else say.length(length)


def _size(say: Say, size: Size, step: Fraction) -> str:
    return " x ".join(_length(say, each, step) for each in size)


def _things(count: int, noun: str) -> str:
    """`10 squares`; `2 strips of 6 templates each`."""
    first, of, held = noun.partition(" of ")
    return count_of(count, first) + of + held + (" each" if held[:1].isdigit() and count > 1 else "")
