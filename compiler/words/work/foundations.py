"""Why a block cannot be sewn on paper."""

from __future__ import annotations

from typing import assert_never

from ...measure.tolerance import Number, near
from ...sewing.foundations.foundation_model import ClosedSeam, CurvedSeam, NoSeamAcross, Refusal
from ..phrases import one_of
from ..say import Say


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


def _named(pieces: tuple[int, ...]) -> str:
    return one_of([str(number) for number in pieces], "and")


def _place(say: Say, value: Number) -> str:
    return say.length(0 if near(value, 0) else value)
