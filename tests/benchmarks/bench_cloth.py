"""How much cloth twelve varied quilts take beside their pieces' area, before the margin. Run by hand.

Of cloth off the bolt all that is cut off counts; of fat quarters and scraps all but what the last keeps
whole. Then sheets cut apart into boxes, so that the least cloth is known: how much the plan takes for them.

    python tests/benchmarks/bench_cloth.py
"""

from __future__ import annotations

import sys
from pathlib import Path
from statistics import mean, median

sys.path.insert(0, str(Path(__file__).parent.parent))

from piecewright.cutting.plan_model import FabricPlan
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.cutting.plans.scraps import pack_scraps
from piecewright.cutting.plans.strips import length_of, pack_bolt
from piecewright.words.work.cloth import bought_words
from support.jigsaws import jigsaw
from support.needs import NO_MARGIN
from support.random_quilts import TWELVE, cloth_used, compiled_quilt

FAT_QUARTER = (168, 144)  # eighths of an inch
SHEETS = 4


def line_of(plan: FabricPlan) -> str:
    """`indigo 1.102 of 1 1/2 yd`."""
    return f"{plan.fabric} {cloth_used(plan) / plan.area:.3f} ({bought_words(plan)})"


def main() -> None:
    """A line a quilt, the median, and a line for each fineness of cutting apart."""
    ratios = []
    for text in TWELVE:
        quilt = compiled_quilt(text)
        outcome = plan_cutting(quilt, margin=NO_MARGIN)
        assert outcome.value is not None, outcome.diagnostics
        fabrics = outcome.value.fabrics
        ratios.append(sum(map(cloth_used, fabrics)) / sum(each.area for each in fabrics))
        print(f"{ratios[-1]:.3f}  {quilt.title}: {', '.join(map(line_of, fabrics))}")
    print(f"{median(ratios):.3f}  median (aim 1.10), {max(ratios):.3f} at worst")
    for pieces in (17, 25, 49):
        made = [jigsaw(seed, 1, 336, 336, pieces, 8) for seed in range(16)]
        lengths = [length_of(pack_bolt(kinds, counts, 336)) / 336 for kinds, counts in made]
        print(
            f"{mean(lengths):.3f} x the least length, {max(lengths):.3f} at worst: "
            f"42in square in {pieces} boxes"
        )
    for pieces in (5, 9):
        made = [jigsaw(seed, SHEETS, *FAT_QUARTER, pieces, 8) for seed in range(16)]
        many = [len(pack_scraps(*each, [FAT_QUARTER] * 2 * SHEETS).cuts) for each in made]
        print(f"{mean(many):.2f} fat quarters, {max(many)} at worst: {SHEETS} in {pieces} boxes each")


if __name__ == "__main__":
    main()
