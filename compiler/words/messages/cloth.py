"""What a writer can be told about cloth that is not enough."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ...diagnostics.diagnostic import Diagnostic, error, warning
from ...diagnostics.source import NOWHERE, Span
from ..phrases import count_of, one_of
from .message import message

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from ...cutting.instruction import Boxes
    from ...cutting.needs import Fabric, Scrap
    from ...measure.tolerance import Number
    from ..say import Say

    Size = tuple[Number, Number]

SHOWN: Final = 3  # kinds of missing pieces that a message names


def place_of(fabric: Fabric) -> Span:
    """The words that bring the fabric in."""
    return fabric.origin or NOWHERE


@message
def cloth_short(
    say: Say, fabric: Fabric, missing: Sequence[tuple[Boxes, int, Size]], needed: int | None, step: Fraction
) -> Diagnostic:
    """Fat quarters or scraps that do not hold every piece. `missing`: of each kind what and how many."""
    from ..work.slices import things

    quarters = all(scrap.fat_quarter for scrap in fabric.scraps)
    thing, things_ = ("fat quarter", "fat quarters") if quarters else ("scrap", "scraps")
    have = count_of(len(fabric.scraps), thing, things_)
    verb = "leaves" if len(fabric.scraps) == 1 else "leave"
    say = say.cutting_by(step)
    named = [f"{things(boxes, count)} {say.size_on_ruler(*size)}" for boxes, count, size in missing[:SHOWN]]
    more = f", and {len(missing) - SHOWN} more kinds" if len(missing) > SHOWN else ""
    larger = "Give it larger pieces of cloth, or cut it off the bolt."
    help = f"It takes {needed} like the largest." if needed else larger
    return error(
        "cloth-short",
        f"{have} of `{fabric.name}` {verb} no room for {one_of(named, 'and')}{more}.",
        place_of(fabric),
        help=help,
    )


@message
def scrap_too_small(say: Say, fabric: Fabric, scrap: Scrap, smallest: Size, step: Fraction) -> Diagnostic:
    """A scrap that holds none of the pieces."""
    say = say.cutting_by(step)
    size = say.size_on_ruler(scrap.width, scrap.height)
    return warning(
        "scrap-too-small",
        f"No piece of `{fabric.name}` can be cut from the scrap {size}.",
        place_of(fabric),
        help=f"The smallest is {say.size_on_ruler(*smallest)}.",
    )


@message
def piece_too_wide(say: Say, fabric: Fabric, piece: Boxes, size: Size, step: Fraction) -> Diagnostic:
    """A piece that the cloth does not hold whichever way it lies."""
    from ..work.slices import boxes_words

    say = say.cutting_by(step)
    named = f"a {boxes_words(piece)} {say.size_on_ruler(*size)}"
    return error(
        "piece-too-wide",
        f"`{fabric.name}` is {say.on_ruler(fabric.usable_width)} wide, too narrow for {named}.",
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
