"""Boxes cut from cloth by straight cuts from edge to edge. Whole numbers of ruler steps, never Fractions.

A plan is a tree: a region is one box, or waste, or is cut across into strips or along into pieces, each a
region again. Cloth is filled strip by strip: one kind of box leads and gives the strip its thickness, others
that nearly reach it fill the strip's length (the fullest sum of lengths, found on the bits of one whole
number), and every rectangle left over is filled again with smaller boxes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final, Literal, NamedTuple

from ...measure.record import record
from ...measure.tolerance import BETTER

Axis = Literal["across", "along", ""]

DEPTH: Final = 5
"""How often what is left over is cut up again; deeper than that nobody follows."""


NEARLY_FULL: Final = (1.0, 0.84)
"""Shares of a strip's thickness that a box must reach to stand in it, tried in turn."""


class Kind(NamedTuple):
    """Boxes of one size. Only `turnable` ones may lie across."""

    width: int
    height: int
    turnable: bool


@record
class Region:
    """A rectangle of cloth: `kind` >= 0 is a box; else `parts` are what it is cut into, along its `axis`:
    'across' one under the other, 'along' side by side; neither: left over."""

    width: int
    height: int
    axis: Axis = ""
    parts: tuple[Region, ...] = ()
    kind: int = -1


class Box(NamedTuple):
    """A box where it lies, as wide and high as it lies."""

    kind: int
    left: int
    top: int
    width: int
    height: int

    @property
    def right(self) -> int:
        """Where it ends across the cloth."""
        return self.left + self.width

    @property
    def bottom(self) -> int:
        """Where it ends down the cloth."""
        return self.top + self.height


def boxes_in(region: Region, left: int = 0, top: int = 0) -> Iterator[Box]:
    """Every box of a region, in the order it is cut out."""
    if region.kind >= 0:
        yield Box(region.kind, left, top, region.width, region.height)
    for part in region.parts:
        yield from boxes_in(part, left, top)
        if region.axis == "across":
            top += part.height
        else:
            left += part.width


def counted(regions: Iterable[Region], kinds: int) -> list[int]:
    """How many boxes of each kind lie in the regions."""
    counts = [0] * kinds
    for region in regions:
        for each in boxes_in(region):
            counts[each.kind] += 1
    return counts


Lying = tuple[int, int]
"""How a box lies in a strip: its length along it, its thickness."""


def _lyings_of(kind: Kind, across: bool) -> tuple[Lying, ...]:
    long, thick = (kind.width, kind.height) if across else (kind.height, kind.width)
    return ((long, thick), (thick, long)) if kind.turnable and long != thick else ((long, thick),)


class Row(NamedTuple):
    """`columns` stacks of `stack` boxes side by side in a strip; each column is `long`, each box `thick`."""

    kind: int
    long: int
    thick: int
    columns: int
    stack: int


class Strip(NamedTuple):
    """What fills a strip, and how much of it."""

    rows: tuple[Row, ...]
    area: int
    thick: int
    across: bool


@dataclass
class Stock:
    """The boxes still to be cut. `keen` weighs thick strips against full ones where leftovers are filled."""

    kinds: Sequence[Kind]
    counts: list[int]
    keen: float = 0.3
    _lyings: tuple[list[tuple[Lying, ...]], ...] = field(init=False)

    def __post_init__(self) -> None:
        self._lyings = tuple([_lyings_of(kind, across) for kind in self.kinds] for across in (False, True))

    @property
    def open(self) -> list[int]:
        """The kinds of which some are left."""
        return [kind for kind, count in enumerate(self.counts) if count > 0]

    def lyings(self, kind: int, across: bool) -> Sequence[Lying]:
        """Ways a kind may lie in a strip."""
        return self._lyings[across][kind]


def best_strip(stock: Stock, long: int, lead: int, lying: Lying, across: bool) -> Strip | None:
    """The fullest strip of that length whose thickness is the lead's as it lies; None where the lead does
    not fit."""
    run, thick = lying
    if run > long or stock.counts[lead] <= 0:
        return None
    best: Strip | None = None
    for least in NEARLY_FULL:
        rows = _rows(stock, long, lead, lying, across, least)
        area = sum(row.long * row.thick * row.columns * row.stack for row in rows)
        if best is None or area > best.area:
            best = Strip(rows, area, thick, across)
        if area == long * thick:
            break
    return best


def _rows(stock: Stock, long: int, lead: int, lying: Lying, across: bool, least: float) -> tuple[Row, ...]:
    counts, (own, thick) = stock.counts, lying
    choices = [Row(lead, own, thick, min(counts[lead], long // own), 1)]
    others = []
    for kind in stock.open:
        if kind == lead:
            continue
        best = None
        for run, height in stock.lyings(kind, across):
            if height <= thick and run <= long:
                stack = min(thick // height, counts[kind])
                tall = stack * height
                if tall >= least * thick and (best is None or (tall, height) > best[:2]):
                    columns = min(counts[kind] // stack, long // run)
                    best = tall, height, Row(kind, run, height, columns, stack)
        if best is not None:
            others.append((-best[0], -best[1], -best[2].long, kind, best[2]))
    choices += [each[4] for each in sorted(others)]
    return fullest(choices, long)


def fullest(choices: Sequence[Row], long: int) -> tuple[Row, ...]:
    """As many columns of each choice as make the greatest length, at least one of the first; earlier choices
    are preferred. Bit n of `reach` says that length n can be made."""
    within = (1 << (long + 1)) - 1
    reach = 1 << choices[0].long
    steps: list[tuple[int, int, int]] = []
    for at, choice in enumerate(choices):
        if reach >> long & 1:
            break
        left = choice.columns - (at == 0)
        take = 1
        while left > 0:
            take = min(take, left)
            steps.append((at, take, reach))
            reach |= reach << take * choice.long & within
            left -= take
            take *= 2
    at_most = reach.bit_length() - 1
    columns = [0] * len(choices)
    columns[0] = 1
    for at, take, before in reversed(steps):
        if not before >> at_most & 1:
            at_most -= take * choices[at].long
            columns[at] += take
    return tuple(
        choice._replace(columns=count) for choice, count in zip(choices, columns, strict=True) if count
    )


def cut_strip(stock: Stock, strip: Strip, long: int, depth: int) -> Region:
    """The strip as a region, its boxes taken from the stock and its leftovers filled."""
    across = strip.across
    side: Axis = "along" if across else "across"
    for row in strip.rows:
        stock.counts[row.kind] -= row.columns * row.stack
    parts: list[Region] = []
    used = 0
    for row in strip.rows:
        parts += _row_parts(stock, row, strip.thick, across, depth)
        used += row.columns * row.long
    if used < long:
        parts.append(fill(stock, *_sized(long - used, strip.thick, across), depth - 1))
    if len(parts) == 1:
        return parts[0]
    return Region(*_sized(long, strip.thick, across), side, tuple(parts))


def _sized(long: int, thick: int, across: bool) -> tuple[int, int]:
    return (long, thick) if across else (thick, long)


def _row_parts(stock: Stock, row: Row, thick: int, across: bool, depth: int) -> list[Region]:
    """The pieces of one row: its boxes, or, where they are less thick than the strip, a piece that is cut
    again."""
    box = Region(*_sized(row.long, row.thick, across), kind=row.kind)
    if row.thick == thick:
        return [box] * row.columns
    side: Axis = "along" if across else "across"
    cross: Axis = "across" if across else "along"
    long = row.columns * row.long
    line = box if row.columns == 1 else Region(*_sized(long, row.thick, across), side, (box,) * row.columns)
    parts = [line] * row.stack
    if row.stack * row.thick < thick:
        parts.append(fill(stock, *_sized(long, thick - row.stack * row.thick, across), depth - 1))
    return [Region(*_sized(long, thick, across), cross, tuple(parts))]


def fill(stock: Stock, width: int, height: int, depth: int) -> Region:
    """A region filled as full as may be from the stock, strips across or along, whichever is fuller."""
    if depth <= 0:
        return Region(width, height)
    best = _best_in(stock, width, height)
    if best is None:
        return Region(width, height)
    long, deep = (width, height) if best.across else (height, width)
    strip = cut_strip(stock, best, long, depth)
    if best.thick == deep:
        return strip
    rest = fill(stock, *_sized(long, deep - best.thick, best.across), depth)
    cross: Axis = "across" if best.across else "along"
    if rest.axis == cross:
        return Region(width, height, cross, (strip, *rest.parts))
    return Region(width, height, cross, (strip, rest))


def _best_in(stock: Stock, width: int, height: int) -> Strip | None:
    """The strip to cut first from a region: full, and the thicker the better."""
    best: Strip | None = None
    most = 0.0
    for kind in stock.open:
        smaller, larger = sorted(stock.kinds[kind][:2])
        if smaller > min(width, height) or larger > max(width, height):
            continue
        for across in (True, False):
            long, deep = (width, height) if across else (height, width)
            for lying in stock.lyings(kind, across):
                run, thick = lying
                if run > long or thick > deep:
                    continue
                full = 1 - stock.keen + stock.keen * thick / deep
                strip = best_strip(stock, long, kind, lying, across) if full > most * BETTER else None
                if strip is None:
                    continue
                worth = strip.area / (long * thick) * full
                if worth > most * BETTER:
                    best, most = strip, worth
    return best
