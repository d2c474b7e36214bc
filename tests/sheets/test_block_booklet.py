"""The booklet of a block: its chapters, page numbers, bookmarks, and what its tables say."""

from __future__ import annotations

from functools import cache
from io import BytesIO

import pytest
from piecewright.cutting.templates.making import make_templates
from piecewright.pipeline import CompiledBlock
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.booklets import booklet
from piecewright.sheets.booklets import part as part_of
from piecewright.sheets.chapters.card import card_parts
from piecewright.sheets.content import Chapter, List, Paragraph, Picture, Table
from piecewright.sheets.documents import BLOCK_PARTS, documents_of
from piecewright.sheets.drawing.files import pdf_bytes
from piecewright.sheets.page import Document, Page, PathMark
from piecewright.sheets.setting.pages import set_book
from piecewright.sheets.setting.words_of import words_of
from piecewright.sheets.work import WAYS, Work
from piecewright.words.pages.glossary import GLOSSARY
from piecewright.words.say import INCHES
from piecewright.words.work.proofs import proof_text
from pypdf import PdfReader
from support.arranged import extent, paths, text_box, texts
from support.check import check_noted
from support.library import compiled, library_sources
from support.works import work_of_block

TITLES = (
    "Log Cabin",
    "Eight-pointed Star",
    "Drunkard's Path",
    "Honeycomb",
    "Flying Goose",
    "Jack's House",
    "Spools",
    "Triple Irish Chain",
    "Ohio Star",
    "Mariner's Compass",
)
READ_ONLY = "Nothing on this page is true to size."


@cache
def library() -> dict[str, CompiledBlock]:
    return {
        block.draft.title: block for source in library_sources() for block in compiled(source).value or ()
    }


@cache
def sewn(title: str, way: str = "templates") -> Work:
    return work_of_block(library()[title], way)


@cache
def document(title: str, way: str = "templates", paper: str = "letter") -> Document:
    options = SheetOptions(paper=paper)
    return set_book(booklet(sewn(title, way), options), options)


def chapters(title: str, way: str = "templates") -> dict[str, Chapter]:
    return {each.title: each for each in booklet(sewn(title, way), SheetOptions()).chapters}


def said(page: Page) -> list[str]:
    return [mark.text for mark in texts(page)]


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("title", TITLES)
def test_the_contents_give_the_page_on_which_each_chapter_begins(title, way):
    pages = document(title, way).pages
    rows = [mark for mark in texts(pages[1]) if mark.role == "contents"]
    listed = {name.subject: int(number.text) for name, number in zip(rows[::2], rows[1::2], strict=True)}
    assert list(listed) == list(chapters(title, way)) and pages[1].title.startswith("Contents")
    for name, number in listed.items():
        page = pages[number - 1]
        begins = any(mark.role == "chapter" and mark.subject == name for mark in texts(page))
        assert begins or (name == "Templates" and page.title == "Block"), (name, number)
        assert f"page {number} of {len(pages)}" in " ".join(said(page))


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("title", TITLES)
def test_nothing_leaves_the_paper_and_no_words_overlap(title, way, paper):
    for page in document(title, way, paper).pages:
        boxes = []
        for mark in page.marks:
            left, top, right, bottom = extent(mark)
            assert min(left, top, page.width - right, page.height - bottom) >= 17.5, (page.title, mark)
        for mark in texts(page):
            assert mark.size >= 7
            if not mark.turned:
                # a letter over its number is one label: capitals and figures have nothing below the line
                label = mark.subject if mark.role == "piece" else ""
                boxes.append((*text_box(mark), mark.text, label))
        if not paths(page, "check-square"):  # pages of templates are looked after by their own tests
            assert not [(a[4], b[4]) for at, a in enumerate(boxes) for b in boxes[:at] if overlap(a, b)], (
                page.title
            )


def overlap(one, two) -> bool:
    slack = 1.2  # boxes reach from the tallest letter to the deepest: lines set close touch without meeting
    return (
        not (one[5] and one[5] == two[5])
        and one[0] + slack < two[2]
        and two[0] + slack < one[2]
        and one[1] + slack < two[3]
        and two[1] + slack < one[3]
        and min(one[3], two[3]) - max(one[1], two[1]) > 3
    )


def test_the_pdf_has_bookmarks_and_says_what_it_is():
    reader = PdfReader(BytesIO(pdf_bytes(document("Ohio Star"))))
    names = [str(each.title) for each in flat(reader.outline)]
    assert names[:2] == ["Cover", "Contents, what you need, what makes it hard, cutting chart"]
    assert {"Templates", "Steps", "Storage card, safety, glossary"} <= set(names)
    info = reader.metadata
    assert (info.title, info.subject) == ("Ohio Star", "version 1, 9in finished")
    assert "class booklet" in info["/Keywords"] and reader.trailer["/Root"]["/Lang"] == "en"


def flat(outline) -> list:
    return [each for entry in outline for each in (flat(entry) if isinstance(entry, list) else [entry])]


def test_the_same_block_gives_the_same_bytes():
    options = SheetOptions()
    one, two = (pdf_bytes(set_book(booklet(sewn("Spools"), options), options)) for _ in range(2))
    assert one == two


@pytest.mark.parametrize("title", TITLES)
def test_the_cover_and_the_steps_say_what_sewing_again_found(title):
    block = library()[title]
    words = f"{proof_text(block.proof)}."
    assert any(line.endswith(words) for line in said(document(title).pages[0]))
    assert any(
        isinstance(part, Paragraph) and part.text.endswith(words) for part in chapters(title)["Steps"].parts
    )
    assert proof_text(block.proof).endswith("closes exactly")


def test_a_page_to_read_says_that_it_is_not_true_to_size():
    for page in document("Ohio Star").pages[2:]:
        assert bool(paths(page, "check-square")) != any(line.startswith(READ_ONLY) for line in said(page))


def test_the_way_of_sewing_decides_what_is_printed():
    assert list(chapters("Storm at Sea"))[:5] == [
        "What you need",
        "What makes it hard",
        "Cutting chart",
        "Templates",
        "Steps",
    ]
    assert list(chapters("Storm at Sea", "foundation"))[2:4] == ["Foundations", "Drafting exercise"]
    assert list(chapters("Storm at Sea", "papers"))[2:4] == ["Paper pieces", "Steps"]


def test_a_block_that_no_foundation_serves_keeps_its_templates():
    names = list(chapters("Eight-pointed Star", "foundation"))
    assert names[2:6] == ["Cutting chart", "Foundations", "Templates", "Steps"]


def test_the_chart_cuts_by_the_trades_rules():
    """Common practice, no published source: squares + 1/2in, squares cut twice + 1 1/4in, at 1/4in of
    allowance."""
    tables = [part for part in chapters("Ohio Star")["Cutting chart"].parts if isinstance(part, Table)]
    rows = {
        (table.title, row.cells[4].split(",")[0]): row.cells[1:4] for table in tables for row in table.rows
    }
    assert rows["background", "A"][:2] == ("4", "squares 3 1/2in")
    assert rows["dark", "B"] == ("2", "squares 4 1/4in", "8 quarter-square triangles")


@pytest.mark.parametrize("title", TITLES)
def test_the_chart_gives_as_many_pieces_as_the_block_has(title):
    assert sum(cut.pieces for cut in sewn(title).plan.cuts) == len(sewn(title).quilt.pieces)


def test_the_cloth_of_a_block_is_sold_cut_where_a_piece_holds_its_cuts():
    """By hand: of four diamonds 3in square across, cut at 45 degrees, three strips of 3in across a 10in
    square hold one each: what is cut off a strip's end is 3in, and they lie 4.243in apart."""
    (table, *_) = [
        part for part in chapters("Eight-pointed Star")["What you need"].parts if isinstance(part, Table)
    ]
    bought = {row.cells[0]: row.cells[1] for row in table.rows}
    assert bought["dark"] == bought["medium"] == "a fat eighth, 9in x 21in"


def test_the_storage_card_has_a_box_for_every_template():
    block = library()["Eight-pointed Star"]
    card = chapters("Eight-pointed Star")["Storage card"]
    (table,) = [part for part in card.parts if isinstance(part, Table)]
    assert table.ticks and [row.cells[0] for row in table.rows] == [each.label for each in block.templates]
    (page,) = [page for page in document("Eight-pointed Star").pages if page.title.startswith("Storage card")]
    (more,) = [part.texts for part in card.parts if isinstance(part, List) and part.sign == "box"]
    assert len(paths(page, "tick-box")) == len(block.templates) + len(more)
    assert len(paths(page, "write-on")) == 2 and len(paths(page, "cut-off")) == 1


def test_the_envelope_of_papers_is_told_in_papers():
    card = chapters("Honeycomb", "papers")["Storage card"]
    words = " ".join(part.text for part in card.parts if isinstance(part, Paragraph))
    assert "with its 13 papers" in words and "template" not in words


def test_the_glossary_explains_the_words_that_are_used_and_no_others():
    terms = {
        title: {row.cells[0] for row in chapters(title)["Glossary"].parts[0].rows}
        for title in ("Ohio Star", "Drunkard's Path")
    }
    assert "match mark" in terms["Drunkard's Path"] and "match mark" not in terms["Ohio Star"]
    assert all(each <= set(GLOSSARY) for each in terms.values())
    papers = {row.cells[0] for row in chapters("Honeycomb", "papers")["Glossary"].parts[0].rows}
    assert {"baste", "whip", "paper piece"} <= papers
    assert not {"lock", "rotary cutter"} & papers  # a block is no lock, and nobody cuts with a ruler


def test_difficulty_is_told_by_causes_with_advice():
    lines = [
        text
        for part in chapters("Eight-pointed Star")["What makes it hard"].parts
        if isinstance(part, List)
        for text in part.texts
    ]
    assert "8 set-in seams: stop exactly at the dots." in lines and lines[0] == "16 pieces."


@pytest.mark.parametrize(
    "title, words",
    [("Log Cabin", "Smallest angle 90°: no point is sharp."), ("Ohio Star", "Smallest angle 45°: sharp")],
)
def test_only_a_sharp_point_is_called_one(title, words):
    (causes,) = [part for part in chapters(title)["What makes it hard"].parts if isinstance(part, List)]
    assert any(text.startswith(words) for text in causes.texts)


def test_on_foundations_nothing_is_said_of_templates():
    chapter = chapters("Log Cabin", "foundation")["What makes it hard"]
    (causes,) = [part for part in chapter.parts if isinstance(part, List)]
    assert not any("template" in text for text in causes.texts)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("title", TITLES)
def test_the_head_of_a_page_names_what_runs_over_onto_it(title, way):
    """A page that does not begin with a chapter's heading says first which chapter it goes on with."""
    current = ""
    for page in document(title, way).pages:
        begun = [mark.subject for mark in texts(page) if mark.role == "chapter"]
        body = [mark for mark in texts(page) if mark.role in ("chapter", "card", "section", "table")]
        if begun and current and body[0].role != "chapter":
            assert page.title.lower().startswith(current.lower()), page.title
        current = begun[-1] if begun else current


@pytest.mark.parametrize("part", BLOCK_PARTS)
def test_every_chapter_can_be_had_alone(part):
    options = SheetOptions()
    (made,) = documents_of(sewn("Storm at Sea"), (part,), options)
    pages = made.document.pages
    assert pages and f"page 1 of {len(pages)}" in " ".join(said(pages[0]))


def test_hand_piecing_has_words_of_its_own():
    options = SheetOptions(kind="finished")
    steps = {each.title: each for each in booklet(sewn("Ohio Star"), options).chapters}["Steps"]
    words = " ".join(text for part in steps.parts if isinstance(part, List) for text in part.texts)
    assert "running stitches" in words
    pages = set_book(booklet(sewn("Ohio Star"), options), options).pages
    assert not any(isinstance(mark, PathMark) and mark.role == "cut" for page in pages for mark in page.marks)


def words_in(title: str, way: str, chapter: str) -> str:
    return " ".join(words_of([chapters(title, way)[chapter]]))


def test_who_sews_over_papers_is_told_nothing_of_machines_and_blades():
    told = words_in("Honeycomb", "papers", "Safety")
    assert "Count needles and pins" in told and "The iron" in told and "maker" in told
    assert "machine" not in told and "rotary" not in told.lower()
    assert "switch it off before" in words_in("Ohio Star", "templates", "Safety")


def test_what_makes_it_hard_is_met_as_the_block_is_sewn():
    told = words_in("Honeycomb", "papers", "What makes it hard")
    assert "bend the papers at the corner" in told and "stop exactly at the dots" not in told
    assert "stay-stitch" not in told


def test_an_angle_is_said_as_a_protractor_shows_it():
    assert "about 27°" in words_in("Storm at Sea", "templates", "What makes it hard")


def test_every_number_of_a_paper_is_found_in_the_picture_of_the_block():
    draft = library()["Honeycomb"].draft
    (picture,) = [
        part for part in chapters("Honeycomb", "papers")["Paper pieces"].parts if isinstance(part, Picture)
    ]
    told = {mark.text for mark in texts(picture)}
    assert {str(piece.number) for piece in draft.pieces} <= told


def test_each_patch_of_a_foundation_is_flipped_and_pressed_after_its_seam():
    told = words_in("Log Cabin", "foundation", "Foundations")
    assert "flip the new patch over its area, and press it there" in told
    assert "what comes next to the block is sewn on" in told  # its one section joins nothing


def test_words_in_the_glossary_are_found_in_all_their_forms():
    def terms(title: str, way: str = "templates") -> set[str]:
        return {row.cells[0] for row in chapters(title, way)["Glossary"].parts[0].rows}

    star = terms("Eight-pointed Star")
    assert {"finished size", "set in", "press", "nest", "right side", "fat eighth"} <= star
    assert "whip" in terms("Honeycomb", "papers") and "patch" not in terms("Ohio Star")
    assert "patch" in terms("Log Cabin", "foundation")


@pytest.mark.parametrize("title", ["Eight-pointed Star", "Ohio Star", "Storm at Sea"])
def test_no_table_goes_on_a_page_after_the_words_on_how_to_read_it(title):
    (page,) = [
        page
        for page in document(title).pages
        if any(mark.role == "chapter" and mark.text == "Cutting chart" for mark in texts(page))
    ]
    assert "why, and what then" in said(page)


def test_a_circle_measures_the_same_across_and_down_on_its_card():
    """A circle of radius 2 1/2in is 5in each way; chords of it would measure less."""
    draft = check_noted("piece-hole", "finished 8in\nseam circle around center radius 2 1/2in\n")
    sizes = [
        row.cells[2]
        for part in card_parts(draft, make_templates(draft).value, INCHES)
        if isinstance(part, Table)
        for row in part.rows
    ]
    assert sizes == ["8in x 8in", "5in x 5in"]


@pytest.mark.parametrize(
    "title", ["Grandmother's Flower Garden", "Mariner's Compass", "Dresden Plate", "Pineapple"]
)
def test_a_block_of_no_short_construction_has_no_drafting_exercise(title):
    assert "Drafting exercise" not in chapters(title)
    for page in document(title).pages:
        said = " ".join(mark.text for mark in texts(page))
        assert "rafting exercise" not in said and "to draft on" not in said
    (alone,) = part_of(sewn(title), "exercise", SheetOptions()).chapters
    assert alone.parts[0].text.startswith("There is none for this block")
    assert not alone.sheets
