"""What is true of every template, checked each time one is made. What breaks here is a bug."""

from __future__ import annotations

from collections.abc import Sequence

from ...drafting.model import Piece
from ...geometry.edge import Edge
from ...geometry.stroke import Stroke, doubled_area, stroke_of
from ...measure.tolerance import AREA_SLACK, STEP_IN
from ..model import Template
from .crossing import winding


def check_template(template: Template, piece: Piece) -> None:
    """Asserts that the sewing lines enclose the piece's area and lie within the cut outline."""
    sew = [[stroke_of(edge) for edge in ring] for ring in (template.sew, *template.sew_holes)]
    cut = [[stroke_of(edge) for edge in ring] for ring in (template.cut, *template.cut_holes)]
    area = sum(doubled_area(ring) for ring in sew) / 2
    slack = AREA_SLACK * (1 + sum(stroke.length for ring in sew for stroke in ring))
    assert abs(area - float(piece.area)) <= slack, (
        f"template {template.label} encloses {area} square inches, its piece {float(piece.area)}"
    )
    cut_area = sum(doubled_area(ring) for ring in cut) / 2
    assert cut_area >= area - slack, f"template {template.label} is cut to {cut_area}, sewn to {area}"
    for ring in sew:
        assert covers(cut, ring), f"template {template.label} is cut into its cloth"
    _check_closed(template.label, (template.cut, *template.cut_holes))


def covers(cut: Sequence[Sequence[Stroke]], sew: Sequence[Stroke]) -> bool:
    """Whether cut rings go round the cloth beside the middle of every sewing line."""
    return all(_goes_round(cut, stroke.at(0.5) + stroke.direction(0.5) * 1j * STEP_IN) for stroke in sew)


def _goes_round(rings: Sequence[Sequence[Stroke]], place: complex) -> bool:
    return round(sum(winding(ring, place) for ring in rings)) >= 1


def _check_closed(label: str, rings: Sequence[Sequence[Edge]]) -> None:
    for ring in rings:
        for at, edge in enumerate(ring):
            assert ring[at - 1].end == edge.start, f"template {label} has a broken cut line at {edge.start}"
