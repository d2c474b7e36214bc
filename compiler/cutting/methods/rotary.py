"""How a shape is cut: by a rule of the rotary cutter where one holds, else by a template, with the reason.

A rule holds where the exact cut lies on a mark of the maker's ruler or within ON_MARK under it (the trade's
triangles: see triangles); a cut is never rounded down, and its excess over the exact is told. Long strips
are cut to the mark above and trimmed. Inches, x right and y down, straight of grain up and down.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import ceil

from ...drafting.model import Draft
from ...geometry.edge import Edge, Point
from ...geometry.motion import Transform, turn_about
from ...measure.angle import whole_degrees
from ...measure.marks import RULER_STEP
from ...measure.tolerance import Number
from ..handling import PartedByHand
from ..model import Template
from ..needs import Fabric, Need
from ..plan_model import Cut
from ..reasons import HOLE, OFF_GRAIN, NoRule, OffAngle, TemplateReason
from ..templates.allowance import outset
from .method import Method, cut_corners, flat_corners, polygon_area, template_as_cut, template_method
from .prints import on_print, with_print
from .recognise import Figure, is_ruled, recognise
from .slanted import equilateral, hexagon, slanted, trapezoid
from .triangles import box_method, half_rectangle, half_square, patch_method, quarter_square, strip_method


def method_of(
    outline: Sequence[Edge],
    allowances: Sequence[Number],
    step: Fraction,
    whole: Number | None = None,
    part: str = "blocks",
) -> Method:
    """The method for a finished outline. `whole` is the finished width of its block, for the reason."""
    figure = recognise(outline, allowances)
    refused = _refusal(figure)
    if refused:
        return template_method(outline, allowances, refused)
    if part in ("border", "sashing") and figure.kind in ("square", "rectangle", "trapezoid"):
        return strip_method(figure, step)
    rule = {
        "square": box_method,
        "rectangle": box_method,
        "half-square-triangle": half_square,
        "quarter-square-triangle": quarter_square,
        "half-rectangle-triangle": half_rectangle,
        "equilateral-triangle": equilateral,
        "diamond": slanted,
        "parallelogram": slanted,
        "trapezoid": trapezoid,
        "hexagon": hexagon,
    }[figure.kind]
    found = rule(figure, step, whole, part == "setting")
    return found if isinstance(found, Method) else template_method(outline, allowances, found)


def _refusal(figure: Figure) -> TemplateReason | None:
    """Why no rule can serve the shape, whatever its size; None where one may."""
    if figure.kind == "curved-shape":
        return NoRule("curved-sides")
    if figure.kind == "seam":
        return NoRule("two-allowances-on-a-side")
    if figure.kind == "kite":
        return NoRule("a-kite")
    if figure.kind in ("triangle", "four-sided-shape", "many-sided-shape"):
        return NoRule("no-such-shape")
    if not figure.on_grain:
        return OFF_GRAIN
    if figure.kind in ("equilateral-triangle", "hexagon") and not figure.even:
        return NoRule("unlike-allowances")
    if figure.kind in ("diamond", "parallelogram") and not is_ruled(figure.angle):
        return OffAngle("points", figure.angle)
    return None


def template_method_of(draft: Draft, template: Template, step: Fraction = RULER_STEP) -> Method:
    """The method for one template of a block: of its first piece, as its first arrow lies on the grain."""
    piece = draft.pieces[template.pieces[0] - 1]
    lies = lies_for_cutting(template)
    outline = tuple(lies.edge(side.edge) for side in piece.ring)
    allowances = tuple(side.allowance for side in piece.ring)
    method = method_of(outline, allowances, step, draft.width)
    if method.kind == "template" or piece.holes:
        reason = HOLE if piece.holes else method.reason
        return template_as_cut(tuple(lies.edge(edge) for edge in template.cut), reason)
    return method


def lies_for_cutting(template: Template) -> Transform:
    """The turn that lays a template's first arrow along the grain, up and down."""
    heading = template.grain[0].heading if template.grain else 0.0
    return turn_about(Point(Fraction(0), Fraction(0)), -whole_degrees(heading))


def choose_cut(
    need: Need,
    step: Fraction = RULER_STEP,
    index: int = 0,
    fabric: Fabric | None = None,
    whole: Number | None = None,
) -> Cut:
    """The cut for a need. `index` is its place in the quilt's needs; `whole` the finished width of its
    block."""
    method = on_print(_method_for(need, step, whole), need, fabric, step)
    plain, back = (ceil(each / method.yields) for each in (need.count, need.reversed))
    cuts, then = ceil((need.count + need.reversed) / method.yields), method.then
    if method.kind == "half-rectangle-triangle":
        cuts = plain + back
        then = (_both_hands(need, plain, back),) if back else then
    cut = Cut(
        index,
        need.fabric,
        need.part,
        method.kind,
        method.width,
        method.height,
        cuts,
        need.count + need.reversed,
        method.yields,
        method.excess,
        method.reason,
        need.template,
        method.angle,
        tuple((place.real, place.imag) for place in method.corners),
        then=then,
        strip=method.strip,
    )
    return with_print(cut, need, fabric, step)


def _method_for(need: Need, step: Fraction, whole: Number | None) -> Method:
    """The method for a need, whatever its print."""
    if need.holed:
        return template_method(need.outline, need.allowances, HOLE)
    if need.is_patch:
        return patch_method(recognise(need.outline, need.allowances), step, need.margin)
    part = "blocks" if need.template else need.part  # a block's piece is no strip, in a pieced border either
    return method_of(need.outline, need.allowances, step, whole, part)


def exact_area(need: Need) -> float:
    """Square inches of one piece with its allowances, points untrimmed."""
    figure = recognise(need.outline, need.allowances)
    if figure.kind in ("curved-shape", "many-sided-shape", "seam"):
        return polygon_area(flat_corners(outset(need.outline, need.allowances)))
    return polygon_area(cut_corners(figure))


def _both_hands(need: Need, plain: int, back: int) -> PartedByHand:
    """How the rectangles of half-rectangle triangles are cut, so many for each hand."""
    long = recognise(need.outline, need.allowances).side(1)
    return PartedByHand(plain, back, "rising" if long.real * long.imag < 0 else "falling")
