"""Other ways to make the same pieces, many at a time."""

from __future__ import annotations

from typing import assert_never

from ...cutting.plan_model import Geese, Made, SquarePairs, StripSet
from ..phrases import count_of, one_of
from ..say import Say


def way_words(made: Made) -> str:
    """What the way is called."""
    match made:
        case SquarePairs(many):
            return f"{'two' if many == 2 else 'eight'} at a time"
        case Geese():
            return "four at a time"
        case StripSet():
            return "strip set"
    assert_never(made)


def making_words(say: Say, made: Made) -> str:
    """How the pieces are made that way, as a sentence."""
    match made:
        case SquarePairs():
            return _square_pairs(say, made)
        case Geese(sets, large, small, goose, sky, seam):
            return (
                f"Cut {count_of(sets, 'square')} {say.on_ruler(large)} of {goose} and "
                f"{count_of(4 * sets, 'square')} {say.on_ruler(small)} of {sky}; lay two small squares on "
                f"opposite corners of a large one, draw their diagonal, sew "
                f"{say.length(seam)} either side and cut; sew a small square to each half the same way: "
                f"{sets * 4} units."
            )
        case StripSet():
            return _strip_set(say, made)
    assert_never(made)


def _square_pairs(say: Say, made: SquarePairs) -> str:
    two = made.many == 2
    lines = "the diagonal" if two else "both diagonals"
    cut = "cut on the line" if two else "cut on the lines and across the middle both ways"
    first, second = made.cloths
    squares = f"{count_of(made.sets, 'square')} {say.on_ruler(made.side)} of {first}"
    made_of = count_of(made.sets * made.many, "two-triangle square")
    return (
        f"Cut {squares} and {made.sets} of {second}; lay them together in pairs, draw {lines}, sew "
        f"{say.length(made.seam)} either side, {cut}: {made_of}."
    )


def _strip_set(say: Say, made: StripSet) -> str:
    long = f" and {say.on_ruler(made.long)} long" if made.long is not None else ""
    return (
        f"Sew strips {say.on_ruler(made.strip)} wide{long} of {one_of(made.cloths, 'and')} side by side, "
        f"{say.on_ruler(made.sewn)} wide in all; {count_of(made.sets, 'set')}, cut across every "
        f"{say.on_ruler(made.every)}: {count_of(made.rows, 'row')}."
    )
