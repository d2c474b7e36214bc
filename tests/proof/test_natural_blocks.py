"""Random blocks as a quilter might draw them: each comes out or is refused at its own words, its templates
keep their allowance, and its steps are as large as what is sewn.

Outlines are held against shapely's unions and bounds. By hand and by the thousand:
`tests/benchmarks/bench_natural_blocks.py`.
"""

from __future__ import annotations

from cmath import phase
from collections import Counter
from collections.abc import Iterator
from functools import lru_cache

import pytest
from piecewright.drafting.model import Draft, Side
from piecewright.geometry.stroke import Stroke, stroke_of
from piecewright.pipeline import CompiledBlock
from piecewright.sewing.model import Unit
from shapely.geometry import Point, Polygon
from support.clipper import flat
from support.library import compiled, library_sources
from support.natural_blocks import compiled_text, natural_block, outcome_of

SEEDS = range(300)
FLAT = 0.002  # inches: what flattening takes off a curve
STEP = 3e-4  # inches: the chords of arcs lie so near to them
SAID = 0.0011  # inches: two sizes that print alike


@lru_cache(maxsize=1)
def sewn() -> tuple[tuple[int, CompiledBlock], ...]:
    found = []
    for seed in SEEDS:
        outcome = compiled_text(natural_block(seed))
        if outcome.value is not None:
            found.append((seed, outcome.value[0]))
    return tuple(found)


def test_every_natural_block_comes_out_or_is_refused_at_its_words():
    found: Counter[str] = Counter()
    for seed in SEEDS:
        what, failure = outcome_of(natural_block(seed))
        assert not failure, f"seed {seed}: {failure}\n{natural_block(seed)}"
        found[what] += 1
    assert found["sewn"] > len(SEEDS) // 3 and found["allowance-no-room"] > 3


def region(outer, holes) -> Polygon:
    return Polygon(
        flat([stroke_of(edge) for edge in outer], STEP),
        [flat([stroke_of(edge) for edge in hole], STEP) for hole in holes],
    ).buffer(0)


def test_every_template_keeps_the_allowance_beside_all_its_seams():
    """Where one allowance goes for the whole block: only inner curves that are as tight lose some of
    theirs."""
    tried = 0
    for seed, block in sewn():
        width = float(block.draft.allowance)
        sides = (side for piece in block.draft.pieces for ring in (piece.ring, *piece.holes) for side in ring)
        if any(side.allowance != block.draft.allowance for side in sides):
            continue
        for template in block.templates:
            cut = region(template.cut, template.cut_holes).buffer(FLAT)
            assert cut.contains(region(template.sew, template.sew_holes)), f"seed {seed}, {template.label}"
            for stroke in (stroke_of(edge) for ring in (template.sew, *template.sew_holes) for edge in ring):
                if stroke.sweep < 0 and stroke.radius <= width + FLAT:
                    continue
                for share in (0.1, 0.5, 0.9):
                    beside = stroke.at(share) + stroke.direction(share) * -1j * (width - FLAT)
                    assert cut.contains(Point(beside.real, beside.imag)), f"seed {seed}, {template.label}"
                    tried += 1
    assert tried > 2000


# ---- the sizes printed for each step ----------------------------------------------------------------------


def outer_sides(draft: Draft, unit: Unit) -> Iterator[tuple[Stroke, float]]:
    """Every stretch of the unit's outside, with its allowance, from the draft's pieces."""
    own = set(unit.pieces)
    for number in unit.pieces:
        piece = draft.pieces[number - 1]
        sides: tuple[Side, ...] = (*piece.ring, *(side for hole in piece.holes for side in hole))
        for side in sides:
            for part in side.parts:
                if part.neighbour not in own:
                    yield stroke_of(part.edge), float(side.allowance)


def frames(unit: Unit) -> list[complex]:
    """The directions that a ruler may lie along: the block's, where some straight edge of the unit does; else
    those of the longest straight edges that nothing of the unit reaches out beyond; where there is none, as
    round a star, the block's again."""
    straight = [stroke_of(edge) for edge in unit.outline if edge.arc is None]
    if any(abs(phase(each.direction(0) ** 4)) < 4e-4 for each in straight):
        return [1 + 0j]
    places = [complex(*place) for place in flat([stroke_of(edge) for edge in unit.outline], STEP)]
    sides = [
        each
        for each in straight
        if min(((place - each.start) / each.direction(0)).imag for place in places) > -SAID
    ]
    longest = max((each.length for each in sides), default=0.0)
    return [each.direction(0) for each in sides if longest - each.length < SAID] or [1 + 0j]


def box(draft: Draft, unit: Unit, across: complex) -> tuple[float, float, float, float]:
    """Width and height, finished and unfinished, of the pieces' flattened outlines so turned."""
    sides = [
        (Polygon(_turned(stroke, across)) if stroke.center else None, _turned(stroke, across), allowance)
        for stroke, allowance in outer_sides(draft, unit)
    ]
    found = []
    for axis in (0, 1):
        size = over = 0.0
        for sign in (1, -1):
            reach = max(sign * place[axis] for _, places, _ in sides for place in places)
            along = [
                allowance
                for bent, places, allowance in sides
                if bent is None and all(reach - sign * place[axis] < SAID for place in places)
            ]
            touching = [
                allowance
                for _, places, allowance in sides
                if any(reach - sign * place[axis] < SAID for place in places)
            ]
            size += reach
            over += max(along or touching)
        found.append((size, size + over))
    return found[0][0], found[1][0], found[0][1], found[1][1]


def _turned(stroke: Stroke, across: complex) -> list[tuple[float, float]]:
    """The chords of a stroke, both ends included, in the frame of a direction."""
    places = [complex(*place) for place in flat([stroke], STEP)] + [stroke.end]
    return [((place / across).real, (place / across).imag) for place in places]


def hold_sizes(block: CompiledBlock) -> int:
    """Holds every step's sizes against its unit's box; the number of sizes held."""
    for step, unit in zip(block.assembly.steps, block.assembly.units, strict=True):
        printed = (step.finished.width, step.finished.height, step.unfinished.width, step.unfinished.height)
        boxes = [box(block.draft, unit, across) for across in frames(unit)]
        assert any(printed == pytest.approx(each, abs=SAID) for each in boxes), (
            f"{block.draft.title}, step {step.step}: {printed}, not {boxes}"
        )
    return 4 * len(block.assembly.steps)


def test_every_step_of_natural_blocks_is_as_large_as_its_unit():
    assert sum(hold_sizes(block) for _, block in sewn()) > 1000


def test_every_step_of_the_library_is_as_large_as_its_unit():
    blocks = [block for source in library_sources() for block in compiled(source).value or ()]
    assert sum(hold_sizes(block) for block in blocks) > 3000


def test_a_wide_allowance_counts_along_its_own_side_only():
    """The upright edge lies along the unit's end and has 1/2in; the slanted one touches it, and has 1in."""
    outcome = compiled_text(
        'edition 1\nblock "Gable" {\n  finished 6in\n  seam top -- right\n  seam top-left -- bottom-right\n'
        "  allowance 1/2in\n  allowance 1in on top -- right\n}\n"
    )
    assert outcome.value is not None
    corner, *_ = outcome.value[0].assembly.steps
    assert hold_sizes(outcome.value[0]) and corner.unfinished.width > corner.finished.width


def test_a_seam_may_change_its_allowance_along_its_way():
    text = (
        'edition 1\nblock "Changing" {{\n  finished 6in\n  grid 2 x 2\n  seam A2 -- C2\n  seam B1 -- {}\n'
        "  allowance 1/2in on A2 -- B2\n}}\n"
    )
    for end in ("B2", "B3"):
        assert outcome_of(text.format(end)) == ("sewn", "")


PETALS = """edition 1
block "Petals" {
  finished 10in
  grid 4 x 4
  turn 12 about center {
    point rim = 1.875in from center at 0deg
    seam rim ~~ next rim through (0.5 from center to (1/2 from rim to next rim))
    seam center -- rim
  }
}
"""


def test_petals_that_touch_in_one_point_are_set_into_what_is_round_them():
    what, failure = outcome_of(PETALS)
    assert what == "sewn with warnings" and not failure


def test_a_curve_a_hair_longer_than_two_inches_is_pinned_as_it_is_told():
    """An arc of 2.00005in: an eighth of a circle and a little."""
    text = (
        'edition 1\nblock "Hair" {\n  finished 6in\n  seam (2.5465428in from top-left to top-right) ~~ '
        "(2.5465428in from top-left at 135deg) around top-left -- outline\n}\n"
    )
    assert outcome_of(text)[0].startswith("sewn")


def test_a_half_moon_under_a_wide_edge_keeps_its_allowance_to_the_end_of_its_seam():
    """The moon's cutting line, 1/8in outside its arc, curls back over the 1in beside the straight edge:
    carried on as a circle past the corner it would take cloth from that inch at the end of the seam."""
    text = (
        'edition 1\nblock "Half Moon" {\n  finished 4in\n  grid 6 x 6\n'
        "  seam (1.5, 0) ~~ (0, 0) through (0.75, 0.375)\n  allowance 1/8in\n  trim square 1/8in\n"
        "  allowance 1in on (0, 0) -- (6, 0)\n}\n"
    )
    assert outcome_of(text)[0].startswith("sewn")
    moon = compiled_text(text).value[0].templates[0]
    cut = Polygon([(edge.start.x, edge.start.y) for edge in moon.cut]).buffer(1e-6)
    assert cut.contains(Point(0, -1)) and cut.contains(Point(1, -1))
