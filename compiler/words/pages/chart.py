"""The words of the cutting chart."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from ..phrases import one_of
from ..say import Say
from ..work.offers import making_words, way_words

if TYPE_CHECKING:
    from ...cutting.needs import Fabric
    from ...cutting.plan_model import Offer
    from ...measure.tolerance import Number

TITLE: Final = "Cutting chart"
KEY: Final = "key"
CUT: Final = "cut"
WHAT: Final = "what"
GIVES: Final = "pieces it gives"
PURPOSE: Final = "for"
WHY: Final = "why, and what then"

NOTE: Final = (
    "Sizes are cut sizes, seam allowances counted in. Cut the largest first: smaller ones come out of what "
    "is left. Close the blade after every cut, cut away from yourself, keep it from children."
)

INTRO: Final = (
    "Letters name the cuts in the cutting pictures. ‘Cut’ is how many times you cut that size; ‘pieces’ is "
    "what the quilt then has."
)

INTRO_ALONE: Final = (
    "‘Cut’ is how many times you cut that size. Where a rule of the ruler serves, you need no template; the "
    "template then only checks the piece."
)


def round_papers(say: Say) -> str:
    """Of blocks that are sewn over papers."""
    return (
        f"Of blocks that are sewn over papers, ‘round the template’ is round the paper, with the cloth "
        f"{say.usual_seam} larger on every side."
    )


def caption(fabric: str) -> str:
    """`Cuts of Navy twill`."""
    return f"Cuts of {fabric}"


def fabric_words(fabric: Fabric, buy: str) -> str:
    """`buy 1 1/8 yd`, and what holds of every cut of a print with a direction."""
    words = f"buy {buy}"
    if fabric.one_way:
        return f"{words} · a one-way print, cut so that it stands upright in every piece of the quilt"
    if fabric.striped:
        return f"{words} · a stripe, cut so that it runs up and down the quilt in every piece"
    return words


def sum_words(count: int, keys: Sequence[str]) -> str:
    """`20 in all with h and j`: how many cuts of one size there are, with those of other keys."""
    return f"{count} in all with {one_of(list(keys), 'and')}"


def offer_words(say: Say, offer: Offer) -> str:
    """Another way, with the cloth it takes beside cutting singly."""
    text = making_words(say, offer.made)
    cloth, singly = _area(say, offer.cloth), _area(say, offer.singly)
    return f"Or {way_words(offer.made)}: {text} Takes {cloth}; singly {singly}."


def offers_as(offers: Sequence[Offer], key: str) -> str:
    """`Or two at a time or strip set, as for b.`: other ways that another row tells."""
    return f"Or {one_of(list(dict.fromkeys(way_words(offer.made) for offer in offers)))}, as for {key}."


def _area(say: Say, square_inches: Number) -> str:
    return f"{float(say.area(square_inches)):,.0f} {say.area_unit}"
