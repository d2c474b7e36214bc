"""Rows are made before they are used, and as many as are used: read from what is printed and from the
numbers.

A program of its own, which shares nothing with the compiler: it knows the command line, the JSON of
`explain` and the words of booklets. For quilts in files (or all examples):

    python tests/proof/rows_before_use.py examples/ropewalk-winter-quilts/*.quilt
"""

from __future__ import annotations

import json
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from html import unescape
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, NamedTuple

from pypdf import PdfReader

NEAR = 1e-6  # inches between two sizes of the numbers that are one
SEAM = 0.5  # inches that one seam takes off two unfinished sizes


class Told(NamedTuple):
    """A row or step as it is told: what it is called, how many are made, what it takes, what is said of
    it."""

    name: str
    count: int
    takes: tuple[str, ...]
    lines: str


def run(*arguments: str | Path) -> str:
    """What a command prints; it has to end well."""
    done = subprocess.run(
        [sys.executable, "-m", "piecewright", *map(str, arguments)],
        capture_output=True,
        text=True,
        check=False,
        timeout=600,
    )
    assert done.returncode == 0, (arguments, done.stdout[-2000:], done.stderr[-2000:])
    return done.stdout


# ---- one order, and no more nor fewer than are used -----------------------------------------------------


def check_order(told: Sequence[Told], given: Counter[str]) -> int:
    """Every part is at hand when it is used, all that is made is used, and one thing is left: the last.
    `given` is what there is before. Returns how many parts were looked up."""
    at_hand, looked = Counter(given), 0
    for each in told:
        for part, count in Counter(each.takes).items():
            looked += 1
            assert at_hand[part] >= count * each.count, (
                f"{each.name} takes {count * each.count} of {part}, of which {at_hand[part]} are made by then"
            )
            at_hand[part] -= count * each.count
        assert each.name not in at_hand, f"{each.name} is made twice"
        at_hand[each.name] = each.count
    left = {name: count for name, count in at_hand.items() if count}
    last = told[-1].name if told else next(iter(given), "")
    assert left == {last: 1}, f"left over, beside the top: {left}"
    return looked


# ---- the numbers ----------------------------------------------------------------------------------------


def check_numbers(quilt: dict[str, Any]) -> int:
    """The stages of one colourway in JSON: order, counts, seams and sizes. Returns how much was looked up."""
    made = quilt["assembly"]
    rows = [row for stage in made["stages"] for row in stage["rows"]]
    told = [Told(row["name"], row["batch"], tuple(row["parts"]), "") for row in rows]
    looked = check_order(told, Counter({part["name"]: part["count"] for part in made["parts"]}))
    assert sum(row["batch"] * (len(row["parts"]) - 1) for row in rows) == made["seams"]
    sizes = {part["name"]: part["unfinished"] for part in made["parts"]}
    slanted = {part["name"] for part in made["parts"] if "triangle" in part["what"] or "half" in part["what"]}
    if any(row["way"] == "mitred" for row in rows):  # strips that narrow toward their ends
        slanted |= {part["name"] for part in made["parts"] if part["what"] == "border strip"}
    for row in rows:
        later = {
            title: sum(other["batch"] * other["parts"].count(row["name"]) for other in stage["rows"])
            for stage in made["stages"]
            if (title := stage["title"])
        }
        users = [(title, count) for title, count in later.items() if count]
        assert row["kept_for"] == dict(users[1:]), row
        if row["way"] in ("across", "down") and slanted.isdisjoint(row["parts"]):
            looked += _check_size(row, sizes)
        elif row["way"] != "mitred":
            slanted.add(row["name"])
        sizes[row["name"]] = row["unfinished"]
    return looked + _check_steps(made)


def _check_size(row: dict[str, Any], sizes: dict[str, Any]) -> int:
    """A row is as long as its parts less a seam between two, and as high as each of them. Which way blocks
    and strips lie is not told but drawn, so it may lie either way."""
    along = 0 if row["way"] == "across" else 1
    long, high = (row["unfinished"]["width"], row["unfinished"]["height"])[:: 1 if along == 0 else -1]
    lengths = SEAM * (1 - len(row["parts"]))
    for part, turned in zip(row["parts"], row["turned"], strict=True):
        size = sizes[part]["width"], sizes[part]["height"]
        ways = [size, size[::-1]] if part[0] in "PQ" else [size[::-1] if round(turned) % 180 == 90 else size]
        fits = [way[along] for way in ways if abs(way[1 - along] - high) < NEAR]
        assert fits, f"{part} is not as high as {row}"
        lengths += fits[0]
    assert abs(lengths - long) < NEAR, row
    return len(row["parts"])


def _check_steps(made: dict[str, Any]) -> int:
    """The single seams: a unit is made before it is sewn on, and every copy is pressed some way."""
    there: set[str] = set()
    for step in made["steps"]:
        assert all(part in there for part in step["from"] if part.startswith("u")), step
        assert step["batch"] == len(step["copies"]) == len(step["press"]["toward"]), step
        there.add(step["makes"])
    return sum(len(step["from"]) for step in made["steps"])


# ---- what is printed ------------------------------------------------------------------------------------

ROW = re.compile(r"^(R\d+)(?: · (?:make (\d+)|the top))?$")
STEP = re.compile(r"^Step \d+ · (?:unit (\d+)(?:, make (\d+))?|the block)$")
KIND = re.compile(r"^([PQ]\d+) ([\d,]+) ")
PART = re.compile(r"^([RPQ]\d+)(?: upside down| a quarter turn (?:left|right)| turned \d+°)?$")
SEW = re.compile(
    r"Sew (.*?) (?:side by side|one under another|along the slant|round the corner"
    r"|to the four sides of (R\d+|[PQ]\d+))"
)
KEEP = re.compile(r"Keep ([^.]*)\.")


def printed_lines(pdf: Path) -> list[str]:
    """The lines of a PDF, card after card."""
    return [line.strip() for page in PdfReader(pdf).pages for line in page.extract_text().split("\n")]


def html_lines(page: Path) -> list[str]:
    """The lines of an HTML page, a paragraph or cell each."""
    text = re.sub(r"<(style|script|svg|title)\b.*?</\1>", "", page.read_text(), flags=re.S)
    text = re.sub(r"</(td|th)>\s*<(td|th)[^>]*>", " ", text)
    return [" ".join(unescape(line).split()) for line in re.split(r"<[^>]*>", text) if line.strip()]


def read_rows(lines: Sequence[str]) -> tuple[list[Told], Counter[str]]:
    """The cards of the quilt's steps in order, and the parts of the top."""
    kinds = {found[1]: int(found[2].replace(",", "")) for line in lines if (found := KIND.match(line))}
    told: list[Told] = []
    for name, count, words in _cards(lines, ROW, "Sew "):
        found = SEW.search(words)
        assert found, words
        parts = [PART.match(part) for part in found[1].split(", ")]
        assert all(parts), words
        takes = [part[1] for part in parts if part]
        told.append(Told(name, count, (*takes, found[2]) if found[2] else tuple(takes), words))
    return told, Counter(kinds)


def read_steps(lines: Sequence[str]) -> Iterator[list[Told]]:
    """The cards of each block's steps: units alone, since pieces are cut and not sewn."""
    told: list[Told] = []
    for unit, count, words in _cards(lines, STEP, "Sew ", "Whip "):
        sewn = words.partition(".")[0]
        takes = re.findall(r"\bunit (\d+)\b", sewn) * (2 if " two of unit" in sewn else 1)
        told.append(Told(unit or "block", count, tuple(takes), words))
        if not unit:
            yield told
            told = []
    assert not told, "a block's steps end with the block"


def _cards(lines: Sequence[str], head: re.Pattern[str], *begins: str) -> Iterator[tuple[str, int, str]]:
    """Name, how many, and words from the first sentence to the sizes."""
    card: tuple[str, int] | None = None
    words: list[str] = []
    for line in lines:
        found = head.match(line)
        if found and not card:
            card = found[1], int(found[2] or 1)
        elif card and (words or line.startswith(begins)):
            words.append(line)
            if line.endswith(".") and re.search("nfinished|on the papers", " ".join(words)):
                yield (*card, " ".join(words))
                card, words = None, []


PRESSED = re.compile(r"(?:Finger-press|Press) (.*?)\.(?: |$)")


def pressed_count(words: str) -> int | None:
    """How many copies a card tells how to press; None where all are pressed alike."""
    said = PRESSED.search(words)
    assert said, words
    numbers = re.sub(r"\([^)]*\)|unit \d+", "", said[1])
    found = re.findall(r"(?:^|, |and |; )(?:the other )?(\d+|one)\b", numbers)
    return sum(1 if each == "one" else int(each) for each in found) or None


def check_print(lines: Sequence[str]) -> int:
    """A booklet's rows, and its blocks' steps: order, counts, pressings."""
    told, kinds = read_rows(lines)
    looked = check_order(told, kinds) if told else 0
    for each in told:
        for kept in KEEP.findall(each.lines):
            assert sum(map(int, re.findall(r"(\d+) for", kept))) < each.count, each
        if "mitres" not in each.lines:
            assert pressed_count(each.lines) in (None, each.count), f"make {each.count}: {each.lines}"
    for steps in read_steps(lines):
        looked += check_order(steps, Counter())
        for each in steps:
            if "Whip" not in each.lines:
                assert pressed_count(each.lines) in (None, each.count), f"make {each.count}: {each.lines}"
    return looked


def check_same(numbers: dict[str, Any], lines: Sequence[str], words: str) -> None:
    """The booklet and what `explain` says to people tell the rows as the numbers do, in that order."""
    rows = [
        (row["name"], row["batch"], sorted(row["parts"]))
        for stage in numbers["assembly"]["stages"]
        for row in stage["rows"]
    ]
    assert rows == [(each.name, each.count, sorted(each.takes)) for each in read_rows(lines)[0]]
    said = re.findall(
        rf"\b(R\d+)(?: · (?:make (\d+)|the top))?: {SEW.pattern}",
        " ".join(words.split()),
    )
    parts = [
        (name, int(count or 1), sorted(part.split()[0] for part in (*parts.split(", "), inner) if part))
        for name, count, parts, inner in said
    ]
    starts = range(len(parts) - len(rows) + 1)
    assert any(rows == parts[at : at + len(rows)] for at in starts), (rows, parts)


# ---- the program ----------------------------------------------------------------------------------------


def check_file(quilt: Path, out: Path, *options: str) -> int:
    """Every colourway of a file: numbers, words, booklet as PDF and as HTML. Returns how much was looked
    up."""
    numbers = json.loads(run("explain", quilt, "--format", "json"))["quilts"]
    words = run("explain", quilt)
    run("build", quilt, "--booklet", "--format", "pdf,html", "--out", out, *options)
    books = sorted(out.glob("*.pdf"), key=lambda path: path.stat().st_mtime_ns)
    assert len(books) == len(numbers) == len(list(out.glob("*.html")))
    looked = 0
    for one, pdf in zip(numbers, books, strict=True):
        looked += check_numbers(one)
        for lines in (printed_lines(pdf), html_lines(pdf.with_suffix(".html"))):
            looked += check_print(lines)
            check_same(one, lines, words)
    return looked


def main(files: Sequence[str]) -> None:
    """Checks the files that are named, or the examples."""
    examples = Path(__file__).parents[2] / "examples" / "ropewalk-winter-quilts"
    quilts = [Path(each) for each in files] or sorted(examples.glob("*.quilt"))
    for quilt in quilts:
        with TemporaryDirectory() as folder:
            print(f"{quilt.name}: {check_file(quilt, Path(folder)):,} parts are made before they are used")


if __name__ == "__main__":
    main(sys.argv[1:])
