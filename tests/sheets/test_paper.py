"""Papers have their standard sizes."""

from fractions import Fraction

import pytest
from piecewright.sheets.paper import paper_named


def test_letter():
    """8.5 x 11in: W3C CSS Paged Media 3, `letter`, after ANSI."""
    paper = paper_named("letter")
    assert (paper.width, paper.height) == (Fraction("8.5"), 11)
    assert (paper.width_points, paper.height_points) == (612, 792)


def test_a4():
    """210 x 297mm: ISO 216; W3C CSS Paged Media 3, `A4`; an inch is 25.4mm exactly."""
    paper = paper_named("a4")
    assert (paper.width * Fraction("25.4"), paper.height * Fraction("25.4")) == (210, 297)
    assert (paper.width_points, paper.height_points) == pytest.approx((595.2756, 841.8898), abs=1e-4)
