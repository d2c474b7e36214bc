"""The tolerances, and the only functions that compare floats.

A `Number` is a Fraction where the drafting is exact and a float where a square root or a sine came in;
Python's own arithmetic keeps the one and falls to the other. Lengths are in inches.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

Number = Fraction | float

NEAR: Final = 1e-6
"""Inches. Two places nearer than this are one place: a thousandth of the promised thousandth of an inch,
and still ten thousand times the rounding of a float at the size of a quilt."""

NEARLY: Final = Fraction(1, 64)
"""Inches. Ends nearer than this but further than NEAR 'nearly touch', and are complained of: no ruler shows
a sixty-fourth, so nobody means it."""

SLIVER: Final = Fraction(1, 16)
"""Inches. A piece narrower than this cannot be cut or sewn."""

TANGENT: Final = 1e-3
"""Radians within which two sides that meet go on, or come back, in one direction, as tangent arcs do: that is
no corner. It is a seventeenth of a degree, far less than a protractor shows."""

FAR: Final = 10_000
"""Inches, across or down from a block's top left corner, and of a radius: ten times the longest length that
may be written. An arc of that radius leaves an 8in seam by less than FLATTEN, and squares of such numbers
still keep NEAR as floats."""

EXACT_BITS: Final = 1_024
"""Bits above or below the line of a fraction: 300 digits, far more than any drafted place has. Points built
on points on points may double their digits at every step; past this they go on as floats."""

FLATTEN: Final = 0.001
"""Inches. The greatest distance between an arc and the chords drawn for it: the printed tolerance."""

ONE_WAY: Final = 1e-4
"""Radians, or the length between two unit vectors. Directions nearer than this are one, and a corner nearer
to square is square: places lie within NEAR of where they are meant, and the shortest edges are about a
sixteenth of an inch."""

EVEN: Final = 1e-3
"""Radians, or the length between two unit vectors. Seams of one row, and seams that meet end to end, run no
further apart: each lies as its copies do."""

ROUNDED: Final = 1e-9
"""A number nearer than this to a whole one is that one: what rounding leaves of headings in degrees, of
counts and of square inches."""

ROUNDING: Final = 1e-6
"""What rounding leaves of a share, a sine or an angle in radians that should be none."""

ALIKE: Final = 1e-4
"""Inches. Sizes and places nearer than this are one in print: a tenth of what a printed sheet promises."""

TOGETHER: Final = 1e-3
"""Inches. Corners and ends of seams nearer than this are one: far wider than copies stray (rounded headings
move what lies 100in along a line 1e-4in aside), far narrower than anything that is sewn."""

EXACT: Final = 0.001
"""Inches. What is printed and sewn may stray so far from what is drafted."""

PARALLEL: Final = 1e-12
"""Sine of the angle under which two floating directions count as parallel: rounding, and nothing a ruler
shows."""

NEVER_MEET: Final = 1e-9
"""Sine of the angle under which two lines are taken to be parallel: they would meet, if at all, so far off
that no template reaches there."""

CRUMB: Final = 1e-5
"""Inches. A stroke shorter than this is what rounding leaves where two lines nearly touch; it is left out."""

SMOOTH: Final = 1e-5
"""Radians. Sides that meet at less than this run on smoothly: with an allowance of 1/4in their moved ends lie
closer than 1/300,000in."""

ASIDE: Final = 2e-6
"""Inches. How far to each side of a stroke the ground is tried: over rounding, under a CRUMB."""

LEAST_RING: Final = 1e-6
"""Square inches. A ring round less than this is what rounding leaves of two lines that coincide."""

BETTER: Final = 1 + 1e-9
"""What one strip's worth must be times another's to be preferred: more than rounding."""

NO_HEIGHT: Final = 1e-9
"""Inches between levels that rounding parts."""

WHOLE_DEGREE: Final = 1e-6
"""Degrees. A turn nearer than this to a whole number of degrees is meant to be it: at 10in from the middle
that is under 1/5,000,000in."""

DESIGN: Final = 1e-5
"""Shares of the side of a square as large as the block: a hundredth of a thousandth, as 1/8000in in 12in. Far
wider than floats stray, far finer than anyone cuts."""

OVERLAP_LEAST: Final = 1e-3
"""Square inches. Less than this is two flattened arcs' chords, not two pieces of cloth."""

READING_STEP: Final = 1e-4
"""Inches. Tops nearer than this are one line of reading, so that a float's last digit reorders nothing."""

STILL: Final = 1e-13
"""The fit is done when no scale moves by more: rounding, in a number about 1."""

GRID: Final = 1e-3
"""Inches. Pieces are looked up in squares of this width, much wider than LIKE_PLACE and narrower than any
piece."""

NO_WISH: Final = 1e-6
"""A sum of wishes that is no more is none: rounding of floats, far below the faintest shade over an inch."""

CLOSE: Final = 1e-3
"""Inches by which cloth may fall short, and square inches by which areas may differ: what is printed is no
nearer."""

CARRIED_ON: Final = 1e-5
"""Inches that a printed line is carried on, so that it parts the paper."""

AT_END: Final = 1e-9
"""Of a piece's own length: crossings nearer than this to its ends are its ends."""

ON_SIDE: Final = 1e-7
"""Points. A piece no further than this outside lies on the box's side, and stays."""

BOUND_SLACK: Final = 1e-6
"""Inches or degrees by which a value may miss a bound: a side drafted with a root of two is never exact."""

CELL_TOUCH: Final = 1e-6
"""Cells. An outline that reaches no further than this into a cell lies along its border: rounding, not
room."""

NO_TRIANGLE: Final = 1e-6
"""Square points: twice the area of three corners that counts as none, where a ring is asked if convex."""

SHORT_SIDE: Final = 1e-3
"""Points: a ring with a side shorter than this is not asked further."""

PAGE_SLACK: Final = 1e-6
"""Points: a drawing that is larger by no more than this fits."""

CONGRUENT: Final = 10 * NEAR
"""Inches. Outlines nearer than this everywhere are one shape: each corner may be NEAR off its true place, the
middle they are turned about as well, and the turn that is fitted to one corner carries its error to all."""

LIKE_PLACE: Final = 20 * NEAR
"""Inches between a piece and its like: each piece's middle may be off by NEAR, and the turn is found from
two."""

IN_LINE: Final = 4 * NEAR
"""Inches. How far a place between two strokes may lie beside the line from end to end of both."""

HALVES: Final = 10 * NEAR
"""Inches by which a seam may lie off the middle of a region that it halves."""

BESIDE_FOLD: Final = 10 * NEAR
"""Inches by which a corner may stray over a line that it lies on."""

SQUARED: Final = 10 * NEAR
"""Inches. How far two halves of a square may lie from where the other half wants them."""

AREA_SLACK: Final = 20 * NEAR
"""Square inches for each inch of outline: how far an area strays when every corner is NEAR off its place."""

STEP_IN: Final = 10 * NEAR
"""Inches. Sides are tried a hair inside the sewing line: without allowance both lines are one."""

SAME_HEADING: Final = 0.01
"""Degrees. Headings nearer than this are one: over a yard they part by a hundredth of an inch."""

NO_TURN: Final = 1e-12
"""Radians. An arc that seems to turn less than this goes all the way round: no edge is so short."""

CURVE_ERROR: Final = 0.0005
"""Inches between a circle and the cubic curves drawn for it: half the printed tolerance."""

OFF_MARK: Final = 0.00027
"""Added before rounding, for a drawing's own places (eighths of an inch, as points) often lie half-way
between
two round numbers, where rounding noise would part what belongs together."""


def near(a: Number, b: Number, tolerance: float = NEAR) -> bool:
    """Whether two lengths are the same length, within the tolerance in inches."""
    return abs(float(a) - float(b)) <= tolerance


def kept_short(a: Number) -> Number:
    """The number itself, as a float where its fraction has more than EXACT_BITS."""
    if isinstance(a, Fraction) and max(a.numerator.bit_length(), a.denominator.bit_length()) > EXACT_BITS:
        return float(a)
    return a


def rounded(a: Number) -> float:
    """`float(a)`, in a third of the time for a Fraction: `float` asks it for each number in turn."""
    if type(a) is float:
        return a
    top, under = a.as_integer_ratio()
    return top / under


def difference(a: Number, b: Number) -> float:
    """a - b, rounded once, just as `float(a - b)` is but three times as soon: no fraction is made or
    reduced."""
    if type(a) is float or type(b) is float:
        return float(a) - float(b)
    top, under = a.as_integer_ratio()
    other_top, other_under = b.as_integer_ratio()
    return (top * other_under - other_top * under) / (under * other_under)
