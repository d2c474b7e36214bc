"""Pages to a PDF: every mark painted where layout put it, all pages on one surface. Decides nothing.

Points in, points out: cairo's unit for PDF is the point (ISO 32000), x right and y down as ours. One surface
for all pages embeds each face once. cairo keeps places to 1/256 point, about 1/18000in.
"""

from __future__ import annotations

from io import BytesIO
from typing import Any, Final

from .brush import Brush
from .ink import Ink, load
from .page import Document
from .wording import plain

MADE: Final = "2000-01-01T00:00:00Z"
"""The date of creation in every PDF: the same pages give the same bytes, whatever the clock says."""

CREATOR: Final = "Piecewright"


def paint(document: Document) -> bytes:
    """The document as cairo writes it, with information and bookmarks; `finish_pdf` completes it."""
    ink = load()
    out = BytesIO()
    surface = ink.module.PDFSurface(out, document.pages[0].width, document.pages[0].height)
    surface.restrict_to_version(ink.module.PDF_VERSION_1_4)  # a plain cross-reference table, for finish_pdf
    _describe(surface, ink, document)
    context = ink.module.Context(surface)
    brush = Brush(ink, context._pointer)
    for number, page in enumerate(document.pages, start=1):
        surface.set_size(page.width, page.height)
        surface.add_outline(ink.module.PDF_OUTLINE_ROOT, plain(page.title), f"page={number} pos=[0 0]")
        brush.paint(page.marks)
        surface.show_page()
    surface.finish()
    return out.getvalue()


def _describe(surface: Any, ink: Ink, document: Document) -> None:
    for key, words in (
        (ink.module.PDF_METADATA_TITLE, document.title),
        (ink.module.PDF_METADATA_SUBJECT, document.subject),
        (ink.module.PDF_METADATA_AUTHOR, document.author),
        (ink.module.PDF_METADATA_KEYWORDS, document.keywords),
        (ink.module.PDF_METADATA_CREATOR, CREATOR),
        (ink.module.PDF_METADATA_CREATE_DATE, MADE),
    ):
        if words:
            surface.set_metadata(key, plain(words))
