"""The booklet of a quilt: its chapters, its rows and borders, and that nothing leaves the paper."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from functools import cache

import pytest
from piecewright.quilt.assembly_model import QuiltAssembly
from piecewright.quilt.model import Quilt
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.booklets import booklet
from piecewright.sheets.booklets import part as part_of
from piecewright.sheets.content import Book, Card, Cards, Chapter, List, Paragraph, Section, Table
from piecewright.sheets.documents import BLOCK_PARTS, documents_of
from piecewright.sheets.page import Document, PathMark, TextMark
from piecewright.sheets.quilts.steps import steps_of as cutting_steps
from piecewright.sheets.quilts.tables import fabric_cuts, size_text
from piecewright.sheets.quilts.wearing import in_quilt
from piecewright.sheets.quilts.words import size_words
from piecewright.sheets.setting.pages import page_names, set_book, set_chapters
from piecewright.sheets.setting.words_of import words_of
from piecewright.sheets.work import Work
from piecewright.words.say import INCHES, by_ruler
from piecewright.words.work.proofs import proof_text
from piecewright.words.work.shapes import single_word
from piecewright.words.work.slices import instruction_words
from shapely.geometry import Polygon, box
from shapely.ops import unary_union
from support.arranged import extent, paths, rings, texts
from support.printed_cutting import measures
from support.quilts import assemble_quilt, try_quilt
from support.sample_quilts import planned, quilts_of
from support.works import chapters_of, work_of

NAMES = ("sampler", "on point", "baby")


@cache
def sewn(name: str) -> tuple[Quilt, QuiltAssembly]:
    quilt, _ = planned(name)
    made = assemble_quilt(quilt)
    assert made.value is not None
    return quilt, made.value


@cache
def maker(name: str, way: str = "templates") -> Work:
    return work_of(sewn(name)[0], lambda block: way)


@cache
def document(name: str) -> Document:
    return set_book(book(maker(name)), SheetOptions())


def book(work: Work) -> Book:
    return booklet(work, SheetOptions())


def cards(name: str) -> list[Card]:
    (chapter,) = chapters_of(maker(name), "rows")
    return [card for part in chapter.parts if isinstance(part, Cards) for card in part.cards]


@pytest.mark.parametrize("name", NAMES)
def test_the_booklet_holds_every_block_and_the_quilt_around_them(name):
    quilt, _ = sewn(name)
    titles = [chapter.title for chapter in book(maker(name)).chapters if chapter.title != "Notes"]
    assert titles[:5] == ["The quilt", "What you need", "Counts", "Cutting chart", "Cutting pictures"]
    for block in quilt.blocks:
        for what in ("templates", "steps", "drafting exercise"):
            assert f"{block.draft.title}: {what}" in titles
    assert titles[-6:] == [
        "Steps: the quilt",
        "Finishing",
        "What makes it hard",
        "Storage cards",
        "Safety",
        "Glossary",
    ]


@pytest.mark.parametrize("name", NAMES)
def test_the_contents_give_the_page_on_which_each_chapter_begins(name):
    pages = document(name).pages
    rows = [mark for mark in texts(pages[1]) if mark.role == "contents"]
    for title, number in zip(rows[::2], rows[1::2], strict=True):
        page = pages[int(number.text) - 1]
        begins = any(mark.role == "chapter" and mark.subject == title.subject for mark in texts(page))
        assert begins or page.part == title.subject or page.title == title.subject, title


def test_finishing_joins_back_and_binding_from_what_the_chart_cuts():
    """By hand: the back's panels less 1/2in for their seam, the binding's strips as the chart counts them."""
    (chapter,) = chapters_of(maker("sampler"), "finish")
    (said,) = [part.texts for part in chapter.parts if isinstance(part, List)]
    quilt, plan = planned("sampler")
    (panels,) = [each.backing_panels for each in plan.fabrics if each.backing_panels]
    assert sum(wide for wide, _ in panels) - Fraction(1, 2) * (len(panels) - 1) == quilt.backing.height
    assert f"Sew the {len(panels)} panels of the back" in said[0]
    assert size_text(INCHES, quilt.backing.width, quilt.backing.height) in said[0]
    (strips,) = [cut.cuts for cut in plan.cuts if cut.part == "binding"]
    assert any(f"Join the {strips} strips of Indigo print on the bias" in each for each in said)


@pytest.mark.parametrize("name", NAMES)
def test_nothing_leaves_the_paper(name):
    for page in document(name).pages:
        for mark in page.marks:
            left, top, right, bottom = extent(mark)
            assert min(left, top, page.width - right, page.height - bottom) >= 17.5, (page.title, mark)


@pytest.mark.parametrize("name", NAMES)
def test_every_row_has_a_card_and_its_parts_make_it_up(name):
    _, made = sewn(name)
    rows = [row for stage in made.stages for row in stage.rows]
    assert len(cards(name)) == len(rows)
    for row, card in zip(rows, cards(name), strict=True):
        drawn = [mark for mark in card.picture.marks if isinstance(mark, PathMark)]
        parts = [mark for mark in drawn if mark.role == "part"]
        assert len(parts) == len(row.parts)
        before = sum(Polygon(ring).area for mark in parts for ring in rings(mark) if len(ring) > 2)
        after = unary_union([Polygon(ring).buffer(0.01) for mark in drawn if mark.role == "fill"
                             for ring in rings(mark) if len(ring) > 2])  # fmt: skip
        assert after.area == pytest.approx(before, rel=0.02), card.title
        assert card.title.endswith(f"make {row.batch}") == (row.batch > 1)


@pytest.mark.parametrize("name", NAMES)
def test_a_row_names_its_parts_in_order_and_a_unit_by_the_row_that_made_it(name):
    quilt, made = sewn(name)
    known = {kind.label for kind in made.kinds}
    for number, card in enumerate(cards(name), 1):
        said = card.lines[0].removeprefix("Sew ").split(" side by side")[0].split(" one under")[0]
        said = said.replace(" to the four sides of ", ", ").split(", each from")[0]
        for part in said.split(" along")[0].split(" round")[0].split(", "):
            assert part in known or int(part.removeprefix("R").removesuffix(" upside down")) < number
    assert cards(name)[-1].lines[2].endswith(f"finished {size_text(INCHES, quilt.width, quilt.height)}.")


@pytest.mark.parametrize("name", NAMES)
def test_the_key_counts_blocks_and_strips(name):
    quilt, made = sewn(name)
    (chapter,) = chapters_of(maker(name), "rows")
    (key,) = [part for part in chapter.parts if isinstance(part, Table)]
    assert sum(int(row.cells[1]) for row in key.rows) == len(made.top.pieces)
    blocks = [row for row in key.rows if row.cells[0].startswith("Q")]
    assert sum(int(row.cells[1]) for row in blocks) == sum(quilt.block_counts)


def test_the_proof_is_of_the_whole_quilt():
    _, made = sewn("sampler")
    (chapter,) = chapters_of(maker("sampler"), "rows")
    assert isinstance(chapter.parts[0], Paragraph) and proof_text(made.proof) in chapter.parts[0].text
    words = [mark.text for mark in texts(document("sampler").pages[0])]
    assert any(proof_text(made.proof) in line for line in words)


def test_each_block_is_sewn_as_its_maker_chose():
    ways = {"Ohio Star": "foundation", "Churn Dash": "papers"}
    whole = booklet(
        work_of(sewn("sampler")[0], lambda block: ways.get(block.draft.title, "templates")), SheetOptions()
    )
    titles = {chapter.title for chapter in whole.chapters}
    assert {"Ohio Star: foundations", "Churn Dash: paper pieces", "Friendship Star: templates"} <= titles
    assert not {"Ohio Star: templates", "Churn Dash: templates"} & titles


def test_one_graph_paper_serves_all_blocks():
    pages = document("sampler").pages
    ruled = [page for page in pages if any("inch graph paper · page" in mark.text for mark in texts(page))]
    assert [page.title for page in ruled] == ["Paper to draft on"]


def test_blocks_without_a_drafting_exercise_bring_no_paper_to_draft_on():
    (quilt,) = quilts_of("""edition 1
quilt "Reef" version 1 {
  use "Pineapple" as pine
  fabric sand "Sand"
  roles dark = sand, medium = sand, light = sand
  set straight 2 across 1 down of 8in { row pine, pine }
}""")
    titles = [chapter.title for chapter in book(work_of(quilt, lambda block: "templates")).chapters]
    assert "Pineapple: steps" in titles
    assert not [title for title in titles if "draft" in title]


@pytest.mark.parametrize("part", BLOCK_PARTS)
def test_every_part_can_be_had_alone(part):
    (made,) = documents_of(maker("baby"), (part,), SheetOptions())
    pages = made.document.pages
    assert pages and not any(page.title in ("Cover", "Contents") for page in pages)


def test_storage_cards_have_a_box_for_every_template_of_every_block():
    quilt, _ = sewn("sampler")
    (chapter,) = chapters_of(maker("sampler"), "card")
    tables = [part for part in chapter.parts if isinstance(part, Table)]
    assert [len(table.rows) for table in tables] == [len(block.templates) for block in quilt.blocks]
    assert sum(isinstance(part, Section) for part in chapter.parts) == len(quilt.blocks)
    pages = set_chapters(part_of(maker("sampler"), "card", SheetOptions()), SheetOptions()).pages
    boxes = sum(len(paths(page, "tick-box")) for page in pages)
    assert boxes == sum(len(block.templates) + 2 for block in quilt.blocks)


def steps_of(name: str, title: str, way: str = "templates") -> tuple[list[str], list[Card]]:
    """What a block's steps say of its fabrics, and their cards."""
    what = "steps" if way == "templates" else "foundations"
    (chapter,) = [each for each in book(maker(name, way)).chapters if each.title == f"{title}: {what}"]
    said = [part.text for part in chapter.parts if isinstance(part, Paragraph)]
    return said, [card for part in chapter.parts if isinstance(part, Cards) for card in part.cards]


def test_steps_of_a_block_show_the_fabrics_of_the_quilt():
    said, shown = steps_of("sampler", "Ohio Star")
    assert "In the fabrics of this quilt: background is Sand linen, dark is Indigo print." in said
    assert shown[0].lines[0] == "Sew B (Sand linen) to B (Indigo print, shaded)."
    fills = [mark for mark in shown[0].picture.marks if isinstance(mark, PathMark) and mark.role == "fill"]
    assert {mark.subject for mark in fills} == {"Sand linen", "Indigo print"}


TWO_CHOICES = """fabric rust "Rust"
fabric sea "Sea"
use "Pair" as half with pale = sand, dark = rust
use "Pair" as other with pale = sand, dark = sea
set straight 3 across 1 down of 4in { row half, other, half }
"""


def test_of_several_choices_the_most_common_is_shown_and_the_others_are_told():
    made = try_quilt(TWO_CHOICES).value
    assert made is not None, [each.message for each in try_quilt(TWO_CHOICES).diagnostics]
    worn = in_quilt(made.quilts[0], 0)
    assert worn.names == {"pale": "sand", "dark": "Rust"} and not worn.always
    assert worn.words == (
        "This quilt uses the block in 2 choices of fabrics. "
        "Shown is the most common: dark is Rust, pale is sand, 2 times.",
        "Also: dark is Sea, pale is sand, 1 time.",
        "Make 3 of this block: counts here are for one.",
    )


def test_foundations_of_a_block_are_lettered_with_the_fabrics_of_the_quilt():
    _, shown = steps_of("sampler", "Ohio Star", "foundation")
    fabrics = {card.lines[0] for card in shown if "trimmed" not in card.title and "·" not in card.title}
    assert fabrics == {"Sand linen", "Indigo print"}


def rows_of(chapter: Chapter) -> list[tuple[str, Sequence[str]]]:
    """The cells of every row of its tables, with the table's own title."""
    return [(part.title, row.cells) for part in chapter.parts if isinstance(part, Table) for row in part.rows]


Patches = Counter[tuple[str, tuple[float, ...]]]
"""How many of each fabric and size."""


def sides_of(words: str) -> tuple[float, ...]:
    """`rectangles 4in x 2 1/2in, 106 in all with d` or `4in x 4in` as its sides, the longer first."""
    sides = measures(words.split(",")[0])
    return tuple(sorted(sides * (2 // len(sides)), reverse=True))


@pytest.mark.parametrize("name", NAMES)
def test_the_chart_cuts_the_patches_of_the_foundation_pages_as_often_as_there_are_blocks(name):
    """Read from the words of the booklet: each block's table of cloth, times its copies, is the chart's."""
    quilt, _ = sewn(name)
    whole = book(maker(name, "foundation"))
    (chart,) = [chapter for chapter in whole.chapters if chapter.title == "Cutting chart"]
    on_paper = 0
    for index, block in enumerate(quilt.blocks):
        (pages,) = [each for each in whole.chapters if each.title == f"{block.draft.title}: foundations"]
        times, told = quilt.block_counts[index], " ".join(words_of([pages]))
        if "cannot be sewn" in told:
            continue
        on_paper += 1
        wanted: Patches = Counter()
        for _, (fabric, count, size, _) in rows_of(pages):
            wanted[fabric, sides_of(size)] += int(count) * times
        cut: Patches = Counter()
        for fabric, (_, count, what, gives, purpose, why) in rows_of(chart):
            if purpose.startswith(f"{block.draft.title} "):
                assert count == gives and "1/4in of margin on every side" in why
                cut[fabric, sides_of(what)] += int(count)
        prints = {each.title for each in quilt.fabrics if each.is_directional}
        for counts in (cut, wanted):  # a print stands up in the quilt: the page sends its reader to the chart
            for fabric, sides in list(counts):
                if fabric in prints:
                    counts[fabric, ()] += counts.pop((fabric, sides))
                    assert f"Cut the patches of {fabric} by the cutting chart" in told
        assert cut == wanted and sum(cut.values()) == times * len(block.draft.pieces)
        assert f"Print the papers for each block: the cutting chart cuts the cloth for all {times}." in told
    assert on_paper


def test_blocks_on_foundations_ask_for_their_own_tools_and_more_cloth():
    (needs,) = chapters_of(maker("sampler", "foundation"), "needs")
    told = " ".join(words_of([needs]))
    assert "Thin paper" in told and "template" not in told.lower()
    by_templates = {each.fabric: each.used for each in maker("sampler").plan.fabrics}
    on_papers = {each.fabric: each.used for each in maker("sampler", "foundation").plan.fabrics}
    assert all(on_papers[fabric] >= used for fabric, used in by_templates.items())
    assert sum(on_papers.values()) > sum(by_templates.values())


def test_sewing_over_papers_asks_for_its_own_tools_and_as_many_papers_as_blocks():
    (needs,) = chapters_of(maker("sampler", "papers"), "needs")
    assert "basting thread" in " ".join(words_of([needs]))
    (chapter,) = [
        each for each in book(maker("sampler", "papers")).chapters if each.title == "Ohio Star: paper pieces"
    ]
    told = " ".join(words_of([chapter]))
    assert "These are the papers of one block. The quilt has 3: print them for each" in told
    assert "Sand linen" in told and "background," not in told  # papers bear the quilt's cloths


CUT = ("needs", "chart")


def test_over_papers_nothing_is_sewn_many_at_a_time_and_no_template_is_asked_for():
    """Offers are sewn by machine before they are cut, and no template is printed (common practice, no
    published source)."""
    by_template, over_papers = (
        " ".join(words_of([each for part in CUT for each in chapters_of(maker("sampler", way), part)]))
        for way in ("templates", "papers")
    )
    assert "two at a time" in by_template.lower() and "two at a time" not in over_papers.lower()
    for word in ("Template plastic", "the template sheets are for checking", "Hole punch"):
        assert word not in over_papers
    round_papers = "‘round the template’ is round the paper"
    assert round_papers not in by_template
    assert (round_papers in over_papers) == ("A template, for" in over_papers)


def test_mirrored_blocks_are_told_where_the_block_is_sewn():
    said, _ = steps_of("sampler", "Tidewater Vane")
    assert any(line.startswith("Make ") and line.endswith("counts here are for one.") for line in said)
    assert "1 of them is mirrored: what lies left in the pictures lies right in it." in said


@pytest.mark.parametrize("name", NAMES)
def test_parts_of_the_top_are_measured_as_the_chart_cuts_them(name):
    """A key and a size of the steps are a key and a size of the chart, of the same fabric."""
    quilt, plan = planned(name)
    (chapter,) = chapters_of(maker(name), "rows")
    (table,) = [part for part in chapter.parts if isinstance(part, Table)]
    cuts = {(each.title, row.key): row for each in fabric_cuts(quilt, plan, INCHES) for row in each.rows}
    keyed = [row.cells for row in table.rows if row.cells[4]]
    assert len(keyed) == sum(row.cells[0].startswith("P") for row in table.rows)
    for label, count, what, fabric, key, size, _ in keyed:
        row = cuts[fabric, key]
        assert row.need is not None and single_word(row.need.what) == what, label
        assert int(count) == row.need.count + row.need.reversed
        assert size_words(row.cut, by_ruler(plan.ruler_step)) in size or row.cut.kind == "template"


def test_what_is_cut_large_is_trimmed_when_it_is_square():
    """Side and corner triangles of a set on point are cut large; the middle is trimmed once, when whole."""
    _, made = sewn("on point")
    trims = [line for card in cards("on point") for line in card.lines if line.startswith("Trim to")]
    assert any("beyond the blocks’ points" in line for line in trims)
    slanted = next(stage for stage in made.stages if stage.what == "slantwise")
    names = {made.row_names[row.makes] for row in slanted.rows}
    apart = [card for card in cards("on point") if card.title.split(" ·")[0] in names]
    assert apart and not any(line.startswith("Trim") for card in apart for line in card.lines)
    (chapter,) = chapters_of(maker("on point"), "rows")
    said = [part.text for part in chapter.parts if isinstance(part, Paragraph)]
    assert any(line.startswith("Lay corner triangles with the middle") for line in said)


@pytest.mark.parametrize("name", NAMES)
def test_a_storage_card_lies_on_one_page(name):
    pages = set_chapters(part_of(maker(name), "card", SheetOptions()), SheetOptions()).pages
    for page in pages:
        titles = [mark for mark in texts(page) if mark.role == "section"]
        assert len(titles) == len(paths(page, "cut-off"))


def test_a_page_names_what_goes_on_and_what_begins():
    assert page_names("Lock Gate: steps", ["Lock Gate: drafting exercise"]) == [
        "Lock Gate: steps, continued",
        "drafting exercise",
    ]
    assert page_names("", ["Ohio Star: steps"]) == ["Ohio Star: steps"]
    assert page_names("", ["Safety", "Glossary"]) == ["safety", "glossary"]
    assert page_names("Counts", []) == ["counts, continued"]


def test_names_hide_no_narrow_part_of_a_column():
    """The geese at the sides of a quilt on point are narrower than their names."""
    for card in cards("on point"):
        parts = [box(*extent(mark)) for mark in card.picture.marks if mark.role == "part"]
        plates = [box(*extent(mark)) for mark in card.picture.marks if mark.role == "plate"]
        for part, plate in zip(parts, plates, strict=False):
            assert part.intersection(plate).area < 0.9 * part.area, card.title


@pytest.mark.parametrize(("way", "words"), [
    ("foundation", "trace the lines through"), ("papers", "print on the cloth"),
])  # fmt: skip
def test_a_mirrored_block_is_sewn_on_papers_turned_over(way, words):
    """Papers are printed mirrored, so that a mirrored block wants them as they look."""
    told = [
        chapter.title.partition(":")[0] for chapter in chapters_of(maker("sampler", way), "blocks")
        if chapter.title.endswith((": foundations", ": paper pieces"))
        and words in " ".join(words_of([chapter]))
    ]  # fmt: skip
    assert told == ["Tidewater Vane"]


@pytest.mark.parametrize("name", NAMES)
def test_who_does_not_see_the_cutting_pictures_is_told_every_step(name):
    (chapter,) = chapters_of(maker(name), "cutting")
    said = {mark.text for leaf in chapter.sheets for mark in leaf.marks if isinstance(mark, TextMark)}
    told = [part for part in chapter.told if isinstance(part, List)]
    cloths = [cloth for fabric in planned(name)[1].fabrics for cloth in fabric.cloths]
    assert len(told) == len(cloths)
    for part, cloth in zip(told, cloths, strict=True):
        steps = cutting_steps(cloth)
        assert len(part.texts) == len(steps)
        assert all(
            instruction_words(INCHES, step.slice.instructions) in text
            for step, text in zip(steps, part.texts, strict=True)
        )
    assert {part.title for part in chapter.told if isinstance(part, Section)} <= said
