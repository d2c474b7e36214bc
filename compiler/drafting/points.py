"""Point phrases and lines to places. Local places in, local places out; None where a complaint was made, and
whatever meets a None stays silent."""

from __future__ import annotations

from dataclasses import fields
from fractions import Fraction
from typing import assert_never

from ..diagnostics.source import Span
from ..geometry.curves import along, distance, foot_on, same_place
from ..geometry.edge import Edge, Point
from ..geometry.meetings import (
    Ray,
    Round,
    Stroke,
    first_meeting,
    places_of_meeting,
    round_of,
    square_between,
    stroke_of,
    whole,
)
from ..geometry.motion import mirror_in, turn_about
from ..language import tree
from ..measure.angle import cosine_sine, direction
from ..measure.length import exact_root
from ..measure.tolerance import FAR, NEAR, Number, kept_short, rounded
from ..words.messages import points as complain
from ..words.messages import seams as complain_seams
from .arcs import arc_around, arc_through
from .context import Context


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
        said = complain.corner_unknown(phrase, len(frame.corners))
    else:
        said = complain.point_unknown(phrase, here.known_names())
    here.bench.say(said)
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
    """The one place where two figures meet, or that of several which lies nearest."""
    ones, others = strokes_of(phrase.first, here), strokes_of(phrase.second, here)
    near = None if phrase.nearest is None else place_of(phrase.nearest, here)
    if ones is None or others is None or (phrase.nearest is not None and near is None):
        return None
    met = places_of_meeting(ones, others)
    if not met:
        _complain_of_none(phrase, ones, others, here)
        return None
    if len(met) == 1:
        return met[0]
    if near is None:
        here.bench.say(complain.meet_twice(phrase.span, met, [distance(met[0], each) for each in met[1:]]))
        return None
    best, following = sorted(met, key=lambda each: distance(near, each))[:2]
    if distance(near, following) - distance(near, best) <= NEAR:
        here.bench.say(complain.nearest_to_both(phrase.span, (best, following)))
        return None
    return best


def _complain_of_none(phrase: tree.Meet, ones: list[Stroke], others: list[Stroke], here: Context) -> None:
    """Complains of figures that meet nowhere, or run along each other."""
    lines = isinstance(phrase.first, tree.Line) and isinstance(phrase.second, tree.Line)
    if lines:
        here.bench.say(complain.lines_never_meet(phrase.span))
        return
    beyond = places_of_meeting([whole(each) for each in ones], [whole(each) for each in others])
    if beyond is None:
        here.bench.say(complain.figures_along(phrase.span))
    else:
        here.bench.say(complain.figures_never_meet(phrase.span, beyond))


def strokes_of(figure: tree.Figure, here: Context) -> list[Stroke] | None:
    """The strokes of a line, circle, arc or outline."""
    match figure:
        case tree.Circle():
            circle = circle_of(figure, here)
            return circle and [circle]
        case tree.ArcFigure():
            arc = arc_of(figure.start, figure.hop, here)
            return None if arc is None else [round_of(arc)]
        case tree.WholeOutline():
            outline = here.local_outline()
            if outline is None:
                here.bench.say(complain.outline_unknown_yet(figure.span))
                return None
            return [stroke_of(each) for each in outline]
        case _:
            ray = line_of(figure, here)
            return ray and [ray]


def circle_of(circle: tree.Circle, here: Context) -> Round | None:
    """The circle that a phrase speaks of."""
    center = place_of(circle.center, here)
    if circle.radius is not None:
        return center and Round(center, circle.radius.inches**2)
    assert circle.through is not None
    passed = place_of(circle.through, here)
    if center is None or passed is None:
        return None
    if same_place(center, passed):
        here.bench.say(complain.same_point_twice(circle.span, "circle"))
        return None
    return Round(center, square_between(center, passed))


def arc_of(start: tree.PointPhrase, hop: tree.ArcAround | tree.ArcThrough, here: Context) -> Edge | None:
    """The arc that a phrase speaks of."""
    ends = _two(start, hop.point, here)
    beside = place_of(hop.center if isinstance(hop, tree.ArcAround) else hop.via, here)
    if ends is None or beside is None:
        return None
    if same_place(*ends):
        here.bench.say(complain_seams.seam_no_length(hop.span))
        return None
    drawn = arc_around if isinstance(hop, tree.ArcAround) else arc_through
    return drawn(*ends, beside, hop.span, here)


def _other_copy(phrase: tree.NextCopy | tree.PreviousCopy, here: Context) -> Point | None:
    """`next P` and `previous P`: worked out in the first copy, and carried along with it."""
    if here.step is None:
        word = "next" if isinstance(phrase, tree.NextCopy) else "previous"
        here.bench.say(complain.next_outside_turn(phrase.span, word))
        return None
    point = place_of(phrase.point, here.first)
    step = here.step if isinstance(phrase, tree.NextCopy) else here.step.inverse()
    for _ in range(phrase.copies):
        point = point and step(point)
    return point
