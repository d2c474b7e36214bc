"""Cuts in a maker's words: what is measured and how large, what it gives, what it is for."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from typing import Final

from ...cutting.plan_model import Cut
from ...measure.marks import mark_up
from ...measure.tolerance import Number
from ...words.phrases import count_of, one_of
from ...words.rulers import length_text
from ...words.say import INCHES
from ...words.work.shapes import shape_word
from .tables import SQUARES, CutRow, measured_shape, strip_width

ASLANT: Final = ("diamond", "parallelogram", "hexagon")
"""Kinds whose cuts lie aslant on their strip, and are measured square across."""

BOXES: Final = (*SQUARES, "rectangle", "half-rectangle-triangle", "strip")
"""Kinds that the cutter measures as a box; all others are cut from a strip, or round a template."""


def size_words(cut: Cut, step: Fraction) -> str:
    """The size that is measured: `3 7/8in`, `2 1/2in x 4 1/2in`, `strip 2 1/4in, cuts 2 1/4in apart`."""
    if cut.kind == "template":
        wide, tall = (length_text(mark_up(each, step), step) for each in (cut.width, cut.height))
        return f"about {wide} x {tall}"
    wide, tall = length_text(cut.width, step), length_text(cut.height, step)
    if cut.kind in BOXES or cut.part in ("binding", "backing"):
        if cut.kind == "strip" and cut.angle is None:
            short, long = sorted((cut.width, cut.height))
            return f"{length_text(short, step)} x {length_text(long, step)}"
        return wide if cut.width == cut.height and measured_shape(cut) == "square" else f"{wide} x {tall}"
    strip = length_text(cut.strip if cut.strip is not None else cut.height, step)
    if cut.kind in ASLANT:
        return f"from a strip {strip} wide, cuts {wide} apart"
    return f"{wide} along a strip {strip} wide"


def cut_title(cut: Cut, step: Fraction) -> str:
    """`squares 3 7/8in`; `templates, 2in x 3in over all`."""
    shape = shape_word(measured_shape(cut)) + ("" if cut.cuts == 1 else "s")
    if cut.kind == "template":
        return f"{size_words(cut, step)}, round the template"
    return f"{shape} {size_words(cut, step)}"


def yield_words(cut: Cut) -> str:
    """How many pieces a cut's boxes give: `24`; `40 half-square triangles` where that is something else."""
    if cut.part == "binding" and cut.angle is not None:
        return count_of(cut.pieces, "bias strip")
    other = cut.kind not in (measured_shape(cut), "template") and cut.part != "backing"
    return count_of(cut.pieces, shape_word(cut.kind)) if other else str(cut.pieces)


def joined_words(row: CutRow, step: Fraction) -> str:
    """`both from 2 strips of 42in and 1 of 9in, joined`; '' where none are joined."""
    if row.cut.part == "binding" or not row.lengths:
        return ""
    length, count = next(iter(Counter(row.lengths).items()))
    strips = f"{count_of(count, 'strip')} of {length_text(length, step)}"
    which = {1: "", 2: "both "}.get(row.cut.cuts, "all ")
    return f"{which}from {one_of([strips, *_lengths(row, step)[1:]], 'and')}, joined"


def _lengths(row: CutRow, step: Fraction) -> list[str]:
    """`5 of 42in`, `1 of 4 1/4in`: the strips that are joined for a cut."""
    return [f"{count} of {length_text(length, step)}" for length, count in Counter(row.lengths).items()]


def row_title(row: CutRow, step: Fraction) -> str:
    """`squares 3 7/8in`; of binding, how wide its strips are and how long each is."""
    if row.cut.part != "binding" or not row.lengths:
        return cut_title(row.cut, step)
    return f"strips {_thick(row.cut, step)} wide: {one_of(_lengths(row, step), 'and')}"


def _thick(cut: Cut, step: Fraction) -> str:
    return length_text(strip_width(cut), step)


def key_words(row: CutRow, step: Fraction) -> str:
    """What a letter in a cutting picture stands for."""
    cut = row.cut
    if row.lengths:
        whole = length_text(max(cut.width, cut.height), step)
        joined = "" if cut.part == "binding" else f", joined to {whole}"
        return f"strip {_thick(cut, step)} wide{joined}: {row.purpose}"
    words = [f"{shape_word(measured_shape(cut))} {size_words(cut, step)}"]
    if cut.yields > 1 and cut.kind != "template" and cut.part != "binding":
        words.append(f"cut into {cut.yields}")
    return f"{', '.join(words)}: {row.purpose}"


def about(length: Number) -> str:
    """A finished length as a ruler reads it: `about 2 3/4in` where it lies on no mark."""
    return INCHES.about(length)
