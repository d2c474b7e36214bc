"""Notes are printed whole: on the sheets of a block, of a quilt, and in both their booklets."""

from __future__ import annotations

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.diagnostics.source import Source
from piecewright.language.limits import NOTE_LETTERS
from piecewright.pipeline import compile_file
from piecewright.sheets.arrange.block_sheets import arrange_block
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.booklets import booklet
from piecewright.sheets.page import Document, TextMark
from piecewright.sheets.setting.pages import set_book
from support.arranged import extent
from support.check import DictShelf
from support.works import quilt_sheets, work_of_block

SHORT = "Press towards the dark side."
LONG = " ".join(f"{number} pins;" for number in range(1, 250))[:NOTE_LETTERS].rstrip()
UNBROKEN = "selvedge" * (NOTE_LETTERS // 8)
NOTES = (SHORT, LONG, UNBROKEN, LONG)


def text(*notes: str) -> str:
    said = "\n".join(f'note "{note}"' for note in notes)
    return f"""\
edition 1
block "Slack Tide" {{
  finished 8in
  {said}
  seam top-left -- bottom-right
}}
quilt "Tide Table" {{
  use "Slack Tide" as tide
  fabric background
  {said}
  set straight 2 across 2 down {{ alternate tide }}
}}
"""


def made(*notes: str):
    outcome = compile_file(Source("tide.quilt", text(*notes)), DictShelf({}))
    assert outcome.value is not None, outcome.diagnostics
    return outcome.value


def documents(compiled) -> dict[str, Document]:
    block, quilt = compiled.blocks[0], compiled.quilts[0]
    return {
        "block": arrange_block(block.draft, block.templates, SheetOptions()),
        "booklet": set_book(booklet(work_of_block(block), SheetOptions()), SheetOptions()),
        "quilt": quilt_sheets(quilt, plan_cutting(quilt).value),
    }


def words_of(document: Document) -> str:
    """All that is printed, in order, without blanks."""
    return "".join(
        mark.text
        for page in document.pages
        for mark in page.marks
        if isinstance(mark, TextMark) and mark.role in ("note", "text")
    ).replace(" ", "")


@pytest.mark.parametrize("notes", [(SHORT,), NOTES])
def test_every_word_of_every_note_is_printed_on_the_paper(notes):
    for name, document in documents(made(*notes)).items():
        lines = [
            mark
            for page in document.pages
            for mark in page.marks
            if isinstance(mark, TextMark) and mark.role == "note"
        ]
        printed = (
            words_of(document)
            if name == "booklet"
            else "".join(mark.text for mark in lines if "go on on" not in mark.text).replace(" ", "")
        )
        for note in notes:
            assert note.replace(" ", "") in printed, name
        for page in document.pages:
            for mark in page.marks:
                left, top, right, bottom = extent(mark)
                assert min(left, top, page.width - right, page.height - bottom) >= 17.5, (name, mark)


def test_one_short_note_takes_no_page_more():
    for (name, plain), noted in zip(documents(made()).items(), documents(made(SHORT)).values(), strict=True):
        assert len(plain.pages) == len(noted.pages), name
