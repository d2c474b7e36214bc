"""Foundations sewn again from what is printed, and the pictures of it: patch by patch, then the joins."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from piecewright.cutting.templates.making import make_templates
from piecewright.drafting.model import Draft, Side
from piecewright.drafting.resize import resize
from piecewright.geometry.edge import Edge, Point
from piecewright.sewing.foundations.foundation import foundations
from piecewright.sewing.foundations.foundation_model import Foundations
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.chapters.foundations import foundations as foundation_chapter
from piecewright.sheets.content import Card, Cards, List, Part, Section
from piecewright.sheets.page import PathMark, TextMark
from piecewright.sheets.papers.foundation_paper import SectionPaper, section_papers
from piecewright.sheets.papers.foundation_sewn import printed_areas, sew_section
from piecewright.sheets.papers.foundation_strip import join_cards, strip_parts
from piecewright.sheets.quilts.wearing import own_roles
from piecewright.words.say import INCHES
from shapely.geometry import Polygon
from shapely.ops import unary_union
from support.arranged import extent, rings
from support.check import check_block, draft_text
from support.library import library_drafts
from support.random_blocks import random_blocks
from support.works import block_of

LIBRARY = dict(library_drafts())
ON_PAPER = [title for title, draft in LIBRARY.items() if foundations(draft).possible]
SHOWN = ("Log Cabin", "Pineapple", "Wild Goose Chase", "Flying Goose", "Storm at Sea")


def sew_all(draft: Draft) -> list[SectionPaper]:
    """Sews every section from its print, and finds each number on its own piece."""
    found = foundations(draft)
    papers = list(section_papers(draft, found))
    for paper in papers:
        sewn = sew_section(paper, draft.allowance)
        assert [stage.laid[-1].patch for stage in sewn.stages] == list(paper.section.patches)
        for each, area in zip(paper.patches, printed_areas(paper), strict=True):
            drafted = float(draft.pieces[each.patch.piece - 1].area)
            assert area.area == pytest.approx(drafted, rel=1e-2), "chords stand for arcs"
    return papers


@pytest.mark.parametrize("title", ON_PAPER)
def test_every_paper_of_the_library_can_be_sewn_from_its_print(title):
    assert sew_all(LIBRARY[title])


@given(random_blocks(names=False))
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_random_papers_can_be_sewn_from_their_print(block):
    drafted = draft_text(block.text()).value
    assume(drafted is not None and len(drafted[0].pieces) <= 30)
    if foundations(drafted[0]).possible:
        sew_all(drafted[0])


@pytest.mark.parametrize("inches", [Fraction(1, 2), Fraction(1)])
@pytest.mark.parametrize("title", SHOWN)
def test_papers_with_wide_allowances_can_be_sewn_from_their_print(title, inches):
    drafts = (
        resize(LIBRARY[title], width, LIBRARY[title].height * width / LIBRARY[title].width)
        for width in (6, 12)
    )
    wide = [with_allowance(draft, inches) for draft in drafts]
    sewn = [sew_all(draft) for draft in wide if make_templates(draft).value is not None]
    assert sewn


def with_allowance(draft: Draft, inches: Fraction) -> Draft:
    def widened(ring: Sequence[Side]) -> tuple[Side, ...]:
        return tuple(replace(side, allowance=inches) for side in ring)

    pieces = tuple(replace(piece, ring=widened(piece.ring)) for piece in draft.pieces)
    return replace(draft, allowance=inches, pieces=pieces)


@given(st.integers(3, 12), st.integers(0, 70), st.sampled_from(["1/4in", "1/2in", "3/4in", "1in"]))
@settings(max_examples=40, deadline=None)
def test_fans_with_wide_allowances_can_be_sewn_from_their_print(count, turned, allowance):
    sew_all(
        check_block(
            f"finished 8in\nallowance {allowance}\nturn {count} about center {{ "
            f"seam center -- (1in from center at {turned}deg) -- outline }}"
        )
    )


@pytest.mark.parametrize("line", ["top-left--top-right", "top-left--bottom-left"])
def test_cloth_reaches_over_an_edge_with_an_allowance_of_its_own(line):
    draft = check_block(f"finished 6in\ngrid 2 x 2\nallowance 1in on {line}\nseam A1 -- C3\nseam A3 -- B2")
    (plain, *_), (wide, *_) = (sew_all(each) for each in (with_allowance(draft, Fraction(1, 4)), draft))
    assert (
        sum(
            each.patch.width > other.patch.width
            for each, other in zip(wide.patches, plain.patches, strict=True)
        )
        == 1
    )


@given(random_blocks(curves=False, names=False), st.sampled_from(["1/2in", "1in"]))
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_random_papers_with_wide_allowances_can_be_sewn(block, allowance):
    drafted = draft_text(block.text(extra=f"allowance {allowance}")).value
    assume(drafted is not None and len(drafted[0].pieces) <= 30)
    if foundations(drafted[0]).possible:
        sew_all(drafted[0])


def test_the_steps_say_the_allowance_of_the_block():
    """Of the lengths in the steps, all are the block's own allowance."""
    draft = check_block("finished 8in\nallowance 1in\nseam top -- bottom")
    chapter = foundation_chapter(block_of(draft, "foundation"), SheetOptions())
    (steps,) = (part for part in chapter.parts if isinstance(part, List))
    assert re.findall(r"[\d/]+in\b", " ".join(steps.texts)) == ["1in"] * 3


def first_paper(title: str) -> tuple[Draft, SectionPaper]:
    draft = LIBRARY[title]
    return draft, section_papers(draft, foundations(draft))[0]


@pytest.mark.parametrize("title", SHOWN)
@pytest.mark.parametrize("side", ["width", "height"])
def test_cloth_cut_too_small_is_caught_patch_by_patch(title, side):
    draft, paper = first_paper(title)
    for at, each in enumerate(paper.patches):
        # the margin lies on both sides, and sizes are rounded up by less than a quarter inch
        small = replace(each.patch, **{side: getattr(each.patch, side) - Fraction(3, 4)})
        patches = (*paper.patches[:at], replace(each, patch=small), *paper.patches[at + 1 :])
        with pytest.raises(AssertionError, match=f"{each.patch.label} does not cover its area"):
            sew_section(replace(paper, patches=patches), draft.allowance)


def test_a_line_that_is_missing_or_short_is_caught():
    draft, paper = first_paper("Log Cabin")
    patch, line = paper.lines[-1]
    half = Edge(line.start, Point((line.start.x + line.end.x) / 2, (line.start.y + line.end.y) / 2))
    short = replace(paper, lines=(*paper.lines[:-1], (patch, half)))
    with pytest.raises(AssertionError, match="does not part its section"):
        sew_section(short, draft.allowance)


def test_an_outline_with_too_wide_an_allowance_is_left_bare():
    draft, paper = first_paper("Flying Goose")
    wide = [Point(-6, -2), Point(-6, 4), Point(2, 4), Point(2, -2)]
    cut = tuple(Edge(a, b) for a, b in zip(wide, [*wide[1:], wide[0]], strict=True))
    with pytest.raises(AssertionError, match="section A is bare"):
        sew_section(replace(paper, cut=cut), draft.allowance)


def parts_of(draft: Draft, found: Foundations) -> list[Part]:
    return list(strip_parts(draft, section_papers(draft, found), own_roles(draft).fills, INCHES))


def strips(title: str) -> tuple[Draft, list[Cards]]:
    draft = LIBRARY[title]
    found = foundations(draft)
    parts = parts_of(draft, found)
    return draft, [part for part in parts if isinstance(part, Cards)]


def marks(card: Card, role: str) -> list[PathMark]:
    return [mark for mark in card.picture.marks if isinstance(mark, PathMark) and mark.role == role]


def shape(found: list[PathMark]):
    return unary_union([Polygon(ring).buffer(0) for mark in found for ring in rings(mark) if len(ring) > 2])


@pytest.mark.parametrize("title", SHOWN)
def test_a_frame_for_every_patch_with_the_new_one_shaded_and_sewn_on_its_line(title):
    _, found = strips(title)
    for cards in found:
        *frames, last = cards.cards
        for number, card in enumerate(frames, 1):
            (new,) = marks(card, "new")
            assert new.subject == card.title and len(marks(card, "laid")) == number - 1
            assert len(marks(card, "sewn")) == (number > 1), "the first is pinned"
            assert card.lines[0] in card.picture.alternative
        assert last.title.endswith("trimmed") and not marks(last, "new")


@pytest.mark.parametrize("title", SHOWN)
def test_the_last_frame_is_the_section_in_its_fabrics_with_its_allowance(title):
    _, found = strips(title)
    for cards in found:
        (paper,) = marks(cards.cards[-1], "paper")
        outline = Polygon(rings(paper)[0])
        assert shape(marks(cards.cards[-1], "fill")).symmetric_difference(outline).area < 1e-2 * outline.area


@pytest.mark.parametrize("title", SHOWN)
def test_a_frame_keeps_to_its_room(title):
    for cards in strips(title)[1]:
        for card in cards.cards:
            for mark in card.picture.marks:
                if isinstance(mark, PathMark) and mark.clip is None:
                    left, top, right, bottom = extent(mark)
                    assert left > -2 and top > -2
                    assert right < card.picture.width + 2 and bottom < card.picture.height + 2


def test_the_picture_is_the_block_from_the_front():
    draft = check_block("finished 4in\ngrid 2 x 2\nseam B1 -- B3")
    found = foundations(draft)
    (cards,) = [each for each in parts_of(draft, found) if isinstance(each, Cards)]
    (first,), (left,) = marks(cards.cards[0], "new"), found.sections[0].patches[:1]
    leftmost = float(draft.pieces[left.piece - 1].inside.x) < 2
    middle = Polygon(rings(first)[0]).centroid.x
    assert (middle < cards.cards[0].picture.width / 2) == leftmost


def test_sections_that_are_sewn_alike_are_shown_once():
    draft = LIBRARY["Checkerboard"]
    found = foundations(draft)
    parts = parts_of(draft, found)
    heads = [part for part in parts if isinstance(part, Section)][1:]
    assert [head.title for head in heads] == ["Section A", "Section B"] and len(found.sections) == 7
    assert heads[0].under == "and sections C, E and G in the same way"


def test_joins_are_shown_with_the_first_group_apart_from_the_second():
    draft = LIBRARY["Storm at Sea"]
    found = foundations(draft)
    cards = join_cards(draft, found, ["one", "two", "three"], own_roles(draft).fills).cards
    assert [card.title for card in cards] == ["J1 · C to D", "J2 · A to B", "J3 · C-D to A-B"]
    for card in cards:
        one, two = (shape([mark]) for mark in marks(card, "part"))
        assert not one.intersects(two) and len(marks(card, "sewn")) == 2


def test_the_sections_that_are_joined_are_named_in_the_picture():
    draft = LIBRARY["Storm at Sea"]
    cards = join_cards(draft, foundations(draft), ["one", "two", "three"], own_roles(draft).fills).cards
    named = [[mark.text for mark in card.picture.marks if isinstance(mark, TextMark)] for card in cards]
    assert [sorted(each) for each in named] == [["C", "D"], ["A", "B"], ["A", "B", "C", "D"]]
