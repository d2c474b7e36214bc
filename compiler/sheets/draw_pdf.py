"""Pages to a PDF: every mark painted where layout put it, all pages on one surface. Decides nothing.

Points in, points out: cairo's unit for PDF is the point (ISO 32000), x right and y down as ours. One surface
for all pages embeds each face once. cairo keeps places to 1/256 point, about 1/18000in.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from io import BytesIO
from math import radians
from typing import Any, Final

from .ink import Ink, load
from .lettering import printable, width_of
from .page import Document, Mark, PathMark, Segment, TextMark
from .typeface import MachineLacks
from .wording import plain

__all__ = ["MachineLacks", "paint"]

MADE: Final = "2000-01-01T00:00:00Z"
"""The date of creation in every PDF: the same pages give the same bytes, whatever the clock says."""

CREATOR: Final = "Piecewright"
SHARE: Final = {"start": 0.0, "middle": 0.5, "end": 1.0}  # of a line's width that lies left of its anchor


def paint(document: Document) -> bytes:
    """The document as cairo writes it, with information and bookmarks; `finish_pdf` completes it."""
    ink = load()
    out = BytesIO()
    surface = ink.module.PDFSurface(out, document.pages[0].width, document.pages[0].height)
    surface.restrict_to_version(ink.module.PDF_VERSION_1_4)  # a plain cross-reference table, for finish_pdf
    _describe(surface, ink, document)
    context = ink.module.Context(surface)
    brush = _Brush(ink, context._pointer)
    for number, page in enumerate(document.pages, start=1):
        surface.set_size(page.width, page.height)
        surface.add_outline(ink.module.PDF_OUTLINE_ROOT, plain(page.title), f"page={number} pos=[0 0]")
        brush.paint(page.marks)
        surface.show_page()
    surface.finish()
    return out.getvalue()


def _describe(surface: Any, ink: Ink, document: Document) -> None:
    for key, words in (
        (ink.module.PDF_METADATA_TITLE, document.title),
        (ink.module.PDF_METADATA_SUBJECT, document.subject),
        (ink.module.PDF_METADATA_AUTHOR, document.author),
        (ink.module.PDF_METADATA_KEYWORDS, document.keywords),
        (ink.module.PDF_METADATA_CREATOR, CREATOR),
        (ink.module.PDF_METADATA_CREATE_DATE, MADE),
    ):
        if words:
            surface.set_metadata(key, plain(words))


@dataclass(slots=True)
class _Brush:
    """Paints marks on one context, and remembers what is set there, so that nothing is set twice.

    cairo's functions are called by pointer: the wrapping of cairocffi's methods costs more than the drawing.
    """

    ink: Ink
    pointer: Any
    colour: tuple[float, float, float] | None = None
    width: float | None = None
    dash: tuple[float, ...] = ()
    lettering: tuple[float, bool] | None = None
    fonts: dict[tuple[float, bool], Any] = field(default_factory=dict)

    def paint(self, marks: Iterable[Mark]) -> None:
        """Every mark, in order: later ones lie over earlier ones."""
        self.ink.call.cairo_set_line_join(self.pointer, self.ink.module.LINE_JOIN_ROUND)
        for mark in marks:
            if isinstance(mark, PathMark):
                self._draw(mark)
            else:
                self._letter(mark)

    def _draw(self, mark: PathMark) -> None:
        call, pointer = self.ink.call, self.pointer
        if mark.clip is not None:
            self._trace(mark.clip)
            call.cairo_clip(pointer)
        self._trace(mark.path)
        if mark.fill is not None:
            self._take_colour(mark.fill)
            call.cairo_fill_preserve(pointer)
        if mark.stroke is not None:
            self._take_colour(mark.stroke)
            self._take_line(mark.width, mark.dash)
            call.cairo_stroke(pointer)
        else:
            call.cairo_new_path(pointer)
        if mark.clip is not None:
            call.cairo_reset_clip(pointer)

    def _trace(self, path: tuple[Segment, ...]) -> None:
        call, pointer = self.ink.call, self.pointer
        for segment in path:
            match segment[0]:
                case "L":
                    call.cairo_line_to(pointer, segment[1], segment[2])
                case "M":
                    call.cairo_move_to(pointer, segment[1], segment[2])
                case "C":
                    call.cairo_curve_to(pointer, *segment[1:])
                case "Z":
                    call.cairo_close_path(pointer)

    def _take_colour(self, colour: tuple[float, float, float]) -> None:
        if colour != self.colour:
            self.ink.call.cairo_set_source_rgb(self.pointer, *colour)
            self.colour = colour

    def _take_line(self, width: float, dash: tuple[float, ...]) -> None:
        if width != self.width:
            self.ink.call.cairo_set_line_width(self.pointer, width)
            self.width = width
        if dash != self.dash:
            self.ink.call.cairo_set_dash(self.pointer, dash, len(dash), 0.0)
            self.dash = dash

    def _letter(self, mark: TextMark) -> None:
        call, pointer = self.ink.call, self.pointer
        text = printable(mark.text)
        if not text:
            return
        self._take_colour(mark.fill)
        self._take_lettering(mark.size, mark.bold)
        left = SHARE[mark.anchor] * width_of(text, mark.size, mark.bold) if mark.anchor != "start" else 0.0
        if not mark.turned:
            call.cairo_move_to(pointer, mark.x - left, mark.y)
            call.cairo_show_text(pointer, text.encode())
        else:
            call.cairo_save(pointer)
            call.cairo_translate(pointer, mark.x, mark.y)
            call.cairo_rotate(pointer, radians(mark.turned))  # clockwise: y runs down
            call.cairo_move_to(pointer, -left, 0.0)
            call.cairo_show_text(pointer, text.encode())
            call.cairo_restore(pointer)
        call.cairo_new_path(pointer)

    def _take_lettering(self, size: float, bold: bool) -> None:
        wanted = (size, bold)
        if wanted != self.lettering:
            if wanted not in self.fonts:
                self.fonts[wanted] = self.ink.font(size, bold)
            self.ink.call.cairo_set_scaled_font(self.pointer, self.fonts[wanted]._pointer)
            self.lettering = wanted
