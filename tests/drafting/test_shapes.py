"""Pieces become one shape exactly where a quilter could cut them from one template."""

from __future__ import annotations

from cmath import exp, phase
from fractions import Fraction
from math import cos, pi, sin, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.drafting.model import Piece
from piecewright.drafting.shapes import carry, match_shapes, shape_label, symmetries
from piecewright.geometry.stroke import stroke_of
from support.random_pieces import moved, pieces_of, star_polygons

CLOSE = 2e-5  # inches; the brute force's own tolerance, far under any ruler


def brute_force(one: Piece, other: Piece, mirror: bool) -> list[float]:
    """Every turn that carries one onto the other, by trying each corner of one on each of the other."""
    first = _outline(one, mirror)
    second = _outline(other, False)
    found = []
    for shift in range(len(second)):
        if len(first) != len(second):
            break
        rolled = second[shift:] + second[:shift]
        (a, b), (c, d) = (first[0][0], first[1 % len(first)][0]), (rolled[0][0], rolled[1 % len(rolled)][0])
        if abs(abs(b - a) - abs(d - c)) > CLOSE:
            continue
        turn = phase((d - c) / (b - a))
        if all(
            abs((p - a) * exp(1j * turn) + c - q) < CLOSE
            and abs((m - a) * exp(1j * turn) + c - n) < CLOSE
            and w == v
            for (p, m, w), (q, n, v) in zip(first, rolled, strict=True)
        ):
            found.append(turn * 180 / pi % 360)
    return found


def _outline(piece: Piece, mirror: bool) -> list[tuple[complex, complex, Fraction]]:
    strokes = [(stroke_of(side.edge), side.allowance) for side in piece.ring]
    if mirror:
        return [(-s.end.conjugate(), -s.at(0.5).conjugate(), w) for s, w in reversed(strokes)]
    return [(s.start, s.at(0.5), w) for s, w in strokes]


def numbered(*pieces: Piece) -> tuple[Piece, ...]:
    return tuple(
        Piece(at + 1, *[getattr(p, f) for f in ("name", "fabric", "ring", "holes", "area", "inside")])
        for at, p in enumerate(pieces)
    )


def only(corners: list[tuple], **options: object) -> Piece:
    return pieces_of([corners], **options)[0]  # type: ignore[arg-type]


def lands_on(piece: Piece, first: Piece, transform: object) -> bool:
    """Whether the carried outline covers the piece's: each corner and side middle has a partner."""
    carried = [transform(stroke_of(s.edge).at(t)) for s in first.ring for t in (0.0, 0.5)]  # type: ignore
    wanted = [stroke_of(s.edge).at(t) for s in piece.ring for t in (0.0, 0.5)]
    return all(min(abs(p - q) for q in wanted) < CLOSE for p in carried) and len(carried) == len(wanted)


SCALENE = [(0, 0), (5, 0), (1, 2)]
SQUARE = [(0, 0), (2, 0), (2, 2), (0, 2)]
RECTANGLE = [(0, 0), (3, 0), (3, 2), (0, 2)]
ISOSCELES = [(0, 0), (4, 0), (2, 3)]
EQUILATERAL = [(0, 0), (4, 0), (2, 2 * sqrt(3))]
PARALLELOGRAM = [(0, 0), (3, 0), (4, 2), (1, 2)]
KITE = [(0, 0), (1, -1), (4, 0), (1, 1)]
HEXAGON = [(cos(k * pi / 3), sin(k * pi / 3)) for k in range(6)]
QUARTER_ROUND = [(0, 0), (3, 0, (0, 0), True), (0, 3)]
LEAF = [(0, 0, (0, 3), True), (3, 3, (3, 0), True)]
BLADE = [(0, 0), (3, 0, (0, 0), True), (0, 3, (0, 1.5), False)]
CIRCLE = [(3, 0, (0, 0), True)]
HALVES = [(3, 0, (0, 0), True), (-3, 0, (0, 0), True)]


@pytest.mark.parametrize(
    ("corners", "reversible", "turns"),
    [
        (SCALENE, False, 1),
        (SQUARE, True, 4),
        (RECTANGLE, True, 2),
        (ISOSCELES, True, 1),
        (EQUILATERAL, True, 3),
        (PARALLELOGRAM, False, 2),
        (KITE, True, 1),
        (HEXAGON, True, 6),
        (QUARTER_ROUND, True, 1),
        (LEAF, True, 2),
        (BLADE, False, 1),
        (CIRCLE, True, 1),
        (HALVES, True, 1),
    ],
    ids=[
        "scalene",
        "square",
        "rectangle",
        "isosceles",
        "equilateral",
        "parallelogram",
        "kite",
        "hexagon",
        "quarter round",
        "leaf",
        "blade",
        "circle",
        "circle in halves",
    ],
)
@pytest.mark.parametrize("turned", [0, 37, 90, 211.5])
@pytest.mark.parametrize("mirror", [False, True])
def test_a_moved_copy_is_the_same_shape_and_lands_where_it_lies(corners, reversible, turns, turned, mirror):
    first = only(corners)
    copy = moved(first, turned, mirror, (11.3, -2.25), 2)
    (shape,) = match_shapes((first, copy))
    assert (shape.reversible, shape.turns) == (reversible, turns)
    assert shape.members[1].reversed == (mirror and not reversible)
    if corners in (CIRCLE, HALVES):  # lands upon itself any way round
        assert shape.members[1].turned == 0
        return
    assert lands_on(copy, first, carry(shape, (first, copy), shape.members[1]))
    assert shape.members[1].turned < 360 / turns - 1e-6


@settings(max_examples=60, deadline=None)
@given(st.lists(star_polygons(3, 6, 12), min_size=2, max_size=4), st.floats(0, 360), st.booleans())
def test_classes_agree_with_brute_force_over_all_turns_and_mirrors(rings, turned, mirror):
    originals = [only(ring) for ring in rings]
    copies = [moved(piece, turned, mirror, (3, 40), 0) for piece in originals]
    pieces = numbered(*originals, *copies)
    shapes = match_shapes(pieces)
    home = {member.piece: (shape, member) for shape in shapes for member in shape.members}
    assert sorted(home) == [piece.number for piece in pieces]
    for one in pieces:
        for other in pieces:
            turns, mirrors = brute_force(one, other, False), brute_force(one, other, True)
            assert (home[one.number][0] is home[other.number][0]) == bool(turns or mirrors)
    for shape in shapes:
        first = pieces[shape.members[0].piece - 1]
        assert shape.reversible == bool(brute_force(first, first, True))
        assert shape.turns == len(brute_force(first, first, False))
        for member in shape.members:
            turns = brute_force(first, pieces[member.piece - 1], member.reversed)
            assert any(abs((turn - member.turned + 180) % 360 - 180) < 1e-3 for turn in turns)
            assert lands_on(pieces[member.piece - 1], first, carry(shape, pieces, member))


def curved(ring: list[tuple], bends: list[int]) -> list[tuple]:
    """The polygon with some sides bent to arcs whose centre is a side's length off the chord."""
    made = []
    for at, corner in enumerate(ring):
        after = ring[(at + 1) % len(ring)]
        a, b = complex(*corner), complex(*after)
        bend = bends[at % len(bends)]
        if bend == 0:
            made.append(corner)
            continue
        center = (a + b) / 2 + (b - a) * 1j * bend
        made.append((*corner, (center.real, center.imag), bend > 0))
    return made


@settings(max_examples=60, deadline=None)
@given(
    star_polygons(3, 6, 12),
    st.lists(st.sampled_from([-1, 0, 1]), min_size=1, max_size=3),
    st.floats(0, 360),
    st.booleans(),
)
def test_curved_sides_agree_with_brute_force(ring, bends, turned, mirror):
    first = only(curved(ring, bends))
    straight = only(ring)
    pieces = numbered(first, moved(first, turned, mirror, (-7, 5), 0), straight)
    shapes = match_shapes(pieces)
    assert len(shapes) == (2 if any(bends[at % len(bends)] for at in range(len(ring))) else 1)
    assert shapes[0].reversible == bool(brute_force(first, first, True))
    assert shapes[0].turns == len(brute_force(first, first, False))
    assert lands_on(pieces[1], first, carry(shapes[0], pieces, shapes[0].members[1]))


def test_a_sixty_fourth_of_an_inch_makes_another_shape():
    near = only([(0, 0), (5, 0), (1, 2 + 1 / 64)])
    assert [len(shape.members) for shape in match_shapes(numbered(only(SCALENE), near))] == [1, 1]


def test_a_float_s_rounding_does_not_make_another_shape():
    shaken = only([(1e-7, 0), (5, -1e-7), (1, 2)])
    (shape,) = match_shapes(numbered(only(SCALENE), shaken))
    assert len(shape.members) == 2


def test_sizes_that_straddle_a_shelf_are_still_one_shape():
    """Squares whose corners lie just on either side of every step that sizes are looked up by."""
    for step in range(1, 40):
        side = step / 256 * sqrt(2)
        under, over = side - 4e-7, side + 4e-7
        squares = [only([(0, 0), (s, 0), (s, s), (0, s)]) for s in (under, over)]
        assert len(match_shapes(numbered(*squares))) == 1


def test_a_wider_allowance_makes_another_shape():
    wide = only(SQUARE, allowance=Fraction(1, 2))
    assert len(match_shapes(numbered(only(SQUARE), wide))) == 2


def test_an_edge_of_wider_allowance_takes_a_shape_s_mirror_line_away():
    """A rectangle with one wide end can still be turned over; with a wide end and a wide side it cannot."""
    plain = only(RECTANGLE)

    def widened(*wide: int) -> Piece:
        ring = tuple(
            type(s)(s.edge, s.parts, Fraction(1, 2) if at in wide else s.allowance)
            for at, s in enumerate(plain.ring)
        )
        return Piece(1, None, "dark", ring, (), 6, plain.inside)

    assert match_shapes((widened(1),))[0].reversible
    assert not match_shapes((widened(0, 1),))[0].reversible


def test_a_side_split_by_a_corner_of_the_outline_is_one_side():
    """The block's outline may end along a piece's side; the cloth has no corner there."""
    split = only([(0, 0), (1, 0), (2, 0), (2, 2), (0, 2)])
    (shape,) = match_shapes(numbered(only(SQUARE), split))
    assert len(shape.members) == 2


def test_holes_count():
    """Frames match when turned with their windows, and not where the window has moved."""
    frame = [(0, 0), (6, 0), (6, 6), (0, 6)]
    window = [(1, 1), (2, 1), (2, 2), (1, 2)]
    other = [(4, 1), (5, 1), (5, 2), (4, 2)]
    middle = [(2.5, 2.5), (3.5, 2.5), (3.5, 3.5), (2.5, 3.5)]
    framed = [pieces_of([frame], holes={0: [hole]})[0] for hole in (window, other, middle)]
    shapes = match_shapes(numbered(*framed))
    assert [[member.piece for member in shape.members] for shape in shapes] == [[1, 2], [3]]
    assert (shapes[0].turns, shapes[1].turns) == (1, 4)
    assert shapes[0].members[1].turned == 90


def test_a_disc_with_a_window_turns_with_its_window():
    disc = [(3, 0, (0, 0), True)]
    windows = [[(1, 1), (2, 1), (2, 2), (1, 2)], [(-1, 1), (-2, 1), (-2, 2), (-1, 2)]]
    discs = [pieces_of([disc], holes={0: [hole]})[0] for hole in windows]
    (shape,) = match_shapes(numbered(*discs))
    assert shape.members[1].turned == 90
    assert not shape.members[1].reversed and shape.reversible


def test_the_lowest_numbered_piece_letters_the_shapes():
    pieces = numbered(*(only(c) for c in (SCALENE, SQUARE, SCALENE, KITE, SQUARE)))
    shapes = match_shapes(pieces)
    assert [(shape.label, [member.piece for member in shape.members]) for shape in shapes] == [
        ("A", [1, 3]),
        ("B", [2, 5]),
        ("C", [4]),
    ]


def test_letters_go_on_after_z():
    assert [shape_label(at) for at in (0, 25, 26, 27, 51, 52, 701, 702)] == [
        "A",
        "Z",
        "AA",
        "AB",
        "AZ",
        "BA",
        "ZZ",
        "AAA",
    ]


def test_symmetries_of_an_equilateral_triangle_are_its_six():
    assert [turned for turned, over in symmetries(only(EQUILATERAL)) if not over] == [0, 120, 240]
    assert len(symmetries(only(EQUILATERAL))) == 6


def test_a_mirrored_scalene_triangle_is_the_reverse():
    mirror = only([(-x, y) for x, y in SCALENE])
    (shape,) = match_shapes(numbered(only(SCALENE), mirror))
    assert [(member.turned, member.reversed) for member in shape.members] == [(0, False), (0, True)]
