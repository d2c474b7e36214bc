"""The functions of cairo and fontconfig that sheets are painted with, called straight in the libraries.

Bindings that declare all of cairo take a tenth of a second to import, half of a small build; these few
declarations take a thousandth. Names, meanings and constants are those of cairo's reference, 1.16 (2018)
or later. Places and sizes are whatever unit the surface has: see `draw_pdf` and `draw_png`."""

from __future__ import annotations

from collections.abc import Callable
from ctypes import (
    CDLL,
    CFUNCTYPE,
    POINTER,
    Structure,
    byref,
    c_char_p,
    c_double,
    c_int,
    c_uint,
    c_void_p,
    string_at,
)
from functools import cache
from typing import Any, Final

from .typeface import MachineLacks

CAIRO_NAMES: Final = ("libcairo.so.2", "libcairo.2.dylib", "libcairo-2.dll")
FONTCONFIG_NAMES: Final = ("libfontconfig.so.1", "libfontconfig.1.dylib", "libfontconfig-1.dll")

ANTIALIAS_GRAY: Final = 2
HINT_STYLE_NONE: Final = 1
HINT_METRICS_OFF: Final = 1
LINE_JOIN_ROUND: Final = 1
SLANT_NORMAL: Final = 0
WEIGHT: Final = {False: 0, True: 1}
FORMAT_RGB24: Final = 1
PDF_VERSION_1_4: Final = 0
PDF_OUTLINE_ROOT: Final = 0
PDF_TITLE, PDF_AUTHOR, PDF_SUBJECT, PDF_KEYWORDS, PDF_CREATOR, PDF_CREATED = range(6)

_POINT: Final = (c_double, c_double)

SIGNATURES: Final[dict[str, tuple[Any, ...]]] = {
    # name: what comes back, what goes in
    "cairo_create": (c_void_p, c_void_p),
    "cairo_destroy": (None, c_void_p),
    "cairo_status": (c_int, c_void_p),
    "cairo_status_to_string": (c_char_p, c_int),
    "cairo_save": (None, c_void_p),
    "cairo_restore": (None, c_void_p),
    "cairo_translate": (None, c_void_p, *_POINT),
    "cairo_scale": (None, c_void_p, *_POINT),
    "cairo_rotate": (None, c_void_p, c_double),
    "cairo_move_to": (None, c_void_p, *_POINT),
    "cairo_line_to": (None, c_void_p, *_POINT),
    "cairo_curve_to": (None, c_void_p, *_POINT, *_POINT, *_POINT),
    "cairo_close_path": (None, c_void_p),
    "cairo_new_path": (None, c_void_p),
    "cairo_clip": (None, c_void_p),
    "cairo_reset_clip": (None, c_void_p),
    "cairo_fill_preserve": (None, c_void_p),
    "cairo_stroke": (None, c_void_p),
    "cairo_paint": (None, c_void_p),
    "cairo_set_source_rgb": (None, c_void_p, c_double, c_double, c_double),
    "cairo_set_line_width": (None, c_void_p, c_double),
    "cairo_set_line_join": (None, c_void_p, c_int),
    "cairo_set_dash": (None, c_void_p, POINTER(c_double), c_int, c_double),
    "cairo_set_scaled_font": (None, c_void_p, c_void_p),
    "cairo_show_text": (None, c_void_p, c_char_p),
    "cairo_font_options_create": (c_void_p,),
    "cairo_font_options_destroy": (None, c_void_p),
    "cairo_font_options_set_antialias": (None, c_void_p, c_int),
    "cairo_font_options_set_hint_style": (None, c_void_p, c_int),
    "cairo_font_options_set_hint_metrics": (None, c_void_p, c_int),
    "cairo_toy_font_face_create": (c_void_p, c_char_p, c_int, c_int),
    "cairo_scaled_font_create": (c_void_p, c_void_p, c_void_p, c_void_p, c_void_p),
    "cairo_scaled_font_destroy": (None, c_void_p),
    "cairo_scaled_font_text_extents": (None, c_void_p, c_char_p, c_void_p),
    "cairo_surface_finish": (None, c_void_p),
    "cairo_surface_destroy": (None, c_void_p),
    "cairo_surface_status": (c_int, c_void_p),
    "cairo_surface_show_page": (None, c_void_p),
    "cairo_surface_write_to_png_stream": (c_int, c_void_p, c_void_p, c_void_p),
    "cairo_image_surface_create": (c_void_p, c_int, c_int, c_int),
    "cairo_pdf_surface_create_for_stream": (c_void_p, c_void_p, c_void_p, *_POINT),
    "cairo_pdf_surface_restrict_to_version": (None, c_void_p, c_int),
    "cairo_pdf_surface_set_size": (None, c_void_p, *_POINT),
    "cairo_pdf_surface_set_metadata": (None, c_void_p, c_int, c_char_p),
    "cairo_pdf_surface_add_outline": (c_int, c_void_p, c_int, c_char_p, c_char_p, c_int),
}

FONT_SIGNATURES: Final[dict[str, tuple[Any, ...]]] = {
    "FcConfigCreate": (c_void_p,),
    "FcConfigAppFontAddFile": (c_int, c_void_p, c_char_p),
    "FcConfigSetCurrent": (c_int, c_void_p),
}

WRITE: Final = CFUNCTYPE(c_int, c_void_p, c_void_p, c_uint)


class CairoMissing(MachineLacks):
    """The drawing library, or the one that finds fonts for it, is not installed or too old."""


class CairoFailed(MachineLacks):
    """cairo could not draw a page: it is too large for this machine's memory, or for cairo."""


class Matrix(Structure):
    """x' = xx x + xy y + x0, y' = yx x + yy y + y0."""

    _fields_ = [(name, c_double) for name in ("xx", "yx", "xy", "yy", "x0", "y0")]


class Extents(Structure):
    """What a line of text takes up."""

    _fields_ = [
        (name, c_double) for name in ("x_bearing", "y_bearing", "width", "height", "x_advance", "y_advance")
    ]


@cache
def cairo() -> Any:
    """The library, its functions declared. CairoMissing where there is none."""
    return _declared(_opened("cairo", CAIRO_NAMES, "libcairo2"), SIGNATURES, "cairo")


@cache
def fontconfig() -> Any:
    """The library that cairo asks for fonts."""
    return _declared(_opened("fontconfig", FONTCONFIG_NAMES, "libfontconfig1"), FONT_SIGNATURES, "fontconfig")


def _opened(name: str, file_names: tuple[str, ...], package: str) -> CDLL:
    for file_name in file_names:
        try:
            return CDLL(file_name)
        except OSError:
            continue
    from ctypes.util import find_library  # slow: asks the system's own tools

    found = find_library(name)
    if found is None:
        raise CairoMissing(f"The library {name} is missing: install it (on Debian: {package}).")
    return CDLL(found)


def _declared(library: CDLL, signatures: dict[str, tuple[Any, ...]], name: str) -> CDLL:
    for function, (result, *parameters) in signatures.items():
        try:
            declared = getattr(library, function)
        except AttributeError as fault:
            raise CairoMissing(f"The library {name} is too old: it lacks {function}.") from fault
        declared.restype, declared.argtypes = result, parameters
    return library


def gathering() -> tuple[Any, list[bytes]]:
    """A function for cairo to write through, and the list that its writing gathers in. Keep both while it
    does."""
    parts: list[bytes] = []

    def write(_: object, start: int, length: int) -> int:
        parts.append(string_at(start, length))
        return 0

    return WRITE(write), parts


def check(status_of: Callable[[Any], int], pointer: Any) -> None:
    """Raises CairoFailed if anything has gone wrong on a surface or a context since it was made."""
    status = status_of(pointer)
    if status:
        raise CairoFailed(f"cairo cannot draw this page: {cairo().cairo_status_to_string(status).decode()}.")


def scaled_font(face: Any, size: float) -> Any:
    """The face at a size, unhinted and without coloured fringes: as wide on every surface."""
    call = cairo()
    options = c_void_p(call.cairo_font_options_create())
    call.cairo_font_options_set_antialias(options, ANTIALIAS_GRAY)
    call.cairo_font_options_set_hint_style(options, HINT_STYLE_NONE)
    call.cairo_font_options_set_hint_metrics(options, HINT_METRICS_OFF)
    large, plain = Matrix(size, 0, 0, size, 0, 0), Matrix(1, 0, 0, 1, 0, 0)
    font = c_void_p(call.cairo_scaled_font_create(face, byref(large), byref(plain), options))
    call.cairo_font_options_destroy(options)
    return font


def advance_of(font: Any, text: str) -> float:
    """How far cairo moves on when it sets the text."""
    extents = Extents()
    cairo().cairo_scaled_font_text_extents(font, text.encode(), byref(extents))
    advance: float = extents.x_advance
    return advance
