"""A template larger than a page comes out on several, which joined by their marks give back its outline."""

from itertools import pairwise
from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.sheets.drawing.clipping import Box, at, clip_path, subpaths
from piecewright.sheets.drawing.files import pdf_bytes
from piecewright.sheets.drawing.lettering import width_of
from piecewright.sheets.packing.joins import tile_map
from piecewright.sheets.packing.tile_grid import OVERLAP, grid_for
from piecewright.sheets.packing.tiling import tile
from piecewright.sheets.page import Page, PathMark, TextMark
from shapely.geometry import LineString, MultiLineString, Point, box
from support.pdf_reading import INCH, read_pages
from support.sample_pages import document_of

AREA = (540.0, 582.0)  # points: a Letter page's room
PROMISED = 0.001 * INCH  # DESIGN.md

SIDE = 20 * INCH
WEDGE = (("M", 0.0, 0.0), ("L", SIDE, 130.7), ("L", 0.8 * SIDE, SIDE), ("L", 40.3, 0.9 * SIDE), ("Z",))
BEND = ("C", SIDE, 0.5523 * SIDE, 0.5523 * SIDE, SIDE, 0.0, SIDE)
SLICE = (("M", 0.0, 0.0), ("L", SIDE, 0.0), BEND, ("Z",))


def lines_of(path, steps=1):
    """The path as chords; a bend as so many."""
    chords = []
    for pieces, _ in subpaths(path):
        for piece in pieces:
            count = 1 if len(piece) == 2 else steps
            chords.append(LineString([at(piece, n / count) for n in range(count + 1)]))
    return MultiLineString(chords)


def tiles_of(path, *marks):
    return tile((PathMark(path, role="cut", width=1.1), *marks), grid_for(SIDE, SIDE, AREA))


def printed(tiles):
    """The tiles as pages of a PDF, read back; each page's tile starts at its corner."""
    pages = [Page(*AREA, each.name, each.marks) for each in tiles]
    return read_pages(pdf_bytes(document_of(*pages)))


def half_diamonds(page):
    """By its letter, each half diamond's two tips on the join line and its point, as printed."""
    letters = [text for text in page.texts if text.font.endswith("Bold")]
    halves = {}
    for path in page.paths:
        if path.filled and len(path.corners) == 3:
            tip, point, other = path.corners
            near = [Point(point).distance(LineString([(text.x, text.y), text.end])) for text in letters]
            halves[letters[near.index(min(near))].text] = (tip, other, point)
    return halves


def laid_together(pages):
    """Where each page goes so that its half diamonds meet their partners, found from the print alone."""
    halves = [half_diamonds(page) for page in pages]
    moves = {0: (0.0, 0.0)}
    while len(moves) < len(pages):
        known = len(moves)
        for number, marks in enumerate(halves):
            for other in [each for each in moves if number not in moves]:
                shared = sorted(marks.keys() & halves[other].keys())
                if shared:
                    (x, y), _, _ = marks[shared[0]]
                    (to_x, to_y), _, _ = halves[other][shared[0]]
                    moves[number] = (moves[other][0] + to_x - x, moves[other][1] + to_y - y)
                    break
        assert len(moves) > known, "a tile has no neighbour to be joined to"
    return [moves[number] for number in range(len(pages))]


@pytest.mark.parametrize("path", [WEDGE, SLICE])
def test_tiles_joined_by_their_marks_give_back_the_outline(path):
    pages = printed(tiles_of(path))
    assert len(pages) > 4
    chords = []
    for page, (dx, dy) in zip(pages, laid_together(pages), strict=True):
        for drawn in page.paths:
            if drawn.width == pytest.approx(1.1):
                for before, (step, points) in pairwise(drawn.curves):
                    if step in "lc":
                        piece = tuple((x + dx, y + dy) for x, y in (before[1][-1], *points))
                        chords.append(LineString([at(piece, n / 40) for n in range(41)]))
                    elif step == "h":
                        raise AssertionError("no tile holds the whole of a 20in template")
    joined, drawn_once = MultiLineString(chords), lines_of(path, 4000)
    assert joined.hausdorff_distance(drawn_once) < 2 * SIDE  # something was drawn
    assert max(Point(spot).distance(drawn_once) for line in chords for spot in line.coords) < PROMISED
    spots = [drawn_once.interpolate(n / 500, normalized=True) for n in range(501)]
    assert max(spot.distance(joined) for spot in spots) < 2 * PROMISED  # and nothing of it is missing


def test_every_pair_of_half_diamonds_makes_a_diamond():
    pages = printed(tiles_of(WEDGE))
    moves = laid_together(pages)
    found = {}
    for page, (dx, dy) in zip(pages, moves, strict=True):
        for letter, corners in half_diamonds(page).items():
            found.setdefault(letter, []).append([(x + dx, y + dy) for x, y in corners])
    assert len(found) >= 2 * (len(pages) - 1)
    for letter, halves in found.items():
        assert len(halves) == 2, letter
        (tip, other, point), (tip2, other2, point2) = halves
        assert tip == pytest.approx(tip2, abs=PROMISED) and other == pytest.approx(other2, abs=PROMISED)
        middle = ((tip[0] + other[0]) / 2, (tip[1] + other[1]) / 2)
        assert ((point[0] + point2[0]) / 2, (point[1] + point2[1]) / 2) == pytest.approx(middle, abs=PROMISED)


def test_neighbours_overlap_by_half_an_inch():
    tiles = {each.name: each.box for each in tiles_of(WEDGE)}
    assert tiles["1.1"].right - tiles["1.2"].left == OVERLAP == 0.5 * INCH
    assert tiles["1.1"].bottom - tiles["2.1"].top == OVERLAP


def test_nothing_is_drawn_beyond_a_tile():
    for page in printed(tiles_of(WEDGE)):
        for path in page.paths:
            for x, y in path.corners:
                assert -PROMISED <= x <= AREA[0] + PROMISED and -PROMISED <= y <= AREA[1] + PROMISED


def test_a_tile_inside_the_template_is_kept_though_no_line_runs_through_it():
    tiles = tile((PathMark(WEDGE, role="cut"),), grid_for(SIDE, SIDE, (400.0, 400.0)))
    inner = [each for each in tiles if not any(getattr(mark, "role", "") == "cut" for mark in each.marks)]
    assert [each.name for each in inner] == ["2.2", "2.3", "3.2", "3.3"]


def test_tiles_that_show_nothing_are_left_out():
    corner = (("M", 0.0, 0.0), ("L", SIDE, 0.0), ("L", 0.0, SIDE), ("Z",))
    tiles = tile((PathMark(corner, role="cut"),), grid_for(SIDE, SIDE, (400.0, 400.0)))
    names = [each.name for each in tiles]
    assert "1.1" in names and "4.4" not in names


def test_a_drawing_that_fits_is_one_tile_and_stays_as_it_is():
    mark = PathMark((("M", 0.0, 0.0), ("L", 540.0, 0.0), ("L", 0.0, 582.0), ("Z",)), role="cut")
    (only,) = tile((mark,), grid_for(540.0, 582.0, AREA))
    assert only.marks == (mark,)


def test_words_are_never_cut():
    words = [TextMark(x, 300.0, "Cut 4 of dark, 4 reversed", 8.5) for x in (100.0, 440.0, 530.0, 1000.0)]
    tiles = tiles_of(WEDGE, *words)
    found = [mark for each in tiles for mark in each.marks if getattr(mark, "text", "").startswith("Cut")]
    assert len(found) >= len(words)
    for mark in found:
        assert mark.x >= 0 and mark.x + width_of(mark.text, mark.size) <= AREA[0]


def test_a_fill_is_shown_as_far_as_the_tile_reaches():
    fill = PathMark(SLICE, stroke=None, fill=(0.8, 0.8, 0.8), role="fill")
    tiles = tile((fill,), grid_for(SIDE, SIDE, AREA))
    for each in tiles:
        shown = [mark for mark in each.marks if getattr(mark, "role", "") == "fill"]
        assert [mark.path[0][0] for mark in shown] == ["M"]
        assert all(mark.clip == shown[0].clip for mark in shown)


def test_a_clipped_fill_stays_inside_its_clip():
    window = (("M", 400.0, 400.0), ("L", 900.0, 400.0), ("L", 650.0, 900.0), ("Z",))
    fill = PathMark(WEDGE, stroke=None, fill=(0.8, 0.8, 0.8), role="fill", clip=window)
    area = 0.0
    grid = grid_for(SIDE, SIDE, AREA, overlap=0.0)
    for each in tile((fill,), grid):
        for mark in each.marks:
            if getattr(mark, "role", "") == "fill":
                ring = [segment[1:] for segment in mark.clip if segment[0] != "Z"]
                area += sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*ring, ring[0]])) / 2
    assert area == pytest.approx(500 * 500 / 2)


def test_the_map_shows_every_tile_and_where_this_one_lies():
    tiles = tiles_of(WEDGE)
    marks = tile_map(tiles, (tiles[1],), 72.0, 72.0)
    boxes = [mark for mark in marks if isinstance(mark, PathMark)]
    assert [mark.subject for mark in boxes] == [each.name for each in tiles]
    assert [mark.subject for mark in boxes if mark.fill] == [tiles[1].name]
    assert all(0 <= x <= 72.01 and 0 <= y <= 72.01 for mark in boxes for _, x, y in mark.path[:4])
    assert {mark.text for mark in marks if isinstance(mark, TextMark)} == {each.name for each in tiles}


def test_maps_names_are_left_out_where_they_would_be_too_small():
    tiles = tile((PathMark(WEDGE, role="cut"),), grid_for(SIDE, SIDE, (200.0, 200.0)))
    assert all(isinstance(mark, PathMark) for mark in tile_map(tiles, (), 40.0, 40.0))


tenths = st.integers(-1000, 1000).map(lambda count: count / 10)
spots = st.tuples(tenths, tenths)


@settings(max_examples=150, deadline=None)
@given(spots, spots)
def test_a_straight_line_is_cut_as_shapely_cuts_it(start, end):
    kept = clip_path((("M", *start), ("L", *end)), Box(-40, -30, 50, 60))
    wanted = LineString([start, end]).intersection(box(-40, -30, 50, 60))
    assert lines_of(kept).length == pytest.approx(wanted.length, abs=1e-5)


@settings(max_examples=80, deadline=None)
@given(spots, spots, spots, spots)
def test_a_bend_is_cut_where_it_leaves_the_box_and_nowhere_bent_otherwise(a, b, c, d):
    whole = (("M", *a), ("C", *b, *c, *d))
    kept = clip_path(whole, Box(-40, -30, 50, 60))
    bend = lines_of(whole, 2000)
    held = box(-40, -30, 50, 60)
    chords = [LineString(pair) for line in bend.geoms for pair in pairwise(line.coords)]
    wanted = sum(chord.length for chord in chords if held.covers(chord.centroid))
    assert lines_of(kept, 2000).length == pytest.approx(wanted, abs=1.5)  # a chord more or less at each side
    corners = [spot for line in bend.geoms for spot in line.coords]
    for line in lines_of(kept, 50).geoms:
        assert all(min(hypot(x - p, y - q) for p, q in corners) < 0.3 for x, y in line.coords)
