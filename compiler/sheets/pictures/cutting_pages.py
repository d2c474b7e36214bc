"""The cutting pictures: for each fabric its cloth true to scale, with the order of the cuts in words
beside it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import pairwise
from math import ceil
from typing import Final

from ...cutting.plan_model import ClothPlan, CuttingPlan
from ...measure.length import POINTS_PER_INCH
from ...measure.record import record
from ...words.pages import cutting as words
from ...words.say import Say
from ...words.work.cloth import bought_words
from ..arrange.furniture import Paper
from ..arrange.leaves import Leaf
from ..arrange.style import LABEL, SMALLEST, grey_text, set_text
from ..page import Mark
from ..pictures.cloth import STRIP_ROOM, ClothPainter, View, views_of
from ..quilts.steps import step_lines
from ..quilts.tables import FabricCuts, keys_of
from ..quilts.words import key_words
from ..setting.flow import GOING_ON, SECTION_TALL, Item, flow, gap, going_on, section, whole_lines
from ..setting.open_page import note_lines, open_body, plain_leaf
from ..work import Work
from .quilt_pages import scale_share

CLOTH_WIDE: Final = 290.0  # points of the widest cloth of a fabric
LARGEST: Final = 0.16
"""Of true size: a fat quarter is drawn no larger, so that several go on a page."""

WORDS_GAP: Final = 16.0
LINE: Final = 10.0
NUMBER_WIDE: Final = 18.0
COLUMNS: Final = 3  # of words that go on below a picture
COLUMN_GAP: Final = 14.0
TITLE_TALL: Final = 16.0  # over a cloth's picture
LEAST_BESIDE: Final = 200.0  # points of words that may stand beside a picture, however low it is
OVERHANG: Final = 1.5  # how far words may reach below the picture beside them, as a share of its height
ONE_PAGE: Final = 0.7  # of its scale: so much smaller is a cloth drawn to keep it on one page
KEY_LINE: Final = 11.0


@record
class Room:
    """What a cloth may take up: the height of its first view, the page's width and height; at a scale."""

    scale: float
    first: float
    width: float
    tall: float


@record
class Line:
    """A line of words: a step's number, or none where it goes on or is a heading."""

    number: str
    text: str
    heading: bool = False


def cutting_leaves(work: Work, paper: Paper) -> list[Leaf]:
    """The pages of the cutting pictures."""
    box = open_body(paper, len(note_lines(paper, words.NOTE)))
    items: list[Item] = []
    for cuts in work.cuts:
        items += fabric_items(cuts, work.plan, work.say, box[2] - box[0], box[3] - box[1])
    head, what = (work.quilt.title, work.under, paper), words.TITLE.lower()
    head, what = (work.quilt.title, work.under, paper), words.TITLE.lower()
    return [
        plain_leaf(*head, what, words.TO_SCALE, marks, words.NOTE, words.TITLE) for marks in flow(items, box)
    ]


def cloth_scale(cuts: FabricCuts, most: float) -> float:
    """One scale for all cloths of a fabric: the widest fits its room, the longest strip fits a page; a little
    less where the whole cloth then goes on one page."""
    cloths = cuts.plan.cloths
    wide = max(float(cloth.width) for cloth in cloths) * POINTS_PER_INCH
    strip = max(_longest(cloth) for cloth in cloths) * POINTS_PER_INCH
    scale = min(CLOTH_WIDE / wide, most / strip, LARGEST)
    whole = most / (max(float(cloth.length) for cloth in cloths) * POINTS_PER_INCH)
    return whole if ONE_PAGE * scale <= whole < scale else scale


def _longest(cloth: ClothPlan) -> float:
    """The greatest length of cloth that cannot be parted between two pages."""
    if cloth.axis == "along":
        return float(cloth.length)
    return max(float(strip.end - strip.start) for strip in cloth.strips)


def fabric_items(cuts: FabricCuts, plan: CuttingPlan, say: Say, width: float, tall: float) -> Iterator[Item]:
    """One fabric: its heading, its key, and each of its cloths."""
    keys = keys_items(cuts, say, width)
    taken = SECTION_TALL + sum(item.tall for item in keys) + TITLE_TALL + 8.0
    together = taken < tall / 2  # a longer key has pages to itself
    later = tall - GOING_ON - TITLE_TALL - 8.0
    first = tall - taken if together else later
    scale = cloth_scale(cuts, first)
    under = f"{cloth_words(cuts, say)}{words.drawn_at(scale_share(scale))}"
    yield section(cuts.title, under, width)
    items = list(keys if together else (replace(item, holds=False) for item in keys))
    painter = ClothPainter(plan, keys_of(plan, cuts), say)
    for number, cloth in enumerate(cuts.plan.cloths, 1):
        title = cloth_title(cuts, cloth, number)
        room = Room(scale, first if number == 1 else later, width, later)
        items += cloth_items(painter, cloth, title, room)
    yield from going_on(items, cuts.title)
    yield gap(8)


def cloth_title(cuts: FabricCuts, cloth: ClothPlan, number: int) -> str:
    """`Fat quarter 2 of 3`; '' where there is one."""
    count = len(cuts.plan.cloths)
    return words.one_of(_piece_word(cuts, cloth), number, count) if count > 1 else ""


def _piece_word(cuts: FabricCuts, cloth: ClothPlan) -> str:
    if cloth.scrap is None:
        return words.LENGTH
    return words.FAT_QUARTER if cuts.fabric.scraps[cloth.scrap].fat_quarter else words.SCRAP


def cloth_words(cuts: FabricCuts, say: Say) -> str:
    """`54 3/4in of cloth 42in wide`; `2 fat quarters`; and how a print with a direction lies."""
    used, wide = (say.on_ruler(each) for each in (cuts.plan.used, cuts.plan.usable_width))
    cloth = bought_words(cuts.plan) if cuts.fabric.scraps else words.of_cloth(used, wide)
    return f"{cloth}{words.print_words(cuts.fabric)}"


def keys_items(cuts: FabricCuts, say: Say, width: float) -> list[Item]:
    """What the letters stand for, in two columns, read down."""
    column = (width - COLUMN_GAP) / 2
    lines: list[tuple[str, str]] = []
    for row in cuts.rows:
        broken = whole_lines(key_words(row, say), column - NUMBER_WIDE)
        lines += [(row.key if at == 0 else "", line) for at, line in enumerate(broken)]
    half = ceil(len(lines) / 2)
    pairs = [(lines[at], lines[at + half] if at + half < len(lines) else ("", "")) for at in range(half)]

    def draw(pair: tuple[tuple[str, str], tuple[str, str]], x: float, y: float) -> list[Mark]:
        marks: list[Mark] = []
        for place, (key, line) in zip((x, x + column + COLUMN_GAP), pair, strict=True):
            if key:
                marks.append(set_text(place, y + 8.5, key, LABEL, True, role="key", subject=key))
            if line:
                marks.append(set_text(place + NUMBER_WIDE, y + 8.5, line))
        return marks

    return [Item(KEY_LINE, partial(draw, pair), holds=True) for pair in pairs]


def cloth_items(painter: ClothPainter, cloth: ClothPlan, title: str, room: Room) -> Iterator[Item]:
    """One cloth: its views with as many lines beside each as stand there, the rest below in columns."""
    views = views_of(cloth, room.scale, room.first, room.tall)
    say = painter.say
    lines = list(words_of(say, cloth, room.width - STRIP_ROOM - CLOTH_WIDE - WORDS_GAP))
    for number, view in enumerate(views, 1):
        most = room.first if number == 1 else room.tall
        last = number == len(views)
        reach = min(max(view.tall * OVERHANG, LEAST_BESIDE), most) if last else view.tall
        if last and len(lines) * LINE <= most:
            reach = most  # better a tall column than a few lines on a page of their own
        count = _whole_steps(lines, max(int(reach / LINE), 1))
        yield view_item(painter, view, lines[:count], _view_title(title, view, number, len(views)))
        lines = lines[count:]
    if lines:
        rest = steps_after(say, cloth, lines[0], (room.width - (COLUMNS - 1) * COLUMN_GAP) / COLUMNS)
        deep = int((room.tall - LINE) / LINE)
        while rest:
            count = _whole_steps(rest, (deep - _longest_step(rest)) * COLUMNS)
            yield columns_item(rest[:count], room.width)
            rest = rest[count:]


def _whole_steps(lines: Sequence[Line], most: int) -> int:
    """How many of the first lines are whole steps, at most so many: no step is parted, and a heading stands
    over its steps. One step at least."""
    ends = [
        at
        for at in range(1, len(lines) + 1)
        if at == len(lines) or ((lines[at].number or lines[at].heading) and not lines[at - 1].heading)
    ]
    return max([at for at in ends if at <= most], default=min(ends, default=0))


def _longest_step(lines: Sequence[Line]) -> int:
    """The lines of the longest step."""
    starts = [at for at, line in enumerate(lines) if line.number or line.heading]
    return max((after - at for at, after in pairwise([*starts, len(lines)])), default=0)


def _view_title(title: str, view: View, number: int, count: int) -> str:
    if count == 1:
        return title
    return words.part_of_strips(title, number, count, [each.number for each in view.strips if each.number])


def words_of(say: Say, cloth: ClothPlan, wide: float) -> Iterator[Line]:
    """The steps in lines of that width."""
    for number, text in step_lines(say, cloth):
        yield from _broken(number, text, wide)


def _broken(number: str, text: str, wide: float) -> Iterator[Line]:
    for at, line in enumerate(whole_lines(text, wide - NUMBER_WIDE)):
        yield Line(number if at == 0 else "", line, heading=not number)


def steps_after(say: Say, cloth: ClothPlan, first: Line, wide: float) -> list[Line]:
    """The lines of the steps from one on, broken anew to another width; under their strips' heading once more
    where it is not theirs."""
    rest: list[Line] = []
    heading = ""
    for number, text in step_lines(say, cloth):
        same = number == first.number if first.number else not number and text.startswith(first.text)
        if rest or same:
            if not rest and number and heading:
                rest += _broken("", heading, wide)
            rest += _broken(number, text, wide)
        heading = heading if number else text
    return rest


def view_item(painter: ClothPainter, view: View, lines: Sequence[Line], title: str) -> Item:
    """One picture with its words beside it."""
    over = (TITLE_TALL if title else 4.0) + (0.0 if view.across else 12.0)

    def draw(x: float, y: float) -> list[Mark]:
        marks: list[Mark] = [grey_text(x + STRIP_ROOM, y + 8, title, SMALLEST)] if title else []
        marks.extend(painter.marks(view, x + STRIP_ROOM, y + over))
        return [*marks, *line_marks(lines, x + STRIP_ROOM + CLOTH_WIDE + WORDS_GAP, y + over)]

    return Item(over + max(view.tall, len(lines) * LINE) + 8, draw)


def line_marks(lines: Sequence[Line], x: float, y: float) -> Iterator[Mark]:
    """Words under one another: numbers bold, headings bold and without a number."""
    for row, line in enumerate(lines):
        base = y + 7 + row * LINE
        if line.number:
            yield set_text(x, base, line.number, LABEL, True, role="step", subject=line.number)
        yield set_text(x + (0 if line.heading else NUMBER_WIDE), base, line.text, LABEL, line.heading)


def columns_item(lines: Sequence[Line], width: float) -> Item:
    """Lines in columns, read down; no step is parted, and no strip's heading is the last in its column."""
    columns = _columns(lines)
    wide = (width - (COLUMNS - 1) * COLUMN_GAP) / COLUMNS

    def draw(x: float, y: float) -> list[Mark]:
        return [
            mark
            for number, column in enumerate(columns)
            for mark in line_marks(column, x + number * (wide + COLUMN_GAP), y)
        ]

    return Item(max(len(column) for column in columns) * LINE + 8, draw)


def _columns(lines: Sequence[Line]) -> list[Sequence[Line]]:
    """The lines in COLUMNS lists of about equal length."""
    each, start = ceil(len(lines) / COLUMNS), 0
    columns: list[Sequence[Line]] = []
    while start < len(lines):
        end = min(start + each, len(lines)) if len(columns) < COLUMNS - 1 else len(lines)
        while end < len(lines) and not (lines[end].number or lines[end].heading):
            end += 1
        while start + 1 < end < len(lines) and lines[end - 1].heading:
            end -= 1
        columns.append(lines[start:end])
        start = end
    return columns
