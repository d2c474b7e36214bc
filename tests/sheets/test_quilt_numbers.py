"""A quilt's numbers for other programs: JSON and CSV say what the quilt and its plan say."""

from __future__ import annotations

import csv
import json
from io import StringIO

import pytest
from piecewright.door.records.reports import quilt_report
from piecewright.door.records.tables import cell, quilt_csv
from support.sample_quilts import TEXTS, planned

SAMPLES = pytest.mark.parametrize("name", TEXTS)


@SAMPLES
def test_the_report_has_the_fixed_form(name: str) -> None:
    quilt, plan = planned(name)
    record = json.loads(json.dumps(quilt_report(quilt, plan)))
    assert record["title"] == quilt.title and record["version"] == quilt.version
    assert record["finished"] == {"width": float(quilt.width), "height": float(quilt.height)}
    for row in record["cutting"]:
        assert {"fabric", "part", "kind", "width", "height", "cuts", "pieces", "template"} <= set(row)
    for row in record["fabrics"]:
        assert {"name", "usable_width", "used", "strips", "buy", "buy_text"} <= set(row)
    assert [row["count"] for row in record["blocks"]] == list(quilt.block_counts)


@SAMPLES
def test_cuts_and_counts_come_to_the_pieces_of_the_picture(name: str) -> None:
    quilt, plan = planned(name)
    record = quilt_report(quilt, plan)
    top = [row for row in record["cutting"] if row["part"] not in ("binding", "backing")]
    assert sum(row["pieces"] for row in top) == len(quilt.pieces) == record["pieces"]
    assert sum(row["pieces"] for row in record["counts"]) == len(quilt.pieces)


@SAMPLES
def test_the_tables_read_back_as_the_report(name: str) -> None:
    quilt, plan = planned(name)
    record, files = quilt_report(quilt, plan), quilt_csv(quilt, plan)
    assert list(files) == ["cutting.csv", "counts.csv", "fabrics.csv"]
    for file, key in (("cutting.csv", "cutting"), ("counts.csv", "counts"), ("fabrics.csv", "fabrics")):
        rows = list(csv.DictReader(StringIO(files[file], newline="")))
        assert len(rows) == len(record[key])
        for row, wanted in zip(rows, record[key], strict=True):
            assert row == {column: cell(wanted[column]) for column in row}


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@sum", "\tx", "\rx"])
def test_words_never_become_formulas(text: str) -> None:
    assert cell(text) == "'" + text


def test_numbers_and_plain_words_stay_as_they_are() -> None:
    assert [cell(each) for each in (3.875, -1, "Ohio Star A", "")] == ["3.875", "-1", "Ohio Star A", ""]
