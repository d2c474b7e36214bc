"""A whole process from cold to a finished PDF of one block, beside an interpreter that only imports shapely
and cairocffi and writes one bare page. Run by hand:

    python tests/benchmarks/bench_cold.py

The two run in turn, so that both meet the same load; times and the ratio are medians.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path
from statistics import median
from time import perf_counter

sys.path.insert(0, str(Path(__file__).parent.parent))

from support.block_files import VANE

COLD_ROUNDS = 15
COMPILED = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
"""The environment, but that modules are kept compiled, as an installed program's are."""

BARE = """
import shapely, cairocffi, sys
surface = cairocffi.PDFSurface(sys.argv[1], 612, 792)
context = cairocffi.Context(surface)
context.rectangle(72, 72, 72, 72)
context.stroke()
surface.finish()
"""

BLOCK = VANE.replace("Tidewater Vane", "Bench Vane")


def cold_seconds(command: list[str]) -> float:
    start = perf_counter()
    subprocess.run(command, capture_output=True, check=True, env=COMPILED)
    return perf_counter() - start


def main() -> None:
    """Prints the ratio."""
    with tempfile.TemporaryDirectory() as folder:
        bare = Path(folder) / "bare.py"
        bare.write_text(BARE)
        block = str(Path(folder) / "bench.block")
        Path(block).write_text(BLOCK)
        build = [sys.executable, "-m", "piecewright", "build", block, "--out", folder]
        empty = [sys.executable, str(bare), str(Path(folder) / "bare.pdf")]
        for command in (build, empty):  # once before, so that compiled modules and the disk are warm for both
            done = subprocess.run(command, capture_output=True, text=True, check=False, env=COMPILED)
            if done.returncode:
                print(f"cold: not measured, `{' '.join(command[1:])}` says: {done.stderr[-300:]}")
                return
        pairs = [(cold_seconds(build), cold_seconds(empty)) for _ in range(COLD_ROUNDS)]  # in turn: like load
    whole, bare_page = (median(times) for times in zip(*pairs, strict=True))
    ratio = median(build / empty for build, empty in pairs)
    print("one block, from cold to a finished PDF, milliseconds")
    print(f"  piecewright build     {whole * 1000:7.0f}")
    print(f"  imports and bare page {bare_page * 1000:7.0f}   piecewright takes {ratio:5.2f} x (bound 1.6)")


if __name__ == "__main__":
    main()
