"""Reading arranged pages: their marks by role, as points, rings and boxes."""

from __future__ import annotations

from dataclasses import replace
from itertools import chain

from piecewright.sheets.drawing.lettering import ascent, cap_height, descent, width_of
from piecewright.sheets.page import Page, PathMark, TextMark

Spot = tuple[float, float]
Box = tuple[float, float, float, float]


def paths(page: Page, role: str, subject: str | None = None) -> list[PathMark]:
    return [
        mark
        for mark in page.marks
        if isinstance(mark, PathMark) and mark.role == role and subject in (None, mark.subject)
    ]


def text_box(mark: TextMark) -> Box:
    """The box round a level line of text, from the tallest letters to the deepest."""
    width = width_of(mark.text, mark.size, mark.bold)
    left = mark.x - {"start": 0.0, "middle": width / 2, "end": width}[mark.anchor]
    top = mark.y - ascent(mark.size, mark.bold)
    return left, top, left + width, mark.y + descent(mark.size, mark.bold)


def texts(page: Page) -> list[TextMark]:
    return [mark for mark in page.marks if isinstance(mark, TextMark)]


def ends(mark: PathMark) -> list[tuple[float, float]]:
    return [segment[-2:] for segment in mark.path if len(segment) > 1]


def rings(mark: PathMark) -> list[list[tuple[float, float]]]:
    """The corners of each closed part of a path, curves followed in small steps."""
    found: list[list[tuple[float, float]]] = []
    for segment in mark.path:
        if segment[0] == "M":
            found.append([segment[1:3]])
        elif segment[0] == "L":
            found[-1].append(segment[1:3])
        elif segment[0] == "C":
            found[-1].extend(along_curve(found[-1][-1], segment[1:]))
    return found


def along_curve(start: tuple[float, float], rest: tuple[float, ...]) -> list[tuple[float, float]]:
    (x0, y0), (x1, y1, x2, y2, x3, y3) = start, rest
    steps = []
    for number in range(1, 25):
        t = number / 24
        a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
        steps.append((a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3))
    return steps


def tight_box(mark: TextMark) -> tuple[float, float, float, float]:
    """The box of a line of text from the height of its capitals to its deepest letters."""
    left, _, right, bottom = text_box(mark)
    single = len(mark.text) <= 2 and mark.text.isupper()
    return left, mark.y - cap_height(mark.size, mark.bold), right, mark.y if single else bottom


def extent(mark: PathMark | TextMark) -> tuple[float, float, float, float]:
    if isinstance(mark, TextMark):
        if mark.turned:
            reach = (text_box(mark)[2] - text_box(mark)[0]) / 2
            return mark.x - 9, mark.y - 9, mark.x + 9, mark.y + 9 if reach else mark.y
        return text_box(mark)
    points = list(chain(*rings(mark if mark.clip is None else replace(mark, path=mark.clip))))
    half = mark.width / 2 if mark.clip is None else 0.0
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs) - half, min(ys) - half, max(xs) + half, max(ys) + half
