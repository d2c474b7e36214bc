"""What a writer can be told about cloth that is not enough."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ...diagnostics.diagnostic import Diagnostic, error, warning
from ...diagnostics.source import NOWHERE, Span
from ..phrases import count_of, one_of
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ...cutting.needs import Fabric

SHOWN: Final = 3  # kinds of missing pieces that a message names


def place_of(fabric: Fabric) -> Span:
    """The words that bring the fabric in."""
    return fabric.origin or NOWHERE


@message
def cloth_short(say: Say, fabric: Fabric, missing: Sequence[str], needed: int | None) -> Diagnostic:
    """Fat quarters or scraps that do not hold every piece."""
    quarters = all(scrap.fat_quarter for scrap in fabric.scraps)
    thing, things = ("fat quarter", "fat quarters") if quarters else ("scrap", "scraps")
    have = count_of(len(fabric.scraps), thing, things)
    verb = "leaves" if len(fabric.scraps) == 1 else "leave"
    more = f", and {len(missing) - SHOWN} more kinds" if len(missing) > SHOWN else ""
    larger = "Give it larger pieces of cloth, or cut it off the bolt."
    help = f"It takes {needed} like the largest." if needed else larger
    return error(
        "cloth-short",
        f"{have} of `{fabric.name}` {verb} no room for {one_of(list(missing[:SHOWN]), 'and')}{more}.",
        place_of(fabric),
        help=help,
    )


@message
def scrap_too_small(say: Say, fabric: Fabric, size: str, smallest: str) -> Diagnostic:
    """A scrap that holds none of the pieces."""
    return warning(
        "scrap-too-small",
        f"No piece of `{fabric.name}` can be cut from the scrap {size}.",
        place_of(fabric),
        help=f"The smallest is {smallest}.",
    )


@message
def piece_too_wide(say: Say, fabric: Fabric, piece: str, width: str) -> Diagnostic:
    """A piece that the cloth does not hold whichever way it lies."""
    return error(
        "piece-too-wide",
        f"`{fabric.name}` is {width} wide, too narrow for {piece}.",
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
