"""A piece of cloth as large as it is: plans count in marks of the ruler, and a fat quarter of 21in is
53.34cm wide, 213 marks of a quarter centimetre and a little more.

What is left over reaches to the true edge, and so do strips that are joined end to end: they are as long
as the cloth. Any other box at the edge would come out too large, so there the cloth is trimmed to the mark
first. Inches.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from ...measure.record import record
from ...measure.tolerance import NEAR, Number
from ..instruction import Axis, TrimPiece
from ..plan_model import ClothPlan, Slice, Strip


@record
class Marks:
    """A cloth so many ruler steps wide and high, and where it ends: at the last marks, or past them."""

    step: Fraction
    steps: tuple[int, int]
    width: Number
    height: Number

    def box(self, left: int, top: int, width: int, height: int) -> tuple[Number, Number, Number, Number]:
        """Left, top, right and bottom of a box in ruler steps; what ends at the last mark ends at the
        edge."""
        right, bottom = left + width, top + height
        return (
            left * self.step,
            top * self.step,
            self.width if right == self.steps[0] else right * self.step,
            self.height if bottom == self.steps[1] else bottom * self.step,
        )

    def edge(self, mark: int, axis: Axis) -> Number:
        """How far down the cloth a mark lies, or along a cut, how far across."""
        left, top = (0, mark) if axis == "across" else (mark, 0)
        return self.box(left, top, 0, 0)[3 if axis == "across" else 2]


class Piece(NamedTuple):
    """A cloth's marks, and what is trimmed off it before anything is cut."""

    marks: Marks
    trim: TrimPiece | None


def to_marks(step: Fraction, steps: tuple[int, int]) -> Marks:
    """A cloth that ends at its last marks."""
    return Marks(step, steps, steps[0] * step, steps[1] * step)


def piece_of(marks: Marks, width: Number, height: Number, reaching: tuple[bool, bool]) -> Piece:
    """A piece that is so large: in width and in height it is all used, where what lies at its last mark may
    be `reaching` to the edge, else it is trimmed to the mark."""
    over = (width - marks.width > NEAR, height - marks.height > NEAR)
    wide, high = (past and not may for past, may in zip(over, reaching, strict=True))
    trim = TrimPiece(marks.width if wide else None, marks.height if high else None) if wide or high else None
    return Piece(
        replace(
            marks,
            width=width if over[0] and not wide else marks.width,
            height=height if over[1] and not high else marks.height,
        ),
        trim,
    )


def trimmed(plan: ClothPlan, trim: TrimPiece, width: Number, height: Number) -> ClothPlan:
    """The plan of a piece that is so large before it is trimmed."""
    if plan.slices:
        first = plan.slices[0]
        first = replace(first, instructions=(trim, *first.instructions))
        return replace(plan, slices=(first, *plan.slices[1:]))
    (whole,) = plan.strips
    cuts: list[Slice] = []
    if trim.width is not None:
        cuts.append(Slice(1, (0, 0, width, height), "along", plan.width, (trim,)))
    if trim.height is not None:
        done = (whole.number,) if cuts else ()
        region = (0, 0, plan.width, height)
        cuts.append(Slice(len(cuts) + 1, region, "across", plan.length, () if cuts else (trim,), done))
    end, edge = (plan.width, width) if trim.width is not None else (plan.length, height)
    strips = (replace(whole, end=end), Strip(0, end, edge, ()))
    return replace(plan, width=width, length=height, slices=tuple(cuts), strips=strips, axis=cuts[0].axis)
