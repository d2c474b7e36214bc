"""Reads off a title how a cloth looks: `Dusty forest green dots` is a dull green, dotted."""

from __future__ import annotations

import re
from typing import Final

from ..measure.record import record
from ..words.cloth_words import CLOTH, MODIFIERS, TEXTURES, Texture
from ..words.css_names import CSS
from .colour import Colour, from_hex, grey, lab, luminance_of, mixed, tinted

DARKEST_LIGHT: Final = 66.0
LIGHTEST_DARK: Final = 40.0
"""L* past which a light cloth is not light and a dark one not dark."""

LIGHTER: Final = 18.0  # points of L* that a word such as pale or dark makes
DULL: Final = 0.55  # the share of grey in a dusty colour


@record
class Reading:
    """What a title says: nothing where it is None."""

    colour: Colour | None
    texture: Texture | None


def read_looks(*texts: str) -> Reading:
    """What the texts say, the first that says something before the others."""
    said = [_read(text) for text in texts]
    colour = next((each.colour for each in said if each.colour), None)
    return Reading(colour, next((each.texture for each in said if each.texture), None))


def named_colour(name: str) -> Colour | None:
    """The colour of a word of cloth or of the standard."""
    digits = CLOTH.get(name) or CSS.get(name)
    return from_hex(digits) if digits else None


def _read(text: str) -> Reading:
    words = [word for word in re.split(r"[^a-z]+", text.lower()) if word]
    texture = next((TEXTURES[word] for word in words if word in TEXTURES), None)
    whole = _colour_words(words)
    colour = named_colour(whole) if whole else None
    for word in words if colour else ():
        if word in MODIFIERS and word not in (whole or ""):
            colour = _modified(colour, MODIFIERS[word]) if colour else None
    return Reading(colour, texture)


def _colour_words(words: list[str]) -> str | None:
    """The first run of words that names a colour, the longest first: `dark sea green` before `sea`.
    Of `rose red` the first is the more exact."""
    for at in range(len(words)):
        for end in (3, 2, 1):
            name = "".join(words[at : at + end])
            if at + end <= len(words) and (colour := named_colour(name)) and not _belied(name, colour):
                return name
    return None


def _belied(name: str, colour: Colour) -> bool:
    """Whether a name of the standard calls dark what is light in cloth, or light what is dark."""
    light = lab(colour)[0]
    return (name.startswith("dark") and light > LIGHTEST_DARK) or (
        name.startswith(("light", "pale")) and light < DARKEST_LIGHT
    )


def _modified(colour: Colour, how: str) -> Colour:
    light = lab(colour)[0]
    if how == "darker":
        return tinted(colour, luminance_of(min(max(light - LIGHTER, light / 2), LIGHTEST_DARK)))
    if how == "lighter":
        return tinted(colour, luminance_of(max(min(light + LIGHTER, (light + 100) / 2), DARKEST_LIGHT)))
    return mixed(colour, grey(colour), DULL) if how == "duller" else colour
