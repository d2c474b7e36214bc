"""The last touch to a PDF: what cairo cannot say.

In: a PDF with a plain cross-reference table. Out: the same bytes with an incremental update behind them
(ISO 32000-1, 7.5.6): the document's catalog once more, which now asks the viewer to print at actual size.
"""

from __future__ import annotations

import re
from typing import Final

WISHES: Final = (
    b"/Version /1.7 /Lang (en) /ViewerPreferences"
    b" << /PrintScaling /None /PickTrayByPDFSize true /DisplayDocTitle true >>"
)
"""ISO 32000-1, table 150: no scaling, the tray by the page's own size, the title in the window's frame."""

TAIL: Final = re.compile(rb"trailer\s*<<(?P<entries>.*?)>>\s*startxref\s+(?P<table>\d+)\s+%%EOF\s*\Z", re.S)
ROOT: Final = re.compile(rb"/Root\s+(\d+)\s+0\s+R")
SECTION: Final = re.compile(rb"xref\s+0\s+(\d+)\s+")
ENTRY_LENGTH: Final = 20  # bytes of one line of the table (ISO 32000-1, 7.5.4)


def ask_for_actual_size(pdf: bytes) -> bytes:
    """The PDF with its wish to be printed unscaled."""
    tail = TAIL.search(pdf, pdf.rindex(b"trailer"))
    assert tail, "cairo wrote no plain trailer"
    root = ROOT.search(tail["entries"])
    assert root, "cairo named no catalog"
    number, table = int(root[1]), int(tail["table"])
    catalog = _object(pdf, table, number)
    assert b"/ViewerPreferences" not in catalog, "cairo now writes viewer preferences itself"

    start = len(pdf)
    update = b"%d 0 obj\n%s %s >>\nendobj\n" % (number, catalog[: catalog.rindex(b">>")].rstrip(), WISHES)
    places = b"xref\n0 1\n0000000000 65535 f \n%d 1\n%010d 00000 n \n" % (number, start)
    trailer = b"trailer\n<< %s /Prev %d >>\n" % (b" ".join(tail["entries"].split()), table)
    end = b"startxref\n%d\n%%%%EOF\n" % (start + len(update))
    return pdf + update + places + trailer + end


def _object(pdf: bytes, table: int, number: int) -> bytes:
    """The bytes of an object, its frame left off."""
    section = SECTION.match(pdf, table)
    assert section and number < int(section[1]), f"no object {number} in cairo's table"
    line = section.end() + ENTRY_LENGTH * number
    start = int(pdf[line : line + 10])
    body = re.compile(rb"%d 0 obj(.*?)endobj" % number, re.S).match(pdf, start)
    assert body, f"object {number} is not where cairo's table says"
    return body[1].strip()
