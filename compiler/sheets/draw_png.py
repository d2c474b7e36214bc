"""A page to a picture: every mark painted where layout put it, on white."""

from __future__ import annotations

from ctypes import c_void_p

from ..measure.length import POINTS_PER_INCH
from .brush import Brush
from .cairo_library import FORMAT_RGB24, check, gathering
from .ink import load
from .page import Page


def paint(page: Page, dpi: int) -> bytes:
    """The page as cairo writes it, drawn at exactly `dpi`, not stretched to the whole number of dots.

    An inch on the page is `dpi` dots; the last dot may reach over the paper's edge or fall short of it.
    """
    ink = load()
    call = ink.call
    scale = dpi / POINTS_PER_INCH
    across, down = round(page.width * scale), round(page.height * scale)
    surface = c_void_p(call.cairo_image_surface_create(FORMAT_RGB24, across, down))
    check(call.cairo_surface_status, surface)
    context = c_void_p(call.cairo_create(surface))
    call.cairo_set_source_rgb(context, 1.0, 1.0, 1.0)
    call.cairo_paint(context)
    call.cairo_scale(context, scale, scale)
    Brush(ink, context).paint(page.marks)
    check(call.cairo_status, context)
    write, parts = gathering()
    call.cairo_surface_write_to_png_stream(surface, write, None)
    call.cairo_destroy(context)
    call.cairo_surface_destroy(surface)
    return b"".join(parts)
