"""Every library block's pieces: allowance outlines against pyclipper, trims, marks and areas."""

from __future__ import annotations

from math import pi, sin

import pytest
from piecewright.cutting.templates.allowance import outset_rings
from piecewright.cutting.templates.corners import moved_side
from piecewright.cutting.templates.laying import lay, template_cuts, template_marks
from piecewright.cutting.templates.making import make_templates
from piecewright.cutting.templates.neighbourhood import neighbourhoods
from piecewright.cutting.templates.outlines import Outlines
from piecewright.cutting.templates.trimming import Trims, reach
from piecewright.geometry.stroke import doubled_area, stroke_of
from shapely.geometry import LineString, Point, Polygon
from support.clipper import apart, clipper_outset, flat
from support.library import compiled, library_sources

NEEDLE = 0.2  # radians: the mitre of a sharper point between curves is all over the place
PRINTED = 0.001  # inches: the promised tolerance

FILES = library_sources()


def drafts(source):
    return [block.draft for block in compiled(source).value or () if not block.from_elsewhere]


def has_needle(outlines, number):
    """Whether a corner of the piece is as good as a cusp."""
    rings = outlines.rings(number)
    keys = [(number, ring, at) for ring in range(len(rings)) for at in range(len(rings[ring]))]
    return any(corner and corner.angle < NEEDLE for corner in map(outlines.corner, keys))


def curved_tips(outlines, number):
    """Discs round the corners of curved sides, somewhat larger than the mitres there."""
    found = []
    for ring, sides in enumerate(outlines.rings(number)):
        for at in range(len(sides)):
            corner = outlines.corner((number, ring, at))
            if corner and (corner.before.stroke.center is not None or corner.after.stroke.center is not None):
                mitre = corner.after.allowance / max(sin(min(corner.angle, pi) / 2), NEEDLE / 2)
                found.append(Point(corner.at.real, corner.at.imag).buffer(1.5 * mitre + 0.1))
    return found


@pytest.mark.parametrize("source", FILES, ids=[source.name for source in FILES])
def test_every_piece_s_allowance_agrees_with_clipper(source):
    """Outside check: pyclipper's mitred offset of the same finished outline. A curved side's end is carried
    on round its circle by us and along its last chord there, so the tips of curved corners are left out, and
    of a piece with a cusp only the middles of its sides are compared."""
    seen = set()
    for draft in drafts(source):
        outlines = Outlines(draft.pieces)
        for shape in draft.shapes:
            rings = outlines.rings(shape.members[0].piece)
            widths = {side.allowance for ring in rings for side in ring}
            assert len(widths) == 1, "the library's own allowances are even"
            (width,) = widths
            ours = [
                flat(each, 1e-6)
                for ring in rings
                for each in outset_rings([s.stroke for s in ring], [s.allowance for s in ring]).rings
            ]
            sewn = [flat([side.stroke for side in ring], 1e-6) for ring in rings]
            theirs = clipper_outset(sewn, width)
            tips = curved_tips(outlines, shape.members[0].piece)
            seen.add(shape.label)
            if not tips:
                assert apart(ours, theirs) < PRINTED
                continue
            middles = [
                moved_side(s.stroke, s.allowance).at(share / 8)
                for ring in rings
                for s in ring
                for share in (3, 4, 5)
            ]
            lines = [LineString([*ring, ring[0]]) for ring in theirs]
            assert all(min(line.distance(Point(p.real, p.imag)) for line in lines) < PRINTED for p in middles)
            if has_needle(outlines, shape.members[0].piece):
                continue
            for some, others in ((ours, theirs), (theirs, ours)):
                lines = [LineString([*ring, ring[0]]) for ring in others]
                clear = [p for ring in some for p in ring if not any(tip.contains(Point(p)) for tip in tips)]
                assert all(min(line.distance(Point(p)) for line in lines) < PRINTED for p in clear)
    assert seen


@pytest.mark.parametrize("source", FILES, ids=[source.name for source in FILES])
def test_both_cut_edges_of_every_seam_end_together(source):
    """SOURCES 3.5: trimmed for their own neighbours, two pieces' edges match at the seam's ends."""
    for draft in drafts(source):
        outlines = Outlines(draft.pieces)
        trims = Trims(outlines, draft.trim)
        for piece in draft.pieces:
            for ring, sides in enumerate(outlines.rings(piece.number)):
                for at in range(len(sides)):
                    corner = outlines.corner((piece.number, ring, at))
                    for after in (False, True):
                        other = corner and outlines.neighbour(corner, after)
                        theirs = other and outlines.corner(other)
                        if not theirs or max(corner.angle, theirs.angle) >= pi:
                            continue
                        if corner.sharp or theirs.sharp:
                            mine = reach(corner, after, trims.cuts((piece.number, ring, at)))
                            other_end = reach(theirs, not after, trims.cuts(other))
                            assert mine == pytest.approx(other_end, abs=PRINTED)


@pytest.mark.parametrize("source", FILES, ids=[source.name for source in FILES])
def test_pieces_that_lie_alike_need_the_same_of_their_template(source):
    """Working out one piece of each neighbourhood comes to what working out every piece does."""
    for draft in drafts(source):
        trims = Trims(Outlines(draft.pieces), draft.trim)
        alike = neighbourhoods(draft)
        for shape in draft.shapes:
            some = lay(draft, shape, trims, alike)
            every = lay(draft, shape, trims, range(len(draft.pieces)))
            assert len(every.pieces) == len(shape.members) >= len(some.pieces)
            assert some.grain.arrows() == every.grain.arrows()
            assert template_cuts(some, trims) == template_cuts(every, trims)
            assert len(template_marks(some, trims, None)) == len(template_marks(every, trims, None))


@pytest.mark.parametrize("source", FILES, ids=[source.name for source in FILES])
def test_templates_cover_the_block_once(source):
    """Finished areas times counts are the block's area, and every piece is on one template."""
    for draft in drafts(source):
        templates = make_templates(draft).value
        total = sum(
            len(template.pieces)
            * sum(
                doubled_area([stroke_of(edge) for edge in ring]) / 2
                for ring in (template.sew, *template.sew_holes)
            )
            for template in templates
        )
        assert total == pytest.approx(doubled_area([stroke_of(edge) for edge in draft.outline]) / 2, abs=1e-4)
        numbers = sorted(number for template in templates for number in template.pieces)
        assert numbers == [piece.number for piece in draft.pieces]
        assert sum(t.cut_count + t.reversed_count for t in templates) == len(draft.pieces)
        assert all(t.reversed_count == 0 for t in templates if t.reversible)


@pytest.mark.parametrize("source", FILES, ids=[source.name for source in FILES])
def test_the_allowance_is_whole_beside_every_straight_seam(source):
    """Between the corners of each side the trimmed outline has all the cloth that the untrimmed has."""
    for draft in drafts(source):
        for shape, template in zip(draft.shapes, make_templates(draft).value, strict=True):
            rings = Outlines(draft.pieces).rings(shape.members[0].piece)
            trimmed = Polygon(flat([stroke_of(edge) for edge in template.cut]))
            whole = Polygon(
                flat(outset_rings([s.stroke for s in rings[0]], [s.allowance for s in rings[0]]).rings[0])
            )
            for side in rings[0]:
                if side.stroke.center is None:
                    across = side.stroke.direction(0) * -1j * side.allowance
                    start, end = side.stroke.start, side.stroke.end
                    strip = Polygon([(p.real, p.imag) for p in (start, end, end + across, start + across)])
                    kept = trimmed.buffer(1e-6, join_style="mitre")
                    assert strip.intersection(whole).difference(kept).area < 1e-6
