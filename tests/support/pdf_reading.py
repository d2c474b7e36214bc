"""What a finished PDF holds, read back from its own numbers by another library than the one that wrote it.

Positions are in points, x right and y down from the page's top left, as in `piecewright.sheets.page`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from io import BytesIO
from math import hypot

from pypdf import PdfReader
from pypdf.generic import ContentStream, DictionaryObject

INCH = 72.0  # points: ISO 32000-1, 8.3.2.3

Point = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]


@dataclass(frozen=True)
class ReadPath:
    """One painted path. `subpaths`: corners, without the handles of curves; `curves`: all, as drawn."""

    subpaths: tuple[tuple[Point, ...], ...]
    closed: tuple[bool, ...]
    curves: tuple[tuple[str, tuple[Point, ...]], ...]
    stroked: bool
    filled: bool
    width: float  # points
    dash: tuple[float, ...]
    ink: tuple[float, ...]  # of the stroke, else of the fill
    clip: tuple[tuple[Point, ...], ...]  # the corners of the path it is clipped to; empty: none

    @property
    def corners(self) -> tuple[Point, ...]:
        return tuple(point for subpath in self.subpaths for point in subpath)


@dataclass(frozen=True)
class ReadText:
    """One line of lettering, from its first letter's place on the baseline to its end."""

    text: str
    x: float
    y: float
    size: float
    font: str  # without the subset's tag
    end: Point


@dataclass(frozen=True)
class ReadPage:
    width: float
    height: float
    paths: tuple[ReadPath, ...]
    texts: tuple[ReadText, ...]


def read_pages(pdf: bytes) -> list[ReadPage]:
    """Every page's paths and lettering, in the order they were painted."""
    reader = PdfReader(BytesIO(pdf), strict=True)
    pages = []
    for page in reader.pages:
        height = float(page.mediabox.height)
        reading = _Reading(reader, (1, 0, 0, -1, 0, height))
        reading.run(page.get_contents(), page["/Resources"])
        pages.append(ReadPage(float(page.mediabox.width), height, tuple(reading.paths), tuple(reading.texts)))
    return pages


def multiply(first: Matrix, then: Matrix) -> Matrix:
    a, b, c, d, e, f = first
    g, h, i, j, k, m = then
    return (a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + m)


def apply(matrix: Matrix, x: float, y: float) -> Point:
    a, b, c, d, e, f = matrix
    return a * x + c * y + e, b * x + d * y + f


@dataclass
class _State:
    matrix: Matrix
    width: float = 1.0
    dash: tuple[float, ...] = ()
    stroke: tuple[float, ...] = (0.0,)
    fill: tuple[float, ...] = (0.0,)
    clip: tuple[tuple[Point, ...], ...] = ()
    font: _Font | None = None
    size: float = 1.0

    def copy(self) -> _State:
        return _State(**vars(self))

    @property
    def scale(self) -> float:
        return hypot(self.matrix[0], self.matrix[1])


@dataclass
class _Font:
    """A font's letters and their advances, in ems."""

    name: str
    bytes_each: int
    letters: dict[int, str]
    widths: dict[int, float]

    @classmethod
    def of(cls, font: DictionaryObject) -> _Font:
        name = str(font["/BaseFont"]).lstrip("/").split("+")[-1]
        letters = _letters(font["/ToUnicode"].get_data().decode("latin-1")) if "/ToUnicode" in font else {}
        if font["/Subtype"] == "/Type0":
            return cls(name, 2, letters, _wide_widths(font["/DescendantFonts"][0].get_object()))
        if not letters:
            letters = {code: bytes([code]).decode("cp1252", "replace") for code in range(32, 256)}
        first = int(font["/FirstChar"])
        return cls(name, 1, letters, {first + n: float(w) / 1000 for n, w in enumerate(font["/Widths"])})


def _wide_widths(font: DictionaryObject) -> dict[int, float]:
    widths: dict[int, float] = {}
    entries = list(font["/W"])
    while entries:
        first, following = int(entries.pop(0)), entries.pop(0)
        for n, width in enumerate(following.get_object()):
            widths[first + n] = float(width) / 1000
    return widths


def _letters(cmap: str) -> dict[int, str]:
    """The ToUnicode map (ISO 32000-1, 9.10.3)."""
    letters: dict[int, str] = {}
    for block in re.findall(r"beginbfchar(.*?)endbfchar", cmap, re.S):
        for code, text in re.findall(r"<([0-9a-fA-F]+)>\s*<([0-9a-fA-F]+)>", block):
            letters[int(code, 16)] = bytes.fromhex(text).decode("utf-16-be")
    for block in re.findall(r"beginbfrange(.*?)endbfrange", cmap, re.S):
        for first, last, text in re.findall(r"<(\w+)>\s*<(\w+)>\s*<(\w+)>", block):
            start = int(text, 16)
            for n, code in enumerate(range(int(first, 16), int(last, 16) + 1)):
                letters[code] = chr(start + n)
        for first, _, texts in re.findall(r"<(\w+)>\s*<(\w+)>\s*\[(.*?)\]", block, re.S):
            for n, text in enumerate(re.findall(r"<(\w+)>", texts)):
                letters[int(first, 16) + n] = bytes.fromhex(text).decode("utf-16-be")
    return letters


@dataclass
class _Reading:
    """Runs a page's operators (ISO 32000-1, annex A)."""

    reader: PdfReader
    base: Matrix
    paths: list[ReadPath] = field(default_factory=list)
    texts: list[ReadText] = field(default_factory=list)

    def run(self, contents, resources) -> None:
        self.state = _State(self.base)
        self.stack: list[_State] = []
        self._run(contents, resources)

    def _run(self, contents, resources) -> None:
        self.drawn: list[tuple[str, tuple[Point, ...]]] = []
        self.pending = False
        self.text_matrix = self.line_matrix = (1, 0, 0, 1, 0, 0)
        for operands, operator in ContentStream(contents, self.reader).operations:
            self._step(operator.decode(), operands, resources)

    def _step(self, operator: str, operands, resources) -> None:
        state = self.state
        match operator:
            case "q":
                self.stack.append(state.copy())
            case "Q":
                self.state = self.stack.pop()
            case "cm":
                state.matrix = multiply(tuple(map(float, operands)), state.matrix)
            case "w":
                state.width = float(operands[0]) * state.scale
            case "d":
                state.dash = tuple(float(each) * state.scale for each in operands[0])
            case "G" | "RG" | "K":
                state.stroke = tuple(map(float, operands))
            case "g" | "rg" | "k":
                state.fill = tuple(map(float, operands))
            case "m" | "l" | "c" | "h" | "re":
                self._draw(operator, list(map(float, operands)))
            case "W" | "W*":
                self.pending = True
            case "S" | "s" | "f" | "F" | "f*" | "B" | "B*" | "b" | "b*" | "n":
                self._paint(operator)
            case "Do":
                form = resources["/XObject"][operands[0]]
                self.stack.append(state.copy())
                own = tuple(map(float, form.get("/Matrix", (1, 0, 0, 1, 0, 0))))
                state.matrix = multiply(own, state.matrix)
                self._run(form, form.get("/Resources", resources))
                self.state = self.stack.pop()
            case _:
                self._letter(operator, operands, resources)

    def _draw(self, operator: str, n: list[float]) -> None:
        if operator == "re":
            x, y, w, h = n
            for step, point in (("m", (x, y)), ("l", (x + w, y)), ("l", (x + w, y + h)), ("l", (x, y + h))):
                self.drawn.append((step, (apply(self.state.matrix, *point),)))
            self.drawn.append(("h", ()))
            return
        points = tuple(apply(self.state.matrix, *pair) for pair in zip(n[::2], n[1::2], strict=True))
        self.drawn.append((operator, points))

    def _paint(self, operator: str) -> None:
        if operator in "sbb*":
            self.drawn.append(("h", ()))
        subpaths: list[list[Point]] = []
        closed: list[bool] = []
        for step, points in self.drawn:
            if step == "m":
                subpaths.append([points[0]])
                closed.append(False)
            elif step == "h":
                closed[-1] = True
            else:
                subpaths[-1].append(points[-1])
        if len(subpaths) > 1 and len(subpaths[-1]) == 1:  # cairo moves the pen once more behind a closed path
            del subpaths[-1], closed[-1]
        corners = tuple(map(tuple, subpaths))
        state = self.state
        if operator != "n" and corners:
            stroked, filled = operator in "SsBB*bb*", operator not in "Ss"
            self.paths.append(ReadPath(
                corners, tuple(closed), tuple(self.drawn), stroked, filled, state.width, state.dash,
                state.stroke if stroked else state.fill, state.clip,
            ))  # fmt: skip
        if self.pending:
            state.clip = corners
        self.pending = False
        self.drawn = []

    def _letter(self, operator: str, operands, resources) -> None:
        state = self.state
        match operator:
            case "BT":
                self.text_matrix = self.line_matrix = (1, 0, 0, 1, 0, 0)
            case "Tf":
                state.font = _Font.of(resources["/Font"][operands[0]].get_object())
                state.size = float(operands[1])
            case "Tm":
                self.text_matrix = self.line_matrix = tuple(map(float, operands))
            case "Td":
                self.line_matrix = multiply((1, 0, 0, 1, *map(float, operands)), self.line_matrix)
                self.text_matrix = self.line_matrix
            case "Tj":
                self._show(operands)
            case "TJ":
                self._show(operands[0])

    def _show(self, parts) -> None:
        font, size = self.state.font, self.state.size
        assert font
        text, moved = "", 0.0
        for part in parts:
            if isinstance(part, int | float):
                moved -= float(part) / 1000 * size
                continue
            data = part.original_bytes if hasattr(part, "original_bytes") else bytes(part)
            for at in range(0, len(data), font.bytes_each):
                code = int.from_bytes(data[at : at + font.bytes_each], "big")
                text += font.letters[code]
                moved += font.widths[code] * size
        shown = multiply(self.text_matrix, self.state.matrix)
        self.text_matrix = multiply((1, 0, 0, 1, moved, 0), self.text_matrix)
        start, end = apply(shown, 0, 0), apply(shown, moved, 0)
        self._note(ReadText(text, *start, size * hypot(shown[0], shown[1]), font.name, end))

    def _note(self, found: ReadText) -> None:
        """Joins what was written in pieces: where one font has two subsets, a line changes between them."""
        last = self.texts[-1] if self.texts else None
        if last and last.font == found.font and abs(last.size - found.size) < 1e-3:
            gap = hypot(last.end[0] - found.x, last.end[1] - found.y)
            if gap < 0.02 * found.size:
                self.texts[-1] = ReadText(
                    last.text + found.text, last.x, last.y, last.size, last.font, found.end
                )
                return
        self.texts.append(found)
