"""A finished page: a size and a flat, frozen list of marks at fixed positions. Nothing else crosses from
layout to drawing.

Positions are in points (1/72 inch, ISO 32000), x right and y down from the page's top left corner.
"""

from __future__ import annotations

from typing import Literal

from ..measure.record import record

Segment = (
    tuple[Literal["M"], float, float]
    | tuple[Literal["L"], float, float]
    | tuple[Literal["C"], float, float, float, float, float, float]
    | tuple[Literal["Z"]]
)


@record
class PathMark:
    """A stroked or filled path. Greys and colours are (red, green, blue) from 0 to 1; None: not drawn.

    `role` says what it is, for tests and readers of the page: 'cut', 'sew', 'dot', 'match', 'grain',
    'leader', 'check-square', 'check-bar', 'seam', 'grid', 'outline', 'fill', 'texture', 'rule', 'legend',
    'join', 'swatch', 'map'. `subject` is the template's label or the piece's number where it belongs to one.
    """

    path: tuple[Segment, ...]
    stroke: tuple[float, float, float] | None = (0.0, 0.0, 0.0)
    width: float = 0.8
    dash: tuple[float, ...] = ()
    fill: tuple[float, float, float] | None = None
    role: str = ""
    subject: str = ""
    clip: tuple[Segment, ...] | None = None  # drawn only inside this path


@record
class TextMark:
    """A line of text; (x, y) is on its baseline at the anchor. Size in points. Set level with the page unless
    `turned` (degrees clockwise about (x, y))."""

    x: float
    y: float
    text: str
    size: float = 8.5
    bold: bool = False
    anchor: Literal["start", "middle", "end"] = "start"
    fill: tuple[float, float, float] = (0.0, 0.0, 0.0)
    role: str = "text"
    subject: str = ""
    turned: float = 0.0


Mark = PathMark | TextMark


@record
class Page:
    """One page. `title` names it in bookmarks, where it stands under `part` if it has one."""

    width: float
    height: float
    title: str
    marks: tuple[Mark, ...]
    part: str = ""


@record
class Document:
    """All pages of one build, with its document information."""

    title: str
    subject: str  # "version 2, 6in finished"
    author: str
    keywords: str
    pages: tuple[Page, ...]
