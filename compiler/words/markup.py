"""What other programs read, as they take it: a PDF's information, an SVG's markup."""

from __future__ import annotations

from typing import Final
from unicodedata import category

UNWRITABLE: Final = ("Cc", "Cf", "Cs", "Cn")  # controls, invisible signs, halves of pairs, no letter at all


def plain(text: str) -> str:
    """The text on one line, in its own letters, without controls or signs that turn its direction."""
    if text.isascii() and text.isprintable():
        return text
    spaced = " ".join(text.replace("\0", " ").split())
    return "".join(letter for letter in spaced if category(letter) not in UNWRITABLE)


def escaped(text: str) -> str:
    """The text as XML writes it, inside an element or between double quotes (XML 1.0, 2.4)."""
    for letter, entity in (("&", "&amp;"), ("<", "&lt;"), (">", "&gt;"), ('"', "&quot;")):
        text = text.replace(letter, entity)
    return text
