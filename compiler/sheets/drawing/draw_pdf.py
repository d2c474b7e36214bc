"""Pages to a PDF: every mark painted where layout put it, all pages on one surface. Decides nothing.

Points in, points out: cairo's unit for PDF is the point (ISO 32000), x right and y down as ours. One surface
for all pages embeds each face once. cairo keeps places to 1/256 point, about 1/18000in.
"""

from __future__ import annotations

from typing import Any, Final

from ...words.markup import plain
from ..page import Document
from .brush import Brush
from .cairo_library import (
    PDF_AUTHOR,
    PDF_CREATED,
    PDF_CREATOR,
    PDF_KEYWORDS,
    PDF_OUTLINE_ROOT,
    PDF_SUBJECT,
    PDF_TITLE,
    PDF_VERSION_1_4,
    check,
    gathering,
    nothing,
)
from .ink import Ink, load

MADE: Final = "2000-01-01T00:00:00Z"
"""The date of creation in every PDF: the same pages give the same bytes, whatever the clock says."""

CREATOR: Final = "Piecewright"


def paint(document: Document) -> bytes:
    """The document as cairo writes it, with information and bookmarks; `finish_pdf` completes it."""
    ink = load()
    call = ink.call
    write, parts = gathering()
    first = document.pages[0]
    surface = call.cairo_pdf_surface_create_for_stream(write, nothing(), first.width, first.height)
    call.cairo_pdf_surface_restrict_to_version(surface, PDF_VERSION_1_4)  # a plain table, for finish_pdf
    _describe(surface, ink, document)
    context = call.cairo_create(surface)
    brush = Brush(ink, context)
    part, above = "", PDF_OUTLINE_ROOT
    for number, page in enumerate(document.pages, start=1):
        call.cairo_pdf_surface_set_size(surface, page.width, page.height)
        title, place = plain(page.title).encode(), f"page={number} pos=[0 0]".encode()
        if page.part != part:
            part, above = page.part, PDF_OUTLINE_ROOT
            if part:
                above = call.cairo_pdf_surface_add_outline(surface, above, plain(part).encode(), place, 0)
        call.cairo_pdf_surface_add_outline(surface, above, title, place, 0)
        brush.paint(page.marks)
        call.cairo_surface_show_page(surface)
    check(call.cairo_status, context)
    call.cairo_surface_finish(surface)
    check(call.cairo_surface_status, surface)
    call.cairo_destroy(context)
    call.cairo_surface_destroy(surface)
    return b"".join(parts)


def _describe(surface: Any, ink: Ink, document: Document) -> None:
    for key, words in (
        (PDF_TITLE, document.title),
        (PDF_SUBJECT, document.subject),
        (PDF_AUTHOR, document.author),
        (PDF_KEYWORDS, document.keywords),
        (PDF_CREATOR, CREATOR),
        (PDF_CREATED, MADE),
    ):
        if words:
            ink.call.cairo_pdf_surface_set_metadata(surface, key, plain(words).encode())
