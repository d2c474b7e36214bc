"""Faces to what they are cut from: the cell or unit they lie in, and the names that were put in them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, Literal

from ..diagnostics.source import Span
from ..geometry.curves import distance, distance_to, flattened, inside_ring, lies_on
from ..geometry.edge import Edge, Point
from ..geometry.faces import Faces, half_edge
from ..geometry.noding import Noded
from ..measure.tolerance import FLATTEN
from ..words.messages import pieces as complain
from ..words.messages import units as complain_units
from .context import Bench
from .line_checks import outside
from .seams import DrawnLine
from .sketch import Claim, Placed, Sketch

BACKGROUND = "background"
"""The fabric of every piece that nothing names."""

TOUCHING = 2 * FLATTEN
"""Inches. How far from a flattened face a place may lie and still be looked at exactly."""


@dataclass
class FaceCloth:
    """What one face is cut from, and why."""

    fabric: str = BACKGROUND
    name: str | None = None
    grain: float | Literal["free"] | None = None
    origin: Span | None = None
    unit: str = ""
    claims: tuple[Claim, ...] = ()


class FaceFinder:
    """Finds the faces at a place."""

    def __init__(self, graph: Noded, faces: Faces) -> None:
        import shapely

        self.graph, self.faces = graph, faces
        self.polygons = [face.polygon for face in faces.faces]
        self.tree = shapely.STRtree(self.polygons)

    def containing(self, places: Sequence[Point]) -> list[int | None]:
        """For each place, which lies inside a face, the number of that face."""
        import shapely

        numbers: list[int | None] = [None] * len(places)
        if places:
            points = shapely.points([[float(p.x), float(p.y)] for p in places])
            for place, face in self.tree.query(points, predicate="within").T:
                numbers[int(place)] = int(face)
        return numbers

    def touching(self, places: Sequence[Point]) -> list[list[int]]:
        """For each place, every face that holds it inside or touches it with an edge. Only what is close to
        an edge is looked at exactly."""
        import shapely

        if not places:
            return []
        points = shapely.points([[float(p.x), float(p.y)] for p in places])
        near: list[list[int]] = [[] for _ in places]
        for place, face in self.tree.query(points, predicate="dwithin", distance=TOUCHING).T:
            near[int(place)].append(int(face))
        nearest = shapely.boundary([self.polygons[faces[0]] if faces else None for faces in near])
        close = shapely.dwithin(nearest, points, TOUCHING)
        return [
            self._exactly(p, sorted(faces)) if at_edge or len(faces) != 1 else faces
            for p, faces, at_edge in zip(places, near, close, strict=True)
        ]

    def arcs_of(self, face: int) -> list[Edge]:
        """The curved edges of a face."""
        edges = [half_edge(self.graph, half) for ring in self._rings(face) for half in ring]
        return [edge for edge in edges if edge.arc is not None]

    def _exactly(self, p: Point, near: Sequence[int]) -> list[int]:
        on_edge = [
            face
            for face in near
            if any(lies_on(half_edge(self.graph, half), p) for ring in self._rings(face) for half in ring)
        ]
        return on_edge or [face for face in near if self._holds(face, p)]

    def _rings(self, face: int) -> tuple[tuple[int, ...], ...]:
        return (self.faces.faces[face].ring, *self.faces.faces[face].holes)

    def _holds(self, face: int, p: Point) -> bool:
        inside = [
            inside_ring(p, tuple(half_edge(self.graph, half) for half in ring)) for ring in self._rings(face)
        ]
        return inside[0] and not any(inside[1:])


def cloth_of_faces(
    graph: Noded,
    faces: Faces,
    lines: Sequence[DrawnLine],
    sketch: Sketch,
    owners: list[int],
    bench: Bench,
) -> list[FaceCloth]:
    """What every face is cut from; clashes are complained of. `owners` is what `owners_of` found."""
    finder = FaceFinder(graph, faces)
    cloth = [FaceCloth() for _ in faces.faces]
    _check_seams_in_units(graph, faces, lines, sketch, owners, bench)
    for face, owner in enumerate(owners):
        placed = sketch.placed[owner] if owner >= 0 else None
        if placed is not None and placed.role is not None:
            cloth[face] = FaceCloth(placed.role, origin=placed.origin)
    if not bench.failed:
        _name_units(finder, sketch.placed, cloth)
    _name_claims(finder, sketch, owners, cloth, bench)
    _wish_grain(sketch, cloth, bench)
    return cloth


def owners_of(faces: Faces, placed: Sequence[Placed]) -> list[int]:
    """For each face the number of the unit or cell it lies in; -1: none."""
    import shapely

    owners = [-1] * len(faces.faces)
    if placed:
        tree = shapely.STRtree([placed_polygon(each) for each in placed])
        points = shapely.points([[float(face.inside.x), float(face.inside.y)] for face in faces.faces])
        for face, owner in tree.query(points, predicate="within").T:
            owners[int(face)] = int(owner)
    return owners


def placed_polygon(placed: Placed) -> Any:
    """The polygon of a unit or cell, arcs flattened."""
    import shapely

    return shapely.Polygon([(float(p.x), float(p.y)) for edge in placed.outline for p in flattened(edge)])


def _check_seams_in_units(
    graph: Noded,
    faces: Faces,
    lines: Sequence[DrawnLine],
    sketch: Sketch,
    owners: list[int],
    bench: Bench,
) -> None:
    for number, link in enumerate(graph.links):
        right, left = faces.right_of[2 * number], faces.right_of[2 * number + 1]
        if right < 0 or left < 0 or owners[right] != owners[left] or owners[right] < 0:
            continue
        placed = sketch.placed[owners[right]]
        if placed.unit is not None and all(lines[each].unit != owners[right] for each in link.strokes):
            bench.say(
                complain_units.seam_through_unit(lines[link.strokes[0]].origin, placed.unit.draft.title)
            )


def _name_units(finder: FaceFinder, placed: Sequence[Placed], cloth: list[FaceCloth]) -> None:
    """Carries each unit's pieces over: fabric by our names, and their grain turned with them."""
    holders = [(each, piece) for each in placed if each.unit for piece in each.unit.draft.pieces]
    faces = finder.containing([each.transform(piece.inside) for each, piece in holders])
    for (each, piece), face in zip(holders, faces, strict=True):
        assert each.unit is not None
        assert face is not None, f"no face at a piece of {each.unit.draft.title}"
        grain = piece.grain
        if isinstance(grain, float):
            grain = each.transform.grain(grain)
        fabric = each.unit.renames.get(piece.fabric, piece.fabric)
        cloth[face] = FaceCloth(fabric, piece.name, grain, each.origin, each.unit.draft.title)


def _name_claims(
    finder: FaceFinder, sketch: Sketch, owners: list[int], cloth: list[FaceCloth], bench: Bench
) -> None:
    """Puts each claim in its face. A point on an edge must touch one face only."""
    held: dict[int, list[Claim]] = {}
    clashed: set[tuple[Span, Span]] = set()
    inside = []
    for claim in sketch.claims:
        if outside(claim.place, bench.frame):
            name, size = claim.statement.name, (bench.frame.width, bench.frame.height)
            bench.say(complain.place_outside(name, claim.phrase.span, claim.place, size))
        else:
            inside.append(claim)
    for claim, touched in zip(inside, finder.touching([each.place for each in inside]), strict=True):
        assert touched, f"no face at {claim.place}"
        if len(touched) > 1:
            bench.say(
                complain.place_on_edge(
                    claim.statement.name,
                    claim.phrase.span,
                    [_offer(face, finder, cloth, bench) for face in touched],
                )
            )
            continue
        held.setdefault(touched[0], []).append(claim)
    for face, claims in held.items():
        _settle(face, claims, sketch, owners, cloth, clashed, finder, bench)


def _offer(face: int, finder: FaceFinder, cloth: list[FaceCloth], bench: Bench) -> tuple[str | None, Point]:
    """A place inside a face, in grid steps, and what is known of the face."""
    inside = finder.faces.faces[face].inside
    frame = bench.frame
    return cloth[face].name, Point(_steps(frame.across, inside.x), _steps(frame.down, inside.y))


def _steps(lines: Sequence[Any], at: Any) -> float:
    for step, (near, far) in enumerate(pairwise(lines)):
        if at <= far:
            return round(step + float((at - near) / (far - near)), 2)
    return float(len(lines) - 1)


def _settle(
    face: int,
    claims: list[Claim],
    sketch: Sketch,
    owners: list[int],
    cloth: list[FaceCloth],
    clashed: set[tuple[Span, Span]],
    finder: FaceFinder,
    bench: Bench,
) -> None:
    """One face's name, where all its claims agree. Two statements that clash are complained of once."""
    first = claims[0]
    placed = sketch.placed[owners[face]] if owners[face] >= 0 else None
    if placed is not None and placed.unit is not None:
        bench.say(
            complain.piece_in_unit(
                first.statement.name, first.phrase.span, placed.unit.draft.title, placed.origin
            )
        )
        return
    for other in claims[1:]:
        if other.statement is not first.statement:
            later, earlier = sorted((first, other), key=lambda each: -each.statement.span.start)
            pair = (later.statement.span, earlier.statement.span)
            if pair in clashed:
                continue
            clashed.add(pair)
            if later.statement.name.text == earlier.statement.name.text:
                bench.say(
                    complain.piece_clash_same(later.statement.name, later.phrase.span, earlier.phrase.span)
                )
            else:
                bench.say(
                    complain.piece_clash(
                        later.statement.name,
                        later.phrase.span,
                        earlier.statement.name,
                        earlier.phrase.span,
                        (later.place, earlier.place),
                        _beside_arc(later.place, earlier.place, finder.arcs_of(face)),
                    )
                )
            break  # one seam is missing: others that it would part say the same
        if other.fabric != first.fabric:
            bench.say(
                complain.fabrics_clash(first.statement.name, other.phrase.span, [first.fabric, other.fabric])
            )
    cloth[face] = FaceCloth(
        first.fabric, first.statement.name.text, None, first.statement.span, "", tuple(claims)
    )


def _beside_arc(place: Point, other: Point, arcs: Sequence[Edge]) -> complain.BesideArc | None:
    """How two places of one face lie to its arc that is nearest to the first."""
    if not arcs:
        return None
    nearest = min(arcs, key=lambda each: distance_to(each, place))
    assert nearest.arc is not None
    center, radius = nearest.arc.center, nearest.arc.radius
    away = (distance(center, each) - radius for each in (place, other))
    return complain.BesideArc(distance_to(nearest, place), *(each < 0 for each in away))


def _wish_grain(sketch: Sketch, cloth: list[FaceCloth], bench: Bench) -> None:
    """Gives each named piece the grain asked for in the innermost body that holds it."""
    called: dict[str | None, list[FaceCloth]] = {}
    for each in cloth:
        called.setdefault(each.name, []).append(each)
    for wish in sketch.grains:
        for name in wish.statement.pieces:
            met = False
            for each in called.get(name.text, ()):
                inside = any(wish.here in claim.here.chain() for claim in each.claims)
                if inside:
                    each.grain, met = wish.heading, True
            if not met and not any(claim.statement.name.text == name.text for claim in sketch.claims):
                bench.say(complain.piece_unknown(name, [each.name for each in cloth if each.name]))
