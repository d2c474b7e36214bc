"""A page to a picture: every mark painted where layout put it, on white."""

from __future__ import annotations

from io import BytesIO

from ..measure.length import POINTS_PER_INCH
from .brush import Brush
from .ink import load
from .page import Page


def paint(page: Page, dpi: int) -> bytes:
    """The page as cairo writes it, drawn at exactly `dpi`, not stretched to the whole number of dots.

    An inch on the page is `dpi` dots; the last dot may reach over the paper's edge or fall short of it.
    """
    ink = load()
    scale = dpi / POINTS_PER_INCH
    across, down = round(page.width * scale), round(page.height * scale)
    surface = ink.module.ImageSurface(ink.module.FORMAT_RGB24, across, down)
    context = ink.module.Context(surface)
    context.set_source_rgb(1, 1, 1)
    context.paint()
    context.scale(scale, scale)
    Brush(ink, context._pointer).paint(page.marks)
    out = BytesIO()
    surface.write_to_png(out)
    return out.getvalue()
