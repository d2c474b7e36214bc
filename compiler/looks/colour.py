"""What is measured on colours of a screen (sRGB, IEC 61966-2-1; parts 0 to 1): lightness, difference, and how
the colour-blind and a photocopier see them."""

from __future__ import annotations

from functools import lru_cache
from math import atan2, cos, degrees, exp, hypot, radians, sin, sqrt
from typing import Final

Colour = tuple[float, float, float]
Lab = tuple[float, float, float]

D65: Final = (0.95047, 1.0, 1.08883)

PROTANOPIA: Final = (
    (0.152286, 1.052583, -0.204868),
    (0.114503, 0.786281, 0.099216),
    (-0.003882, -0.048116, 1.051998),
)
DEUTERANOPIA: Final = (
    (0.367322, 0.860646, -0.227968),
    (0.280085, 0.672501, 0.047413),
    (-0.011820, 0.042940, 0.968881),
)
TRITANOPIA: Final = (
    (1.255528, -0.076749, -0.178779),
    (-0.078411, 0.930809, 0.147602),
    (0.004733, 0.691367, 0.303900),
)
"""Severity 1.0 in linear light. Machado, Oliveira, Fernandes: A Physiologically-based Model for Simulation of
Color Vision Deficiency, IEEE TVCG 15 (2009), table of matrices; written down from memory."""

FAR: Final = 25.0**7

COLOURS_KEPT: Final = 256  # more than the fabrics of any picture and their shifts


def from_hex(digits: str) -> Colour:
    """The colour of six hexadecimal digits."""
    red, green, blue = (int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4))
    return red, green, blue


def to_hex(colour: Colour) -> str:
    """`#rrggbb`."""
    return "#" + "".join(f"{round(min(max(part, 0.0), 1.0) * 255):02x}" for part in colour)


def linear(part: float) -> float:
    """The linear light of one part of a screen colour."""
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4


def encoded(light: float) -> float:
    """One part of a screen colour, from its linear light."""
    return 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055


def luminance(colour: Colour) -> float:
    """The relative luminance of a screen colour."""
    red, green, blue = (linear(each) for each in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def luminance_of(lightness: float) -> float:
    """The relative luminance, 0 to 1, of a CIE L*."""
    return ((lightness + 16) / 116) ** 3 if lightness > 8 else lightness * (3 / 29) ** 3


def lightness(light: float) -> float:
    """CIE L*, 0 to 100, of a relative luminance."""
    return 116 * _root(light) - 16


def tinted(tint: Colour, light: float) -> Colour:
    """The tint, darkened evenly or mixed with white until it has the luminance asked for."""
    own = luminance(tint)
    if light <= own or own >= 1:
        light = min(light, own)
        red, green, blue = (encoded(linear(part) * light / own) if own else 0.0 for part in tint)
    else:
        white = (light - own) / (1 - own)
        red, green, blue = (encoded(linear(part) * (1 - white) + white) for part in tint)
    return red, green, blue


def mixed(one: Colour, other: Colour, share: float) -> Colour:
    """`share` of the other in the one, in linear light."""
    red, green, blue = (
        encoded(linear(a) * (1 - share) + linear(b) * share) for a, b in zip(one, other, strict=True)
    )
    return red, green, blue


def grey(colour: Colour) -> Colour:
    """As a photocopier has it."""
    part = encoded(luminance(colour))
    return part, part, part


def seen(colour: Colour, matrix: tuple[Colour, Colour, Colour]) -> Colour:
    """As an eye that lacks one kind of cone has it."""
    light = [linear(part) for part in colour]
    red, green, blue = (
        encoded(min(max(sum(a * b for a, b in zip(row, light, strict=True)), 0.0), 1.0)) for row in matrix
    )
    return red, green, blue


def lab(colour: Colour) -> Lab:
    """CIE 1976 L*a*b* under D65 (CIE 15)."""
    red, green, blue = (linear(part) for part in colour)
    x = (0.4124564 * red + 0.3575761 * green + 0.1804375 * blue) / D65[0]
    y = 0.2126729 * red + 0.7151522 * green + 0.0721750 * blue
    z = (0.0193339 * red + 0.1191920 * green + 0.9503041 * blue) / D65[2]
    fx, fy, fz = _root(x), _root(y), _root(z)
    return 116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)


def difference(one: Lab, other: Lab) -> float:
    """CIEDE2000 (CIE 142; Sharma, Wu, Dalal, Color Research and Application 30, 2005)."""
    mean_chroma = (hypot(*one[1:]) + hypot(*other[1:])) / 2
    more = 1.5 - 0.5 * sqrt(mean_chroma**7 / (mean_chroma**7 + FAR))
    (c1, h1), (c2, h2) = _polar(one, more), _polar(other, more)
    turn = 0.0 if not c1 * c2 else (h2 - h1 + 180) % 360 - 180
    turn = 180.0 if turn == -180 and h2 > h1 else turn
    mean_hue = (h1 + h2) if not c1 * c2 else _mean_hue(h1, h2)
    mean_c, mean_l = (c1 + c2) / 2, (one[0] + other[0]) / 2
    t = (
        1 - 0.17 * cos(radians(mean_hue - 30)) + 0.24 * cos(radians(2 * mean_hue))
        + 0.32 * cos(radians(3 * mean_hue + 6)) - 0.20 * cos(radians(4 * mean_hue - 63))
    )  # fmt: skip
    off = (mean_l - 50) ** 2
    light = (other[0] - one[0]) / (1 + 0.015 * off / sqrt(20 + off))
    chroma = (c2 - c1) / (1 + 0.045 * mean_c)
    hue = 2 * sqrt(c1 * c2) * sin(radians(turn / 2)) / (1 + 0.015 * mean_c * t)
    swing = 30 * exp(-(((mean_hue - 275) / 25) ** 2))
    rotated = -sin(radians(2 * swing)) * 2 * sqrt(mean_c**7 / (mean_c**7 + FAR))
    return sqrt(light**2 + chroma**2 + hue**2 + rotated * chroma * hue)


def least_difference(one: Colour, other: Colour) -> float:
    """The least CIEDE2000 of the two as any of us sees them: in colour, lacking a kind of cone, in grey."""
    return min(difference(a, b) for a, b in zip(_views(one), _views(other), strict=True))


@lru_cache(maxsize=COLOURS_KEPT)
def _views(colour: Colour) -> tuple[Lab, ...]:
    """A colour as each of us sees it; asked of every pair in a picture."""
    eyes = (seen(colour, eye) for eye in (PROTANOPIA, DEUTERANOPIA, TRITANOPIA))
    return tuple(lab(each) for each in (colour, grey(colour), *eyes))


def _polar(colour: Lab, more: float) -> tuple[float, float]:
    a, b = colour[1] * more, colour[2]
    return hypot(a, b), degrees(atan2(b, a)) % 360 if a or b else 0.0


def _mean_hue(one: float, other: float) -> float:
    mean = (one + other) / 2
    return mean if abs(one - other) <= 180 else mean + 180 if one + other < 360 else mean - 180


def _root(share: float) -> float:
    return float(share ** (1 / 3)) if share > 216 / 24389 else (24389 / 27 * share + 16) / 116
