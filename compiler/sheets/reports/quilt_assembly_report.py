"""How a quilt goes together, in `explain` and in its numbers: the parts of its top, its rows, its borders.

In JSON lengths are inches; names are those of the booklet: Q1 of blocks, P1 of cloth, R1 of rows.
"""

from __future__ import annotations

from ...quilt.assembly_model import Kind, QuiltAssembly, Row, Stage
from ...sewing.model import Size
from ...words.phrases import count_of
from ...words.work.pressing import meeting_words
from ...words.work.proofs import proof_text
from ..quilts.words import about
from .report_numbers import Record, number
from .report_sewing import meetings_record, proof_record, size_record, step_record
from .text_table import table, wrapped


def quilt_assembly_record(made: QuiltAssembly) -> Record:
    """The top's parts, its stages row by row, every seam, and what sewing it again found."""
    assembly, plan = made.assembly, made.pressing
    return {
        "proof": proof_record(made.proof),
        "blocks": [
            {
                "seams": each.assembly.seams,
                "set_in_seams": each.assembly.set_in_seams,
                "proof": proof_record(each.proof),
            }
            for each in made.blocks
        ],
        "parts": [_part_record(kind) for kind in made.kinds],
        "stages": [
            {"title": stage.title, "rows": [_row_record(made, row) for row in stage.rows]}
            for stage in made.stages
        ],
        "seams": assembly.seams,
        "set_in_seams": assembly.set_in_seams,
        "steps": [
            step_record(*each) for each in zip(assembly.steps, assembly.units, plan.seams, strict=True)
        ],
        "meetings": meetings_record(plan),
    }


def _part_record(kind: Kind) -> Record:
    return {
        "name": kind.label,
        "what": kind.what,
        "part": kind.part,
        "block": kind.block,
        "mirrored": kind.mirrored,
        "fabrics": dict(kind.fabrics) if kind.block is not None else kind.fabric,
        "count": kind.count,
        "finished": size_record(kind.finished),
        "unfinished": size_record(kind.unfinished),
    }


def _row_record(made: QuiltAssembly, row: Row) -> Record:
    return {
        "name": made.row_names[row.makes],
        "makes": row.makes,
        "parts": [made.row_names.get(part, part) for part in row.parts],
        "turned": [number(turned) for turned in row.turned],
        "way": row.way,
        "batch": row.batch,
        "kept_for": made.kept_for(row),
        "steps": list(row.steps),
        "seam_length": number(row.seam_length),
        "finished": size_record(row.finished),
        "unfinished": size_record(row.unfinished),
    }


def quilt_assembly_lines(made: QuiltAssembly) -> list[str]:
    """The same for people: the parts of the top, then each row and border in the order of sewing."""
    rows = [
        (kind.label, str(kind.count), kind.what + (", mirrored" if kind.mirrored else ""),
         _size(kind.unfinished), _size(kind.finished)) for kind in made.kinds
    ]  # fmt: skip
    lines = [
        "",
        *wrapped(f"Sewing: {proof_text(made.proof)}"),
        *table(("part", "how many", "what", "unfinished", "finished"), rows),
    ]
    for stage in made.stages:
        lines += ["", stage.title, *_stage_lines(made, stage)]
    return [*lines, "", *wrapped(f"Pressing: {meeting_words(made.pressing)}")] if made.stages else lines


def _stage_lines(made: QuiltAssembly, stage: Stage) -> list[str]:
    lines = []
    for row in stage.rows:
        parts = made.names_in(row)
        seams = count_of(len(parts) - 1, "seam")
        told = f"{made.row_names[row.makes]}, make {row.batch}: {', '.join(parts)} {row.way}; {seams}"
        kept = "".join(f"; keep {count} for {title}" for title, count in made.kept_for(row).items())
        lines += wrapped(f"{told}; unfinished {_size(row.unfinished)}{kept}", "  ", " " * 6)
    return lines


def _size(size: Size) -> str:
    return f"{about(size.width)} x {about(size.height)}"
