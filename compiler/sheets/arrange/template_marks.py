"""One template as marks on a page: its lines, dots, match marks, arrows and label."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain
from math import atan2, cos, degrees, hypot, radians, sin
from typing import Final

from ...cutting.model import Mark as MatchMark
from ...cutting.model import Template
from ...geometry.edge import Edge
from ...measure.length import POINTS_PER_INCH
from ...words.pages.labels import beside_words
from ..drawing.lettering import cap_height
from ..page import Mark, PathMark, Segment, TextMark
from .label import Label, SetLine
from .options import SheetOptions
from .paths import Placement, Spot, flat_ring, ring_path, straight
from .room import Room, around
from .style import (
    BLACK,
    CUT,
    DOT_LINE,
    SEW,
    SEW_DASH,
    SMALLEST,
    arrow_marks,
    dot_marks,
    lettering,
    line_mark,
    set_text,
    shorten,
)

MATCH_LONG: Final = 9.0  # 1/8in
MATCH_INSIDE: Final = 2.0  # of it inside the sewing line: it crosses the seam
MATCH: Final = 0.6
RING_SHADE: Final = (0.93, 0.93, 0.93)  # of a window template's card

TAG_DROP: Final = cap_height(SMALLEST, True) / 2  # from a number's middle to its baseline
RING_MIDDLE: Final = 9.0  # points from the sewing line to the middle of a card 1/4in wide

Rings = tuple[tuple[Edge, ...], ...]


def outer_rings(template: Template, options: SheetOptions) -> Rings:
    """The outline of the paper piece, and its holes: the cutting line; for hand piecing the sewing line."""
    if options.kind == "finished":
        return (template.sew, *template.sew_holes)
    return (template.cut, *template.cut_holes)


def inner_room(template: Template, placement: Placement) -> Room:
    """Where lettering may stand: inside the sewing line, clear of dots and of ticks."""
    rings = tuple(flat_ring(ring, placement) for ring in (template.sew, *template.sew_holes))
    reach = float(template.dot_width) * POINTS_PER_INCH / 2 + DOT_LINE / 2
    dots = tuple(around(spot, reach) for spot in placement.spots(template.dots)) if reach > DOT_LINE else ()
    ticks = tuple(around(spot, MATCH_INSIDE) for spot in placement.spots(mark.at for mark in template.marks))
    return Room(rings, dots + ticks)


def headings_of(template: Template, placement: Placement) -> list[float]:
    """The headings of its grain on the page, in degrees clockwise from up."""
    return [(grain.heading + placement.turned) % 180 for grain in template.grain]


def template_marks(
    template: Template, placement: Placement, label: Label, options: SheetOptions
) -> list[Mark]:
    """Everything of a template but the words beside it."""
    marks: list[Mark] = list(_outline_marks(template, placement, options))
    marks.extend(match_marks(template.marks, placement, template.label, options.kind))
    if template.dot_width and options.kind != "finished":
        width = float(template.dot_width) * POINTS_PER_INCH
        marks.extend(
            chain(*(dot_marks(spot, width, "dot", template.label) for spot in placement.spots(template.dots)))
        )
    if options.kind == "window":
        marks.extend(_ring_words(template, placement))
    for number, arrow in enumerate(label.arrows, 1):
        marks.extend(arrow_marks(arrow.first, arrow.last, "grain", template.label))
        if arrow.tag:
            marks.append(_tag_mark(arrow.tag, number, template.label))
    if label.top:
        marks.extend(centred_marks(label.lines, label.top, template.label))
    return marks


def _outline_marks(template: Template, placement: Placement, options: SheetOptions) -> list[PathMark]:
    """The cutting and sewing lines, as the kind of template and the setting ask."""
    label = template.label
    cut = _rings_path((template.cut, *template.cut_holes), placement)
    sew = _rings_path((template.sew, *template.sew_holes), placement)
    if options.kind == "finished":
        return [line_mark(sew, "sew", CUT, (), label)]
    if options.kind == "window":
        # The card is what lies between the lines; even-odd is not to be had, so the inside is painted white.
        return [
            PathMark(cut, BLACK, CUT, (), RING_SHADE, "cut", label),
            PathMark(sew, BLACK, CUT, (), (1.0, 1.0, 1.0), "sew", label),
        ]
    cut_dash, sew_dash = (SEW_DASH, ()) if options.lines == "cut-dashed" else ((), SEW_DASH)
    return [line_mark(cut, "cut", CUT, cut_dash, label), line_mark(sew, "sew", SEW, sew_dash, label)]


def _rings_path(rings: Rings, placement: Placement) -> tuple[Segment, ...]:
    return tuple(chain(*(ring_path(ring, placement) for ring in rings)))


def _ring_words(template: Template, placement: Placement) -> list[Mark]:
    """The letter, counts and title along the card of a window: its inside, label and all, is cut away.

    They run along the longest straight side, turned so that they are never upside down.
    """
    sides = [edge for edge in template.sew if edge.arc is None]
    if not sides:
        return []
    side = max(sides, key=lambda edge: round(edge.length, 6))
    a, b = placement.spot(side.start), placement.spot(side.end)
    size = hypot(b.x - a.x, b.y - a.y)
    ux, uy = (b.x - a.x) / size, (b.y - a.y) / size
    turn = degrees(atan2(uy, ux))
    turn = turn - 180 if turn > 90 else turn + 180 if turn <= -90 else turn
    x, y = (a.x + b.x) / 2 + uy * RING_MIDDLE, (a.y + b.y) / 2 - ux * RING_MIDDLE  # the card lies to the left
    drop = cap_height(SMALLEST) / 2
    text = lettering(shorten(beside_words(template), size - 2 * RING_MIDDLE, SMALLEST))
    c, s = cos(radians(turn)), sin(radians(turn))
    return [
        TextMark(
            x - drop * s, y + drop * c, text, SMALLEST, True, "middle", BLACK, "ring", template.label, turn
        )
    ]  # fmt: skip


def match_marks(
    found: Sequence[MatchMark], placement: Placement, subject: str, kind: str = "allowance"
) -> list[Mark]:
    """Ticks across the sewing line into the allowance; into the piece where the sheet has no allowance."""
    marks: list[Mark] = []
    for mark in found:
        at, (dx, dy) = placement.spot(mark.at), placement.direction(mark.toward)
        out = min(MATCH_LONG - MATCH_INSIDE, mark.allowance * POINTS_PER_INCH)
        inside = MATCH_INSIDE
        if kind == "finished":
            out, inside = 0.0, MATCH_LONG
        path = straight((at.x - dx * inside, at.y - dy * inside), (at.x + dx * out, at.y + dy * out))
        marks.append(line_mark(path, "match", MATCH, (), subject))
    return marks


def _tag_mark(tag: Spot, number: int, subject: str) -> TextMark:
    """The number of one of several arrows."""
    drop = tag.y + TAG_DROP
    return set_text(tag.x, drop, str(number), SMALLEST, True, "middle", role="label", subject=subject)


def centred_marks(lines: Sequence[SetLine], top: Spot, subject: str) -> list[TextMark]:
    """The lines of a label, each about the middle of `top`'s."""
    return [
        set_text(
            top.x,
            top.y + line.baseline,
            line.text,
            line.size,
            line.bold,
            "middle",
            role="label",
            subject=subject,
        )
        for line in lines
    ]


def beside_marks(label: Label, left: float, top: float, subject: str) -> list[Mark]:
    """The words beside a template, ranged left from their top left corner."""
    return [
        set_text(left, top + line.baseline, line.text, line.size, line.bold, role="label", subject=subject)
        for line in label.beside
    ]
