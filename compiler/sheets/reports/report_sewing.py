"""What `explain --format json` says of sewing: the order, the foundations, and what makes a block hard.

The keys are those that LANGUAGE.md fixes, and others beside them. Inches; places lie in the block.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Protocol

from ...cutting.model import Template
from ...drafting.model import Draft
from ...geometry.edge import Edge, Point
from ...sewing.difficulty import difficulty
from ...sewing.foundations.foundation import foundations
from ...sewing.foundations.foundation_model import Foundations, Section
from ...sewing.model import Assembly, Proof, Size, Step, Unit
from ...sewing.pressing.pressing import press
from ...sewing.pressing.pressing_model import Pressing, PressingPlan
from ...words.say import INCHES
from ...words.work.foundations import refusal_words
from ...words.work.proofs import proof_text
from ..quilts.wearing import own_roles
from .report_numbers import Record, arcs, number, numbers, outline


class Sewn(Protocol):
    """A drafted block with how it goes together."""

    @property
    def draft(self) -> Draft:
        """The drafted block."""
        ...

    @property
    def templates(self) -> tuple[Template, ...]:
        """Its templates."""
        ...

    @property
    def assembly(self) -> Assembly:
        """Its order of sewing."""
        ...

    @property
    def proof(self) -> Proof:
        """What sewing it again found."""
        ...


def sewing_records(sewn: Sewn) -> Record:
    """The keys `assembly`, `foundations` and `difficulty` of one block."""
    return {
        "assembly": assembly_record(sewn),
        "foundations": foundations_record(foundations(sewn.draft, sewn.assembly)),
        "difficulty": difficulty_record(sewn),
    }


def assembly_record(sewn: Sewn) -> Record:
    """The order of sewing with the ways its seams are pressed, and what sewing it again found."""
    assembly, proof = sewn.assembly, sewn.proof
    plan = press(sewn.draft, assembly, own_roles(sewn.draft).lightness)
    return {
        "straight_seams_only": assembly.straight_seams_only,
        "set_in_seams": assembly.set_in_seams,
        "partial_seams": assembly.partial_seams,
        "curved_seams": assembly.curved_seams,
        "seams": assembly.seams,
        "steps": [
            step_record(step, unit, pressing)
            for step, unit, pressing in zip(assembly.steps, assembly.units, plan.seams, strict=True)
        ],
        "meetings": meetings_record(plan),
        "proof": proof_record(proof),
    }


def meetings_record(plan: PressingPlan) -> Record:
    """At how many places seams meet and lie opposite; where they cannot, with the steps that sew them."""
    return {
        "opposite": plan.opposite,
        "all": len(plan.meetings),
        "apart": [
            {"at": numbers(each.at), "steps": list(each.steps)} for each in plan.meetings if not each.opposite
        ],
    }


def proof_record(proof: Proof) -> Record:
    """What sewing it again found."""
    return {"closes": proof.closes, "furthest": number(proof.furthest), "sentence": proof_text(proof)}


def step_record(step: Step, unit: Unit, pressing: Pressing) -> Record:
    """One step; `copies` has the pieces of each of the batch, in one order."""
    return {
        "step": step.step,
        "makes": step.makes,
        "from": list(step.parts),
        "batch": step.batch,
        "seam_length": number(step.seam_length),
        "set_in": step.set_in,
        "unfinished": size_record(step.unfinished),
        "finished": size_record(step.finished),
        "curved": step.curved,
        "seam": path(step.seam),
        "seam_arcs": arcs(step.seam),
        "turns": places(step.turns),
        "stops": places(step.stops),
        "pinned": places(step.eased),
        "partial": None
        if step.partial is None
        else {"opened": step.partial.opened, "at": numbers(step.partial.at)},
        "copies": [list(copy.pieces) for copy in unit.copies],
        "press": {"toward": list(pressing.ways), "reason": pressing.reason},
    }


def foundations_record(found: Foundations) -> Record:
    """Whether the block can be sewn on paper, its sections in order, and the cloth for each patch."""
    return {
        "possible": found.possible,
        "why_not": refusal_words(INCHES, found.why_not),
        "sections": [section_record(each) for each in found.sections],
        "joins": [
            {"first": each.first, "second": each.second, "seam": ends(each.seam)} for each in found.joins
        ],
        "margin": number(found.margin),
    }


def section_record(section: Section) -> Record:
    """One paper: pieces in sewing order, and for each the cloth to cut and the line it is sewn along."""
    return {
        "label": section.label,
        "order": list(section.order),
        "outline": outline(section.outline),
        "patches": [
            {
                "label": each.label,
                "piece": each.piece,
                "fabric": each.fabric,
                "cloth": {"width": number(each.width), "height": number(each.height)},
                "line": None if each.line is None else ends(each.line),
            }
            for each in section.patches
        ],
    }


def difficulty_record(sewn: Sewn) -> Record:
    """Each cause by itself."""
    found = difficulty(sewn.draft, sewn.templates, sewn.assembly)
    return {
        "pieces": found.pieces,
        "templates": found.templates,
        "smallest_angle": number(found.smallest_angle),
        "bias_outside": found.bias_outside,
        "set_in_seams": found.set_in_seams,
        "partial_seams": found.partial_seams,
        "seams_all_round": found.seams_all_round,
        "curved_seams": found.curved_seams,
        "points_that_meet": found.points_that_meet,
        "most_at_one_point": found.most_at_one_point,
    }


def size_record(size: Size) -> Record:
    """Width and height."""
    return {"width": number(size.width), "height": number(size.height)}


def places(points: Iterable[Point]) -> list[list[int | float]]:
    """Each place as two numbers."""
    return [numbers(point) for point in points]


def path(edges: Sequence[Edge]) -> list[list[int | float]]:
    """The places along a seam, arcs flattened, its end included."""
    return [*outline(edges), numbers(edges[-1].end)]


def ends(edge: Edge) -> list[list[int | float]]:
    """Where a straight edge starts and ends."""
    return places((edge.start, edge.end))
