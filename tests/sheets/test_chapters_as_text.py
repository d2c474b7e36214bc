"""Chapters at a terminal: every word of them, in lines of 80 columns."""

from __future__ import annotations

from collections import Counter

import pytest
from piecewright.diagnostics.visible import width_of
from piecewright.sheets.content import Chapter, Column, Row, Table
from piecewright.sheets.setting.text import chapter_lines, table_lines
from piecewright.sheets.setting.words_of import words_of
from support.library import compiled, library_sources
from support.sample_quilts import planned
from support.works import chapters_of, work_of, work_of_block

NAMES = ("needs", "counts", "chart", "rows", "finish", "difficulty", "card", "safety")


def works():
    yield work_of(planned("sampler")[0])
    yield work_of(planned("baby")[0])
    block, *_ = compiled(library_sources()[0]).value
    yield work_of_block(block)


@pytest.mark.parametrize("name", NAMES)
def test_no_word_is_lost_and_no_line_is_too_long(name):
    for work in works():
        for chapter in chapters_of(work, name):
            lines = list(chapter_lines([chapter]))
            assert max(map(width_of, lines)) <= 80
            meant = "".join(words_of([without_captions(chapter)]))  # words may be broken: letters are counted
            assert not Counter(meant.replace(" ", "")) - Counter("".join(lines)), chapter.title


def without_captions(chapter: Chapter) -> Chapter:
    """The chapter, what tells only who hears it left out: tables and pictures stand under words that say the
    same."""
    parts = tuple(
        Table(part.columns, part.rows, "") if isinstance(part, Table) else part
        for part in chapter.parts
        if type(part).__name__ != "Picture"
    )
    return Chapter(chapter.title, parts)


def test_numbers_stand_under_one_another_and_long_words_are_parted():
    table = Table(
        (Column("what", 10.0), Column("many", 10.0, "end")),
        (Row(("a" * 90, "1,000")), Row(("b", "7"), notes=("Or c.",))),
        "",
    )
    head, *lines = table_lines(table)
    ends = {len(line) for line in (head, lines[0], lines[-2])}
    assert len(ends) == 1 and lines[0].endswith("1,000") and lines[-2].endswith(" 7")
    assert "".join(line.split()[0] for line in lines[:2]) == "a" * 90
    assert lines[-1] == "     Or c."
