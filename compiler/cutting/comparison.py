"""Two drafts of a block side by side: which templates may be kept, and how far outlines moved. Inches.

In: two drafts with their templates. Out: what became of every template of the older one, and where every
template of the newer one comes from. A template is the same where its sewing line, the allowance of every
side and its cutting line are, turned or turned over: then the plastic cut for it serves on. What is left over
is paired by place: the pieces that cover each other most in the block.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, Final, Literal

from ..drafting.congruence import Figure, figure_of, mirrored, turns_onto
from ..drafting.fingerprint import differ, fingerprint_of
from ..drafting.model import Draft, Piece
from ..geometry.curves import flattened
from ..geometry.edge import Edge
from ..geometry.pose import Pose
from ..measure.record import record
from ..measure.tolerance import NEAR
from .model import Template

Kind = Literal["same", "count", "changed", "new", "gone"]

CUT_ALIKE: Final = 1 / 1000
"""Inches between cutting lines that count as one: what is printed is true to that, and no pencil is finer."""

AREAS_ALIKE: Final = 1 / 1000
"""Square inches. Outlines that may be laid upon each other differ by far less."""

STEP: Final = 1 / 64
"""Inches between the places at which distances are taken, besides all corners. Between two of them a distance
is at most half of this greater; at the corners, where most are greatest, it is exact."""

COVERS: Final = 0.25
"""Share of the larger piece that two must have in common to be one piece, changed: half of it, and some."""


MOST_PARTS: Final = 400
"""Of one line, between the places at which distances are taken: one of over 6in is looked at less often."""


@record
class Side:
    """A drafted block with its templates."""

    draft: Draft
    templates: tuple[Template, ...]


@record
class Match:
    """What became of a template. `mirrored`: the old one serves turned over. `distance`: the farthest that a
    changed sewing line lies from the old one; `trimmed`: only its points are cut otherwise."""

    kind: Kind
    old: Template | None
    new: Template | None
    mirrored: bool = False
    distance: float = 0.0
    trimmed: bool = False


@record
class Comparison:
    """Two drafts of a block. `distance` is the farthest that a line of one lies from all lines of the other,
    both laid with their top left corners together."""

    old: Side
    new: Side
    matches: tuple[Match, ...]  # as the new templates are lettered, then those that are gone
    distance: float

    @property
    def redrawn(self) -> bool:
        """Whether an outline or an allowance changed."""
        return differ(fingerprint_of(self.old.draft), fingerprint_of(self.new.draft))

    @property
    def unversioned(self) -> bool:
        """Whether an outline changed and the version did not."""
        old, new = self.old.draft, self.new.draft
        return self.redrawn and (old.title, old.version) == (new.title, new.version)


def compare(old: Side, new: Side) -> Comparison:
    """What became of the old draft's templates."""
    kept = dict(_kept(old, new))
    left = [
        each
        for each in old.templates
        if each.label not in {match.old.label for match in kept.values() if match.old is not None}
    ]
    fresh = [each for each in new.templates if each.label not in kept]
    changed = {match.new.label: match for match in _changed(old, new, left, fresh) if match.new is not None}
    matches = [
        kept.get(each.label) or changed.get(each.label) or Match("new", None, each) for each in new.templates
    ]
    paired = {match.old.label for match in matches if match.old is not None}
    matches += [Match("gone", each, None) for each in old.templates if each.label not in paired]
    return Comparison(old, new, tuple(matches), _distance_of_drafts(old.draft, new.draft))


# ---- templates that stay ----------------------------------------------------------------------------------


def _kept(old: Side, new: Side) -> Iterator[tuple[str, Match]]:
    """The new templates, by letter, that an old one serves for; each old one serves once."""
    figures = [(each, _first(old, each)) for each in old.templates]
    for template in new.templates:
        first = _first(new, template)
        for place, (before, known) in enumerate(figures):
            if abs(float(known.area) - float(first.area)) > AREAS_ALIKE:
                continue
            match = _match(before, figure_of(known), template, figure_of(first))
            if match is not None:
                del figures[place]
                yield template.label, match
                break


def _first(side: Side, template: Template) -> Piece:
    """The piece that the template lies on."""
    return side.draft.pieces[template.pieces[0] - 1]


def _match(old: Template, figure: Figure, new: Template, onto: Figure) -> Match | None:
    """The match of two templates with one sewing line; None where that differs."""
    trimmed: Match | None = None
    for over in (False, True):
        for turned in turns_onto(mirrored(figure) if over else figure, onto):
            if _cut_alike(old, figure, new, onto, turned, over):
                kind: Kind = "same" if _counts(old) == _counts(new) else "count"
                return Match(kind, old, new, over)
            trimmed = trimmed or Match("changed", old, new, over, 0.0, trimmed=True)
    return trimmed


def _cut_alike(old: Template, figure: Figure, new: Template, onto: Figure, turned: float, over: bool) -> bool:
    """Whether the old cutting line, carried over as the sewing line is, lies on the new one."""
    carried = Pose(turned, over).motion(figure.origin, onto.origin)
    line = [carried(each) for each in _line(old.cut)]
    return distance_of([line], [_line(new.cut)]) <= CUT_ALIKE


def _counts(template: Template) -> tuple[int, int]:
    """How many are cut as drawn, and reversed."""
    return template.cut_count, template.reversed_count


# ---- templates that change --------------------------------------------------------------------------------


def _changed(old: Side, new: Side, left: Sequence[Template], fresh: Sequence[Template]) -> Iterator[Match]:
    """Pairs of templates whose pieces lie in one place, those that have most in common first."""
    taken_old: set[int] = set()
    taken_new: set[int] = set()
    for _, number, other in sorted((-share, *pair) for pair, share in _shares(old, new, left, fresh).items()):
        if number not in taken_old and other not in taken_new:
            taken_old.add(number)
            taken_new.add(other)
            yield Match(
                "changed", left[number], fresh[other], distance=_template_distance(left[number], fresh[other])
            )


def _shares(
    old: Side, new: Side, left: Sequence[Template], fresh: Sequence[Template]
) -> dict[tuple[int, int], float]:
    """For templates by their places in both lists: the greatest share that a piece of the one and a piece of
    the other have in common, of the larger; where it is COVERS or more."""
    from shapely import STRtree

    ones = [
        (number, _area_of(old.draft.pieces[piece - 1]))
        for number, each in enumerate(left)
        for piece in each.pieces
    ]
    others = [
        (number, _area_of(new.draft.pieces[piece - 1]))
        for number, each in enumerate(fresh)
        for piece in each.pieces
    ]
    tree = STRtree([area for _, area in others])
    shares: dict[tuple[int, int], float] = {}
    for number, area in ones:
        for near in tree.query(area):
            other, covered = others[near]
            share = area.intersection(covered).area / max(area.area, covered.area)
            if share >= COVERS:
                shares[number, other] = max(share, shares.get((number, other), 0.0))
    return shares


def _area_of(piece: Piece) -> Any:
    from shapely.geometry import Polygon

    rings = [
        [(p.real, p.imag) for p in _line([side.edge for side in ring])] for ring in (piece.ring, *piece.holes)
    ]
    return Polygon(rings[0], rings[1:])


def _template_distance(old: Template, new: Template) -> float:
    """The farthest that one sewing line lies from the other, as they lie or middle upon middle."""
    one, other = _line(old.sew), _line(new.sew)
    shift = _middle(other) - _middle(one)
    return min(distance_of([one], [other]), distance_of([[each + shift for each in one]], [other]))


def _middle(line: Sequence[complex]) -> complex:
    from shapely.geometry import Polygon

    middle = Polygon([(each.real, each.imag) for each in line]).centroid
    return complex(middle.x, middle.y)


# ---- distances --------------------------------------------------------------------------------------------


def _distance_of_drafts(old: Draft, new: Draft) -> float:
    """The farthest that a line of one draft lies from all of the other's; those of both need no looking."""
    before, after = _lines(old), _lines(new)
    moved = [line for key, line in before.items() if key not in after]
    drawn = [line for key, line in after.items() if key not in before]
    return max(_farthest(moved, list(after.values())), _farthest(drawn, list(before.values())))


def _lines(draft: Draft) -> dict[object, list[complex]]:
    """Every seam and the outline, each line once: by its ends and its middle, whichever way it runs."""
    lines: dict[object, list[complex]] = {}
    for piece in draft.pieces:
        for ring in (piece.ring, *piece.holes):
            for side in ring:
                line = _line([side.edge])
                ends = sorted((_rounded(line[0]), _rounded(line[-1])))
                lines.setdefault((*ends, _rounded(line[len(line) // 2]) if side.edge.arc else None), line)
    return lines


def _rounded(place: complex) -> tuple[int, int]:
    return round(place.real / NEAR), round(place.imag / NEAR)


def _line(edges: Sequence[Edge]) -> list[complex]:
    """The edges as chords, as near as arcs are flattened to draw."""
    points = [complex(float(p.x), float(p.y)) for edge in edges for p in flattened(edge)]
    last = edges[-1].end
    return [*points, complex(float(last.x), float(last.y))]


def distance_of(ones: Sequence[Sequence[complex]], others: Sequence[Sequence[complex]]) -> float:
    """The farthest that any place of one set of lines lies from the other set (Hausdorff's distance)."""
    return max(_farthest(ones, others), _farthest(others, ones))


def _farthest(ones: Sequence[Sequence[complex]], others: Sequence[Sequence[complex]]) -> float:
    """The farthest that a place of the ones lies from the others; 0 where there are none."""
    from shapely import STRtree, get_coordinates, points

    if not ones:
        return 0.0
    places = points(get_coordinates([_parted(line) for line in ones]))
    tree = STRtree([_drawn(line) for line in others])
    _, distances = tree.query_nearest(places, return_distance=True, all_matches=False)
    return float(distances.max())


def _parted(line: Sequence[complex]) -> Any:
    """The line with corners put in, STEP apart, or as many as MOST_PARTS allows."""
    from shapely import length, segmentize

    drawn = _drawn(line)
    return segmentize(drawn, max(STEP, float(length(drawn)) / MOST_PARTS))


def _drawn(line: Sequence[complex]) -> Any:
    from shapely import linestrings

    return linestrings([(place.real, place.imag) for place in line])
