"""The catalogue in a real browser (Debian's Chromium), a plain file: searching, on a phone and by ear.

axe-core's rules are the outside check of accessibility (WCAG 2.2, levels A and AA).
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from piecewright.searching.finding import Wanted
from piecewright.sheets.catalogue.entries import Entry
from piecewright.sheets.catalogue.html_catalogue import catalogue_html
from playwright.sync_api import Browser, Page, expect
from support.html_pages import NARROW, RULES
from support.library import library_entries


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("catalogue") / "catalogue.html"
    path.write_bytes(catalogue_html(library_entries(), "Catalogue of blocks"))
    return path


@pytest.fixture
def page(browser: Browser, file: Path) -> Iterator[Page]:
    """The catalogue in a window, with nothing said in the console."""
    opened = browser.new_page(viewport={"width": 1280, "height": 900})
    said: list[str] = []
    opened.on("console", lambda message: said.append(message.text))
    opened.on("pageerror", lambda problem: said.append(str(problem)))
    opened.on("request", lambda request: said.append(request.url) if "file:" not in request.url else None)
    opened.goto(file.as_uri())
    yield opened
    opened.close()
    assert said == []


def shown(page: Page) -> list[str]:
    """The titles that can be seen."""
    return page.locator("li:visible h2").all_inner_texts()


def test_every_block_is_shown_with_its_picture(page: Page) -> None:
    assert sorted(shown(page)) == sorted(entry.facts.title for entry in library_entries())
    assert page.locator("li:visible svg").count() == len(library_entries())
    assert page.inner_text("#count") == f"{len(library_entries())} of {len(library_entries())} blocks"


@pytest.mark.parametrize(
    "typed", ["star", "STAR of", "monkey", "bears paw", "bear's", "nothing-like-it", "no. 2", ""]
)
def test_typing_a_name_finds_what_find_finds(page: Page, typed: str) -> None:
    page.get_by_label("Name").fill(typed)
    wanted = Wanted(tuple(typed.split()))
    expected = sorted(each.facts.title for each in library_entries() if wanted.holds(each.facts))
    assert sorted(shown(page)) == expected
    assert page.inner_text("#count").startswith(f"{len(shown(page))} of ")


@pytest.mark.parametrize(
    "label, value, option",
    [
        ("Family", "hexagon", "families"),
        ("Can be made by", "foundation", "methods"),
        ("Symmetry", "third-turn", "symmetries"),
    ],
)
def test_choosing_finds_what_find_finds(page: Page, label: str, value: str, option: str) -> None:
    page.get_by_label(label).select_option(value)
    wanted = Wanted(**{option: (value,)})
    expected = sorted(each.facts.title for each in library_entries() if wanted.holds(each.facts))
    assert sorted(shown(page)) == expected


def test_conditions_are_joined_kept_in_the_address_and_taken_back(page: Page, file: Path) -> None:
    page.get_by_label("Name").fill("star")
    page.get_by_label("Most pieces").fill("16")
    expected = sorted(
        each.facts.title
        for each in library_entries()
        if Wanted(("star",)).holds(each.facts) and each.facts.pieces <= 16
    )
    assert sorted(shown(page)) == expected
    assert page.url == f"{file.as_uri()}#words=star&most=16"
    page.reload()
    assert sorted(shown(page)) == expected
    page.get_by_role("button", name="Show all").click()
    every = len(library_entries())
    expect(page.locator("#count")).to_have_text(f"{every} of {every} blocks")
    assert page.url == file.as_uri()


def test_a_name_of_several_blocks_is_told_at_each(page: Page) -> None:
    page.get_by_label("Name").fill("monkey wrench")
    assert sorted(shown(page)) == ["Churn Dash", "Snail's Trail"]
    assert page.get_by_text("Monkey Wrench is also a name of Snail's Trail.").is_visible()


def test_without_the_script_every_block_is_there(browser: Browser, file: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(file.as_uri())
    assert len(shown(page)) == len(library_entries()) and not page.locator("form").is_visible()
    context.close()


def test_no_rule_of_accessibility_is_broken(page: Page) -> None:
    page.get_by_label("Name").fill("star")
    found = Axe().run(page, options=RULES)
    assert found.violations_count == 0, found.generate_report()


def test_the_page_is_never_wider_than_the_screen(page: Page) -> None:
    for width in (NARROW, 390, 1280):
        page.set_viewport_size({"width": width, "height": 800})
        assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_titles_are_text_and_never_markup(browser: Browser, tmp_path: Path) -> None:
    from dataclasses import replace

    one = library_entries()[0]
    title = '<img src=x onerror="document.title=1">" | </script>'
    odd = Entry(one.draft, replace(one.facts, title=title, also=(title,), notes=(title,)), title)
    path = tmp_path / "odd.html"
    path.write_bytes(catalogue_html([odd], title))
    page = browser.new_page()
    page.goto(path.as_uri())
    assert shown(page) == [title] and page.title() == title
    assert page.locator("img").count() == 0
    page.close()
