"""What `explain --format json` says, field by field: the form that LANGUAGE.md fixes, and keys added to it.

Lengths are inches as JSON numbers; x right, y down, from the block's top left. Outlines run clockwise as seen
without a closing repeat; arcs are flattened to 0.001in there and given exactly beside them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import atan2, degrees, radians
from typing import Protocol

from ... import __version__
from ...cutting.methods.method import Method
from ...cutting.methods.rotary import template_method_of
from ...cutting.model import Template
from ...drafting.curves import tangent_at_end
from ...drafting.fingerprint import fingerprint_of
from ...drafting.model import Draft, Member, Piece, Side, UnitPlacement
from ...drafting.stroke import is_corner
from ...words.say import Say, by_ruler
from ...words.work.cuts import then_words
from ...words.work.reasons import reason_words
from .report_numbers import Record, arcs, counts, default_records, number, numbers, outline
from .report_sewing import Sewn, sewing_records


class Compiled(Sewn, Protocol):
    """A drafted block with its templates and how it goes together, and whether another file holds it."""

    @property
    def from_elsewhere(self) -> bool:
        """Whether the block was used, not written, in the file compiled."""
        ...


def report(blocks: Iterable[Compiled], ruler: Fraction) -> Record:
    """The report on blocks: the file's own in order, then those used from elsewhere.

    `ruler` is what the marks of the maker's ruler are apart, in inches.
    """
    return {"piecewright": __version__, "blocks": [block_record(each, ruler) for each in blocks]}


def block_record(compiled: Compiled, ruler: Fraction) -> Record:
    """One block, cut by a ruler of such marks."""
    draft = compiled.draft
    labels = {member.piece: (shape.label, member) for shape in draft.shapes for member in shape.members}
    return {
        "title": draft.title,
        "version": draft.version,
        "fingerprint": fingerprint_of(draft),
        "finished": {"width": number(draft.width), "height": number(draft.height)},
        "from_elsewhere": compiled.from_elsewhere,
        "family": list(draft.family),
        "also": list(draft.also),
        "maker": draft.maker,
        "notes": list(draft.notes),
        "faces": draft.faces,
        "uses": [{"title": title, "version": version} for title, version in draft.uses],
        "grid": {"across": numbers(draft.rules_across), "down": numbers(draft.rules_down)},
        "outline": outline(draft.outline),
        "outline_arcs": arcs(draft.outline),
        "pieces": [piece_record(each, *labels[each.number]) for each in draft.pieces],
        "templates": [template_record(each, draft, ruler) for each in compiled.templates],
        "units": [unit_record(each) for each in draft.units],
        **sewing_records(compiled),
        "allowance": number(draft.allowance),
        "trim": {
            "style": draft.trim.style,
            "limit": number(draft.trim.limit),
            "dots": number(draft.trim.dots),
        },
        "defaults": default_records(draft.defaults),
    }


def piece_record(piece: Piece, label: str, member: Member) -> Record:
    """One piece, finished size, where it lies in the block."""
    edges = [side.edge for side in piece.ring]
    record: Record = {
        "number": piece.number,
        "name": piece.name,
        "fabric": piece.fabric,
        "template": label,
        "reversed": member.reversed,
        "turned": number(member.turned),
        "outline": outline(edges),
        "arcs": arcs(edges),
        "area": number(piece.area),
        "unit": piece.unit,
    }
    if piece.holes:
        record["holes"] = [outline(side.edge for side in ring) for ring in piece.holes]
    return record


def template_record(template: Template, draft: Draft, ruler: Fraction) -> Record:
    """One template. `arcs` are those of the finished outline, `cut_arcs` those of the cut one."""
    ring = draft.pieces[template.pieces[0] - 1].ring
    record: Record = {
        "label": template.label,
        "cut": template.cut_count,
        "cut_reversed": template.reversed_count,
        **counts(template.cut_count, template.reversed_count),
        "fabrics": {each.fabric: each.cut + each.reversed for each in template.counts},
        "fabrics_reversed": {each.fabric: each.reversed for each in template.counts if each.reversed},
        "finished_outline": outline(template.sew),
        "arcs": arcs(template.sew),
        "cut_outline": outline(template.cut),
        "cut_arcs": arcs(template.cut),
        "reversible": template.reversible,
        "pieces": list(template.pieces),
        "sides": [side_record(each) for each in ring],
        "angles": [number(each) for each in corner_angles(ring)],
        "grain": [{"heading": number(each.heading), "pieces": list(each.pieces)} for each in template.grain],
        "method": method_record(template_method_of(draft, template, ruler), by_ruler(ruler)),
    }
    if template.sew_holes:
        record["holes"] = [outline(ring) for ring in template.sew_holes]
        record["cut_holes"] = [outline(ring) for ring in template.cut_holes]
    return record


def method_record(method: Method, say: Say) -> Record:
    """How a template's pieces are cut singly: the box that the cutter measures, and what it gives."""
    record: Record = {
        "kind": method.kind,
        "width": number(method.width),
        "height": number(method.height),
        "yields": method.yields,
        "excess": number(method.excess),
        "reason": reason_words(say, method.reason),
        "then": then_words(say, method.then),
    }
    if method.strip is not None:
        record["strip"] = number(method.strip)
    if method.angle is not None:
        record["angle"] = number(method.angle)
    return record


def side_record(side: Side) -> Record:
    """One finished side: its length, its seam allowance, and whether it lies on the block's outside."""
    return {"length": number(side.edge.length), "allowance": number(side.allowance), "outside": side.outside}


def unit_record(unit: UnitPlacement) -> Record:
    """How one unit lies."""
    left, top, right, bottom = numbers(unit.box)
    return {
        "alias": unit.alias,
        "title": unit.title,
        "poses": " ".join(unit.poses),
        "box": {"left": left, "top": top, "right": right, "bottom": bottom},
        "turned": number(unit.turned),
        "mirrored": unit.mirrored,
    }


def corner_angles(ring: Sequence[Side]) -> list[float]:
    """The inner angle in degrees at each corner, clockwise from the first side's start; over 180 where the
    piece bends inward there.

    A ring of one side (a circle) has no corner, and there is none where two sides are tangent.
    """
    if len(ring) < 2:
        return []
    angles = []
    for before, after in zip((ring[-1], *ring[:-1]), ring, strict=True):
        ax, ay = tangent_at_end(before.edge)
        bx, by = (-step for step in tangent_at_end(after.edge.reversed()))
        turn = degrees(atan2(float(ax * by - ay * bx), float(ax * bx + ay * by)))
        if is_corner(radians(turn)):
            angles.append(180 - turn)
    return angles
