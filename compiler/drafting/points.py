"""Point phrases and lines to places. Local places in, local places out; None where a complaint was made, and
whatever meets a None stays silent."""

from __future__ import annotations

from dataclasses import fields
from fractions import Fraction
from math import hypot
from typing import assert_never

from ..diagnostics.source import Span
from ..geometry.curves import along, foot_on, lies_on, line_and_circle, meet_lines, ratio, same_place
from ..geometry.edge import Edge, Point
from ..geometry.motion import mirror_in, turn_about
from ..language import tree
from ..measure.angle import cosine_sine, direction
from ..measure.length import exact_root
from ..measure.tolerance import FAR, NEAR, Number, kept_short, rounded
from ..words.messages import points as complain
from .context import Context

Ray = tuple[Point, tuple[Number, Number]]
"""A line: a point on it and a step along it (of any length)."""


def place_of(phrase: tree.PointPhrase, here: Context) -> Point | None:
    """Where a point phrase puts its point: no further than FAR, in fractions no longer than EXACT_BITS."""
    place: Point | None = _placed(phrase, here)
    if place is None or isinstance(phrase, tree.GridPoint | tree.NamedPoint):
        return place
    if not (abs(rounded(place.x)) <= FAR and abs(rounded(place.y)) <= FAR):
        here.bench.say(complain.point_too_far(phrase.span))
        return None
    return Point(kept_short(place.x), kept_short(place.y))


def _placed(phrase: tree.PointPhrase, here: Context) -> Point | None:
    """The place, however far off."""
    match phrase:
        case tree.GridPoint():
            return _grid_point(phrase, here)
        case tree.NamedPoint():
            return _named(phrase, here)
        case tree.GridSteps():
            return here.bench.frame.steps(phrase.across, phrase.down)
        case tree.ShareAlong():
            ends = _two(phrase.origin, phrase.toward, here)
            return ends and along(ends[0], _step(*ends), phrase.share)
        case tree.LengthAlong():
            return _length_along(phrase, here)
        case tree.LengthAtAngle():
            origin = place_of(phrase.origin, here)
            cosine, sine = cosine_sine(phrase.angle.degrees)
            return origin and along(origin, (sine, -cosine), phrase.length.inches)
        case tree.Between():
            return _average([place_of(each, here) for each in phrase.points])
        case tree.Meet():
            return _meet(phrase, here)
        case tree.MeetOutline():
            return meet_outline(phrase.line, here)
        case tree.Foot():
            point, ray = place_of(phrase.point, here), line_of(phrase.line, here)
            return foot_on(point, *ray) if point and ray else None
        case tree.TurnedAbout():
            point, about = place_of(phrase.point, here), place_of(phrase.about, here)
            return turn_about(about, phrase.angle.degrees)(point) if point and about else None
        case tree.MirroredIn():
            point, ray = place_of(phrase.point, here), line_of(phrase.line, here)
            return mirror_in(ray[0], along(*ray, 1))(point) if point and ray else None
        case tree.NextCopy() | tree.PreviousCopy():
            return _other_copy(phrase, here)
    assert_never(phrase)


def line_of(line: tree.Line, here: Context) -> Ray | None:
    """The line a phrase names."""
    match line:
        case tree.LineThrough():
            return _ray(line.first, line.second, here, line.span, "line")
        case tree.LineAtAngle():
            point = place_of(line.point, here)
            return point and (point, direction(line.angle.degrees))
        case tree.LineParallel():
            point = place_of(line.point, here)
            ray = _ray(line.first, line.second, here, line.span, "direction")
            return (point, ray[1]) if point and ray else None
    assert_never(line)


def meet_outline(line: tree.Line, here: Context) -> Point | None:
    """The first place beyond the line's first point where it meets the outline."""
    outline = here.local_outline()
    if outline is None:
        here.bench.say(complain.outline_unknown_yet(line.span))
        return None
    ray = line_of(line, here)
    if ray is None:
        return None
    reached = first_meeting(ray, outline)
    if reached is None:
        here.bench.say(complain.line_misses_outline(line.span))
    return reached


def first_meeting(ray: Ray, edges: tuple[Edge, ...]) -> Point | None:
    """The nearest place beyond the ray's own point where it meets an edge."""
    ahead = meetings(ray, edges)
    unit = hypot(float(ray[1][0]), float(ray[1][1]))
    beyond = [steps for steps in ahead if float(steps) * unit > NEAR]
    return along(*ray, min(beyond)) if beyond else None


def meetings(ray: Ray, edges: tuple[Edge, ...]) -> list[Number]:
    """How far along a line (in its own steps, before and behind) it meets each edge, in order."""
    meeting: list[Number] = []
    for edge in edges:
        if edge.arc is not None:
            steps: list[Number] = list(line_and_circle(*ray, edge.arc.center, edge.arc.radius))
        else:
            met = meet_lines(*ray, edge.start, _step(edge.start, edge.end))
            steps = [met[0]] if met else _ends_along(ray, edge)
        meeting += [each for each in steps if lies_on(edge, along(*ray, each))]
    return sorted(meeting)


def _ends_along(ray: Ray, edge: Edge) -> list[Number]:
    """Where a line meets an edge that it is parallel to: at both ends, if it runs along it."""
    start, d = ray
    square = d[0] * d[0] + d[1] * d[1]
    steps = [ratio((p.x - start.x) * d[0] + (p.y - start.y) * d[1], square) for p in (edge.start, edge.end)]
    return [
        each
        for each, p in zip(steps, (edge.start, edge.end), strict=True)
        if same_place(along(*ray, each), p)
    ]


def _step(first: Point, second: Point) -> tuple[Number, Number]:
    return second.x - first.x, second.y - first.y


def _two(first: tree.PointPhrase, second: tree.PointPhrase, here: Context) -> tuple[Point, Point] | None:
    one, other = place_of(first, here), place_of(second, here)
    return (one, other) if one and other else None


def _ray(
    first: tree.PointPhrase,
    second: tree.PointPhrase,
    here: Context,
    span: Span,
    what: complain.Pair,
) -> Ray | None:
    ends = _two(first, second, here)
    if ends is None:
        return None
    if same_place(*ends):
        here.bench.say(complain.same_point_twice(span, what))
        return None
    return ends[0], _step(*ends)


def _grid_point(phrase: tree.GridPoint, here: Context) -> Point | None:
    frame = here.bench.frame
    point = frame.grid_point(phrase.column, phrase.row)
    if point is None:
        here.bench.say(
            complain.grid_point_off(phrase, len(frame.across) - 1, len(frame.down) - 1, frame.last_grid_point)
        )
    return point


def _named(phrase: tree.NamedPoint, here: Context) -> Point | None:
    frame = here.bench.frame
    if phrase.name in frame.predefined:
        return frame.predefined[phrase.name]
    for at in here.chain():
        if phrase.name in at.definitions:
            at.bench.used_points.add(at.definitions[phrase.name].name.span)
            return defined_place(at.definitions[phrase.name], at)
    if phrase.name.startswith("corner") and phrase.name[6:].isdigit():
        here.bench.say(complain.corner_unknown(phrase, len(frame.corners)))
    else:
        here.bench.say(complain.point_unknown(phrase, here.known_names()))
    return None


Defined = tuple[tree.PointDef, Context]
"""A definition, and the copy of its body in which it is placed."""


def defined_place(definition: tree.PointDef, at: Context) -> Point | None:
    """The place of a point that the writer named, worked out once for each copy."""
    name = definition.name.text
    if name not in at.places:
        _place_after_needs((definition, at))
    return at.places[name]


def _place_after_needs(wanted: Defined) -> None:
    """Places a point after those that it needs. A list serves as the stack, since points may need each other
    in chains as long as a file."""
    path = [wanted]
    step_of = {_key(wanted): 0}
    needs = [iter(_needs(*wanted))]
    while path:
        following = next((each for each in needs[-1] if each[0].name.text not in each[1].places), None)
        if following is None:
            definition, at = path.pop()
            needs.pop()
            del step_of[_key((definition, at))]
            if definition.name.text not in at.places:
                at.places[definition.name.text] = place_of(definition.phrase, at)
        elif _key(following) in step_of:
            _complain_of_ring(path[step_of[_key(following)] :])
        else:
            step_of[_key(following)] = len(path)
            path.append(following)
            needs.append(iter(_needs(*following)))


def _key(defined: Defined) -> tuple[str, int]:
    return defined[0].name.text, id(defined[1])


def _needs(definition: tree.PointDef, at: Context) -> list[Defined]:
    """The definitions that a definition mentions."""
    needed = []
    for name, here in _mentioned(definition.phrase, at):
        if name in here.bench.frame.predefined:
            continue
        for above in here.chain():
            if name in above.definitions:
                needed.append((above.definitions[name], above))
                break
    return needed


def _mentioned(phrase: object, here: Context) -> list[tuple[str, Context]]:
    """The names in a phrase, each with the copy in which it is looked up."""
    if isinstance(phrase, tree.NamedPoint):
        return [(phrase.name, here)]
    if isinstance(phrase, tree.NextCopy | tree.PreviousCopy):
        here = here.first
    if isinstance(phrase, tuple):
        return [each for part in phrase for each in _mentioned(part, here)]
    if isinstance(phrase, tree.Node):
        return [each for part in fields(phrase) for each in _mentioned(getattr(phrase, part.name), here)]
    return []


def _complain_of_ring(ring: list[Defined]) -> None:
    """Complains of points that need each other, the one first written first; they have no place."""
    first = min(range(len(ring)), key=lambda step: ring[step][0].name.span.start)
    names = [each.name for each, _ in ring[first:] + ring[:first]]
    ring[0][1].bench.say(complain.point_cycle(names[: complain.RING_SHOWN], len(names)))
    for definition, at in ring:
        at.places[definition.name.text] = None


def _length_along(phrase: tree.LengthAlong, here: Context) -> Point | None:
    ray = _ray(phrase.origin, phrase.toward, here, phrase.span, "direction")
    if ray is None:
        return None
    square = ray[1][0] ** 2 + ray[1][1] ** 2
    apart = exact_root(square) if isinstance(square, Fraction) else float(square) ** 0.5
    return along(*ray, phrase.length.inches / apart)


def _average(points: list[Point | None]) -> Point | None:
    known = [each for each in points if each is not None]
    if len(known) < len(points):
        return None
    x: Number = Fraction(0)
    y: Number = Fraction(0)
    for each in known:
        x, y = x + each.x, y + each.y
    return Point(x / len(known), y / len(known))


def _meet(phrase: tree.Meet, here: Context) -> Point | None:
    one, other = line_of(phrase.first, here), line_of(phrase.second, here)
    if one is None or other is None:
        return None
    met = meet_lines(*one, *other)
    if met is None:
        here.bench.say(complain.lines_never_meet(phrase.span))
        return None
    return along(*one, met[0])


def _other_copy(phrase: tree.NextCopy | tree.PreviousCopy, here: Context) -> Point | None:
    """`next P` and `previous P`: worked out in the first copy, and carried along with it."""
    if here.step is None:
        word = "next" if isinstance(phrase, tree.NextCopy) else "previous"
        here.bench.say(complain.next_outside_turn(phrase.span, word))
        return None
    point = place_of(phrase.point, here.first)
    step = here.step if isinstance(phrase, tree.NextCopy) else here.step.inverse()
    return point and step(point)
