"""Text made safe to show: what a terminal would obey or hide becomes letters, and every letter has a width.

A file may hold escape codes, letters that turn the reading direction, or nothing visible at all. None of
that may reach a terminal, and carets must still stand under the right words.
"""

from __future__ import annotations

from typing import Final
from unicodedata import normalize

TAB: Final = "    "  # four columns, wherever the tab stands: carets need no tab stops
CONTROL_PICTURES: Final = 0x2400  # Unicode's own pictures of the control characters 0 to 31
DELETE: Final = 0x7F
DELETE_PICTURE: Final = "\u2421"
HIDDEN: Final = ("Cc", "Cf", "Cs", "Co", "Zl", "Zp")
"""Categories of Unicode that a terminal obeys or does not show: controls, formats (all that turn the reading
direction are among them), halves of a pair, private letters, and the two line ends that are no newline."""


def accents_joined(text: str) -> str:
    """The text with accents joined to their letters (Unicode's form C), however it was typed."""
    return text if text.isascii() else normalize("NFC", text)


def visible(text: str) -> str:
    """The text with every character that a terminal would obey or hide shown by a picture or its number."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(visible_letter(letter) for letter in text)


def visible_letter(letter: str) -> str:
    """One character as shown: a tab as four spaces, NUL as its picture, a turn of direction as <U+202E>."""
    if " " <= letter <= "~":
        return letter
    if letter == "\t":
        return TAB
    number = ord(letter)
    if number < 32:
        return chr(CONTROL_PICTURES + number)
    if number == DELETE:
        return DELETE_PICTURE
    from unicodedata import category

    return f"<U+{number:04X}>" if category(letter) in HIDDEN else letter


def width_of(shown: str) -> int:
    """Columns that a text already made visible takes on a terminal (Unicode Standard Annex 11)."""
    return len(shown) if shown.isascii() else sum(map(_letter_width, shown))


def _letter_width(letter: str) -> int:
    """2 for the wide letters of East Asia and most emoji, 0 for marks set over another letter, else 1."""
    from unicodedata import category, east_asian_width

    if category(letter) in ("Mn", "Me"):
        return 0
    return 2 if east_asian_width(letter) in ("W", "F") else 1


def end_of(text: str, limit: int) -> str:
    """The text, or its last `limit` characters after an ellipsis: of a long path, what tells files apart."""
    return text if len(text) <= limit else "…" + text[1 - limit :]


def shortened(text: str, limit: int) -> str:
    """The text, or as much of it as `limit` characters hold, ending in an ellipsis."""
    return text if len(text) <= limit else text[: limit - 1] + "…"
