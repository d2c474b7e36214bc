"""Every ratio promised for blocks, in one run. Run by hand, on a machine that does nothing else.

    python tests/benchmarks/bench_blocks.py

From cold to a finished PDF; drawing alone, and geometry included, beside cairocffi and typst; how cost grows
with pieces, and memory with files; how densely the library's templates are packed; what the order of
sewing costs with its proof.
"""

from __future__ import annotations

import bench_cold
import bench_growth
import bench_packing
import bench_pages
import bench_sewing

if __name__ == "__main__":
    bench_cold.main()
    bench_growth.main()  # before pages: a process counts what the one that started it held as its own peak
    bench_pages.main()
    bench_packing.main()
    bench_sewing.main()
