"""Allowances that are crowded: what still is cut by them, and what is refused, at which words."""

from __future__ import annotations

import pytest
from piecewright.cutting.templates.corners import moved_side
from piecewright.cutting.templates.crossing import runs_along
from piecewright.cutting.templates.making import make_templates
from piecewright.diagnostics.source import Source
from piecewright.drafting.stroke import doubled_area, stroke_of
from support.check import FILE, HEADER, DictShelf, compile_source, draft_block

ISLE = "finished 6in\nseam circle around center radius 1/4in\n"
BITE = "finished 8in x 3in\ngrid 4 x 3\nseam (0, 1.5) ~~ (0, 1.875) through (1, 1)\n"

NO_ROOM = {
    "a hole within its allowance": (f"{ISLE}allowance 1/2in", "1/2in"),
    "a hole as wide as two allowances, by default": (ISLE, "circle around center radius 1/4in"),
    "a shallow bite that its allowance fills": (
        "finished 8in\ngrid 8 x 8\nseam (0.5, 8) ~~ (0, 8) through (0.25, 7.875)\n"
        "seam (0.5, 8) -- (4, 0)\nallowance 1/2in",
        "1/2in",
    ),
    "a bite that its allowance fills but for a hair": (
        "finished 8in x 6in\ngrid 5 x 4\nseam (2.5, 4) ~~ (3.125, 4) through (2.8125, 3.833333333)\n"
        "allowance 1/2in on (2.5, 4) ~~ (3.125, 4) through (2.8125, 3.833333333)",
        "1/2in",
    ),
    "a hole that the allowance of one edge fills": (
        "finished 8in\ngrid 8 x 8\nallowance 1/8in\n"
        "seam (2, 3) -- (3, 3) -- (3, 4) -- (2, 4) -- (2, 3)\nallowance 1in on (2, 3) -- (3, 3)",
        "1in",
    ),
    "a notch within the wider allowance of its short edge, which the trim of its point still shows": (
        "finished 8in\ngrid 4 x 4\nseam (4, 4) -- (1, 1.5) -- (4, 0)\nseam (0, 0) -- (4, 4)\n"
        "allowance 3/8in\nallowance 1in on (1, 1.5) -- (4, 0)",
        "1in",
    ),
    "a notch at the end of an arc, likewise": (
        "finished 4in x 8in\ngrid 5 x 4\nseam (5, 0) ~~ (0, 2) around (0, 0)\n"
        "seam (5, 3.75) -- (4.5, 0.5) -- (0, 3.5)\nallowance 1/8in on (4.5, 0.5) -- (0, 3.5)\n"
        "allowance 1/2in on (5, 3.75) -- (4.5, 0.5)",
        "1/2in",
    ),
    "a wedge out of a round, within the wider allowance of one edge": (
        "finished 6in\ngrid 2 x 2\nseam circle around (1, 1) through (1.5, 0.5)\n"
        "seam (2, 1.5) -- (1, 0.5) -- (2, 0.75)\nallowance 1/8in\nallowance 1in on (1, 0.5) -- (2, 0.75)",
        "1in",
    ),
    "the long point of a bite, that lies over the narrower allowance across its mouth": (
        f"{BITE}allowance 1in\ntrim none\nallowance 1/8in on (0, 3) -- (0, 1.5)",
        "1in",
    ),
}


def compiled(body: str):
    return compile_source(Source(FILE, f"{HEADER}{body}\n}}\n"), DictShelf({}))


@pytest.mark.parametrize("name", NO_ROOM)
def test_an_allowance_without_room_is_refused_at_its_words(name):
    body, words = NO_ROOM[name]
    outcome = compiled(body)
    assert outcome.value is None
    (said,) = [each for each in outcome.diagnostics if each.code == "allowance-no-room"]
    span = said.primary.span
    assert f"{HEADER}{body}\n}}\n"[span.start : span.end] in (words, f"seam {words}")
    assert said.message.endswith("has no room.") and ("1/4in" in said.message or words in said.message)
    assert "allowance" in said.help


def cut_area(body: str, label: str) -> float:
    outcome = compiled(body)
    assert outcome.value is not None, outcome.diagnostics
    (found,) = [each for each in outcome.value[0].templates if each.label == label]
    return sum(doubled_area([stroke_of(edge) for edge in ring]) for ring in (found.cut, *found.cut_holes)) / 2


def test_an_arc_that_runs_up_to_a_long_seam_at_the_outside_is_cut():
    """The arc carried on to its trim, and past it again, once left a curve that no seam runs along."""
    known = "finished 8in\ngrid 4 x 4\nseam (2.5, 0) -- (2.5, 4)\nseam (2.5, 0) ~~ (0, 2) through (1, 1/2)"
    outcome = compiled(known)
    assert outcome.value is not None and not outcome.diagnostics
    for template in make_templates(draft_block(known).value[0]).value:
        assert all(edge.arc is None or edge.arc.radius > 4 for edge in template.cut)


def test_at_an_inner_corner_the_wider_allowance_ends_square():
    """A step: 1in beside the upright edge down to its corner, then 3/8in beside the slanted one."""
    body = (
        "finished 12in\ngrid 6 x 6\nseam (4.5, 6) -- (3, 2.5) -- (3, 0)\nallowance 3/8in\n"
        "allowance 1in on (3, 2.5) -- (3, 0)"
    )
    outcome = compiled(body)
    assert outcome.value is not None
    corners = {
        (round(float(edge.start.x), 6), round(float(edge.start.y), 6))
        for template in outcome.value[0].templates
        for edge in template.cut
    }
    assert (7.0, 5.0) in corners  # straight out of the seam's corner at (6, 5)


def test_a_frame_of_two_windows_one_narrower_is_cut_in_both():
    body = (
        "finished 8in x 6in\nseam circle around (1/4, 1/2) radius 1in\n"
        "seam circle around (3/4, 1/2) radius 1 1/2in"
    )
    assert cut_area(body, "A") == pytest.approx(8.5 * 6.5 - 3.14159265 * (0.75**2 + 1.25**2), abs=1e-5)


def test_a_notch_that_no_wider_allowance_fills_is_cut_whatever_its_trim():
    """As above, with one allowance all round: the trim of the point runs within it."""
    body = (
        "finished 8in\ngrid 4 x 4\nseam (4, 4) -- (1, 1.5) -- (4, 0)\nseam (0, 0) -- (4, 4)\nallowance 3/8in"
    )
    outcome = compiled(body)
    assert outcome.value is not None
    assert {each.code for each in outcome.diagnostics} <= {"allowances-overlap", "crossing-unnamed"}


@pytest.mark.parametrize(
    "widths",
    [
        "allowance 1in\ntrim matched 1/4in\nallowance 1/8in on (0, 3) -- (0, 1.5)",  # the point trimmed
        "allowance 1in\ntrim none",  # one allowance on both sides of the mouth
    ],
)
def test_the_same_bite_is_cut_where_its_point_covers_nothing_narrower(widths):
    outcome = compiled(f"{BITE}{widths}")
    assert outcome.value is not None
    sides = {side.edge: side.allowance for side in outcome.value[0].draft.pieces[0].ring if side.outside}
    assert all(
        any(
            runs_along(stroke_of(cut), moved_side(stroke_of(edge), float(width)))
            for cut in outcome.value[0].templates[0].cut
        )
        for edge, width in sides.items()
    )
