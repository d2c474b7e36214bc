"""The words about a block's templates, pieces and units, one by one, and about what was left unwritten."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Final

from ...measure.tolerance import ROUNDED
from ..numbers import degrees_text, number_text
from ..phrases import count_of
from ..work.quilts import setting_words
from ..work.reasons import reason_words
from ..work.shapes import shape_word

if TYPE_CHECKING:
    from ...cutting.methods.method import Method
    from ...cutting.model import FabricCount, Template
    from ...drafting.model import Draft, Piece, Side, UnitPlacement
    from ...measure.tolerance import Number
    from ...quilt.model import Quilt
    from ..say import Say

PIECES: Final = "Pieces"
NUMBER: Final = "no."
NAME: Final = "name"
FABRIC: Final = "fabric"
TEMPLATE: Final = "template"
ALONG: Final = "along x across grain"
AREA: Final = "area, sq in"

UNITS: Final = "Units"
LYING: Final = "As they lie; at: across from the left, down from the top."
UNIT: Final = "unit"
BLOCK: Final = "block"
AT: Final = "at, in"
SIZE: Final = "size, in"
LIES: Final = "lies"

DEFAULTS: Final = "Defaults in force"

MOST_ANGLES: Final = 12
"""Sides and corners listed one by one; rounder shapes are told by their count."""


def titled(title: str, colourway: str, version: int) -> str:
    """`Haven Steps, Sea, version 4`."""
    return f"{title}{f', {colourway}' if colourway else ''}, version {version}"


def fact(what: str, value: str) -> str:
    """`Maker: A. Writer`."""
    return f"{what}: {value}"


def facts_of_block(
    say: Say, draft: Draft, templates: int, fingerprint: str, *, elsewhere: bool
) -> Iterator[str]:
    """Size and counts, then what the writer says of the block, a line each."""
    counts = f"{count_of(len(draft.pieces), 'piece')}, {count_of(templates, 'template')}"
    yield f"Finished {say.size(draft.width, draft.height)}; {counts}."
    uses = ", ".join(titled(title, "", version) for title, version in draft.uses)
    told = (
        ("Maker", draft.maker),
        ("Family", ", ".join(draft.family)),
        ("Also called", ", ".join(draft.also)),
        ("Faces", draft.faces or ""),
        ("Uses", uses),
        *(("Note", note) for note in draft.notes),
        ("Found", "in another file" if elsewhere else ""),
        ("Fingerprint", fingerprint),
    )
    yield from (fact(what, value) for what, value in told if value)


def facts_of_quilt(say: Say, quilt: Quilt) -> Iterator[str]:
    """Size, setting and counts, then what the writer says of the quilt, a line each."""
    pieces = count_of(len(quilt.pieces), "piece")
    size = say.size(quilt.width, quilt.height)
    yield f"Finished {size}; {setting_words(quilt.setting)}; {pieces} in the top."
    if quilt.maker:
        yield fact("Maker", quilt.maker)
    yield from (fact("Note", note) for note in quilt.notes)


# ---- templates --------------------------------------------------------------------------------------------


def count_words(template: Template) -> str:
    """`Cut 4 of light, 4 of dark; of these reversed: 2 of light. This side up.`"""
    turned = [f"{each.reversed} of {each.fabric}" for each in template.counts if each.reversed]
    reversed_too = f"; of these reversed: {', '.join(turned)}" if turned else ""
    way = "Either" if template.reversible else "This"
    return f"Cut {', '.join(map(_in_all, template.counts))}{reversed_too}. {way} side up."


def _in_all(count: FabricCount) -> str:
    return f"{count.cut + count.reversed} of {count.fabric}"


def facts_of_template(
    say: Say,
    template: Template,
    ring: Sequence[Side],
    angles: Sequence[float],
    boxes: tuple[str, str],
    area: Number,
    method: Method,
) -> Iterator[str]:
    """Its sizes, its sides and corners, how it lies on the cloth and how it is cut, a line each. `boxes`: of
    its finished outline and of its cut one."""
    sew, cut = boxes
    yield fact("finished", f"{sew}, {area_words(area)}")
    yield fact("cut", cut)
    yield fact("sides", sides_words(say, ring))
    yield fact("corners", corners_words(angles))
    yield fact("grain", grain_words(template))
    yield fact("method", method_words(say, method))
    yield fact("pieces", ", ".join(map(str, template.pieces)))


def method_words(say: Say, method: Method) -> str:
    """`half-square triangle: 3 7/8in, each makes 2; <why>`, or why it takes a template."""
    reason = reason_words(say, method.reason)
    if method.kind == "template":
        return f"by its template: {reason}"
    wide = say.on_ruler(method.width)
    size = wide if method.width == method.height else say.size_on_ruler(method.width, method.height)
    if method.strip is not None:
        size = f"{wide} along a strip {say.on_ruler(method.strip)} wide"
    gives = f", each makes {method.yields}" if method.yields > 1 else ""
    return f"{shape_word(method.kind)}: {size}{gives}; {reason}"


def sides_words(say: Say, ring: Sequence[Side]) -> str:
    """`3in (outside), 1in, 3.162in`: clockwise from the first corner, allowances named where they differ."""
    if len(ring) > MOST_ANGLES:
        return f"{len(ring)} sides, {say.length(sum(side.edge.length for side in ring))} around"
    uneven = len({side.allowance for side in ring}) > 1
    return ", ".join(_side_words(say, side, uneven) for side in ring)


def _side_words(say: Say, side: Side, uneven: bool) -> str:
    """One side: its length, whether it is curved or outside, and its allowance where sides differ."""
    arc = side.edge.arc
    facts = [
        *((f"curved, radius {say.length(arc.radius)}",) if arc is not None else ()),
        *(("outside",) if side.outside else ()),
        *((f"allowance {say.length(side.allowance)}",) if uneven else ()),
    ]
    return say.length(side.edge.length) + (f" ({', '.join(facts)})" if facts else "")


def corners_words(angles: Sequence[float]) -> str:
    """`90°, 45°, 45°`: the inner angle at each corner."""
    if len(angles) > MOST_ANGLES:
        least, most = degrees_text(min(angles)), degrees_text(max(angles))
        return f"{len(angles)} corners, from {least} to {most}"
    return ", ".join(map(degrees_text, angles)) or "none"


def grain_words(template: Template) -> str:
    """`90° clockwise from up`, one for each direction that pieces of it want."""
    return ", ".join(f"{degrees_text(each.heading)} clockwise from up" for each in template.grain) or "free"


def area_words(area: Number) -> str:
    """`1 1/2 square inches`."""
    return f"{number_text(area)} square {'inch' if abs(float(area) - 1) < ROUNDED else 'inches'}"


def box_words(say: Say, along: Number, across: Number, *, aslant: bool) -> str:
    """`3 7/8in x 2in`, across and down; of a box that lies aslant `8in along the grain x 2in`."""
    return (
        f"{say.length(along)} along the grain x {say.length(across)}" if aslant else say.size(across, along)
    )


# ---- pieces and units -------------------------------------------------------------------------------------


def template_words(label: str, *, turned_over: bool) -> str:
    """`B`, `B reversed`."""
    return f"{label} reversed" if turned_over else label


def area_cell(piece: Piece) -> str:
    """The area in square inches, and the holes where there are any."""
    holes = f", {count_of(len(piece.holes), 'hole')}" if piece.holes else ""
    return number_text(piece.area) + holes


def unit_cells(unit: UnitPlacement) -> tuple[str, ...]:
    """Alias, title, place and pose of a unit."""
    left, top, right, bottom = unit.box
    return (
        unit.alias,
        unit.title,
        f"{number_text(left)}, {number_text(top)}",
        f"{number_text(right - left)} x {number_text(bottom - top)}",
        _way(unit),
    )


def _way(unit: UnitPlacement) -> str:
    """`as drawn`, `mirrored, turned 90°`, with what was written where that says it in other words."""
    turned = f"turned {degrees_text(unit.turned)}" if unit.turned else ""
    told = ", ".join(filter(None, ("mirrored" if unit.mirrored else "", turned))) or "as drawn"
    faces = any(each.startswith("facing") for each in unit.poses)
    return f"{told} ({' '.join(unit.poses)})" if faces else told
