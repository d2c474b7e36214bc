"""A fabric's stated looks: `looks "#b7410e" dotted` is drawn as it says, and told as said."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from piecewright.looks.colour import to_hex
from piecewright.sheets.pictures.quilt import quilt_fills
from support.command import piecewright
from support.quilts import codes, try_quilt

SET = "set straight 2 across 2 down { alternate pair, plain rust }"
CLOTHS = "fabric sand fabric indigo fabric pale fabric dark "


def fills_of(*looks: str):
    """The fills of `rust` and of cloths after it that look so."""
    names = [f"cloth{number}" for number in range(len(looks) - 1)]
    fabrics = " ".join(f"fabric {name} {how}" for name, how in zip(["rust", *names], looks, strict=True))
    border = " ".join(f"border 1in in {name}" for name in names)
    made = try_quilt(f"{SET} {border}", fabrics=CLOTHS + fabrics).value
    assert made is not None
    return quilt_fills(made.quilts[0])


@pytest.mark.parametrize(
    "said, colour, texture",
    [
        ('looks "#b7410e" dotted', "#b7410e", "dotted"),
        ('looks "#B7410E"', "#b7410e", "plain"),
        ("looks navy striped", "#000080", "striped"),
        ('"Rust dots" looks checked', None, "checked"),
        ("looks darkolivegreen plain", "#556b2f", "plain"),
        ('"Berry" looks twill', None, "twill"),
    ],
)
def test_what_is_stated_is_drawn(said: str, colour: str | None, texture: str) -> None:
    fill = fills_of(said)["rust"]
    assert (fill.texture, fill.stated) == (texture, True)
    assert colour is None or to_hex(fill.ground) == colour


def test_stripes_after_looks_are_no_direction_of_the_cloth_and_before_it_are() -> None:
    def directed(facts: str) -> bool:
        made = try_quilt(SET, fabrics=CLOTHS + f"fabric rust {facts}").value
        return next(each for each in made.quilts[0].fabrics if each.name == "rust").is_directional

    assert not directed("looks navy striped")
    assert directed("striped looks navy") and directed("looks navy striped striped")


def test_two_stated_alike_keep_their_colour_and_are_told_by_their_textures() -> None:
    fills = fills_of("looks navy", "looks navy", "looks navy")
    stated = [fills[name] for name in ("rust", "cloth0", "cloth1")]
    assert {to_hex(each.ground) for each in stated} == {"#000080"}
    assert len({each.texture for each in stated}) == 3


@pytest.mark.parametrize(
    "said, code",
    [
        ("looks rusty", "colour-unknown"),
        ('looks "#12"', "colour-unknown"),
        ('looks "navy blue"', "colour-unknown"),
        ("looks navy looks red", "fact-twice"),
        ("looks", "statement-unfinished"),
    ],
)
def test_looks_that_are_none_are_told(said: str, code: str) -> None:
    assert code in codes(try_quilt(SET, fabrics=CLOTHS + f"fabric rust {said}"))


def test_explain_and_json_say_what_was_said(tmp_path: Path) -> None:
    path = tmp_path / "walk.quilt"
    path.write_text(
        'edition 1\n\nquilt "Walk" {\n  use "Ohio Star" as star\n  fabric background looks "#fff0cc"\n'
        '  fabric dark "Forest green"\n  set straight 2 across 2 down { alternate star }\n}\n'
    )
    told = json.loads(piecewright("explain", path, "--format", "json").out)["quilts"][0]["fabrics"]
    assert [each["looks"] for each in told] == ["said", "guessed"] and told[0]["colour"] == "#fff0cc"
    assert "background: #fff0cc, plain, as the file says" in piecewright("explain", path).out
