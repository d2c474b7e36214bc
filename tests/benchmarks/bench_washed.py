"""How often a washed block's true draft is found: run by hand, `python tests/benchmarks/bench_washed.py`.

A thousand grid blocks drawn at random, shrunk by up to 6 per cent each way, leaning by up to 2, and read with
an error of up to 1/16in.
"""

from __future__ import annotations

import sys
import time
from collections import Counter
from pathlib import Path
from random import Random

sys.path.insert(0, str(Path(__file__).parent.parent))
from support.washed_blocks import measure, place_of_truth, washed_block

CASES = 1000


def main() -> None:
    """Prints the figures."""
    begun = time.perf_counter()
    places: Counter[int | None] = Counter()
    for seed in range(CASES):
        block = washed_block(Random(seed))
        places[place_of_truth(block, measure(block.text).grids)] += 1
    taken = time.perf_counter() - begun
    three = sum(count for place, count in places.items() if place is not None and place < 3)
    print(
        f"{CASES} washed blocks: true draft first in {places[0] / CASES:.1%}, among three in "
        f"{three / CASES:.1%}, not offered in {places[None] / CASES:.1%}; "
        f"{1000 * taken / CASES:.0f} ms each"
    )


if __name__ == "__main__":
    main()
