"""Why a shape is cut as it is: by a rule of the ruler, or round a template. Inches and degrees."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from ..measure.record import record
from ..measure.tolerance import Number

Lacking = Literal[
    "curved-sides",
    "two-allowances-on-a-side",
    "a-kite",
    "no-such-shape",
    "off-the-grain",
    "unlike-allowances",
    "a-hole",
    "a-strip-along-the-print",
]


@record
class NoRule:
    """No rule can serve the shape, whatever its size."""

    why: Lacking


OFF_GRAIN = NoRule("off-the-grain")
HOLE = NoRule("a-hole")  # whatever the outside: a ruler cuts no hole


@record
class OffAngle:
    """No ruler bears the line of that angle."""

    part: Literal["points", "ends"]
    angle: float


@record
class Share:
    """The finished size is `top` `bottom`ths of a whole that the ruler does not part so."""

    top: int
    bottom: int
    whole: Number
    finished: Number


@record
class OffMark:
    """The exact cut lies under the ruler's next mark."""

    exact: Number
    mark: Fraction


@record
class Aslant:
    """Its print stands upright in the quilt, aslant to its sides. `marks`: what the sides measure, of a
    square or rectangle that the ruler can be laid to."""

    marks: tuple[Fraction, ...] = ()


TemplateReason = NoRule | OffAngle | Share | OffMark | Aslant


@record
class Finished:
    """The finished size and the allowances lie on the ruler; `square` as cut."""

    width: Number
    height: Number
    square: bool


@record
class Strip:
    """The finished size and the allowances; `trimmed`: up to the next mark, to be trimmed; `over`: so much
    longer, to be trimmed to the top as it measures."""

    trimmed: bool
    over: Fraction = Fraction(0)


@record
class Mitred:
    """The long edge finished, and so much over for the mitres."""

    long: Number
    over: Fraction


@record
class Patch:
    """Cloth that covers a patch of a foundation; `up`: to the next mark."""

    allowance: float
    margin: Number
    up: bool


@record
class Sum:
    """A finished size and what is added to it, up to the mark; of a square that is cut `once` or `twice`, or
    of a `strip`. `beyond`: of a setting triangle, the allowance that is left beyond the points when it is
    trimmed after sewing."""

    finished: Number
    extra: float
    mark: Fraction
    of: Literal["once", "twice", "strip"]
    beyond: float | None = None


@record
class OnRuler:
    """The exact cut lies on the ruler: a rectangle to be cut once, or a strip with its slanted cuts."""

    angle: float | None = None


@record
class SlantedEnds:
    """So long along the long side, the ends at those angles."""

    long: Fraction
    ends: tuple[float, ...]


@record
class AcrossFinished:
    """So much across finished, and the allowances."""

    across: Number


@record
class StripLength:
    """So much binding."""

    length: Fraction
    bias: bool


@record
class Panels:
    """A back in one panel, or joined with seams down it or across it."""

    seams: Literal["", "down", "across"]


Reason = (
    TemplateReason
    | Finished
    | Strip
    | Mitred
    | Patch
    | Sum
    | OnRuler
    | SlantedEnds
    | AcrossFinished
    | StripLength
    | Panels
)
