"""cairo, by way of cairocffi, and the library that finds fonts for it.

Marks are painted by cairo's own functions (`cairo_line_to` and the rest, as cairocffi declares them), not
through its classes: a page has thousands of calls, and each class method would cost as much again. Names,
meanings and constants are those of cairo's reference, 1.16 (2018) or later. Places and sizes are in whatever
unit the surface has: see `draw_pdf`.
"""

from __future__ import annotations

from collections.abc import Callable
from ctypes import CDLL, c_char_p, c_int, c_void_p
from functools import cache
from typing import Any, Final

from ...words.pages.drawing import NO_CAIRO, NO_FONTCONFIG, cannot_draw
from .typeface import MachineLacks

FONTCONFIG_NAMES: Final = ("libfontconfig.so.1", "libfontconfig.1.dylib", "libfontconfig-1.dll")

ANTIALIAS_GRAY: Final = 2
HINT_STYLE_NONE: Final = 1
HINT_METRICS_OFF: Final = 1
LINE_JOIN_ROUND: Final = 1
SLANT_NORMAL: Final = 0
WEIGHT: Final = {False: 0, True: 1}
PDF_VERSION_1_4: Final = 0
PDF_OUTLINE_ROOT: Final = 0
PDF_TITLE, PDF_AUTHOR, PDF_SUBJECT, PDF_KEYWORDS, PDF_CREATOR, PDF_CREATED = range(6)

FONT_SIGNATURES: Final[dict[str, tuple[Any, ...]]] = {
    # name: what comes back, what goes in
    "FcConfigCreate": (c_void_p,),
    "FcConfigAppFontAddFile": (c_int, c_void_p, c_char_p),
    "FcConfigSetCurrent": (c_int, c_void_p),
}


class CairoMissing(MachineLacks):
    """The drawing library, or the one that finds fonts for it, is not installed or too old."""


class CairoFailed(MachineLacks):
    """cairo could not draw a page: it is too large for this machine's memory, or for cairo."""


@cache
def cairo() -> Any:
    """cairo's functions. CairoMissing where the library is not on this machine."""
    try:
        from cairocffi import cairo as library
    except OSError as fault:
        raise CairoMissing(NO_CAIRO) from fault
    return library


@cache
def fontconfig() -> Any:
    """The library that cairo asks for fonts: three functions, which cairocffi does not declare."""
    for file_name in FONTCONFIG_NAMES:
        try:
            library = CDLL(file_name)
        except OSError:
            continue
        for function, (result, *parameters) in FONT_SIGNATURES.items():
            declared = getattr(library, function)
            declared.restype, declared.argtypes = result, parameters
        return library
    raise CairoMissing(NO_FONTCONFIG)


def gathering() -> tuple[Any, list[bytes]]:
    """A function for cairo to write through, and the list that its writing gathers in. Keep both while it
    does."""
    from cairocffi import ffi

    parts: list[bytes] = []

    def write(_: object, start: Any, length: int) -> int:
        parts.append(ffi.buffer(start, length)[:])
        return 0

    return ffi.callback(taken_by(cairo().cairo_pdf_surface_create_for_stream, 0), write), parts


def taken_by(function: Any, place: int) -> Any:
    """The type that a function of cairo takes at that place. Asked by its name, cffi would read it as C anew,
    and every declaration of cairo with it: some milliseconds for each."""
    from cairocffi import ffi

    return ffi.typeof(function).args[place]


def check(status_of: Callable[[Any], int], pointer: Any) -> None:
    """Raises CairoFailed if anything has gone wrong on a surface or a context since it was made."""
    status = status_of(pointer)
    if status:
        from cairocffi import ffi

        said = ffi.string(cairo().cairo_status_to_string(status)).decode()
        raise CairoFailed(cannot_draw(said))


def scaled_font(face: Any, size: float) -> Any:
    """The face at a size, unhinted and without coloured fringes: as wide on every surface."""
    from cairocffi import ffi

    call = cairo()
    options = call.cairo_font_options_create()
    call.cairo_font_options_set_antialias(options, ANTIALIAS_GRAY)
    call.cairo_font_options_set_hint_style(options, HINT_STYLE_NONE)
    call.cairo_font_options_set_hint_metrics(options, HINT_METRICS_OFF)
    matrix = taken_by(call.cairo_matrix_init, 0)
    large, plain = ffi.new(matrix), ffi.new(matrix)
    call.cairo_matrix_init(large, size, 0, 0, size, 0, 0)
    call.cairo_matrix_init(plain, 1, 0, 0, 1, 0, 0)
    font = call.cairo_scaled_font_create(face, large, plain, options)
    call.cairo_font_options_destroy(options)
    return font


def advance_of(font: Any, text: str) -> float:
    """How far cairo moves on when it sets the text."""
    from cairocffi import ffi

    measure = cairo().cairo_scaled_font_text_extents
    extents = ffi.new(taken_by(measure, 2))
    measure(font, text.encode(), extents)
    return float(extents.x_advance)


def nothing() -> Any:
    """A null pointer."""
    from cairocffi import ffi

    return ffi.NULL
