"""The drafting exercise: which ruling a block lies on, and constructions done again by their words alone."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction

import pytest
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.booklet.content import List, Paragraph, Picture
from piecewright.sheets.booklet.exercise.compass import construct
from piecewright.sheets.booklet.exercise.construction import edges_of, ruling_of, vertices
from piecewright.sheets.booklet.exercise.exercise_chapter import exercise_chapter
from piecewright.sheets.booklet.exercise.guide_lines import guides_of
from piecewright.sheets.booklet.words_of import words_of
from piecewright.sheets.page import PathMark
from shapely.geometry import LineString, MultiLineString, box
from support.arranged import extent
from support.check import check_block, check_noted
from support.library import library_drafts

LIBRARY = dict(library_drafts())
OFF_GRID = [title for title, draft in LIBRARY.items() if ruling_of(draft) is None]
FOUND = re.compile(r"(\w+), where ([\w]+)–([\w]+) crosses ([\w]+)–([\w]+)")
SHARE = re.compile(r"(\w+) is (\d+)/(\d+) of the way from (\w+) to (\w+)")
MIDDLE = re.compile(r"(\w+) is the middle of (\w+)–(\w+)")
PARTED = re.compile(r"(\w+)–(\w+) into (\d+) equal parts, at ([\w, ]+)")
CIRCLE = re.compile(
    r"compass on (\w+), open it to ([\d /]+)in .* for (\d+) parts of the whole. That gives ([\w, ]+)\."
)

# Common practice, no published source: blocks on grids of whole shares of an inch go on quarter-inch paper;
# the eight-pointed star, stars of sixty degrees and the compass do not go on any.
RULED = {
    "Ohio Star": "quarter-inch",
    "Log Cabin": "quarter-inch",
    "Drunkard's Path": "quarter-inch",
    "Jack's House": "quarter-inch",
    "Eight-pointed Star": None,
    "Six-pointed Star": None,
    "Mariner's Compass": None,
    "Roman Stripe": None,
}


@pytest.mark.parametrize("title", RULED)
def test_the_ruling_is_named(title):
    found = ruling_of(LIBRARY[title])
    assert (found and found.name) == RULED[title]


def test_an_eighth_of_an_inch_asks_for_finer_paper():
    found = ruling_of(check_block("finished 2in\ngrid 16 x 16\nseam B1 -- B17"))
    assert found is not None and (found.name, found.step) == ("eighth-inch", Fraction(1, 8))


def cross(a: complex, b: complex, c: complex, d: complex) -> complex:
    """Where the lines through a, b and through c, d cross."""
    one, two = b - a, d - c
    share = ((c - a).conjugate() * two).imag / (one.conjugate() * two).imag
    return a + one * share


def names_in(text: str) -> list[str]:
    return re.split(r", | and ", text)


@pytest.mark.parametrize("title", OFF_GRID)
def test_the_words_alone_lead_to_every_point(title):
    draft = LIBRARY[title]
    found = construct(draft)
    known = dict(found.known)
    told = found.known | found.found
    for step in found.steps:
        for name, a, b, c, d in FOUND.findall(step):
            known[name] = cross(known[a], known[b], known[c], known[d])
        for name, top, bottom, one, two in SHARE.findall(step):
            known[name] = known[one] + (known[two] - known[one]) * int(top) / int(bottom)
        for name, one, two in MIDDLE.findall(step):
            known[name] = (known[one] + known[two]) / 2
        for one, two, parts, names in PARTED.findall(step):
            for number, name in enumerate(names_in(names), 1):
                known[name] = known[one] + (known[two] - known[one]) * number / int(parts)
        for pivot, radius, _, names in CIRCLE.findall(step):
            for name in names_in(names):
                assert abs(abs(told[name] - known[pivot]) - sum(map(Fraction, radius.split()))) < 1e-4
                known[name] = told[name]
        if step.startswith(("Put the compass on a corner", "Measure")):
            known |= {name: place for name, place in told.items() if re.search(rf"\b{name}\b", step)}
    assert set(known) == set(told)
    assert all(abs(known[name] - place) < 1e-4 for name, place in told.items())


@pytest.mark.parametrize("title", OFF_GRID)
def test_every_corner_of_a_piece_is_a_point_of_the_construction(title):
    found = construct(LIBRARY[title])
    places = [*found.known.values(), *found.found.values()]
    for vertex in vertices(LIBRARY[title]):
        assert min(abs(vertex - place) for place in places) < 1e-4


def test_the_eight_pointed_star_is_swung_from_its_corners():
    steps = construct(LIBRARY["Eight-pointed Star"]).steps
    assert steps[1].startswith("Put the compass on a corner, open it to the center, and mark the two sides")


def test_the_chapter_names_the_ruling_and_draws_on_it():
    chapter = exercise_chapter(LIBRARY["Ohio Star"], SheetOptions(), "under")
    (said,) = [part.text for part in chapter.parts if isinstance(part, Paragraph)]
    assert said == "On graph paper: quarter-inch ruling."
    (words,) = [part.texts for part in chapter.parts if isinstance(part, List)]
    assert "36 squares by 36" in words[0]
    (picture,) = [part for part in chapter.parts if isinstance(part, Picture)]
    fine = next(mark for mark in picture.marks if isinstance(mark, PathMark) and mark.role == "grid")
    assert sum(segment[0] == "M" for segment in fine.path) == 2 * 37


def test_the_page_to_draft_on_is_true_to_size():
    (leaf,) = exercise_chapter(LIBRARY["Ohio Star"], SheetOptions(), "under").sheets
    fine = next(mark for mark in leaf.marks if isinstance(mark, PathMark) and mark.role == "grid")
    xs = sorted({round(s[1], 4) for s in fine.path if s[0] == "M"})
    assert {round(b - a, 3) for a, b in itertools.pairwise(xs)} == {18.0}  # 1/4in
    assert any(isinstance(mark, PathMark) and mark.role == "check-square" for mark in leaf.marks)


def test_off_the_grid_the_heading_says_so():
    chapter = exercise_chapter(LIBRARY["Fanny's Fan"], SheetOptions(), "under")
    assert chapter.parts[0] == Paragraph("Not on a grid: by ruler and compass.", strong=True)
    words = " ".join(text for part in chapter.parts if isinstance(part, List) for text in part.texts)
    assert "Draw the arcs: the compass on A2, open to 8in; the compass on A2, open to 2 1/2in." in words


@pytest.mark.parametrize("title", [title for title in OFF_GRID if title != "Pineapple"])
def test_every_points_name_can_be_read(title):
    for picture in pictures(title):
        plates = [box(*extent(mark)) for mark in picture.marks if mark.role == "plate"]
        assert plates
        assert not [
            pair for pair in itertools.combinations(plates, 2) if pair[0].intersection(pair[1]).area > 0
        ]


def pictures(title: str) -> list[Picture]:
    """The drawing in all its sizes."""
    chapter = exercise_chapter(LIBRARY[title], SheetOptions(), "under")
    (picture,) = [part for part in chapter.parts if isinstance(part, Picture)]
    return [picture, *picture.larger]


def test_the_largest_drawing_names_every_point():
    found = construct(LIBRARY["Jack's Chain"])
    named = {mark.subject for mark in pictures("Jack's Chain")[1].marks if mark.role == "point"}
    assert named == set(found.known) | set(found.found)


def test_the_words_divide_lines_that_are_drawn_in_any_case():
    steps = construct(LIBRARY["Honeycomb"]).steps
    assert any("top–b into 3 equal parts" in step for step in steps)
    star = construct(LIBRARY["Eight-pointed Star"]).steps
    assert any("i, where A1–B2 crosses a–g" in step for step in star)


def test_a_pineapple_is_drafted_by_its_lines():
    guides = guides_of(LIBRARY["Pineapple"])
    assert guides is not None
    drawn = MultiLineString([[(a.real, a.imag), (b.real, b.imag)] for a, b in guides.lines]).buffer(1e-6)
    outline = box(0, 0, 8, 8).exterior.buffer(1e-6)
    for edge in edges_of(LIBRARY["Pineapple"]):
        ends = [(float(point.x), float(point.y)) for point in (edge.start, edge.end)]
        assert drawn.union(outline).covers(LineString(ends))
    # Four strips of 3/4in about a square of 2in; slants 3/4in apart.
    assert guides.steps[0] == (
        "Draw light lines right across, upright 3/4in, 1 1/2in, 2 1/4in, 3in, 5in, 5 3/4in, 6 1/2in and "
        "7 1/4in from the left; level ones as far from the top."
    )
    assert guides.steps[1] == (
        "From each corner measure 6in along both sides and join the marks; then draw 4 more lines beside it, "
        "each 3/4in nearer the corner."
    )


@pytest.mark.parametrize("title", ["Drunkard's Path", "Fanny's Fan"])
def test_the_center_of_an_arc_is_marked_on_graph_paper(title):
    crosses = [mark for mark in pictures(title)[0].marks if mark.role == "arc-center"]
    assert bool(crosses) == (ruling_of(LIBRARY[title]) is not None)


@pytest.mark.parametrize("title, sheets", [("Ohio Star", 4), ("Flying Goose", 0), ("Bear's Paws", 4)])
def test_a_block_larger_than_the_graph_paper_says_how_many_sheets(title, sheets):
    chapter = exercise_chapter(LIBRARY[title], SheetOptions(), "under")
    words = " ".join(text for part in chapter.parts if isinstance(part, List) for text in part.texts)
    assert (f"holds 7 1/2in x 8in: print it {sheets} times" in words) == bool(sheets)


def test_no_page_is_left_blank_for_a_block_that_it_cannot_hold():
    assert not exercise_chapter(LIBRARY["Eight-pointed Star"], SheetOptions(), "under").sheets


@pytest.mark.parametrize(("draft", "straight", "counted"), [
    (check_block("finished 6in\n"), False, False),
    (check_noted("piece-hole", "finished 8in\nseam circle around center radius 2in"), False, True),
    (LIBRARY["Ohio Star"], True, True),
], ids=("one piece", "a circle", "a star"))  # fmt: skip
def test_only_seams_that_there_are_are_drawn(draft, straight, counted):
    said = " ".join(words_of([exercise_chapter(draft, SheetOptions(), "under")]))
    assert ("Draw the longest seams first" in said) == straight
    assert ("count the pieces" in said) == counted
