"""How seams are pressed, in words: whether those that meet lie opposite; and where copies of one unit are
pressed differently, which of them each way, told by where they lie, `top left and bottom right`, or by a
picture that shades them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Final

from ..drafting.model import Draft
from ..geometry.stroke import place_of
from ..sewing.model import Unit
from ..sewing.pressing.pressing_model import Pressing, PressingPlan, Toward
from ..words.phrases import count_of, one_of

EDGES: Final = (0.4, 0.6)
"""Shares of the block between which a middle is neither left nor right, neither top nor bottom."""

LEVEL: Final = 0.02  # of the block's height between the middles of two copies in one row

NAMES: Final = (
    ("top left", "top", "top right"),
    ("left", "middle", "right"),
    ("bottom left", "bottom", "bottom right"),
)

ROWS: Final = (
    "Where copies of one unit are pressed differently, they are told by rows: look at the finished {}, "
    "count only the places where that unit lies, rows from the top and places in a row from the left."
)
"""What to know where rows are told; of what."""

COUNTED: Final = "Rows count from the top, and only the places of that unit; places in a row from the left."


def pressing_words(plan: PressingPlan) -> str:
    """How seams are pressed by machine, and what it comes to."""
    return (
        "Press every seam as sewn, then as its arrow shows: lift the iron and set it down, do not push. "
        f"{meeting_words(plan)}"
    )


def meeting_words(plan: PressingPlan) -> str:
    """How many seams that meet lie opposite, and what is pressed open since they cannot."""
    if not plan.meetings:
        return "No two seams meet end to end here, so nothing has to lie opposite."
    said = f"Seams meet at {count_of(len(plan.meetings), 'place')}, and lie opposite at"
    if plan.opposite == len(plan.meetings):
        where = f"{said} each" if plan.opposite > 1 else said.replace("opposite at", "opposite there")
        return f"{where}: push them together until they nest."
    opened = [str(each.step) for each in plan.seams if "open" in each.ways]
    steps = f"step{'s' if len(opened) > 1 else ''} {one_of(opened, 'and')}"
    return f"{said} {plan.opposite or 'none'}. They cannot at the rest: press open in {steps}."


def ways_told(draft: Draft, unit: Unit, pressing: Pressing, names: Mapping[Toward, str]) -> str:
    """The way that all copies are pressed; where they differ, `2 toward A (left and right) and the other 4
    open`."""
    if pressing.even:
        return names[pressing.toward]
    told = []
    for way, places in copies_told(draft, unit, pressing.ways):
        count = pressing.ways.count(way)
        others = "the other one" if count == 1 else f"the other {count}"
        told.append(f"{count} {names[way]} ({places})" if places else f"{others} {names[way]}")
    return one_of(told, "and")


def shaded_way(draft: Draft, unit: Unit, pressing: Pressing) -> Toward | None:
    """The way whose copies a small picture of the block shades: of two the one that fewer are pressed.

    None where all are pressed alike, or three ways; and where corners alone or sides alone tell them: words
    do as well there.
    """
    if len(set(pressing.ways)) != 2:
        return None
    names = _corners(_middles(draft, unit))
    plain = len({" " in name for name in names if name != "middle"}) == 1
    if plain and all(places for _, places in copies_told(draft, unit, pressing.ways)):
        return None
    return min(dict.fromkeys(pressing.ways), key=pressing.ways.count)


def ways_shaded(pressing: Pressing, names: Mapping[Toward, str], shaded: Toward) -> str:
    """`4 toward A: shaded in the small block; the other 12 open`."""
    (rest,) = {*pressing.ways} - {shaded}
    count, others = pressing.ways.count(shaded), pressing.ways.count(rest)
    other = "one" if others == 1 else str(others)
    return f"{count} {names[shaded]}: shaded in the small block; the other {other} {names[rest]}"


def places_words(draft: Draft, unit: Unit, pressing: Pressing, shaded: Toward) -> str:
    """Where the copies of a unit lie that a picture shades: for those who do not see it."""
    told = dict(copies_told(draft, unit, pressing.ways))[shaded]
    count, copies = pressing.ways.count(shaded), len(unit.copies)
    said = f"Shaded: {count} of the {copies} places of unit {unit.id[1:]}, {told}."
    return f"{said} {COUNTED}" if tells_rows(told) else said


def tells_rows(words: str) -> bool:
    """Whether words about pressing tell copies by rows."""
    return "in row" in words


def copies_told(draft: Draft, unit: Unit, groups: Sequence[Toward]) -> list[tuple[Toward, str]]:
    """Each group with where the copies of a unit that belong to it lie; `groups` has one for each copy.

    By the sides and corners of the block where that tells the groups apart. Else by rows, the smallest group
    first; of the largest nothing is told: it is all others.
    """
    middles = _middles(draft, unit)
    members: dict[Toward, list[int]] = {}
    for at, group in enumerate(groups):
        members.setdefault(group, []).append(at)
    corners = _corners(middles)
    named = {group: list(dict.fromkeys(corners[at] for at in own)) for group, own in members.items()}
    if sum(map(len, named.values())) == len(set(corners)):
        return [(group, one_of(words, "and")) for group, words in named.items()]
    rows = _rows(middles)
    told = _row_words if any(rank > 1 for _, rank in rows) else _whole_rows
    *few, most = sorted(members, key=lambda group: len(members[group]))
    return [*((group, told([rows[at] for at in members[group]])) for group in few), (most, "")]


def _corners(middles: Sequence[complex]) -> list[str]:
    """The corner or side of the block that each middle lies in."""
    return [NAMES[_third(spot.imag)][_third(spot.real)] for spot in middles]


def _middles(draft: Draft, unit: Unit) -> list[complex]:
    return [_middle(draft, copy.pieces) for copy in unit.copies]


def _middle(draft: Draft, pieces: Sequence[int]) -> complex:
    """The middle of a copy, as shares of the block."""
    spots = [place_of(side.edge.start) for number in pieces for side in draft.pieces[number - 1].ring]
    xs, ys = [spot.real for spot in spots], [spot.imag for spot in spots]
    middle = complex(min(xs) + max(xs), min(ys) + max(ys)) / 2
    return complex(middle.real / float(draft.width), middle.imag / float(draft.height))


def _third(share: float) -> int:
    return sum(share > edge for edge in EDGES)


def _rows(middles: Sequence[complex]) -> list[tuple[int, int]]:
    """The row of each copy, from the top, and which of its row it is, from the left."""
    heights = sorted(spot.imag for spot in middles)
    tops = [heights[0], *(two for one, two in pairwise(heights) if two - one > LEVEL)]
    rows = [sum(spot.imag > top - LEVEL / 2 for top in tops) for spot in middles]
    order = sorted(range(len(middles)), key=lambda at: (rows[at], middles[at].real))
    firsts = {rows[at]: rank for rank, at in reversed(list(enumerate(order)))}
    ranks = {at: rank - firsts[rows[at]] + 1 for rank, at in enumerate(order)}
    return [(row, ranks[at]) for at, row in enumerate(rows)]


def _row_words(places: Sequence[tuple[int, int]]) -> str:
    """`1st and 4th in rows 1 and 3, 2nd in row 4`."""
    ranks: dict[int, list[int]] = {}
    for row, rank in sorted(places):
        ranks.setdefault(row, []).append(rank)
    rows: dict[tuple[int, ...], list[int]] = {}
    for row, own in ranks.items():
        rows.setdefault(tuple(own), []).append(row)
    return ", ".join(
        f"{one_of([_ordinal(rank) for rank in own], 'and')} {_in_rows(those)}" for own, those in rows.items()
    )


def _whole_rows(places: Sequence[tuple[int, int]]) -> str:
    """`in rows 1 and 3`, where no row has more than one copy."""
    return _in_rows([row for row, _ in sorted(places)])


def _in_rows(rows: Sequence[int]) -> str:
    return f"in row{'s' if len(rows) > 1 else ''} {one_of([str(row) for row in rows], 'and')}"


def _ordinal(number: int) -> str:
    """`1st`, `2nd`, `3rd`, `11th`."""
    teen = number % 100 in (11, 12, 13)
    return f"{number}{'th' if teen else {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th')}"
