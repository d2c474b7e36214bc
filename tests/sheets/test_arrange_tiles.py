"""Templates larger than a page, several grains on one template, and pictures of blocks."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

import pytest
from piecewright.cutting.model import GrainArrow
from piecewright.drafting.model import UnitPlacement
from piecewright.sheets.arrange.block_sheets import arrange_block
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.arrange.picture import block_picture
from shapely.geometry import Point as Place
from shapely.geometry import Polygon, box
from support.arranged import ends, extent, paths, texts, tight_box
from support.sample_drafts import nine, sample, scraps, templates_of, vane

INCH = 72.0


@pytest.fixture(scope="module", params=["letter", "a4"])
def barn(request):
    draft = sample(
        "Great Barn", (20, 20), (2, 2),
        [("hay", ((0, 0), (20, 0), (20, 20)), "A"), ("straw", ((0, 0), (20, 20), (0, 20)), "B")],
    )  # fmt: skip
    templates = templates_of(draft, 20)
    return templates, arrange_block(draft, templates, SheetOptions(paper=request.param))


def tiles_of(document, label):
    return [page for page in document.pages if page.title.startswith(f"Template {label}, tile")]


def test_tiles_hold_the_whole_cutting_line(barn):
    """Overlaps print some of it twice, so together at least all of it and at most twice."""
    templates, document = barn
    for template in templates:
        printed = sum(
            hypot(b[0] - a[0], b[1] - a[1])
            for page in tiles_of(document, template.label)
            for mark in paths(page, "cut")
            for a, b in zip(ends(mark), ends(mark)[1:], strict=False)
        )
        around = sum(edge.length for edge in template.cut) * INCH
        assert around - 1 <= printed <= 2 * around


def test_tiles_join_in_pairs(barn):
    templates, document = barn
    for template in templates:
        letters: dict[str, int] = {}
        for page in tiles_of(document, template.label):
            for mark in texts(page):
                if mark.role == "join":
                    letters[mark.text] = letters.get(mark.text, 0) + 1
        assert letters and set(letters.values()) == {2}


def test_each_tile_shows_where_it_belongs(barn):
    templates, document = barn
    for template in templates:
        pages = tiles_of(document, template.label)
        for page in pages:
            name = page.title.rsplit(" ", 1)[1]
            cells = paths(page, "map")
            assert len(cells) == len(pages)
            assert [cell.subject for cell in cells if cell.fill is not None] == [name]
            assert any("join a to a" in mark.text for mark in texts(page))


def test_a_tiled_template_has_its_label_once_and_its_grain(barn):
    templates, document = barn
    for template in templates:
        pages = tiles_of(document, template.label)
        words = [mark.text for page in pages for mark in texts(page) if mark.role == "label"]
        assert words.count(template.label) == 1
        assert sum(f"Cut 1 of {template.counts[0].fabric}" in word for word in words) == 1
        assert any(paths(page, "grain") for page in pages)


def test_tiles_keep_off_the_edge_and_the_foot(barn):
    _, document = barn
    for page in document.pages:
        for mark in page.marks:
            left, top, right, bottom = extent(mark)
            assert left >= 18 and top >= 18 and right <= page.width - 18 and bottom <= page.height - 18
        foot = max(min(y for _, y in ends(mark)) for mark in paths(page, "rule"))
        for role in ("cut", "sew", "join"):
            assert all(max(y for _, y in ends(mark)) < foot for mark in paths(page, role))


def test_a_strip_longer_than_the_page_lies_across_it_before_it_is_cut_up():
    strip = [(0, 0), (9, 0), (9, 0.5), (0, 0.5)]
    draft = sample("Rail", (9, 0.5), (1, 1), [("dark", strip, "A")])
    document = arrange_block(draft, templates_of(draft), SheetOptions())
    assert [page.title for page in document.pages] == ["Block", "Template A"]


def test_a_thin_tiled_strip_keeps_its_words():
    strip = [(0, 0), (30, 0), (30, 0.25), (0, 0.25)]
    draft = sample("Edging", (30, 0.25), (1, 1), [("dark", strip, "A")])
    document = arrange_block(draft, templates_of(draft), SheetOptions())
    words = [mark.text for page in document.pages for mark in texts(page) if mark.role == "label"]
    assert any("Cut 1 of dark" in word for word in words)


class TestSeveralGrains:
    def arranged(self, size=9.0):
        draft = vane(size=size)
        a, b, c, *others = templates_of(draft)
        both = (GrainArrow(0.0, (3, 8, 13)), GrainArrow(45.0, (18,)))
        templates = (a, b, replace(c, grain=both), *others)
        return arrange_block(draft, templates, SheetOptions())

    @pytest.mark.parametrize("size", [9.0, 2.25])
    def test_arrows_are_numbered_and_their_pieces_named(self, size):
        document = self.arranged(size)
        marks = [mark for page in document.pages[1:] for mark in texts(page) if mark.subject == "C"]
        words = " ".join(mark.text for mark in marks)
        assert "arrow 1: pieces 3, 8, 13" in words and "arrow 2: piece 18" in words
        assert {"1", "2"} <= {mark.text for mark in marks}
        heads = [mark for page in document.pages[1:] for mark in paths(page, "grain", "C") if mark.fill]
        assert len(heads) == 4

    def test_each_number_stands_by_its_own_arrow(self):
        document = self.arranged()
        (page,) = (page for page in document.pages if paths(page, "grain", "C"))
        shafts = [mark for mark in paths(page, "grain", "C") if mark.fill is None]
        for number, _shaft in enumerate(shafts, 1):
            (tag,) = (mark for mark in texts(page) if mark.subject == "C" and mark.text == str(number))
            middle = Place(tag.x, tag.y - 2.5)
            ways = [min(middle.distance(Place(spot)) for spot in ends(other)) for other in shafts]
            assert ways.index(min(ways)) == number - 1 and ways[number - 1] < 20


class TestPicture:
    @pytest.mark.parametrize("size", [0.5, 4.0, 12.0])
    @pytest.mark.parametrize("shape", [(6, 6), (40, 1), (1, 40), (3, 9)])
    def test_longer_side_is_as_asked(self, size, shape):
        wide, tall = shape
        corners = ((0, 0), (wide, 0), (wide, tall), (0, tall))
        page = block_picture(sample("Plain", shape, (1, 1), [("dark", corners, "A")]), size)
        assert max(page.width, page.height) == pytest.approx(size * INCH)

    @pytest.mark.parametrize("size", [0.5, 4.0, 12.0])
    def test_everything_stands_on_the_page(self, size):
        page = block_picture(vane(title="A Long Title " * 9), size)
        for mark in page.marks:
            left, top, right, bottom = extent(mark)
            assert left >= 0 and top >= 0 and right <= page.width and bottom <= page.height

    def test_units_show_their_top_and_which_way_round(self):
        unit = UnitPlacement("Goose", "goose", "", (0, 0, 3, 3), 0.0, False)
        turned = replace(unit, box=(3, 0, 6, 3), turned=90.0)
        mirrored = replace(unit, box=(0, 3, 3, 6), mirrored=True)
        page = block_picture(replace(vane(), units=(unit, turned, mirrored)), 6.0)
        whole, half = paths(page, "unit")[0::2], paths(page, "unit")[1::2]
        middles = [Polygon(ends(mark)).centroid for mark in whole]
        lefts = [Polygon(ends(mark)).centroid for mark in half]
        tips = [ends(mark)[0] for mark in whole]
        assert tips[0][1] < middles[0].y and lefts[0].x < middles[0].x
        assert tips[1][0] > middles[1].x and lefts[1].y < middles[1].y
        assert tips[2][1] < middles[2].y and lefts[2].x > middles[2].x

    def test_letters_keep_off_the_triangles(self):
        units = tuple(
            UnitPlacement("Square", "square", "", (x, y, x + 2, y + 2), 90.0 * x, False)
            for x in (0, 2, 4)
            for y in (0, 2, 4)
        )
        page = block_picture(replace(nine(6), units=units), 4.0)
        triangles = [Polygon(ends(mark)) for mark in paths(page, "unit")]
        for mark in texts(page):
            if mark.role == "piece":
                left, top, right, _ = tight_box(mark)
                assert not any(each.intersects(box(left, top, right, mark.y)) for each in triangles)

    def test_more_fabrics_than_a_picture_holds_are_counted(self):
        page = block_picture(scraps(84), 4.0)
        named = [mark.text for mark in texts(page) if mark.text.startswith("cloth")]
        assert any(mark.text == f"and {84 - len(named)} more fabrics" for mark in texts(page))


def test_a_template_of_many_fabrics_refers_to_the_table_and_the_table_names_them():
    draft = scraps(144)
    document = arrange_block(draft, templates_of(draft), SheetOptions())
    labels = [mark.text for page in document.pages for mark in texts(page) if mark.role == "label"]
    assert "and 136 more: see the table" in labels
    table = " ".join(mark.text for page in document.pages for mark in texts(page) if mark.role == "table")
    assert all(f"1 of cloth{number}" in table.replace(";", "") for number in range(144))
    swatches = {mark.subject for page in document.pages for mark in paths(page, "swatch")}
    assert len(swatches) == 144
    for page in document.pages:
        for mark in page.marks:
            left, top, right, bottom = extent(mark)
            assert left >= 18 and top >= 18 and right <= page.width - 18 and bottom <= page.height - 18
