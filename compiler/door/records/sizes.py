"""At which sizes a block is cut by the ruler, for other programs. Lengths are inches."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...cutting.model import Template
from ...cutting.sizes import BlockSize, good_sizes, other_sizes
from ...drafting.model import Draft
from ...sheets.reports.sizes_report import ranked
from ...words.say import by_ruler
from ...words.work.reasons import reason_words
from ...words.work.shapes import shape_word
from .as_json import Record, number


def sizes_record(
    draft: Draft, templates: Sequence[Template], ruler: Fraction, asked: BlockSize | None
) -> Record:
    """The same for programs. Inches; `asked` is the size asked for."""
    record: Record = {
        "title": draft.title,
        "version": draft.version,
        "finished": {"width": number(draft.width), "height": number(draft.height)},
        "ruler": number(ruler),
        "on_ruler": [_record(each, ruler) for each in good_sizes(draft, templates, ruler)],
        "others": [_record(each, ruler) for each in ranked(other_sizes(draft, templates, ruler))],
    }
    if asked is not None:
        record["asked"] = _record(asked, ruler)
    return record


def _record(size: BlockSize, ruler: Fraction) -> Record:
    return {
        "width": number(size.width),
        "height": number(size.height),
        "on_ruler": not size.off,
        "cuts": [
            {
                "template": each.label,
                "kind": shape_word(each.method.kind),
                "width": number(each.method.width),
                "height": number(each.method.height),
                "excess": number(each.method.excess),
                "off": number(round(each.off, 6)),
                "always_template": each.always,
                "reason": reason_words(by_ruler(ruler), each.method.reason),
            }
            for each in size.cuts
        ],
    }
