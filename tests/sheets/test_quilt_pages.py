"""A quilt's pages: what a maker reads and measures on them agrees with the quilt and its plan."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from itertools import chain

import pytest
from piecewright.cutting.plan_model import CuttingPlan
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.measure.length import UNITS
from piecewright.quilt.model import Quilt
from piecewright.sheets.chapters.chart import chart_rows
from piecewright.sheets.drawing.files import pdf_bytes
from piecewright.sheets.drawing.lettering import fraction_glyphs
from piecewright.sheets.page import Document, Page, TextMark
from piecewright.sheets.part_names import QUILT_PARTS
from piecewright.sheets.pictures.quilt_pages import border_bands
from piecewright.sheets.quilts.steps import step_lines
from piecewright.sheets.quilts.tables import count_groups, fabric_cuts, fabric_totals
from piecewright.sheets.quilts.wearing import worn_block, worn_words
from piecewright.words.say import INCHES, by_ruler
from piecewright.words.work.cloth import bought_words
from shapely.geometry import Polygon
from support.arranged import extent, paths, rings, texts
from support.random_quilts import compiled_quilt
from support.sample_quilts import TEXTS, planned, quilts_of
from support.works import quilt_sheets

LEAST_EDGE = 18.0  # 1/4in, DESIGN.md
LEAST_TYPE = 7.0
Whole = tuple[Quilt, CuttingPlan, Document]


@pytest.fixture(scope="module", params=TEXTS)
def whole(request: pytest.FixtureRequest) -> Whole:
    quilt, plan = planned(request.param)
    return quilt, plan, quilt_sheets(quilt, plan)


def of(document: Document, part: str) -> list[Page]:
    pages = [page for page in document.pages if page.part == part]
    assert pages, part
    return pages


def marks_of(document: Document, part: str, role: str) -> list[TextMark]:
    return [mark for page in of(document, part) for mark in texts(page) if mark.role == role]


def test_a_pieced_border_is_told_by_all_that_it_is_pieced_of() -> None:
    quilt = compiled_quilt("""edition 1
quilt "Frame" {
  use "Half-Square Triangle" version 1 as half with dark = ink, light = chalk
  fabric ink  fabric chalk  fabric rust
  set straight 1 across 1 down of 9in { place plain ink in A1..B2 }
  border 3in of half, plain rust corners plain chalk
  border 2in in chalk
  binding 2 1/4in in ink
}
""")
    bands = ((3, "of Half-Square Triangle and rust"), (2, "chalk"))
    assert border_bands(quilt, INCHES) == (bands, bands)


def test_every_page_says_which_of_how_many_it_is(whole: Whole) -> None:
    _, _, document = whole
    for number, page in enumerate(document.pages, 1):
        assert any(f"page {number} of {len(document.pages)}" in mark.text for mark in texts(page))


def test_nothing_reaches_the_papers_edge_and_no_type_is_too_small(whole: Whole) -> None:
    _, _, document = whole
    for page in document.pages:
        for mark in page.marks:
            left, top, right, bottom = extent(mark)
            assert left >= LEAST_EDGE - 0.01 and top >= LEAST_EDGE - 0.01, (page.title, mark)
            assert right <= page.width - LEAST_EDGE + 0.01, (page.title, mark)
            assert bottom <= page.height - LEAST_EDGE + 0.01, (page.title, mark)
        assert all(mark.size >= LEAST_TYPE for mark in texts(page))


def test_only_template_pages_ask_to_be_measured(whole: Whole) -> None:
    _, _, document = whole
    for page in document.pages:
        assert bool(paths(page, "check-square")) == page.part.endswith(": templates")


def test_the_picture_shows_every_fabrics_own_area(whole: Whole) -> None:
    quilt, _, document = whole
    (page,) = of(document, "The quilt")
    (outline,) = paths(page, "outline")
    left, top, right, bottom = Polygon(rings(outline)[0]).bounds
    scale = (right - left) / float(quilt.width)
    assert (bottom - top) / float(quilt.height) == pytest.approx(scale)
    drawn = {mark.subject: sum(Polygon(ring).area for ring in rings(mark)) for mark in paths(page, "fill")}
    assert sum(drawn.values()) / scale**2 == pytest.approx(float(quilt.width * quilt.height), rel=1e-6)
    shown = Counter(piece.fabric for piece in quilt.pieces)
    assert set(drawn) == set(shown)
    for mark in paths(page, "fill"):
        assert len(rings(mark)) == shown[mark.subject]


def test_counts_add_up_to_the_pictures_own_pieces(whole: Whole) -> None:
    quilt, plan, document = whole
    groups = count_groups(quilt, plan, INCHES)
    assert sum(group.pieces for group in groups) == len(quilt.pieces)
    assert fabric_totals(groups) == Counter(piece.fabric for piece in quilt.pieces)
    assert sum(row.back for group in groups for row in group.rows) == sum(p.reversed for p in quilt.pieces)
    printed = [mark.text for mark in marks_of(document, "Counts", "table") if mark.subject == "whole"]
    assert printed[-1] == f"{len(quilt.pieces):,}"
    for number, group in enumerate(groups):
        marks = marks_of(document, "Counts", "table")
        rows = [mark.text for mark in marks if mark.subject == f"total {number}"]
        assert rows[-1] == str(group.pieces)


def test_every_need_has_one_row_in_the_chart(whole: Whole) -> None:
    quilt, plan, document = whole
    rows = [row for cuts in fabric_cuts(quilt, plan, INCHES) for row in cuts.rows]
    assert sorted(row.cut.need for row in rows if row.need) == list(range(len(quilt.needs)))
    assert len(rows) == len(plan.cuts)
    printed: dict[str, list[str]] = {}
    for mark in marks_of(document, "Cutting chart", "table"):
        printed.setdefault(mark.subject, []).append(mark.text)
    assert len(printed) == len(rows)
    for row in rows:
        cells = printed[f"{row.cut.fabric} {row.key}"]
        assert cells[:2] == [row.key, str(row.cut.cuts)]


def test_the_supply_list_says_how_much_to_buy(whole: Whole) -> None:
    quilt, plan, document = whole
    shown = [mark.text for mark in marks_of(document, "What you need", "table")]
    for cuts in fabric_cuts(quilt, plan, INCHES):
        at = shown.index(fraction_glyphs(cuts.title))
        assert shown[at + 1] == fraction_glyphs(bought_words(cuts.plan))
    words = " ".join(mark.text for page in of(document, "What you need") for mark in texts(page))
    for safety in ("Close its guard after every cut", "cut away from yourself", "children", "with an adult"):
        assert safety in words  # SOURCES 8: what a booklet that uses rotary cutting contains
    assert "stand it on its heel" in words and "unplug" in words


def test_cutting_pictures_show_every_piece_true_to_scale(whole: Whole) -> None:
    _, plan, document = whole
    pages = of(document, "Cutting pictures")
    drawn = list(chain.from_iterable(paths(page, "piece") for page in pages))
    cloths = [cloth for fabric in plan.fabrics for cloth in fabric.cloths]
    placed = [(plan.cuts[each.cut], each) for cloth in cloths for each in cloth.placed]
    assert len(drawn) == len(placed)
    for mark, (cut, each) in zip(drawn, placed, strict=True):
        left, top, right, bottom = Polygon(rings(mark)[0]).bounds
        wide, tall = float(each.width), float(each.height)
        assert (right - left) * tall == pytest.approx((bottom - top) * wide, rel=1e-6), cut


def test_pieces_lie_on_their_cloth_and_on_no_other(whole: Whole) -> None:
    _, _, document = whole
    for page in of(document, "Cutting pictures"):
        cloths = [Polygon(rings(mark)[0]).buffer(0.01) for mark in paths(page, "left-over")]
        for mark in paths(page, "piece"):
            assert any(cloth.contains(Polygon(rings(mark)[0])) for cloth in cloths)


def test_every_step_is_told_once(whole: Whole) -> None:
    _, plan, document = whole
    told = [mark.text for mark in marks_of(document, "Cutting pictures", "step")]
    cloths = [cloth for fabric in plan.fabrics for cloth in fabric.cloths]
    steps = [sum(bool(cut.instructions) for cut in cloth.slices) for cloth in cloths]
    assert Counter(told) == Counter(str(n) for count in steps for n in range(1, count + 1))


def test_every_template_of_every_block_is_printed_once(whole: Whole) -> None:
    quilt, _, document = whole
    pages = [page for page in document.pages if page.part.endswith(": templates")]
    printed = Counter(mark.subject for page in pages for mark in paths(page, "cut"))
    wanted = Counter(template.label for block in quilt.blocks for template in block.templates)
    assert {label: count for label, count in printed.items() if not label.startswith("S")} == wanted


def test_parts_alone_make_up_the_whole(whole: Whole) -> None:
    quilt, plan, document = whole
    parts = [quilt_sheets(quilt, plan, part) for part in QUILT_PARTS]
    titles = [page.title for part in parts for page in part.pages]
    assert titles == [page.title for page in document.pages]


def test_the_same_quilt_gives_the_same_bytes() -> None:
    first, second = (pdf_bytes(quilt_sheets(*planned("baby"))) for _ in range(2))
    assert first == second


def test_a_print_with_a_direction_gets_templates_of_its_own() -> None:
    """Plain squares on point, their print up, lie aslant on the cloth: a template must be on the sheets."""
    text = TEXTS["on point"].replace("alternate star, fly", "alternate star, plain navy")
    quilt = quilts_of(text)[0]
    plan = plan_cutting(quilt).value
    assert plan is not None
    document = quilt_sheets(quilt, plan)
    printed = [mark.subject for page in document.pages for mark in paths(page, "cut")]
    assert printed.count("S1") == 1


@pytest.mark.parametrize("name", TEXTS)
def test_words_of_the_size_lie_outside_the_picture(name: str) -> None:
    """Long ones too: an on-point set is 56.569in high."""
    text = TEXTS[name].replace("border to 36in x 48in in cream", "")
    text = text.replace("border 3in of goose corners plain rust", "")
    for quilt in quilts_of(text):
        plan = plan_cutting(quilt).value
        assert plan is not None
        (page,) = quilt_sheets(quilt, plan, "picture").pages
        (outline,) = paths(page, "outline")
        _, top, right, bottom = extent(outline)
        for mark in texts(page):
            if mark.text.endswith("in") and top < mark.y < bottom:
                assert extent(mark)[0] > right, mark.text


def test_the_sheets_of_its_blocks_say_its_cloths_and_show_them_as_its_picture_does(whole: Whole) -> None:
    """A maker who cuts `Indigo print` finds it on the template, in the colour of the first page."""
    quilt, _, document = whole
    titles = {fabric.title for fabric in quilt.fabrics}
    shown = {mark.subject: mark.fill for mark in paths(document.pages[0], "swatch") if mark.fill}
    sheets = [
        page for page in document.pages if page.part.endswith(": templates") and "Setting" not in page.part
    ]
    assert sheets
    swatches = [mark for page in sheets for mark in paths(page, "swatch") if mark.fill]
    for mark in swatches:
        cloths = mark.subject.split(" or ")
        assert set(cloths) <= titles
        name = next(fabric.name for fabric in quilt.fabrics if fabric.title == cloths[0])
        assert mark.fill == shown.get(name, mark.fill)
    assert {mark.subject for mark in swatches} & titles
    told = [
        mark.text
        for page in sheets
        for mark in texts(page)
        if mark.text.startswith("Cut ") and " of " in mark.text
    ]
    assert any(line.split(" of ")[1] in titles for line in told)


def test_a_template_says_that_its_counts_are_for_one_block() -> None:
    """Plastic leaves its page: the label alone has to say it."""
    quilt, plan = planned("sampler")
    document = quilt_sheets(quilt, plan, "templates")
    told = {mark.text for page in document.pages for mark in texts(page)}
    assert {f"for one block of {times}" for times in quilt.block_counts if times > 1} <= told


def test_a_role_cut_from_two_cloths_names_both() -> None:
    quilt = quilts_of(TWO_DARKS)[0]
    assert worn_words(quilt, 0)["dark"] == "Ink blue or Brick red"
    counts = [count for template in worn_block(quilt, 0).templates for count in template.counts]
    assert {count.fabric for count in counts} == {"Ink blue or Brick red", "Chalk"}
    assert sum(count.cut + count.reversed for count in counts) == len(quilt.blocks[0].draft.pieces)


TWO_DARKS = """edition 1
quilt "Two Darks" {
  use "Churn Dash" as one with dark = ink, background = chalk
  use "Churn Dash" as two with dark = brick, background = chalk
  fabric ink "Ink blue"  fabric brick "Brick red"  fabric chalk "Chalk"
  set straight 2 across 2 down of 9in { alternate one, two }
  binding 2 1/4in in ink  backing in chalk  batting
}
"""


def test_cuts_of_one_size_are_summed_where_the_first_of_them_stands() -> None:
    """As a printed pattern says it: squares of one size for several blocks, their total first."""
    quilt = quilts_of(TWO_SIZES)[0]
    plan = plan_cutting(quilt).value
    assert plan is not None
    for cuts in fabric_cuts(quilt, plan, INCHES):
        squares = [row for row in cuts.rows if row.cut.kind != "template" and row.cut.width == row.cut.height]
        first, *rest = [row for row in squares if row.cut.width == Fraction(31, 8)]
        assert rest
        rows = {row.subject.split()[-1]: row.cells for row in chart_rows(cuts, by_ruler(plan.ruler_step))}
        total = sum(row.cut.cuts for row in (first, *rest))
        assert f"{total} in all with {rest[-1].key}" in rows[first.key][2]
        assert all("in all" not in rows[row.key][2] for row in rest)


TWO_SIZES = """edition 1
quilt "Same Squares" {
  use "Churn Dash" as dash with dark = ink, background = chalk
  use "Half-Square Triangle" as half with dark = ink, light = chalk
  fabric ink "Ink blue"  fabric chalk "Chalk"
  set straight 2 across 2 down of 9in { alternate dash }
  border 3in of half corners half
  binding 2 1/4in in ink  backing in chalk  batting
}
"""


def test_another_way_is_told_once_and_then_by_its_letter() -> None:
    """Two blocks whose squares of two triangles are as many, of the same cloths."""
    quilt = quilts_of(SAME_PAIRS)[0]
    plan = plan_cutting(quilt).value
    assert plan is not None
    for cuts in fabric_cuts(quilt, plan, INCHES):
        rows = [
            row
            for row in chart_rows(cuts, by_ruler(plan.ruler_step))
            if any("at a time" in n for n in row.notes)
        ]
        first, second = rows
        assert first.notes[0].startswith("Or two at a time: Cut 8 squares")
        assert second.notes == (f"Or two at a time or eight at a time, as for {first.subject.split()[-1]}.",)


SAME_PAIRS = """edition 1
quilt "Same Pairs" {
  use "Churn Dash" as dash with dark = ink, background = chalk
  use "Shoo Fly" as fly with dark = ink, background = chalk
  fabric ink "Ink blue"  fabric chalk "Chalk"
  set straight 2 across 4 down of 9in { alternate dash, fly }
  binding 2 1/4in in ink  backing in chalk  batting
}
"""


def test_a_strip_for_templates_says_how_many_are_cut_from_it() -> None:
    """Words of the trade, as a cutter counts them: strips, and what each gives."""
    (quilt,) = quilts_of(CURVES)
    plan = plan_cutting(quilt, Fraction(1, 8)).value
    assert plan is not None
    cloths = [cloth for fabric in plan.fabrics for cloth in fabric.cloths]
    told = [text for cloth in cloths for _, text in step_lines(INCHES, cloth)]
    assert "Cut it across at 41 7/8in: 1 strip of 18 templates." in told
    assert not any("length" in text or "one of them" in text for text in told)


CURVES = """edition 1
quilt "Slipway" {
  use "Drunkard's Path" as path
  fabric dark  fabric light
  set straight 2 across 2 down of 9in { alternate path }
  binding 2 1/4in in dark  backing in light  batting
}
"""


def test_counts_are_in_the_units_of_the_ruler_that_the_chart_is_cut_by() -> None:
    quilt = compiled_quilt("""edition 1
quilt "Square" {
  fabric ink  fabric chalk
  set straight 1 across 1 down of 20cm { alternate plain ink }
  border 6cm in chalk
  binding 6cm in ink
}
""")
    plan = plan_cutting(quilt, UNITS["cm"] / 4).value
    assert plan is not None
    (borders,) = [group for group in count_groups(quilt, plan, INCHES) if group.title == "Borders"]
    assert {row.what for row in borders.rows} == {"border strip, 6cm x 20cm", "border strip, 6cm x 32cm"}
