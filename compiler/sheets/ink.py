"""The drawing library cairo, loaded with our two faces and no others.

Text must come out alike on every machine, with whatever fonts or none installed. So before cairo looks for
a font, fontconfig (the library that finds fonts for it) is given a configuration held in memory, of just the
two files that `typeface` measures: nothing is read from the machine's own configuration, its environment or a
home folder, and nothing is written to a cache.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Any, Final

from .lettering import width_of
from .typeface import FAMILY, FontMissing, MachineLacks, font_file

FONTCONFIG_NAMES: Final = ("libfontconfig.so.1", "libfontconfig.1.dylib", "libfontconfig-1.dll")

WITNESS: Final = "Cut 3⅛in of dark"
"""Set once by cairo and measured by us: where the widths differ, cairo has found another face than ours."""

WITNESS_SIZE: Final = 1000.0  # points: an em of our faces is 1000 units, so the width is a whole number
WITNESS_SLACK: Final = 0.5  # points in that size; another face is off by hundreds


class CairoMissing(MachineLacks):
    """The drawing library, or the one that finds fonts for it, is not installed."""


@dataclass(frozen=True, slots=True)
class Ink:
    """cairo's functions, and the two faces (regular, bold) as cairo knows them.

    `module` is cairocffi; `call` its library, whose functions are called with pointers straight away where
    thousands of marks make the module's own wrapping felt.
    """

    module: Any
    call: Any
    faces: tuple[Any, Any]

    def font(self, size: float, bold: bool) -> Any:
        """The face at a size in points, unhinted, ready to set."""
        options = self.module.FontOptions(
            antialias=self.module.ANTIALIAS_GRAY,  # no coloured fringes in pictures
            hint_style=self.module.HINT_STYLE_NONE,
            hint_metrics=self.module.HINT_METRICS_OFF,
        )
        return self.module.ScaledFont(self.faces[bold], self.module.Matrix(xx=size, yy=size), None, options)

    def advance(self, text: str, size: float, bold: bool) -> float:
        """How many points cairo moves on when it sets the text: what `lettering.width_of` foretells."""
        advance: float = self.font(size, bold).text_extents(text)[4]
        return advance


@cache
def load() -> Ink:
    """cairo with our faces. CairoMissing or FontMissing where this machine lacks a part."""
    _offer_only_our_fonts()
    try:
        import cairocffi
    except OSError as fault:
        raise CairoMissing("The library cairo is missing: install it (on Debian: libcairo2).") from fault
    faces = tuple(
        cairocffi.ToyFontFace(FAMILY, cairocffi.FONT_SLANT_NORMAL, weight)
        for weight in (cairocffi.FONT_WEIGHT_NORMAL, cairocffi.FONT_WEIGHT_BOLD)
    )
    ink = Ink(cairocffi, cairocffi.cairo, faces)
    for bold in (False, True):
        off = ink.advance(WITNESS, WITNESS_SIZE, bold) - width_of(WITNESS, WITNESS_SIZE, bold)
        if abs(off) > WITNESS_SLACK:
            raise FontMissing(f"cairo cannot find the typeface {FAMILY}: install font-source-sans-pro again.")
    return ink


def _offer_only_our_fonts() -> None:
    from ctypes import c_char_p, c_void_p

    finder = _font_finder()
    finder.FcConfigCreate.restype = c_void_p
    finder.FcConfigAppFontAddFile.argtypes = (c_void_p, c_char_p)
    finder.FcConfigSetCurrent.argtypes = (c_void_p,)
    offered = finder.FcConfigCreate()
    for bold in (False, True):
        path = font_file(bold)
        if not finder.FcConfigAppFontAddFile(offered, str(path).encode()):
            raise FontMissing(f"{path.name} cannot be read: install font-source-sans-pro again.")
    finder.FcConfigSetCurrent(offered)


def _font_finder() -> Any:
    """The library fontconfig, by the name it has where cairo itself is linked to it."""
    from ctypes import CDLL

    for name in FONTCONFIG_NAMES:
        try:
            return CDLL(name)
        except OSError:
            continue
    raise CairoMissing("The library fontconfig is missing: install it (on Debian: libfontconfig1).")
