"""The cutting chart: for every fabric its cuts, the largest first, each with its reason; and other ways to
cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from ...cutting.needs import Fabric
from ...cutting.plan_model import CuttingPlan, Offer
from ...quilt.model import Quilt
from ...words.phrases import one_of
from ...words.say import by_ruler
from ...words.work.cloth import bought_words
from ...words.work.cuts import why_words
from ...words.work.offers import making_words, way_words
from ..arrange.furniture import Paper
from ..arrange.leaves import Leaf
from ..page import Mark
from .flow import Column, Item, Row, flow, gap, paragraph, section, table_items
from .frame import note_lines, open_body, open_leaf
from .tables import CutRow, FabricCuts, fabric_cuts, measured_shape
from .words import BOXES, joined_words, row_title, size_words, yield_words

COLUMNS: Final = (
    Column("key", 18.0, bold=True),
    Column("cut", 24.0, "end", bold=True),
    Column("what", 106.0, bold=True),
    Column("pieces it gives", 84.0),
    Column("for", 90.0),
    Column("why, and what then", 0.0),
)

NOTE: Final = (
    "Sizes are cut sizes, seam allowances counted in. Cut the largest first: smaller ones come out of "
    "what is left. "
    "Nothing on this page is true to size. Close the blade after every cut, cut away from yourself, keep "
    "it from children."
)

INTRO: Final = (
    "Letters name the cuts in the cutting pictures. ‘Cut’ is how many times you cut that size; ‘pieces’ "
    "is what the quilt "
    "then has."
)


def chart_leaves(quilt: Quilt, plan: CuttingPlan, paper: Paper) -> list[Leaf]:
    """The pages of the chart."""
    box = open_body(paper, len(note_lines(paper, NOTE)))
    width = box[2] - box[0]
    items: list[Item] = [*paragraph(INTRO, width, holds=True)]
    for cuts in fabric_cuts(quilt, plan):
        items += fabric_items(cuts, plan.ruler_step, width)
    pages: list[list[Mark]] = flow(items, box)
    return [open_leaf(quilt, paper, "cutting chart", "", marks, NOTE, "Cutting chart") for marks in pages]


def fabric_items(cuts: FabricCuts, step: Fraction, width: float) -> Iterator[Item]:
    """One fabric's section of the chart."""
    yield section(cuts.title, f"buy {bought_words(cuts.plan)}{chart_print_words(cuts.fabric)}", width)
    yield from table_items(COLUMNS, chart_rows(cuts, step), width, cuts.title)
    yield gap(6)


def chart_print_words(fabric: Fabric) -> str:
    """What holds of every cut of a print with a direction."""
    if fabric.one_way:
        return " · a one-way print, cut so that it stands upright in every piece of the quilt"
    return " · a stripe, cut so that it runs up and down the quilt in every piece" if fabric.striped else ""


def chart_rows(cuts: FabricCuts, step: Fraction) -> list[Row]:
    """A fabric's cuts as rows. Where several are of one size, the first says how many that is in all; where
    several may be made in the same other ways, the first says how."""
    alike: dict[str, list[CutRow]] = {}
    for row in cuts.rows:
        if row.cut.kind in BOXES and row.cut.joined <= 1:
            alike.setdefault(f"{measured_shape(row.cut)} {size_words(row.cut, step)}", []).append(row)
    sums = {rows[0].key: rows for rows in alike.values() if len(rows) > 1}
    said: dict[tuple[Offer, ...], str] = {}
    for row in cuts.rows:
        said.setdefault(row.cut.offers, row.key)
    return [_chart_row(row, step, sums.get(row.key, ()), said[row.cut.offers]) for row in cuts.rows]


def _chart_row(row: CutRow, step: Fraction, alike: Sequence[CutRow], said: str) -> Row:
    """One cut as a row, with the other ways under it, or the key of the row that says them."""
    cut = row.cut
    what = ", ".join(filter(None, (row_title(row, step), joined_words(row, step), sum_words(alike))))
    cells = (row.key, str(cut.cuts), what, yield_words(cut), row.purpose, why_words(by_ruler(step), cut))
    notes = tuple(offer_words(offer, step) for offer in cut.offers)
    if notes and said != row.key:
        ways = list(dict.fromkeys(way_words(offer.made) for offer in cut.offers))
        notes = (f"Or {one_of(ways)}, as for {said}.",)
    return Row(cells, f"{cut.fabric} {row.key}", notes=notes)


def sum_words(alike: Sequence[CutRow]) -> str:
    """`20 in all with h and j`: how many cuts of one size there are; '' where there is one row of them."""
    if not alike:
        return ""
    rest = [row.key for row in alike[1:]]
    keys = " and ".join(filter(None, (", ".join(rest[:-1]), rest[-1])))
    return f"{sum(row.cut.cuts for row in alike)} in all with {keys}"


def offer_words(offer: Offer, step: Fraction) -> str:
    """Another way, with the cloth it takes beside cutting singly."""
    text = making_words(by_ruler(step), offer.made)
    cloth, singly = _square_inches(offer.cloth), _square_inches(offer.singly)
    return f"Or {way_words(offer.made)}: {text} Takes {cloth}; singly {singly}."


def _square_inches(area: Fraction | float) -> str:
    return f"{float(area):,.0f} sq in"
