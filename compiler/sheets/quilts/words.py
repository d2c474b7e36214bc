"""Cuts in a maker's words: what is measured and how large, what it gives, what it is for."""

from __future__ import annotations

from collections import Counter
from typing import Final

from ...cutting.plan_model import Cut
from ...measure.marks import mark_up
from ...words.pages import cutting as words
from ...words.phrases import count_of
from ...words.say import Say
from ...words.work.shapes import shape_word
from .tables import SQUARES, CutRow, measured_shape, strip_width

ASLANT: Final = ("diamond", "parallelogram", "hexagon")
"""Kinds whose cuts lie aslant on their strip, and are measured square across."""

BOXES: Final = (*SQUARES, "rectangle", "half-rectangle-triangle", "strip")
"""Kinds that the cutter measures as a box; all others are cut from a strip, or round a template."""


def size_words(cut: Cut, say: Say) -> str:
    """The size that is measured: `3 7/8in`, `2 1/2in x 4 1/2in`, `strip 2 1/4in, cuts 2 1/4in apart`."""
    if cut.kind == "template":
        wide, tall = (say.on_ruler(mark_up(each, say.ruler)) for each in (cut.width, cut.height))
        return words.about_size(wide, tall)
    wide, tall = say.on_ruler(cut.width), say.on_ruler(cut.height)
    if cut.kind in BOXES or cut.part in ("binding", "backing"):
        if cut.kind == "strip" and cut.angle is None:
            short, long = sorted((cut.width, cut.height))
            return f"{say.on_ruler(short)} x {say.on_ruler(long)}"
        return wide if cut.width == cut.height and measured_shape(cut) == "square" else f"{wide} x {tall}"
    strip = say.on_ruler(cut.strip if cut.strip is not None else cut.height)
    if cut.kind in ASLANT:
        return words.slanted_size(strip, wide)
    return words.along_strip(strip, wide)


def cut_title(cut: Cut, say: Say) -> str:
    """`squares 3 7/8in`; `templates, 2in x 3in over all`."""
    shape = words.shapes(measured_shape(cut), cut.cuts)
    if cut.kind == "template":
        return words.round_template(size_words(cut, say))
    return f"{shape} {size_words(cut, say)}"


def yield_words(cut: Cut) -> str:
    """How many pieces a cut's boxes give: `24`; `40 half-square triangles` where that is something else."""
    if cut.part == "binding" and cut.angle is not None:
        return words.bias_strips(cut.pieces)
    other = cut.kind not in (measured_shape(cut), "template") and cut.part != "backing"
    return count_of(cut.pieces, shape_word(cut.kind)) if other else str(cut.pieces)


def joined_words(row: CutRow, say: Say) -> str:
    """`both from 2 strips of 42in and 1 of 9in, joined`; '' where none are joined."""
    if row.cut.part == "binding" or not row.lengths:
        return ""
    length, count = next(iter(Counter(row.lengths).items()))
    strips = words.strips_of(count, say.on_ruler(length))
    return words.joined(row.cut.cuts, [strips, *_lengths(row, say)[1:]])


def _lengths(row: CutRow, say: Say) -> list[str]:
    """`5 of 42in`, `1 of 4 1/4in`: the strips that are joined for a cut."""
    return [
        words.count_of_length(count, say.on_ruler(length)) for length, count in Counter(row.lengths).items()
    ]


def row_title(row: CutRow, say: Say) -> str:
    """`squares 3 7/8in`; of binding, how wide its strips are and how long each is."""
    if row.cut.part != "binding" or not row.lengths:
        return cut_title(row.cut, say)
    return words.strips_wide(_thick(row.cut, say), _lengths(row, say))


def _thick(cut: Cut, say: Say) -> str:
    return say.on_ruler(strip_width(cut))


def key_words(row: CutRow, say: Say) -> str:
    """What a letter in a cutting picture stands for."""
    cut = row.cut
    if row.lengths:
        whole = say.on_ruler(max(cut.width, cut.height))
        return words.strip_key(_thick(cut, say), "" if cut.part == "binding" else whole, row.purpose)
    parted = cut.yields if cut.kind != "template" and cut.part != "binding" else 1
    return words.shape_key(measured_shape(cut), size_words(cut, say), parted, row.purpose)
