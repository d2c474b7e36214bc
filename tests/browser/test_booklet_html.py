"""The HTML booklet in a real browser (Debian's Chromium): what a maker on a phone, at a keyboard or by ear
meets.

axe-core's rules are the outside check of accessibility (WCAG 2.2, levels A and AA).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from piecewright.pipeline import CompiledBlock
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.booklets import booklet
from piecewright.sheets.content import Book
from piecewright.sheets.setting.html_book import html_bytes
from piecewright.sheets.work import WAYS
from playwright.sync_api import Browser, Page
from support.html_pages import NARROW, RULES
from support.library import compiled, library_sources
from support.sample_quilts import planned
from support.works import work_of, work_of_block

TITLES = ("Eight-pointed Star", "Log Cabin", "Drunkard's Path", "Honeycomb", "Storm at Sea")
PHONE, DESK = 390, 1280


@cache
def library() -> dict[str, CompiledBlock]:
    return {
        block.draft.title: block for source in library_sources() for block in compiled(source).value or ()
    }


@cache
def book(title: str, way: str = "templates") -> Book:
    block = library()[title]
    return booklet(work_of_block(block, way), SheetOptions())


Show = Callable[..., Page]


@pytest.fixture
def show(browser: Browser, tmp_path: Path) -> Iterator[Show]:
    """Opens a book in a window of some width; all windows are closed again."""
    opened: list[Page] = []

    def show(what: Book, width: int = PHONE) -> Page:
        file = tmp_path / "booklet.html"
        file.write_bytes(html_bytes(what, SheetOptions()))
        page = browser.new_page(viewport={"width": width, "height": 800})
        opened.append(page)
        page.goto(file.as_uri())
        return page

    yield show
    for page in opened:
        page.close()


@pytest.mark.parametrize(
    "title, way", [*((title, "templates") for title in TITLES), *(("Storm at Sea", way) for way in WAYS[1:])]
)
def test_no_rule_of_accessibility_is_broken(show, title, way):
    page = show(book(title, way))
    found = Axe().run(page, options=RULES)
    assert found.violations_count == 0, found.generate_report()
    assert len(found.response["passes"]) > 20


def test_a_quilts_booklet_breaks_no_rule_either(show):
    whole = booklet(work_of(planned("baby")[0], lambda block: "foundation"), SheetOptions())
    page = show(whole)
    found = Axe().run(page, options=RULES)
    assert found.violations_count == 0, found.generate_report()
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE
    assert page.locator("h2").count() == 1 + len(whole.chapters)


@pytest.mark.parametrize("title", TITLES)
def test_headings_are_the_chapters_in_order(show, title):
    page = show(book(title))
    levels = page.eval_on_selector_all("h1,h2,h3", "all => all.map(each => [each.tagName, each.innerText])")
    assert [text for name, text in levels if name == "H1"] == [title]
    chapters = [text for name, text in levels if name == "H2"]
    assert chapters == ["Contents", *(chapter.title for chapter in book(title).chapters)]
    assert page.title() == f"{title}: booklet" and page.get_attribute("html", "lang") == "en"


@pytest.mark.parametrize("title", TITLES)
def test_the_page_is_never_wider_than_the_screen(show, title):
    page = show(book(title), NARROW)
    for width in (PHONE, DESK, NARROW):
        page.set_viewport_size({"width": width, "height": 800})
        assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.add_style_tag(content="html { font-size: 200%; }")  # WCAG 2.2, 1.4.4
    assert page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("title", TITLES)
def test_a_word_in_a_table_stays_whole_on_a_phone(show, title):
    """A cell is at least as wide as its longest word: `background` is not set as `backgro` and `und`."""
    page = show(book(title), PHONE)
    broken = page.evaluate(
        """() => [...document.querySelectorAll('th, td')].flatMap(cell => {
            const walker = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT), found = [];
            while (walker.nextNode()) {
                const node = walker.currentNode;
                for (const word of node.textContent.matchAll(/[a-z]+/g)) {
                    const range = document.createRange();
                    range.setStart(node, word.index);
                    range.setEnd(node, word.index + word[0].length);
                    if (range.getClientRects().length > 1) found.push(word[0]);
                }
            }
            return found;
        })"""
    )
    assert broken == []


def test_all_of_a_wide_table_is_on_a_phones_screen(show):
    """Nobody has to find out that a table goes on to the right: a row is a list, with its columns' names."""
    page = show(booklet(work_of(planned("sampler")[0], lambda block: "templates"), SheetOptions()), PHONE)
    tables = page.locator("table.many")
    assert tables.count() > 10
    widths = page.eval_on_selector_all(".wide", "all => all.map(each => each.scrollWidth)")
    assert max(widths) < PHONE
    chart = page.get_by_role("table", name="Cuts of Indigo print").first
    row = chart.get_by_role("row").nth(1)
    named = row.locator("th, td").first.evaluate("cell => getComputedStyle(cell, '::before').content")
    assert named == '"key"' and row.get_by_role("cell").count() == 5
    page.set_viewport_size({"width": DESK, "height": 800})
    assert chart.get_by_role("columnheader").first.is_visible()


def test_every_drawing_says_in_words_what_it_shows(show):
    page = show(book("Eight-pointed Star"))
    names = page.eval_on_selector_all(
        "svg", "all => all.map(each => each.querySelector('title').textContent)"
    )
    assert len(names) > 10 and all(len(name) > 15 for name in names)
    assert "Before and after step 1. Sew C (medium) to C (dark, shaded)." in names[3]
    assert page.get_by_role("img", name="The finished block Eight-pointed Star.").count() == 1


def test_the_keyboard_skips_to_the_content_and_follows_the_contents(show):
    page = show(book("Eight-pointed Star"))
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Skip to the content"
    assert page.evaluate("document.activeElement.getBoundingClientRect().left") >= 0, (
        "it shows when it is reached"
    )
    assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") == "solid"
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert page.evaluate("document.querySelector('main').contains(document.activeElement)")
    page = show(book("Eight-pointed Star"))
    for _ in range(1 + 5):  # the skip link, then the chapters
        page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Steps"
    page.keyboard.press("Enter")
    page.wait_for_function("document.querySelector(location.hash).getBoundingClientRect().top < 60")
    assert page.evaluate("document.querySelector(location.hash).innerText") == "Steps"


def test_links_and_boxes_are_large_enough_for_a_thumb(show):
    page = show(book("Eight-pointed Star"))
    for box in page.eval_on_selector_all(
        "nav a", "all => all.map(each => each.getBoundingClientRect().height)"
    ):
        assert box >= 44  # WCAG 2.2, 2.5.5
    sides = page.eval_on_selector_all("input", "all => all.map(each => each.getBoundingClientRect().height)")
    assert sides and min(sides) >= 24  # WCAG 2.2, 2.5.8


def test_a_template_is_ticked_on_the_storage_card(show):
    page = show(book("Eight-pointed Star"))
    box = page.get_by_role("checkbox", name="B done")
    box.check()
    assert box.is_checked()


def test_the_page_asks_for_nothing_beyond_itself(browser, tmp_path):
    asked: list[str] = []
    page = browser.new_page()
    page.on("request", lambda request: asked.append(request.url))
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    file = tmp_path / "booklet.html"
    file.write_bytes(html_bytes(book("Log Cabin"), SheetOptions()))
    page.goto(file.as_uri())
    page.wait_for_load_state("networkidle")
    assert asked == [file.as_uri()] and said == []
    page.close()


def test_words_of_a_writer_never_become_markup(show):
    nasty = '<script>document.title = "taken"</script><img src=x onerror=alert(1)>"\'&'
    plain = book("Log Cabin")
    page = show(replace(plain, title=nasty, cover=replace(plain.cover, lines=(nasty,)), author=nasty))
    assert page.inner_text("h1") == nasty and page.title() == f"{nasty}: booklet"
    assert page.locator("img, script").count() == 0


def test_the_same_book_gives_the_same_bytes():
    one, two = (html_bytes(book("Drunkard's Path"), SheetOptions()) for _ in range(2))
    assert one == two


@pytest.mark.parametrize("title", TITLES)
def test_the_drawings_have_names_of_their_own(show, title):
    page = show(book(title))
    ids = page.eval_on_selector_all("[id]", "all => all.map(each => each.id)")
    assert len(ids) == len(set(ids))


def test_the_steps_are_as_wide_as_the_phone_and_side_by_side_on_a_desk(show):
    lefts = {}
    for width in (PHONE, DESK):
        page = show(book("Eight-pointed Star"), width)
        lefts[width] = page.eval_on_selector_all(
            ".cards li", "all => all.map(each => each.getBoundingClientRect().left)"
        )
    assert len(set(lefts[PHONE])) == 1 and len(set(lefts[DESK])) >= 2


@cache
def quilt_book() -> Book:
    """The booklet of a sampler, its blocks by templates."""
    return booklet(work_of(planned("sampler")[0], lambda block: "templates"), SheetOptions())


def test_another_way_of_cutting_is_read_on_a_phone_without_scrolling_sideways(show):
    page = show(quilt_book())
    notes = page.query_selector_all("td.notes div")
    assert notes
    for note in notes:
        box = note.bounding_box()
        assert box is not None and box["x"] >= 0 and box["x"] + box["width"] <= PHONE


def test_fractions_of_the_heading_are_set_as_everywhere(show):
    """A half is one glyph, in the size under the title too."""
    page = show(replace(quilt_book(), under="36in x 43 1/2in finished"))
    assert page.locator("header .under").inner_text() == "36in x 43½in finished"
