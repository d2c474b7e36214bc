"""Pages of marks for tests of ink: every kind of mark, with places that no rounding would find by chance."""

from __future__ import annotations

from dataclasses import replace

from piecewright.sheets.page import Document, Page, PathMark, TextMark
from piecewright.sheets.paper import PaperSize, paper_named

LETTER = paper_named("letter")
A4 = paper_named("a4")

HALF_SQUARE = (("M", 72.0, 100.123), ("L", 351.0, 100.123), ("L", 72.0, 379.123), ("Z",))
SEW = (("M", 90.0, 118.123), ("L", 307.54, 118.123), ("L", 90.0, 335.66), ("Z",))
BEND = ("C", 440.5, 150.25, 472.75, 182.5, 472.75, 223.0)
CURVE = (("M", 400.0, 150.25), BEND, ("L", 400.0, 223.0), ("Z",))
WINDOW = (("M", 400.0, 300.0), ("L", 500.0, 300.0), ("L", 500.0, 350.0), ("L", 400.0, 350.0), ("Z",))

MARKS = (
    PathMark(CURVE, stroke=None, fill=(0.8, 0.8, 0.8), role="fill", subject="1"),
    PathMark(HALF_SQUARE, width=1.1, role="cut", subject="A"),
    PathMark(SEW, width=0.7, dash=(5.0, 3.0), role="sew", subject="A"),
    PathMark((("M", 390.0, 290.0), ("L", 520.0, 360.0)), width=0.25, stroke=(0.3, 0.3, 0.3), role="texture",
             clip=WINDOW),
    PathMark((("M", 36.0, 700.0), ("L", 108.0, 700.0), ("L", 108.0, 772.0), ("L", 36.0, 772.0), ("Z",)),
             role="check-square"),
    TextMark(150.0, 200.0, "A", 26.0, True, "middle", subject="A"),
    TextMark(150.0, 212.0, "Cut 4 of dark", 8.5, True, "middle", subject="A"),
    TextMark(150.0, 223.0, "3⅛in · Ångström", 8.5, False, "middle", subject="A"),
    TextMark(576.0, 60.0, "page 1 of 2", 9.0, anchor="end", fill=(0.3, 0.3, 0.3)),
    TextMark(300.0, 500.0, "turned words", 9.0, turned=30.0),
    TextMark(36.0, 40.0, 'Say "so" <b>&</b> be', 18.0, True, role="heading"),
)  # fmt: skip


def page_of(paper: PaperSize = LETTER, title: str = "Templates A", marks=MARKS) -> Page:
    return Page(paper.width_points, paper.height_points, title, marks)


def document_of(*pages: Page, **fields: str) -> Document:
    """A document of the pages, else of a Letter and an A4 page."""
    pages = pages or (page_of(), page_of(A4, "Templates B"))
    plain = Document("Tidewater Vane", "version 2, 6in finished", "Wren Alder", "patchwork, templates", pages)
    return replace(plain, **fields)
