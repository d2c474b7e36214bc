"""Blocks with pieces that have holes, in a quilt: laid, counted, cut, drawn and sewn with their holes."""

from __future__ import annotations

from math import isclose, pi

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.quilt.model import Quilt
from piecewright.sheets.arrange.paths import Placement
from piecewright.sheets.page import PathMark
from piecewright.sheets.pictures.quilt import draw_quilt
from piecewright.sheets.pictures.seams import seams_of
from piecewright.sheets.quilts.thread import seam_inches
from support import told
from support.arranged import rings
from support.quilts import area_of, check_quilt, compile_text, pieces_called

MOONS = """edition 1
block "Moon" {
  finished 6in
  point eye = 1/2in from center to right
  seam circle around center radius 2in
  seam circle around eye radius 1in
  piece moon at eye in pale
  piece halo at 1 1/2in from center to left in dark
  piece sky at top-left in sand
}
quilt "Moons" {
  use "Moon" as moon
  fabric dark  fabric pale  fabric sand
  set straight 2 across 1 down { row moon, moon mirrored }
  border 2in in dark
  binding 2 1/4in in dark  backing in sand  batting
}
"""
"""Two blocks of 6in: a circle of 2in in the middle, and a smaller one within it, off the middle."""


@pytest.fixture(scope="module")
def moons() -> Quilt:
    made = compile_text(MOONS)
    assert made.value is not None
    (quilt,) = made.value.quilts
    return quilt


def test_pieces_round_others_have_their_holes_cut_out(moons: Quilt) -> None:
    check_quilt(moons)
    assert isclose(area_of(pieces_called(moons, "sky")), 2 * (36 - 4 * pi), rel_tol=1e-3)
    assert isclose(area_of(pieces_called(moons, "halo")), 2 * (4 * pi - pi), rel_tol=1e-3)


def test_a_square_with_a_hole_is_cut_by_its_template(moons: Quilt) -> None:
    plan = plan_cutting(moons).value
    assert plan is not None
    made = {cut.template: (cut.kind, told.reason(cut)) for cut in plan.cuts if cut.part == "blocks"}
    by_name = {need.what: made[need.template] for need in moons.needs if need.part == "blocks"}
    assert by_name["sky"] == by_name["halo"] == ("template", "it has a hole")


def test_the_picture_leaves_the_holes_out_of_each_cloths_fill(moons: Quilt) -> None:
    marks = draw_quilt(moons, Placement())
    fills = {mark.subject: mark for mark in marks if isinstance(mark, PathMark) and mark.role == "fill"}
    assert set(fills) == {"dark", "pale", "sand"}
    shown = {cloth: sum(ring_area(ring) for ring in rings(mark)) / 72**2 for cloth, mark in fills.items()}
    for cloth, area in shown.items():
        assert isclose(area, area_of([each for each in moons.pieces if each.fabric == cloth]), rel_tol=1e-3)


def test_both_halves_of_a_circle_are_seams_between_two_pieces(moons: Quilt) -> None:
    sides = [tuple(edge for ring in piece.rings for edge in ring) for piece in moons.pieces]
    curved = [
        seam for seam in seams_of(sides, Placement()) if any(segment[0] == "C" for segment in seam.path)
    ]
    assert all(len(set(seam.pieces)) == 2 for seam in curved)
    inner = (*pieces_called(moons, "moon"), *pieces_called(moons, "halo"))
    arcs = [edge for piece in inner for edge in piece.outline]
    assert len(curved) == len(arcs) >= 2 * 2 * 2


def test_the_thread_goes_round_every_hole_once(moons: Quilt) -> None:
    """Two circles a block, the seam between the blocks, the border's two sides of 6in, two ends of 16in."""
    assert isclose(seam_inches(moons), 2 * (4 * pi + 2 * pi) + 6 + 2 * 6 + 2 * 16)


def ring_area(ring: list[tuple[float, float]]) -> float:
    """Square points, above zero clockwise as seen."""
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(ring, [*ring[1:], ring[0]], strict=True)) / 2
