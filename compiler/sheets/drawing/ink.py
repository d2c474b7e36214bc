"""The drawing library cairo, loaded with our two faces and no others.

Text must come out alike on every machine, with whatever fonts or none installed. So before cairo looks for
a font, fontconfig (the library that finds fonts for it) is given a configuration held in memory, of just the
two files that `typeface` measures: nothing is read from the machine's own configuration, its environment or a
home folder, and nothing is written to a cache.
"""

from __future__ import annotations

from ctypes import c_void_p
from dataclasses import field
from functools import cache
from typing import Any, Final

from ...measure.record import record
from ...words.pages.drawing import face_not_found, face_unreadable
from .cairo_library import SLANT_NORMAL, WEIGHT, advance_of, cairo, fontconfig, scaled_font
from .lettering import width_of
from .typeface import FAMILY, FontMissing, font_file

WITNESS: Final = "Cut 3⅛in of dark"
"""Set once by cairo and measured by us: where the widths differ, cairo has found another face than ours."""

WITNESS_SIZE: Final = 1000.0  # points: an em of our faces is 1000 units, so the width is a whole number
WITNESS_SLACK: Final = 0.5  # points in that size; another face is off by hundreds


@record
class Ink:
    """cairo's functions, and the two faces (regular, bold) as cairo knows them."""

    call: Any
    faces: tuple[Any, Any]
    fonts: dict[tuple[float, bool], Any] = field(default_factory=dict)  # made so far; there are a dozen sizes

    def font(self, size: float, bold: bool) -> Any:
        """The face at a size in points, ready to set."""
        wanted = (size, bold)
        if wanted not in self.fonts:
            self.fonts[wanted] = scaled_font(self.faces[bold], size)
        return self.fonts[wanted]

    def advance(self, text: str, size: float, bold: bool) -> float:
        """How many points cairo moves on when it sets the text: what `lettering.width_of` foretells."""
        return advance_of(self.font(size, bold), text)


@cache
def load() -> Ink:
    """cairo with our faces. CairoMissing or FontMissing where this machine lacks a part."""
    _offer_only_our_fonts()
    call = cairo()
    regular, bold = (
        call.cairo_toy_font_face_create(FAMILY.encode(), SLANT_NORMAL, WEIGHT[weight])
        for weight in (False, True)
    )
    ink = Ink(call, (regular, bold))
    for weight in (False, True):
        off = ink.advance(WITNESS, WITNESS_SIZE, weight) - width_of(WITNESS, WITNESS_SIZE, weight)
        if abs(off) > WITNESS_SLACK:
            raise FontMissing(face_not_found(FAMILY))
    return ink


def _offer_only_our_fonts() -> None:
    finder = fontconfig()
    offered = c_void_p(finder.FcConfigCreate())
    for bold in (False, True):
        path = font_file(bold)
        if not finder.FcConfigAppFontAddFile(offered, str(path).encode()):
            raise FontMissing(face_unreadable(path.name))
    finder.FcConfigSetCurrent(offered)
