"""The cutting chart: for every fabric its cuts, the largest first, each with its reason; and other ways to
cut."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Final, NamedTuple

from ...cutting.plan_model import Offer
from ...words.pages import chart as words
from ...words.say import Say
from ...words.work.cuts import why_words
from ..arrange.options import SheetOptions
from ..content import Chapter, Column, Paragraph, Part, Row, Section, Table
from ..quilts.tables import CutRow, FabricCuts, measured_shape
from ..quilts.words import BOXES, joined_words, row_title, size_words, yield_words
from ..work import Work
from .needs import bought


class Line(NamedTuple):
    """One cut of the chart as its columns read it; `alike`: all rows of its size, where it is the first."""

    row: CutRow
    say: Say
    alike: Sequence[CutRow]

    @property
    def what(self) -> str:
        """`squares 3 7/8in, 20 in all with h and j`."""
        joined, others = joined_words(self.row, self.say), [each.key for each in self.alike[1:]]
        count = sum(each.cut.cuts for each in self.alike)
        in_all = words.sum_words(count, others) if others else ""
        return ", ".join(filter(None, (row_title(self.row, self.say), joined, in_all)))


class ChartColumn(NamedTuple):
    """A column, and what it says of a cut. `csv` is its name in a table for spreadsheets, where that has not
    the same already."""

    column: Column
    says: Callable[[Line], str]
    csv: str = ""


COLUMNS: Final[tuple[ChartColumn, ...]] = (
    ChartColumn(Column(words.KEY, 18.0, bold=True), lambda line: line.row.key),
    ChartColumn(Column(words.CUT, 24.0, "end", bold=True), lambda line: str(line.row.cut.cuts)),
    ChartColumn(Column(words.WHAT, 106.0, bold=True), lambda line: line.what),
    ChartColumn(Column(words.GIVES, 84.0), lambda line: yield_words(line.row.cut)),
    ChartColumn(Column(words.PURPOSE, 90.0), lambda line: line.row.purpose),
    ChartColumn(Column(words.WHY, 0.0), lambda line: why_words(line.say, line.row.cut)),
)
"""The columns, each with what it says of a cut: another column is a line here, on paper, in HTML, in a
terminal and, where it has a name for it, as CSV; its heading is one of the words."""


def chart(work: Work, options: SheetOptions) -> Iterator[Chapter]:
    """Every cut, fabric by fabric."""
    alone = work.alone
    yield Chapter(words.TITLE, tuple(_parts(work)), note=words.NOTE, joins=alone, whole=alone)


def _parts(work: Work) -> Iterator[Part]:
    yield Paragraph(words.INTRO_ALONE if work.alone else words.INTRO)
    if any(cut.kind == "template" and work.is_over_papers(cut) for cut in work.plan.cuts):
        yield Paragraph(words.round_papers(work.say))
    for cuts in work.cuts:
        yield Section(cuts.title, words.fabric_words(cuts.fabric, bought(cuts.plan, work.say)))
        columns = tuple(column for column, *_ in COLUMNS)
        rows = tuple(chart_rows(cuts, work.say))
        yield Table(columns, rows, words.caption(cuts.title), title=cuts.title)


def chart_rows(cuts: FabricCuts, say: Say) -> list[Row]:
    """A fabric's cuts as rows. Where several are of one size, the first says how many that is in all; where
    several may be made in the same other ways, the first says how."""
    alike: dict[str, list[CutRow]] = {}
    for row in cuts.rows:
        if row.cut.kind in BOXES and row.cut.joined <= 1:
            alike.setdefault(f"{measured_shape(row.cut)} {size_words(row.cut, say)}", []).append(row)
    first = {rows[0].key: rows for rows in alike.values()}
    told: dict[tuple[Offer, ...], str] = {}
    for row in cuts.rows:
        told.setdefault(row.cut.offers, row.key)
    return [
        Row(
            tuple(each.says(Line(row, say, first.get(row.key, ()))) for each in COLUMNS),
            f"{row.cut.fabric} {row.key}",
            notes=_notes(row, told[row.cut.offers], say),
        )
        for row in cuts.rows
    ]


def csv_columns(cuts: Sequence[FabricCuts], say: Say) -> dict[str, list[str]]:
    """What the columns with a name in CSV say of every cut, fabric by fabric, by that name."""
    rows = [Line(row, say, ()) for each in cuts for row in each.rows]
    return {each.csv: [each.says(row) for row in rows] for each in COLUMNS if each.csv}


def _notes(row: CutRow, told: str, say: Say) -> tuple[str, ...]:
    """The other ways to make a cut, or the key of the row that tells them."""
    offers = row.cut.offers
    if offers and told != row.key:
        return (words.offers_as(offers, told),)
    return tuple(words.offer_words(say, offer) for offer in offers)
