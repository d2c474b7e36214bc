"""Small pieces of wording: nearest names, `A, B or C`, plurals."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

SUGGESTIONS: Final = 3  # more than three and nobody reads them

SHOWN: Final = 24
"""Letters of an overlong word that a message repeats."""

COMPARED: Final = 1_000
"""Known words that an unknown one is held against. Of more only those that begin alike are: no block names so
many points, and no shelf holds so many blocks, for the cost to be worth a better guess."""


def nearest(word: str, known: Iterable[str]) -> list[str]:
    """Up to three known words that the writer probably meant, nearest first."""
    from difflib import get_close_matches

    words = sorted(set(known))
    if len(words) > COMPARED:
        words = [each for each in words if each[:1] == word[:1]][:COMPARED]
    return get_close_matches(word[:80], words, n=SUGGESTIONS, cutoff=0.6)


def one_of(words: Sequence[str], joining: str = "or") -> str:
    """`A`, `A or B`, `A, B or C`."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {joining} {words[-1]}"


def quoted(words: Iterable[str]) -> list[str]:
    """Each in backquotes, as the writer's own words are shown."""
    return [f"`{word}`" for word in words]


def shown(words: str) -> str:
    """The words, cut short where they would fill the screen."""
    return words if len(words) <= SHOWN else words[: SHOWN - 3] + "..."


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """A help sentence, or nothing where no known word is near."""
    close = nearest(word, known)
    return f"Did you mean {one_of(quoted(close))}?" if close else ""


def count_of(number: int, thing: str, things: str = "") -> str:
    """`1 piece`, `4 pieces`."""
    return f"{number} {thing if number == 1 else things or thing + 's'}"
