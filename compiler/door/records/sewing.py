"""How a block is sewn: its steps, its foundations. A quilt's top has steps of the same kind."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, ClassVar

from ...drafting.model import Draft
from ...geometry.edge import Edge, Point
from ...geometry.stroke import edges_apart
from ...sewing.foundations.foundation import foundations
from ...sewing.foundations.foundation_model import Section as ModelSection
from ...sewing.model import Assembly as ModelAssembly
from ...sewing.model import Proof as ModelProof
from ...sewing.pressing.pressing import press
from ...sewing.pressing.pressing_model import PressingPlan
from ...sheets.quilts.wearing import own_roles
from ...words.say import INCHES
from ...words.work.foundations import refusal_words
from ...words.work.proofs import proof_text
from .shapes import ArcSide, Extent, Outline, arcs, outline, path, record_of

if TYPE_CHECKING:
    from ...pipeline import CompiledBlock


@dataclass(frozen=True, slots=True)
class Press:
    """Where each copy's seam is pressed: `toward` the 'first' part, the 'second', or 'open'; and why."""

    toward: tuple[str, ...]
    reason: str


@dataclass(frozen=True, slots=True)
class Partial:
    """A seam left partly open: the step that opened it, and from where."""

    opened: int
    at: Point


@dataclass(frozen=True, slots=True)
class Step:
    """One step of sewing: two parts make a unit, `batch` of them alike, and `copies` has the pieces of each.

    `seams` are what joins them: one, or the two that close a ring; `seam` runs along all of it, and its arcs
    are `seam_arcs`. `turns` are places where it turns, `stops` where it stops at a dot, `pinned` where it is
    eased.
    """

    KEYS: ClassVar = {"parts": "from"}

    step: int
    makes: str
    parts: tuple[str, ...]
    batch: int
    seam_length: float
    set_in: bool
    unfinished: Extent
    finished: Extent
    curved: bool
    seam: Outline
    seam_arcs: tuple[ArcSide, ...]
    seams: tuple[Outline, ...]
    turns: Outline
    stops: Outline
    pinned: Outline
    partial: Partial | None
    copies: tuple[tuple[int, ...], ...]
    press: Press


@dataclass(frozen=True, slots=True)
class Apart:
    """A place where seams meet and cannot lie opposite, and the steps that sew them."""

    at: Point
    steps: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Meetings:
    """At how many places seams meet, at how many of them they lie opposite, and where they cannot."""

    opposite: int
    all: int
    apart: tuple[Apart, ...]


@dataclass(frozen=True, slots=True)
class Proof:
    """What sewing it again found: whether it closes, and how far in inches the furthest corner was off."""

    closes: bool
    furthest: float
    sentence: str


@dataclass(frozen=True, slots=True)
class Assembly:
    """The order of sewing of a block, with the ways its seams are pressed."""

    straight_seams_only: bool
    set_in_seams: int
    partial_seams: int
    curved_seams: int
    seams: int
    steps: tuple[Step, ...]
    meetings: Meetings
    proof: Proof


@dataclass(frozen=True, slots=True)
class Patch:
    """One patch of a foundation: the cloth to cut for it, and the line that it is sewn along."""

    label: str
    piece: int
    fabric: str
    cloth: Extent
    line: Outline | None


@dataclass(frozen=True, slots=True)
class Section:
    """One paper: its pieces in sewing order."""

    label: str
    order: tuple[int, ...]
    outline: Outline
    patches: tuple[Patch, ...]


@dataclass(frozen=True, slots=True)
class SectionJoin:
    """Two sections that are joined, and the seam between them."""

    first: str
    second: str
    seam: Outline


@dataclass(frozen=True, slots=True)
class Foundations:
    """Whether a block can be sewn on paper, and how. `margin`: inches of cloth beyond the allowance."""

    possible: bool
    why_not: str
    sections: tuple[Section, ...]
    joins: tuple[SectionJoin, ...]
    margin: Fraction


def assembly_of(sewn: CompiledBlock) -> Assembly:
    """The order of sewing with the ways its seams are pressed, and what sewing it again found."""
    made = sewn.assembly
    plan = press(sewn.draft, made, own_roles(sewn.draft).lightness)
    return record_of(
        Assembly, made, steps=steps_of(made, plan), meetings=meetings_of(plan), proof=proof_of(sewn.proof)
    )


def steps_of(made: ModelAssembly, plan: PressingPlan) -> tuple[Step, ...]:
    """Every step, with its copies and how they are pressed."""
    return tuple(
        record_of(
            Step,
            step,
            seam=tuple(point for seam in edges_apart(step.seam) for point in path(seam)),
            seam_arcs=arcs(step.seam),
            seams=tuple(path(seam) for seam in edges_apart(step.seam)),
            pinned=step.eased,
            copies=tuple(copy.pieces for copy in unit.copies),
            press=Press(pressing.ways, pressing.reason),
        )
        for step, unit, pressing in zip(made.steps, made.units, plan.seams, strict=True)
    )


def meetings_of(plan: PressingPlan) -> Meetings:
    """Where seams meet."""
    apart = tuple(Apart(each.at, each.steps) for each in plan.meetings if not each.opposite)
    return Meetings(plan.opposite, len(plan.meetings), apart)


def proof_of(proof: ModelProof) -> Proof:
    """What sewing it again found."""
    return Proof(proof.closes, proof.furthest, proof_text(proof))


def foundations_of(draft: Draft, made: ModelAssembly) -> Foundations:
    """Whether the block can be sewn on paper, its sections in order, and the cloth for each patch."""
    found = foundations(draft, made)
    return record_of(
        Foundations,
        found,
        why_not=refusal_words(INCHES, found.why_not),
        sections=tuple(map(_section_of, found.sections)),
        joins=tuple(SectionJoin(each.first, each.second, _ends(each.seam)) for each in found.joins),
    )


def _section_of(section: ModelSection) -> Section:
    patches = tuple(
        record_of(
            Patch,
            each,
            cloth=record_of(Extent, each),
            line=None if each.line is None else _ends(each.line),
        )
        for each in section.patches
    )
    return record_of(Section, section, outline=outline(section.outline), patches=patches)


def _ends(edge: Edge) -> Outline:
    """Where a straight edge starts and ends."""
    return edge.start, edge.end
