"""A quilt in `explain --format json`: the form that LANGUAGE fixes, and keys added to it.

Lengths are inches as JSON numbers. `cutting` holds every cut of the chart, `counts` every piece of the top.
"""

from __future__ import annotations

from ...cutting.needs import BackingNeed
from ...cutting.plan_model import Cut, CuttingPlan, FabricPlan, Offer
from ...measure.tolerance import Number
from ...quilt.model import Quilt
from ...words.say import Say, by_ruler
from ...words.work.cloth import bought_words
from ...words.work.cuts import lies_words, then_words
from ...words.work.offers import making_words, way_words
from ...words.work.reasons import reason_words
from ..quilts.tables import (
    CountGroup,
    CutRow,
    FabricCuts,
    count_groups,
    fabric_cuts,
    keys_of,
    need_of,
    template_name,
)
from ..quilts.thread import HAND_SHARE, MACHINE_SHARE, seam_inches, thread_yards
from .quilt_assembly_report import quilt_assembly_record
from .quilt_report_text import Planned
from .report_numbers import Record, counts, default_records, number


def quilt_report(quilt: Quilt, plan: CuttingPlan) -> Record:
    """One quilt in one colourway."""
    cuts, groups = fabric_cuts(quilt, plan), count_groups(quilt, plan)
    record: Record = {
        "title": quilt.title,
        "version": quilt.version,
        "colourway": quilt.colourway,
        "finished": size_record(quilt.width, quilt.height),
        "setting": quilt.setting,
        "maker": quilt.maker,
        "notes": list(quilt.notes),
        "blocks": block_records(quilt),
        "pieces": sum(group.pieces for group in groups),
        "ruler_step": number(plan.ruler_step),
        "cutting": [cut_record(quilt, row, by_ruler(plan.ruler_step)) for each in cuts for row in each.rows],
        "counts": [record for group in groups for record in count_records(group)],
        "fabrics": [{**fabric_record(each), **print_record(each, plan)} for each in cuts],
        "thread": {
            "seams": number(seam_inches(quilt)),
            "machine_yards": thread_yards(quilt, MACHINE_SHARE),
            "hand_yards": thread_yards(quilt, HAND_SHARE),
        },
        "defaults": default_records(quilt.defaults),
    }
    if quilt.binding is not None:
        record["binding"] = {
            "fabric": quilt.binding.fabric,
            "strip_width": number(quilt.binding.strip_width),
            "length": number(quilt.binding.length),
            "bias": quilt.binding.bias,
        }
    for name, need in (("backing", quilt.backing), ("batting", quilt.batting)):
        if need is not None:
            record[name] = whole_record(need)
    return record


def planned_report(planned: Planned) -> Record:
    """One quilt with how it goes together."""
    return {**quilt_report(planned.quilt, planned.plan), "assembly": quilt_assembly_record(planned.assembly)}


def size_record(width: Number, height: Number) -> Record:
    """A width and a height."""
    return {"width": number(width), "height": number(height)}


def block_records(quilt: Quilt) -> list[Record]:
    """Every block at every size, with how many the quilt has."""
    return [
        {
            "title": block.draft.title,
            "version": block.draft.version,
            "finished": size_record(block.draft.width, block.draft.height),
            "count": count,
        }
        for block, count in zip(quilt.blocks, quilt.block_counts, strict=True)
    ]


def cut_record(quilt: Quilt, row: CutRow, say: Say) -> Record:
    """One cut of the chart."""
    cut: Cut = row.cut
    need = need_of(quilt, cut)
    turned = need.reversed if need else 0
    record: Record = {
        "fabric": cut.fabric,
        "key": row.key,
        "part": cut.part,
        "kind": cut.kind,
        "width": number(cut.width),
        "height": number(cut.height),
        "cuts": cut.cuts,
        "pieces": cut.pieces,
        **counts(cut.pieces - turned, turned),
        "template": template_name(quilt, row),
        "for": row.purpose,
        "yields": cut.yields,
        "excess": number(cut.excess),
        "reason": reason_words(say, cut.reason),
        "then": then_words(say, cut.then),
        "offers": [offer_record(each, say) for each in cut.offers],
    }
    if cut.strip is not None:
        record["strip"] = number(cut.strip)
    if cut.angle is not None:
        record["angle"] = number(cut.angle)
    if cut.joined:
        record["joined"] = cut.joined
    if cut.lies:
        record["lies"] = lies_words(say, cut.lies)
    if need is not None and need.ways:
        if cut.outline:
            record["outline"] = [[number(x), number(y)] for x, y in cut.outline]
        record["ways"] = [
            {"turned": each.turned, "reversed": each.reversed, "pieces": each.count} for each in need.ways
        ]
    return record


def offer_record(offer: Offer, say: Say) -> Record:
    """Another way, with the square inches of cloth it takes."""
    cloth = {"cloth": number(offer.cloth), "singly": number(offer.singly)}
    return {"method": way_words(offer.made), "text": making_words(say, offer.made), **cloth}


def count_records(group: CountGroup) -> list[Record]:
    """The pieces of a block, or of a part of the setting."""
    return [
        {
            "of": group.title,
            "template": row.template,
            "piece": row.what,
            "fabric": row.fabric,
            "pieces": row.pieces,
            **counts(row.plain, row.back),
            "kind": row.kind,
        }
        for row in group.rows
    ]


def fabric_record(cuts: FabricCuts) -> Record:
    """One fabric, and how much of it to buy."""
    plan: FabricPlan = cuts.plan
    return {
        "name": plan.fabric,
        "title": cuts.fabric.title,
        "usable_width": number(plan.usable_width),
        "used": number(plan.used),
        "strips": plan.strips,
        "margin": number(plan.margin),
        "shrinkage": number(cuts.fabric.shrinkage),
        "buy": number(plan.buy),
        "buy_text": bought_words(plan),
        "area": number(plan.area),
        "pieces_of_cloth": len(plan.cloths),
    }


def print_record(cuts: FabricCuts, plan: CuttingPlan) -> Record:
    """Of a print with a direction: which, and every piece as it lies on the cloth, its print up. `key` is the
    cut's on the chart; `turned` degrees clockwise, after mirroring where it is `reversed`; `slant`: which way
    a box is cut again, corner to corner."""
    if not cuts.fabric.is_directional:
        return {}
    keys = keys_of(plan, cuts)
    return {
        "print": "one way" if cuts.fabric.one_way else "striped",
        "cloths": [
            {
                **size_record(cloth.width, cloth.length),
                "laid": [
                    {
                        "key": keys[each.cut].key,
                        "left": number(each.left), "top": number(each.top),
                        **size_record(each.width, each.height),
                        "turned": number(each.turned), "reversed": each.reversed, "slant": each.slant,
                    } for each in cloth.placed
                ],
            } for cloth in cuts.plan.cloths
        ],
    }  # fmt: skip


def whole_record(need: BackingNeed) -> Record:
    """Backing or batting, all of it."""
    fabric = {"fabric": need.fabric} if need.fabric else {}
    return {**fabric, **size_record(need.width, need.height)}
