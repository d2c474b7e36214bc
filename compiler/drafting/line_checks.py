"""What may be wrong with the lines as drawn: seams that leave the block, hang, touch nothing or nearly
touch."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from ..diagnostics.source import Span
from ..geometry.close_pairs import CROSSINGS_ASIDE, CROSSINGS_MOST, TooManyMeetings, reach
from ..geometry.curves import at_share, distance_to, extremes, inside_ring, lies_on
from ..geometry.edge import Point
from ..geometry.faces import Faces
from ..geometry.noding import Noded, NodeTable, node_strokes
from ..measure.tolerance import NEAR, NEARLY, difference
from ..words.messages import blocks as complain_blocks
from ..words.messages import seams as complain
from .context import Bench
from .counting import PIECES_MOST
from .frame import Frame
from .seams import DrawnLine


def node_lines(drawn: Sequence[DrawnLine], title: Span, bench: Bench) -> tuple[Noded, list[DrawnLine]] | None:
    """Everything drawn and the outline, as a graph, and the lines that its links refer to; None where it is
    too much. Lines that leave the outline are then the likely cause, and told."""
    frame = bench.frame
    assert frame.outline is not None
    lines = [*drawn, *(DrawnLine(edge, title, outline=True) for edge in frame.outline)]
    left = _leaving(drawn, frame)
    try:
        edges = [line.edge for line in lines]
        graph = node_strokes(edges, frame.across, frame.down, CROSSINGS_ASIDE if left else CROSSINGS_MOST)
    except TooManyMeetings as crowd:
        _say_leaving(left, bench)
        if not left:
            bench.say(complain_blocks.crossings_too_many(lines[crowd.line].origin, CROSSINGS_MOST))
        return None
    bench.links = len(graph.links)
    pieces = len(graph.links) - len(graph.nodes) + 1  # Euler's, of a graph in one part
    if pieces > PIECES_MOST:
        bench.say(complain_blocks.too_many_faces(title, pieces, PIECES_MOST))
        return None
    return graph, lines


def check_inside(graph: Noded, lines: Sequence[DrawnLine], bench: Bench) -> None:
    """Complains of every link outside the outline, and once of a turn whose copies leave it. Crossing the
    outline splits a link, so its middle tells."""
    out = []
    for link in graph.links:
        middle = at_share(link.edge, 0.5)
        if outside(middle, bench.frame):
            reached = (graph.nodes[link.start], graph.nodes[link.end], middle, *extremes(link.edge))
            out.append((lines[link.strokes[0]], reached))
    _say_outside(out, bench)


def _leaving(lines: Sequence[DrawnLine], frame: Frame) -> list[DrawnLine]:
    """The lines that end outside the outline: told before they are noded, where that would take long."""
    return [
        line
        for line in lines
        if not line.outline and (outside(line.edge.start, frame) or outside(line.edge.end, frame))
    ]


def _say_leaving(lines: Sequence[DrawnLine], bench: Bench) -> None:
    """Complains of lines that end outside the outline, and once of a turn whose copies do."""
    _say_outside([(line, (line.edge.start, line.edge.end)) for line in lines], bench)


def _say_outside(out: Sequence[tuple[DrawnLine, Sequence[Point]]], bench: Bench) -> None:
    """Complains of lines that reach places outside. Where the first copy does already, the turn is not to
    blame; and once of each turn that is."""
    frame = bench.frame
    size = (frame.width, frame.height)
    unturned: dict[Span, list[Point]] = {}
    for line, places in out:
        if not line.copy or line.turn is None:
            unturned.setdefault(line.origin, []).extend(places)
    told: set[Span] = set()
    for line, places in out:
        far = max(unturned.get(line.origin, places), key=lambda p: _beyond(p, frame))
        if not line.copy or line.turn is None:
            ends = (line.edge.start, line.edge.end)
            bulges = line.edge.arc is not None and not any(outside(p, frame) for p in ends)
            said = complain.arc_bulges_out if bulges else complain.seam_outside
            bench.say(said(line.origin, far, size))
        elif line.origin not in unturned and line.turn not in told:
            told.add(line.turn)
            repeated = line.turn in bench.repeats
            bench.say(complain.copies_outside("seam", line.origin, line.turn, far, size, line.copy, repeated))


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


def check_ends(graph: Noded, lines: Sequence[DrawnLine], bench: Bench) -> None:
    """Complains of every seam end that hangs: with the distance to the nearest seam, or as nearly
    touching."""
    count = [0] * len(graph.nodes)
    for link in graph.links:
        count[link.start] += 1
        count[link.end] += 1
    nearest = _Nearest(graph)
    for number, link in enumerate(graph.links):
        for node in (link.start, link.end):
            if count[node] != 1:
                continue
            place = graph.nodes[node]
            if outside(place, bench.frame):
                continue  # told by check_inside
            away = nearest.other(number, place)
            origin = lines[link.strokes[0]].origin
            if away is not None and away < NEARLY:
                bench.say(complain.nearly_touches(origin, place, away))
            else:
                bench.say(complain.seam_hangs(origin, place, away))


class _Nearest:
    """How near other links come to a place. The boxes round them say which are worth measuring."""

    def __init__(self, graph: Noded) -> None:
        self.links = graph.links
        self._boxes: Any = None

    def other(self, link: int, place: Point) -> float | None:
        """Inches from a place to the nearest link but that one; None where there is no other."""
        import numpy as np

        if self._boxes is None:
            self._boxes = np.array([reach(each.edge) for each in self.links])
        left, top, right, bottom = self._boxes.T
        x, y = float(place.x), float(place.y)
        least = np.hypot(
            np.maximum(np.maximum(left - x, x - right), 0), np.maximum(np.maximum(top - y, y - bottom), 0)
        )
        nearest: float | None = None
        for at in np.argsort(least, kind="stable"):
            if nearest is not None and least[at] > nearest:
                break
            if at != link:
                away = distance_to(self.links[at].edge, place)
                nearest = away if nearest is None else min(nearest, away)
        return nearest


def check_idle(graph: Noded, faces: Faces, lines: Sequence[DrawnLine], bench: Bench) -> None:
    """Complains of seams with one piece on both sides."""
    for at in faces.idle:
        bench.say(complain.seam_divides_nothing(lines[graph.links[at].strokes[0]].origin))


def check_crossings(graph: Noded, lines: Sequence[DrawnLine], named: Sequence[Point], bench: Bench) -> None:
    """Notes where two statements' seams cross and no point is named."""
    said: set[tuple[int, int]] = set()
    known = NodeTable()
    for place in (*named, *bench.frame.predefined.values()):
        known.number(place)
    for one, other, node in graph.crossed:
        first, second = lines[one], lines[other]
        if first.unit >= 0 or second.unit >= 0 or first.outline or second.outline:
            continue
        pair = (first.origin.start, second.origin.start)
        place = graph.nodes[node]
        if pair in said or pair[::-1] in said or _on_grid(place, bench.frame):
            continue
        if known.find(place) is not None:
            continue
        said.add(pair)
        later, earlier = (first, second) if pair[0] > pair[1] else (second, first)
        bench.say(complain.crossing_unnamed(later.origin, earlier.origin, place))


def _on_grid(p: Point, frame: Frame) -> bool:
    return any(abs(difference(p.x, x)) <= NEAR for x in frame.across) and any(
        abs(difference(p.y, y)) <= NEAR for y in frame.down
    )
