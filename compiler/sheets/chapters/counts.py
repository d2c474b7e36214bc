"""The counts: for every block and every part of the setting how many pieces of which fabric, with totals."""

from __future__ import annotations

from typing import Final

from ...cutting.plan_model import CuttingPlan
from ...quilt.model import Quilt
from ...words.phrases import count_of
from ..arrange.furniture import Paper
from ..arrange.leaves import Leaf
from ..content import Column, Row
from ..quilts.tables import CountGroup, CountRow, count_groups, fabric_titles, fabric_totals
from ..setting.flow import Item, flow, gap, paragraph, section, table_items, together
from ..setting.open_page import READ_ONLY, open_body, open_leaf

COLUMNS: Final = (
    Column("template", 44.0, bold=True),
    Column("piece", 110.0),
    Column("fabric", 0.0),
    Column("cut as", 118.0),
    Column("as drawn", 42.0, "end"),
    Column("reversed", 42.0, "end"),
    Column("pieces", 42.0, "end", bold=True),
)

FABRIC_COLUMNS: Final = (Column("fabric", 0.0), Column("pieces", 60.0, "end", bold=True))

FEW_ROWS: Final = 30  # of a table that is kept on one page: they fit on any

INTRO: Final = (
    "Pieces of the quilt’s top, all blocks together. Reversed pieces are cut with the template turned over, "
    "or with the cloth face down."
)


def counts_leaves(quilt: Quilt, plan: CuttingPlan, paper: Paper) -> list[Leaf]:
    """The pages of the counts: the whole top first, then block by block."""
    box = open_body(paper)
    width = box[2] - box[0]
    titles, groups = fabric_titles(quilt), count_groups(quilt, plan)
    items: list[Item] = [*paragraph(INTRO, width, holds=True)]
    items += [*total_items(quilt, groups, titles, width), gap(6)]
    for number, group in enumerate(groups):
        items.append(section(group.title, group_words(group), width))
        rows = [count_row(row, titles, f"{number}") for row in group.rows]
        items += table_items(COLUMNS, [*rows, total_row(group, f"total {number}")], width, group.title)
        items.append(gap(6))
    return [open_leaf(quilt, paper, "counts", "", marks, READ_ONLY, "Counts") for marks in flow(items, box)]


def group_words(group: CountGroup) -> str:
    """`6in finished · version 2 · 10 in the quilt`."""
    return (
        f"{group.size} finished · version {group.version} · {group.times} in the quilt" if group.times else ""
    )


def count_row(row: CountRow, titles: dict[str, str], subject: str) -> Row:
    """One shape and fabric."""
    counts = (_shown(row.plain), _shown(row.back), str(row.pieces))
    return Row((row.template, row.what, titles[row.fabric], row.kind, *counts), subject)


def total_row(group: CountGroup, subject: str) -> Row:
    """A group's total."""
    plain, back = sum(row.plain for row in group.rows), sum(row.back for row in group.rows)
    return Row(("", "", "in all", "", _shown(plain), _shown(back), str(group.pieces)), subject, total=True)


def _shown(count: int) -> str:
    return str(count) if count else "–"


def total_items(
    quilt: Quilt, groups: tuple[CountGroup, ...], titles: dict[str, str], width: float
) -> list[Item]:
    """The whole top by fabric."""
    totals = fabric_totals(groups)
    rows = [
        Row((titles[fabric.name], f"{totals[fabric.name]:,}"), f"fabric {fabric.name}")
        for fabric in quilt.fabrics if fabric.name in totals
    ]  # fmt: skip
    whole = sum(group.pieces for group in groups)
    rows.append(Row(("in all", f"{whole:,}"), "whole", total=True))
    blocks = count_of(sum(quilt.block_counts), "block")
    narrow = min(width, 260.0)
    items = [
        section("The whole top", f"{blocks}, {whole:,} pieces", width),
        *table_items(FABRIC_COLUMNS, rows, narrow, "The whole top"),
    ]
    return together(items) if len(rows) <= FEW_ROWS else items
