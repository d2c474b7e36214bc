"""Things set one under another: no page for a few lines that a little less white makes room for."""

from __future__ import annotations

import itertools

from piecewright.sheets.arrange.style import set_text
from piecewright.sheets.content import Column, Row
from piecewright.sheets.page import Mark, TextMark
from piecewright.sheets.setting.flow import Item, flow, gap, section
from piecewright.sheets.setting.table import table_items

BOX = (0.0, 0.0, 400.0, 100.0)
COLUMNS = (Column("what", 0.0), Column("count", 40.0))


def line(word: str, tall: float = 20.0, below: float = 0.0) -> Item:
    return Item(tall, lambda x, y: [set_text(x, y + 8, word)], below=below)


def texts_in(page: list[Mark]) -> list[TextMark]:
    return [mark for mark in page if isinstance(mark, TextMark)]


def words(page: list[Mark]) -> list[str]:
    return [mark.text for mark in texts_in(page)]


def test_white_is_taken_away_where_that_saves_a_page():
    items = [piece for word in "abcd" for piece in (line(word), gap(10))]
    (page,) = flow(items[:-1], BOX)  # 110pt of items in 100pt
    places = [mark.y for mark in texts_in(page)]
    assert words(page) == list("abcd")
    assert all(two - one >= 20 for one, two in itertools.pairwise(places))


def test_white_stays_where_no_page_is_saved():
    items = [piece for word in "abcdef" for piece in (line(word, 34), gap(10))]
    first, second, third = flow(items, BOX)
    assert [words(page) for page in (first, second, third)] == [["a", "b"], ["c", "d"], ["e", "f"]]
    assert texts_in(first)[1].y - texts_in(first)[0].y == 44


def test_white_alone_begins_no_page():
    assert len(flow([line("a", 95), gap(20)], BOX)) == 1


def test_white_at_the_foot_may_run_over():
    assert len(flow([line("a", 60), line("b", 45, below=14)], BOX)) == 1


def test_a_heading_begins_a_page_at_its_top():
    _, second = flow([line("a", 90), section("Borders", "", 400.0), line("b", 30)], BOX)
    alone = flow([section("Borders", "", 400.0)], BOX)[0]
    assert texts_in(second)[0].y == texts_in(alone)[0].y < 17


def rows(count: int) -> list[Row]:
    return [Row((f"row {number}", "1")) for number in range(count)]


def test_a_table_of_a_few_rows_is_not_parted():
    table = table_items(COLUMNS, rows(4), 400.0, "Navy twill")
    first, second = flow([line("a", 60), *table], BOX)
    assert words(first) == ["a"] and "row 0" in words(second) and "row 3" in words(second)


def test_a_table_that_goes_on_says_of_what():
    first, *others = flow(table_items(COLUMNS, rows(30), 400.0, "Navy twill"), BOX)
    assert "Navy twill, continued" not in words(first)
    assert others and all(words(page)[0] == "Navy twill, continued" for page in others)
    assert [word for page in (first, *others) for word in words(page) if word.startswith("row")] == [
        f"row {number}" for number in range(30)
    ]
