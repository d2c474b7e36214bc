"""Cutting a plan's cloth by its printed numbers alone: slices in order, sizes and counts. Inches.

This program path knows nothing of how the plan was made. It cuts simulated rectangles, and says what came
out.
"""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from math import cos, radians, sin

from piecewright.cutting.handling import JoinStrips
from piecewright.cutting.plan_model import ClothPlan, Cut, CuttingPlan, FabricPlan, PlacedCut
from shapely import STRtree, intersection
from shapely.affinity import scale, translate
from shapely.geometry import Polygon
from shapely.geometry import box as rectangle

Rectangle = tuple[Fraction, Fraction, Fraction, Fraction]
JOIN = Fraction(1, 2)  # inches: 1/4in of seam from each of two strips
OVER = (0, 2, Fraction(500, 254))  # inches of every joined strip that are there to trim; 5cm; or none, where
# the cut has them already
SNAP = 1e-7  # inches: without it GEOS 3.14 calls two outlines that share a side to within 1e-16in one
LYING_OVER = 1e-4  # square inches


def cut_cloth(cloth: ClothPlan) -> list[Rectangle]:
    """The pieces of cloth that the slices leave. Every slice runs from edge to edge of one piece."""
    whole = (Fraction(0), Fraction(0), Fraction(cloth.width), Fraction(cloth.length))
    pieces = [whole]
    for number, each in enumerate(cloth.slices, 1):
        assert each.order == number, "cuts are numbered in the order they are made"
        region = tuple(Fraction(side) for side in each.region)
        assert region in pieces, f"cut {number} is of a piece that is not there: {region}"
        pieces.remove(region)
        left, top, right, bottom = region
        if each.axis == "across":
            parts = [(left, top, right, top + each.at), (left, top + each.at, right, bottom)]
        else:
            parts = [(left, top, left + each.at, bottom), (left + each.at, top, right, bottom)]
        pieces += [part for part in parts if part[0] < part[2] and part[1] < part[3]]
    return pieces


def outline_of(cut: Cut, placed: PlacedCut) -> Polygon:
    """A placed template's outline on the cloth."""
    turn = complex(cos(radians(placed.turned)), sin(radians(placed.turned)))
    places = [complex(-x if placed.reversed else x, y) * turn for x, y in cut.outline]
    shape = Polygon([(place.real, place.imag) for place in places])
    return translate(shape, float(placed.left) - shape.bounds[0], float(placed.top) - shape.bounds[1])


def replay(plan: CuttingPlan, fabric: FabricPlan) -> Counter[int]:
    """How many pieces of each cut come out, with every check on the way."""
    made: Counter[int] = Counter()
    strips: dict[int, list[Fraction]] = {}
    for cloth in fabric.cloths:
        pieces = cut_cloth(cloth)
        on_cloth: dict[Rectangle, list[Polygon]] = {}
        for placed in cloth.placed:
            cut = plan.cuts[placed.cut]
            if cut.outline:
                shape = outline_of(cut, placed)
                inside = [
                    piece
                    for piece in pieces
                    if scale(rectangle(*map(float, piece)), 1 + 1e-6, 1 + 1e-6).covers(shape)
                ]
                assert inside, f"a template of {cut.template or cut.kind} lies on no piece of cloth"
                on_cloth.setdefault(inside[0], []).append(shape)
                made[placed.cut] += 1
                continue
            spot = (placed.left, placed.top, placed.left + placed.width, placed.top + placed.height)
            assert spot in pieces, f"no piece of cloth is cut out at {spot}"
            pieces.remove(spot)
            sides = sorted([placed.width, placed.height])
            if cut.joined:
                strips.setdefault(placed.cut, []).append(
                    sides[1] if sides[0] == cut.strip or cut.strip is None else sides[0]
                )
                assert min(cut.width, cut.height) in sides
                continue
            wanted = [cut.width, cut.height] if not placed.turned else [cut.height, cut.width]
            assert [placed.width, placed.height] == wanted, f"{spot} is not {wanted}"
            made[placed.cut] += cut.yields
        for shapes in on_cloth.values():
            _apart(shapes)
    for at, lengths in strips.items():
        made[at] += _joined(plan.cuts[at], lengths)
    return made


def _joined(cut: Cut, lengths: list[Fraction]) -> int:
    """Pieces that strips joined end to end give, as they are joined: straight or on the slant, which
    takes as much as they are wide, and so much over in each; of a binding, its strips."""
    if cut.part == "binding":
        return len(lengths)
    assert len(lengths) == cut.joined
    join_strips = cut.then[0]
    assert isinstance(join_strips, JoinStrips) and join_strips.over in OVER
    join = min(cut.width, cut.height) if join_strips.slanted else JOIN
    whole = sum(lengths) - join * (len(lengths) - 1)
    return int(whole / (max(cut.width, cut.height) + join_strips.over))


def _apart(shapes: list[Polygon]) -> None:
    tree = STRtree(shapes)
    for one, two in zip(*tree.query(shapes), strict=True):
        if one < two:
            shared = intersection(shapes[one], shapes[two], grid_size=SNAP)
            assert shared.area < LYING_OVER, "templates lie over each other"
