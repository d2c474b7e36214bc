"""Random natural blocks through the whole compile: how many come out, and every text that fails.

    python tests/benchmarks/bench_natural_blocks.py            # 2,000 blocks
    python tests/benchmarks/bench_natural_blocks.py 100000     # as many
    python tests/benchmarks/bench_natural_blocks.py 5000 7000  # 5,000, from seed 7000 on

A failure is a block that is clean and yet is not sewn again as printed, or an exception. Exits with 1 if
there is any.
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).parent.parent))

from support.natural_blocks import natural_block, outcome_of


def main(count: int = 2000, first: int = 0) -> int:
    """Compiles the blocks of so many seeds and says what came of them."""
    found: Counter[str] = Counter()
    slowest = (0.0, 0)
    for seed in range(first, first + count):
        begun = perf_counter()
        what, failure = outcome_of(natural_block(seed))
        slowest = max(slowest, (perf_counter() - begun, seed))
        found[what] += 1
        if failure:
            print(f"seed {seed}: {failure}\n{natural_block(seed)}", flush=True)
    for what, number in found.most_common():
        print(f"{number:7} {what}")
    print(f"slowest: seed {slowest[1]}, {slowest[0]:.2f}s")
    return 1 if found["block-does-not-sew"] + found["exception"] else 0


if __name__ == "__main__":
    sys.exit(main(*(int(each) for each in sys.argv[1:])))
