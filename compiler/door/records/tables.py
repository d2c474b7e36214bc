"""A quilt's numbers as tables for spreadsheets: CSV by RFC 4180, one table a file.

A cell that a spreadsheet would take for a formula gets an apostrophe before it, so that words stay words.
"""

from __future__ import annotations

import csv
from collections.abc import Iterable, Sequence
from io import StringIO
from typing import Any, Final

from ...cutting.plan_model import CuttingPlan
from ...quilt.model import Quilt
from ...sheets.chapters.chart import csv_columns
from ...sheets.quilts.tables import fabric_cuts
from ...words.say import by_ruler
from .reports import quilt_report

Record = dict[str, Any]

FORMULA: Final = ("=", "+", "-", "@", "\t", "\r", "\n")
"""What a cell begins with that a spreadsheet would work out."""

CUTTING: Final = ("fabric", "key", "part", "kind", "width", "height", "cuts", "as_drawn", "reversed",
                  "pieces", "template", "for", "reason", "then")  # fmt: skip
COUNTS: Final = ("of", "template", "piece", "fabric", "as_drawn", "reversed", "pieces", "kind")
FABRICS: Final = ("name", "title", "usable_width", "used", "strips", "margin", "shrinkage", "buy", "buy_text")


def quilt_csv(quilt: Quilt, plan: CuttingPlan) -> dict[str, str]:
    """File name to table: cutting.csv, counts.csv, fabrics.csv. Lengths are inches in decimals."""
    record, say = quilt_report(quilt, plan), by_ruler(plan.ruler_step)
    more = csv_columns(fabric_cuts(quilt, plan, say), say)
    for number, cut in enumerate(record["cutting"]):
        cut.update({name: cells[number] for name, cells in more.items()})
    return {
        "cutting.csv": table((*CUTTING, *more), record["cutting"]),
        "counts.csv": table(COUNTS, record["counts"]),
        "fabrics.csv": table(FABRICS, record["fabrics"]),
    }


def table(columns: Sequence[str], records: Iterable[Record]) -> str:
    """The records' columns under their names."""
    out = StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(columns)
    writer.writerows([cell(record[column]) for column in columns] for record in records)
    return out.getvalue()


def cell(value: Any) -> str:
    """A number as it is; words so that they stay words."""
    text = str(value)
    return f"'{text}" if isinstance(value, str) and text.startswith(FORMULA) else text
