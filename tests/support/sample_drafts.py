"""Drafts and templates made by hand from polygons, for tests of sheets that do not need a compiler.

Each piece is (fabric, corners, label): pieces of one label are taken to be one shape.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import cos, pi, sin

from piecewright.cutting.model import FabricCount, GrainArrow, Template
from piecewright.cutting.model import Mark as MatchMark
from piecewright.drafting.model import Draft, Member, Part, Piece, Shape, Side, TrimRule
from piecewright.drafting.pieces import graph_of
from piecewright.geometry.edge import Arc, Edge, Point

Corners = Sequence[tuple[float, float]]
PieceSpec = tuple[str, Corners, str]
ALLOWANCE = Fraction(1, 4)


def ring_of(corners: Corners) -> tuple[Edge, ...]:
    points = [Point(x, y) for x, y in corners]
    return tuple(Edge(a, b) for a, b in zip(points, points[1:] + points[:1], strict=True))


def offset_ring(corners: Corners, by: float) -> tuple[Edge, ...]:
    from shapely.geometry import Polygon

    grown = Polygon(corners).buffer(by, join_style="mitre", mitre_limit=2.0)
    points = list(grown.exterior.coords)[:-1]
    area = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1], strict=True))
    return ring_of(points if area > 0 else points[::-1])


def sample(
    title: str, size: tuple[float, float], grid: tuple[int, int], specs: Sequence[PieceSpec], **more: object
) -> Draft:
    """A draft of polygons. Coordinates in inches, corners clockwise as seen."""
    from shapely.geometry import Polygon

    width, height = size
    pieces = []
    for number, (fabric, corners, _) in enumerate(specs, 1):
        polygon = Polygon(corners)
        inside = polygon.representative_point()
        ring = tuple(
            Side(edge, (Part(edge, _neighbour(edge, specs, number)),), ALLOWANCE) for edge in ring_of(corners)
        )
        pieces.append(Piece(number, None, fabric, ring, (), polygon.area, Point(inside.x, inside.y)))
    labels = list(dict.fromkeys(label for _, _, label in specs))
    shapes = tuple(
        Shape(
            label,
            tuple(Member(n, 0.0, False) for n, spec in enumerate(specs, 1) if spec[2] == label),
            False,
            1,
        )
        for label in labels
    )
    return Draft(
        title, int(more.pop("version", 1)), width, height,  # type: ignore[call-overload]
        ring_of(((0, 0), (width, 0), (width, height), (0, height))),
        tuple(width * k / grid[0] for k in range(grid[0] + 1)),
        tuple(height * k / grid[1] for k in range(grid[1] + 1)),
        tuple(pieces), shapes, (), TrimRule(), ALLOWANCE, (), graph=graph_of(pieces), **more,  # type: ignore[arg-type]
    )  # fmt: skip


def _neighbour(edge: Edge, specs: Sequence[PieceSpec], own: int) -> int | None:
    from shapely.geometry import Point as Place
    from shapely.geometry import Polygon

    mid = Place((edge.start.x + edge.end.x) / 2, (edge.start.y + edge.end.y) / 2)
    near = [
        n for n, (_, corners, _) in enumerate(specs, 1) if n != own and Polygon(corners).distance(mid) < 1e-6
    ]
    return near[0] if near else None


def templates_of(draft: Draft, size: int = 6) -> tuple[Template, ...]:
    """A template for every shape, mitred by shapely and blunted at its points."""
    made = []
    for shape in draft.shapes:
        members = [draft.pieces[member.piece - 1] for member in shape.members]
        corners = [(float(side.edge.start.x), float(side.edge.start.y)) for side in members[0].ring]
        counts: dict[str, int] = {}
        for piece in members:
            counts[piece.fabric] = counts.get(piece.fabric, 0) + 1
        made.append(
            Template(
                shape.label, draft.title, draft.version, draft.maker, size, size,
                ring_of(corners), (), offset_ring(corners, 0.25), (),
                tuple(Point(x, y) for x, y in corners), Fraction(1, 16), (),
                (GrainArrow(0.0, tuple(p.number for p in members)),),
                tuple(FabricCount(fabric, n, 0) for fabric, n in counts.items()),
                shape.reversible, tuple(p.number for p in members),
            )
        )  # fmt: skip
    return tuple(made)


def turned(corners: Corners, quarters: int, about: tuple[float, float]) -> list[tuple[float, float]]:
    cx, cy = about
    out = [(float(x), float(y)) for x, y in corners]
    for _ in range(quarters):
        out = [(cx - (y - cy), cy + (x - cx)) for x, y in out]
    return out


def vane(title: str = "Tidewater Vane", version: int = 2, size: float = 9.0) -> Draft:
    """Twenty-one pieces of five shapes, by quarter turns, as in block_files.VANE."""
    near, far, gate = size / 3, size * 2 / 3, size / 3 + size * 5 / 36
    kinds = (
        ("light", ((near, near), (gate, 0.0), (far, near)), "A"),
        ("background", ((near, near), (near, 0.0), (gate, 0.0)), "B"),
        ("background", ((gate, 0.0), (far, 0.0), (far, near)), "C"),
        ("dark", ((0.0, 0.0), (near, 0.0), (near, near)), "D"),
        ("background", ((0.0, 0.0), (near, near), (0.0, near)), "D"),
    )
    middle = (size / 2, size / 2)
    specs = [(cloth, turned(ring, q, middle), label) for q in range(4) for cloth, ring, label in kinds]
    keel = ((near, near), (far, near), (far, far), (near, far))
    specs.append(("medium", keel, "E"))
    return sample(title, (size, size), (3, 3), specs, version=version, maker="Orla Fenn")


def nine(size: float, fabrics: Sequence[str] = ("dark", "light"), count: int = 3) -> Draft:
    """A chequered block of squares."""
    step = size / count
    specs = []
    for row in range(count):
        for column in range(count):
            x, y = column * step, row * step
            corners = ((x, y), (x + step, y), (x + step, y + step), (x, y + step))
            specs.append((fabrics[(row + column) % len(fabrics)], corners, "A"))
    return sample(f"Chequer {count}", (size, size), (count, count), specs)


def spokes(size: float, count: int) -> Draft:
    """A wheel of narrow points about the centre: needle points and many templates."""
    h = size / 2
    ring = [_on_square(2 * pi * k / count, h) for k in range(count)]
    specs = []
    for k in range(count):
        p, q = ring[k], ring[(k + 1) % count]
        corners = [(h, h), p, q]
        corner = _corner_between(p, q, size)
        if corner:
            corners.insert(2, corner)
        specs.append((("dark", "light", "rose", "navy")[k % 4], corners, _letters(k)))
    return sample(
        "Wheel of Very Long Titles that Goes On and On Beyond any Sensible Width of a Page, and Some",
        (size, size),
        (4, 4),
        specs,
    )


def _letters(k: int) -> str:
    return chr(65 + k) if k < 26 else chr(64 + k // 26) + chr(65 + k % 26)


def _on_square(angle: float, h: float) -> tuple[float, float]:
    dx, dy = sin(angle + 0.01), -cos(angle + 0.01)
    t = h / max(abs(dx), abs(dy))
    return h + dx * t, h + dy * t


def _corner_between(
    p: tuple[float, float], q: tuple[float, float], size: float
) -> tuple[float, float] | None:
    if abs(p[0] - q[0]) < 1e-9 or abs(p[1] - q[1]) < 1e-9:
        return None
    return (size if p[0] + q[0] > size else 0.0, size if p[1] + q[1] > size else 0.0)


def with_curve(template: Template) -> Template:
    """A quarter circle of 3in with its allowance, match marks along the arc."""
    centre = Point(0.0, 0.0)
    sew = (
        Edge(Point(0, 0), Point(3.0, 0.0)),
        Edge(Point(3.0, 0.0), Point(0.0, 3.0), Arc(centre, 3.0, True)),
        Edge(Point(0.0, 3.0), Point(0, 0)),
    )
    r = 3.25
    x = (r * r - 0.0625) ** 0.5
    cut = (
        Edge(Point(-0.25, -0.25), Point(x, -0.25)),
        Edge(Point(x, -0.25), Point(-0.25, x), Arc(centre, r, True)),
        Edge(Point(-0.25, x), Point(-0.25, -0.25)),
    )
    marks = tuple(
        MatchMark(Point(3 * cos(t), 3 * sin(t)), Point(cos(t), sin(t)), 0.25)
        for t in (pi / 8, pi / 4, 3 * pi / 8)
    )
    from dataclasses import replace

    return replace(template, sew=sew, cut=cut, dots=tuple(edge.start for edge in sew), marks=marks)


def scraps(count: int) -> Draft:
    """Squares of an inch in rows of twelve, each of its own cloth."""
    specs = []
    for number in range(count):
        x, y = number % 12, number // 12
        specs.append((f"cloth{number}", ((x, y), (x + 1, y), (x + 1, y + 1), (x, y + 1)), "A"))
    rows = (count + 11) // 12
    return sample("Scraps", (12, rows), (12, rows), specs)
