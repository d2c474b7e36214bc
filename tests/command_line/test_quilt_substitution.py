"""One block of a sampler changed for another or for plain cloth: of all that is printed and written, what
depends on it changes and nothing else."""

from __future__ import annotations

import csv
import json
from collections import Counter
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from support.block_files import put
from support.command import piecewright
from support.quilts import BLOCKS

SAMPLER = """edition 1
quilt "Trial" {{
  use "Pair" as pair with dark = rose, pale = oat
  use "Sail" as sail
  fabric dark  fabric pale  fabric rose  fabric oat  fabric sand  fabric indigo  fabric moss
  set straight 3 across 3 down {{
    row pair, sail, pair turned 90deg
    row sail mirrored, {cell}, sail
    row pair, sail, pair facing bottom-right
  }}
  sashing 1in in moss posts in indigo around
  border 2in in indigo mitred
  border 1in of plain sand
  binding 2 1/2in in indigo  backing in sand  batting
}}
"""
"""Each block has fabrics of its own, and so have the setting and the borders."""

Row = tuple[tuple[str, str], ...]


class Written(NamedTuple):
    """What one build writes: rows of the tables, the numbers as JSON, the pages as SVG by part and number."""

    cutting: Counter[Row]
    counts: Counter[Row]
    fabrics: dict[str, Row]
    numbers: dict[str, Any]
    pages: dict[str, str]


@pytest.fixture(scope="module")
def before(tmp_path_factory: pytest.TempPathFactory) -> Written:
    return written(tmp_path_factory.mktemp("before"), "sail")


def written(folder: Path, cell: str) -> Written:
    """The sampler with that in its middle, built."""
    file = put(folder / "trial.quilt", SAMPLER.format(cell=cell) + BLOCKS)
    ended = piecewright("build", file, "--out", folder, "--tables", "--format", "svg", "--parts", "templates")
    assert ended.status == 0, ended.err
    numbers = json.loads((folder / "trial-v1-numbers.json").read_text())
    fabrics = {dict(row)["name"]: row for row in rows(folder / "trial-v1-fabrics.csv", set())}
    # The letters by which chart and pictures name cuts follow from their order, and so do not stand for them.
    cutting, counts = (
        Counter(rows(folder / f"trial-v1-{name}.csv", {"key"})) for name in ("cutting", "counts")
    )
    pages = {path.stem: path.read_text() for path in sorted(folder.glob("*.svg"))}
    return Written(cutting, counts, fabrics, numbers, pages)


def rows(path: Path, without: set[str]) -> list[Row]:
    """The rows of a table, some columns left out."""
    with path.open(newline="") as stream:
        return [
            tuple((name, value) for name, value in row.items() if name not in without)
            for row in csv.DictReader(stream)
        ]


def differing(old: Counter[Row], new: Counter[Row], column: str) -> set[str]:
    """What stands in a column of the rows that are in one table only."""
    return {dict(row)[column] for row in (old - new) + (new - old)}


class Change(NamedTuple):
    """What one change of the middle block has to change: fabrics, and blocks or kinds in the counts."""

    cell: str
    fabrics: set[str]
    counted: set[str]


CHANGES = (
    Change("pair", {"dark", "pale", "rose", "oat"}, {"Sail", "Pair"}),
    Change("plain sand", {"dark", "pale", "sand"}, {"Sail", "Setting"}),
    Change("plain moss", {"dark", "pale", "moss"}, {"Sail", "Setting"}),
    Change("sail mirrored", {"dark", "pale"}, {"Sail"}),
)


@pytest.mark.parametrize("change", CHANGES, ids=[each.cell for each in CHANGES])
def test_tables_change_in_the_changed_blocks_rows_alone(
    before: Written, tmp_path: Path, change: Change
) -> None:
    after = written(tmp_path, change.cell)
    assert differing(before.counts, after.counts, "of") == change.counted
    assert differing(before.counts, after.counts, "fabric") == change.fabrics
    assert differing(before.cutting, after.cutting, "fabric") == change.fabrics
    assert differing(before.cutting, after.cutting, "part") <= {"blocks", "setting"}
    assert set(after.fabrics) == set(before.fabrics)
    assert {name for name, row in after.fabrics.items() if row != before.fabrics[name]} <= change.fabrics


@pytest.mark.parametrize("change", CHANGES, ids=[each.cell for each in CHANGES])
def test_numbers_outside_the_changed_blocks_stay(before: Written, tmp_path: Path, change: Change) -> None:
    after = written(tmp_path, change.cell)
    stays = {
        "title",
        "version",
        "colourway",
        "finished",
        "setting",
        "maker",
        "notes",
        "ruler_step",
        "defaults",
        "binding",
        "backing",
        "batting",
    }
    assert {key: after.numbers[key] for key in stays} == {key: before.numbers[key] for key in stays}
    assert set(after.numbers) == stays | {
        "assembly",
        "blocks",
        "pieces",
        "cutting",
        "counts",
        "fabrics",
        "thread",
    }
    placed = {block["title"]: block["count"] for block in after.numbers["blocks"]}
    old = {block["title"]: block["count"] for block in before.numbers["blocks"]}
    moved = {name: placed[name] - old[name] for name in old if placed[name] != old[name]}
    assert moved == {"pair": {"Sail": -1, "Pair": 1}, "sail mirrored": {}}.get(change.cell, {"Sail": -1})
    pieces = {"Pair": 2, "Sail": 3}
    plain = change.cell.startswith("plain")
    assert (
        after.numbers["pieces"] - before.numbers["pieces"]
        == sum(pieces[name] * more for name, more in moved.items()) + plain
    )


@pytest.mark.parametrize("change", CHANGES, ids=[each.cell for each in CHANGES])
def test_template_pages_of_other_blocks_stay_to_the_byte(
    before: Written, tmp_path: Path, change: Change
) -> None:
    after = written(tmp_path, change.cell)
    assert list(after.pages) == list(before.pages)
    other = {name for name in before.pages if after.pages[name] != before.pages[name]}
    touched = {
        name for name, page in before.pages.items() if any(f">{title}<" in page for title in change.counted)
    }
    assert other <= touched


def test_a_turned_block_changes_no_number(before: Written, tmp_path: Path) -> None:
    after = written(tmp_path, "sail turned 180deg")
    assert (after.cutting, after.counts, after.fabrics, after.pages) == (
        before.cutting,
        before.counts,
        before.fabrics,
        before.pages,
    )
