"""How seams are pressed, and where the copies of a unit lie that are pressed one way or the other."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final, assert_never

from ...drafting.model import Draft
from ...sewing.model import Unit
from ...sewing.pressing.copies import InNinths, InRows, Others, Where, where_copies
from ...sewing.pressing.pressing_model import Pressing, PressingPlan, Toward
from ..phrases import count_of, one_of

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


def pressing_words(plan: PressingPlan, *, pictured: bool = True) -> str:
    """How seams are pressed by machine, and what it comes to. Where no picture has arrows, steps say how."""
    way = "arrow shows" if pictured else "step says"
    return (
        f"Press every seam as sewn, then as its {way}: lift the iron and set it down, do not push. "
        f"{meeting_words(plan)}"
    )


def meeting_words(plan: PressingPlan) -> str:
    """How many seams that meet lie opposite, and what is pressed open since they cannot."""
    if not plan.meetings:
        return "No two seams meet end to end here, so nothing has to lie opposite."
    said = f"Seams meet at {count_of(len(plan.meetings), 'place')}, and lie opposite"
    if plan.opposite == len(plan.meetings):
        return f"{said} {'at each' if plan.opposite > 1 else 'there'}: push them together until they nest."
    opened = [str(each.step) for each in plan.seams if "open" in each.ways]
    steps = f"step{'s' if len(opened) > 1 else ''} {one_of(opened, 'and')}"
    return f"{said} at {plan.opposite or 'none'}. They cannot at the rest: press open in {steps}."


def ways_told(draft: Draft, unit: Unit, pressing: Pressing, names: Mapping[Toward, str]) -> str:
    """The way that all copies are pressed; where they differ, `2 toward A (left and right) and the other 4
    open`."""
    if pressing.even:
        return names[pressing.toward]
    told = []
    for way, where in where_copies(draft, unit, pressing.ways):
        count, places = pressing.ways.count(way), _where(where)
        others = "the other one" if count == 1 else f"the other {count}"
        told.append(f"{count} {names[way]} ({places})" if places else f"{others} {names[way]}")
    return one_of(told, "and")


def ways_shaded(pressing: Pressing, names: Mapping[Toward, str], shaded: Toward) -> str:
    """`4 toward A: shaded in the small block; the other 12 open`."""
    (rest,) = {*pressing.ways} - {shaded}
    count, others = pressing.ways.count(shaded), pressing.ways.count(rest)
    other = "one" if others == 1 else str(others)
    return f"{count} {names[shaded]}: shaded in the small block; the other {other} {names[rest]}"


def places_words(draft: Draft, unit: Unit, pressing: Pressing, shaded: Toward) -> str:
    """Where the copies of a unit lie that a picture shades: for those who do not see it."""
    where = dict(where_copies(draft, unit, pressing.ways))[shaded]
    count, copies = pressing.ways.count(shaded), len(unit.copies)
    said = f"Shaded: {count} of the {copies} places of unit {unit.id[1:]}, {_where(where)}."
    return f"{said} {COUNTED}" if isinstance(where, InRows) else said


def _where(where: Where) -> str:
    """`left and right`; `1st and 4th in rows 1 and 3`; '' of all others."""
    match where:
        case InNinths(ninths):
            return one_of([NAMES[row][column] for row, column in ninths], "and")
        case InRows(places, single):
            return _in_rows(sorted(row for row, _ in places)) if single else _row_words(places)
        case Others():
            return ""
    assert_never(where)


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


def _in_rows(rows: Sequence[int]) -> str:
    return f"in row{'s' if len(rows) > 1 else ''} {one_of([str(row) for row in rows], 'and')}"


def _ordinal(number: int) -> str:
    """`1st`, `2nd`, `3rd`, `11th`."""
    teen = number % 100 in (11, 12, 13)
    return f"{number}{'th' if teen else {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th')}"
