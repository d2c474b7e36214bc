"""Steps as a maker sees them: what is sewn to what, how often, how large, which way it is pressed."""

from __future__ import annotations

from functools import cache

import pytest
from piecewright.drafting.model import Draft
from piecewright.sewing.model import Assembly
from piecewright.sewing.order.assembly import assemble
from piecewright.sewing.pressing.pressing import press
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.content import Book, Card, Cards, List, Paragraph, Picture
from piecewright.sheets.page import PathMark
from piecewright.sheets.quilts.wearing import own_roles
from piecewright.sheets.setting.pages import set_chapters
from piecewright.sheets.work import Needle
from piecewright.words.work.pressing import pressing_words
from shapely.geometry import Polygon
from shapely.ops import unary_union
from support.arranged import extent, rings
from support.check import check_block, check_noted
from support.library import library_drafts
from support.works import steps_of_draft

LIBRARY = dict(library_drafts())
KINDS = (
    "Ohio Star",
    "Eight-pointed Star",
    "Drunkard's Path",
    "Honeycomb",
    "Log Cabin",
    "Flying Goose",
    "Spools",
    "Jack's House",
    "Mariner's Compass",
    "Triple Irish Chain",
)
PARTIAL = "finished 6in\ngrid 3 x 3\nseam A2 -- C2\nseam C1 -- C3\nseam D3 -- B3\nseam B4 -- B2"


@cache
def sewn(title: str) -> tuple[Draft, Assembly, tuple[Card, ...]]:
    draft = LIBRARY[title]
    return draft, *cards_of(draft)


def cards_of(draft: Draft, needle: Needle = "machine") -> tuple[Assembly, tuple[Card, ...]]:
    assembly = assemble(draft)
    chapter = steps_of_draft(draft, needle)
    (cards,) = [part.cards for part in chapter.parts if isinstance(part, Cards)]
    return assembly, cards


def marks(card: Card, role: str) -> list[PathMark]:
    return [mark for mark in card.picture.marks if isinstance(mark, PathMark) and mark.role == role]


def shape(mark: PathMark):
    return unary_union([Polygon(ring).buffer(0) for ring in rings(mark) if len(ring) > 2])


@pytest.mark.parametrize("title", KINDS)
def test_every_step_has_a_card_in_order(title):
    _, assembly, cards = sewn(title)
    assert [card.title.split(" · ")[0] for card in cards] == [
        f"Step {n}" for n in range(1, len(assembly.steps) + 1)
    ]
    assert cards[-1].title.endswith("the block")
    for step, card in zip(assembly.steps[:-1], cards, strict=False):
        assert card.title.endswith(f"make {step.batch}") == (step.batch > 1)


@pytest.mark.parametrize("title", KINDS)
def test_before_the_parts_lie_apart_and_make_up_what_is_shown_after(title):
    _, _, cards = sewn(title)
    for card in cards:
        one, two = (shape(mark) for mark in marks(card, "part"))
        assert one.intersection(two).area < 1e-6 * (one.area + two.area), card.title
        after = unary_union([shape(mark) for mark in marks(card, "fill")])
        assert after.area == pytest.approx(one.area + two.area, rel=1e-3)  # curves are read in small steps


@pytest.mark.parametrize("title", KINDS)
def test_the_added_part_alone_is_shaded_and_the_seam_is_heaviest(title):
    for card in sewn(title)[2]:
        shades = [mark.fill for mark in marks(card, "part")]
        assert sorted(shade == (1.0, 1.0, 1.0) for shade in shades) == [False, True]
        heavy = marks(card, "sewn")
        assert len(heavy) == 2 and min(mark.width for mark in heavy) > max(
            mark.width
            for mark in card.picture.marks
            if isinstance(mark, PathMark) and mark.role in ("part", "seam")
        )


@pytest.mark.parametrize("title", KINDS)
def test_a_picture_keeps_to_its_room(title):
    for card in sewn(title)[2]:
        for mark in card.picture.marks:
            if isinstance(mark, PathMark) and mark.clip is None:
                left, top, right, bottom = extent(mark)
                assert left > -4 and right < card.picture.width + 4, card.title
                assert top > -4 and bottom < card.picture.height + 4, card.title


def test_sizes_are_unfinished_and_finished_as_common_practice_has_them():
    cards = sewn("Flying Goose")[2]
    draft = LIBRARY["Flying Goose"]
    assert (draft.width, draft.height) == (4, 2)
    assert cards[-1].lines[2] == "Unfinished 4 1/2in x 2 1/2in, finished 4in x 2in."
    assert sewn("Ohio Star")[2][1].lines[2] == "Unfinished 3 1/2in square, finished 3in square."


def test_a_set_in_seam_stops_at_the_dot():
    _, assembly, cards = sewn("Eight-pointed Star")
    for step, card in zip(assembly.steps, cards, strict=True):
        dots = marks(card, "dot")
        assert bool(dots) == bool(step.turns or step.stops)
        assert len(dots) == 4 * (len(step.turns) + len(step.stops))  # a ring and a speck, on either part
    set_in = [card for step, card in zip(assembly.steps, cards, strict=True) if step.turns]
    assert set_in and all("Stop at the dot with the needle down" in card.lines[0] for card in set_in)


def test_a_curved_seam_is_pinned_at_its_match_marks():
    _, assembly, cards = sewn("Drunkard's Path")
    curved = [(step, card) for step, card in zip(assembly.steps, cards, strict=True) if step.curved]
    assert curved
    for step, card in curved:
        assert len(marks(card, "match")) == 2 * len(step.eased) and "Curved: pin" in card.lines[0]


def test_a_partial_seam_is_left_open_and_closed_later():
    _, cards = cards_of(check_block(PARTIAL))
    assert "leave the rest open at the dot: closed after step 4" in cards[0].lines[0]
    assert "Then close the seam of step 1" in cards[3].lines[0]


def test_a_window_is_shown_beside_its_filling():
    _, (card,) = cards_of(
        check_noted("piece-hole", "finished 6in\ngrid 3 x 3\nseam B2 -- C2 -- C3 -- B3 -- B2")
    )
    assert "the seam runs all round" in card.lines[0]
    one, two = (Polygon(rings(mark)[0]) for mark in marks(card, "part"))
    assert not one.intersects(two)


def test_a_circle_has_no_corner_to_pin_first():
    circle = check_noted("piece-hole", "finished 8in\nseam circle around center radius 2 1/2in")
    for needle, begin, pinned in (
        ("machine", "Begin between two marks.", "pin at the 4 match marks"),
        ("papers", "Pin at four places first; begin anywhere.", "bending the papers"),
    ):
        _, (card,) = cards_of(circle, needle)
        assert f"the seam runs all round. {begin}" in card.lines[0] and pinned in card.lines[0]
        assert "corner" not in card.lines[0] and "both ends" not in card.lines[0]


def test_the_arrow_lies_on_the_cloth_that_the_seam_is_pressed_to():
    draft, assembly, cards = sewn("Flying Goose")
    dark = [piece for piece in draft.pieces if piece.fabric == "dark"]
    assert dark
    for step, card in zip(assembly.steps, cards, strict=True):
        assert card.lines[1].startswith("Press toward")
        tip = marks(card, "press")[-1]
        assert len(rings(tip)[0]) == 3, step


def test_by_hand_the_words_are_of_the_needle():
    _, cards = cards_of(LIBRARY["Eight-pointed Star"], "hand")
    said = " ".join(line for card in cards for line in card.lines)
    assert "pass the needle through" in said and "lift the foot" not in said


def test_over_papers_edges_are_whipped_and_no_line_is_marked():
    draft = LIBRARY["Honeycomb"]
    chapter = steps_of_draft(draft, "papers")
    said = " ".join(
        line
        for part in chapter.parts
        if isinstance(part, Cards)
        for card in part.cards
        for line in card.lines
    )
    assert "bend the papers softly, and whip on" in said and "backstitch" not in said


def test_over_papers_nothing_is_pressed_to_one_side_and_the_papers_come_out_last():
    draft = LIBRARY["Honeycomb"]
    chapter = steps_of_draft(draft, "papers")
    cards = [card for part in chapter.parts if isinstance(part, Cards) for card in part.cards]
    assert not any("press" in line.lower() for card in cards for line in card.lines)
    assert not any(marks(card, "press") for card in cards)
    *_, last = (part for part in chapter.parts if isinstance(part, List))
    assert "until all its neighbours are whipped on" in last.texts[0]
    assert "Press at the end" in last.texts[1] and "lift the papers out" in last.texts[2]


def test_by_hand_seams_are_pressed_with_the_finger_until_the_block_is_done():
    _, cards = cards_of(LIBRARY["Ohio Star"], "hand")
    assert all(card.lines[1].startswith("Finger-press ") for card in cards)
    assert not any("open" in card.lines[1] for card in cards)


def test_of_two_parts_that_look_alike_the_words_say_which_is_shaded():
    _, _, cards = sewn("Storm at Sea")
    for card in cards:
        units = card.lines[0].removesuffix(".").split(" to ")
        if all(each.startswith(("Sew unit", "unit")) for each in units):
            assert sum("(shaded)" in each for each in units) == 1
    assert cards[0].lines[0] == "Sew B (light) to E (dark)."


def test_every_picture_says_in_words_what_it_shows():
    for card in sewn("Ohio Star")[2]:
        assert isinstance(card.picture, Picture) and card.lines[0].split(".")[0] in card.picture.alternative


def test_several_steps_share_a_page_and_none_is_cut_off():
    draft, _, cards = sewn("Log Cabin")
    chapter = steps_of_draft(draft)
    book = Book("Log Cabin", "under", None, (chapter,), "", "", "")
    pages = set_chapters(book, SheetOptions()).pages
    assert len(pages) <= len(cards) / 4
    for page in pages:
        for mark in page.marks:
            assert extent(mark)[3] <= page.height - 17.5


def test_pressing_says_how_many_seams_lie_opposite():
    draft, assembly, _ = sewn("Ohio Star")
    plan = press(draft, assembly, own_roles(draft).lightness)
    assert "Seams meet at 12 places, and lie opposite at each" in pressing_words(plan)
    single = steps_of_draft(check_block("finished 6in"))
    assert single.parts[1:] == (Paragraph("The block is one piece: there is nothing to sew."),)


def test_copies_that_are_pressed_differently_are_told_by_their_place_in_the_block():
    _, _, cards = sewn("Ohio Star")
    told = "Press 2 as the arrow shows (top and bottom) and 2 the other way (left and right)."
    assert cards[1].lines[1] == told
    _, _, cards = sewn("Jacob's Ladder")
    told = next(card.lines[1] for card in cards if "(top" in card.lines[1])
    assert told == "Press 2 toward B (medium) (top and left) and 2 toward B (light) (right and bottom)."
