"""Templates for pieces of a setting or a border that no ruler cuts and no block has: S1, S2, ..."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from ...cutting.model import FabricCount, GrainArrow, Template
from ...cutting.needs import Need
from ...cutting.plan_model import CuttingPlan
from ...cutting.templates.allowance import outset
from ...geometry.motion import move_by
from ...quilt.model import Quilt
from .tables import fabric_titles, own_templates

DOTS: Final = Fraction(1, 16)  # inches, as for blocks


def setting_templates(quilt: Quilt, plan: CuttingPlan) -> tuple[Template, ...]:
    """A template for every cut that needs one of its own, straight of grain up the page."""
    return tuple(
        _template(quilt, quilt.needs[plan.cuts[number].need], letter)
        for number, letter in own_templates(quilt, plan).items()
    )


def _template(quilt: Quilt, need: Need, letter: str) -> Template:
    left = min(edge.start.x for edge in need.outline)
    top = min(edge.start.y for edge in need.outline)
    sew = tuple(move_by(-left, -top).edge(edge) for edge in need.outline)
    counts = (FabricCount(fabric_titles(quilt)[need.fabric], need.count, need.reversed),)
    return Template(
        label=letter, block_title=quilt.title, version=quilt.version, maker=quilt.maker,
        block_width=quilt.width, block_height=quilt.height, sew=sew, sew_holes=(),
        cut=outset(sew, need.allowances),
        cut_holes=(), dots=tuple(edge.start for edge in sew), dot_width=DOTS, marks=(),
        grain=(GrainArrow(0.0, (1,)),), counts=counts, reversible=need.reversible, pieces=(1,),
    )  # fmt: skip
