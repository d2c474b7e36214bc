"""The sums that explain a rule add up as they are printed: finished and allowance, up to the ruler's next
mark, are the cut, and neither is printed less than it exactly is.

Of the library at many sizes, and of random quilts by their JSON. By hand: `python
tests/proof/test_printed_sums.py 200` looks at so many quilts, and says how many sums it found.
"""

from __future__ import annotations

import re
import sys
from fractions import Fraction
from functools import lru_cache
from math import ceil, sqrt
from pathlib import Path

from piecewright.words.work.shapes import shape_word

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parents[1]))

import pytest
from piecewright.cutting.model import Template
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.cutting.sizes import block_at
from piecewright.cutting.templates.making import make_templates
from piecewright.diagnostics.source import Source
from piecewright.door.records.reports import quilt_report
from piecewright.pipeline import compile_file
from support import told
from support.library import LibraryShelf, library_drafts
from support.random_prints import random_quilt

RULERS = {
    "1/8in": Fraction(1, 8),
    "1/16in": Fraction(1, 16),
    "1/4in": Fraction(1, 4),
    "2.5mm": Fraction(25, 254),
    "5mm": Fraction(50, 254),
}
LENGTH = r"(\d+(?:\.\d+)?(?: \d+/\d+)?|\d+/\d+)(in|cm)"
SUM = re.compile(rf"(?i:about )?{LENGTH} (?:high )?finished and {LENGTH}")
NEAR = Fraction(3, 10**6)
ALLOWANCE = 0.25
EXACT = {
    "half-square triangle": ALLOWANCE * (2 + sqrt(2)),
    "quarter-square triangle": ALLOWANCE * (2 + 2 * sqrt(2)),
    "equilateral triangle": 3 * ALLOWANCE,
}  # fmt: skip
"""What each shape takes beyond its finished side or height (SOURCES 1.1)."""


def inches(number: str, unit: str) -> Fraction:
    """`7 3/8`, `in` as a number."""
    value = sum(Fraction(part) for part in number.split())
    return value * 50 / 127 if unit == "cm" else value


def amiss(reason: str, cut: Fraction, kind: str, step: Fraction, excess: float) -> str | None:
    """What is wrong with the sum of a reason for a cut that lies so far over the exact; None where it has
    none."""
    found = SUM.search(reason)
    if found is None:
        return None
    size, extra = inches(*found.groups()[:2]), inches(*found.groups()[2:])
    up = ceil((size + extra - NEAR) / step) * step
    if abs(up - cut) > NEAR:
        return f"{found.group()} is not {float(cut)}"
    if float(extra) < EXACT[kind] - float(NEAR):
        return f"{found.group()}: the allowance is less than {EXACT[kind]:.4f}in"
    finished = float(cut) - excess - EXACT[kind]
    if float(size) < finished - float(NEAR):
        return f"{found.group()}: the side is {finished:.4f}in"
    return ""


@lru_cache(maxsize=256)
def templates_of(title: str) -> tuple[Template, ...]:
    """A library block's templates, made once."""
    made = make_templates(next(draft for name, draft in library_drafts() if name == title)).value
    assert made is not None
    return made


def of_library(step: Fraction, sizes: int) -> tuple[int, list[str]]:
    """How many sums the library's blocks print at so many sizes, and what is amiss."""
    count, wrong = 0, []
    for title, draft in library_drafts():
        templates = templates_of(title)
        for number in range(sizes):
            width = Fraction(3) + Fraction(18 * number, sizes) + Fraction(number % 3, 7)
            for each in block_at(draft, templates, width, step).cuts:
                kind = shape_word(each.method.kind)
                length = each.method.width if kind != "equilateral triangle" else each.method.height
                said = amiss(told.reason(each.method, step), Fraction(length), kind, step, each.method.excess)
                count += said is not None
                if said:
                    wrong.append(f"{title} {each.label} at {float(width):.3f}in: {said}")
    return count, wrong


def of_quilt(text: str, step: Fraction) -> tuple[int, list[str]]:
    """The same of a quilt's JSON."""
    outcome = compile_file(Source("trial.quilt", text), LibraryShelf())
    assert outcome.value is not None
    count, wrong = 0, []
    for quilt in outcome.value.quilts:
        plan = plan_cutting(quilt, step).value
        if plan is None:
            continue
        for cut in quilt_report(quilt, plan)["cutting"]:
            length = Fraction(cut["strip"] if cut["kind"] == "equilateral triangle" else cut["width"])
            said = amiss(cut["reason"], length, cut["kind"], step, cut["excess"])
            count += said is not None
            wrong += [said] if said else []
    return count, wrong


@pytest.mark.parametrize("ruler", RULERS)
def test_sums_of_the_library_add_up(ruler):
    count, wrong = of_library(RULERS[ruler], 3)
    assert count and not wrong


@pytest.mark.parametrize("seed", range(200, 204))
@pytest.mark.parametrize("ruler", ["1/8in", "2.5mm"])
def test_sums_of_random_quilts_add_up(seed, ruler):
    _, wrong = of_quilt(random_quilt(seed, seed % 2 == 0), RULERS[ruler])
    assert not wrong


if __name__ == "__main__":
    many = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    for ruler, step in RULERS.items():
        count, wrong = of_library(step, 40)
        print(f"{ruler}: {count} sums of the library, {len(wrong)} amiss", *wrong[:3], sep="\n  ")
    total = 0
    for seed in range(many):
        for step in (RULERS["1/8in"], RULERS["2.5mm"]):
            count, wrong = of_quilt(random_quilt(seed, seed % 2 == 0), step)
            total += count
            if wrong:
                print(seed, wrong[:2])
    print(f"{total} sums of {many} quilts")
