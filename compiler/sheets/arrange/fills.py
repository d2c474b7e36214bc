"""Fabrics as fills: each in the colour and texture that its title or name says, the others far from those.

A fabric that says nothing takes one of six fills 20 points of CIE L* apart, from paper white to black; more
take the steps between. Where two would be taken for one another, in colour, grey or by the colour-blind, the
later gets a texture of its own. A fabric keeps its fill through a build: the choice depends on names, titles
and order of first use alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from math import ceil, cos, floor, radians, sin
from typing import Final

from ...looks.colour import Colour, from_hex, lab, least_difference, luminance, luminance_of, tinted
from ...looks.reading import Reading, read_looks
from ...measure.record import record
from ...words.cloth_words import Texture
from ..page import PathMark, Segment

Box = tuple[float, float, float, float]

Stated = tuple[str, Texture | None]
"""A colour as `#rrggbb` and a texture, as they are said; '' and None where they are not."""

WHITE: Final[Colour] = (1.0, 1.0, 1.0)
BLACK: Final[Colour] = (0.0, 0.0, 0.0)

PITCH: Final = 5.0
"""Points between the lines of a texture: fine beside a seam, coarse enough for a photocopier."""

STROKE: Final = 0.3
"""Points of line in a texture: thinner than any seam."""

SKEW: Final = 11.0
SLANT: Final = 34.0
"""Degrees of textures from level: eleven off the seams' 0, 22 1/2, 45 and 90."""

DOT: Final = 1.0  # points across a dot
FLOWERS: Final = 6.0  # points between the flowers of a floral texture
PETAL: Final = 1.4

GREY: Final[Colour] = (0.5, 0.5, 0.5)
CLEAR: Final = 10.0  # points of L* between a fabric that says nothing and one with a colour

LIGHT_ENOUGH: Final = 50.0
"""L* above which a black letter reads better than a white one."""

PALER: Final = 25.0
"""How many points of L* the lines on a dark ground stand above the fabric as a whole."""

DARKER: Final = 38.0
"""How many points below it those on a light ground stand: seen, without shouting down the seams."""

WORDS: Final = (
    (("background", "pale", "palest", "lightest"), 100),
    (("light", "bright", "ground"), 80),
    (("medium", "mid", "middle"), 60),
    (("accent", "strong"), 40),
    (("dark", "deep"), 20),
    (("darkest", "deepest"), 0),
)
"""Words in the name of a fabric that names no colour, and the lightness they ask for."""

UNASKED: Final = (60, 100, 20, 80, 40, 0, 70, 30, 90, 50, 10)
"""Steps for roles whose names say nothing, in the order they are given: far apart first, black late."""


@record
class Fill:
    """How one fabric looks: its ground, the lines on it, and the colour that reads on the ground."""

    lightness: float  # L* of the ground
    ground: Colour
    texture: Texture
    ink: Colour  # of the texture
    lettering: Colour
    named: bool = True  # its colour is one that it is called by
    stated: bool = False  # its colour or texture is stated

    @property
    def dark(self) -> bool:
        """Whether a black line would be lost on it."""
        return self.lightness < LIGHT_ENOUGH


STEPS: Final[dict[int, tuple[Texture, Colour]]] = {
    100: ("plain", (1.0, 1.0, 1.0)),
    80: ("dotted", (0.91, 0.83, 0.70)),  # oat
    60: ("striped", (0.52, 0.66, 0.55)),  # lichen
    40: ("checked", (0.30, 0.46, 0.62)),  # slate
    20: ("twill", (0.36, 0.17, 0.27)),  # plum
    0: ("plain", (0.0, 0.0, 0.0)),
    90: ("twill", (0.95, 0.90, 0.86)),  # shell
    70: ("checked", (0.85, 0.68, 0.60)),  # clay
    50: ("dotted", (0.55, 0.48, 0.62)),  # heather
    30: ("striped", (0.22, 0.38, 0.36)),  # pine
    10: ("dotted", (0.13, 0.16, 0.24)),  # ink
}
"""Texture and tint of each step of lightness. The tints are our own."""


ALIKE: Final = 12.0
"""CIEDE2000 below which two cloths beside each other are taken for one: several just noticeable steps."""

TEXTURES: Final[tuple[Texture, ...]] = ("plain", "dotted", "striped", "checked", "twill", "floral")
SHIFTS: Final = (0, 16, -16, 32, -32, 48, -48)
"""Points of L* by which a guessed colour may be moved where no texture is left to tell it by."""


def fills_for(
    fabrics: Sequence[str],
    titles: Mapping[str, str] | None = None,
    stated: Mapping[str, Stated] | None = None,
) -> dict[str, Fill]:
    """A fill for every fabric, in order of first use; `titles` has what those with a title are called, and
    `stated` how they are said to look: a colour that is stated is drawn as it is.

    Those that name a colour get theirs. Of the others, those that say how light they are choose first,
    lightest first, so that light never comes out darker than dark; the rest take what is left.
    """
    said = stated or {}
    read = {name: _reading(said.get(name), (titles or {}).get(name, ""), name) for name in fabrics}
    fills: dict[str, Fill] = {}
    for name, looks in read.items():
        if looks.colour:
            fixed = bool(name in said and said[name][0])
            fills[name] = _told_apart(looks.colour, looks, fills.values(), fixed=fixed)
    steps = _steps_of(
        [name for name in read if name not in fills], [each.lightness for each in fills.values()]
    )
    for name, step in steps.items():
        texture, colour = STEPS[step]
        own = Reading(None, read[name].texture)
        fill = _told_apart(tinted(colour, luminance_of(step)), own, fills.values(), texture)
        fills[name] = replace(fill, named=False)
    return {name: replace(fills[name], stated=any(said.get(name, ()))) for name in read}


def _reading(stated: Stated | None, title: str, name: str) -> Reading:
    """What is stated, and of what is not what the title and the name say."""
    read = read_looks(title, name)
    if stated is None:
        return read
    colour, texture = stated
    return Reading(from_hex(colour[1:]) if colour else read.colour, texture or read.texture)


def _steps_of(names: Sequence[str], taken: Sequence[float]) -> dict[str, int]:
    """The step of lightness of each fabric without a colour: away from those taken where it can be."""
    asked = {name: asked_lightness(name) for name in names}
    named = sorted((name for name in names if asked[name] is not None), key=lambda name: -(asked[name] or 0))
    free, found = list(UNASKED), dict[str, int]()
    for name in (*named, *(name for name in names if asked[name] is None)):
        # The steps between serve only when the six are used up; after eleven all serve again.
        free = free or list(UNASKED)
        steps = [step for step in free if step % 20 == 0] or free
        clear = [step for step in steps if all(abs(step - other) >= CLEAR for other in taken)]
        found[name] = _choose(clear if clear and asked[name] is None else steps, asked[name])
        free.remove(found[name])
    return found


def _choose(steps: list[int], wanted: int | None) -> int:
    """The step for a role: the lightest that is not lighter than asked, else the nearest, else the first."""
    if wanted is None:
        return steps[0]
    return max((step for step in steps if step <= wanted), default=min(steps, key=lambda step: step - wanted))


def asked_lightness(role: str) -> int | None:
    """The lightness that a word in the role's name asks for; None where it says nothing."""
    words = re.split(r"[^a-z]+", role.lower())
    return next((step for names, step in WORDS for word in words if word in names), None)


def _told_apart(
    colour: Colour,
    looks: Reading,
    others: Iterable[Fill],
    first: Texture = "plain",
    *,
    fixed: bool = False,
) -> Fill:
    """The colour in the texture read, else in the first by which it is told from the others; `fixed`: it was
    stated, and is not moved."""
    taken = tuple(others)
    textures = (looks.texture,) if looks.texture else (first, *(each for each in TEXTURES if each != first))
    light = lab(colour)[0]
    for shift in SHIFTS[:1] if fixed else SHIFTS:
        if shift and not 0 <= light + shift <= 100:
            continue
        moved = tinted(colour, luminance_of(light + shift)) if shift else colour
        for texture in textures:
            fill = _fill(moved, texture)
            if not any(are_alike(fill, other) for other in taken):
                return fill
    return _fill(colour, textures[0 if fixed else len(taken) % len(textures)])


def are_alike(one: Fill, other: Fill) -> bool:
    """Whether one may be taken for the other by somebody, or on a photocopy."""
    return one.texture == other.texture and least_difference(one.ground, other.ground) < ALIKE


def _fill(colour: Colour, texture: Texture) -> Fill:
    light = lab(colour)[0]
    ink = tinted(
        colour if luminance(colour) else GREY,
        luminance_of(light + PALER if light < LIGHT_ENOUGH else light - DARKER),
    )
    return Fill(light, colour, texture, ink, BLACK if light >= LIGHT_ENOUGH else WHITE)


def texture_mark(fill: Fill, area: Box, clip: tuple[Segment, ...], subject: str) -> PathMark | None:
    """The lines of a fill over `area` (left, top, right, bottom, in points), drawn inside `clip` only."""
    if fill.texture == "plain":
        return None
    dash: tuple[float, ...] = ()
    wide = STROKE
    if fill.texture == "dotted":
        path, dash, wide = tuple(_rules(area, SKEW)), (DOT, PITCH - DOT), DOT
    elif fill.texture == "striped":
        path = tuple(_rules(area, SLANT))
    elif fill.texture == "twill":
        path, dash = tuple(_rules(area, -SLANT)), (PITCH, STROKE * 2)
    elif fill.texture == "floral":
        path = tuple(_sprigs(area))
    else:
        path = (*_rules(area, SKEW), *_rules(area, 90.0 + SKEW))
    return PathMark(path, fill.ink, wide, dash, None, "texture", subject, clip)


def _sprigs(area: Box) -> Iterable[Segment]:
    """Small flowers of six petals, every other row half a step on."""
    left, top, right, bottom = area
    for row in range(floor(top / FLOWERS), ceil(bottom / FLOWERS) + 1):
        for place in range(floor(left / FLOWERS) - 1, ceil(right / FLOWERS) + 1):
            x, y = (place + row % 2 / 2) * FLOWERS, row * FLOWERS
            for petal in range(3):
                turn = radians(SKEW + 60 * petal)
                yield ("M", x - PETAL * cos(turn), y - PETAL * sin(turn))
                yield ("L", x + PETAL * cos(turn), y + PETAL * sin(turn))


def _rules(area: Box, angle: float) -> Iterable[Segment]:
    """Parallel lines PITCH apart over the area, at the angle down from level. They hang together from one
    piece to the next, for they are counted from the page's own corner."""
    left, top, right, bottom = area
    along_x, along_y = cos(radians(angle)), sin(radians(angle))
    corners = ((left, top), (right, top), (right, bottom), (left, bottom))
    across = [y * along_x - x * along_y for x, y in corners]
    along = [x * along_x + y * along_y for x, y in corners]
    first, last = floor(min(along) / PITCH) * PITCH, max(along)
    for number in range(ceil(min(across) / PITCH), floor(max(across) / PITCH) + 1):
        off = number * PITCH
        yield ("M", first * along_x - off * along_y, first * along_y + off * along_x)
        yield ("L", last * along_x - off * along_y, last * along_y + off * along_x)
