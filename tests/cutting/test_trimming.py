"""Trimmed points line up with the neighbour they are sewn to, and keep all the allowance a seam needs."""

from __future__ import annotations

from fractions import Fraction
from math import pi, radians, sin, sqrt, tan

import pytest
from hypothesis import given, settings
from piecewright.cutting.templates.allowance import outset_rings
from piecewright.cutting.templates.making import make_templates
from piecewright.cutting.templates.outlines import Outlines
from piecewright.cutting.templates.trimming import Trims
from piecewright.drafting.model import TrimRule
from shapely.geometry import LineString, Point, Polygon
from support.clipper import flat
from support.random_pieces import draft_of, fan_rings, fans, pieces_of, star_rings

WIDTH = 0.25
CLOSE = 1e-6
PRINTED = 0.001  # inches: the promised tolerance


class Cut:
    """Pieces cut out one by one, each trimmed for its own neighbours."""

    def __init__(self, rings, rule=None, **options):
        self.pieces = pieces_of(rings, **options)
        self.outlines = Outlines(self.pieces)
        self.trims = Trims(self.outlines, rule or TrimRule())

    def outline(self, number, trimmed=True):
        sides = self.outlines.rings(number)[0]
        cuts = [self.trims.cuts((number, 0, at)) if trimmed else () for at in range(len(sides))]
        strokes, widths = [side.stroke for side in sides], [side.allowance for side in sides]
        return flat(outset_rings(strokes, widths, cuts).rings[0])

    def corners(self, number):
        return [self.outlines.corner((number, 0, at)) for at in range(len(self.outlines.rings(number)[0]))]

    def ends(self, number, at, after):
        """How far the cut edge of the side after or before a corner runs past it, in inches."""
        corner = self.outlines.corner((number, 0, at))
        along, outward = corner.into(after), corner.aside(after) / WIDTH
        reaches = [
            -((place - corner.at) * along.conjugate()).real
            for place in (complex(x, y) for x, y in self.outline(number))
            if abs(((place - corner.at) * outward.conjugate()).real - WIDTH) < CLOSE
        ]
        return max(reaches)


def seam_ends(cut):
    """Every end of every seam where both pieces have a corner and one at least is a trimmed point."""
    for piece in cut.pieces:
        for at in range(len(cut.outlines.rings(piece.number)[0])):
            corner = cut.outlines.corner((piece.number, 0, at))
            for after in (False, True):
                other = cut.outlines.neighbour(corner, after)
                if other is None:
                    continue
                theirs = cut.outlines.corner(other)
                if max(corner.angle, theirs.angle) < pi and (corner.sharp or theirs.sharp):
                    yield piece.number, at, after, other


@settings(max_examples=60, deadline=None)
@given(fans())
def test_both_cut_edges_of_a_seam_end_together(rings):
    """SOURCES 3.5 (Laurie Shifrin, "Those dreaded dog ears!"): the edges match at the ends of a seam, so the
    stitching line passes through the notch where the two pieces cross."""
    cut = Cut(rings)
    for number, at, after, other in seam_ends(cut):
        mine, theirs = cut.ends(number, at, after), cut.ends(other[0], other[2], not after)
        assert mine == pytest.approx(theirs, abs=PRINTED)


@settings(max_examples=60, deadline=None)
@given(fans())
def test_a_trim_takes_nothing_beside_the_seams(rings):
    """Along every side, as long as it is sewn, the allowance stays as wide as before."""
    cut = Cut(rings)
    for piece in cut.pieces:
        whole, trimmed = Polygon(cut.outline(piece.number, False)), Polygon(cut.outline(piece.number))
        assert taken(trimmed, whole).area < CLOSE
        for side in cut.outlines.rings(piece.number)[0]:
            assert taken(strip_beside(side).intersection(whole), trimmed).area < CLOSE


@settings(max_examples=60, deadline=None)
@given(fans())
def test_only_sharp_points_are_trimmed(rings):
    cut = Cut(rings)
    for piece in cut.pieces:
        away = taken(Polygon(cut.outline(piece.number, False)), Polygon(cut.outline(piece.number)))
        for bit in getattr(away, "geoms", [away]):
            if bit.area > CLOSE:
                middle = complex(bit.centroid.x, bit.centroid.y)
                assert any(_beyond(corner, middle) for corner in cut.corners(piece.number) if corner.sharp)


def _beyond(corner, place):
    """Whether a place lies past the ends of both sides of a corner."""
    away = place - corner.at
    return all((away * corner.into(after).conjugate()).real < CLOSE for after in (False, True))


def taken(whole, kept):
    """What of the whole is not kept, more than a hair's width from it: the two share most of their lines."""
    return whole.difference(kept.buffer(CLOSE, join_style="mitre"))


def strip_beside(side):
    """The allowance beside a side, as long as it is sewn."""
    across = side.stroke.direction(0) * -1j * side.allowance
    start, end = side.stroke.start, side.stroke.end
    return Polygon([(place.real, place.imag) for place in (start, end, end + across, start + across)])


HALF_SQUARES = [
    [(0, 0), (3, 0), (0, 3)],
    [(3, 0), (3, 3), (0, 3)],
    [(3, 0), (6, 0), (6, 3), (3, 3)],
    [(0, 3), (3, 3), (3, 6), (0, 6)],
]


def test_a_trimmed_half_square_triangle_fits_a_square():
    """Its cut leg is as long as the cut side of the square it is sewn to: 3 1/2in for 3in (common practice,
    no published source)."""
    cut = Cut(HALF_SQUARES)
    outline = cut.outline(2)
    ends = sorted(place for place in outline if abs(place[0] - 3.25) < CLOSE)
    assert ends == [pytest.approx((3.25, -0.25)), pytest.approx((3.25, 3.25))]
    assert (2.8964466094067265, -0.25) in [pytest.approx(place) for place in outline]


def test_a_triangle_on_the_block_s_edge_ends_where_its_twin_does():
    """The long seam of two half-square triangles: one beside squares, one on the block's outside."""
    cut = Cut(HALF_SQUARES)
    first, second = Polygon(cut.outline(1)), Polygon(cut.outline(2))
    from shapely.affinity import affine_transform

    turned = affine_transform(second, [0, -1, -1, 0, 3, 3])  # mirrored in the seam from (3, 0) to (0, 3)
    assert turned.symmetric_difference(first).area < CLOSE


def test_equal_points_in_the_middle_of_a_star_are_cut_square_across_at_the_limit():
    cut = Cut(star_rings(3))
    middle = Point(3 * (1 + sqrt(2) / 2), 3 * (1 + sqrt(2) / 2))
    for number in range(1, 9):
        near = [place for place in cut.outline(number) if Point(place).distance(middle) < 0.5]
        assert len(near) == 2
        assert LineString(near).distance(middle) == pytest.approx(0.25)
        assert Point(near[0]).distance(middle) == pytest.approx(Point(near[1]).distance(middle))


@pytest.mark.parametrize("limit", [Fraction(1, 8), Fraction(1, 4), Fraction(3, 8)])
def test_square_trims_stop_at_the_limit_beyond_every_point(limit):
    cut = Cut(fan_rings((3.0, 3.0), [0, 3, 6, 9, 12, 15, 18, 21]), TrimRule("square", limit))
    for piece in cut.pieces:
        for corner in cut.corners(piece.number):
            if corner.sharp:
                outward = -(corner.into(True) + corner.into(False))
                outward /= abs(outward)
                reach = max(
                    ((complex(x, y) - corner.at) * outward.conjugate()).real
                    for x, y in cut.outline(piece.number)
                )
                assert reach == pytest.approx(max(float(limit), WIDTH * sin(corner.angle / 2)))


def test_trim_none_leaves_the_mitres_but_no_needle():
    needle = [(0, 0), (6, 0), (6, 6 * tan(radians(5)))]
    whole = Cut([needle], TrimRule("none"))
    furthest = max(abs(complex(x, y)) for x, y in whole.outline(1) if x < 0)
    assert furthest == pytest.approx(2, abs=0.02)
    star = Cut(star_rings(3), TrimRule("none"))
    assert Polygon(star.outline(1)).symmetric_difference(Polygon(star.outline(1, False))).area < CLOSE


def test_a_wider_allowance_on_the_block_s_edge_keeps_its_width_at_the_points():
    """Points that end on an outside edge of 1/2in: the edge's own allowance is whole."""
    pieces = pieces_of(fan_rings((3.0, 3.0), [1, 4.5, 8, 13, 20]), outer_allowance=Fraction(1, 2))
    outlines = Outlines(pieces)
    trims = Trims(outlines, TrimRule())
    for piece in pieces:
        sides = outlines.rings(piece.number)[0]
        strokes, widths = [side.stroke for side in sides], [side.allowance for side in sides]
        whole = Polygon(flat(outset_rings(strokes, widths).rings[0]))
        cuts = [trims.cuts((piece.number, 0, at)) for at in range(len(sides))]
        trimmed = Polygon(flat(outset_rings(strokes, widths, cuts).rings[0]))
        for side in sides:
            assert taken(strip_beside(side).intersection(whole), trimmed).area < CLOSE


def test_one_template_for_unlike_neighbours_leaves_what_each_piece_needs():
    """The two triangles of a fan that is not even are one shape with different neighbours."""
    for spokes in ([0, 6, 12, 15, 18], [0, 3, 6, 12, 18], [0, 3, 6, 9, 12, 18, 21]):
        rings = fan_rings((3.0, 3.0), spokes)
        draft = draft_of(pieces_of(rings))
        alone = Cut(rings)
        for template in make_templates(draft).value:
            shared = Polygon([(float(e.start.x), float(e.start.y)) for e in template.cut])
            for number in template.pieces:
                assert shared.area >= Polygon(alone.outline(number)).area - CLOSE
            first = Polygon(alone.outline(template.pieces[0]))
            assert taken(first, shared).area < CLOSE


@settings(max_examples=25, deadline=None)
@given(fans())
def test_a_template_usable_either_side_up_is_cut_the_same_both_ways(rings):
    from piecewright.drafting.shapes import symmetries

    pieces = pieces_of(rings)
    for template in make_templates(draft_of(pieces)).value:
        outline = Polygon([(float(e.start.x), float(e.start.y)) for e in template.cut])
        if template.reversible:
            assert any(over for _, over in symmetries(pieces[template.pieces[0] - 1]))
            assert any(
                _mirrored(outline, pieces[template.pieces[0] - 1], turned).symmetric_difference(outline).area
                < 1e-5
                for turned, over in symmetries(pieces[template.pieces[0] - 1])
                if over
            )


def _mirrored(outline, piece, turned):
    from piecewright.drafting.congruence import figure_of
    from piecewright.geometry.pose import Pose

    mirror = Pose(turned, True).motion(figure_of(piece).origin)
    places = [mirror(complex(x, y)) for x, y in outline.exterior.coords]
    return Polygon([(place.real, place.imag) for place in places])
