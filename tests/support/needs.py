"""Needs and small quilts built by hand, for tests of cutting. Inches; outlines lie as they are cut."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from piecewright.cutting.needs import Fabric, Need, Scrap
from piecewright.cutting.plans.yardage import Margin
from piecewright.quilt.model import Quilt

from .random_pieces import ring_edges

QUARTER = Fraction(1, 4)
NO_MARGIN = Margin(Fraction(0), Fraction(0))


def need(
    corners: Sequence[tuple],
    count: int = 1,
    *,
    back: int = 0,
    fabric: str = "sand",
    part: str = "blocks",
    what: str = "patch",
    allowances: Sequence[Fraction] | Fraction = QUARTER,
    unjoined: bool = False,
    reversible: bool | None = None,
) -> Need:
    """Pieces of one shape. `allowances`: one for all sides, or each side's."""
    edges = ring_edges(corners)
    widths = tuple(allowances) if isinstance(allowances, Sequence) else (allowances,) * len(edges)
    return Need(
        fabric,
        part,
        what,
        edges,
        widths,
        count,
        back,
        back == 0 if reversible is None else reversible,
        unjoined=unjoined,
    )


def box(width, height):
    """A rectangle's corners."""
    return [(0, 0), (width, 0), (width, height), (0, height)]


def half_square(leg):
    """Legs on the grain."""
    return [(0, 0), (leg, 0), (0, leg)]


def quarter_square(long):
    """Long side across the grain."""
    return [(0, 0), (long, 0), (long / 2, long / 2)]


def fabric(name: str = "sand", width=42, scraps: Sequence[Scrap] = (), **facts) -> Fabric:
    """A fabric off the bolt, or scraps."""
    return Fabric(
        name, name, Fraction(width), Fraction(facts.pop("shrinkage", 0)), scraps=tuple(scraps), **facts
    )


def quilt(
    needs: Sequence[Need], fabrics: Sequence[Fabric] | None = None, *, binding=None, backing=None
) -> Quilt:
    """A quilt of no blocks that needs just these pieces."""
    names = list(dict.fromkeys(each.fabric for each in needs))
    cloths = tuple(fabrics) if fabrics is not None else tuple(fabric(name) for name in names)
    return Quilt("Trial", 1, "", 60, 72, (), (), (), cloths, tuple(needs), binding, backing, None, (), "rows")
