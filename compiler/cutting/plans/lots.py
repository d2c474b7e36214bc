"""From cuts to the boxes that are packed: squares and rectangles as they are, templates and slanted pieces
as runs along a strip, long strips as the strips they are joined from. Ruler steps, unless a name says inches.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import product
from math import ceil
from typing import Final

from ...measure.marks import to_trim
from ...measure.record import record
from ...measure.tolerance import NEAR, Number
from ..handling import Slant
from ..instruction import Boxes
from ..methods.method import box_of
from ..needs import Fabric, Need
from ..plan_model import Cut
from ..reasons import Strip
from .interlocked import lay_runs
from .runs import Counts, Run, Sorts, ends, hands

STRIP, PANEL, SQUARE, RECTANGLE = (
    Boxes("strip"),
    Boxes("panel"),
    Boxes("square"),
    Boxes("rectangle"),
)

JOIN: Final = Fraction(1, 2)
"""Inches that joining two strips straight, end to end, takes: 1/4in of seam allowance from each."""

SLANTED_MOST: Final = Fraction(6)
"""Inches of the widest strips that are joined on the slant, where a seam shows least and takes as much as the
strip is cut wide: wider ones are joined straight, for what that would cost (common practice, no published
source)."""

JOINED_OVER: Final = Fraction(2)
"""Inches that a strip joined from several is made longer than it is cut, to be trimmed (common practice, no
published source); 5cm by a ruler in centimetres."""

SHORTEST: Final = Fraction(8)
"""Inches of the last of several strips to be joined, at least: a scrap would bring two joins close together
(common practice, no published source)."""


WAYS_MOST: Final = 12
"""Ways of laying the pieces of one need that are tried where they lie in several directions."""

TOGETHER: Final = 2
"""Directions of which every way of laying the one is tried with every way of laying the other."""

PARTS_MOST: Final = 4
"""Strips that one along a print is joined from at most: more seams nobody would want in a border."""


@record
class Lot:
    """`count` equal boxes for one cut, as they lie unturned. `run`: the pieces laid along each. `across`:
    the box already lies across the way the cut's width and height are given. `joins`: strips to be joined
    end to end. `slant`: which way the boxes are cut again.
    `seams`: that they bring into pieces which might be whole."""

    cut: int
    width: int
    height: int
    count: int
    turnable: bool
    boxes: Boxes
    run: Run | None = None
    across: bool = False
    joins: bool = False
    slant: Slant = ""
    seams: int = 0


@record
class Cloth:
    """What a fabric lets be cut: its widths in ruler steps (of the bolt, or of each scrap), and which
    turns."""

    step: Fraction
    spans: tuple[int, ...]  # lengths that runs and strips may have, in rising order
    sizes: tuple[tuple[int, int], ...]  # of scraps, empty for the bolt
    turnable: bool
    one_way: bool

    @property
    def strip_span(self) -> int:
        """How long strips to be joined are cut: across the bolt; of scraps, along those that make up the most
        cloth."""
        areas: Counter[int] = Counter()
        for width, height in self.sizes:
            areas[max(width, height) if self.turnable else width] += width * height
        return max(areas, key=lambda span: (areas[span], span)) if areas else self.spans[-1]

    def tall(self, span: int) -> float:
        """Inches that a run of that length may be thick: as a scrap is that is so long."""
        if not self.sizes:
            return float("inf")
        ways = (*self.sizes, *((high, wide) for wide, high in self.sizes if self.turnable))
        return float(self.inches(max(high for wide, high in ways if wide >= span)))

    def steps(self, length: Number) -> int:
        """Ruler steps that hold the length."""
        return ceil((float(length) - NEAR) / float(self.step))

    def inches(self, steps: int) -> Fraction:
        """The length of so many steps."""
        return steps * self.step

    def size(self, width: int, height: int) -> tuple[Fraction, Fraction]:
        """A box's width and height in inches."""
        return self.inches(width), self.inches(height)

    def holds(self, width: int, height: int) -> bool:
        """Whether a box fits the cloth unturned: any length off the bolt."""
        if not self.sizes:
            return width <= self.spans[-1]
        return any(width <= across and height <= along for across, along in self.sizes)

    def takes(self, lot: Lot) -> bool:
        """Whether a lot's boxes fit the cloth some way."""
        return self.holds(lot.width, lot.height) or (lot.turnable and self.holds(lot.height, lot.width))

    def takes_whole(self, cut: Cut) -> bool:
        """Whether one of a cut fits the cloth some way, not joined."""
        width, height = self.steps(cut.width), self.steps(cut.height)
        return self.holds(width, height) or (self.turnable and self.holds(height, width))


def cloth_of(fabric: Fabric, step: Fraction) -> Cloth:
    """What the fabric lets be cut."""
    turnable = not fabric.is_directional
    sizes = tuple((int(scrap.width / step), int(scrap.height / step)) for scrap in fabric.scraps)
    longest = [max(size) if turnable else size[0] for size in sizes] or [int(fabric.usable_width / step)]
    return Cloth(step, tuple(sorted(set(longest))), sizes, turnable, fabric.one_way)


def lots_of(index: int, cut: Cut, need: Need, cloth: Cloth) -> list[list[Lot]]:
    """The boxes for one cut, in one way or several, the likeliest first. One that is too large for the cloth
    is returned all the same."""
    if cut.outline:
        return _runs(index, cut, need, cloth)
    if cut.kind == "strip" and not cloth.turnable:
        return list(_strips_on_print(index, cut, need, cloth))
    if cut.slants:
        return [
            [
                replace(lot, count=count, slant=slant)
                for slant, count in cut.slants
                for lot in _boxes(index, cut, need, cloth)
            ]
        ]
    return [_boxes(index, cut, need, cloth)]


def _boxes(index: int, cut: Cut, need: Need, cloth: Cloth) -> list[Lot]:
    width, height = cloth.steps(cut.width), cloth.steps(cut.height)
    lot = Lot(index, width, height, cut.cuts, cloth.turnable and width != height, boxes_of(cut))
    if cut.kind == "strip" and not need.unjoined and not cloth.takes(lot):
        return joined(index, cut, cloth)
    if (
        cut.kind == "strip"
        and not need.unjoined
        and not cloth.sizes
        and cloth.turnable
        and max(width, height) > cloth.spans[-1]
    ):
        return joined(index, cut, cloth)
    return [lot]


def boxes_of(cut: Cut) -> Boxes:
    """What a cut's boxes are."""
    if cut.part == "backing":
        return PANEL
    if cut.kind == "strip":
        return STRIP
    return SQUARE if cut.width == cut.height else RECTANGLE


def boxes_of_run(cut: Cut, pieces: int) -> Boxes:
    """A strip that so many templates or slanted pieces are cut from; of one, that alone."""
    return Boxes("strip", cut.kind, pieces) if pieces > 1 else Boxes(cut.kind)


def join_of(wide: Number) -> Fraction:
    """Inches of strip that a join takes: the strip's cut width on the slant, the two allowances straight."""
    return Fraction(wide) if wide <= SLANTED_MOST else JOIN


def joined(index: int, cut: Cut, cloth: Cloth) -> list[Lot]:
    """Strips of the cloth's width, to be joined end to end and cut to length; the last only as long as it
    must be."""
    width, height = (cloth.steps(each) for each in (cut.width, cut.height))
    long, thick = max(width, height), min(width, height)
    total = cut.pieces * (cloth.inches(long) + joined_over(cut, cloth.step))
    return strips_for(index, total, thick, join_of(cloth.inches(thick)), cloth, height >= width)


def joined_over(cut: Cut, step: Fraction) -> Fraction:
    """Inches over in a strip that is joined; none where the cut has them already."""
    counted = isinstance(cut.reason, Strip) and cut.reason.over
    return Fraction(0) if counted else to_trim(JOINED_OVER, step)


def _strips_on_print(index: int, cut: Cut, need: Need, cloth: Cloth) -> Iterator[list[Lot]]:
    """Long strips that stand or lie on a print as they do in the quilt. Those that stand are cut along the
    selvage, whole or, to buy less cloth, in shorter ones that are joined."""
    width, height = cloth.steps(cut.width), cloth.steps(cut.height)
    whole = Lot(index, width, height, cut.cuts, False, boxes_of(cut))
    if width > height:
        yield joined(index, cut, cloth) if not need.unjoined and not cloth.takes(whole) else [whole]
        return
    parts = [] if need.unjoined else list(_parts(index, cut, cloth))
    if cloth.takes(whole) or not parts:
        yield [whole]
    few = [lots for lots in parts if lots[0].count <= cut.cuts * PARTS_MOST]
    yield from few or parts[:1]


def _parts(index: int, cut: Cut, cloth: Cloth) -> Iterator[list[Lot]]:
    """Long strips along a print in shorter ones, as many to each as to the next: the longest first."""
    width, height = cloth.steps(cut.width), cloth.steps(cut.height)
    total = cut.pieces * float(cloth.inches(height) + joined_over(cut, cloth.step))
    join = float(join_of(cloth.inches(width)))
    for each in range(2, int(total / float(SHORTEST)) + 2):
        count = cut.cuts * each
        long = cloth.steps((total + (count - 1) * join) / count)
        lot = Lot(index, width, long, count, False, STRIP, joins=True, seams=count - cut.cuts)
        if long < cloth.steps(SHORTEST) or cloth.inches(long) <= join:
            return
        if cloth.takes(lot):
            yield [lot]


def strips_for(
    index: int, total: Number, thick: int, join: Number, cloth: Cloth, upright: bool, any_way: bool = False
) -> list[Lot]:
    """Strips that joined make `total` inches, each join taking `join` inches. `any_way`: whatever their
    print."""
    turnable = any_way or cloth.turnable
    span = cloth.strip_span
    if cloth.inches(span) <= join:
        return [Lot(index, cloth.steps(total), thick, 1, False, STRIP, joins=True)]
    count = max(1, ceil((float(total) - float(join) - NEAR) / float(cloth.inches(span) - Fraction(join))))
    last = cloth.steps(float(total) - (count - 1) * float(cloth.inches(span) - Fraction(join)))
    lots = []
    if count > 1 and last < span:
        lots.append(Lot(index, span, thick, count - 1, turnable, STRIP, across=upright, joins=True))
        last = min(max(last, cloth.steps(join), cloth.steps(SHORTEST)), span)
        lots.append(Lot(index, last, thick, 1, turnable, STRIP, across=upright, joins=True))
    else:
        lots.append(
            Lot(
                index,
                min(last, span) if count == 1 else span,
                thick,
                count,
                turnable,
                STRIP,
                across=upright,
                joins=True,
            )
        )
    return lots


def _runs(index: int, cut: Cut, need: Need, cloth: Cloth) -> list[list[Lot]]:
    outline = [complex(x, y) for x, y in cut.outline]
    for span in cloth.spans:
        ways = [
            [
                Lot(
                    index,
                    cloth.steps(run.length),
                    cloth.steps(run.thick),
                    count,
                    cloth.turnable,
                    boxes_of_run(cut, len(run.laid)),
                    run,
                )
                for run, count in Counter(runs).items()
            ]
            for runs in _laid(outline, need, cloth, span)
        ]
        taken = [way for way in ways if all(cloth.takes(lot) for lot in way)]
        if taken:
            return taken
    # A slanted piece's `width` is how far apart its cuts lie: by itself it takes the box of its outline.
    left, top, right, bottom = box_of(outline)
    return [
        [
            Lot(
                index,
                cloth.steps(right - left),
                cloth.steps(bottom - top),
                cut.cuts,
                cloth.turnable,
                boxes_of_run(cut, 1),
            )
        ]
    ]


def _laid(outline: Sequence[complex], need: Need, cloth: Cloth, span: int) -> list[tuple[Run, ...]]:
    """The pieces in runs of that length, in one way or another."""
    width, tall = float(cloth.inches(span)), cloth.tall(span)
    if cloth.turnable:
        counts = (need.count + need.reversed, 0) if need.reversible else (need.count, need.reversed)
        return lay_runs(outline, counts, [hands(0.0), hands(90.0)], width, tall)
    choices = [
        lay_runs(outline, counts, [sorts], width, tall)
        for sorts, counts in _sorts_on_print(need, cloth.one_way)
    ]
    if not all(choices):
        return []
    together = product(*choices) if len(choices) <= TOGETHER else [[ways[0] for ways in choices]]
    laid = [tuple(run for runs in ways for run in runs) for ways in together]
    return list(dict.fromkeys(laid))[:WAYS_MOST]


def _sorts_on_print(need: Need, one_way: bool) -> Iterator[tuple[Sorts, Counts]]:
    """How the pieces may lie with the print up: turned half round with those that are so in the quilt; on a
    stripe, which looks the same either end up, whichever way takes less cloth."""
    counts = {(way.turned, way.reversed): way.count for way in need.on_print}
    for turned in sorted({turned % 180 for turned, _ in counts}):
        both = [
            (counts.get((turned, back), 0), counts.get((turned + 180, back), 0)) for back in (False, True)
        ]
        if not one_way:
            yield hands(float(turned)), (sum(both[0]), sum(both[1]))
            continue
        for back, pair in zip((False, True), both, strict=True):
            if any(pair):
                yield ends(float(turned), back), pair


def kinds_of(lots: Sequence[Lot]) -> list[tuple[int, int, bool]]:
    """Width, height and turnability of the boxes, each once; turnable ones with their shorter side across."""
    return list(dict.fromkeys(kind_of(lot) for lot in lots))


def kind_of(lot: Lot) -> tuple[int, int, bool]:
    """The kind that a lot's boxes are."""
    if lot.width == lot.height:
        return lot.width, lot.height, False
    if lot.turnable:
        return min(lot.width, lot.height), max(lot.width, lot.height), True
    return lot.width, lot.height, False
