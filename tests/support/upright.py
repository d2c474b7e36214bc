"""Whether a quilt's prints stand upright, told from what is printed of it alone: the picture's pieces, and
the pieces of cloth that its JSON says are cut, each as it lies with the print up. Inches.

A cloth that is cut print up and sewn into a quilt whose print is up was never turned on the way: so every
piece of the picture must be found among the cut ones by moving alone, with its allowance round it; on a
stripe, by moving and turning half round. Knows nothing of how the plan was made.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any

import networkx as nx
import numpy as np
from piecewright.sheets.page import Document, PathMark
from scipy.optimize import linprog
from shapely.affinity import rotate
from shapely.geometry import Polygon

from .arranged import rings

Shape = tuple[tuple[float, float], ...]

ALLOWANCE = 0.25  # inches, of all blocks here and of every setting
ROOM = 0.21
"""Inches of cloth that there must be beyond every corner on every side: the allowance, less what a picture
drawn small rounds off and a trimmed point lacks."""

OVER = 0.2
"""Inches on average that cloth may be cut larger than the piece and its allowances: the ruler's step, and
what the trade's rules for triangles give."""

LONGER = 8
"""Inches that a strip may be cut longer than it is: what is trimmed after it is sewn on."""

STRIPS = ("border", "sashing")
"""Parts whose strips are cut long and trimmed."""


def cloth_of_prints(numbers: Mapping[str, Any]) -> dict[str, Counter[tuple[Shape, str]]]:
    """The pieces cut from each print by its name, as they lie, each with the part and kind it is cut for."""
    cuts = {(cut["fabric"], cut["key"]): cut for cut in numbers["cutting"]}
    found: dict[str, Counter[tuple[Shape, str]]] = {}
    for fabric in numbers["fabrics"]:
        if "print" not in fabric:
            continue
        pieces = found.setdefault(fabric["name"], Counter())
        joined: dict[str, list[Mapping[str, Any]]] = {}
        for laid in (laid for cloth in fabric["cloths"] for laid in cloth["laid"]):
            cut = cuts[fabric["name"], laid["key"]]
            if cut["part"] in ("binding", "backing"):
                continue
            if cut.get("joined"):
                joined.setdefault(laid["key"], []).append(laid)
                continue
            what = "strip" if cut["part"] in STRIPS and cut["kind"] == "strip" else cut["kind"]
            pieces.update((shape, what) for shape in _shapes(cut, laid))
        for key, strips in joined.items():
            pieces.update(_joined(cuts[fabric["name"], key], strips))
    return found


def _shapes(cut: Mapping[str, Any], laid: Mapping[str, Any]) -> list[Shape]:
    """The pieces that one that is laid out gives."""
    if "outline" in cut:
        corners = Polygon([(-x if laid["reversed"] else x, y) for x, y in cut["outline"]])
        lying = rotate(corners, laid["turned"], origin=(0, 0))  # y runs down: as seen, clockwise
        left, top, right, bottom = lying.bounds
        assert abs(right - left - laid["width"]) < 1e-4 and abs(bottom - top - laid["height"]) < 1e-4
        return [_normal(list(lying.exterior.coords)[:-1])]
    assert not laid["turned"], "a print is turned across"
    w, h = laid["width"], laid["height"]
    box = [(0, 0), (w, 0), (w, h), (0, h)]
    middle = (w / 2, h / 2)
    parts = {
        "": [box],
        "falling": [[box[0], box[1], box[2]], [box[0], box[2], box[3]]],
        "rising": [[box[0], box[1], box[3]], [box[1], box[2], box[3]]],
        "both": [[box[at], box[(at + 1) % 4], middle] for at in range(4)],
    }[laid["slant"]]
    assert len(parts) == cut["yields"], "a box is cut again, and nobody says which way"
    return [_normal(part) for part in parts]


def _joined(cut: Mapping[str, Any], strips: Sequence[Mapping[str, Any]]) -> Counter[tuple[Shape, str]]:
    """The long strips that shorter ones make; all of them lie one way."""
    thick, long = sorted((cut["width"], cut["height"]))
    upright = {
        laid["height"] > laid["width"]
        if thick in (laid["width"], laid["height"]) and laid["width"] != laid["height"]
        else cut["height"] > cut["width"]
        for laid in strips
    }
    assert upright == {cut["height"] > cut["width"]}, "a strip is joined from some that lie across its print"
    w, h = (thick, long) if cut["height"] > cut["width"] else (long, thick)
    return Counter({(_normal([(0, 0), (w, 0), (w, h), (0, h)]), "strip"): cut["pieces"]})


def _normal(corners: Sequence[tuple[float, float]]) -> Shape:
    """The corners from the box's own corner on, to a thousandth of an inch, from the least on."""
    left, top = min(x for x, _ in corners), min(y for _, y in corners)
    moved = [(round(x - left, 3) + 0.0, round(y - top, 3) + 0.0) for x, y in corners]
    first = moved.index(min(moved))
    return tuple(moved[first:] + moved[:first])


def pieces_of_picture(document: Document, numbers: Mapping[str, Any]) -> dict[str, Counter[Shape]]:
    """The picture's pieces in inches, by their fabric's title."""
    marks = [mark for page in document.pages for mark in page.marks if isinstance(mark, PathMark)]
    whole = next(Polygon(rings(mark)[0]).bounds for mark in marks if mark.role == "outline")
    points = (whole[2] - whole[0]) / numbers["finished"]["width"]
    found: dict[str, Counter[Shape]] = {}
    for mark in marks:
        if mark.role == "fill" and mark.subject:
            for ring in rings(mark):
                found.setdefault(mark.subject, Counter())[
                    _normal([(x / points, y / points) for x, y in ring])
                ] += 1
    return found


def missing(cut: Counter[tuple[Shape, str]], wanted: Counter[Shape], striped: bool) -> int:
    """How many of the wanted pieces find no cut one that lies as they do: at best."""
    flow = nx.DiGraph()
    known: dict[tuple[Shape, Shape, str], bool] = {}
    for number, (piece, count) in enumerate(wanted.items()):
        flow.add_edge("quilt", ("wanted", number), capacity=count)
        for other, ((shape, kind), many) in enumerate(cut.items()):
            key = (piece, shape, kind)
            if key not in known:
                known[key] = fits(shape, piece, kind) or (striped and fits(_half_round(shape), piece, kind))
            if known[key]:
                flow.add_edge(("wanted", number), ("cut", other), capacity=count)
                flow.add_edge(("cut", other), "cloth", capacity=many)
    if "cloth" not in flow:
        return wanted.total()
    return wanted.total() - int(nx.maximum_flow_value(flow, "quilt", "cloth"))


def _half_round(shape: Shape) -> Shape:
    return _normal([(-x, -y) for x, y in shape])


def fits(cloth: Shape, piece: Shape, kind: str) -> bool:
    """Whether the piece with its allowance can be moved, never turned, into the cloth, and fills it."""
    one, other = Polygon(cloth), Polygon(piece)
    if kind == "strip":
        width, height = (side + 2 * ALLOWANCE for side in other.bounds[2:])
        over = sorted((one.bounds[2] - width, one.bounds[3] - height))
        same_way = (one.bounds[2] > one.bounds[3]) == (width > height)
        return same_way and -0.02 <= over[0] <= OVER and over[1] < LONGER
    grown = other.buffer(ALLOWANCE, join_style="mitre", mitre_limit=10)
    if one.area > grown.area + OVER * other.length or one.area < other.area:
        return False
    return room(one, other) >= ROOM


def room(cloth: Polygon, piece: Polygon) -> float:
    """The most cloth that there can be beyond every corner of the piece on every side, wherever it is moved:
    by linear programming over the sides of both hulls."""
    hull = list(cloth.convex_hull.exterior.coords)
    if cloth.convex_hull.exterior.is_ccw is False:
        hull.reverse()
    places = np.array(piece.convex_hull.exterior.coords[:-1])
    rows, most = [], []
    for (ax, ay), (bx, by) in pairwise(hull):
        long = float(np.hypot(bx - ax, by - ay))
        out = np.array([(by - ay) / long, -(bx - ax) / long])
        rows.append([*out, 1.0])
        most.append(float(out @ np.array([ax, ay])) - float((places @ out).max()))
    answer = linprog([0, 0, -1], A_ub=rows, b_ub=most, bounds=[(None, None), (None, None), (None, None)])
    return float(answer.x[2]) if answer.success else float("-inf")
