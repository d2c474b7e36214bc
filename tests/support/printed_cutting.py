"""What a maker reads off the printed pages of a quilt: the cutting chart, the counts, the cutting pictures.

Only marks and words of the pages are read, nothing of the plan that they were drawn from. Inches, once a
section's scale is known; before that points.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from unicodedata import numeric

from piecewright.sheets.page import Document, PathMark, TextMark
from shapely.geometry import Polygon
from shapely.geometry import box as rectangle

from .arranged import ends, rings

MEASURE = re.compile(r"(\d+(?:\.\d+)?)?\s?(?:(\d+)/(\d+)|([¼½¾⅐-⅞]))?in\b")
DRAWN = 0.01  # points: the rounding of places on a page
CUT_INTO = re.compile(r"cut into (\d+)")

Box = tuple[float, float, float, float]


@dataclass
class ChartRow:
    """One cut of the chart: how often, in what words, how many pieces, what for."""

    cuts: int
    what: str
    pieces: int
    purpose: str


@dataclass
class Section:
    """One fabric's cutting pictures: what its letters stand for, and its cloths in views."""

    title: str
    under: str = ""
    keys: dict[str, str] = field(default_factory=dict)
    views: list[View] = field(default_factory=list)


@dataclass
class View:
    """A cloth, or the part of it on one page: cuts in the order of their numbers, pieces by letter."""

    cloth: Box
    slices: dict[int, Box] = field(default_factory=dict)
    pieces: list[tuple[str, Polygon]] = field(default_factory=list)


def measures(words: str) -> list[float]:
    """`3⅞in x 2in` as 3.875 and 2."""
    found = []
    for whole, top, bottom, glyph in MEASURE.findall(words):
        part = int(top) / int(bottom) if bottom else numeric(glyph) if glyph else 0.0
        found.append(float(whole or 0) + part)
    return found


def read_chart(document: Document) -> dict[str, dict[str, ChartRow]]:
    """The chart's rows by fabric's title and letter. Columns are told by where their heads stand."""
    titles: dict[str, str] = {}
    columns: dict[str, list[str]] = {}
    cells: dict[tuple[str, str], dict[str, list[str]]] = {}
    title = ""
    for mark in _texts(document):
        if mark.role == "section":
            title = mark.text
        elif mark.text in ("key", "cut", "what", "pieces it gives", "for", "why, and what then"):
            columns.setdefault(mark.text, [])
            columns[mark.text].append(f"{mark.x:.1f}")
        elif mark.role == "table":
            name = next((head for head, places in columns.items() if f"{mark.x:.1f}" in places), "")
            key = mark.subject.split()[-1]
            titles[mark.subject] = title
            cells.setdefault((title, key), {}).setdefault(name, []).append(mark.text)
    rows: dict[str, dict[str, ChartRow]] = {}
    for (of, key), row in cells.items():
        words = {name: " ".join(lines) for name, lines in row.items()}
        rows.setdefault(of, {})[key] = ChartRow(
            int(words["cut"]), words["what"], int(words["pieces it gives"].split()[0]), words["for"]
        )
    return rows


def read_totals(document: Document) -> dict[str, int]:
    """Pieces of the top by fabric's title, from the counts."""
    lines = [mark.text for mark in _texts(document) if mark.subject.startswith("fabric ")]
    return dict(zip(lines[::2], map(int, lines[1::2]), strict=True))


def read_pictures(document: Document) -> list[Section]:
    """The cutting pictures, fabric by fabric."""
    sections: list[Section] = []
    last = None
    for mark in (mark for page in document.pages for mark in page.marks):
        if isinstance(mark, TextMark):
            if mark.role == "section" and (not sections or sections[-1].title != mark.text):
                sections.append(Section(mark.text))
            elif isinstance(last, TextMark) and last.role == "section":
                sections[-1].under = mark.text
            elif isinstance(last, TextMark) and last.role == "key":
                sections[-1].keys[last.text] = mark.text
        elif sections:
            _add_drawn(sections[-1].views, mark)
        last = mark
    return sections


def _add_drawn(views: list[View], mark: PathMark) -> None:
    if mark.role == "left-over":
        views.append(View(Polygon(rings(mark)[0]).bounds))
    elif mark.role == "slice":
        (ax, ay), (bx, by) = ends(mark)
        views[-1].slices[int(mark.subject)] = (min(ax, bx), min(ay, by), max(ax, bx), max(ay, by))
    elif mark.role == "piece":
        views[-1].pieces.append((mark.subject, Polygon(rings(mark)[0])))


def _texts(document: Document) -> Iterator[TextMark]:
    return (mark for page in document.pages for mark in page.marks if isinstance(mark, TextMark))


def parted(view: View) -> list[Box]:
    """The cloth parted by its cuts in their order; each must run from edge to edge of what is there."""
    there = [view.cloth]
    for number in sorted(view.slices):
        cut = view.slices[number]
        if _edge(view, cut):
            continue
        halves = [(each, parts) for each in there if (parts := _halves(each, cut))]
        assert len(halves) == 1, f"cut {number} does not run from edge to edge of one piece of cloth"
        there.remove(halves[0][0])
        there += halves[0][1]
    return there


def _edge(view: View, cut: Box) -> bool:
    """Whether a cut lies on the view's own edge: between one page's strips and the next's."""
    return any(abs(cut[1] - y) < DRAWN > abs(cut[3] - y) for y in (view.cloth[1], view.cloth[3]))


def _halves(piece: Box, cut: Box) -> Sequence[Box]:
    left, top, right, bottom = piece
    near = lambda one, two: abs(one - two) < DRAWN  # noqa: E731
    if near(cut[0], left) and near(cut[2], right) and top + DRAWN < cut[1] < bottom - DRAWN:
        return (left, top, right, cut[1]), (left, cut[1], right, bottom)
    if near(cut[1], top) and near(cut[3], bottom) and left + DRAWN < cut[0] < right - DRAWN:
        return (left, top, cut[0], bottom), (cut[0], top, right, bottom)
    return ()


def is_box(words: str, shape: Polygon) -> bool:
    """Whether a piece is cut out by straight cuts alone: a rectangle, and not round a template."""
    return not words.startswith("template") and abs(rectangle(*shape.bounds).area - shape.area) < DRAWN


def sides(shape: Polygon) -> tuple[float, float]:
    """The shorter and the longer side of its box, in points."""
    left, top, right, bottom = shape.bounds
    short, long = sorted((right - left, bottom - top))
    return short, long


def cut_into(words: str) -> int:
    """How many pieces each box of a letter is cut into."""
    found = CUT_INTO.search(words)
    return int(found.group(1)) if found else 1
