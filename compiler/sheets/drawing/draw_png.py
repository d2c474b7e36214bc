"""A page to a picture: cairosvg draws the page's own SVG on white."""

from __future__ import annotations

from ...measure.length import POINTS_PER_INCH
from ...words.pages.drawing import picture_too_large
from ..page import Page
from .cairo_library import CairoFailed
from .draw_svg import svg_of
from .ink import load

SIDE_MOST = 32_767  # dots: cairo's own bound on the sides of a picture


def paint(page: Page, dpi: int) -> bytes:
    """The page as a PNG of exactly round(width x dpi) by round(height x dpi) dots. CairoFailed where that is
    more than cairo draws."""
    load()  # our faces, before cairosvg asks for any
    from cairosvg import svg2png

    across, down = (round(side * dpi / POINTS_PER_INCH) for side in (page.width, page.height))
    if max(across, down) > SIDE_MOST:
        raise CairoFailed(picture_too_large(across, down, SIDE_MOST))
    picture: bytes = svg2png(
        svg_of(page).encode(), output_width=across, output_height=down, background_color="white"
    )
    return picture
