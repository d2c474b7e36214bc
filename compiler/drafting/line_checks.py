"""What may be wrong with the lines as drawn: seams that leave the block, hang, touch nothing or nearly
touch."""

from __future__ import annotations

from collections.abc import Sequence

from ..diagnostics.source import Span
from ..measure.tolerance import NEAR, NEARLY, difference
from .complaints import seams as complain
from .context import Bench
from .curves import at_share, distance, distance_to, lies_on
from .faces import Faces
from .frame import Frame
from .model import Point
from .noding import Graph
from .seams import DrawnLine, inside_ring


def check_inside(graph: Graph, lines: Sequence[DrawnLine], bench: Bench) -> None:
    """Complains of every link outside the outline, and once of a turn whose copies leave it. Crossing the
    outline splits a link, so its middle tells."""
    frame = bench.frame
    told: set[Span] = set()
    for link in graph.links:
        middle = at_share(link.edge, 0.5)
        if not outside(middle, frame):
            continue
        line = lines[link.strokes[0]]
        far = max((graph.nodes[link.start], graph.nodes[link.end], middle), key=lambda p: _beyond(p, frame))
        where = complain.outside_by(far, frame.width, frame.height)
        if not line.copy or line.turn is None:
            bench.say(complain.seam_outside(line.origin, where))
        elif line.turn not in told:
            told.add(line.turn)
            bench.say(complain.copies_outside("this seam", line.origin, line.turn, where, line.copy))


def outside(p: Point, frame: Frame) -> bool:
    """Whether a point lies outside the outline by more than NEAR."""
    if _beyond(p, frame) > NEAR:
        return True
    assert frame.outline is not None, "the outline is known"
    if frame.is_box:
        return False
    if any(lies_on(edge, p) for edge in frame.outline):
        return False
    return not inside_ring(p, frame.outline)


def _beyond(p: Point, frame: Frame) -> float:
    return max(-float(p.x), -float(p.y), difference(p.x, frame.width), difference(p.y, frame.height))


def check_ends(graph: Graph, lines: Sequence[DrawnLine], bench: Bench) -> None:
    """Complains of every seam end that hangs: with the distance to the nearest seam, or as nearly
    touching."""
    count = [0] * len(graph.nodes)
    for link in graph.links:
        count[link.start] += 1
        count[link.end] += 1
    for link in graph.links:
        for node in (link.start, link.end):
            if count[node] != 1:
                continue
            place = graph.nodes[node]
            if outside(place, bench.frame):
                continue  # told by check_inside
            others = [each.edge for each in graph.links if each is not link]
            away = min((distance_to(edge, place) for edge in others), default=None)
            origin = lines[link.strokes[0]].origin
            if away is not None and away < NEARLY:
                bench.say(complain.nearly_touches(origin, place, away))
            else:
                bench.say(complain.seam_hangs(origin, place, away))


def check_idle(graph: Graph, faces: Faces, lines: Sequence[DrawnLine], bench: Bench) -> None:
    """Complains of seams with one piece on both sides."""
    for at in faces.idle:
        bench.say(complain.seam_divides_nothing(lines[graph.links[at].strokes[0]].origin))


def check_crossings(
    graph: Graph, lines: Sequence[DrawnLine], named: Sequence[Point], bench: Bench
) -> None:
    """Notes where two statements' seams cross and no point is named."""
    told: set[tuple[int, int]] = set()
    for one, other, node in graph.crossed:
        first, second = lines[one], lines[other]
        if first.unit >= 0 or second.unit >= 0 or first.outline or second.outline:
            continue
        pair = (first.origin.start, second.origin.start)
        place = graph.nodes[node]
        if pair in told or pair[::-1] in told or _on_grid(place, bench.frame):
            continue
        if any(distance(place, p) <= NEAR for p in named):
            continue
        told.add(pair)
        later, earlier = (first, second) if pair[0] > pair[1] else (second, first)
        bench.say(complain.crossing_unnamed(later.origin, earlier.origin, place))


def _on_grid(p: Point, frame: Frame) -> bool:
    if any(distance(p, known) <= NEAR for known in frame.predefined.values()):
        return True
    return (any(abs(difference(p.x, x)) <= NEAR for x in frame.across)
            and any(abs(difference(p.y, y)) <= NEAR for y in frame.down))

