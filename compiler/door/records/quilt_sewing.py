"""How a quilt's top is sewn: its parts, and its rows and borders, stage by stage."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ...quilt.assembly_model import Kind, QuiltAssembly
from ...quilt.assembly_model import Row as ModelRow
from ...words.work.quilts import kept_words, kind_words, stage_words, way_word
from .sewing import Meetings, Proof, Step, meetings_of, proof_of, steps_of
from .shapes import Extent, record_of


@dataclass(frozen=True, slots=True)
class BlockSewing:
    """How a block of the quilt goes together, in the order of the quilt's `blocks`."""

    seams: int
    set_in_seams: int
    proof: Proof


@dataclass(frozen=True, slots=True)
class Part:
    """Blocks, or strips and other shapes of one cloth, that are alike: Q1 of blocks, P1 of cloth. `block` is
    an index into the quilt's `blocks`, None of cloth; `fabrics` the cloth, or a block's by role."""

    name: str
    what: str
    part: str
    block: int | None
    mirrored: bool
    fabrics: Mapping[str, str] | str
    count: int
    finished: Extent
    unfinished: Extent


@dataclass(frozen=True, slots=True)
class Row:
    """Parts joined side by side, `batch` of them alike. `makes` is the name of it in `steps`; `turned`:
    degrees clockwise by which each part lies turned; `way` how the parts lie. `kept_for`: how many are put by
    for later stages."""

    name: str
    makes: str
    parts: tuple[str, ...]
    turned: tuple[float, ...]
    way: str
    batch: int
    kept_for: Mapping[str, int]
    steps: tuple[int, ...]
    seam_length: float
    finished: Extent
    unfinished: Extent


@dataclass(frozen=True, slots=True)
class Stage:
    """What is made before the next thing: 'Rows', 'Centre', 'Border 1'."""

    title: str
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Top:
    """The top's parts, its stages row by row, every seam, and what sewing it again found."""

    proof: Proof
    blocks: tuple[BlockSewing, ...]
    parts: tuple[Part, ...]
    stages: tuple[Stage, ...]
    seams: int
    set_in_seams: int
    steps: tuple[Step, ...]
    meetings: Meetings


def top_of(made: QuiltAssembly) -> Top:
    """The record of a quilt's assembly."""
    return record_of(
        Top,
        made.assembly,
        proof=proof_of(made.proof),
        blocks=tuple(
            BlockSewing(each.assembly.seams, each.assembly.set_in_seams, proof_of(each.proof))
            for each in made.blocks
        ),
        parts=tuple(map(_part_of, made.kinds)),
        stages=tuple(
            Stage(stage_words(stage), tuple(_row_of(made, row) for row in stage.rows))
            for stage in made.stages
        ),
        steps=steps_of(made.assembly, made.pressing),
        meetings=meetings_of(made.pressing),
    )


def _part_of(kind: Kind) -> Part:
    return record_of(
        Part,
        kind,
        name=kind.label,
        what=kind_words(kind),
        fabrics=dict(kind.fabrics) if kind.block is not None else kind.fabric,
    )


def _row_of(made: QuiltAssembly, row: ModelRow) -> Row:
    names = made.row_names
    return record_of(
        Row,
        row,
        name=names[row.makes],
        parts=tuple(names.get(part, part) for part in row.parts),
        way=way_word(row.way),
        kept_for=kept_words(made, row),
    )
