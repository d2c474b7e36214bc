"""Pages to files: PDF of all pages, PNG and SVG of one. Bytes out; the command line writes them.

The same pages give the same bytes, on any day and in any place; cairo's own version may change those of PDF
and PNG. Raises MachineLacks where cairo, fontconfig or the typeface is missing.
"""

from __future__ import annotations

from ..page import Document, Page


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
    """The page on white, exactly round(width x dpi) by round(height x dpi) dots, stating its resolution."""
    from .draw_png import paint
    from .png import with_resolution

    return with_resolution(paint(page, dpi), dpi)
