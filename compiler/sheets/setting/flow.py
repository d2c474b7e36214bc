"""Things set one under another over as many pages as they take; tables whose heads are repeated. Points.

An item knows how tall it is and how to draw itself. Items that hold to the next are never the last on a page.
Where a little less white between things saves a page, they are set closer.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from typing import Final

from ...measure.record import record
from ..arrange.room import Box
from ..arrange.style import (
    HEADING,
    LABEL,
    break_lines,
    grey_text,
    lettering,
    measure,
    set_text,
    shorten,
)
from ..page import Mark

GOING_ON: Final = 17.0  # of a title over the head of a table that goes on
SECTION_TALL: Final = 26.0
SECTION_AIR: Final = 6.0  # of it, above the heading
SECTION_BELOW: Final = 3.0  # of it, under the heading

FEW_TALL: Final = 170.0
"""Points of a table or a list that is not parted between two pages."""

CLOSER: Final = (0.2, 0.4, 0.6)
"""Shares of the white between things that are taken away, the least first, where that saves a page."""

MIXED: Final = re.compile(r"(\d) (\d+/\d)")
KEPT: Final = (
    "\x01"  # stands for the blank of a mixed number while lines are broken; it has no width of its own
)
KEPT_WIDE: Final = 2.0  # points kept free for it


@record
class Item:
    """`draw` gives the marks from a top left corner. `head` is set again above it where it begins a page.

    `air` of its height lies above it, and is left out where it begins a page; `below` is white at its foot,
    and what is only white begins no page. `larger` are the same thing larger, the largest first: one is set
    where the page has room for it and for all that holds to it.
    """

    tall: float
    draw: Callable[[float, float], list[Mark]]
    head: Item | None = None
    holds: bool = False
    air: float = 0.0
    below: float = 0.0
    larger: tuple[Item, ...] = ()


def together(items: Sequence[Item]) -> list[Item]:
    """The items, all on one page; a page must have room for them."""
    return [replace(item, holds=number + 1 < len(items)) for number, item in enumerate(items)]


def together_if_few(items: Sequence[Item], most: float = FEW_TALL) -> list[Item]:
    """The items on one page where they are no taller than `most`; else as they are."""
    return together(items) if sum(item.tall for item in items) <= most else list(items)


def flow(items: Sequence[Item], box: Box) -> list[list[Mark]]:
    """The marks of each page. An item taller than a page has one to itself."""
    left, top, _, bottom = box
    pages = _paged(items, bottom - top, 0.0)
    for share in CLOSER:
        closer = _paged(items, bottom - top, share)
        if len(closer) < len(pages):
            pages = closer
            break
    return [[mark for item, y in page for mark in item.draw(left, top + y)] for page in pages]


def _paged(items: Sequence[Item], room: float, share: float) -> list[list[tuple[Item, float]]]:
    """The items of each page, heads that are set again included, with how far down each is drawn; `share` of
    their white is taken away."""
    pages: list[list[tuple[Item, float]]] = []
    y, at = 0.0, 0
    while at < len(items):
        group = _held(items, at)
        at += len(group)
        tall = sum(_tall(item, share) for item in group)
        hanging = group[-1].below * (1 - share)  # white at a page's foot may run over
        if not pages or (y and y + tall - hanging > room + 0.01):
            if group[0].below == group[0].tall:
                continue
            pages.append([])
            y = 0.0
        head = group[0].head
        if not y and head is not None and head.tall + tall - hanging <= room + 0.01:
            pages[-1].append((head, y))
            y += head.tall
        rise = 0.0 if y else group[0].air * (1 - share)
        spare = room - y + rise - tall
        y -= rise
        for item in group:
            grown = next((each for each in item.larger if each.tall - item.tall <= spare), item)
            spare -= grown.tall - item.tall
            pages[-1].append((grown, y - share * grown.air))
            y += _tall(grown, share)
    return pages


def _tall(item: Item, share: float) -> float:
    """An item's height when a share of its white is taken away."""
    return item.tall - share * (item.air + item.below)


def _held(items: Sequence[Item], at: int) -> Sequence[Item]:
    """The items from there that stay together, the one they hold to included."""
    end = at
    while items[end].holds and end + 1 < len(items):
        end += 1
    return items[at : end + 1]


def continued(title: str) -> Item:
    """What is set at the top of a page on which something goes on: `Navy twill, continued`."""
    words = f"{title}, continued"
    return Item(
        GOING_ON,
        lambda x, y: [set_text(x, y + 10, words, HEADING, True, role="continued", subject=title)],
        holds=True,
    )


def going_on(items: Iterable[Item], title: str) -> Iterator[Item]:
    """The items, each under a line that names what goes on where it begins a page; tables name it
    themselves."""
    head = continued(title)
    for item in items:
        yield item if item.head else replace(item, head=head)


def whole_lines(text: str, wide: float, bold: bool = False) -> list[str]:
    """The text in lines that part no mixed number: `1 3/16in` stays together."""
    kept = MIXED.sub(rf"\1{KEPT}\2", lettering(text))
    return [line.replace(KEPT, " ") for line in break_lines(kept, wide - KEPT_WIDE, LABEL, bold)]


def section(title: str, under: str, width: float) -> Item:
    """A heading over what follows, with small print after it."""

    def draw(x: float, y: float) -> list[Mark]:
        words = shorten(title, width * 0.6, 11.0, True)
        after = x + measure(words, 11.0, True) + 8
        marks: list[Mark] = [set_text(x, y + 17, words, 11.0, True, role="section", subject=title)]
        if under:
            marks.append(grey_text(after, y + 17, shorten(under, x + width - after, HEADING)))
        return marks

    return Item(SECTION_TALL, draw, holds=True, air=SECTION_AIR, below=SECTION_BELOW)


def paragraph(text: str, width: float, holds: bool = False) -> list[Item]:
    """The text in lines, each an item."""
    return [_line(line, holds) for line in whole_lines(text, width)]


def bullets(texts: Sequence[str], width: float) -> Iterator[Item]:
    """The texts as a list; the lines of one stay together."""
    for text in texts:
        lines = whole_lines(text, width - 10)
        for number, line in enumerate(lines):
            yield _bullet(line, number == 0, number + 1 < len(lines))


def _line(line: str, holds: bool) -> Item:
    return Item(LABEL * 1.3, lambda x, y: [set_text(x, y + LABEL, line)], holds=holds)


def _bullet(line: str, first: bool, holds: bool) -> Item:
    def draw(x: float, y: float) -> list[Mark]:
        marks: list[Mark] = [set_text(x + 10, y + 9, line)]
        return [set_text(x, y + 9, "·", LABEL, True), *marks] if first else marks

    return Item(11.5, draw, holds=holds)


def gap(tall: float) -> Item:
    """White between two things."""
    return Item(tall, lambda x, y: [], below=tall)
