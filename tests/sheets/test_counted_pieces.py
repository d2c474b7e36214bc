"""Counts for other programs: in every list how many are cut as drawn, how many reversed, and both."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.diagnostics.source import Source
from piecewright.door.records.as_json import as_json
from piecewright.door.records.block import block_of
from piecewright.door.records.reports import quilt_report
from piecewright.door.records.tables import quilt_csv
from piecewright.pipeline import compile_file
from support.check import DictShelf

HANDED = """\
edition 1
block "Slack Tide" {
  finished 8in
  mirror in top--bottom {
    seam bottom -- (1/3 from top-right to bottom-right) -- (1/3 from top to top-right) -- top-right
    piece sail at (1/8, 1/8) in dark
    piece rest at bottom-right in pale
  }
}
quilt "Tide Table" {
  use "Slack Tide" as tide
  fabric dark
  fabric pale
  fabric background
  set straight 3 across 2 down { alternate tide }
}
"""
WORDS = ("as_drawn", "reversed", "in_all")


@pytest.fixture(scope="module")
def made():
    outcome = compile_file(Source("tide.quilt", HANDED), DictShelf({}))
    assert outcome.value is not None, outcome.diagnostics
    return outcome.value


def told(record) -> tuple[int, int, int]:
    assert record["in_all"] == record["as_drawn"] + record["reversed"]
    return tuple(record[word] for word in WORDS)


def test_templates_of_a_block_say_how_many_in_all(made):
    templates = as_json(block_of(made.blocks[0], Fraction(1)))["templates"]
    assert any(each["reversed"] for each in templates)
    for each in templates:
        assert told(each) == (each["cut"], each["cut_reversed"], sum(each["fabrics"].values()))
        assert sum(each["fabrics_reversed"].values()) == each["reversed"]


def test_the_cutting_of_a_quilt_and_its_counts_tell_the_same(made):
    quilt = made.quilts[0]
    plan = plan_cutting(quilt).value
    record = quilt_report(quilt, plan)
    cut, counted = Counter(), Counter()
    for each in record["cutting"]:
        if each["part"] != "binding":
            cut.update({(each["fabric"], word): each[word] for word in WORDS})
            assert told(each)[2] == each["pieces"]
    for each in record["counts"]:
        counted.update({(each["fabric"], word): each[word] for word in WORDS})
        assert told(each)[2] == each["pieces"]
    assert cut == counted and any(times for (_, word), times in cut.items() if word == "reversed")


def test_tables_for_spreadsheets_have_the_same_columns(made):
    tables = quilt_csv(made.quilts[0], plan_cutting(made.quilts[0]).value)
    for name in ("cutting.csv", "counts.csv"):
        head, *rows = (row.split(",") for row in tables[name].splitlines() if '"' not in row)
        at = [head.index(word) for word in ("as_drawn", "reversed", "pieces")]
        assert rows and all(int(row[at[0]]) + int(row[at[1]]) == int(row[at[2]]) for row in rows)
