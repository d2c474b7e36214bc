"""The cutting pictures: for each fabric its cloth true to scale, with the order of the cuts in words beside it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil
from typing import Final

from ...cutting.plan_model import ClothPlan, CuttingPlan
from ...cutting.rotary_words import length_text
from ...measure.length import POINTS_PER_INCH
from ...quilt.model import Quilt
from ..page import Mark
from ..quilt_tables import FabricCuts, fabric_cuts, keys_of
from .furniture import Paper
from .leaves import Leaf
from .quilt_cloth import STRIP_ROOM, View, view_marks, views_of
from .quilt_flow import Item, flow, gap, section
from .quilt_frame import note_lines, open_body, open_leaf
from .quilt_picture import scale_share
from .quilt_steps import step_lines, strips_of
from .quilt_words import key_words
from .style import LABEL, SMALLEST, break_lines, grey_text, set_text

CLOTH_WIDE: Final = 290.0  # points of the widest cloth of a fabric
LARGEST: Final = 0.16
"""Of true size: a fat quarter is drawn no larger, so that several go on a page."""

WORDS_GAP: Final = 16.0
LINE: Final = 10.0
NUMBER_WIDE: Final = 18.0
COLUMNS: Final = 3  # of words that go on below a picture
COLUMN_GAP: Final = 14.0
TITLE_TALL: Final = 16.0  # over a cloth's picture
LEAST_BESIDE: Final = 12  # lines that may stand beside a picture, however low it is
KEY_LINE: Final = 11.0

NOTE: Final = (
    "Every cut runs from edge to edge of the piece it parts. Grey is left over. Small numbers are the step that begins there; "
    "dashed lines cut squares into triangles. Drawn to scale, not true to size. Close the blade after every cut, cut away from "
    "yourself, and keep it from children."
)


@dataclass(frozen=True, slots=True)
class Line:
    """A line of words: a step's number, or none where it goes on or is a heading."""

    number: str
    text: str
    heading: bool = False


def cutting_leaves(quilt: Quilt, plan: CuttingPlan, paper: Paper) -> list[Leaf]:
    """The pages of the cutting pictures."""
    box = open_body(paper, len(note_lines(paper, NOTE)))
    items: list[Item] = []
    for cuts in fabric_cuts(quilt, plan):
        items += fabric_items(cuts, plan, box[2] - box[0], box[3] - box[1])
    pages: list[list[Mark]] = flow(items, box)
    return [open_leaf(quilt, paper, "cutting pictures", "not to scale with the templates", marks, NOTE, "Cutting pictures")
            for marks in pages]  # fmt: skip


def cloth_scale(cuts: FabricCuts, most: float) -> float:
    """One scale for all cloths of a fabric: the widest fits its room, the longest strip fits a page."""
    cloths = cuts.plan.cloths
    wide = max(float(cloth.width) for cloth in cloths) * POINTS_PER_INCH
    long = max(_longest(cloth) for cloth in cloths) * POINTS_PER_INCH
    return min(CLOTH_WIDE / wide, most / long, LARGEST)


def _longest(cloth: ClothPlan) -> float:
    """The greatest length of cloth that cannot be parted between two pages."""
    from .quilt_steps import first_cuts

    first = first_cuts(cloth)
    if first and first[0].axis == "along":
        return float(cloth.length)
    return max(float(strip.end - strip.start) for strip in strips_of(cloth))


def fabric_items(cuts: FabricCuts, plan: CuttingPlan, width: float, tall: float) -> Iterator[Item]:
    """One fabric: its heading, its key, and each of its cloths."""
    keys = keys_items(cuts, plan, width)
    room = tall - 26.0 - sum(item.tall for item in keys) - TITLE_TALL - 8.0
    scale = cloth_scale(cuts, max(room, tall / 2))
    yield section(cuts.title, f"{cut_words(cuts, plan)} · drawn at {scale_share(scale)} of true size", width)
    yield from keys
    count = len(cuts.plan.cloths)
    for number, cloth in enumerate(cuts.plan.cloths, 1):
        title = f"{_piece_word(cuts, cloth)} {number} of {count}" if count > 1 else ""
        yield from cloth_items(cuts, plan, cloth, title, (scale, width, tall))
    yield gap(8)


def _piece_word(cuts: FabricCuts, cloth: ClothPlan) -> str:
    if cloth.scrap is None:
        return "Length"
    return "Fat quarter" if cuts.fabric.scraps[cloth.scrap].fat_quarter else "Scrap"


def cut_words(cuts: FabricCuts, plan: CuttingPlan) -> str:
    """`54 3/4in of cloth 42in wide`; `2 fat quarters`."""
    if cuts.fabric.scraps:
        return cuts.plan.buy_text
    used, wide = (length_text(each, plan.ruler_step) for each in (cuts.plan.used, cuts.plan.usable_width))
    return f"{used} of cloth {wide} wide"


def keys_items(cuts: FabricCuts, plan: CuttingPlan, width: float) -> list[Item]:
    """What the letters stand for, in two columns, read down."""
    column = (width - COLUMN_GAP) / 2
    lines: list[tuple[str, str]] = []
    for row in cuts.rows:
        words = break_lines(key_words(row, plan.ruler_step), column - NUMBER_WIDE, LABEL)
        lines += [(row.key if at == 0 else "", line) for at, line in enumerate(words)]
    half = ceil(len(lines) / 2)
    pairs = [(lines[at], lines[at + half] if at + half < len(lines) else ("", "")) for at in range(half)]

    def draw(pair: tuple[tuple[str, str], tuple[str, str]], x: float, y: float) -> list[Mark]:
        marks: list[Mark] = []
        for place, (key, words) in zip((x, x + column + COLUMN_GAP), pair, strict=True):
            if key:
                marks.append(set_text(place, y + 8.5, key, LABEL, True, role="key", subject=key))
            if words:
                marks.append(set_text(place + NUMBER_WIDE, y + 8.5, words))
        return marks

    return [Item(KEY_LINE, lambda x, y, pair=pair: draw(pair, x, y), holds=True) for pair in pairs]  # type: ignore[misc]


def cloth_items(
    cuts: FabricCuts, plan: CuttingPlan, cloth: ClothPlan, title: str, room: tuple[float, float, float]
) -> Iterator[Item]:
    """One cloth: its views with as many lines beside each as stand there, the rest below in columns."""
    scale, width, tall = room
    views = views_of(cloth, scale, tall - TITLE_TALL - 8)
    beside = width - STRIP_ROOM - CLOTH_WIDE - WORDS_GAP
    lines = list(words_of(cloth, beside))
    for number, view in enumerate(views):
        count = max(int(view.tall / LINE), LEAST_BESIDE)
        more = "" if len(views) == 1 else f"part {number + 1} of {len(views)}: strips {view.strips[0].number} to {view.strips[-1].number}"
        yield view_item(cuts, plan, view, lines[:count], ", ".join(filter(None, (title, more))))
        lines = lines[count:]
    if lines:
        rest = steps_after(cloth, lines, (width - (COLUMNS - 1) * COLUMN_GAP) / COLUMNS)
        most = int((tall - LINE) / LINE) * COLUMNS
        for at in range(0, len(rest), most):
            yield columns_item(rest[at : at + most], width)


def words_of(cloth: ClothPlan, wide: float) -> Iterator[Line]:
    """The steps in lines of that width."""
    for number, text in step_lines(cloth):
        yield from _broken(number, text, wide)


def _broken(number: str, text: str, wide: float) -> Iterator[Line]:
    for at, line in enumerate(break_lines(text, wide - NUMBER_WIDE, LABEL)):
        yield Line(number if at == 0 else "", line, heading=not number)


def steps_after(cloth: ClothPlan, lines: Sequence[Line], wide: float) -> list[Line]:
    """The lines that are left, broken anew to another width; a step begun beside the picture ends as it began."""
    begun = next((at for at, line in enumerate(lines) if line.number or line.heading), len(lines))
    rest = [*lines[:begun]]
    if begun == len(lines):
        return rest
    first = lines[begun]
    skipping = True
    for number, text in step_lines(cloth):
        same = number == first.number if first.number else (not number and text == first.text)
        skipping = skipping and not same
        if not skipping:
            rest += _broken(number, text, wide)
    return rest


def view_item(cuts: FabricCuts, plan: CuttingPlan, view: View, lines: Sequence[Line], title: str) -> Item:
    """One picture with its words beside it."""
    keys = keys_of(plan, cuts)
    over = TITLE_TALL if title or not view.across else 4.0

    def draw(x: float, y: float) -> list[Mark]:
        marks: list[Mark] = [grey_text(x + STRIP_ROOM, y + 8, title, SMALLEST)] if title else []
        marks.extend(view_marks(view, plan, keys, x + STRIP_ROOM, y + over))
        left = x + STRIP_ROOM + view.wide + WORDS_GAP if view.wide > CLOTH_WIDE - 1 else x + STRIP_ROOM + CLOTH_WIDE + WORDS_GAP
        return [*marks, *line_marks(lines, left, y + over)]

    return Item(over + max(view.tall, len(lines) * LINE) + 8, draw)


def line_marks(lines: Sequence[Line], x: float, y: float) -> Iterator[Mark]:
    """Words under one another: numbers bold, headings bold and without a number."""
    for row, line in enumerate(lines):
        base = y + 7 + row * LINE
        if line.number:
            yield set_text(x, base, line.number, LABEL, True, role="step", subject=line.number)
        yield set_text(x + (0 if line.heading else NUMBER_WIDE), base, line.text, LABEL, line.heading)


def columns_item(lines: Sequence[Line], width: float) -> Item:
    """Lines in columns, read down."""
    each = ceil(len(lines) / COLUMNS)
    wide = (width - (COLUMNS - 1) * COLUMN_GAP) / COLUMNS

    def draw(x: float, y: float) -> list[Mark]:
        return [
            mark
            for column in range(COLUMNS)
            for mark in line_marks(lines[column * each : (column + 1) * each], x + column * (wide + COLUMN_GAP), y)
        ]

    return Item(each * LINE + 8, draw)
