"""The card that is kept with a block's templates in their envelope."""

from __future__ import annotations

from typing import Final

TITLE: Final = "Storage card"
TITLES: Final = "Storage cards"
NO_CARDS: Final = "Every block is sewn on foundations: there are no templates to keep."
CUT: Final = "cut, for one block"
SIZE: Final = "finished, over all"
WAY_UP: Final = "which way up"
ONE_SIDE: Final = "this side up"
EITHER_SIDE: Final = "either"
CHECKED: Final = ("Check square measured, 1in", "Test block sewn and measured")
WRITE_ON: Final = ("Made for", "Date")


def one_of(papers: bool) -> str:
    """What is kept: papers or templates."""
    return "paper" if papers else "template"


def kept_words(papers: bool, number: int) -> str:
    """What to do with the card of an envelope that holds so many."""
    one = one_of(papers)
    held = {1: f"its one {one}", 2: f"both {one}s"}.get(number, f"its {number} {one}s")
    return (
        f"Cut this card off and keep it in the envelope with {held}. Tick each kind as you put it away; a "
        f"box without a tick is a {one} to look for, or to cut again."
    )


def card_title(title: str, version: int, size: str) -> str:
    """`Ohio Star, version 1, 9in finished`."""
    return f"{title}, version {version}, {size} finished"


def caption(papers: bool, title: str) -> str:
    """`Templates of Ohio Star in the envelope`."""
    return f"{one_of(papers).capitalize()}s of {title} in the envelope"
