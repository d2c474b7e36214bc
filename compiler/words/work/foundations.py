"""Why a block cannot be sewn on paper, and the patches of one that can."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, assert_never

from ...measure.tolerance import Number, near
from ...sewing.foundations.foundation_model import ClosedSeam, CurvedSeam, NoSeamAcross, Refusal
from ..phrases import one_of
from ..say import Say

NAMED_MOST: Final = 4  # patches that a cut names: more are told by the block's own page


def refusal_words(say: Say, refusal: Refusal | None) -> str:
    """The junction that keeps a block off paper, as a sentence; nothing where it can be sewn so."""
    match refusal:
        case None:
            return ""
        case CurvedSeam(pieces):
            seam = f"The seam between pieces {_named(pieces)}"
            return f"{seam} is curved, and paper folds along straight lines only."
        case ClosedSeam(piece):
            return f"The seam round piece {piece} closes on itself, so no straight seam reaches it."
        case NoSeamAcross(pieces, at):
            spot = f"{_place(say, at.x)} across and {_place(say, at.y)} down"
            return f"Pieces {_named(pieces)} meet {spot}, and no seam runs straight across there."
    assert_never(refusal)


def patch_words(labels: Sequence[str]) -> str:
    """`patch A1`; `patches A1, B1, C1 and 5 more`."""
    if len(labels) > NAMED_MOST:
        labels = [*labels[: NAMED_MOST - 1], f"{len(labels) - NAMED_MOST + 1} more"]
    return f"{'patch' if len(labels) == 1 else 'patches'} {one_of(labels, 'and')}"


def _named(pieces: tuple[int, ...]) -> str:
    return one_of([str(number) for number in pieces], "and")


def _place(say: Say, value: Number) -> str:
    return say.length(0 if near(value, 0) else value)
