"""Pages to files: PDF of all pages, PNG and SVG of one. Bytes out; the command line writes them.

The same pages give the same bytes, on any day and in any place; cairo's own version may change those of PDF
and PNG. Raises MachineLacks where cairo, fontconfig or the typeface is missing.
"""

from __future__ import annotations

from ..measure.length import POINTS_PER_INCH
from .page import Document, Page


def pdf_bytes(document: Document) -> bytes:
    """All pages in one PDF, at their true size, that asks the viewer to print it unscaled."""
    from .draw_pdf import paint
    from .finish_pdf import ask_for_actual_size

    assert document.pages, "a document has a page"
    return ask_for_actual_size(paint(document))


def svg_bytes(page: Page) -> bytes:
    """The page as an SVG file, in inches true to size."""
    from .draw_svg import svg_of

    return svg_of(page).encode()


def png_bytes(page: Page, dpi: int) -> bytes:
    """The page on white, exactly round(width x dpi) by round(height x dpi) dots, stating its resolution.

    Drawn at exactly `dpi`, not stretched to the whole number of dots: an inch on the page is `dpi` dots.
    """
    from .draw_svg import svg_framed
    from .ink import load
    from .png import with_resolution

    load()  # our faces, before cairo looks for any
    from cairosvg import svg2png

    dots = [round(length * dpi / POINTS_PER_INCH) for length in (page.width, page.height)]
    box = (dots[0] * POINTS_PER_INCH / dpi, dots[1] * POINTS_PER_INCH / dpi)
    svg = svg_framed(page, (f"{dots[0]}px", f"{dots[1]}px"), box)
    return with_resolution(svg2png(bytestring=svg.encode(), background_color="white"), dpi)
