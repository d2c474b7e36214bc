"""How a quilt goes together, in `explain`: the parts of its top, its rows, its borders.

Names are those of the booklet: Q1 of blocks, P1 of cloth, R1 of rows.
"""

from __future__ import annotations

from ...quilt.assembly_model import QuiltAssembly, Stage
from ...sewing.model import Size
from ...words.phrases import count_of
from ...words.work.pressing import meeting_words
from ...words.work.proofs import proof_text
from ...words.work.quilts import kept_words, kind_words, part_words, stage_words, way_word
from ..quilts.words import about
from ..setting.text_table import table, wrapped


def quilt_assembly_lines(made: QuiltAssembly) -> list[str]:
    """The parts of the top, then each row and border in the order of sewing."""
    rows = [
        (kind.label, str(kind.count), kind_words(kind) + (", mirrored" if kind.mirrored else ""),
         _size(kind.unfinished), _size(kind.finished)) for kind in made.kinds
    ]  # fmt: skip
    lines = [
        "",
        *wrapped(f"Sewing: {proof_text(made.proof)}"),
        *table(("part", "how many", "what", "unfinished", "finished"), rows),
    ]
    for stage in made.stages:
        lines += ["", stage_words(stage), *_stage_lines(made, stage)]
    return [*lines, "", *wrapped(f"Pressing: {meeting_words(made.pressing)}")] if made.stages else lines


def _stage_lines(made: QuiltAssembly, stage: Stage) -> list[str]:
    lines = []
    for row in stage.rows:
        parts = part_words(made, row)
        seams = count_of(len(parts) - 1, "seam")
        how = f"{', '.join(parts)} {way_word(row.way)}"
        told = f"{made.row_names[row.makes]}, make {row.batch}: {how}; {seams}"
        kept = "".join(f"; keep {count} for {title}" for title, count in kept_words(made, row).items())
        lines += wrapped(f"{told}; unfinished {_size(row.unfinished)}{kept}", "  ", " " * 6)
    return lines


def _size(size: Size) -> str:
    return f"{about(size.width)} x {about(size.height)}"
