"""Units that can be made many at a time, found in the quilt's blocks, with the cloth they take beside
cutting singly.

Two triangles of two cloths that lie together in a square; geese, a large triangle between two small ones in a
rectangle twice as wide as high; rows of equal rectangles or squares, which a strip set gives. Found by which
piece lies along which, never by name. Inches, and square inches.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil, inf
from typing import Literal, NamedTuple

from ...drafting.model import Draft, Piece, Side
from ...measure.tolerance import ALIKE, Number
from ..needs import Fabric, Quilt
from ..plan_model import Cut, Geese, Offer, SquarePairs, StripSet
from .recognise import Figure, recognise

SPARE_MOST = 4 / 3
"""How many more squares a set of eight may make than are wanted: else nobody would cut cloth that dear."""

ROW_MOST = 12  # strips in a set; wider ones are sewn from two

ROWS_FEWEST = 4
"""Rows that make a strip set worth sewing: fewer are sooner sewn singly (common practice, no published
source)."""


class Cloths(NamedTuple):
    """The quilt's fabrics by name, what its pages call them, those whose print has a direction, and those of
    them whose print has only one way up."""

    fabrics: dict[str, Fabric]
    titles: dict[str, str]
    directed: frozenset[str]
    one_way: frozenset[str]


class Unit(NamedTuple):
    """One way of making units: its kind, the pieces of one unit (block's index, template, fabric), each in
    order."""

    kind: str
    members: tuple[tuple[int, str, str], ...]


def with_offers(quilt: Quilt, cuts: Sequence[Cut], step: Fraction) -> tuple[Cut, ...]:
    """The cuts with what can be made many at a time."""
    of_need: dict[tuple[int | None, str, str], int] = {}
    apart: set[tuple[int | None, str, str]] = set()
    for at, cut in enumerate(cuts):
        if cut.need >= 0:
            need = quilt.needs[cut.need]
            key = (need.block, need.label, need.fabric)
            if key in of_need and need.ways:
                apart.add(key)  # what a print has cut in several ways is not made all alike
            of_need.setdefault(key, at)
    of_need = {key: at for key, at in of_need.items() if key not in apart}
    named = {fabric.name: fabric for fabric in quilt.fabrics}
    called = {fabric.name: fabric.title for fabric in quilt.fabrics}
    one_way = frozenset(fabric.name for fabric in quilt.fabrics if fabric.one_way)
    directional = frozenset(fabric.name for fabric in quilt.fabrics if fabric.is_directional)
    cloths = Cloths(named, called, directional, one_way)
    found: dict[int, list[Offer]] = {}
    for unit, count in units_of(quilt).items():
        mine = [of_need.get(member) for member in unit.members]
        if any(at is None for at in mine):
            continue
        places = [at for at in mine if at is not None]
        for offer in _offers(unit, count, [cuts[at] for at in places], cloths, step):
            for at in dict.fromkeys(places):
                found.setdefault(at, []).append(offer)
    return tuple(replace(cut, offers=tuple(found[at])) if at in found else cut for at, cut in enumerate(cuts))


def units_of(quilt: Quilt) -> dict[Unit, int]:
    """Every kind of unit in the quilt, and how many there are of it."""
    counts: Counter[Unit] = Counter()
    uses = Counter((each.block, each.fabrics) for each in quilt.placed)
    drafts = {
        block: list(_units_in(quilt.blocks[block].draft))
        for block in dict.fromkeys(block for block, _ in uses)
    }
    labels = {block: _labels(quilt.blocks[block].draft) for block in drafts}
    for (block, fabrics), times in uses.items():
        cloth = dict(fabrics)
        for kind, pieces in drafts[block]:
            members = [(block, labels[block][piece.number], cloth[piece.fabric]) for piece in pieces]
            if kind != "goose":
                members = min(members, members[::-1])
            if len({fabric for *_, fabric in members}) == 1:
                continue  # of one cloth, a larger piece would do
            counts[Unit(kind, tuple(members))] += times
    return dict(sorted(counts.items()))


def _labels(draft: Draft) -> dict[int, str]:
    return {member.piece: shape.label for shape in draft.shapes for member in shape.members}


def _units_in(draft: Draft) -> Iterator[tuple[str, tuple[Piece, ...]]]:
    figures = {
        piece.number: recognise([side.edge for side in piece.ring], [side.allowance for side in piece.ring])
        for piece in draft.pieces
        if not piece.holes
    }
    yield from _pairs(draft, figures)
    yield from _geese(draft, figures)
    yield from _rows(draft, figures)


def _beyond(draft: Draft, side: Side) -> tuple[Piece, Side] | None:
    """The one piece along the whole of a side, and its side, which is just as long."""
    if len(side.parts) != 1 or side.parts[0].neighbour is None:
        return None
    other = draft.pieces[side.parts[0].neighbour - 1]
    for theirs in other.ring:
        same = abs(theirs.edge.length - side.edge.length) <= ALIKE
        if same and _met(theirs, side) and theirs.edge.arc is None:
            return other, theirs
    return None


def _met(one: Side, two: Side) -> bool:
    """Whether two sides run along each other from corner to corner."""
    off = (
        abs(float(one.edge.start.x - two.edge.end.x)),
        abs(float(one.edge.start.y - two.edge.end.y)),
        abs(float(one.edge.end.x - two.edge.start.x)),
        abs(float(one.edge.end.y - two.edge.start.y)),
    )
    return max(off) <= ALIKE


def _half_squares(figures: dict[int, Figure], number: int) -> bool:
    return number in figures and figures[number].kind in ("half-square-triangle", "quarter-square-triangle")


def _long_side(piece: Piece) -> Side:
    return max(piece.ring, key=lambda side: side.edge.length)


def _pairs(draft: Draft, figures: dict[int, Figure]) -> Iterator[tuple[str, tuple[Piece, ...]]]:
    for piece in draft.pieces:
        if _half_squares(figures, piece.number):
            met = _beyond(draft, _long_side(piece))
            if (
                met
                and met[0].number > piece.number
                and _half_squares(figures, met[0].number)
                and met[1] is _long_side(met[0])
            ):
                yield "pair", (piece, met[0])


def _geese(draft: Draft, figures: dict[int, Figure]) -> Iterator[tuple[str, tuple[Piece, ...]]]:
    for piece in draft.pieces:
        if not _half_squares(figures, piece.number):
            continue
        legs = [side for side in piece.ring if side is not _long_side(piece)]
        skies = [
            met[0]
            for side in legs
            if (met := _beyond(draft, side))
            and _half_squares(figures, met[0].number)
            and met[1] is _long_side(met[0])
        ]
        if len(skies) == 2 and skies[0].fabric == skies[1].fabric != piece.fabric:
            yield "goose", (piece, *sorted(skies, key=lambda each: each.number))


def _rows(draft: Draft, figures: dict[int, Figure]) -> Iterator[tuple[str, tuple[Piece, ...]]]:
    """Rows as long as they go; squares in rows across only."""
    following: dict[int, Piece] = {}
    for piece in draft.pieces:
        figure = figures.get(piece.number)
        if figure is None or figure.kind not in ("square", "rectangle") or not figure.even:
            continue
        for side in piece.ring:
            met = _beyond(draft, side)
            if met and _next_in_row(figure, side) and _alike(figure, figures.get(met[0].number)):
                following[piece.number] = met[0]
    later = {piece.number for piece in following.values()}
    for piece in draft.pieces:
        if piece.number in following and piece.number not in later:
            row = [piece]
            while row[-1].number in following and len(row) < ROW_MOST:
                row.append(following[row[-1].number])
            yield "row", tuple(row)


def _next_in_row(figure: Figure, side: Side) -> bool:
    """Whether the next of a row lies beyond the side: to the right, or below long ones that lie across."""
    dx, dy = float(side.edge.end.x - side.edge.start.x), float(side.edge.end.y - side.edge.start.y)
    along = max(abs(figure.side(0)), abs(figure.side(1)))
    if abs(abs(complex(dx, dy)) - along) > ALIKE:
        return False
    return dy > ALIKE if figure.kind == "square" or abs(dx) <= ALIKE else dx < -ALIKE and abs(dy) <= ALIKE


def _alike(one: Figure, two: Figure | None) -> bool:
    if two is None or two.kind != one.kind or not two.even:
        return False
    sizes = [sorted(abs(figure.side(at)) for at in range(2)) for figure in (one, two)]
    return all(abs(a - b) <= ALIKE for a, b in zip(*sizes, strict=True))


def _offers(unit: Unit, count: int, cuts: Sequence[Cut], cloths: Cloths, step: Fraction) -> Iterator[Offer]:
    """What the unit can be made by. Triangles sewn before they are cut come out turned about, and rows cut
    from a set are turned as their blocks lie: no way for a print that has to lie one way."""
    kinds = [cut.kind for cut in cuts]
    used = {cut.fabric for cut in cuts}
    if (
        unit.kind == "pair"
        and kinds == ["half-square-triangle"] * 2
        and not used & cloths.one_way
        and all(len(cut.slants) <= 1 for cut in cuts)
    ):
        yield from _pair_offers(count, cuts, cloths)
    elif (
        unit.kind == "goose"
        and kinds == ["quarter-square-triangle", *["half-square-triangle"] * 2]
        and not used & cloths.directed
    ):
        yield _goose_offer(count, cuts, cloths)
    elif (
        unit.kind == "row"
        and count >= ROWS_FEWEST
        and set(kinds) <= {"square", "rectangle"}
        and not used & cloths.directed
    ):
        yield from _strip_offer(count, cuts, cloths, step)


def _pair_offers(count: int, cuts: Sequence[Cut], cloths: Cloths) -> Iterator[Offer]:
    one, two = cuts
    square = max(one.width, two.width)
    turned = bool({one.fabric, two.fabric} & cloths.directed)  # of eight, half lie across the print
    singly = _squares(ceil(count / one.yields), one.width) + _squares(ceil(count / two.yields), two.width)
    titles = cloths.titles[one.fabric], cloths.titles[two.fabric]
    ways: tuple[tuple[Literal[2, 8], Number], ...] = ((2, square), (8, square * 2))
    for many, side in ways:
        sets = ceil(count / many)
        if many == 8 and (turned or sets * many > count * SPARE_MOST):
            continue
        yield Offer(SquarePairs(many, sets, side, titles), 2 * _squares(sets, side), singly)


def _goose_offer(count: int, cuts: Sequence[Cut], cloths: Cloths) -> Offer:
    goose, sky = cuts[0], cuts[1]
    sets = ceil(count / 4)
    singly = _squares(ceil(count / goose.yields), goose.width) + _squares(
        ceil(2 * count / sky.yields), sky.width
    )
    made = Geese(sets, goose.width, sky.width, cloths.titles[goose.fabric], cloths.titles[sky.fabric])
    return Offer(made, _squares(sets, goose.width) + _squares(4 * sets, sky.width), singly)


def _squares(count: int, side: Number) -> float:
    return count * float(side) ** 2


def _strip_offer(count: int, cuts: Sequence[Cut], cloths: Cloths, step: Fraction) -> Iterator[Offer]:
    """A strip set is (strip - 1/2in) x strips + 1/2in wide when sewn (SOURCES 2.10). Cloth in whole strips,
    as long as the shortest of its cloths allows; none where quarters and scraps do not hold them."""
    strip, every = sorted((Fraction(cuts[0].width), Fraction(cuts[0].height)))
    pieces = Counter(cut.fabric for cut in cuts)
    longest = {name: _longest(cloths.fabrics[name], strip, step) for name in pieces}
    long = min(longest.values())
    rows = int(long / every)
    if rows < 2:  # it would be sewn for each row by itself
        return
    taken = {name: long if cloths.fabrics[name].scraps else longest[name] for name in pieces}
    sets = ceil(count / rows)
    if any(_strips_in(cloths.fabrics[name], strip, long) < sets * many for name, many in pieces.items()):
        return
    sewn = (strip - Fraction(1, 2)) * len(cuts) + Fraction(1, 2)
    singly = sum(
        ceil(count * many / int(longest[name] / every)) * float(strip * longest[name])
        for name, many in pieces.items()
    )
    shorter = any(cloths.fabrics[name].scraps for name in pieces)
    named = tuple(cloths.titles[cut.fabric] for cut in cuts)
    yield Offer(
        StripSet(strip, long if shorter else None, sewn, every, sets, count, named),
        sets * sum(float(strip * taken[cut.fabric]) for cut in cuts),
        singly,
    )


def _longest(fabric: Fabric, strip: Fraction, step: Fraction) -> Fraction:
    """How long a strip of that width can be cut: across the bolt; of quarters and scraps, along those that
    give the most cloth. Down to a mark."""
    if not fabric.scraps:
        return int(fabric.usable_width / step) * step
    areas: dict[Fraction, Fraction] = {}
    for wide, high in _sides(fabric):
        if wide >= strip <= high:
            areas[max(wide, high)] = areas.get(max(wide, high), Fraction(0)) + wide * high
    best = max(areas, key=lambda long: (areas[long], long), default=Fraction(0))
    return int(best / step) * step


def _strips_in(fabric: Fabric, strip: Fraction, long: Fraction) -> float:
    """How many strips of that width and length the fabric's quarters and scraps hold; the bolt any number."""
    if not fabric.scraps:
        return inf
    return sum(
        max(int(wide / long) * int(high / strip), int(high / long) * int(wide / strip))
        for wide, high in _sides(fabric)
    )


def _sides(fabric: Fabric) -> Iterator[tuple[Fraction, Fraction]]:
    """Width and height of every quarter and scrap."""
    return ((scrap.width, scrap.height) for scrap in fabric.scraps)
