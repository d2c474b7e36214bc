"""Papers have their standard sizes; a paper we do not know is refused with the nearest we do."""

from fractions import Fraction

import pytest
from piecewright.sheets.paper import PaperUnknown, paper_named


def test_letter():
    """8.5 x 11in: W3C CSS Paged Media 3, `letter`, after ANSI."""
    paper = paper_named("Letter")
    assert (paper.width, paper.height) == (Fraction("8.5"), 11)
    assert (paper.width_points, paper.height_points) == (612, 792)


def test_a4():
    """210 x 297mm: ISO 216; W3C CSS Paged Media 3, `A4`; an inch is 25.4mm exactly."""
    paper = paper_named("A4")
    assert (paper.width * Fraction("25.4"), paper.height * Fraction("25.4")) == (210, 297)
    assert (paper.width_points, paper.height_points) == pytest.approx((595.2756, 841.8898), abs=1e-4)


@pytest.mark.parametrize("name, offered", [
    ("leter", "`letter`"), ("a 4", "`a4`"), ("legal", "letter"), ("", "a4"),
])  # fmt: skip
def test_an_unknown_paper_is_refused(name, offered):
    with pytest.raises(PaperUnknown, match=offered):
        paper_named(name)
