"""Fabrics as fills: lightness first, then texture, then a muted tint; that of a colour which the name names.

Six fills stand 20 points of CIE L* apart, from paper white to black, so that any two differ on a photocopier.
More fabrics than six take the steps between and rely on texture. A role keeps its fill through a build: the
choice depends on the roles' names and their order of first use alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil, cos, floor, radians, sin
from typing import Final, Literal

from ..page import PathMark, Segment

Colour = tuple[float, float, float]
Texture = Literal["none", "dots", "lines", "cross", "back"]
Box = tuple[float, float, float, float]

WHITE: Final[Colour] = (1.0, 1.0, 1.0)
BLACK: Final[Colour] = (0.0, 0.0, 0.0)

PITCH: Final = 5.0
"""Points between the lines of a texture: fine beside a seam, coarse enough for a photocopier."""

STROKE: Final = 0.5
"""Points of line in a texture."""

LIGHT_ENOUGH: Final = 50.0
"""L* above which a black letter reads better than a white one."""

PALER: Final = 25.0
"""How many points of L* the lines on a dark ground stand above the fabric as a whole."""

DARKER: Final = 38.0
"""How many points below it those on a light ground stand: seen, without shouting down the seams."""

WORDS: Final = (
    (("background", "pale", "white", "palest", "lightest", "ecru", "cream"), 100),
    (("light", "bright", "sand", "ground", "sky", "yellow", "lemon", "peach", "oat"), 80),
    (("medium", "mid", "middle", "green", "rose", "gold", "coral", "pink"), 60),
    (("accent", "strong", "red", "rust", "blue", "teal", "brick", "purple"), 40),
    (("dark", "deep", "navy", "indigo", "brown", "plum"), 20),
    (("black", "darkest", "deepest", "midnight"), 0),
)
"""Words in a role's name and the lightness they ask for."""

HUES: Final[tuple[tuple[frozenset[str], Colour], ...]] = (
    (frozenset(("navy", "indigo", "blue", "sky", "denim", "sea", "ocean", "midnight")), (0.30, 0.46, 0.66)),
    (frozenset(("red", "crimson", "scarlet", "brick", "ruby", "cherry")), (0.66, 0.24, 0.24)),
    (frozenset(("rust", "orange", "terracotta", "copper", "apricot", "peach")), (0.76, 0.44, 0.26)),
    (frozenset(("rose", "pink", "coral", "blush")), (0.82, 0.50, 0.52)),
    (frozenset(("gold", "yellow", "mustard", "lemon", "honey", "ochre")), (0.84, 0.68, 0.28)),
    (frozenset(("green", "sage", "moss", "olive", "leaf", "mint")), (0.44, 0.60, 0.42)),
    (frozenset(("teal", "turquoise", "aqua")), (0.28, 0.56, 0.56)),
    (frozenset(("purple", "plum", "violet", "lilac", "lavender", "heather")), (0.52, 0.40, 0.62)),
    (frozenset(("brown", "tan", "chocolate", "sand", "oat", "linen")), (0.68, 0.54, 0.38)),
    (frozenset(("grey", "gray", "silver", "slate", "gull")), (0.52, 0.54, 0.57)),
)  # fmt: skip
"""Names of colours and a muted tint of each, for a role or fabric that bears one: rust is not drawn blue."""

UNASKED: Final = (60, 100, 20, 80, 40, 0, 70, 30, 90, 50, 10)
"""Steps for roles whose names say nothing, in the order they are given: far apart first, black late."""


@dataclass(frozen=True, slots=True)
class Fill:
    """How one fabric looks: its ground, the lines on it, and the colour that reads on the ground."""

    lightness: float  # L* as seen from afar, lines and ground together
    ground: Colour
    texture: Texture
    ink: Colour  # of the texture
    lettering: Colour

    @property
    def dark(self) -> bool:
        """Whether a black line would be lost on it."""
        return self.lightness < LIGHT_ENOUGH


STEPS: Final[dict[int, tuple[Texture, Colour]]] = {
    100: ("none", (1.0, 1.0, 1.0)),
    80: ("dots", (0.91, 0.83, 0.70)),  # oat
    60: ("lines", (0.52, 0.66, 0.55)),  # lichen
    40: ("cross", (0.30, 0.46, 0.62)),  # slate
    20: ("back", (0.36, 0.17, 0.27)),  # plum
    0: ("none", (0.0, 0.0, 0.0)),
    90: ("back", (0.95, 0.90, 0.86)),  # shell
    70: ("cross", (0.85, 0.68, 0.60)),  # clay
    50: ("dots", (0.55, 0.48, 0.62)),  # heather
    30: ("lines", (0.22, 0.38, 0.36)),  # pine
    10: ("dots", (0.13, 0.16, 0.24)),  # ink
}
"""Texture and tint of each step of lightness. The tints are our own."""


def fills_for(roles: Sequence[str]) -> dict[str, Fill]:
    """A fill for every role, the roles in order of first use.

    Roles whose names say how light they are choose first, lightest first, so that light never comes out
    darker than dark; the others take what is left.
    """
    asked = {role: asked_lightness(role) for role in roles}
    named = sorted((role for role in asked if asked[role] is not None), key=lambda role: -(asked[role] or 0))
    taken: dict[str, int] = {}
    free = list(UNASKED)
    for role in (*named, *(role for role in asked if asked[role] is None)):
        # The steps between serve only when the six are used up; after eleven all serve again.
        free = free or list(UNASKED)
        taken[role] = _choose([step for step in free if step % 20 == 0] or free, asked[role])
        free.remove(taken[role])
    return {role: _fill(taken[role], _hue_of(role)) for role in roles}


def _choose(steps: list[int], wanted: int | None) -> int:
    """The step for a role: the lightest that is not lighter than asked, else the nearest, else the first."""
    if wanted is None:
        return steps[0]
    return max((step for step in steps if step <= wanted), default=min(steps, key=lambda step: step - wanted))


def asked_lightness(role: str) -> int | None:
    """The lightness that a word in the role's name asks for; None where it says nothing."""
    words = _words(role)
    return next((step for names, step in WORDS for word in words if word in names), None)


def _hue_of(role: str) -> Colour | None:
    """The tint of the first colour that a role's name names; None where it names none."""
    words = _words(role)
    return next((tint for word in words for names, tint in HUES if word in names), None)


def _words(role: str) -> list[str]:
    return re.split(r"[^a-z]+", role.lower())


def _fill(step: int, hue: Colour | None = None) -> Fill:
    texture, own = STEPS[step]
    tint = hue if hue and texture != "none" else own
    ink = _tinted(tint, luminance_of(step + PALER if step < LIGHT_ENOUGH else step - DARKER))
    share = coverage(texture)
    wanted = luminance_of(step)
    ground_light = (wanted - share * luminance(ink)) / (1 - share)
    ground = _tinted(tint, ground_light) if texture != "none" else tint
    return Fill(step, ground, texture, ink, BLACK if step >= LIGHT_ENOUGH else WHITE)


def coverage(texture: Texture) -> float:
    """The share of the ground that the texture's lines cover."""
    line = STROKE / PITCH
    shares = {"none": 0.0, "dots": line * STROKE * 2 / PITCH, "lines": line, "back": line}
    return shares.get(texture, 2 * line - line * line)


def luminance_of(lightness: float) -> float:
    """The relative luminance, 0 to 1, of a CIE L*."""
    return ((lightness + 16) / 116) ** 3 if lightness > 8 else lightness * (3 / 29) ** 3


def luminance(colour: Colour) -> float:
    """The relative luminance of a screen colour (sRGB, IEC 61966-2-1)."""
    red, green, blue = (linear(each) for each in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def linear(part: float) -> float:
    """The linear light of one part of a screen colour."""
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4


def encoded(light: float) -> float:
    """One part of a screen colour, from its linear light."""
    return 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055


def _tinted(tint: Colour, light: float) -> Colour:
    """The tint, darkened evenly or mixed with white until it has the luminance asked for."""
    own = luminance(tint)
    if light <= own:
        red, green, blue = (encoded(linear(part) * light / own) for part in tint)
    else:
        white = (light - own) / (1 - own)
        red, green, blue = (encoded(linear(part) * (1 - white) + white) for part in tint)
    return red, green, blue


def texture_mark(fill: Fill, area: Box, clip: tuple[Segment, ...], subject: str) -> PathMark | None:
    """The lines of a fill over `area` (left, top, right, bottom, in points), drawn inside `clip` only."""
    if fill.texture == "none":
        return None
    dash: tuple[float, ...] = ()
    if fill.texture == "dots":
        path, dash = tuple(_rules(area, 0.0)), (2 * STROKE, PITCH - 2 * STROKE)
    elif fill.texture == "lines":
        path = tuple(_rules(area, 45.0))
    elif fill.texture == "back":
        path = tuple(_rules(area, -45.0))
    else:
        path = (*_rules(area, 0.0), *_rules(area, 90.0))
    return PathMark(path, fill.ink, STROKE, dash, None, "texture", subject, clip)


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
