"""What `explain` says of a quilt for people: its blocks, what it needs, its counts, every cut, how it is
sewn, every default."""

from __future__ import annotations

from collections.abc import Iterable

from ...diagnostics.visible import visible, width_of
from ...planning import PlannedQuilt
from ...quilt.model import Quilt
from ...words.numbers import ruler_text
from ...words.phrases import count_of
from ...words.work.quilts import setting_words
from ..arrange.options import SheetOptions
from ..chapters.chart import chart
from ..chapters.counts import counts
from ..chapters.needs import needs
from ..quilts.tables import size_text
from ..setting.text import chapter_lines
from ..setting.text_table import ROOM, table, told, wrapped
from ..work import Work
from .quilt_assembly_report import quilt_assembly_lines
from .report_text import default_lines

CHAPTERS = (needs, counts, chart)
"""What of a quilt's sheets can be read at a terminal."""


def quilts_text(planned: Iterable[PlannedQuilt]) -> str:
    """Every quilt, one after the other."""
    return "\n\n\n".join("\n".join(quilt_lines(each)) for each in planned)


def quilt_lines(planned: PlannedQuilt) -> list[str]:
    """The head, the blocks, what its sheets say, the sewing and the defaults of one quilt."""
    work = Work(planned)
    chapters = [chapter for each in CHAPTERS for chapter in each(work, SheetOptions())]
    lines = [*head_lines(planned.quilt), "", "Blocks", *block_table(planned.quilt), *chapter_lines(chapters)]
    lines += quilt_assembly_lines(planned.assembly)
    return lines + default_lines(planned.quilt.defaults)


def head_lines(quilt: Quilt) -> list[str]:
    """Title, colourway, size and counts, then what the writer says of it."""
    colours = f", {visible(quilt.colourway)}" if quilt.colourway else ""
    title = f"{visible(quilt.title)}{colours}, version {quilt.version}"
    size = f"{ruler_text(quilt.width)} x {ruler_text(quilt.height)}"
    pieces = count_of(len(quilt.pieces), "piece")
    lines = [
        *wrapped(title),
        "=" * min(width_of(title), ROOM),
        *wrapped(f"Finished {size}; {setting_words(quilt.setting)}; {pieces} in the top."),
    ]
    said = (("Maker", quilt.maker), *(("Note", note) for note in quilt.notes))
    return lines + [line for what, value in said if value for line in told(what, value, indent="")]


def block_table(quilt: Quilt) -> list[str]:
    """Every block at every size, with how many there are."""
    rows = [
        (
            block.draft.title,
            str(block.draft.version),
            size_text(block.draft.width, block.draft.height),
            str(count),
        )
        for block, count in zip(quilt.blocks, quilt.block_counts, strict=True)
    ]
    return table(("block", "version", "finished", "how many"), rows)
