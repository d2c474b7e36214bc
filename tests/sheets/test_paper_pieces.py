"""Paper pieces: every piece once, finished size, from behind, counted."""

from __future__ import annotations

import pytest
from piecewright.drafting.model import Draft
from piecewright.sheets.arrange.leaves import bound
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.chapters.papers import paper_leaves, papers
from piecewright.sheets.content import List, Paragraph, Table
from piecewright.sheets.drawing.files import pdf_bytes
from piecewright.sheets.page import Document
from shapely import affinity
from shapely.geometry import Polygon
from support.arranged import extent, paths, rings, texts
from support.check import check_block
from support.library import library_drafts
from support.pdf_reading import read_pages
from support.works import block_of

INCH = 72.0  # ISO 32000: default user space is 1/72 inch
LIBRARY = dict(library_drafts())
CURVED = ("Drunkard's Path", "Mariner's Compass", "Orange Peel")
STRAIGHT = ("Six-pointed Star", "Honeycomb", "Ohio Star")


def pages_of(draft: Draft, options: SheetOptions | None = None):
    options = options or SheetOptions()
    return bound(paper_leaves(draft, options, "under"), options)


@pytest.mark.parametrize("title", [*CURVED, *STRAIGHT])
def test_every_piece_has_one_paper_of_finished_size(title):
    draft = LIBRARY[title]
    papers = [Polygon(rings(mark)[0]) for page in pages_of(draft) for mark in paths(page, "cut")]
    printed = sorted(paper.area / INCH**2 for paper in papers)
    drafted = sorted(float(piece.area) for piece in draft.pieces)
    assert printed == pytest.approx(drafted, rel=1e-3)  # a curve keeps within 0.0005in of its circle


@pytest.mark.parametrize("title", STRAIGHT)
def test_the_sides_in_the_pdf_are_the_finished_sides(title):
    draft = LIBRARY[title]
    pages = pages_of(draft)
    pdf = read_pages(pdf_bytes(Document(title, "", "", "", pages)))
    spots = [path.corners for page in pdf for path in page.paths if path.closed[0] and path.width > 1.05]
    for piece in draft.pieces:
        own = sorted(side.edge.length for side in piece.ring)
        sides = (sorted(length / INCH for length in lengths(each)) for each in spots)
        assert any(len(each) == len(own) and each == pytest.approx(own, abs=0.001) for each in sides)


def lengths(corners) -> list[float]:
    return [
        ((x - a) ** 2 + (y - b) ** 2) ** 0.5
        for (a, b), (x, y) in zip(corners, (*corners[1:], corners[0]), strict=True)
    ]


def test_a_shape_without_a_mirror_line_is_printed_from_behind():
    draft = check_block("finished 4in\ngrid 2 x 2\nseam A1 -- C2")
    (page,) = pages_of(draft)
    cut = [Polygon(rings(mark)[0]) for mark in paths(page, "cut")]
    for piece in draft.pieces:
        own = Polygon([(float(s.edge.start.x) * INCH, float(s.edge.start.y) * INCH) for s in piece.ring])
        assert not any(turned_onto(own, paper) for paper in cut)
        assert any(turned_onto(affinity.scale(own, -1, 1), paper) for paper in cut)


def turned_onto(one: Polygon, two: Polygon) -> bool:
    for turn in (0, 90, 180, 270):
        turned = affinity.rotate(one, turn)
        dx, dy = two.bounds[0] - turned.bounds[0], two.bounds[1] - turned.bounds[1]
        if affinity.translate(turned, dx, dy).symmetric_difference(two).area < 0.5:
            return True
    return False


def test_every_paper_bears_its_letter_number_and_fabric():
    draft = LIBRARY["Six-pointed Star"]
    said = [mark.text for page in pages_of(draft) for mark in texts(page) if mark.role == "label"]
    assert sorted(word for word in said if word.isdecimal()) == sorted(str(n) for n in range(1, 13))
    assert said.count("A") == 12 and said.count("dark") == 3


def test_a_paper_too_small_for_words_is_named_beside_it():
    draft = check_block(
        "finished 1in\ngrid 16 x 1\n" + "\n".join(f"seam {c}1 -- {c}2" for c in "BCDEFGHIJKLMNOP")
    )
    pages = pages_of(draft)
    assert len([mark for page in pages for mark in paths(page, "leader")]) == 16
    for page in pages:
        assert all(extent(mark)[2] <= page.width - 17.5 for mark in page.marks)


def test_the_chapter_counts_the_papers_and_has_words_of_its_own():
    chapter = papers(block_of(LIBRARY["Six-pointed Star"], "papers"), SheetOptions())
    (said,) = [part.text for part in chapter.parts if isinstance(part, Paragraph)]
    (table,) = [part for part in chapter.parts if isinstance(part, Table)]
    assert said == "12 papers, one for every piece of the block."
    assert table.rows[0].cells[:3] == ("A", "6", "background") and table.rows[-1].cells[1] == "12"
    words = " ".join(text for part in chapter.parts if isinstance(part, List) for text in part.texts)
    assert "mirrored" in words and "baste" in words and "clip" not in words
    curved = papers(block_of(LIBRARY["Drunkard's Path"], "papers"), SheetOptions())
    assert any("clip" in text for part in curved.parts if isinstance(part, List) for text in part.texts)
