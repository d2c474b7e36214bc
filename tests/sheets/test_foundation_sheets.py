"""Foundations as printed: measured back from the PDF, and read as a maker reads them."""

from __future__ import annotations

import pytest
from piecewright.drafting.model import Draft
from piecewright.sewing.foundations.foundation import foundations
from piecewright.sewing.foundations.foundation_model import Foundations, Section
from piecewright.sheets.arrange.leaves import bound
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.arrange.page_bound import TooManyPages
from piecewright.sheets.booklet.content import Cards, Paragraph, Table
from piecewright.sheets.booklet.foundations.foundation_chapter import foundation_chapter
from piecewright.sheets.booklet.foundations.foundation_paper import section_papers
from piecewright.sheets.booklet.foundations.foundation_sheets import foundation_leaves
from piecewright.sheets.drawing.files import pdf_bytes
from piecewright.sheets.page import Document, Page, TextMark
from piecewright.words.numbers import ruler_text
from shapely.geometry import Point, Polygon
from support.arranged import ends, extent, paths, rings, texts
from support.check import check_block
from support.library import library_drafts
from support.pdf_reading import read_pages

INCH = 72.0  # ISO 32000: default user space is 1/72 inch
TRUE = 0.001 * INCH
LIBRARY = dict(library_drafts())
WHOLE = (
    "Flying Goose",
    "Storm at Sea",
    "Square in a Square",
    "Quarter-Square Triangle",
    "Diamond in a Rectangle",
)


def printed(title: str, options: SheetOptions | None = None) -> tuple[Draft, Foundations, tuple[Page, ...]]:
    options = options or SheetOptions()
    draft = LIBRARY[title]
    found = foundations(draft)
    return draft, found, bound(foundation_leaves(draft, found, options, "under"), options)


def drafted(section: Section, mirrored: bool) -> Polygon:
    sign = -1 if mirrored else 1
    return Polygon([(sign * float(e.start.x) * INCH, float(e.start.y) * INCH) for e in section.outline])


def lies_like(one: Polygon, two: Polygon) -> bool:
    """Whether a quarter turn and a shift carry one outline onto the other, never a mirror."""
    from shapely import affinity

    for turn in (0, 90, 180, 270):
        turned = affinity.rotate(one, turn, origin=(0, 0))
        dx, dy = two.bounds[0] - turned.bounds[0], two.bounds[1] - turned.bounds[1]
        if affinity.translate(turned, dx, dy).symmetric_difference(two).area < TRUE * two.length:
            return True
    return False


@pytest.mark.parametrize("title", WHOLE)
def test_every_section_is_printed_true_to_size_and_mirrored(title):
    _, found, pages = printed(title)
    pdf = pdf_bytes(Document(title, "", "", "", pages))
    outlines = [
        Polygon(path.corners)
        for page in read_pages(pdf)
        for path in page.paths
        if path.dash and path.closed[0] and len(path.corners) > 2
    ]
    for section in found.sections:
        assert any(lies_like(drafted(section, True), each) for each in outlines), section.label


def test_what_slants_to_the_right_on_the_block_slants_to_the_left_on_paper():
    draft = check_block("finished 4in\ngrid 2 x 2\nseam A1 -- C2")  # from the top left, down to the right
    (page,) = bound(foundation_leaves(draft, foundations(draft), SheetOptions(), "under"), SheetOptions())
    (outline,), (line,) = (paths(page, "sew", label) for label in ("A", "A2"))
    (left, top, right, bottom), spots = (
        Polygon(rings(outline)[0]).bounds,
        sorted(ends(line), key=lambda at: at[1]),
    )
    assert spots[0] == pytest.approx((right, top)) and spots[1] == pytest.approx((left, (top + bottom) / 2))


@pytest.mark.parametrize("title", WHOLE)
def test_the_paper_has_the_allowance_on_every_side(title):
    draft, found, pages = printed(title)
    for section in found.sections:
        (cut,), sew = paths_of(pages, "cut", section.label), paths_of(pages, "sew", section.label)
        outer, inner = Polygon(rings(cut)[0]), Polygon(rings(sew[0])[0])
        wide = float(draft.allowance) * INCH
        assert outer.buffer(TRUE).contains(inner.buffer(wide - TRUE, join_style="round"))
        for x, y in rings(sew[0])[0]:
            assert abs(outer.exterior.distance(Point(x, y)) - wide) < TRUE


def paths_of(pages, role: str, subject: str):
    return [mark for page in pages for mark in paths(page, role, subject)]


@pytest.mark.parametrize("title", [*WHOLE, "Log Cabin", "Pineapple", "Bear's Paws"])
def test_every_patch_is_numbered_and_nothing_leaves_the_paper(title):
    _, found, pages = printed(title)
    said = {mark.text for page in pages for mark in texts(page) if mark.role == "label"}
    assert {patch.label for section in found.sections for patch in section.patches} <= said
    for page in pages:
        for mark in page.marks:
            left, top, right, bottom = extent(mark)
            assert min(left, top, page.width - right, page.height - bottom) >= 17.5, mark
            assert not isinstance(mark, TextMark) or mark.size >= 7


@pytest.mark.parametrize("title", ["Storm at Sea", "Evening Star", "Bear's Paws"])
def test_a_join_is_named_on_both_sides_and_its_marks_agree(title):
    _, found, pages = printed(title)
    names = [mark for page in pages for mark in texts(page) if mark.role == "join-name"]
    for number in range(len(found.joins)):
        assert len({mark.subject for mark in names if mark.text == f"J{number + 1}"}) >= 2
    assert {sign.text for page in pages for sign in texts(page)} & {"match to its twin"}


def test_each_patch_is_lettered_inside_its_own_area():
    _, found, pages = printed("Storm at Sea")
    for section in found.sections:
        places = {}
        for page in pages:
            for mark in texts(page):
                if mark.role == "label" and mark.text == mark.subject and mark.text.startswith(section.label):
                    places[mark.text] = (mark.x, mark.y)
        (sew,) = [m for m in paths_of(pages, "sew", section.label)]
        outline = Polygon(rings(sew)[0])
        assert all(outline.contains(Point(at)) for at in places.values()) and len(places) == len(
            section.patches
        )


def test_a_section_larger_than_the_page_comes_in_tiles():
    _, _, pages = printed("Log Cabin")
    assert [page.title for page in pages] == [
        "Foundation section A, tile 1.1",
        "Foundation section A, tiles 1.2, 2.1, 2.2",  # no page for a corner alone
    ]
    assert all(paths(page, "join") and paths(page, "check-square") for page in pages)


def test_the_shrinking_printer_is_allowed_for():
    from fractions import Fraction

    shrunk = printed("Flying Goose", SheetOptions(measured=Fraction(96, 100)))[2][0]
    plain = printed("Flying Goose")[2][0]
    one, two = (rings(paths(page, "sew")[0])[0] for page in (shrunk, plain))
    assert Polygon(one).area * 0.96**2 == pytest.approx(Polygon(two).area)


def test_a_block_that_cannot_go_on_paper_says_which_junction_prevents_it():
    draft = LIBRARY["Eight-pointed Star"]
    chapter = foundation_chapter(draft, foundations(draft), SheetOptions(), "under")
    words = [part.text for part in chapter.parts if isinstance(part, Paragraph)]
    assert words[0] == "This block cannot be sewn on paper foundations."
    assert words[1].startswith("Pieces 2, 3 and 4 meet 6in across and 2.485in down") and not chapter.sheets


def test_the_chapter_gives_cloth_for_every_patch_its_margin_and_the_joins_in_order():
    draft = LIBRARY["Storm at Sea"]
    found = foundations(draft)
    chapter = foundation_chapter(draft, found, SheetOptions(), "under")
    rows = [row.cells for part in chapter.parts if isinstance(part, Table) for row in part.rows]
    patches = {patch.label: patch for section in found.sections for patch in section.patches}
    assert sorted(label for row in rows for label in row[3].split(", ")) == sorted(patches)
    for fabric, count, size, labels in rows:
        named = [patches[label] for label in labels.split(", ")]
        assert int(count) == len(named) and {patch.fabric for patch in named} == {fabric}
        assert {f"{ruler_text(patch.width)} x {ruler_text(patch.height)}" for patch in named} == {size}
    # A 3in square, 1/4in allowance and 1/4in margin all round.
    assert ("dark", "1", "4in x 4in", "A1") in rows
    assert any(
        "margin of 1/4in on every side" in part.text for part in chapter.parts if isinstance(part, Paragraph)
    )
    joins = [part.cards for part in chapter.parts if isinstance(part, Cards)][-1]
    assert [card.lines[0][: card.lines[0].index(" along")] for card in joins] == [
        "Join C to D",
        "Join A to B",
        "Join C-D to A-B",
    ]


def test_a_foundation_of_a_thousand_inches_is_refused_before_it_is_tiled():
    # 999in squared on pages whose body is 7 1/2in by 8 1/12in: the bound of templates holds for foundations.
    draft = check_block("finished 999in\nseam top -- bottom\npiece half at left, right in dark")
    with pytest.raises(TooManyPages) as refused:
        foundation_leaves(draft, foundations(draft), SheetOptions(), "under")
    assert refused.value.counted == "templates-at-least" and 16_000 <= refused.value.pages < 17_000


@pytest.mark.parametrize("title", ["Evening Star", "Hour Glass", "Storm at Sea", "Bear's Paws"])
def test_a_joins_name_stands_clear_of_match_marks(title):
    draft = LIBRARY[title]
    for paper in section_papers(draft, foundations(draft)):
        for name in paper.names:
            near = [Point(name.at.x, name.at.y).distance(Point(tick.at.x, tick.at.y)) for tick in paper.ticks]
            assert min(near) >= 0.2  # inches: half of "J1" is less than 0.1
