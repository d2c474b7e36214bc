"""Copies of one unit that are pressed differently, as a maker finds them: shaded in a small picture of the
finished block, and told in words where no picture can be seen."""

from __future__ import annotations

from functools import cache

import pytest
from piecewright.drafting.model import Draft
from piecewright.sewing.model import Assembly, Step
from piecewright.sewing.order.assembly import assemble
from piecewright.sewing.pressing.pressing import press
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.content import Book, Card, Cards, Chapter, Cover, Paragraph
from piecewright.sheets.quilts.wearing import own_roles
from piecewright.sheets.setting.html_book import html_bytes
from piecewright.sheets.setting.pages import set_chapters
from piecewright.sheets.work import Needle
from piecewright.words.work.pressing import ROWS
from shapely.geometry import Point, Polygon
from shapely.ops import unary_union
from support.arranged import extent, paths, rings, text_box, texts
from support.check import check_block
from support.library import library_drafts
from support.works import steps_of_draft

LIBRARY = dict(library_drafts())
SHOWN = (
    "Bear's Paws", "Birds in the Air", "Broken Dish", "Cake Stand", "Drunkard's Path", "Flock of Geese",
    "Goose in the Pond", "Lady of the Lake", "Maple Leaf", "Sailboat", "Sawtooth Patchwork",
    "Streak of Lightning", "Thousand Pyramids",
)  # fmt: skip
"""Blocks some of whose units are pressed two ways, in places that the block's corners do not name."""


@cache
def chapter(title: str, needle: Needle = "machine") -> tuple[Assembly, Chapter]:
    made = assemble(LIBRARY[title])
    return made, steps_of_draft(LIBRARY[title], needle)


def cards_in(steps: Chapter) -> tuple[Card, ...]:
    (cards,) = [part.cards for part in steps.parts if isinstance(part, Cards)]
    return cards


def pressed_so(draft: Draft, made: Assembly, step: Step, words: str) -> list[tuple[int, ...]]:
    """The pieces of each copy that is pressed the way that the words name first: toward a part with that
    name; `as the arrow shows`, like the first copy; or not like it."""
    ways = press(draft, made, own_roles(draft).lightness).seams[step.step - 1].ways
    how = words.partition(":")[0].split(" ", 2)[2]
    if how.startswith("toward "):
        names = [f"unit {part[1:]}" if part.startswith("u") else cloth(made, part) for part in step.parts]
        way = ("first", "second")[names.index(how.removeprefix("toward "))]
    else:
        assert how in ("as the arrow shows", "the other way")
        way = ways[0] if how == "as the arrow shows" else ({*ways} - {ways[0]}).pop()
    copies = made.units[step.step - 1].copies
    return [copy.pieces for copy, own in zip(copies, ways, strict=True) if own == way]


def cloth(made: Assembly, piece: str) -> str:
    own = made.pieces[int(piece) - 1]
    return f"{own.template} ({own.fabric}{', reversed' if own.reversed else ''})"


def inside(draft: Draft, number: int) -> Point:
    """A place well inside a piece, in inches."""
    corners = [side.edge.start for side in draft.pieces[number - 1].ring]
    return Polygon([(float(at.x), float(at.y)) for at in corners]).representative_point()


@pytest.mark.parametrize("title", SHOWN)
def test_shaded_are_the_copies_that_are_pressed_so_and_no_others(title):
    draft, (made, steps) = LIBRARY[title], chapter(title)
    shown = [(step, card) for step, card in zip(made.steps, cards_in(steps), strict=True) if card.beside]
    assert shown
    for step, card in shown:
        places = paths(card.beside, "place")
        copies = pressed_so(draft, made, step, card.lines[1])
        assert card.lines[1].startswith(f"Press {len(copies)} ") and len(places) == len(copies)
        shade = unary_union([Polygon(ring) for place in places for ring in rings(place)])
        scale = card.beside.width / float(draft.width)
        meant = {number for pieces in copies for number in pieces}
        for piece in draft.pieces:
            at = inside(draft, piece.number)
            within = shade.contains(Point(at.x * scale, at.y * scale))
            assert within == (piece.number in meant), (title, card.title, piece.number)


@pytest.mark.parametrize("title", SHOWN)
def test_the_shade_is_that_of_what_is_added(title):
    for card in (card for card in cards_in(chapter(title)[1]) if card.beside):
        added = {mark.fill for mark in paths(card.picture, "part")} - {(1.0, 1.0, 1.0)}
        assert {mark.fill for mark in paths(card.beside, "place")} == added


def test_the_words_point_to_the_picture_and_count_what_is_left():
    card = cards_in(chapter("Bear's Paws")[1])[0]
    told = "Press 4 toward B (background): shaded in the small block; the other 12 toward B (dark)."
    assert card.lines[1] == told
    by_hand = cards_in(chapter("Bear's Paws", "hand")[1])[0]
    assert by_hand.lines[1] == f"Finger-p{told[1:]}" and by_hand.beside


def test_one_copy_left_is_the_other_one():
    lines = [card.lines[1] for card in cards_in(chapter("Sailboat")[1]) if card.beside]
    told = "Press 1 toward B (background): shaded in the small block; the other one toward B (light)."
    assert lines == [told]


@pytest.mark.parametrize("title", ["Ohio Star", "Jacob's Ladder", "Hour Glass", "Mariner's Compass"])
def test_corners_alone_or_sides_alone_are_told_in_words(title):
    cards = cards_in(chapter(title)[1])
    assert not any(card.beside for card in cards)
    assert not any("shaded in the small block" in line for card in cards for line in card.lines)


def test_a_corner_beside_a_side_is_shown_for_top_is_soon_taken_for_top_right():
    """Three of the Maple Leaf's four lie at corners and sides: `top right, left and bottom left`."""
    (card,) = [card for card in cards_in(chapter("Maple Leaf")[1]) if card.beside]
    assert card.beside.alternative == "The finished block. Shaded: 1 of the 4 places of unit 1, top."


def test_who_does_not_see_the_picture_is_told_by_rows():
    picture = cards_in(chapter("Bear's Paws")[1])[0].beside
    assert picture.alternative == (
        "The finished block. Shaded: 4 of the 16 places of unit 1, 4th in row 1, 1st in rows 2 and 6, 2nd in "
        "row 5. Rows count from the top, and only the places of that unit; places in a row from the left."
    )
    page = html_bytes(book("Bear's Paws"), SheetOptions()).decode()
    (title,) = [part for part in page.split("<title")[1:] if "4th in row 1" in part]
    assert title.index("</svg>") < title.index("shaded in the small block"), "read before the words on it"


def book(title: str) -> Book:
    _, steps = chapter(title)
    return Book(title, "under", Cover(cards_in(steps)[0].picture, ()), (steps,), "", "", "")


@pytest.mark.parametrize("title", SHOWN)
def test_nothing_is_said_of_rows_where_none_are_told(title):
    said = [part.text for part in chapter(title)[1].parts if isinstance(part, Paragraph)]
    assert ROWS.format("block") not in said


def test_over_papers_nothing_is_pressed_so_nothing_is_shaded():
    assert not any(card.beside for card in cards_in(chapter("Bear's Paws", "papers")[1]))


def test_copies_too_small_to_be_seen_are_told_by_rows():
    """A strip of 4 x 24 squares: the block is too long for its squares to be found in a small picture; whole
    rows of it are found."""
    rows = "row 4 plain dark\n" * 24
    draft = check_block(f"finished 4in x 24in\ngrid 4 x 24\n{rows}")
    steps = steps_of_draft(draft)
    cards = cards_in(steps)
    assert "1st and 3rd in rows 1, 2, 3" in cards[0].lines[1] and not cards[0].beside
    assert any(card.beside for card in cards)
    assert ROWS.format("block") in [part.text for part in steps.parts if isinstance(part, Paragraph)]


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("title", SHOWN)
def test_the_small_block_stands_clear_of_all_words_and_on_the_paper(title, paper):
    options = SheetOptions(paper=paper)
    found = 0
    for page in set_chapters(book(title), options).pages:
        for place in paths(page, "outline"):
            found += 1
            left, top, right, bottom = extent(place)
            assert min(left, top, page.width - right, page.height - bottom) >= 17.5
            for mark in texts(page):
                from_left, from_top, to_right, to_bottom = text_box(mark)
                beside = to_right <= left or right <= from_left
                assert beside or to_bottom <= top + 1 or bottom <= from_top + 1, mark.text
    assert found == sum(bool(card.beside) for card in cards_in(chapter(title)[1]))
