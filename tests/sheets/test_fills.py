"""Fabrics as fills: on a photocopy no two of six look alike. CIE L* is worked out here again, from CIE 15."""

from __future__ import annotations

from itertools import combinations

import pytest
from piecewright.sheets.arrange.fills import PITCH, STROKE, Fill, fills_for

LISTS = [
    ["dark", "light", "medium", "background", "pale", "accent"],
    ["a", "b", "c", "d", "e", "f"],
    ["pale", "background", "light", "cream", "ecru", "white"],
    ["dark", "navy", "indigo", "black", "midnight", "deep"],
    ["sand", "tide", "rust"],
    ["navy", "cream", "sky", "rust", "gold", "black"],
    ["teal", "coral", "lemon", "plum", "grey", "rose"],
]


def printed_lightness(fill: Fill) -> float:
    """L* of ground and texture together, as an eye or a photocopier averages them."""

    def light(part: float) -> float:
        return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4  # IEC 61966-2-1

    def brightness(colour: tuple[float, float, float]) -> float:
        return 0.2126 * light(colour[0]) + 0.7152 * light(colour[1]) + 0.0722 * light(colour[2])

    line = STROKE / PITCH
    # Dots are as long as two lines are wide, and as far apart as the lines.
    covered = {"none": 0.0, "lines": line, "back": line, "cross": 2 * line - line**2, "dots": 2 * line**2}[
        fill.texture
    ]
    y = (1 - covered) * brightness(fill.ground) + covered * brightness(fill.ink)
    return 116 * y ** (1 / 3) - 16 if y > 216 / 24389 else y * 24389 / 27


@pytest.mark.parametrize("roles", LISTS)
def test_six_fabrics_stand_twenty_points_apart(roles):
    lightness = [printed_lightness(fill) for fill in fills_for(roles).values()]
    for one, other in combinations(lightness, 2):
        assert abs(one - other) >= 20 - 1e-9


@pytest.mark.parametrize("roles", [*LISTS, [f"cloth{number}" for number in range(30)]])
def test_colours_can_be_printed(roles):
    for fill in fills_for(roles).values():
        assert all(0 <= part <= 1 for part in (*fill.ground, *fill.ink, *fill.lettering))


@pytest.mark.parametrize("roles", [*LISTS, [f"cloth{number}" for number in range(30)]])
def test_letters_read_on_their_ground(roles):
    """Contrast of 3 to 1 or better, as WCAG 2.2 asks of large letters and of drawings."""
    for fill in fills_for(roles).values():
        plain = Fill(0, fill.ground, "none", fill.ink, fill.lettering)
        ground = ((printed_lightness(plain) + 16) / 116) ** 3 if printed_lightness(plain) > 8 else 0.0
        letters = fill.lettering[0]
        brighter, darker = max(ground, letters), min(ground, letters)
        assert (brighter + 0.05) / (darker + 0.05) >= 3


@pytest.mark.parametrize("roles", [["dark", "light"], ["light", "dark"], ["medium", "dark", "pale", "light"]])
def test_names_that_say_how_light_they_are_are_believed(roles):
    fills = fills_for(roles)
    order = [role for role in ("pale", "light", "medium", "dark") if role in fills]
    lightness = [printed_lightness(fills[role]) for role in order]
    assert lightness == sorted(lightness, reverse=True)


def test_eleven_fabrics_are_all_different():
    fills = fills_for([f"cloth{number}" for number in range(11)])
    assert len({(fill.ground, fill.texture) for fill in fills.values()}) == 11


def test_a_second_look_is_the_same():
    assert fills_for(["dark", "sea", "light"]) == fills_for(["dark", "sea", "light"])


def test_a_fabric_that_names_its_colour_is_drawn_in_it():
    """Nobody looks for a rust-coloured cloth where the page shows blue."""
    fills = fills_for(["navy", "rust", "sky", "gold", "green", "cream"])
    for name, most, least in (("navy", 2, 0), ("rust", 0, 2), ("sky", 2, 0), ("gold", 0, 2)):
        ground = fills[name].ground
        assert ground[most] == max(ground) and ground[least] == min(ground), name
    assert max(fills["green"].ground) == fills["green"].ground[1]
