"""How long the cloth is that templates are cut from, beside spyrrow's on the same shapes. Run by hand.

Spyrrow (a general-purpose packer of irregular shapes) gets 30 seconds for each set, and may nest shapes
freely; our templates lie in rows that a rotary cutter can part. The aim is no more than 1.10 x its length.

    python tests/benchmarks/bench_nesting.py [title of a set ...]
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path

import spyrrow

sys.path.insert(0, str(Path(__file__).parent.parent))

from piecewright.cutting.needs import Need
from piecewright.cutting.plan_model import Cut, CuttingPlan
from piecewright.cutting.plans.plan import plan_cutting
from support.needs import NO_MARGIN
from support.template_sets import SETS, template_quilt

SECONDS = 30
AIM = 1.10
WIDTH = 42.0
SEED = 4
TURNS = [0.0, 90.0, 180.0, 270.0]


def items_of(cut: Cut, need: Need) -> list[spyrrow.Item]:
    """The shapes of a cut, those of the other hand apart; along the grain and across, as our plan lays
    them."""
    back = 0 if need.reversible else need.reversed
    mirrored = [(-x, y) for x, y in cut.outline]
    hands = [("drawn", list(cut.outline), cut.pieces - back), ("mirrored", mirrored, back)]
    return [
        spyrrow.Item(f"{need.label} {hand}", outline, count, TURNS) for hand, outline, count in hands if count
    ]


def theirs(plan: CuttingPlan, needs: Sequence[Need]) -> float:
    """Inches of cloth that spyrrow takes."""
    items = [item for cut in plan.cuts for item in items_of(cut, needs[cut.need])]
    packed = spyrrow.StripPackingInstance("set", strip_height=WIDTH, items=items)
    settings = spyrrow.StripPackingConfig(total_computation_time=SECONDS, seed=SEED)
    return float(packed.solve(settings).width)


def main(titles: list[str]) -> None:
    """A line a set."""
    worst = 0.0
    for title in titles or SETS:
        quilt = template_quilt(title)
        outcome = plan_cutting(quilt, margin=NO_MARGIN)
        assert outcome.value is not None, outcome.diagnostics
        (ours,) = outcome.value.fabrics
        other = theirs(outcome.value, quilt.needs)
        bound = ours.area / WIDTH
        ratio = float(ours.used) / other
        worst = max(worst, ratio)
        print(
            f"{ratio:5.3f}  {title}: {float(ours.used):.2f}in, spyrrow {other:.2f}in, area {bound:.2f}in",
            flush=True,
        )
    print(f"{worst:5.3f}  at worst (aim {AIM})")


if __name__ == "__main__":
    main(sys.argv[1:])
