"""The counts: for every block and every part of the setting how many pieces of which fabric, with totals."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...words.pages import counts as words
from ...words.work.shapes import shape_word
from ..arrange.options import SheetOptions
from ..content import Chapter, Column, Paragraph, Part, Row, Section, Table
from ..quilts.tables import CountGroup, CountRow, count_groups, fabric_titles, fabric_totals
from ..work import Work

COLUMNS: Final = (
    Column(words.TEMPLATE, 44.0, bold=True),
    Column(words.PIECE, 110.0),
    Column(words.FABRIC, 0.0),
    Column(words.CUT_AS, 118.0),
    Column(words.AS_DRAWN, 42.0, "end"),
    Column(words.REVERSED, 42.0, "end"),
    Column(words.PIECES, 42.0, "end", bold=True),
)

FABRIC_COLUMNS: Final = (Column(words.FABRIC, 0.0), Column(words.PIECES, 60.0, "end", bold=True))


def counts(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """How many pieces of which fabric, for each block and each part of the setting."""
    yield Chapter(words.TITLE, tuple(_parts(work)))


def _parts(work: Work) -> Iterator[Part]:
    """The whole top first, then block by block."""
    titles, groups = fabric_titles(work.quilt), count_groups(work.quilt, work.plan)
    yield Paragraph(words.INTRO)
    yield from _whole(work, groups, titles)
    for number, group in enumerate(groups):
        yield Section(group.title, words.group_words(group.size, group.version, group.times))
        rows = (*(_row(row, titles, f"{number}") for row in group.rows), _total(group, f"total {number}"))
        yield Table(COLUMNS, rows, words.caption(group.title), title=group.title)


def _whole(work: Work, groups: Sequence[CountGroup], titles: dict[str, str]) -> Iterator[Part]:
    totals, whole = fabric_totals(groups), sum(group.pieces for group in groups)
    rows = [
        Row((titles[each.name], f"{totals[each.name]:,}"), f"fabric {each.name}")
        for each in work.quilt.fabrics
        if each.name in totals
    ]
    yield Section(words.WHOLE, words.whole_words(sum(work.quilt.block_counts), whole))
    rows.append(Row((words.IN_ALL, f"{whole:,}"), "whole", total=True))
    yield Table(FABRIC_COLUMNS, tuple(rows), words.BY_FABRIC, title=words.WHOLE, narrow=True)


def _row(row: CountRow, titles: dict[str, str], subject: str) -> Row:
    """One shape and fabric."""
    numbers = (_shown(row.plain), _shown(row.back), str(row.pieces))
    return Row((row.template, row.what, titles[row.fabric], shape_word(row.kind), *numbers), subject)


def _total(group: CountGroup, subject: str) -> Row:
    """A group's total."""
    plain, back = sum(row.plain for row in group.rows), sum(row.back for row in group.rows)
    numbers = (_shown(plain), _shown(back), str(group.pieces))
    return Row(("", "", words.IN_ALL, "", *numbers), subject, total=True)


def _shown(count: int) -> str:
    return str(count) if count else "–"
