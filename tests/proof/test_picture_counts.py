"""Every number of the counts table is counted again on the quilt's picture, from what is printed and written
alone: the shapes of the picture's SVG, laid beside the templates that `explain` gives and the sizes in the
table's words."""

from __future__ import annotations

import csv
import json
import re
from collections import Counter
from collections.abc import Callable, Sequence
from fractions import Fraction
from math import atan2, degrees, hypot
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from support.block_files import put
from support.command import piecewright
from support.quilts import BLOCKS
from support.sample_quilts import BABY, ON_POINT, SAMPLER

Ring = tuple[tuple[float, float], ...]

MIXED = f"""edition 1
quilt "Mixed Weather" {{
  use "Sail" as sail with dark = slate
  use "House" as house
  use "Goose" as goose with pale = slate
  fabric dark  fabric pale  fabric slate  fabric sand
  set straight 5 across 4 down of 6in x 4in {{
    row house, house mirrored, 2 house turned 180deg, plain sand
    row 5 house
    place goose stretched in A3..B4
    place plain slate in B3..D4
    alternate house mirrored, plain slate
  }}
  sashing 1in in sand posts in dark around
  border to 40in x 24in in slate
  border 2in of plain dark corners sail mirrored
  border to 48in x 40in in pale
  binding 2in in dark  backing in pale  batting
}}
{BLOCKS}"""
"""Blocks that are not their own mirror images, turned and mirrored; a stretched one; posts and strips."""

QUILTS = {"sampler": SAMPLER, "on point": ON_POINT, "cot quilt": BABY, "mixed": MIXED}

NEAR = 0.02
"""Inches by which a side of the picture may differ: its numbers have a thousandth of a point, drawn small."""

ABOUT = 1 / 15
"""Inches by which a size said to be `about` so much may differ: it is told to the nearest eighth."""


class Picture(NamedTuple):
    """One colourway as it was written: the rings of each fabric in inches, the rows of the counts table, and
    the templates at the quilt's size."""

    rings: dict[str, list[Ring]]
    rows: list[dict[str, str]]
    numbers: dict[str, Any]
    shapes: dict[tuple[str, str], Ring]


def pictures(folder: Path, text: str) -> list[Picture]:
    """Every colourway of a quilt, built and explained by the command line."""
    file = put(folder / "trial.quilt", text)
    out = folder / "out"
    ended = piecewright("build", file, "--out", out, "--parts", "picture", "--format", "svg", "--tables")
    assert ended.status == 0, ended.err
    drafts = json.loads(piecewright("explain", file, "--format", "json").out)["blocks"]
    return [picture(path, drafts) for path in sorted(out.glob("*.svg"))]


def picture(svg: Path, drafts: Sequence[dict[str, Any]]) -> Picture:
    """One colourway, read from its picture and its tables."""
    stem = str(svg).partition("-picture-page-1.svg")[0]
    numbers = json.loads(Path(f"{stem}-numbers.json").read_text())
    with Path(f"{stem}-counts.csv").open(newline="") as stream:
        rows = list(csv.DictReader(stream))
    marks = re.findall(
        r'<path class="(fill|outline)"(?: data-subject="([^"]*)")? d="([^"]*)"', svg.read_text()
    )
    (whole,) = (rings_in(path) for kind, _, path in marks if kind == "outline")
    points = box_of(whole[0])[0] / numbers["finished"]["width"]
    rings = {
        fabric: [tuple((x / points, y / points) for x, y in ring) for ring in rings_in(path)]
        for kind, fabric, path in marks
        if kind == "fill"
    }
    shapes = {}
    sizes = {each["title"]: each["finished"] for each in numbers["blocks"]}
    for draft in drafts:
        if draft["title"] not in sizes:
            continue
        across, down = (sizes[draft["title"]][way] / draft["finished"][way] for way in ("width", "height"))
        for template in draft["templates"]:
            outline = tuple((x * across, y * down) for x, y in template["finished_outline"])
            shapes[draft["title"], template["label"]] = outline
    return Picture(rings, rows, numbers, shapes)


def rings_in(path: str) -> list[Ring]:
    """The closed parts of an SVG path of straight lines."""
    found = []
    for part in path.split("Z"):
        corners = [corner.split() for corner in re.split("[ML]", part) if corner]
        if corners:
            found.append(tuple((float(x), float(y)) for x, y in corners))
    return found


def box_of(ring: Ring) -> tuple[float, float]:
    """Width and height."""
    return tuple(max(each) - min(each) for each in zip(*ring, strict=True))  # type: ignore[return-value]


def sides_of(ring: Ring) -> list[tuple[float, float]]:
    """Every side's length, and the turn to the next in degrees; without corners of no turn."""
    kept = [ring[at] for at in range(len(ring)) if abs(turn_at(ring, at)) > 0.5]
    following = [*range(1, len(kept)), 0]
    return [
        (hypot(kept[after][0] - x, kept[after][1] - y), turn_at(kept, after))
        for (x, y), after in zip(kept, following, strict=True)
    ]


def turn_at(ring: Sequence[tuple[float, float]], at: int) -> float:
    """Degrees that the way round turns at a corner, clockwise above zero."""
    (ax, ay), (bx, by), (cx, cy) = ring[at - 1], ring[at], ring[(at + 1) % len(ring)]
    return (degrees(atan2(cy - by, cx - bx) - atan2(by - ay, bx - ax)) + 180) % 360 - 180


def same_shape(one: Ring, other: Ring) -> bool:
    """Whether two rings are one shape, turned and moved but not mirrored."""
    first, second = sides_of(one), sides_of(other)
    return len(first) == len(second) and any(
        all(abs(a - c) < NEAR and abs(b - d) < 1.5 for (a, b), (c, d) in zip(first, turned, strict=True))
        for turned in ([*second[at:], *second[:at]] for at in range(len(second)))
    )


def mirrored(ring: Ring) -> Ring:
    """The ring seen from the back, still clockwise."""
    return tuple((-x, y) for x, y in reversed(ring))


def inches(text: str) -> float:
    """`1 1/2in` as a number."""
    return float(sum(Fraction(word) for word in text.removesuffix("in").split()))


Matcher = Callable[[Ring], bool]


def matchers_of(picture: Picture, row: dict[str, str]) -> list[tuple[Matcher, int]]:
    """What tells whether a shape of the picture is one of a row's pieces, with the number the row says."""
    plain, back = int(row["as_drawn"]), int(row["reversed"])
    assert plain + back == int(row["pieces"]) > 0
    key = row["of"], row["template"]
    if key in picture.shapes:
        shape = picture.shapes[key]
        if same_shape(shape, mirrored(shape)):
            assert not back, "what is its own mirror image is never reversed"
            return [(lambda ring: same_shape(ring, shape), plain)]
        return [
            (lambda ring: same_shape(ring, shape), plain),
            (lambda ring: same_shape(ring, mirrored(shape)), back),
        ]
    sizes = re.findall(r"([\d /]+in)", row["piece"].rpartition(", ")[2])
    width, height = inches(sizes[0]), inches(sizes[-1])
    slack = ABOUT if "about" in row["piece"] else NEAR

    def fits(ring: Ring) -> bool:
        return any(
            abs(a - width) < slack and abs(b - height) < slack
            for a, b in (box_of(ring), box_of(ring)[::-1], box_of(eighth_turned(ring)))
        )

    return [(fits, plain + back)]


def eighth_turned(ring: Ring) -> Ring:
    """The ring turned by 45 degrees, as pieces of a set on point lie."""
    half = 0.5**0.5
    return tuple(((x - y) * half, (x + y) * half) for x, y in ring)


@pytest.mark.parametrize("name", QUILTS)
def test_every_number_of_the_counts_is_counted_on_the_picture(tmp_path: Path, name: str) -> None:
    found = pictures(tmp_path, QUILTS[name])
    assert len(found) == (2 if name == "on point" else 1)
    for picture in found:
        for fabric, rings in picture.rings.items():
            rows = [row for row in picture.rows if row["fabric"] == fabric]
            numbers = [each for row in rows for each in matchers_of(picture, row)]
            check_fabric(rings, numbers, rows)
        shown = Counter({fabric: len(rings) for fabric, rings in picture.rings.items()})
        assert shown.total() == picture.numbers["pieces"] == sum(int(row["pieces"]) for row in picture.rows)
        assert set(shown) == {row["fabric"] for row in picture.rows}


def check_fabric(
    rings: Sequence[Ring], numbers: Sequence[tuple[Matcher, int]], rows: Sequence[dict[str, str]]
) -> None:
    """Shapes that only one number can mean are as many as it says; where several can, as many as they say
    together. No shape is left over and no number without its shapes."""
    groups: Counter[tuple[int, ...]] = Counter()
    for ring in rings:
        fit = tuple(at for at, (matches, _) in enumerate(numbers) if matches(ring))
        assert fit, ring
        groups[fit] += 1
    for fit, count in groups.items():
        assert count == sum(numbers[at][1] for at in fit), (count, fit, rows)
    told = Counter(at for fit in groups for at in fit)
    assert set(told) == {at for at, (_, count) in enumerate(numbers) if count} and max(told.values()) == 1
