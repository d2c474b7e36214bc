"""How a template lies on each of its pieces, and the trims and marks that suit all of them.

All pieces of a shape are cut alike, so what differs from piece to piece is settled for all: a trim takes only
what no piece needs, and a mark for any piece is on the template. A shape with a mirror line is used either
side up, so its trims and marks have that mirror line too.
"""

from __future__ import annotations

from collections.abc import Sequence

from ...drafting.congruence import middle_of
from ...drafting.model import Draft, Piece, Shape
from ...drafting.shapes import symmetries
from ...geometry.pose import Motion, Pose
from ...measure.record import record
from .common_trim import common_cuts, differing
from .corners import Trim
from .grain import GrainGroups, block_headings
from .marks import TOGETHER, SeamMark, side_marks
from .outlines import CornerKey
from .trimming import Trims

CornerCuts = dict[CornerKey, tuple[Trim, ...]]
"""The trims of the template's sharp corners, by the first piece's corners."""


@record
class Laid:
    """A shape's pieces with how the template lies on each, turned over only where the piece is reversed.

    Of pieces that lie alike among their neighbours only the first stands here.
    """

    first: Piece
    pieces: tuple[Piece, ...]
    ways: tuple[Motion, ...]
    mirrors: tuple[Motion, ...]  # every mirror that lays the first piece on itself
    grain: GrainGroups


def lay(draft: Draft, shape: Shape, trims: Trims, alike: Sequence[int]) -> Laid:
    """The template laid on every piece: of the turns that fit, the one whose trims agree best.

    `alike`: the neighbourhood of each of the draft's pieces.
    """
    first = draft.pieces[shape.members[0].piece - 1]
    origin = middle_of(trims.outlines.rings(first.number)[0])
    own = (Pose(),) if shape.turns == 1 and not shape.reversible else symmetries(first)
    turns = [pose.motion(origin) for pose in own if not pose.reversed]
    mirrors = tuple(pose.motion(origin) for pose in own if pose.reversed)
    wanted = {key: trims.cuts(key) for key in sharp_corners(trims, first)}
    grain = GrainGroups(block_headings(draft.outline))
    laid: dict[object, tuple[Piece, Motion]] = {}
    for member in shape.members:
        piece = draft.pieces[member.piece - 1]
        key = (alike[member.piece - 1], piece.grain)
        if key in laid:
            grain.place_like(piece, laid[key][0])
            continue
        plain = member.pose.motion(origin, _middle(piece, trims))
        fitting = [plain.after(turn) for turn in turns]
        if len(fitting) > 1 and wanted:
            fitting = _best_first(fitting, trims, wanted, piece)
        grain.place(piece, fitting, [fitting[0].after(mirror) for mirror in mirrors])
        laid[key] = piece, fitting[0]
    pieces, ways = zip(*laid.values(), strict=True)
    return Laid(first, pieces, ways, mirrors, grain)


def _middle(piece: Piece, trims: Trims) -> complex:
    return middle_of(trims.outlines.rings(piece.number)[0])


def sharp_corners(trims: Trims, piece: Piece) -> list[CornerKey]:
    """The piece's corners that are trimmed."""
    keys = [
        (piece.number, ring, at)
        for ring, sides in enumerate(trims.outlines.rings(piece.number))
        for at in range(len(sides))
    ]
    corners = [(key, trims.outlines.corner(key)) for key in keys]
    return [key for key, corner in corners if corner is not None and corner.sharp]


def _best_first(ways: Sequence[Motion], trims: Trims, wanted: CornerCuts, piece: Piece) -> list[Motion]:
    """The ways, those whose trims agree at most corners first."""
    return sorted(ways, key=lambda way: _mismatch(trims, wanted, piece, way))


def _mismatch(trims: Trims, wanted: CornerCuts, piece: Piece, way: Motion) -> int:
    """How many corners of the piece, so laid, are trimmed otherwise than the first piece's."""
    return sum(differing(cuts, _cuts_back(trims, key, piece, way)) for key, cuts in wanted.items())


def _cuts_back(trims: Trims, key: CornerKey, piece: Piece, way: Motion) -> tuple[Trim, ...]:
    """The trims of the piece's corner that lies on a corner of the template, as they lie on the template."""
    corner = trims.outlines.corner(key)
    assert corner is not None, "a sharp corner has sides"
    theirs = trims.outlines.nearest_corner(piece.number, way(corner.at), way.direction(corner.opens))
    return tuple(Trim(way.direction_back(cut.normal), cut.distance) for cut in trims.cuts(theirs))


def template_cuts(laid: Laid, trims: Trims) -> CornerCuts:
    """The trims of each sharp corner of the template that every piece's neighbours allow."""
    cut_at: CornerCuts = {}
    for key in sharp_corners(trims, laid.first):
        corner = trims.outlines.corner(key)
        assert corner is not None, "a sharp corner has sides"
        choices = [
            _cuts_back(trims, key, piece, way) for piece, way in zip(laid.pieces, laid.ways, strict=True)
        ]
        cut_at[key] = common_cuts(corner, choices)
    return cut_at


def turning_over(laid: Laid, trims: Trims, cuts: CornerCuts) -> Motion | None:
    """Of the shape's mirrors, the one that its trims agree with best; None where it has no mirror line."""

    def cost(mirror: Motion) -> int:
        image = _mirrored_cuts(laid, trims, cuts, mirror)
        return sum(differing(cuts[key], image[key]) for key in cuts)

    return min(laid.mirrors, key=cost, default=None)


def evened_cuts(laid: Laid, trims: Trims, cuts: CornerCuts, mirror: Motion | None) -> CornerCuts:
    """The trims made the same on both sides of the mirror line, by taking less."""
    if mirror is None:
        return cuts
    image = _mirrored_cuts(laid, trims, cuts, mirror)
    evened: CornerCuts = {}
    for key, own in cuts.items():
        corner = trims.outlines.corner(key)
        assert corner is not None, "a sharp corner has sides"
        evened[key] = common_cuts(corner, [own, image[key]])
    return evened


def _mirrored_cuts(laid: Laid, trims: Trims, cuts: CornerCuts, mirror: Motion) -> CornerCuts:
    cut_at: CornerCuts = {}
    for key in cuts:
        corner = trims.outlines.corner(key)
        assert corner is not None, "a sharp corner has sides"
        other = trims.outlines.nearest_corner(
            laid.first.number, mirror.back(corner.at), mirror.direction_back(corner.opens)
        )
        cut_at[key] = tuple(Trim(mirror.direction(cut.normal), cut.distance) for cut in cuts[other])
    return cut_at


def template_marks(laid: Laid, trims: Trims, mirror: Motion | None) -> list[SeamMark]:
    """The match marks of every piece, each place once, on both sides of a mirror line."""
    kept: list[SeamMark] = []
    for piece, way in zip(laid.pieces, laid.ways, strict=True):
        for ring in trims.outlines.rings(piece.number):
            for side in ring:
                for mark in side_marks(side):
                    back = SeamMark(way.back(mark.at), way.direction_back(mark.toward), mark.allowance)
                    _add_mark(kept, back)
    if mirror is not None:
        for mark in tuple(kept):
            _add_mark(kept, SeamMark(mirror(mark.at), mirror.direction(mark.toward), mark.allowance))
    return kept


def _add_mark(kept: list[SeamMark], mark: SeamMark) -> None:
    if all(abs(mark.at - other.at) > TOGETHER for other in kept):
        kept.append(mark)


def ring_cuts(cuts: CornerCuts, number: int, ring: int, count: int) -> Sequence[tuple[Trim, ...]]:
    """The trims of a ring's corners in order."""
    return [cuts.get((number, ring, at), ()) for at in range(count)]
