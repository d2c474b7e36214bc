"""The library's stars, hexagons, strips, houses, trees, letters, borders and curves: clean, credited, right.

Names: Marie D. Webster, Quilts: Their Story and How to Make Them, 1915, "List of Quilt Names" (Project
Gutenberg 24682); and Nebraska State Historical Society, Quilts A to Z. Neither proves a draft: those are
common practice, no published source, unless a test names one.
"""

from __future__ import annotations

from itertools import pairwise
from math import acos, degrees, hypot, isclose, pi, sqrt

import pytest
from piecewright.drafting.model import Draft
from support.library import compiled, library_sources
from support.webster import is_in_webster

FOLDERS = {
    "eight-pointed-star": {"eight-pointed-star"},
    "hexagon": {"hexagon"},
    "strip": {"strip"},
    "house-and-basket": {"house", "basket", "boat", "flower"},
    "border": {"pieced-border", "sashing-unit"},
    "letter": {"letter", "numeral"},
    "tree-and-flower": {"tree", "leaf", "flower"},
    "curved-seam": {"curved-seam"},
}
SOURCES = [source for source in library_sources() if source.name.split("/")[0] in FOLDERS]
NAMES = [source.name for source in SOURCES]

NEBRASKA = {"Mill Wheel"}

# Blocks that are set on their corner.
BASKETS = ("Basket Quilt", "Cactus Basket", "Cake Stand", "Cherry Basket")
BASKETS += ("Fruit Basket", "Flower Pot", "Grape Basket", "Colonial Basket")
FLOWERS = ("Pine Tree", "Autumn Leaf", "Lily", "Carolina Lily")


def own_drafts(source) -> list[Draft]:
    return [block.draft for block in compiled(source).value or () if not block.from_elsewhere]


def draft_of(title: str) -> Draft:
    found = [draft for source in SOURCES for draft in own_drafts(source) if draft.title == title]
    assert len(found) == 1
    return found[0]


def fabrics(draft: Draft, name: str) -> list[str]:
    return [piece.fabric for piece in draft.pieces if piece.name == name]


def shape_of(draft: Draft, name: str):
    """The one shape that all pieces of that name, and no others, have."""
    numbers = {piece.number for piece in draft.pieces if piece.name == name}
    found = [shape for shape in draft.shapes if numbers & {member.piece for member in shape.members}]
    assert len(found) == 1
    assert {member.piece for member in found[0].members} == numbers
    return found[0]


def side_lengths(draft: Draft, name: str) -> list[float]:
    return [side.edge.length for piece in draft.pieces if piece.name == name for side in piece.ring]


def angle_at(draft: Draft, piece: int, corner: tuple[float, float]) -> float:
    """The piece's angle at a corner, in degrees, by the law of cosines."""
    ring = [side.edge for side in draft.pieces[piece - 1].ring]
    for before, after in zip([ring[-1], *ring[:-1]], ring, strict=True):
        if abs(after.start.x - corner[0]) < 1e-6 and abs(after.start.y - corner[1]) < 1e-6:
            across = hypot(after.end.x - before.start.x, after.end.y - before.start.y)
            a, b = before.length, after.length
            return degrees(acos((a * a + b * b - across * across) / (2 * a * b)))
    raise AssertionError("the piece has no such corner")


# ---- every block ------------------------------------------------------------------------------------------


def test_there_is_a_shelf_of_them():
    assert len(SOURCES) >= 110
    assert {name.split("/")[0] for name in NAMES} == set(FOLDERS)


@pytest.mark.parametrize("source", SOURCES, ids=NAMES)
def test_nothing_is_said_of_it(source):
    outcome = compiled(source)
    assert outcome.value and outcome.diagnostics == ()


@pytest.mark.parametrize("source", SOURCES, ids=NAMES)
def test_it_states_its_family_and_its_credit(source):
    for draft in own_drafts(source):
        assert set(draft.family) <= FOLDERS[source.name.split("/")[0]] | {"unit"} and draft.family
        assert draft.notes[0].startswith("Traditional")
        assert "Draft: common practice" in draft.notes[0]


@pytest.mark.parametrize("source", SOURCES, ids=NAMES)
def test_its_name_is_as_old_as_it_says(source):
    for draft in own_drafts(source):
        if "Webster 1915" in draft.notes[0]:
            assert is_in_webster(draft.title) or any(map(is_in_webster, draft.also))
        elif "Quilts A to Z" in draft.notes[0]:
            assert draft.title in NEBRASKA
        else:
            assert "no published source" in draft.notes[0]


@pytest.mark.parametrize("source", SOURCES, ids=NAMES)
def test_its_file_is_called_after_its_title(source):
    title = own_drafts(source)[0].title
    slug = title.lower().replace("'", "").replace(" ", "-")
    assert source.name.split("/")[1] == f"{slug}.block"


@pytest.mark.parametrize("source", SOURCES, ids=NAMES)
def test_it_has_no_maker_for_it_is_everyone_s(source):
    assert all(draft.maker == "" for draft in own_drafts(source))


# ---- eight-pointed stars ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "title, point, across",
    [
        ("Eight-pointed Star", "diamond", 1),
        ("Star of Bethlehem", "tip", 2),
        ("Rising Sun", "last", 3),
    ],
)
def test_a_star_s_block_is_its_diamond_s_side_times_3_4142(title, point, across):
    """The trade's rule, derived: block = side x (2 + sqrt 2). `across`: diamonds along a point's side."""
    draft = draft_of(title)
    sides = side_lengths(draft, point)
    assert len(sides) == 32
    assert all(isclose(side * across * (2 + sqrt(2)), float(draft.width), rel_tol=1e-9) for side in sides)


@pytest.mark.parametrize(
    "title, name, count, angle",
    [
        ("Eight-pointed Star", "diamond", 8, 45),
        ("Star of Bethlehem", "heart", 8, 45),
        ("Rising Sun", "heart", 8, 45),
        ("Rolling Star", "star", 8, 45),
        ("Star of the East", "lit", 8, 22.5),
        ("Rocky Road to Kansas", "wedge", 8, 45),
        ("Spider's Web", "hub", 6, 60),
        ("Six-pointed Star", "star", 6, 60),
    ],
)
def test_the_points_fill_the_circle_about_the_center(title, name, count, angle):
    draft = draft_of(title)
    center = (float(draft.width) / 2, float(draft.height) / 2)
    angles = [angle_at(draft, piece.number, center) for piece in draft.pieces if piece.name == name]
    assert angles == pytest.approx([angle] * count)
    around = sum(
        angle_at(draft, piece.number, center)
        for piece in draft.pieces
        if any(
            abs(side.edge.start.x - center[0]) + abs(side.edge.start.y - center[1]) < 1e-6
            for side in piece.ring
        )
    )
    assert around == pytest.approx(360)


def test_the_small_star_of_bethlehem_has_32_diamonds_of_one_template():
    """Smithsonian National Museum of American History, National Quilt Collection: a quilt of fourteen-inch
    stars, each pieced of 32 diamonds."""
    draft = draft_of("Star of Bethlehem")
    assert float(draft.width) == 14
    diamonds = [shape for shape in draft.shapes if len(shape.members) == 32]
    assert len(diamonds) == 1 and diamonds[0].reversible
    assert len(draft.pieces) == 32 + 4 + 4


def test_the_rising_sun_has_72_diamonds_of_one_template():
    draft = draft_of("Rising Sun")
    assert [len(shape.members) for shape in draft.shapes if len(shape.members) > 4] == [72]


def test_the_rolling_star_has_one_diamond_and_its_squares_have_the_same_side():
    draft = draft_of("Rolling Star")
    assert sorted(len(shape.members) for shape in draft.shapes) == [4, 8, 16]
    sides = side_lengths(draft, "star") + side_lengths(draft, "square") + side_lengths(draft, "outer")
    assert sides == pytest.approx([float(draft.width) / (2 + 2 * sqrt(2))] * 96)


def test_the_octagon_s_eight_sides_are_equal():
    sides = side_lengths(draft_of("Octagon"), "octagon")
    assert sides == pytest.approx([6 / (1 + sqrt(2))] * 8)


def test_the_carpenter_s_wheel_is_32_diamonds_and_20_squares_of_one_side():
    draft = draft_of("Carpenter's Wheel")
    assert sorted(len(shape.members) for shape in draft.shapes) == [8, 20, 32]
    sides = [side.edge.length for piece in draft.pieces if len(piece.ring) == 4 for side in piece.ring]
    assert sides == pytest.approx([16 / (4 + 2 * sqrt(2))] * 208)


# ---- hexagons ---------------------------------------------------------------------------------------------


def test_a_honeycomb_is_seven_hexagons_of_one_template():
    draft = draft_of("Honeycomb")
    hexagons, diamonds = sorted(draft.shapes, key=lambda shape: -len(shape.members))
    assert len(hexagons.members) == 7 and hexagons.turns == 6 and hexagons.reversible
    assert len(diamonds.members) == 6
    assert side_lengths(draft, "petal") + side_lengths(draft, "heart") == pytest.approx([2] * 42)


@pytest.mark.parametrize("title, count", [("Variegated Diamonds", 27), ("Six-pointed Star", 12)])
def test_sixty_degree_diamonds_are_all_one_template(title, count):
    draft = draft_of(title)
    assert [len(shape.members) for shape in draft.shapes] == [count]


def test_seven_sisters_are_42_diamonds_of_one_template():
    draft = draft_of("Seven Sisters")
    assert len(fabrics(draft, "heart") + fabrics(draft, "ray")) == 42
    star = max(draft.shapes, key=lambda shape: len(shape.members))
    assert {piece.number for piece in draft.pieces if piece.name in ("heart", "ray")} <= {
        member.piece for member in star.members
    }


def test_a_flower_of_nineteen_hexagons_lies_in_its_path():
    draft = draft_of("Grandmother's Flower Garden")
    whole = max(draft.shapes, key=lambda shape: len(shape.members))
    assert len(whole.members) == 19 and whole.turns == 6
    assert len(fabrics(draft, "petal")) == 6 and len(fabrics(draft, "outer-petal")) == 12


def test_the_sides_of_hexagon_nine_patches_and_triangles_of_jack_s_chain_are_one_length():
    draft = draft_of("Jack's Chain")
    assert side_lengths(draft, "middle") + side_lengths(draft, "gap") == pytest.approx([3] * 24)
    assert side_lengths(draft, "link") + side_lengths(draft, "side") == pytest.approx([1] * 216)


def test_thousand_pyramids_are_sixteen_triangles_of_one_template():
    assert [len(shape.members) for shape in draft_of("Thousand Pyramids").shapes] == [16]


def test_the_boxes_are_lit_from_above():
    """Of each box's three faces the highest is light, the rightmost medium, the leftmost dark."""
    draft = draft_of("Variegated Diamonds")
    boxes = [piece for piece in draft.pieces if piece.fabric != "background"]
    kinds = {"light": [], "medium": [], "dark": []}
    for piece in boxes:
        ring = [side.edge.start for side in piece.ring]
        upright = [abs(a.x - b.x) < 1e-6 for a, b in zip(ring, ring[1:] + ring[:1], strict=True)]
        slant = sum(
            (b.y - a.y) / (b.x - a.x)
            for a, b in zip(ring, ring[1:] + ring[:1], strict=True)
            if abs(a.x - b.x) > 1e-6
        )
        kinds[piece.fabric].append((sum(upright), slant > 1e-6, slant < -1e-6))
    assert kinds["light"] == [(0, False, False)] * 7
    assert kinds["medium"] == [(2, False, True)] * 7
    assert kinds["dark"] == [(2, True, False)] * 7


def test_a_hexagon_is_as_high_as_two_sides_and_as_wide_as_its_flats():
    draft = draft_of("Honeycomb")
    assert float(draft.height) == pytest.approx(12)
    assert float(draft.width) == pytest.approx(6 * sqrt(3))


# ---- strips -----------------------------------------------------------------------------------------------


def test_each_log_laps_the_last_and_light_faces_dark_across_the_hearth():
    draft = draft_of("Log Cabin")
    logs = [piece for piece in draft.pieces if piece.fabric != "hearth"]
    assert len(logs) == 16
    lengths = sorted(max(side.edge.length for side in log.ring) for log in logs)
    assert lengths == [1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9]
    for log in logs:
        above_the_diagonal = log.inside.x + log.inside.y < 9
        assert log.fabric == ("light" if above_the_diagonal else "dark")


def test_courthouse_steps_have_like_logs_opposite_and_look_the_same_mirrored():
    draft = draft_of("Courthouse Steps")
    logs = [piece for piece in draft.pieces if piece.fabric != "hearth"]
    across = sorted(float(log.area) for log in logs if log.fabric == "light")
    down = sorted(float(log.area) for log in logs if log.fabric == "dark")
    assert across == [3, 3, 5, 5, 7, 7, 9, 9] and down == [1, 1, 3, 3, 5, 5, 7, 7]


def test_no_joint_of_the_brickwork_stands_over_another():
    draft = draft_of("Brickwork Quilt")
    joints = {}
    for piece in draft.pieces:
        left, top = min((side.edge.start.x, side.edge.start.y) for side in piece.ring)
        joints.setdefault(top, set()).add(left)
    rows = [joints[top] - {0} for top in sorted(joints)]
    assert len(rows) == 4
    assert all(not above & below for above, below in pairwise(rows))


def test_every_tumbler_is_one_shape_and_every_half_is_half_of_it():
    draft = draft_of("The Tumbler")
    whole = [piece for piece in draft.pieces if piece.name in ("upright", "upside-down")]
    halves = [piece for piece in draft.pieces if piece.name == "half"]
    assert sorted(len(shape.members) for shape in draft.shapes) == [len(halves), len(whole)] == [4, 6]
    assert {piece.area for piece in whole} == {12} and {piece.area for piece in halves} == {6}


def test_pineapple_strips_are_all_three_quarters_of_an_inch_wide():
    draft = draft_of("Pineapple")
    for piece in draft.pieces:
        if piece.name in ("straight", "slanting") and len(piece.ring) == 4:
            long = sorted((side.edge.length for side in piece.ring), reverse=True)
            inner, outer = long[0], _parallel_to(piece, long[0])
            assert float(piece.area) / ((inner + outer) / 2) == pytest.approx(0.75)
    assert len(fabrics(draft, "straight")) == len(fabrics(draft, "slanting")) == 16


def _parallel_to(piece, longest: float) -> float:
    """The length of the side opposite the longest."""
    lengths = [side.edge.length for side in piece.ring]
    return lengths[(lengths.index(longest) + 2) % 4]


def test_geese_fly_up_on_one_side_and_down_on_the_other():
    draft = draft_of("Wild Goose Chase")
    by_column = sorted(draft.units, key=lambda unit: (unit.box[0], unit.box[1]))
    assert [unit.turned for unit in by_column] == [0] * 4 + [180] * 4


# ---- houses and baskets -----------------------------------------------------------------------------------


@pytest.mark.parametrize("title", BASKETS + FLOWERS)
def test_a_basket_or_flower_stands_evenly_on_its_corner(title):
    """Mirrored in the diagonal, every fabric covers what it covered: the two sides balance."""
    draft = draft_of(title)
    seen = sorted(
        (piece.fabric, sorted((_thousandths(at.x), _thousandths(at.y)) for at in _corners(piece)))
        for piece in draft.pieces
    )
    mirrored = sorted((fabric, sorted((y, x) for x, y in corners)) for fabric, corners in seen)
    assert seen == mirrored


def _corners(piece) -> list:
    return [side.edge.start for side in piece.ring]


def _thousandths(length) -> int:
    return round(float(length) * 1000)


def test_the_cherry_basket_s_handle_is_one_inch_wide_all_round():
    draft = draft_of("Cherry Basket")
    (handle,) = [piece for piece in draft.pieces if piece.name == "handle"]
    radii = sorted(side.edge.arc.radius for side in handle.ring if side.edge.arc)
    assert radii == pytest.approx([2.5, 3.5])
    assert float(handle.area) == pytest.approx(pi * (3.5**2 - 2.5**2) / 2)


def test_jack_s_house_has_a_door_two_windows_and_two_chimneys():
    draft = draft_of("Jack's House")
    lit = sorted(float(piece.area) for piece in draft.pieces if piece.fabric == "light")
    assert lit == [3, 3, 8]
    smoke = [piece for piece in draft.pieces if piece.fabric == "medium" and piece.inside.y < 1]
    assert len(smoke) == 2


# ---- curved seams -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "source",
    [each for each in SOURCES if each.name.startswith("curved-seam/")],
    ids=[name for name in NAMES if name.startswith("curved-seam/")],
)
def test_curves_stay_arcs_that_pass_through_their_ends(source):
    for draft in own_drafts(source):
        arcs = [side.edge for piece in draft.pieces for side in piece.ring if side.edge.arc]
        assert arcs
        for edge in arcs:
            for end in (edge.start, edge.end):
                apart = sqrt((end.x - edge.arc.center.x) ** 2 + (end.y - edge.arc.center.y) ** 2)
                assert apart == pytest.approx(edge.arc.radius, abs=1e-6)


def test_the_drunkard_s_path_is_sixteen_patches_of_two_templates():
    draft = draft_of("Drunkard's Path")
    assert [len(shape.members) for shape in draft.shapes] == [16, 16]
    assert sorted(float(piece.area) for piece in draft.pieces) == pytest.approx([pi] * 16 + [9 - pi] * 16)
    assert sorted(fabrics(draft, "pie")) == ["dark"] * 8 + ["light"] * 8


def test_a_peel_is_the_overlap_of_two_quarter_circles():
    draft = draft_of("Orange Peel")
    peels = [float(piece.area) for piece in draft.pieces if piece.name == "peel"]
    assert peels == pytest.approx([2 * pi * 4**2 / 4 - 4**2] * 4)
    assert len(shape_of(draft, "flesh").members) == 8


def test_what_peter_loses_paul_gains():
    draft = draft_of("Robbing Peter to Pay Paul")
    cloth = {
        role: sum(float(piece.area) for piece in draft.pieces if piece.fabric == role)
        for role in ("dark", "light")
    }
    assert cloth["dark"] == pytest.approx(cloth["light"]) == pytest.approx(32)
    slices = [
        side.edge for piece in draft.pieces if piece.name == "slice" for side in piece.ring if side.edge.arc
    ]
    assert len(slices) == 16 and all(abs(edge.sweep) == pytest.approx(pi / 2) for edge in slices)


def test_six_blades_of_15_degrees_make_a_quarter_fan():
    draft = draft_of("Fanny's Fan")
    blades = shape_of(draft, "blade")
    assert len(blades.members) == 6 and blades.reversible
    (ground,) = [piece for piece in draft.pieces if piece.name == "ground"]
    (curve,) = [side.edge for side in ground.ring if side.edge.arc]
    assert abs(curve.sweep) == pytest.approx(pi / 2) and curve.arc.radius == pytest.approx(8)
    assert sum(float(piece.area) for piece in draft.pieces) == pytest.approx(81)


def test_an_apple_core_is_a_four_inch_square_by_area():
    """What two of its sides bulge the other two give back."""
    (core,) = draft_of("Apple Core").pieces
    assert float(core.area) == pytest.approx(16)
    assert [abs(side.edge.sweep) for side in core.ring] == pytest.approx([pi / 2] * 4)


def test_the_mariner_s_compass_has_sixteen_points_about_a_rim():
    draft = draft_of("Mariner's Compass")
    points = ("great-lit", "great-shade", "second-lit", "second-shade", "third")
    assert [len(fabrics(draft, name)) for name in points] == [4, 4, 4, 4, 8]
    rim = [
        side.edge for piece in draft.pieces if piece.name == "corner" for side in piece.ring if side.edge.arc
    ]
    assert [abs(edge.sweep) for edge in rim] == pytest.approx([pi / 2] * 4)
    assert [edge.arc.radius for edge in rim] == pytest.approx([6] * 4)
    assert len(shape_of(draft, "gap").members) == 16


@pytest.mark.parametrize("title, blade", [("Double Wedding Ring", "blade"), ("Pickle Dish", "tooth")])
def test_every_arc_of_a_wedding_ring_has_six_alike(title, blade):
    draft = draft_of(title)
    assert len(fabrics(draft, "melon")) == 4
    assert len(shape_of(draft, blade).members) == 4 * 2 * 6


def test_a_shell_is_as_large_as_half_its_square():
    """Half a circle above, and what two quarter circles leave below: half of 4in x 4in."""
    assert float(draft_of("Clamshell").pieces[0].area) == pytest.approx(8)


def test_the_dresden_plate_has_sixteen_blades_with_round_ends():
    draft = draft_of("Dresden Plate")
    assert len(shape_of(draft, "blade").members) == 16
    blade = next(piece for piece in draft.pieces if piece.name == "blade")
    assert sum(side.edge.arc is not None for side in blade.ring) == 2


def test_a_cactus_basket_holds_half_an_eight_pointed_star():
    draft = draft_of("Cactus Basket")
    sides = side_lengths(draft, "outer-petal") + side_lengths(draft, "inner-petal")
    assert sides == pytest.approx([8 / (2 + sqrt(2))] * 16)


def test_hearts_and_gizzards_give_each_other_their_petals():
    draft = draft_of("Hearts and Gizzards")
    cloth = {
        role: sum(float(piece.area) for piece in draft.pieces if piece.fabric == role)
        for role in ("dark", "light")
    }
    assert cloth["dark"] == pytest.approx(cloth["light"]) == pytest.approx(32)
    assert sorted(len(shape.members) for shape in draft.shapes) == [8, 16]


@pytest.mark.parametrize(
    "title", ["Fool's Puzzle", "Falling Timbers", "Wonder of the World", "Vine of Friendship"]
)
def test_sixteen_patches_of_two_templates_turn_into_other_blocks(title):
    draft = draft_of(title)
    assert [len(shape.members) for shape in draft.shapes] == [16, 16]
    assert float(draft.width) == float(draft.height) == 12


def test_twenty_petals_make_a_friendship_ring():
    assert len(shape_of(draft_of("Friendship Ring"), "petal").members) == 20


# ---- letters and borders ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "source",
    [each for each in SOURCES if each.name.startswith("letter/")],
    ids=[name for name in NAMES if name.startswith("letter/")],
)
def test_letters_stand_ten_inches_high_in_two_cloths(source):
    for draft in own_drafts(source):
        assert float(draft.height) == 10
        assert {piece.fabric for piece in draft.pieces} == {"dark", "background"}


@pytest.mark.parametrize(
    "title", ["Sawtooth Border", "Dogtooth Border", "Diamond Border", "Hourglass Border", "Chequer Border"]
)
def test_a_border_joins_on_to_itself(title):
    """Both ends are cut straight, and what stands at the right end matches what stands at the left."""
    draft = draft_of(title)
    heights = {0.0: set(), float(draft.width): set()}
    for piece in draft.pieces:
        for corner in _corners(piece):
            for end, seen in heights.items():
                if isclose(corner.x, end, abs_tol=1e-6):
                    seen.add(_thousandths(corner.y))
    left, right = heights.values()
    assert {0, _thousandths(draft.height)} <= left and left == right


def test_four_star_sashings_and_a_post_make_a_star_of_eight_points():
    """Each point is a right triangle with both short sides half as long as the strip is wide."""
    tips = shape_of(draft_of("Star Sashing"), "tip")
    assert len(tips.members) == 4
    areas = [float(piece.area) for piece in draft_of("Star Sashing").pieces if piece.name == "tip"]
    assert areas == pytest.approx([0.5] * 4)
