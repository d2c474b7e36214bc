"""Marks to ink on a cairo context, where layout put them. Decides nothing.

Points in; what a point is on the surface is for the context's owner to say. cairo keeps places to 1/256 of
the surface's own unit: in a PDF, about 1/18000in.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import radians
from typing import Any

from ..page import Mark, PathMark, Segment, TextMark
from .cairo_library import LINE_JOIN_ROUND
from .ink import Ink
from .lettering import printable
from .lines import left_of_anchor


@dataclass(slots=True)
class Brush:
    """Paints on one context, and remembers what is set there, so that nothing is set twice."""

    ink: Ink
    pointer: Any  # of the context; its owner keeps the context alive
    colour: tuple[float, float, float] | None = None
    width: float | None = None
    dash: tuple[float, ...] = ()
    lettering: tuple[float, bool] | None = None

    def paint(self, marks: Iterable[Mark]) -> None:
        """Every mark, in order: later ones lie over earlier ones."""
        self.ink.call.cairo_set_line_join(self.pointer, LINE_JOIN_ROUND)
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
        left = left_of_anchor(mark)
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
            self.ink.call.cairo_set_scaled_font(self.pointer, self.ink.font(size, bold))
            self.lettering = wanted
