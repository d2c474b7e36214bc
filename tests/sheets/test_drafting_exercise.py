"""The drafting exercise: which ruling a block lies on, which blocks have a short construction, and each done
again by its words alone."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction

import pytest
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.chapters.exercise import exercise
from piecewright.sheets.content import List, Paragraph, Picture
from piecewright.sheets.exercise.construction import LETTERED_MOST, STEPS_MOST, construction_of
from piecewright.sheets.exercise.ruling import arc_centers, corners_of_pieces, ruling_of
from piecewright.sheets.page import PathMark
from piecewright.sheets.setting.words_of import words_of
from piecewright.words.say import INCHES
from shapely.geometry import LineString, box
from support.arranged import extent
from support.check import check_block, check_noted
from support.library import library_drafts
from support.works import block_of

LIBRARY = dict(library_drafts())
# Drafted with a compass in handbooks of patchwork (from memory), or of a few points beside a square's own.
SHORT = [
    "Cherry Basket",
    "Cracker",
    "Eight-pointed Star",
    "Garden Maze",
    "Garden Maze Post",
    "Letter A",
    "Moon over the Mountain",
    "Octagon",
    "Pine Tree",
    "Rocky Road to Kansas",
    "Roman Stripe",
    "Star of the East",
    "Three-Blade Fan",
]
MEASURED = re.compile(r"(\w+) (about )?([\d /]+)in and (about )?([\d /]+)in(?:;|\.)")
PARTED = re.compile(r"(\w+)–(\w+) into (\d+) equal parts, at ([\w, ]+)")
LINE = re.compile(r"(\w+)–(\w+)")

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
    found = ruling_of(LIBRARY[title], "in")
    assert (found and found.name) == RULED[title]


def test_an_eighth_of_an_inch_asks_for_finer_paper():
    found = ruling_of(check_block("finished 2in\ngrid 16 x 16\nseam B1 -- B17"), "in")
    assert found is not None and (found.name, found.step) == ("eighth-inch", Fraction(1, 8))


def names_in(text: str) -> list[str]:
    return re.split(r", | and ", text)


def inches(text: str) -> float:
    return float(sum(map(Fraction, text.split())))


def test_a_block_on_no_graph_paper_has_a_construction_only_where_it_is_short():
    made = {
        title: construction_of(draft, INCHES)
        for title, draft in LIBRARY.items()
        if ruling_of(draft, "in") is None
    }
    assert sorted(title for title, found in made.items() if found) == SHORT
    for found in filter(None, made.values()):
        lettered = [name for name in found.points if name.islower() and len(name) == 1]
        assert len(lettered) <= LETTERED_MOST
        assert len(found.steps) <= STEPS_MOST


@pytest.mark.parametrize("title", SHORT)
def test_the_words_alone_lead_to_every_corner(title):
    draft = LIBRARY[title]
    found = construction_of(draft, INCHES)
    named = found.points
    wide, tall = float(draft.width), float(draft.height)
    corners = [0j, complex(wide, 0), complex(0, tall), complex(wide, tall)]
    lettered = {name: place for name, place in named.items() if name.islower() and len(name) == 1}
    told = {name: place for name, place in named.items() if name not in lettered}
    lines = [(corners[0], corners[3]), (corners[1], corners[2])]
    for step in found.steps:
        if step.startswith("Put the compass on a corner"):
            for name in names_in(re.search(r"That gives ([\w, ]+)\.", step)[1]):
                swung = min(abs(named[name] - corner) for corner in corners)
                reach = min(abs(abs(named[name] - corner) - abs(corners[3]) / 2) for corner in corners)
                assert reach < 1e-4 < swung
                told[name] = named[name]
        elif step.startswith("Draw light lines"):
            lines += [(told[one], told[two]) for one, two in LINE.findall(step)]
        elif step.startswith("Measure"):
            for name, roughly_x, x, roughly_y, y in MEASURED.findall(step):
                place = named[name]
                for rough, said, true in ((roughly_x, x, place.real), (roughly_y, y, place.imag)):
                    assert abs(inches(said) - true) <= (1 / 16 if rough else 1e-4)
                told[name] = place
        for one, two, parts, names in PARTED.findall(step):
            for number, name in enumerate(names_in(names), 1):
                told[name] = told[one] + (told[two] - told[one]) * number / int(parts)
    assert told == {name: pytest.approx(place, abs=1e-4) for name, place in named.items()}
    across, down = draft.rules_across, draft.rules_down
    lines += [(complex(float(x), 0), complex(float(x), tall)) for x in across]
    lines += [(complex(0, float(y)), complex(wide, float(y))) for y in down]
    for corner in corners_of_pieces(draft):
        spot = LineString([(corner.real, corner.imag)] * 2)
        meeting = [
            line
            for line in lines
            if LineString([(place.real, place.imag) for place in line]).distance(spot) < 1e-4
        ]
        assert len(meeting) > 1 or min(abs(corner - place) for place in told.values()) < 1e-4
    for center in arc_centers(draft):
        assert min(abs(center - place) for place in told.values()) < 1e-4


def test_the_eight_pointed_star_is_swung_from_its_corners():
    steps = construction_of(LIBRARY["Eight-pointed Star"], INCHES).steps
    assert steps[1].startswith("Put the compass on a corner, open it to the center, and mark the two sides")
    assert steps[2].startswith("Draw light lines a–g, ")
    assert len(steps) == 4


def test_an_uneven_grid_is_not_said_to_be_divided_evenly():
    (_, grid, *_) = construction_of(check_block("finished 7in\ngrid 2:1:2 x 1\nseam B1 -- C2"), INCHES).steps
    assert "equal" not in grid
    assert grid.startswith("Mark the top and bottom about 2 3/4in and about 4 1/4in from the left,")


def test_the_chapter_names_the_ruling_and_draws_on_it():
    chapter = exercise(block_of(LIBRARY["Ohio Star"]), SheetOptions())
    (said,) = [part.text for part in chapter.parts if isinstance(part, Paragraph)]
    assert said == "On graph paper: quarter-inch ruling."
    (words,) = [part.texts for part in chapter.parts if isinstance(part, List)]
    assert "36 squares by 36" in words[0]
    (picture,) = [part for part in chapter.parts if isinstance(part, Picture)]
    fine = next(mark for mark in picture.marks if isinstance(mark, PathMark) and mark.role == "grid")
    assert sum(segment[0] == "M" for segment in fine.path) == 2 * 37


def test_the_page_to_draft_on_is_true_to_size():
    (leaf,) = exercise(block_of(LIBRARY["Ohio Star"]), SheetOptions()).sheets
    fine = next(mark for mark in leaf.marks if isinstance(mark, PathMark) and mark.role == "grid")
    xs = sorted({round(s[1], 4) for s in fine.path if s[0] == "M"})
    assert {round(b - a, 3) for a, b in itertools.pairwise(xs)} == {18.0}  # 1/4in
    assert any(isinstance(mark, PathMark) and mark.role == "check-square" for mark in leaf.marks)


def test_off_the_grid_the_heading_says_so():
    chapter = exercise(block_of(LIBRARY["Cherry Basket"]), SheetOptions())
    assert chapter.parts[0] == Paragraph("Not on a grid: by ruler and compass.", strong=True)
    words = " ".join(text for part in chapter.parts if isinstance(part, List) for text in part.texts)
    assert "Draw the arcs: the compass on C3, open to 3 1/2in; the compass on C3, open to 2 1/2in." in words


@pytest.mark.parametrize("title", SHORT)
def test_every_points_name_can_be_read(title):
    for picture in pictures(title):
        plates = [box(*extent(mark)) for mark in picture.marks if mark.role == "plate"]
        assert plates
        assert not [
            pair for pair in itertools.combinations(plates, 2) if pair[0].intersection(pair[1]).area > 0
        ]


@pytest.mark.parametrize("title", SHORT)
def test_the_drawing_names_every_point(title):
    points = set(construction_of(LIBRARY[title], INCHES).points)
    for picture in pictures(title):
        assert {mark.subject for mark in picture.marks if mark.role == "point"} == points


def pictures(title: str) -> list[Picture]:
    """The drawing in all its sizes."""
    chapter = exercise(block_of(LIBRARY[title]), SheetOptions())
    (picture,) = [part for part in chapter.parts if isinstance(part, Picture)]
    return [picture, *picture.larger]


@pytest.mark.parametrize("title", ["Drunkard's Path", "Cherry Basket"])
def test_the_center_of_an_arc_is_marked_on_graph_paper(title):
    crosses = [mark for mark in pictures(title)[0].marks if mark.role == "arc-center"]
    assert bool(crosses) == (ruling_of(LIBRARY[title], "in") is not None)


@pytest.mark.parametrize("title, sheets", [("Ohio Star", 4), ("Flying Goose", 0), ("Bear's Paws", 4)])
def test_a_block_larger_than_the_graph_paper_says_how_many_sheets(title, sheets):
    chapter = exercise(block_of(LIBRARY[title]), SheetOptions())
    words = " ".join(text for part in chapter.parts if isinstance(part, List) for text in part.texts)
    assert (f"holds 7 1/2in x 8in: print it {sheets} times" in words) == bool(sheets)


def test_no_page_is_left_blank_for_a_block_that_it_cannot_hold():
    assert not exercise(block_of(LIBRARY["Eight-pointed Star"]), SheetOptions()).sheets


@pytest.mark.parametrize(("draft", "straight", "counted"), [
    (check_block("finished 6in\n"), False, False),
    (check_noted("piece-hole", "finished 8in\nseam circle around center radius 2in"), False, True),
    (LIBRARY["Ohio Star"], True, True),
], ids=("one piece", "a circle", "a star"))  # fmt: skip
def test_only_seams_that_there_are_are_drawn(draft, straight, counted):
    said = " ".join(words_of([exercise(block_of(draft), SheetOptions())]))
    assert ("Draw the longest seams first" in said) == straight
    assert ("count the pieces" in said) == counted
