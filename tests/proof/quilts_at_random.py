"""Random quilts, built by the command line and counted a second time by hand: a program of its own.

Nothing here is the compiler's. `Plan` writes a quilt's text and, while it writes, counts what its maker
would: blocks, pieces and square inches of every fabric, strips and their lengths. `check` then reads what
was written (JSON, tables, the picture's SVG, the printed pages) and lays the two sums side by side.

    python tests/proof/quilts_at_random.py 300            # quilts 0 to 299, as they are and every tenth as
    a booklet python tests/proof/quilts_at_random.py 20 1200        # 20 from number 1200
    python tests/proof/quilts_at_random.py 1 1207 --keep  # one again, its text printed
"""

from __future__ import annotations

import csv
import json
import re
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil, floor, sqrt
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any, NamedTuple

from rows_before_use import check_numbers, check_print, printed_lines, run

NEAR = 1e-6  # inches or square inches between two numbers that are one
DRAWN = 2e-3  # of its area that a fabric's shapes may differ in a picture: its numbers have 1/1000 of a point
SEAM = Fraction(1, 2)  # inches that both allowances of a piece take
EIGHTH = 4.5  # inches of an eighth of a yard
TENTH = 3.9370079  # inches of a tenth of a metre
CM = Fraction(100, 254)  # inches


class Block(NamedTuple):
    """A block: its words, its size as drafted, and of each role the pieces as shares of its area."""

    name: str
    title: str
    width: int
    height: int
    body: str
    shares: dict[str, tuple[float, ...]]


QUARTER = 3.141592653589793 / 4

SHELF = {
    each.name: each
    for each in (
        Block(
            "sails",
            "Two Sails",
            4,
            4,
            """
  faces top-left
  seam top-right -- bottom-left
  piece one at top-left in dark
  piece two at bottom-right in pale""",
            {"dark": (0.5,), "pale": (0.5,)},
        ),
        Block(
            "doors",
            "Four Doors",
            4,
            4,
            """
  seam top -- bottom
  seam left -- right
  piece one at top-left, bottom-right in dark
  piece two at top-right, bottom-left in pale""",
            {"dark": (0.25,) * 2, "pale": (0.25,) * 2},
        ),
        Block(
            "swift",
            "Swift",
            4,
            2,
            """
  faces top
  seam bottom-left -- top -- bottom-right
  piece bird at bottom in dark
  piece air at top-left, top-right in pale""",
            {"dark": (0.5,), "pale": (0.25,) * 2},
        ),
        Block(
            "rails",
            "Three Rails",
            3,
            3,
            """
  grid 1 x 3
  seam A2 -- B2
  seam A3 -- B3
  piece one at top in dark
  piece two at center in third
  piece three at bottom in pale""",
            {"dark": (1 / 3,), "third": (1 / 3,), "pale": (1 / 3,)},
        ),
        Block(
            "glass",
            "Four Winds",
            6,
            6,
            """
  seam top-left -- bottom-right
  seam top-right -- bottom-left
  piece one at top, bottom in dark
  piece two at left, right in third""",
            {"dark": (0.25,) * 2, "third": (0.25,) * 2},
        ),
        Block(
            "lee",
            "Lee Sail",
            4,
            4,
            """
  faces top
  point mast = 1in from top-left to top-right
  seam mast -- bottom-left
  seam mast -- bottom-right
  piece lee at top-left in pale
  piece sail at bottom in dark
  piece luff at top-right in third""",
            {"pale": (1 / 8,), "dark": (0.5,), "third": (3 / 8,)},
        ),
        Block(
            "buoy",
            "Buoy",
            4,
            4,
            """
  point low = 3in from bottom-left to top-left
  point far = 3in from bottom-left to bottom-right
  seam low ~~ far around bottom-left
  piece float at bottom-left in dark
  piece sea at top-right in pale""",
            {"dark": (QUARTER * 9 / 16,), "pale": (1 - QUARTER * 9 / 16,)},
        ),
        Block(
            "frame",
            "Hatch",
            4,
            4,
            """
  seam top -- right -- bottom -- left -- top
  piece hatch at center in third
  piece deck at top-left, top-right, bottom-right, bottom-left in pale""",
            {"third": (0.5,), "pale": (0.125,) * 4},
        ),
    )
}
"""Straight ones, one with an arc, one that is not its own mirror image, one twice as long as high."""

SQUARES = [name for name, block in SHELF.items() if block.width == block.height]
ROLES = ("dark", "pale", "third")
CLOTHS = ("coal", "bone", "rust", "moss", "flax")


@dataclass
class Sum:
    """What a maker counts of one colourway."""

    pieces: Counter[str] = field(default_factory=Counter)
    area: dict[str, float] = field(default_factory=dict)
    blocks: Counter[tuple[str, float, float]] = field(default_factory=Counter)
    strips: Counter[tuple[str, float, float]] = field(default_factory=Counter)

    def cloth(self, fabric: str, area: float, count: int = 1) -> None:
        """So many pieces of one fabric, with the area of each."""
        self.pieces[fabric] += count
        self.area[fabric] = self.area.get(fabric, 0.0) + area * count


class Plan:
    """One random quilt: its text, and its sums by colourway."""

    def __init__(self, number: int) -> None:
        self.chance = Random(number)
        self.title = f"Trial {number}"
        pick = self.chance.random
        self.ways = [
            dict(zip(ROLES, self.chance.sample(CLOTHS, 3), strict=True))
            for _ in range(2 if pick() < 0.25 else 1)
        ]
        self.sums = [Sum() for _ in self.ways]
        self.metric = pick() < 0.2
        self.uses: dict[str, None] = {}
        self.width = self.height = Fraction(0)  # of a set on point its floats as fractions
        self.lines = self._set()
        self.lines += self._borders()
        self.binding = self.chance.choice(CLOTHS)
        self.text = self._text()
        self.lying = set(re.findall(r"fabric (\w+) (?:one way|striped)", self.text))

    # ---- what is counted --------------------------------------------------------------------------------

    def lay(self, name: str, width: Fraction, height: Fraction, count: int = 1) -> None:
        """A block, or `plain CLOTH`, so many times in a cell of that size."""
        if name.startswith("plain "):
            self.piece(name.split()[1], float(width * height), count)
            return
        block = SHELF[name]
        self.uses[name] = None
        for way, total in zip(self.ways, self.sums, strict=True):
            total.blocks[block.title, float(width), float(height)] += count
            for role, shares in block.shares.items():
                for share in shares:
                    total.cloth(way[role], share * float(width * height), count)

    def piece(self, cloth: str, area: float, count: int = 1) -> None:
        """A piece of cloth of the setting or a border; its cloth is a fabric or a role."""
        for way, total in zip(self.ways, self.sums, strict=True):
            total.cloth(way.get(cloth, cloth), area, count)

    def strip(self, cloth: str, short: Fraction, long: Fraction, count: int, *, mitred: bool = False) -> None:
        """A strip of a border. Mitred, it is as long inside as is given, and at each end a square and a
        half more outside."""
        self.piece(cloth, float(short * (long + short if mitred else long)), count)
        for way, total in zip(self.ways, self.sums, strict=True):
            reach = float(long + 2 * short if mitred else long)
            total.strips[way.get(cloth, cloth), float(short), reach] += count

    # ---- the set ----------------------------------------------------------------------------------------

    def _any(self, *choices: Any) -> Any:
        return self.chance.choice(choices)

    def _cloth(self) -> str:
        return str(self.chance.choice((*CLOTHS, *ROLES)))

    def _cell(self) -> str:
        """What fills a square cell: a block, now and then a plain one."""
        return f"plain {self._cloth()}" if self.chance.random() < 0.25 else self.chance.choice(SQUARES)

    def _length(self, *inches: str) -> tuple[str, Fraction]:
        """A length as written, and in inches."""
        if self.metric:
            cm = Fraction(self.chance.choice((2, 3, 4, 5, 6)))
            return f"{cm}cm", cm * CM
        word = self.chance.choice(inches)
        return f"{word}in", sum(map(Fraction, word.split()), Fraction(0))

    def _side(self) -> tuple[str, Fraction]:
        """A cell's size."""
        if self.metric:
            cm = self._any(12, 15, 20)
            return f"{cm}cm", cm * CM
        word = self._any("3", "4", "6", "6 1/2", "7 1/2", "8", "9")
        return f"{word}in", sum(map(Fraction, word.split()), Fraction(0))

    def _set(self) -> list[str]:
        kind = self._any("straight", "straight", "on point", "rows", "rows")
        return {"straight": self._straight, "on point": self._on_point, "rows": self._rows}[kind]()

    def _straight(self) -> list[str]:
        across, down = self._any(1, 2, 3, 4, 5), self._any(1, 2, 3, 4, 5)
        word, side = self._side()
        cells = [self._cell() for _ in range(self._any(1, 2, 2, 3))]
        grid = {(x, y): cells[(x + y) % len(cells)] for x in range(across) for y in range(down)}
        sash = self._any("", "", "sashing", "posts", "around", "sashing around")
        said, strip, cloth, post = "", Fraction(0), self._cloth(), self._cloth()
        if sash:
            said, strip = self._length("1", "1 1/2", "2", "3/4")
        lines = []
        if across > 1 and down > 1 and sash in ("", "posts", "around") and self.chance.random() < 0.4:
            x, y = self.chance.randrange(across - 1), self.chance.randrange(down - 1)
            over = self._cell()
            lines.append(f"    place {self._turned(over)} in {'ABCDEF'[x]}{y + 1}..{'ABCDEF'[x + 2]}{y + 3}")
            for spot in ((x, y), (x + 1, y), (x, y + 1), (x + 1, y + 1)):
                del grid[spot]
            self.lay(over, 2 * side + strip, 2 * side + strip)
            if sash:  # of the sashing it lies over two strips each way, and a post
                self.piece(cloth, float(-side * strip), 0)
                self._less(cloth, float(side * strip), 4)
                self._less(post, float(strip * strip), 1)
        for cell in grid.values():
            self.lay(cell, side, side)
        around = 1 if "around" in sash else -1
        wide = across * side + (across + around) * strip if sash else across * side
        high = down * side + (down + around) * strip if sash else down * side
        if sash in ("posts", "around"):
            self.piece(cloth, float(side * strip), (across + around) * down + across * (down + around))
            self.piece(post, float(strip * strip), (across + around) * (down + around))
        elif sash:
            self.piece(cloth, float(side * strip), (across + around) * down)
            self.piece(cloth, float(wide * strip), down + around)
        self.width, self.height = wide, high
        filled = ", ".join(self._turned(cell) for cell in cells)
        lines.insert(0, f"    alternate {filled}")
        head = f"  set straight {across} across {down} down of {word} {{"
        tail = {
            "posts": f" posts in {post}",
            "around": f" posts in {post} around",
            "sashing around": " around",
        }
        own = [f"  sashing {said} in {cloth}{tail.get(sash, '')}"] if sash else []
        return [head, *lines, "  }", *own]

    def _less(self, cloth: str, area: float, count: int) -> None:
        self.piece(cloth, area, -count)

    def _turned(self, cell: str) -> str:
        """A cell as written, turned or mirrored: that changes no count."""
        if cell.startswith("plain"):
            return cell
        return cell + self._any("", "", " turned 90deg", " turned 180deg", " mirrored")

    def _on_point(self) -> list[str]:
        across, down = self._any(1, 2, 3, 4), self._any(1, 2, 3)
        word, side = self._side()
        first, second = self._cell(), self._cell()
        triangles, sash = self._cloth(), self.chance.random() < 0.3
        said, strip = self._length("1", "1 1/2") if sash else ("", Fraction(0))
        own, between = across * down, (across - 1) * (down - 1)
        self.lay(first, side, side, own)
        self.lay(second, side, side, between)
        wide, high = (each * float(side + strip) * sqrt(2) for each in (across, down))
        rest = wide * high - (own + between) * float(side * side)
        lines = []
        if sash:
            cloth, post = self._cloth(), self._cloth()
            posts, halves = 2 * own - across - down, 2 * across + 2 * down
            self.piece(cloth, float(side * strip), 4 * own)
            self.piece(post, float(strip * strip), posts)
            self.piece(post, float(strip * strip) / 2, halves)
            rest -= float(side * strip * 4 * own + strip * strip * posts + strip * strip * halves / 2)
            lines = [f"  sashing {said} in {cloth} posts in {post}"]
        sides = 2 * (across - 1) + 2 * (down - 1)
        corner = float(side) ** 2 / 4  # a side triangle is half a block, a corner triangle a quarter
        if not sash:
            assert abs(rest - sides * 2 * corner - 4 * corner) < NEAR * 100
        self.piece(triangles, rest / (sides + 4), sides + 4)
        self.width, self.height = Fraction(wide), Fraction(high)
        filled = f"{self._turned(first)}, {self._turned(second)}"
        return [
            f"  set on point {across} across {down} down of {word} with triangles in {triangles} {{",
            f"    alternate {filled}",
            "  }",
            *lines,
        ]

    def _rows(self) -> list[str]:
        """Rows of 24in, some of them more than once: they are sewn alike."""
        long, pool = Fraction(24), []
        for _ in range(self._any(1, 2, 3)):
            pool.append(
                self._any(
                    [("swift", 6, 4, 2)],
                    [("swift turned 90deg", 12, 2, 4)],
                    [("swift turned 180deg", 6, 4, 2)],
                    [("sails", 6, 4, 4)],
                    [("sails mirrored", 6, 4, 4)],
                    [("rails", 8, 3, 3)],
                    [("glass", 4, 6, 6)],
                    [("swift", 3, 4, 2), (f"plain {self._cloth()}", 6, 2, 2)],
                    [("doors", 2, 4, 4), ("lee", 2, 4, 4), (f"plain {self._cloth()}", 2, 4, 4)],
                    [("rails", 4, 3, 3), ("rails turned 90deg", 4, 3, 3)],
                )
            )
        rows = [self.chance.choice(pool) for _ in range(self._any(1, 2, 3, 4, 5, 6))]
        for row in rows:
            for name, count, width, height in row:
                turned = "90deg" in name
                plain = name.startswith("plain")
                size = (height, width) if turned and not plain else (width, height)
                self.lay(name if plain else name.split()[0], Fraction(size[0]), Fraction(size[1]), count)
        self.width, self.height = long, Fraction(sum(row[0][3] for row in rows))
        said = ["    row " + ", ".join(f"{count} {name}" for name, count, *_ in row) for row in rows]
        lines = ["  set rows {", *said, "  }"]
        if self.chance.random() < 0.4 and len(rows) > 1:
            cloth = self._cloth()
            word, strip = self._length("1", "2")
            lines.append(f"  sashing {word} in {cloth}")
            self.piece(cloth, float(long * strip), len(rows) - 1)
            self.height += strip * (len(rows) - 1)
        return lines

    # ---- borders ----------------------------------------------------------------------------------------

    def _borders(self) -> list[str]:
        lines = [line for _ in range(self._any(0, 1, 2, 2, 3)) for line in self._border()]
        return lines

    def _border(self) -> Iterator[str]:
        kind = self._any("butted", "mitred", "pieced", "pieced", "pieced", "to")
        if kind in ("butted", "mitred"):
            word, wide = self._length("1", "2", "3", "1 1/2")
            cloth = self._cloth()
            yield f"  border {word} in {cloth}{' mitred' if kind == 'mitred' else ''}"
            self._framed(cloth, wide, wide, mitred=kind == "mitred")
            return
        unit = Fraction(self._any(1, 2))
        if kind == "to" or not self._comes_out(unit):
            yield self._rounded(4 * unit)
        if kind == "pieced":
            yield self._pieced(unit)

    def _framed(self, cloth: str, side: Fraction, end: Fraction, *, mitred: bool = False) -> None:
        """Four strips; without mitres the sides first."""
        across = self.width if mitred else self.width + 2 * side
        self.strip(cloth, side, self.height, 2, mitred=mitred)
        self.strip(cloth, end, across, 2, mitred=mitred)
        self.width, self.height = self.width + 2 * side, self.height + 2 * end

    def _rounded(self, by: Fraction) -> str:
        """A plain border up to the next sizes that are so many times `by`, at least 1in wide."""
        wide, high = (by * ceil((each + 2) / by) for each in (self.width, self.height))
        cloth = self._cloth()
        self._framed(cloth, (wide - self.width) / 2, (high - self.height) / 2)
        self.width, self.height = wide, high
        return f"  border to {wide}in x {high}in in {cloth}"

    def _comes_out(self, unit: Fraction) -> bool:
        return all(each % (4 * unit) == 0 for each in (self.width, self.height))

    def _pieced(self, unit: Fraction) -> str:
        """Units on four sides, squares or blocks at the corners. A side is a multiple of four times its
        width."""
        (low, high), square = (self.width, self.height), unit * unit
        around = 2 * (low + high)
        what = self._any("swift", "swift", "sails", "rails", "two")
        if what == "two":
            one, other = "doors", f"plain {self._cloth()}"
            for name in (one, other):
                self.lay(name, unit, unit, int(around / unit / 2))
            what = f"{one}, {other}"
        elif what == "swift":
            self.lay("swift", 2 * unit, unit, int(around / unit / 2))
        else:
            self.lay(what, unit, unit, int(around / unit))
        corner = self._any(f"plain {self._cloth()}", f"plain {self._cloth()}", "frame")
        self.lay(corner, unit, unit, 4)
        assert square == unit * unit
        self.width, self.height = low + 2 * unit, high + 2 * unit
        return f"  border {unit}in of {what} corners {corner}"

    # ---- its text ---------------------------------------------------------------------------------------

    def _text(self) -> str:
        """The file."""
        uses = [f'  use "{SHELF[name].title}" as {name}' for name in self.uses]
        named = [", ".join(f"{role} = {fabric}" for role, fabric in way.items()) for way in self.ways]
        titles = ['"Ebb" ', '"Flood" '] if len(self.ways) > 1 else [""]
        cloths = {name: self._fabric(name) for name in CLOTHS}
        bolt = "quarter" not in cloths[self.binding] and "scrap" not in cloths[self.binding]
        lines = [
            "edition 1",
            f'quilt "{self.title}" {{',
            *uses,
            *cloths.values(),
            "  fabric back width 108in",
            *(f"  roles {title}{own}" for title, own in zip(titles, named, strict=True)),
            *self.lines,
            f"  binding 2 1/4in in {self.binding}{self._any('', '', ' bias' if bolt else '')}",
            "  backing in back 3in over",
            "  batting 3in over",
            "}",
        ]
        for name in self.uses:
            block = SHELF[name]
            size = f"finished {block.width}in x {block.height}in"
            lines.append(f'block "{block.title}" {{\n  {size}{block.body}\n}}')
        return "\n".join(lines) + "\n"

    def _fabric(self, name: str) -> str:
        """Mostly off the bolt; in quarters or scraps now and then, and as many as it takes."""
        width = self._any("", "", " width 40in", " width 44in", " shrinks 4%", " width 110cm")
        cut_from = self._any("", "", "", "", " fat quarter 60", " scrap 30in x 40in" * 8)
        lies = self._any("", "", "", "", "", " one way", " striped")
        return f"  fabric {name}{lies}{width if lies or not cut_from else cut_from}"


# ---- laid side by side ----------------------------------------------------------------------------------


def check(plan: Plan, folder: Path, papers: bool) -> Counter[str]:
    """Every colourway of a quilt that was built into a folder. `papers`: foundations were planned."""
    found: Counter[str] = Counter()
    stem = plan.title.lower().replace(" ", "-")
    files = sorted(folder.glob(f"{stem}-*numbers.json"))
    assert len(files) == len(plan.ways), (plan.title, files)
    for path in files:
        quilt = json.loads(path.read_text())
        at = 1 if quilt["colourway"] == "Flood" else 0
        found["colourways"] += 1
        found["counts"] += _check_sums(quilt, plan, plan.sums[at])
        found["rows"] += check_numbers(quilt)
        found["yardages"] += _check_cloth(quilt, plan.lying)
        base = str(path).removesuffix("-numbers.json")
        found["tables"] += _check_tables(quilt, base)
        if papers:
            found["printed rows"] += check_print(printed_lines(Path(f"{base}-booklet.pdf")))
            continue
        found["cuts"] += _check_cuts(quilt, plan.sums[at])
        found["drawn"] += _check_picture(Path(f"{base}-picture-page-1.svg"), quilt, plan.sums[at])
        found["printed"] += _check_print(quilt, base)
    return found


def _same(one: float, other: float, what: object) -> None:
    assert abs(one - other) < 1e-4, (one, other, what)


def _check_sums(quilt: dict[str, Any], plan: Plan, own: Sum) -> int:
    """Sizes, blocks, pieces of every fabric, seams, binding, backing."""
    _same(quilt["finished"]["width"], float(plan.width), "width")
    _same(quilt["finished"]["height"], float(plan.height), "height")
    blocks: Counter[tuple[str, float, float]] = Counter()
    for block in quilt["blocks"]:
        size = block["finished"]["width"], block["finished"]["height"]
        blocks[block["title"], round(size[0], 4), round(size[1], 4)] += block["count"]
    mine = Counter(
        {
            (title, round(width, 4), round(height, 4)): count
            for (title, width, height), count in own.blocks.items()
            if count
        }
    )
    assert blocks == mine, (blocks, mine)
    pieces = Counter({fabric: count for fabric, count in own.pieces.items() if count})
    told: Counter[str] = Counter()
    for row in quilt["counts"]:
        told[row["fabric"]] += row["pieces"]
    assert told == pieces, (told, pieces)
    assert quilt["pieces"] == pieces.total()
    sentence = f"{pieces.total():,} piece{'s' * (pieces.total() != 1)}, {pieces.total() - 1:,} seam"
    proof = quilt["assembly"]["proof"]
    assert proof["sentence"].startswith(sentence) and proof["closes"], (proof, sentence)
    around = 2 * float(plan.width + plan.height) + 10
    assert around - NEAR <= quilt["binding"]["length"] <= around + 1, quilt["binding"]
    for way in ("width", "height"):
        for layer in ("backing", "batting"):
            over = quilt[layer][way] - quilt["finished"][way] - 6
            assert -NEAR <= over <= 1, (layer, way, over)
    return len(pieces) + len(blocks) + 8


def _top(quilt: dict[str, Any]) -> list[dict[str, Any]]:
    """The cuts that go into the top."""
    return [cut for cut in quilt["cutting"] if cut["part"] not in ("binding", "backing")]


def _check_cuts(quilt: dict[str, Any], own: Sum) -> int:
    """Of every fabric as many pieces are cut as counted; borders are as long as they have to be."""
    told: Counter[str] = Counter()
    for cut in _top(quilt):
        told[cut["fabric"]] += cut["pieces"]
    assert told == Counter({fabric: count for fabric, count in own.pieces.items() if count}), told
    step = quilt["ruler_step"]
    strips = [cut for cut in quilt["cutting"] if cut["part"] == "border" and "strip" in cut["for"]]
    for fabric, *size in own.strips:
        short, long = sorted(size)
        fits = [
            cut
            for cut in strips
            if cut["fabric"] == fabric
            and max(cut["width"], cut["height"]) - long - 0.5 >= -NEAR
            and -NEAR <= min(cut["width"], cut["height"]) - short - 0.5 <= step + NEAR
        ]
        assert fits, f"no strip of {fabric} is long enough for {short} x {long}"
        longest = min(max(cut["width"], cut["height"]) for cut in fits)
        assert longest - long - 0.5 <= 6, f"{longest} is far too long for {long}"
    assert sum(cut["pieces"] for cut in strips) == sum(own.strips.values())
    return len(told) + len(strips)


RING = re.compile(r"M([^MZ]*)Z")


def _check_picture(svg: Path, quilt: dict[str, Any], own: Sum) -> int:
    """The picture has so many shapes of every fabric, and so much of it, as were counted."""
    text = svg.read_text()
    (whole,) = re.findall(r'<path class="outline" d="([^"]*)"', text)
    scale = _box(_rings(whole)[0]) / quilt["finished"]["width"]
    pieces: Counter[str] = Counter()
    for fabric, path in re.findall(r'<path class="fill" data-subject="([^"]*)" d="([^"]*)"', text):
        rings = _rings(path)
        pieces[fabric] += len(rings)
        area = sum(map(_area, rings)) / scale**2
        assert abs(area - own.area[fabric]) < DRAWN * own.area[fabric] + 0.5, (fabric, area, own.area[fabric])
    assert pieces == Counter({fabric: count for fabric, count in own.pieces.items() if count}), pieces
    assert abs(sum(own.area.values()) - quilt["finished"]["width"] * quilt["finished"]["height"]) < 1e-3
    return pieces.total()


def _rings(path: str) -> list[list[tuple[float, float]]]:
    """The closed parts of a path of lines and cubic curves, curves as short lines."""
    return [_ring(part) for part in RING.findall(path)]


def _ring(part: str) -> list[tuple[float, float]]:
    ring: list[tuple[float, float]] = []
    for command, words in re.findall(r"([LC]?)([^LC]+)", part):
        at = [float(word) for word in words.split()]
        spots = list(zip(at[::2], at[1::2], strict=True))
        if command == "C":
            start, one, two, end = (complex(*spot) for spot in (ring[-1], *spots))
            for share in (each / 16 for each in range(1, 17)):
                rest = 1 - share
                place = rest**3 * start + 3 * rest * share * (rest * one + share * two) + share**3 * end
                ring.append((place.real, place.imag))
        else:
            ring += spots
    return ring


def _box(ring: Sequence[tuple[float, float]]) -> float:
    return max(x for x, _ in ring) - min(x for x, _ in ring)


def _area(ring: Sequence[tuple[float, float]]) -> float:
    ends = [*ring[1:], ring[0]]
    return abs(sum(x * d - c * y for (x, y), (c, d) in zip(ring, ends, strict=True))) / 2


def _check_cloth(quilt: dict[str, Any], lying: set[str]) -> int:
    """No fabric is bought that does not hold its cuts, and none that plain strips, a cut after the other,
    would not take as well, but of those that lie one way: there strips may not run as they please."""
    step = EIGHTH if any("yd" in each["buy_text"] for each in quilt["fabrics"]) else TENTH
    held = 0
    for fabric in quilt["fabrics"]:
        cuts = [cut for cut in quilt["cutting"] if cut["fabric"] == fabric["name"]]
        if not cuts or not re.search(r" (yd|m)$", fabric["buy_text"]):
            continue
        straight = [cut for cut in cuts if cut["kind"] != "template"]
        area = sum(
            cut["cuts"] * cut["width"] * cut["height"]
            for cut in straight
            if cut["part"] not in ("backing", "binding")
        )  # of a binding's strips the last is shorter
        wide, held = fabric["usable_width"], held + 1
        assert area <= fabric["used"] * wide + NEAR, (fabric, area)
        must = (fabric["used"] + fabric["margin"]) * (1 + fabric["shrinkage"])
        most = (fabric["used"] + fabric["margin"]) / (1 - fabric["shrinkage"]) + step
        assert must - NEAR <= fabric["buy"] <= most + NEAR, fabric
        free = fabric["name"] not in lying and len(straight) == len(cuts)
        if free and not any(cut["part"] in ("backing", "binding") for cut in cuts):
            plainly = sum(_plainly(cut, wide) for cut in cuts)
            over = plainly + max(fabric["margin"], 1, 0.05 * plainly)
            assert fabric["buy"] <= over / (1 - fabric["shrinkage"]) + step, (fabric, plainly)
    return held


def _plainly(cut: dict[str, Any], wide: float) -> float:
    """Inches of cloth for a cut alone, in strips across the cloth; longer ones joined, each with a seam
    more."""
    best = []
    for along, up in ((cut["width"], cut["height"]), (cut["height"], cut["width"])):
        if along <= wide + NEAR:
            best.append(ceil(cut["cuts"] / floor(wide / along + NEAR)) * up)
        else:
            best.append(cut["cuts"] * ceil((along + 1) / (wide - up - 1)) * up)
    return min(best)


def _check_tables(quilt: dict[str, Any], base: str) -> int:
    """The spreadsheet's tables say what the numbers say."""
    rows = 0
    for table in ("counts", "cutting"):
        with Path(f"{base}-{table}.csv").open(newline="") as stream:
            told = list(csv.DictReader(stream))
        assert len(told) == len(quilt[table])
        for row, own in zip(told, quilt[table], strict=True):
            assert row["fabric"] == own["fabric"] and int(row["pieces"]) == own["pieces"], row
        rows += len(told)
    return rows


def _check_print(quilt: dict[str, Any], base: str) -> int:
    """The printed counts, chart and list have these numbers."""
    counts = "\n".join(printed_lines(Path(f"{base}-counts.pdf")))
    totals = [int(each.replace(",", "")) for each in re.findall(r"^in all ([\d,]+)$", counts, re.M)]
    assert totals and totals[0] == quilt["pieces"], totals
    chart = "\n".join(printed_lines(Path(f"{base}-chart.pdf")))
    printed = Counter((key, int(cuts)) for key, cuts in re.findall(r"^([a-z]{1,2}) (\d+) ", chart, re.M))
    told = Counter((cut["key"], cut["cuts"]) for cut in quilt["cutting"])
    assert told == printed, (told - printed, printed - told)
    supplies = " ".join(printed_lines(Path(f"{base}-supplies.pdf")))
    glyphs = {
        ord(glyph): f" {part}"
        for glyph, part in zip("½¼¾⅛⅜⅝⅞", ("1/2", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8"), strict=True)
    }
    said = " ".join(supplies.translate(glyphs).split())
    for fabric in quilt["fabrics"]:
        assert fabric["buy_text"] in said, fabric
    return len(told) + len(quilt["fabrics"]) + 1


# ---- the program ----------------------------------------------------------------------------------------


def build(plans: Sequence[Plan], folder: Path, *options: str) -> None:
    """All quilts of one command."""
    for plan in plans:
        (folder / f"{plan.title.replace(' ', '-')}.quilt").write_text(plan.text)
    run("build", folder, "--tables", "--out", folder / "out", *options)


PARTS = ("--format", "pdf,svg", "--parts", "picture,supplies,counts,chart")


def trial(numbers: Sequence[int]) -> Counter[str]:
    """The quilts of these numbers, each as tables and picture; then every tenth as a booklet on
    foundations."""
    found: Counter[str] = Counter()
    rulers = (("--ruler", "0.25cm"), ("--ruler", "1/16in"), ())
    for at, ruler in enumerate(rulers):
        plans = [Plan(number) for number in numbers if number % len(rulers) == at]
        booked = [plan for plan in plans if int(plan.title.split()[1]) % 10 == 0 and "buoy" not in plan.uses]
        for some, options in ((plans, PARTS), (booked, ("--booklet", "--sew", "foundation"))):
            with TemporaryDirectory() as name:
                if some:
                    build(some, Path(name), *options, *ruler)
                for plan in some:
                    try:
                        found += check(plan, Path(name) / "out", options is not PARTS)
                    except AssertionError as wrong:
                        raise AssertionError(f"{plan.title}: {wrong}") from wrong
                found["quilts" if options is PARTS else "booklets"] += len(some)
    return found


def main(words: Sequence[str]) -> None:
    """So many quilts, from which number."""
    count, start = int((words or ["300"])[0]), int(words[1]) if len(words) > 1 else 0
    if "--keep" in words:
        print(Plan(start).text)
    for at in range(start, start + count, 30):
        found = trial(range(at, min(at + 30, start + count)))
        print(", ".join(f"{number:,} {what}" for what, number in found.items()), flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
