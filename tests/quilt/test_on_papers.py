"""Cloth for quilts of blocks on foundations: a rectangle for every patch of every copy. By hand: a patch has
1/4in of allowance and 1/4in of margin on every side, so 1in more than its piece each way, up to the next
quarter (the margin: common practice, no published source)."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

import pytest
from piecewright.cutting.plan_model import CuttingPlan
from piecewright.measure.length import UNITS
from piecewright.quilt.model import Quilt
from piecewright.quilt.on_papers import cut_for_papers
from piecewright.words.work.foundations import patch_words
from support import told
from support.on_papers import assembled, cut_on_papers, papers_in, plan_of
from support.quilts import lay
from support.random_quilts import TWELVE, compiled_quilt

CABINS = """edition 1
quilt "Six Hearths" version 1 {{
  use "Log Cabin" as cabin{dressing}
  fabric light  fabric dark {dark}  fabric hearth  fabric moss
  set straight 3 across 2 down of 9in {{ row {first}  row 3 cabin }}
}}
"""

COPIES = 6
LOGS = {  # of one block, by hand: four rounds of 1in logs about a hearth of 1in
    "light": {(2, 2): 1, (4, 2): 2, (6, 2): 2, (8, 2): 2, (10, 2): 1},
    "dark": {(3, 2): 2, (5, 2): 2, (7, 2): 2, (9, 2): 2},
    "hearth": {(2, 2): 1},
}


def cabins(dark: str = "", first: str = "3 cabin", dressing: str = "") -> Quilt:
    return compiled_quilt(CABINS.format(dark=dark, first=first, dressing=dressing))


def rectangles(plan: CuttingPlan) -> dict[str, Counter[tuple[Fraction, Fraction]]]:
    """By fabric, how many of each size are cut of everything that the plan cuts."""
    found: dict[str, Counter[tuple[Fraction, Fraction]]] = {}
    for cut in plan.cuts:
        assert cut.kind in ("square", "rectangle") and cut.cuts == cut.pieces, cut
        found.setdefault(cut.fabric, Counter())[Fraction(cut.width), Fraction(cut.height)] += cut.cuts
    return found


def test_six_log_cabins_are_cut_as_reckoned_by_hand() -> None:
    plan = plan_of(cut_on_papers(cabins()))
    assert rectangles(plan) == {
        fabric: {size: COPIES * count for size, count in sizes.items()} for fabric, sizes in LOGS.items()
    }
    areas = {each.fabric: each.area for each in plan.fabrics}
    assert areas == {"hearth": 4 * COPIES, "light": 96 * COPIES, "dark": 96 * COPIES}  # square inches
    for each in plan.fabrics:
        assert float(each.used * each.usable_width) >= each.area
    assert not any(cut.offers for cut in plan.cuts)


def test_each_copy_is_cut_from_its_own_cloths() -> None:
    use = '\n  use "Log Cabin" as mossy with dark = moss'
    plan = plan_of(cut_on_papers(cabins(first="2 cabin, mossy", dressing=use)))
    made = rectangles(plan)
    assert made["moss"] == LOGS["dark"]
    assert made["dark"] == {size: 5 * count for size, count in LOGS["dark"].items()}
    assert sum(made["light"].values()) == 6 * 8


@pytest.mark.parametrize("way", ["one way", "striped"])
def test_on_a_print_with_a_direction_every_log_lies_as_in_the_block(way: str) -> None:
    """Of the dark logs of a round, one lies across and one up and down, 1in to the side of the print."""
    made = rectangles(plan_of(cut_on_papers(cabins(dark=way))))
    long = {size for size, _ in LOGS["dark"].items()}
    assert made["dark"] == {each: COPIES for size in long for each in (size, size[::-1])}
    assert made["light"] == {size: COPIES * count for size, count in LOGS["light"].items()}


def test_a_ruler_in_centimetres_cuts_to_the_mark_above() -> None:
    step = UNITS["cm"] / 4
    quilt = cut_on_papers(cabins())
    plan, exact = plan_of(quilt, step), [(cut.width, cut.height) for cut in plan_of(quilt).cuts]
    for cut, size in zip(plan.cuts, exact, strict=True):
        for side, least in zip((cut.width, cut.height), size, strict=True):
            assert side % step == 0 and least <= side < least + step
        assert told.reason(cut, step).startswith(
            "covers its patch with 0.635cm of allowance and 0.635cm of margin"
        )


@pytest.mark.parametrize("text", TWELVE, ids=lambda text: text.split('"')[1])
def test_every_piece_of_every_copy_has_its_patch(text: str) -> None:
    quilt = compiled_quilt(text)
    cut, papers = cut_on_papers(quilt), papers_in(quilt)
    for index, found in papers.items():
        of_block = [need for need in cut.needs if need.block == index]
        pieces = Counter(piece.fabric for piece in quilt.pieces if piece.block == index)
        counts: Counter[str] = Counter()
        for need in of_block:
            counts[need.fabric] += need.count
        assert counts == pieces
        assert all(need.margin == found.margin and not need.label for need in of_block)
    others = [need for need in quilt.needs if need.block not in papers]
    assert [need for need in cut.needs if need.block not in papers] == others


def test_what_cannot_go_on_paper_is_cut_as_before() -> None:
    quilt = lay("set straight 2 across 1 down of 4in { row 2 sail }\n")
    assert cut_for_papers(quilt, {}) is quilt
    moons = compiled_quilt("""edition 1
quilt "Bends" {
  use "Drunkard's Path" as path
  fabric dark  fabric light
  set straight 2 across 1 down of 8in { row 2 path }
}
""")
    assert papers_in(moons) == {} and cut_on_papers(moons) is moons


def test_a_cut_names_its_patches_and_counts_those_it_does_not_name() -> None:
    assert patch_words(["A1"]) == "patch A1"
    assert patch_words(["A1", "B1", "C1", "D1"]) == "patches A1, B1, C1 and D1"
    assert patch_words(["A1", "B1", "C1", "D1", "E1"]) == "patches A1, B1, C1 and 2 more"


@pytest.mark.parametrize("text", TWELVE[:4], ids=lambda text: text.split('"')[1])
def test_no_patch_is_named_as_a_part_of_the_top(text: str) -> None:
    quilt = compiled_quilt(text)
    made = assembled(quilt)
    parts = [*(kind.label for kind in made.kinds), *made.row_names.values()]
    assert len(set(parts)) == len(parts)
    patches = {
        patch.label
        for papers in papers_in(quilt).values()
        for section in papers.sections
        for patch in section.patches
    }
    assert patches and patches.isdisjoint(parts)
