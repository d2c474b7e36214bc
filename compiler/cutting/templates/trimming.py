"""Points trimmed so that a trimmed end meets the neighbour's edge: the straight cuts of every sharp corner.

Two pieces are laid right sides together and sewn along s. At the seam's end v the neighbour, mirrored across
s, has its next side t at an angle to s, and its cut edge lies the allowance beyond t. What sticks out of this
piece past that edge is trimmed away, so the two ends lie on each other:

      cut edge of the mirrored neighbour
      |   t (at 90deg here: a square sewn to a triangle's leg)
      |   :   .
      |   : .  the piece, 45deg
      |   v------------- s
      |
      E-----------------  cut edges along s

So every end of a seam has a target: how far both cut edges reach past v, to E. A neighbour of 90deg or more
is never trimmed, so its own mitre is the target. Between two points it is the shorter of what the two would
be trimmed to by their other neighbours, or square across where no neighbour is blunt (the middle of a star).
Where a side lies on the block's outside, or the neighbour runs on past v, the target is open, and the cut is
square to that side: there the next piece along the line ends so too. A corner is cut along its neighbours'
edges where that keeps both targets, else straight from one E to the other. All cuts stay clear of the
allowance beside the seams themselves.

Inches; places are complex numbers (see geometry.stroke).
"""

from __future__ import annotations

from cmath import exp
from collections.abc import Sequence
from fractions import Fraction
from math import pi
from typing import Final, NamedTuple

from ...drafting.model import TrimRule
from ...measure.tolerance import NEAR
from .corners import NEEDLE, Trim, mitre_reach
from .outlines import Corner, CornerKey, Outlines

UNTRIMMED: Final = Fraction(2)
"""Inches beyond the finished point where even `trim none` cuts: no cloth holds in a longer needle. A 22.5deg
point reaches 1.28in and is left whole."""


class End(NamedTuple):
    """What a corner meets at the end of one of its seams: the neighbour's edge there or the square cut that
    stands in for it, and the sharp neighbour's corner, if that is what lies there."""

    edge: Trim | None
    fixed: bool  # the neighbour is never trimmed: its edge is the target
    sharp: CornerKey | None


class Trims:
    """The cuts of a draft's corners, found once each and kept."""

    def __init__(self, outlines: Outlines, rule: TrimRule) -> None:
        self.outlines = outlines
        self.rule = rule
        self._cuts: dict[CornerKey, tuple[Trim, ...]] = {}

    def cuts(self, key: CornerKey) -> tuple[Trim, ...]:
        """The cuts of any corner, in the block's directions; none unless it is sharp."""
        cut = self._cuts.get(key)
        if cut is None:
            corner = self.outlines.corner(key)
            pointed = corner is not None and corner.sharp and any(corner.across)
            cut = self._corner_cuts(corner) if corner is not None and pointed else ()
            self._cuts[key] = cut
        return cut

    def _corner_cuts(self, corner: Corner) -> tuple[Trim, ...]:
        if self.rule.style == "none":
            return (square_cut(corner, UNTRIMMED),)
        if self.rule.style == "square":
            return (square_cut(corner, self.rule.limit),)
        return self._matched_cuts(corner)

    def _matched_cuts(self, corner: Corner) -> tuple[Trim, ...]:
        """The neighbours' edges where they keep both targets, and what else it takes to reach them."""
        ends = (self._end(corner, False), self._end(corner, True))
        targets = (self._target(corner, ends, False), self._target(corner, ends, True))
        kept = [
            cut
            for cut in self._usable_edges(ends)
            if all(_keeps(corner, after, cut, targets[after]) for after in (False, True))
        ]
        enough = self._enough(corner)
        if not kept or max(reach(corner, after, kept) for after in (False, True)) > enough:
            across = square_cut(corner, self.rule.limit)
            if all(_keeps(corner, after, across, targets[after]) for after in (False, True)):
                kept.append(across)
        wanted = [
            min(reach(corner, after, kept), enough if target is None else target)
            for after, target in zip((False, True), targets, strict=True)
        ]
        if any(reach(corner, after, kept) > wanted[after] + NEAR for after in (False, True)):
            kept.append(_chord(corner, wanted[0], wanted[1]))
        return tuple(kept)

    def _end(self, corner: Corner, after: bool) -> End:
        """What lies at the end of one seam of a sharp corner."""
        key = self.outlines.neighbour(corner, after)
        theirs = None if key is None else self.outlines.corner(key)
        if theirs is None or theirs.angle >= pi:
            return End(_cut_along(corner, after, pi / 2, corner.side(after).allowance), False, None)
        if theirs.sharp:
            return End(None, False, key)
        return End(_cut_along(corner, after, theirs.angle, theirs.side(after).allowance), True, None)

    def _usable_edges(self, ends: tuple[End, End]) -> list[Trim]:
        """The edges to cut along: a true neighbour's wherever there is one, before any that stands in."""
        true = [end.edge for end in ends if end.fixed and end.edge]
        return true or [end.edge for end in ends if end.edge]

    def _target(self, corner: Corner, ends: tuple[End, End], after: bool) -> float | None:
        """Inches past the corner where both cut edges of a seam are to end; None where it is open."""
        end = ends[after]
        if end.fixed and end.edge is not None:
            return max(0.0, reach(corner, after, (end.edge,)))
        if end.sharp is None:
            return None
        theirs = self.outlines.corner(end.sharp)
        assert theirs is not None, "a neighbour's corner was found and has no sides"
        own = self._natural_reach(corner, ends[not after], after)
        return min(own, self._natural_reach(theirs, self._end(theirs, after), not after))

    def _natural_reach(self, corner: Corner, other: End, after: bool) -> float:
        """How far past a sharp corner one cut edge would reach, trimmed only for the corner's other seam."""
        edges = (other.edge,) if other.edge else ()
        out = reach(corner, after, edges)
        if edges and max(out, reach(corner, not after, edges)) <= self._enough(corner):
            return out
        return min(out, reach(corner, after, (square_cut(corner, self.rule.limit),)))

    def _enough(self, corner: Corner) -> float:
        """Inches past the corner that are never too long: the limit, or the allowance's own width, which is
        what a square sewn to the piece has."""
        return max(float(self.rule.limit), corner.before.allowance, corner.after.allowance) + NEAR


def _keeps(corner: Corner, after: bool, cut: Trim, target: float | None) -> bool:
    """Whether a cut leaves the end of one seam at its target."""
    return target is None or reach(corner, after, (cut,)) >= target - NEAR


def _chord(corner: Corner, before: float, after: float) -> Trim:
    """The cut straight from one cut edge's end to the other's."""
    ends = (
        corner.aside(False) - corner.into(False) * before,
        corner.aside(True) - corner.into(True) * after,
    )
    normal = (ends[1] - ends[0]) / abs(ends[1] - ends[0]) * -1j
    return Trim(normal, (ends[0] * normal.conjugate()).real)


def _cut_along(corner: Corner, after: bool, angle: float, allowance: float) -> Trim:
    """The cut beyond a line from the corner at an angle to one side, moved out where it would take cloth from
    the allowance of the piece's own seams (their widths may differ)."""
    round_to_cloth = 1j if after else -1j
    ray = corner.into(after) * exp(round_to_cloth * angle)
    normal = ray * round_to_cloth
    return Trim(normal, max(allowance, _clearance(corner, normal)))


def _clearance(corner: Corner, normal: complex) -> float:
    """The least distance of a cut with that normal that leaves the allowance beside both seams whole."""
    across = (corner.aside(False), corner.aside(True))
    return max((place * normal.conjugate()).real for place in across)


def square_cut(corner: Corner, limit: Fraction) -> Trim:
    """The cut straight across the tip, at a distance beyond the finished point or as near as the allowance
    beside both seams lets it come."""
    outward = -(corner.into(False) + corner.into(True))
    normal = outward / abs(outward)
    return Trim(normal, max(float(limit), _clearance(corner, normal)))


def reach(corner: Corner, after: bool, cuts: Sequence[Trim]) -> float:
    """Inches that the cut edge of a side runs on beyond the finished corner after the cuts."""
    furthest = whole_reach(corner, after)
    back, aside = -corner.into(after), corner.aside(after)
    for cut in cuts:
        slope = (back * cut.normal.conjugate()).real
        if slope > NEAR:
            furthest = min(furthest, (cut.distance - (aside * cut.normal.conjugate()).real) / slope)
    return furthest


def whole_reach(corner: Corner, after: bool) -> float:
    """Inches that the cut edge of a side runs on beyond a sharp corner before it is trimmed."""
    own, other = corner.side(after).allowance, corner.side(not after).allowance
    return min(mitre_reach(corner.turned, own, other), NEEDLE * max(own, other))
