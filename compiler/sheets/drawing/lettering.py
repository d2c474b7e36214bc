"""Lettering: how wide a line of text is set, which letters can be set, and fractions as the face draws them.

Sizes and widths are in points. A line is set letter by letter at the face's own advances, without hinting or
kerning, by layout and by drawing alike; so a measured width is the printed width, on every machine.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final
from unicodedata import category, normalize

from ...diagnostics.visible import accents_joined
from .typeface import face

SUBSTITUTE: Final = "☐"
"""Stands where the face has no letter that comes near (emoji, Hebrew, Arabic, Chinese...): seen, and never
another face."""

CHOICES: Final = "\ufe00", "\ufe0f"
"""The first and the last of the marks that choose how the sign before them looks: they show nothing."""

CACHED_LINES: Final = 4096  # the labels of a few hundred pages; beyond it the oldest are measured again

VULGAR: Final = {
    "1/4": "¼", "1/2": "½", "3/4": "¾", "1/3": "⅓", "2/3": "⅔",
    "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞",
    "1/5": "⅕", "2/5": "⅖", "3/5": "⅗", "4/5": "⅘", "1/6": "⅙", "5/6": "⅚",
}  # fmt: skip
"""The fractions of which the faces have a glyph: a ruler's eighths, a grid's thirds, fifths and sixths."""

FRACTION: Final = re.compile(r"(?<![\d/.,])(?:(\d+) )?(\d+/\d+)(?![\d/])")


@lru_cache(maxsize=CACHED_LINES)
def width_of(text: str, size: float, bold: bool = False) -> float:
    """How many points wide the text is when set at `size`, as `printable` will have it."""
    widths = face(bold).widths
    return size * sum(map(widths.__getitem__, printable(text)), 0.0)


def ascent(size: float, bold: bool = False) -> float:
    """Points from the baseline up to the top of the tallest letters, accents included."""
    return size * face(bold).ascent


def descent(size: float, bold: bool = False) -> float:
    """Points from the baseline down to the foot of the deepest letters."""
    return size * face(bold).descent


def cap_height(size: float, bold: bool = False) -> float:
    """Points from the baseline up to the top of a capital letter: what centres a letter by eye."""
    return size * face(bold).cap_height


def has_letter(letter: str) -> bool:
    """Whether both faces can draw the letter."""
    return letter in face(False).widths and letter in face(True).widths


@lru_cache(maxsize=CACHED_LINES)
def printable(text: str) -> str:
    """The text with every letter one that the faces have; the same again when given its own result.

    Accents are joined to their letters where Unicode has them joined (NFC). Blanks of every kind become
    spaces; controls and invisible signs go, those that turn the direction of writing among them, and so do
    accents that the faces lack; any other letter they lack becomes the plain one that it is a form of (`Ａ`
    A, `ṩ` s), else SUBSTITUTE. What is lost by it `lost_letters` says.
    """
    if text.isascii() and text.isprintable():
        return text
    return "".join(map(_settable, accents_joined(text)))


def _settable(letter: str) -> str:
    """The letter, a space, SUBSTITUTE or nothing."""
    kind = category(letter)
    if kind == "Zs" or letter in "\t\n\v\f\r\x85\u2028\u2029":
        return " "
    if kind in ("Cc", "Cf"):
        return ""
    if has_letter(letter):
        return letter
    if kind in ("Mn", "Me"):
        return ""
    plain = "".join(each for each in normalize("NFKD", letter) if category(each) not in ("Mn", "Me"))
    return plain if plain and all(map(has_letter, plain)) else SUBSTITUTE


def lost_letters(text: str) -> tuple[str, ...]:
    """The letters and accents of a text that are printed as others or not at all, each once, in order.
    Blanks, controls and invisible signs are none."""
    if text.isascii():
        return ()
    return tuple(dict.fromkeys(letter for letter in accents_joined(text) if _is_lost(letter)))


def _is_lost(letter: str) -> bool:
    blank = category(letter) in ("Zs", "Zl", "Zp", "Cc", "Cf") or CHOICES[0] <= letter <= CHOICES[1]
    return not (blank or has_letter(letter))


def fraction_glyphs(text: str) -> str:
    """The text with its fractions as the face draws them: `3 1/8in` as `3⅛in`.

    The blank before such a fraction goes, for the glyph stands close. Fractions without a glyph of their own
    (sixteenths) stay full size: built of raised and lowered figures, they hang below the line and are too
    small to read at the floor of 7pt.
    """
    return FRACTION.sub(_set_fraction, text)


def _set_fraction(found: re.Match[str]) -> str:
    whole, fraction = found.groups()
    return (whole or "") + VULGAR[fraction] if fraction in VULGAR else found[0]
