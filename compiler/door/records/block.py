"""A block: its pieces, its templates, and how units lie in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from ...cutting.methods.method import Method as ModelMethod
from ...cutting.methods.rotary import template_method_of
from ...cutting.model import Template as ModelTemplate
from ...drafting.fingerprint import fingerprint_of
from ...drafting.model import Draft, Member, UnitPlacement
from ...drafting.model import Piece as ModelPiece
from ...drafting.model import Side as ModelSide
from ...geometry.corners import corner_angles
from ...looks.colour import to_hex
from ...measure.tolerance import Number
from ...sewing.difficulty import Difficulty, difficulty
from ...sheets.arrange.swatches import fills_of
from ...words.say import Say, by_ruler
from ...words.work.cuts import then_words
from ...words.work.reasons import reason_words
from ...words.work.shapes import shape_word
from .sewing import Assembly, Foundations, Step, assembly_of, foundations_of
from .shapes import ArcSide, Default, Extent, Outline, arcs, defaults_of, outline, record_of

if TYPE_CHECKING:
    from ...pipeline import CompiledBlock


@dataclass(frozen=True, slots=True)
class Use:
    """A block that another uses."""

    title: str
    version: int


@dataclass(frozen=True, slots=True)
class Grid:
    """Where the lines of a block's grid lie, both sides of the block included."""

    across: tuple[Number, ...]
    down: tuple[Number, ...]


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece, finished size, where it lies in the block. `turned` is in degrees clockwise from how its
    template lies; `unit` is the title of the block that it came with, or ''."""

    number: int
    name: str | None
    fabric: str
    template: str
    reversed: bool
    turned: float
    outline: Outline
    arcs: tuple[ArcSide, ...]
    area: Number
    unit: str
    holes: tuple[Outline, ...] = ()


@dataclass(frozen=True, slots=True)
class Side:
    """One finished side: its length, its seam allowance, and whether it lies on the block's outside."""

    length: float
    allowance: Fraction
    outside: bool


@dataclass(frozen=True, slots=True)
class Grain:
    """Which way the grain runs, in degrees clockwise from up, and in which pieces."""

    heading: float
    pieces: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Method:
    """How a template's pieces are cut singly: the box that the cutter measures, and what it gives. `excess`
    is cut off each; `strip` is the width of the strip that boxes are cut from, `angle` that of the cuts."""

    kind: str
    width: Number
    height: Number
    yields: int
    excess: float
    reason: str
    then: str
    strip: Number | None = None
    angle: float | None = None


@dataclass(frozen=True, slots=True)
class Template:
    """One template: how many pieces of it are cut in which fabrics, its outlines, and how it is cut.

    `arcs` are those of the finished outline, `cut_arcs` those of the cut one. `sides` and `angles` are those
    of its first piece, clockwise.
    """

    label: str
    cut: int
    cut_reversed: int
    as_drawn: int
    reversed: int
    in_all: int
    fabrics: Mapping[str, int]
    fabrics_reversed: Mapping[str, int]
    finished_outline: Outline
    arcs: tuple[ArcSide, ...]
    cut_outline: Outline
    cut_arcs: tuple[ArcSide, ...]
    reversible: bool
    pieces: tuple[int, ...]
    sides: tuple[Side, ...]
    angles: tuple[float, ...]
    grain: tuple[Grain, ...]
    method: Method
    holes: tuple[Outline, ...] = ()
    cut_holes: tuple[Outline, ...] = ()


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle in the block."""

    left: Number
    top: Number
    right: Number
    bottom: Number


@dataclass(frozen=True, slots=True)
class Unit:
    """How one unit lies: `poses` as it was written, `turned` in degrees clockwise."""

    alias: str
    title: str
    poses: str
    box: Box
    turned: float
    mirrored: bool


@dataclass(frozen=True, slots=True)
class Trim:
    """How the points of templates are trimmed, and how wide dots are."""

    style: str
    limit: Fraction
    dots: Fraction


@dataclass(frozen=True, slots=True)
class Role:
    """A role and how it is drawn: `colour` as `#rrggbb`; `looks` is 'guessed' where that was read off its
    name."""

    name: str
    colour: str
    texture: str
    looks: str


@dataclass(frozen=True, kw_only=True)
class BlockRecord:
    """Everything about a block. `faces`: the way it faces, where that was written. `from_elsewhere`: it was
    used by the file, but written in another. `fingerprint` follows from its outlines alone."""

    title: str
    version: int
    fingerprint: str
    finished: Extent
    from_elsewhere: bool
    family: tuple[str, ...]
    also: tuple[str, ...]
    maker: str
    notes: tuple[str, ...]
    faces: str | None
    uses: tuple[Use, ...]
    grid: Grid
    outline: Outline
    outline_arcs: tuple[ArcSide, ...]
    roles: tuple[Role, ...]
    pieces: tuple[Piece, ...]
    templates: tuple[Template, ...]
    units: tuple[Unit, ...]
    assembly: Assembly
    foundations: Foundations
    difficulty: Difficulty
    allowance: Fraction
    trim: Trim
    defaults: tuple[Default, ...]

    @property
    def steps(self) -> tuple[Step, ...]:
        """The order of sewing, those of `assembly`."""
        return self.assembly.steps


def block_of(compiled: CompiledBlock, ruler: Fraction) -> BlockRecord:
    """The record of a block, cut by a ruler whose marks are that far apart."""
    draft = compiled.draft
    labels = {member.piece: (shape.label, member) for shape in draft.shapes for member in shape.members}
    return record_of(
        BlockRecord,
        draft,
        fingerprint=fingerprint_of(draft),
        finished=Extent(draft.width, draft.height),
        from_elsewhere=compiled.from_elsewhere,
        uses=tuple(Use(*each) for each in draft.uses),
        grid=Grid(draft.rules_across, draft.rules_down),
        outline=outline(draft.outline),
        outline_arcs=arcs(draft.outline),
        roles=tuple(
            Role(name, to_hex(fill.ground), fill.texture, "guessed") for name, fill in fills_of(draft).items()
        ),
        pieces=tuple(_piece_of(each, *labels[each.number]) for each in draft.pieces),
        templates=tuple(_template_of(each, draft, ruler) for each in compiled.templates),
        units=tuple(_unit_of(each) for each in draft.units),
        assembly=assembly_of(compiled),
        foundations=foundations_of(draft, compiled.assembly),
        difficulty=difficulty(draft, compiled.templates, compiled.assembly),
        defaults=defaults_of(draft.defaults),
    )


def _piece_of(piece: ModelPiece, label: str, member: Member) -> Piece:
    edges = [side.edge for side in piece.ring]
    return record_of(
        Piece,
        piece,
        template=label,
        reversed=member.reversed,
        turned=member.turned,
        outline=outline(edges),
        arcs=arcs(edges),
        holes=tuple(outline(side.edge for side in ring) for ring in piece.holes),
    )


def _template_of(template: ModelTemplate, draft: Draft, ruler: Fraction) -> Template:
    ring = draft.pieces[template.pieces[0] - 1].ring
    return record_of(
        Template,
        template,
        cut=template.cut_count,
        cut_reversed=template.reversed_count,
        as_drawn=template.cut_count,
        reversed=template.reversed_count,
        in_all=template.cut_count + template.reversed_count,
        fabrics={each.fabric: each.cut + each.reversed for each in template.counts},
        fabrics_reversed={each.fabric: each.reversed for each in template.counts if each.reversed},
        finished_outline=outline(template.sew),
        arcs=arcs(template.sew),
        cut_outline=outline(template.cut),
        cut_arcs=arcs(template.cut),
        sides=tuple(map(_side_of, ring)),
        angles=tuple(corner_angles([side.edge for side in ring])),
        grain=tuple(Grain(each.heading, each.pieces) for each in template.grain),
        method=_method_of(template_method_of(draft, template, ruler), by_ruler(ruler)),
        holes=tuple(map(outline, template.sew_holes)),
        cut_holes=tuple(map(outline, template.cut_holes)) if template.sew_holes else (),
    )


def _method_of(method: ModelMethod, say: Say) -> Method:
    return record_of(
        Method,
        method,
        kind=shape_word(method.kind),
        reason=reason_words(say, method.reason),
        then=then_words(say, method.then),
    )


def _side_of(side: ModelSide) -> Side:
    return Side(side.edge.length, side.allowance, side.outside)


def _unit_of(unit: UnitPlacement) -> Unit:
    return Unit(unit.alias, unit.title, " ".join(unit.poses), Box(*unit.box), unit.turned, unit.mirrored)
