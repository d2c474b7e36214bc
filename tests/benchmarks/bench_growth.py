"""How cost grows: 10,000 pieces beside 1,000, 200 template pages, and many files beside few. Run by hand.

python tests/benchmarks/bench_growth.py
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from pathlib import Path

PAIR = """edition 1
block "Pair" { finished 3in faces top-left
  seam bottom-left -- top-right
  piece near at top-left in dark
  piece far at bottom-right in pale
}
"""


def grid(across: int, down: int) -> str:
    """A block of 2 x across x down pieces."""
    return (
        PAIR + f'block "Field" {{ grid {across} x {down} of 3in\n  use "Pair" as pair\n'
        "  alternate pair, pair turned 90deg }\n"
    )


def fans(count: int) -> str:
    """So many blocks, each with a page of different templates."""
    blocks = ["edition 1\n"]
    for number in range(count):
        blocks.append(
            f'block "Fan {number}" {{ finished 6in\n'
            f"  point a = 1.{number + 1:03d}in from top-left to top-right\n"
            f"  point b = 2.{number + 1:03d}in from bottom-left to bottom-right\n"
            "  seam a -- b\n  seam a -- bottom-right\n"
            "  piece one at bottom-left in dark\n  piece two at bottom in pale\n"
            "  piece three at right in light\n}\n"
        )
    return "".join(blocks)


def run(*words: str) -> tuple[float, int]:
    """Seconds of a whole process, and its peak memory in kilobytes."""
    code = (
        "import resource, sys\nfrom piecewright.command_line.main import run\n"
        "status = run(sys.argv[1:])\n"
        "print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss, file=sys.stderr)\nsys.exit(status)"
    )
    start = time.perf_counter()
    ended = subprocess.run([sys.executable, "-c", code, *words], capture_output=True, text=True, check=True)
    return time.perf_counter() - start, int(ended.stderr.split()[-1])


def growth(command: str, small: float, large: float) -> str:
    """What ten times the pieces cost."""
    times = f"1,000 pieces {small:.2f} s, 10,000 pieces {large:.2f} s"
    return f"{command}: {times}: {large / small:.1f} x (bound 12)"


def main() -> None:
    """Prints every ratio."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "one.block").write_text(grid(25, 20))
        (folder / "ten.block").write_text(grid(100, 50))
        (folder / "fans.block").write_text(fans(200))
        few, many = folder / "few", folder / "many"
        for place, count in ((few, 10), (many, 200)):
            place.mkdir()
            for number in range(count):
                (place / f"fan-{number}.block").write_text(fans(1).replace("Fan 0", f"Fan {number}"))
        small = min(run("check", str(folder / "one.block"))[0] for _ in range(3))
        large = min(run("check", str(folder / "ten.block"))[0] for _ in range(3))
        print(growth("check", small, large))
        small = run("build", str(folder / "one.block"), "--out", str(folder / "out"))[0]
        large = run("build", str(folder / "ten.block"), "--out", str(folder / "out"))[0]
        print(growth("build", small, large))
        seconds = run("build", str(folder / "fans.block"), "--out", str(folder / "out"))[0]
        print(
            f"build: 200 blocks, 600 pages: {seconds:.2f} s, "
            f"{1000 * seconds / 600:.1f} ms a page, all counted"
        )
        first, last = (
            run("build", str(few), "--out", str(folder / "out"))[1],
            run("build", str(many), "--out", str(folder / "out"))[1],
        )
        print(f"memory: 10 files {first / 1024:.0f} MB, 200 files {last / 1024:.0f} MB: {last / first:.2f} x")


if __name__ == "__main__":
    main()
