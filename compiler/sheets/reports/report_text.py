"""What `explain` says for people: tables of at most 80 columns, with lengths as a ruler reads them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import cos, radians, sin
from typing import Final

from ...cutting.methods.method import Method
from ...cutting.methods.rotary import template_method_of
from ...cutting.model import Template
from ...diagnostics.visible import visible, width_of
from ...drafting.fingerprint import fingerprint_of
from ...drafting.model import Default, Draft, Piece, Side, UnitPlacement
from ...geometry.curves import box_of, flattened
from ...geometry.edge import Edge
from ...measure.tolerance import ROUNDED, Number
from ...words.numbers import number_text, ruler_text
from ...words.phrases import count_of
from ...words.rulers import length_text
from ...words.say import INCHES, by_ruler
from ...words.work.defaults import default_words
from ...words.work.reasons import reason_words
from ...words.work.shapes import shape_word
from ..setting.text_table import GAP, ROOM, table, told, wrapped
from .report import Compiled, corner_angles
from .report_sewing_text import sewing_lines

MOST_ANGLES: Final = 12  # corners listed one by one; rounder shapes are told by their count


def report_text(blocks: Iterable[Compiled], ruler: Fraction) -> str:
    """Every block, one after the other; cut by a ruler whose marks are `ruler` inches apart."""
    return "\n\n\n".join("\n".join(block_lines(each, ruler)) for each in blocks)


def block_lines(compiled: Compiled, ruler: Fraction) -> list[str]:
    """The head, the templates, the pieces, the units, the sewing and the defaults of one block."""
    draft = compiled.draft
    lines = head_lines(compiled)
    lines += ["", "Templates"]
    for template in compiled.templates:
        lines += template_lines(template, draft, ruler)
    lines += ["", "Pieces", *piece_table(draft, compiled.templates)]
    if draft.units:
        lines += ["", "Units, as they lie (at: across from the left, down from the top)", *unit_table(draft)]
    lines += sewing_lines(compiled, ruler)
    return lines + default_lines(draft.defaults)


def default_lines(defaults: Sequence[Default]) -> list[str]:
    """Every default in force; nothing where there is none."""
    lines = [line for each in defaults for line in told(*default_words(INCHES, each))]
    return ["", "Defaults in force", *lines] if lines else []


def head_lines(compiled: Compiled) -> list[str]:
    """Title, size and counts, then what the writer says of the block."""
    draft = compiled.draft
    title = f"{visible(draft.title)}, version {draft.version}"
    size = f"{ruler_text(draft.width)} x {ruler_text(draft.height)}"
    counts = f"{count_of(len(draft.pieces), 'piece')}, {count_of(len(compiled.templates), 'template')}"
    lines = [*wrapped(title), "=" * min(width_of(title), ROOM), f"Finished {size}; {counts}."]
    uses = ", ".join(f"{title}, version {version}" for title, version in draft.uses)
    said = (
        ("Maker", draft.maker),
        ("Family", ", ".join(draft.family)),
        ("Also called", ", ".join(draft.also)),
        ("Faces", draft.faces or ""),
        ("Uses", uses),
        *(("Note", note) for note in draft.notes),
        ("Found", "in another file" if compiled.from_elsewhere else ""),
        ("Fingerprint", fingerprint_of(draft)),
    )
    return lines + [line for what, value in said if value for line in told(what, value, indent="")]


# ---- templates --------------------------------------------------------------------------------------------


def template_lines(template: Template, draft: Draft, ruler: Fraction) -> list[str]:
    """One template: how many of what, its sizes, its sides and corners."""
    ring = draft.pieces[template.pieces[0] - 1].ring
    heading = template.grain[0].heading if template.grain else 0.0
    area = area_text(draft.pieces[template.pieces[0] - 1].area)
    said = [
        ("finished", f"{box_text(template.sew, heading)}, {area}"),
        ("cut", box_text(template.cut, heading)),
        ("sides", sides_text(ring)),
        ("corners", corners_text(ring)),
        ("grain", grain_text(template)),
        ("method", method_text(template_method_of(draft, template, ruler), ruler)),
        ("pieces", ", ".join(str(each) for each in template.pieces)),
    ]
    lines = wrapped(f"{template.label:<3}{count_text(template)}", GAP, " " * 5)
    for what, value in said:
        lines += wrapped(value, f"     {what:<10}", " " * 15)
    return lines


def count_text(template: Template) -> str:
    """`Cut 4 of light and 4 of dark; 4 of them reversed (2 light, 2 dark). This side up.`"""
    total = ", ".join(f"{each.cut + each.reversed} of {each.fabric}" for each in template.counts)
    text = f"Cut {total}"
    if template.reversed_count:
        parts = ", ".join(f"{each.reversed} of {each.fabric}" for each in template.counts if each.reversed)
        text += f"; of these reversed: {parts}"
    return text + (". Either side up." if template.reversible else ". This side up.")


def method_text(method: Method, ruler: Fraction) -> str:
    """`half-square triangle: squares 3 7/8in, each makes 2; <why>`, or why it takes a template."""
    if method.kind == "template":
        return f"by its template: {reason_words(by_ruler(ruler), method.reason)}"
    wide, tall = length_text(method.width, ruler), length_text(method.height, ruler)
    size = wide if method.width == method.height else f"{wide} x {tall}"
    if method.strip is not None:
        size = f"{wide} along a strip {length_text(method.strip, ruler)} wide"
    gives = f", each makes {method.yields}" if method.yields > 1 else ""
    return f"{shape_word(method.kind)}: {size}{gives}; {reason_words(by_ruler(ruler), method.reason)}"


def sides_text(ring: Sequence[Side]) -> str:
    """`3in (outside), 1in, 3.162in`: clockwise from the first corner, allowances named where they differ."""
    if len(ring) > MOST_ANGLES:
        return f"{len(ring)} sides, {ruler_text(sum(side.edge.length for side in ring))} around"
    uneven = len({side.allowance for side in ring}) > 1
    return ", ".join(_side_text(side, uneven) for side in ring)


def _side_text(side: Side, uneven: bool) -> str:
    """One side: its length, whether it is curved or outside, and its allowance where sides differ."""
    facts = []
    if side.edge.arc is not None:
        facts.append(f"curved, radius {ruler_text(side.edge.arc.radius)}")
    if side.outside:
        facts.append("outside")
    if uneven:
        facts.append(f"allowance {ruler_text(side.allowance)}")
    return ruler_text(side.edge.length) + (f" ({', '.join(facts)})" if facts else "")


def corners_text(ring: Sequence[Side]) -> str:
    """`90°, 45°, 45°`: the inner angle at each corner."""
    angles = corner_angles(ring)
    if not angles:
        return "none"
    if len(angles) > MOST_ANGLES:
        return f"{len(angles)} corners, from {angle_text(min(angles))} to {angle_text(max(angles))}"
    return ", ".join(angle_text(each) for each in angles)


def grain_text(template: Template) -> str:
    """`90° clockwise from up`, one for each direction that pieces of it want."""
    if not template.grain:
        return "free"
    return ", ".join(f"{angle_text(each.heading)} clockwise from up" for each in template.grain)


def angle_text(angle: float) -> str:
    """`22.5°`: to a tenth, which is finer than any protractor."""
    return f"{angle:.1f}".removesuffix(".0") + "°"


def area_text(area: Number) -> str:
    """`1 1/2 square inches`."""
    return f"{number_text(area)} square {'inch' if abs(float(area) - 1) < ROUNDED else 'inches'}"


def box_text(edges: Sequence[Edge], heading: float = 0.0) -> str:
    """`3 7/8in x 2in`: the box around a ring, arcs and all; along the grain where that slants,
    `8in along the grain x 2in`."""
    if not heading % 90:
        down, across = extent(edges, 0.0)
        return f"{ruler_text(across)} x {ruler_text(down)}"
    along, aside = extent(edges, heading)
    return f"{ruler_text(along)} along the grain x {ruler_text(aside)}"


def extent(edges: Sequence[Edge], heading: float) -> tuple[Number, Number]:
    """How far a ring reaches along a heading and across it, in inches; exact where it is level or upright."""
    if not heading % 90:
        left, top, right, bottom = box_of(edges)
        across, down = right - left, bottom - top
        return (across, down) if heading % 180 else (down, across)
    points = [point for edge in edges for point in flattened(edge)]
    xs, ys = [point.x for point in points], [point.y for point in points]
    c, s = cos(radians(heading)), sin(radians(heading))
    along = [float(x) * s - float(y) * c for x, y in zip(xs, ys, strict=True)]
    aside = [float(x) * c + float(y) * s for x, y in zip(xs, ys, strict=True)]
    return max(along) - min(along), max(aside) - min(aside)


# ---- tables -----------------------------------------------------------------------------------------------


def piece_table(draft: Draft, templates: Sequence[Template]) -> list[str]:
    """Number, name, fabric, template, finished size and area of every piece."""
    boxes = piece_boxes(templates)
    labels = {
        member.piece: shape.label + (" reversed" if member.reversed else "")
        for shape in draft.shapes
        for member in shape.members
    }
    rows = [
        (
            str(each.number),
            each.name or "-",
            each.fabric,
            labels[each.number],
            boxes[each.number],
            _unit_or_area(each),
        )
        for each in draft.pieces
    ]
    return table(("No.", "Name", "Fabric", "Template", "Along x across grain", "Area, sq in"), rows)


def piece_boxes(templates: Sequence[Template]) -> dict[int, str]:
    """`3 1/4in x 2in` for each piece, along its grain first: the same however it lies in the block."""
    boxes: dict[int, str] = {}
    for template in templates:
        arrows = [(arrow.heading, arrow.pieces) for arrow in template.grain] or [(0.0, template.pieces)]
        for heading, pieces in arrows:
            along, across = extent(template.sew, heading)
            boxes.update(dict.fromkeys(pieces, f"{ruler_text(along)} x {ruler_text(across)}"))
    return boxes


def _unit_or_area(piece: Piece) -> str:
    """The area in square inches, and the holes where there are any."""
    holes = f", {count_of(len(piece.holes), 'hole')}" if piece.holes else ""
    return number_text(piece.area) + holes


def unit_table(draft: Draft) -> list[str]:
    """Alias, title, place and pose of every unit."""
    rows = []
    for each in draft.units:
        left, top, right, bottom = each.box
        rows.append(
            (
                each.alias,
                each.title,
                f"{number_text(left)}, {number_text(top)}",
                f"{number_text(right - left)} x {number_text(bottom - top)}",
                _way(each),
            )
        )
    return table(("Unit", "Block", "At, in", "Size, in", "Lies"), rows)


def _way(unit: UnitPlacement) -> str:
    """`as drawn`, `mirrored, turned 90°`, with what was written where that says it in other words."""
    ways = ("mirrored" if unit.mirrored else "", f"turned {angle_text(unit.turned)}" if unit.turned else "")
    told = ", ".join(way for way in ways if way) or "as drawn"
    faces = any(each.startswith("facing") for each in unit.poses)
    return f"{told} ({' '.join(unit.poses)})" if faces else told
