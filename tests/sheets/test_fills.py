"""Cloth looks as its title says, and no two fabrics of a picture are drawn alike."""

from __future__ import annotations

import re
from importlib.resources import files
from itertools import combinations

import pytest
from piecewright.looks.colour import (
    DEUTERANOPIA,
    PROTANOPIA,
    TRITANOPIA,
    difference,
    grey,
    lab,
    seen,
    to_hex,
)
from piecewright.looks.reading import read_looks
from piecewright.sheets.arrange.fills import SKEW, SLANT, STROKE, Fill, fills_for
from piecewright.words.cloth_words import CLOTH, MODIFIERS, TEXTURES
from piecewright.words.css_names import CSS

LISTS = [
    ["dark", "light", "medium", "background", "pale", "accent"],
    ["a", "b", "c", "d", "e", "f"],
    ["pale", "background", "light", "cream", "ecru", "white"],
    ["dark", "navy", "indigo", "black", "midnight", "deep"],
    ["sand", "tide", "rust"],
    ["navy", "cream", "sky", "rust", "gold", "black"],
    ["teal", "coral", "lemon", "plum", "grey", "rose"],
    ["red", "green", "brown", "olive", "moss", "rust"],
    ["clockwork", "forest", "straw", "berry", "oatmeal"],
]


@pytest.mark.parametrize(
    ("one", "other", "told"),
    [
        ((50, 2.6772, -79.7751), (50, 0, -82.7485), 2.0425),
        ((50, -1, 2), (50, 0, 0), 2.3669),
        ((50, 2.5, 0), (50, 0, -2.5), 4.3065),
        ((50, 2.5, 0), (73, 25, -18), 27.1492),
        ((60.2574, -34.0099, 36.2677), (60.4626, -34.1751, 39.4387), 1.2644),
        ((22.7233, 20.0904, -46.694), (23.0331, 14.973, -42.5619), 2.0373),
        ((2.0776, 0.0795, -1.135), (0.9033, -0.0636, -0.5514), 0.9082),
    ],
)
def test_differences_are_those_published(one, other, told):
    """Test pairs of Sharma, Wu and Dalal (2005), table 1; written down from memory."""
    assert difference(one, other) == pytest.approx(told, abs=0.00006)
    assert difference(other, one) == pytest.approx(told, abs=0.00006)


def test_the_names_of_the_standard_are_all_there():
    """CSS Color Module Level 4, section 6.1: 148 names; a few of them, from memory."""
    assert len(CSS) == 148
    told = {
        "rebeccapurple": "663399",
        "navy": "000080",
        "peru": "cd853f",
        "slategrey": "708090",
        "tan": "d2b48c",
    }
    assert {name: CSS[name] for name in told} == told


@pytest.mark.parametrize(
    ("title", "hue", "texture"),
    [
        ("Forest green", (90, 200), None),
        ("Rust dots", (30, 75), "dotted"),
        ("Straw gold", (75, 105), None),
        ("Indigo stripe", (250, 320), "striped"),
        ("Dusty rose floral", (350, 400), "floral"),
        ("Berry check", (340, 400), "checked"),
        ("Pale blue gingham", (240, 300), "checked"),
        ("Dark sea green", (90, 220), None),
    ],
)
def test_a_title_is_read(title, hue, texture):
    """The hue is the angle of CIE a* and b*: red about 30, yellow 90, green 140, blue 280 degrees."""
    from math import atan2, degrees

    looks = read_looks(title)
    assert looks.texture == texture
    _, a, b = lab(looks.colour)
    turn = degrees(atan2(b, a)) % 360
    assert any(hue[0] <= each <= hue[1] for each in (turn, turn + 360))


def test_a_title_without_a_colour_says_nothing():
    assert read_looks("Grandmother's best", "scrap").colour is None
    assert read_looks("clockwork").colour is None


def test_modifiers_change_the_colour():
    plain, dark, pale, dusty = (
        lab(read_looks(f"{word} teal").colour) for word in ("", "dark", "pale", "dusty")
    )
    assert dark[0] < plain[0] < pale[0]
    assert abs(dusty[1]) + abs(dusty[2]) < abs(plain[1]) + abs(plain[2])


@pytest.mark.parametrize("colour", sorted(CSS))
def test_light_is_lighter_than_dark(colour):
    """Of every colour that is named, and of a role that names no colour beside it."""
    fills = fills_for([f"dark-{colour}", f"light-{colour}", "light", "dark"])
    assert fills[f"dark-{colour}"].lightness < fills[f"light-{colour}"].lightness
    assert fills["dark"].lightness < fills["light"].lightness
    assert fills["dark"].lightness < fills[f"light-{colour}"].lightness


@pytest.mark.parametrize("names", LISTS)
def test_no_two_are_drawn_alike(names):
    """Another texture, or at least CIEDE2000 12 in colour, in grey and to each kind of the colour-blind."""
    for one, other in combinations(fills_for(names).values(), 2):
        if one.texture == other.texture:
            for see in (
                lambda c: c,
                grey,
                *(lambda c, m=m: seen(c, m) for m in (PROTANOPIA, DEUTERANOPIA, TRITANOPIA)),
            ):
                assert difference(lab(see(one.ground)), lab(see(other.ground))) >= 12


@pytest.mark.parametrize("names", LISTS)
def test_lines_of_a_texture_are_seen_in_grey(names):
    for fill in fills_for(names).values():
        if fill.texture != "plain":
            assert abs(lab(fill.ink)[0] - lab(fill.ground)[0]) >= 15


def test_lines_of_a_texture_are_no_seams():
    """Thinner than the thinnest seam (0.35 points), and off the angles that seams have."""
    assert STROKE < 0.35
    for angle in (SKEW, SKEW + 90, SLANT, -SLANT):
        assert all(abs((angle - seam + 45) % 90 - 45) > 10 for seam in (0, 22.5, 45, 67.5))


def test_a_fabric_is_drawn_in_its_colour():
    fills = fills_for(["background", "a", "b"], {"a": "Forest green", "b": "Rust dots"})
    assert to_hex(fills["b"].ground) == "#b7410e" and fills["b"].texture == "dotted"
    red, green, blue = fills["a"].ground
    assert green > red and green > blue


def test_colours_can_be_printed_and_letters_read():
    """Contrast of 3 to 1 or better, as WCAG 2.2 asks of large letters and of drawings."""
    from piecewright.looks.colour import luminance

    for fill in fills_for([*sorted(CSS), *(f"cloth{number}" for number in range(30))]).values():
        assert isinstance(fill, Fill)
        assert all(0 <= part <= 1 for part in (*fill.ground, *fill.ink, *fill.lettering))
        light = sorted((luminance(fill.ground), luminance(fill.lettering)))
        assert (light[1] + 0.05) / (light[0] + 0.05) >= 3


def test_eleven_fabrics_that_say_nothing_are_all_different():
    fills = fills_for([f"cloth{number}" for number in range(11)])
    assert len({(fill.ground, fill.texture) for fill in fills.values()}) == 11


def test_the_reference_lists_every_word():
    page = files("piecewright.grammar").joinpath("REFERENCE.md").read_text(encoding="utf-8")
    page = page[page.index("### How cloth is drawn") : page.index("### Roles and colourways")]
    assert dict(re.findall(r"`([a-z]+)` \| `#([0-9a-f]{6})`", page)) == CLOTH
    for table in (MODIFIERS, TEXTURES):
        for what in dict.fromkeys(table.values()):
            (row,) = re.findall(rf"^\| {what} \| (.*) \|$", page, re.MULTILINE)
            assert re.findall("`([a-z]+)`", row) == [word for word in table if table[word] == what]
