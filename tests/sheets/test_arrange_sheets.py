"""Sheets of whole blocks: what a quilter would measure and read on the printed pages."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import atan2, degrees, hypot

import pytest
from piecewright.cutting.model import Template
from piecewright.drafting.model import Draft
from piecewright.geometry.edge import Edge
from piecewright.measure.tolerance import NEAR
from piecewright.sheets.arrange.block_sheets import arrange_block
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.page import Document, Page, PathMark, TextMark
from shapely.geometry import LineString, Polygon, box
from shapely.ops import unary_union
from support.arranged import ends, extent, paths, rings, texts, tight_box
from support.sample_drafts import nine, spokes, templates_of, vane, with_curve

INCH = 72.0  # ISO 32000: default user space is 1/72 inch
LEAST_EDGE = 18.0  # 1/4in, DESIGN.md
LEAST_TYPE = 7.0


def curved() -> tuple[Draft, tuple[Template, ...]]:
    draft = vane()
    a, b, c, *others = templates_of(draft)
    return draft, (a, b, with_curve(c), *others)


def several(draft: Draft) -> tuple[Draft, tuple[Template, ...]]:
    return draft, templates_of(draft)


CASES = {
    "curved": curved(),
    "needle points": several(spokes(9, 26)),
    "tiny": several(nine(2, ("dark", "light", "medium"), 8)),
    "one large": several(nine(13, ("dark", "light"), 2)),
    "no maker, reversible": several(replace(nine(9), maker="")),
}
OPTIONS = {
    "letter": SheetOptions(),
    "a4": SheetOptions(paper="a4"),
    "finished": SheetOptions(kind="finished"),
    "window": SheetOptions(kind="window", paper="a4"),
    "shrinking": SheetOptions(measured=Fraction(97, 100)),
    "dashed": SheetOptions(lines="cut-dashed"),
}


@pytest.fixture(scope="module", params=[f"{case}/{option}" for case in CASES for option in OPTIONS])
def sheets(request: pytest.FixtureRequest) -> tuple[Draft, tuple[Template, ...], SheetOptions, Document]:
    case, option = request.param.split("/")
    draft, templates = CASES[case]
    return draft, templates, OPTIONS[option], arrange_block(draft, templates, OPTIONS[option])


def body(document: Document) -> tuple[Page, ...]:
    """The pages of templates."""
    return tuple(page for page in document.pages if page.title.startswith("Template"))


def corners(edges: tuple[Edge, ...]) -> list[tuple[float, float]]:
    return [(float(edge.start.x), float(edge.start.y)) for edge in edges]


def laid_back(
    points: list[tuple[float, float]], like: list[tuple[float, float]]
) -> list[tuple[float, float]]:
    """Printed points in inches, turned and moved so that the first two lie where the drafted ones do."""
    (ax, ay), (bx, by) = points[:2]
    (px, py), (qx, qy) = like[:2]
    turn = complex(qx - px, qy - py) / complex(bx - ax, by - ay)
    turn /= abs(turn)
    moved = [complex(x - ax, y - ay) * turn + complex(px, py) for x, y in points]
    return [(each.real, each.imag) for each in moved]


class TestTemplates:
    def test_every_template_is_printed_once(self, sheets):
        _, templates, options, document = sheets
        role = "sew" if options.kind == "finished" else "cut"
        printed = [mark.subject for page in document.pages for mark in paths(page, role)]
        assert sorted(printed) == sorted(template.label for template in templates)

    def test_outlines_are_true_to_size_whatever_their_turn(self, sheets):
        _, templates, options, document = sheets
        by_label = {template.label: template for template in templates}
        roles = ("sew",) if options.kind == "finished" else ("cut", "sew")
        scale = INCH / float(options.measured)
        for page in document.pages:
            for role in roles:
                for mark in paths(page, role):
                    drafted = corners(getattr(by_label[mark.subject], role))
                    printed = [(x / scale, y / scale) for x, y in ends(mark)][: len(drafted)]
                    # With curves in it a path has more ends than the outline has corners.
                    if all(edge.arc is None for edge in getattr(by_label[mark.subject], role)):
                        for (x, y), (px, py) in zip(laid_back(printed, drafted), drafted, strict=True):
                            assert hypot(x - px, y - py) < NEAR

    def test_templates_are_never_mirrored(self, sheets):
        _, _templates, options, document = sheets
        role = "sew" if options.kind == "finished" else "cut"
        for page in document.pages:
            for mark in paths(page, role):
                ring = rings(mark)[0]
                area = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:] + ring[:1], strict=True))
                assert area > 0, "clockwise as seen, as drafted"

    def test_scissors_pass_between_templates(self, sheets):
        _, _, options, document = sheets
        role = "sew" if options.kind == "finished" else "cut"
        for page in document.pages:
            outlines = [Polygon(rings(mark)[0]) for mark in paths(page, role)]
            for number, one in enumerate(outlines):
                for other in outlines[number + 1 :]:
                    assert one.distance(other) >= INCH / 8

    def test_cutting_line_is_solid_unless_dashes_are_asked_for(self, sheets):
        _, _, options, document = sheets
        if options.kind != "allowance":
            return
        for page in document.pages:
            assert all(bool(mark.dash) == (options.lines == "cut-dashed") for mark in paths(page, "cut"))
            assert all(bool(mark.dash) == (options.lines == "cut-solid") for mark in paths(page, "sew"))

    def test_every_template_has_its_grain(self, sheets):
        _, templates, _, document = sheets
        drawn = {mark.subject for page in document.pages for mark in paths(page, "grain")}
        assert drawn == {template.label for template in templates}

    def test_grain_turns_with_its_template(self, sheets):
        _, templates, _options, document = sheets
        by_label = {template.label: template for template in templates}
        for page in body(document):
            for mark in paths(page, "grain"):
                if mark.fill is not None:
                    continue
                (ax, ay), (bx, by) = ends(mark)
                template = by_label[mark.subject]
                sew = ends(paths(page, "sew", mark.subject)[0])
                drafted = corners(template.sew)
                first, second = sew[0], sew[1]
                turned = heading(first, second) - heading(drafted[0], drafted[1])
                off = (heading((ax, ay), (bx, by)) - turned - template.grain[0].heading) % 180
                assert min(off, 180 - off) < 0.01


def heading(first: tuple[float, float], last: tuple[float, float]) -> float:
    """Degrees clockwise from up."""
    return degrees(atan2(last[0] - first[0], first[1] - last[1])) % 360


class TestLabels:
    def test_letter_and_count_of_every_template(self, sheets):
        _, templates, _, document = sheets
        for template in templates:
            words = " ".join(
                mark.text
                for page in body(document)
                for mark in texts(page)
                if mark.role == "label" and mark.subject == template.label
            )
            assert template.label in words.split()
            for count in template.counts:
                assert f"Cut {count.cut} of" in words and count.fabric in words
            assert ("this side up" in words) == (not template.reversible)
            assert f"v{template.version}" in words

    def test_labels_cross_no_line_dot_or_arrow(self, sheets):
        _, _, options, document = sheets
        scale = 1 / float(options.measured)
        for page in body(document):
            lines = [line for line in page_lines(page, scale) if not line.is_empty]
            drawn = unary_union(lines)
            for mark in texts(page):
                if mark.role == "label":
                    assert not drawn.intersects(box(*tight_box(mark))), (mark.text, mark.subject)

    def test_labels_keep_off_each_other(self, sheets):
        _, _, _, document = sheets
        for page in body(document):
            boxes = [box(*tight_box(mark)) for mark in texts(page) if not mark.turned]
            for number, one in enumerate(boxes):
                assert not any(one.intersects(other) for other in boxes[number + 1 :])

    def test_words_stand_inside_the_sewing_line_or_have_a_leader(self, sheets):
        _, _templates, _, document = sheets
        for page in body(document):
            for mark in paths(page, "sew"):
                inside = Polygon(rings(mark)[0])
                labels = [
                    text for text in texts(page) if text.role == "label" and text.subject == mark.subject
                ]
                outside = [text for text in labels if not inside.contains(box(*tight_box(text)))]
                leaders = paths(page, "leader", mark.subject)
                assert bool(outside) == bool(leaders)
                if leaders:
                    (start, end) = ends(leaders[0])
                    words = unary_union([box(*tight_box(text)) for text in outside])
                    assert words.distance(LineString([start, end])) < 40
                    assert 3 < hypot(end[0] - start[0], end[1] - start[1]) < 2 * INCH

    def test_labels_are_level(self, sheets):
        _, _, _, document = sheets
        assert all(
            mark.turned == 0 for page in document.pages for mark in texts(page) if mark.role == "label"
        )

    def test_a_window_is_named_on_the_card_that_stays(self, sheets):
        _, _, options, document = sheets
        for page in body(document):
            named = {mark.subject: mark for mark in texts(page) if mark.role == "ring"}
            cards = {mark.subject: mark for mark in paths(page, "cut")}
            assert set(named) == (set(cards) if options.kind == "window" else set())
            for subject, mark in named.items():
                inside = Polygon(rings(paths(page, "sew", subject)[0])[0])
                card = Polygon(rings(cards[subject])[0]).difference(inside)
                assert card.contains(turned_box(mark))


def turned_box(mark: TextMark) -> Polygon:
    """The capitals of a turned line of text."""
    from shapely.affinity import rotate

    return rotate(box(*tight_box(mark)), mark.turned, origin=(mark.x, mark.y))


def page_lines(page: Page, scale: float) -> list[LineString]:
    """Every template line as it is inked, with its width."""
    roles = ("cut", "sew", "dot", "match", "grain", "leader", "join")
    found = []
    for mark in page.marks:
        if isinstance(mark, PathMark) and mark.role in roles:
            for ring in rings(mark):
                closed = ("Z",) in mark.path
                shape = LineString([*ring, ring[0]] if closed else ring).buffer(mark.width / 2 + 0.01)
                found.append(shape)
    return found


class TestEveryPage:
    def test_check_square_and_bars_measure_right(self, sheets):
        _, _, options, document = sheets
        scale = 1 / float(options.measured)
        for page in document.pages:
            (square,) = paths(page, "check-square")
            xs, ys = zip(*ends(square), strict=True)
            assert max(xs) - min(xs) == pytest.approx(INCH * scale, abs=1e-9)
            assert max(ys) - min(ys) == pytest.approx(INCH * scale, abs=1e-9)
            (bars,) = paths(page, "check-bar")
            xs, ys = zip(*ends(bars), strict=True)
            five_cm = 5 / 2.54 * INCH  # an inch is 2.54cm exactly (CSS Values and Units 3)
            assert max(xs) - min(xs) == pytest.approx(five_cm * scale, abs=1e-6)
            assert max(ys) - min(ys) == pytest.approx(five_cm * scale, abs=1e-6)

    def test_words_to_measure_and_to_be_safe(self, sheets):
        _, _, _, document = sheets
        for page in document.pages:
            words = " ".join(mark.text for mark in texts(page))
            assert "Measure before you cut" in words
            assert "1in" in words and "5cm" in words
            assert "follow the maker" in words and "children" in words

    def test_head_numbers_the_pages(self, sheets):
        draft, _, _, document = sheets
        for number, page in enumerate(document.pages, 1):
            words = " ".join(mark.text for mark in texts(page))
            assert f"page {number} of {len(document.pages)}" in words
            assert f"version {draft.version}" in words
            assert draft.title[:12] in words

    def test_nothing_near_the_edge(self, sheets):
        _, _, _, document = sheets
        for page in document.pages:
            room = (LEAST_EDGE, LEAST_EDGE, page.width - LEAST_EDGE, page.height - LEAST_EDGE)
            for mark in page.marks:
                left, top, right, bottom = extent(mark)
                assert left >= room[0] and top >= room[1] and right <= room[2] and bottom <= room[3], mark

    def test_no_small_print_under_seven_points(self, sheets):
        _, _, options, document = sheets
        scale = float(options.measured)
        assert all(mark.size * scale >= LEAST_TYPE - 1e-9 for page in document.pages for mark in texts(page))

    def test_no_text_over_text_in_head_and_foot(self, sheets):
        _, _, _, document = sheets
        for page in document.pages:
            boxes = [box(*tight_box(mark)) for mark in texts(page) if mark.role == "text"]
            for number, one in enumerate(boxes):
                assert not any(one.intersects(other) for other in boxes[number + 1 :])

    def test_legend_names_what_is_drawn(self, sheets):
        _, _, _options, document = sheets
        for page in body(document):
            words = " ".join(mark.text for mark in texts(page))
            for role, word in (
                ("dot", "match dots"),
                ("match", "match to its twin"),
                ("grain", "straight of grain"),
            ):
                assert (word in words) == bool(paths(page, role))

    def test_true_paper_size(self, sheets):
        _, _, options, document = sheets
        sizes = {"letter": (612.0, 792.0), "a4": (210 / 25.4 * INCH, 297 / 25.4 * INCH)}  # ANSI A, ISO 216 A4
        for page in document.pages:
            assert (page.width, page.height) == pytest.approx(sizes[options.paper])


class TestBlockPage:
    def test_every_piece_is_lettered_or_in_the_key(self, sheets):
        draft, _, _, document = sheets
        shown: set[str] = set()
        for mark in texts(document.pages[0]):
            if mark.role in ("piece", "key"):
                shown.update(mark.subject.split())
        assert shown == {str(piece.number) for piece in draft.pieces}

    def test_letters_stand_in_their_pieces(self, sheets):
        draft, _, _options, document = sheets
        outline = ends(paths(document.pages[0], "outline")[0])
        left, top = min(x for x, _ in outline), min(y for _, y in outline)
        scale = (max(x for x, _ in outline) - left) / float(draft.width)
        for mark in texts(document.pages[0]):
            if mark.role == "piece":
                ring = draft.pieces[int(mark.subject) - 1].ring
                piece = Polygon(
                    [
                        (left + scale * float(s.edge.start.x), top + scale * float(s.edge.start.y))
                        for s in ring
                    ]
                )
                x0, y0, x1, _ = tight_box(mark)
                assert piece.contains(box(x0, y0, x1, mark.y))

    def test_page_says_its_scale(self, sheets):
        draft, _, options, document = sheets
        page = document.pages[0]
        outline = [x for x, _ in ends(paths(page, "outline")[0])]
        scale = (max(outline) - min(outline)) / float(draft.width) / INCH * float(options.measured)
        words = " ".join(mark.text for mark in texts(page))
        if scale == pytest.approx(1):
            assert "the drawing is true size" in words
        else:
            assert f"drawn at {scale * 100:.0f}% of true size" in words

    def test_every_fabric_has_a_swatch_with_its_name(self, sheets):
        draft, _, _, document = sheets
        page = document.pages[0]
        for fabric in {piece.fabric for piece in draft.pieces}:
            assert paths(page, "swatch", fabric)
            assert any(mark.text == fabric for mark in texts(page))

    def test_table_lists_every_template(self, sheets):
        _, templates, _, document = sheets
        listed = [
            mark.text for page in document.pages for mark in texts(page) if mark.role == "table" and mark.bold
        ]
        assert listed == [template.label for template in templates]


def test_document_information():
    draft, templates = CASES["curved"]
    document = arrange_block(draft, templates, SheetOptions())
    assert document.title == "Tidewater Vane"
    assert document.subject == "version 2, 9in finished"
    assert document.author == "Orla Fenn"
    assert [page.title for page in document.pages] == ["Block", "Templates A–E"]


def test_same_block_gives_the_same_pages():
    draft, templates = CASES["needle points"]
    assert arrange_block(draft, templates, SheetOptions()) == arrange_block(draft, templates, SheetOptions())


def test_letters_that_the_face_lacks_do_not_reach_the_page():
    draft = vane(title="Tide 🌊 ‮wall‬")
    document = arrange_block(draft, templates_of(draft), SheetOptions())
    set_letters = {letter for page in document.pages for mark in texts(page) for letter in mark.text}
    assert not set_letters & {"🌊", "‮", "‬"}


@pytest.mark.parametrize("measured", [Fraction(4, 5), Fraction(5, 4)])
def test_a_printer_that_is_far_out_still_gets_whole_pages(measured):
    draft, templates = CASES["curved"]
    document = arrange_block(draft, templates, SheetOptions(measured=measured))
    for page in document.pages:
        for mark in page.marks:
            left, top, right, bottom = extent(mark)
            assert left >= 0 and top >= 0 and right <= page.width and bottom <= page.height
