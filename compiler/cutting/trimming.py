"""Points trimmed so that a trimmed end meets the neighbour's edge: the straight cuts of every sharp corner.

Two pieces are laid right sides together and sewn along s. At the seam's end v the neighbour, mirrored across
s, has its next side t at an angle `phi` to s, and its cut edge lies the allowance beyond t. What sticks out
of this piece past that edge is trimmed away, so the two ends lie on each other:

      cut edge of the mirrored neighbour
      |   t (phi = 90deg here: a square sewn to a triangle's leg)
      |   :   .
      |   : .  the piece, theta = 45deg
      |   v------------- s
      |
      '-----------------  cut edges along s

Where the neighbour runs on past v, or s lies on the block's outside, the next piece along that line decides
the end, and the square cut above is where both meet. Where no neighbour is blunter (the middle of a star),
the tip is cut square across. All cuts stay clear of the allowance beside the seams themselves.

Inches; places are complex numbers (see drafting.stroke).
"""

from __future__ import annotations

from cmath import exp
from collections.abc import Sequence
from fractions import Fraction
from math import cos, pi, sin
from typing import Final, NamedTuple

from ..drafting.model import Piece, TrimRule
from ..drafting.stroke import WholeSide, turn_between, whole_sides
from ..measure.tolerance import NEAR
from .allowance import BLUNT, CUSP, Cut

SHARP: Final = pi / 2 - 1e-4
"""Radians. Points sharper than this are trimmed; a right angle with a float's rounding is not."""

SAME_ANGLE: Final = 1e-5
"""Radians. A neighbour's point no blunter than this is the same point: its edge lies on this piece's own."""

NEEDLE: Final = Fraction(2)
"""Inches beyond the finished point where even `trim none` cuts: no cloth holds in a longer needle. A 22.5deg
point reaches 1.28in and is left whole."""


class Corner(NamedTuple):
    """A piece's corner between two sides, the ring it is on and its place there."""

    at: complex
    before: WholeSide
    after: WholeSide

    @property
    def turned(self) -> float:
        """Radians that the outline turns clockwise here."""
        return turn_between(self.before.stroke, self.after.stroke)

    @property
    def angle(self) -> float:
        """Radians of cloth at the corner: over pi at an inner corner."""
        return pi - self.turned


class Outlines:
    """Whole sides and trims of a draft's pieces, found once each and kept."""

    def __init__(self, pieces: Sequence[Piece], rule: TrimRule) -> None:
        self.pieces = pieces
        self.rule = rule
        self._rings: dict[int, tuple[tuple[WholeSide, ...], ...]] = {}
        self._cuts: dict[tuple[int, int, int], tuple[Cut, ...]] = {}

    def rings(self, number: int) -> tuple[tuple[WholeSide, ...], ...]:
        """The whole sides of a piece: the outer ring, then its holes."""
        found = self._rings.get(number)
        if found is None:
            piece = self.pieces[number - 1]
            found = tuple(whole_sides(ring) for ring in (piece.ring, *piece.holes))
            self._rings[number] = found
        return found

    def corner(self, number: int, ring: int, at: int) -> Corner:
        """The corner where a side starts."""
        sides = self.rings(number)[ring]
        return Corner(sides[at].stroke.start, sides[at - 1], sides[at])

    def is_sharp(self, number: int, ring: int, at: int) -> bool:
        """Whether a corner is pointed enough to be trimmed."""
        return len(self.rings(number)[ring]) > 1 and self.corner(number, ring, at).angle < SHARP

    def nearest_corner(self, number: int, place: complex) -> tuple[int, int]:
        """The ring and the place on it of the piece's corner nearest to a place."""
        rings = self.rings(number)
        keys = ((ring, at) for ring in range(len(rings)) for at in range(len(rings[ring])))
        return min(keys, key=lambda key: abs(rings[key[0]][key[1]].stroke.start - place))

    def own_cuts(self, number: int, ring: int, at: int) -> tuple[Cut, ...]:
        """The cuts of a sharp corner by its neighbours' edges; square across where those leave it long."""
        key = (number, ring, at)
        found = self._cuts.get(key)
        if found is None:
            corner = self.corner(number, ring, at)
            edges = (self._neighbour_s_edge(corner, False), self._neighbour_s_edge(corner, True))
            matched = [cut for cut in edges if cut]
            found = _with_square(corner, matched, self.rule)
            self._cuts[key] = found
        return found

    def cuts(self, number: int, ring: int, at: int) -> tuple[Cut, ...]:
        """The cuts of any corner under the draft's rule, in the block's directions."""
        if not self.is_sharp(number, ring, at):
            return ()
        corner = self.corner(number, ring, at)
        if self.rule.style == "none":
            return (square_cut(corner, NEEDLE),)
        if self.rule.style == "square":
            return (square_cut(corner, self.rule.limit),)
        found = list(self.own_cuts(number, ring, at))
        for after in (False, True):
            found += self._neighbour_s_cuts(corner, after, found)
        return tuple(found)

    def _neighbour(self, corner: Corner, after: bool) -> tuple[int, int, int] | None:
        """The neighbour's corner at the end of the seam; None where it runs on or there is none."""
        side = corner.after if after else corner.before
        number = (side.parts[0] if after else side.parts[-1]).neighbour
        if number is None:
            return None
        along = _into(corner, after)
        for ring, sides in enumerate(self.rings(number)):
            for at, other in enumerate(sides):
                if abs(other.stroke.start - corner.at) > 2 * NEAR:
                    continue
                theirs = _into(Corner(corner.at, sides[at - 1], other), not after)
                if abs(theirs - along) < SAME_ANGLE * 10:
                    return number, ring, at
        return None

    def _neighbour_s_edge(self, corner: Corner, after: bool) -> Cut | None:
        """The mirrored neighbour's cut edge at the end of one seam, where it is blunter than this piece."""
        found = self._neighbour(corner, after)
        if found is None:
            side = corner.after if after else corner.before
            return _cut_along(corner, after, pi / 2, side.allowance)
        theirs = self.corner(*found)
        if not corner.angle + SAME_ANGLE < theirs.angle < pi - SAME_ANGLE:
            return None
        beyond = theirs.after if after else theirs.before
        return _cut_along(corner, after, theirs.angle, beyond.allowance)

    def _neighbour_s_cuts(self, corner: Corner, after: bool, own: Sequence[Cut]) -> list[Cut]:
        """The neighbour's own cuts mirrored across the seam, where they spoil neither allowance here nor the
        end of the piece's other seam."""
        found = self._neighbour(corner, after)
        if found is None or self.corner(*found).angle >= SHARP:
            return []
        along = _into(corner, after)
        kept = []
        for cut in self.own_cuts(*found):
            mirrored = Cut(along * along * cut.normal.conjugate(), cut.distance)
            spoils = reach(corner, not after, (mirrored,)) < reach(corner, not after, own) - NEAR
            if _clearance(corner, mirrored.normal) <= mirrored.distance + NEAR and not spoils:
                kept.append(mirrored)
        return kept


def _into(corner: Corner, after: bool) -> complex:
    """The unit vector from the corner along the side after it or before it."""
    return corner.after.stroke.direction(0) if after else -corner.before.stroke.direction(1)


def _aside(corner: Corner, after: bool) -> complex:
    """From the corner straight across the allowance to the cut line of the side after it or before it."""
    side = corner.after if after else corner.before
    along = side.stroke.direction(0) if after else side.stroke.direction(1)
    return along * -1j * side.allowance


def _cut_along(corner: Corner, after: bool, angle: float, allowance: float) -> Cut:
    """The cut beyond a line from the corner at an angle to one side, moved out where it would take cloth from
    the allowance of the piece's own seams (their widths may differ)."""
    round_to_cloth = 1j if after else -1j
    ray = _into(corner, after) * exp(round_to_cloth * angle)
    normal = ray * round_to_cloth
    return Cut(normal, max(allowance, _clearance(corner, normal)))


def _clearance(corner: Corner, normal: complex) -> float:
    """The least distance of a cut with that normal that leaves the allowance beside both seams whole."""
    across = (_aside(corner, False), _aside(corner, True))
    return max((place * normal.conjugate()).real for place in across)


def square_cut(corner: Corner, limit: Fraction) -> Cut:
    """The cut straight across the tip, at a distance beyond the finished point or as near as the allowance
    beside both seams lets it come."""
    outward = -(_into(corner, False) + _into(corner, True))
    normal = outward / abs(outward)
    return Cut(normal, max(float(limit), _clearance(corner, normal)))


def reach(corner: Corner, after: bool, cuts: Sequence[Cut]) -> float:
    """Inches that the cut edge of a side runs on beyond the finished corner after the cuts."""
    furthest = mitre_reach(corner, after)
    back, aside = -_into(corner, after), _aside(corner, after)
    for cut in cuts:
        slope = (back * cut.normal.conjugate()).real
        if slope > NEAR:
            furthest = min(furthest, (cut.distance - (aside * cut.normal.conjugate()).real) / slope)
    return furthest


def mitre_reach(corner: Corner, after: bool) -> float:
    """Inches that the cut edge of a side runs on beyond a sharp corner before it is trimmed."""
    turned = min(corner.turned, BLUNT)
    own, other = (corner.after, corner.before) if after else (corner.before, corner.after)
    found = (other.allowance - own.allowance * cos(turned)) / sin(turned)
    return min(found, CUSP) if corner.turned >= BLUNT else found


def _with_square(corner: Corner, matched: Sequence[Cut], rule: TrimRule) -> tuple[Cut, ...]:
    """The matched cuts, and a square one where an end still reaches further than the limit.

    An end as long as the allowance is wide is what a square sewn to it has: that is never too long.
    """
    enough = max(float(rule.limit), corner.before.allowance, corner.after.allowance) + NEAR
    if max(reach(corner, after, matched) for after in (False, True)) <= enough:
        return tuple(matched)
    return (*matched, square_cut(corner, rule.limit))


def common_cuts(corner: Corner, choices: Sequence[tuple[Cut, ...]]) -> tuple[Cut, ...]:
    """The cuts that leave what every choice leaves: the straight-sided outline round all the trimmed tips."""
    distinct = _distinct(choices)
    if len(distinct) < 2:
        return distinct[0] if distinct else ()
    aside = (_aside(corner, False), _aside(corner, True))
    tip = aside[0] - _into(corner, False) * mitre_reach(corner, False)
    places = [place for cuts in distinct for place in _clipped([aside[0], tip, aside[1]], cuts)]
    hull = _hull([0j, *aside, *places])
    found = []
    for start, end in zip(hull, [*hull[1:], hull[0]], strict=True):
        normal = (end - start) / abs(end - start) * -1j
        distance = (start * normal.conjugate()).real
        on_side = any(
            abs((place * normal.conjugate()).real - distance) <= NEAR
            and abs((tip * normal.conjugate()).real - distance) <= NEAR for place in aside
        )
        if distance > NEAR and not on_side:
            found.append(Cut(normal, distance))
    return tuple(found)


def _distinct(choices: Sequence[tuple[Cut, ...]]) -> list[tuple[Cut, ...]]:
    kept: list[tuple[Cut, ...]] = []
    for cuts in choices:
        if not any(_same_cuts(cuts, other) for other in kept):
            kept.append(cuts)
    return kept


def _same_cuts(one: Sequence[Cut], other: Sequence[Cut]) -> bool:
    return len(one) == len(other) and all(
        any(abs(cut.normal - each.normal) <= NEAR and abs(cut.distance - each.distance) <= NEAR
            for each in other)
        for cut in one
    )


def _clipped(chain: list[complex], cuts: Sequence[Cut]) -> list[complex]:
    """The open chain of places, about the corner, with what lies beyond each cut replaced by the cut."""
    for cut in cuts:
        over = [(place * cut.normal.conjugate()).real - cut.distance for place in chain]
        kept: list[complex] = []
        for at, place in enumerate(chain):
            if at and (over[at - 1] > 0) != (over[at] > 0):
                share = over[at - 1] / (over[at - 1] - over[at])
                kept.append(chain[at - 1] + (place - chain[at - 1]) * share)
            if over[at] <= NEAR / 4:
                kept.append(place)
        chain = kept
    return chain


def _hull(places: Sequence[complex]) -> list[complex]:
    """The corners of the smallest convex outline round the places, clockwise as seen."""
    ordered = sorted(places, key=lambda place: (place.real, place.imag))

    def chain(row: Sequence[complex]) -> list[complex]:
        kept: list[complex] = []
        for place in row:
            while len(kept) > 1 and _turn(kept[-2], kept[-1], place) <= NEAR * NEAR:
                kept.pop()
            if not kept or abs(kept[-1] - place) > NEAR:
                kept.append(place)
        return kept

    return chain(ordered)[:-1] + chain(ordered[::-1])[:-1]


def _turn(a: complex, b: complex, c: complex) -> float:
    return ((b - a).conjugate() * (c - b)).imag
