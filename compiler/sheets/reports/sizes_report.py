"""What `resize` says: at which sizes a block's cuts lie on the ruler, and what happens at others."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final

from ...cutting.methods.method import Method
from ...cutting.model import Template
from ...cutting.reasons import OffMark
from ...cutting.sizes import (
    BlockSize,
    CutAt,
    always_templates,
    good_sizes,
    other_sizes,
    tried_from,
    unit_of,
)
from ...diagnostics.visible import visible
from ...drafting.model import Draft
from ...measure.tolerance import Number
from ...words.phrases import count_of, one_of
from ...words.rulers import length_text
from ...words.say import by_ruler
from ...words.work.reasons import reason_words
from ..setting.text_table import table, wrapped
from .report_numbers import Record, number

EVENLY: Final = 3  # sizes; more of them, all as far apart, are told by their distance

LISTED: Final = 12
"""Sizes off the ruler that are shown, the best first: more than that nobody compares."""


def sizes_text(draft: Draft, templates: Sequence[Template], ruler: Fraction) -> str:
    """The sizes at which every cut lies on the ruler, then the others, the best of them first."""
    good, others = good_sizes(draft, templates, ruler), ranked(other_sizes(draft, templates, ruler))
    lines = head_lines(draft, ruler)
    lines += ["", *_good_lines(good, others, ruler)]
    always, say = always_templates((*good, *others)[0]), by_ruler(ruler)
    if always:
        lines += ["", f"Cut by {'a template' if len(always) == 1 else 'templates'} at every size"]
        for each in always:
            lines += wrapped(f"{each.label}: {reason_words(say, each.method.reason)}", "  ", "    ")
    if others:
        rows = [
            (length_text(each.width, ruler), _counted(each), _furthest(each, ruler))
            for each in others[:LISTED]
        ]
        lines += [
            "",
            "Other sizes, the best first",
            *table(("size", "off the ruler", "furthest from the next mark"), rows),
        ]
        if len(others) > LISTED:
            lines.append(f"  and {len(others) - LISTED} more")
    return "\n".join(lines)


def head_lines(draft: Draft, ruler: Fraction) -> list[str]:
    """The block and its size as drafted."""
    return [
        *wrapped(f"{visible(draft.title)}, version {draft.version}"),
        f"Drafted {_size(draft.width, draft.height, ruler)}; cut to {length_text(ruler, ruler)}.",
    ]


def _good_lines(good: Sequence[BlockSize], others: Sequence[BlockSize], ruler: Fraction) -> list[str]:
    """`At 6, 9 and 12in all cuts are to the 1/8in.` Whole inches first, then all between; what was tried."""
    to = length_text(ruler, ruler)
    first, last = (length_text(each, ruler) for each in tried_from(ruler))
    tried = f"Tried: sizes from {first} to {last}, {to} apart."
    if not good:
        return [f"At no size are all cuts to the {to}.", tried]
    if not others and all(each.always for size in good for each in size.cuts):
        return ["At every size all pieces are cut by templates."]
    widths = [Fraction(each.width) for each in good]
    whole = [each for each in widths if each % unit_of(ruler) == 0]
    lines = wrapped(f"At {_widths(whole or widths, ruler)} all cuts are to the {to}.")
    if whole and len(whole) < len(widths):
        lines += wrapped(f"They are{_between(widths, ruler)}.")
    return [*lines, tried]


def _between(widths: Sequence[Fraction], ruler: Fraction) -> str:
    """` at every 3/8in from 3in to 24in`; sizes that do not go on so evenly, one by one: those not whole."""
    steps = {later - earlier for earlier, later in pairwise(widths)}
    if len(steps) == 1 and len(widths) > EVENLY:
        step, first, last = (length_text(each, ruler) for each in (*steps, widths[0], widths[-1]))
        return f" at every {step} from {first} to {last}"
    return f" also at {_widths([each for each in widths if each % unit_of(ruler)], ruler)}"


def _widths(widths: Sequence[Fraction], ruler: Fraction) -> str:
    """`3, 3 3/8 and 3 3/4in`."""
    texts = [length_text(each, ruler) for each in widths]
    return one_of([text[:-2] for text in texts], "and") + texts[-1][-2:]


def ranked(sizes: Sequence[BlockSize]) -> list[BlockSize]:
    """Those with the fewest cuts off the ruler first, then those nearest to it."""

    def order(size: BlockSize) -> tuple[int, float, Number]:
        return len(size.off), round(max(each.off for each in size.off), 6), size.width

    return sorted(sizes, key=order)


def _counted(size: BlockSize) -> str:
    return f"{len(size.off)} of {len(size.cuts)}: {', '.join(each.label for each in size.off)}"


def _furthest(size: BlockSize, ruler: Fraction) -> str:
    worst = max(size.off, key=lambda each: each.off)
    return f"{length_text(round(worst.off, 3), ruler)} ({worst.label})"


def size_text(draft: Draft, templates: Sequence[Template], size: BlockSize, ruler: Fraction) -> str:
    """The sizes cut by the ruler, then what happens at one size: how each template's pieces are cut."""
    good, others = good_sizes(draft, templates, ruler), other_sizes(draft, templates, ruler)
    lines = [*head_lines(draft, ruler), "", *_good_lines(good, others, ruler)]
    to = _size(size.width, size.height, ruler)
    off = (
        f"{count_of(len(size.off), 'cut falls', 'cuts fall')} off the ruler"
        if size.off
        else ("all cuts are on the ruler")
    )
    lines += [f"At {to} {off}.", ""]
    for each in size.cuts:
        lines += wrapped(f"{each.label}: {_told(each, ruler)}", "  ", "    ")
    return "\n".join(lines)


def _told(cut: CutAt, ruler: Fraction) -> str:
    """`square, cut 3 1/2in x 3 1/2in`, or why it is a template here."""
    method = cut.method
    why = reason_words(by_ruler(ruler), method.reason)
    if cut.always:
        return f"template, as at every size: {why}"
    if method.kind == "template":
        by = f" (off by {length_text(round(cut.off, 3), ruler)})"
        return f"becomes a template: {why}{'' if isinstance(method.reason, OffMark) else by}"
    over = f", {length_text(round(method.excess, 3), ruler)} over the exact" if method.excess > 0 else ""
    return f"{method.kind}, cut {_measures(method, ruler)}{over}"


def _measures(method: Method, ruler: Fraction) -> str:
    if method.strip is not None:
        return f"from a strip of {length_text(method.strip, ruler)}"
    return _size(method.width, method.height, ruler)


def _size(width: Number, height: Number, ruler: Fraction) -> str:
    return f"{length_text(width, ruler)} x {length_text(height, ruler)}"


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
                "kind": each.method.kind,
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
