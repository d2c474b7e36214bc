"""How long a large shelf takes to index, and to list and search afterwards. By hand:

python tests/benchmarks/bench_shelves.py [BLOCKS]      20,000 where no number is given
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

COLOURS = ("dark", "light", "medium")
A_FOLDER = 500  # files


def block_text(number: int) -> str:
    """A nine-patch with four two-triangle squares of the library, no two alike."""
    colour = [COLOURS[number // 3**place % 3] for place in range(5)]
    return f"""edition 1

block "Patch {number}" version 1 {{
  grid 3 x 3 of 2in
  family nine-patch
  also "Scrap {number % 5000}"
  use "Half-Square Triangle" version 1 as half
  row half, plain {colour[0]}, half facing bottom-left
  row plain {colour[1]}, plain {colour[2]}, plain {colour[3]}
  row half facing top-right, plain {colour[4]}, half facing bottom-right
}}
"""


def fill(folder: Path, count: int) -> None:
    """The shelf."""
    for number in range(count):
        path = folder / f"{number // A_FOLDER:03}" / f"patch-{number:05}.block"
        path.parent.mkdir(exist_ok=True)
        path.write_text(block_text(number))


def seconds(home: Path, *arguments: str) -> float:
    """How long a search takes, from a process of its own."""
    command = [sys.executable, "-m", "piecewright", "find", *arguments, "--shelf", str(home / "shelf")]
    start = perf_counter()
    subprocess.run(command, check=True, capture_output=True, env={"PIECEWRIGHT_CACHE": str(home / "kept")})
    return perf_counter() - start


def main() -> None:
    """Prints the three figures."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 20_000
    with TemporaryDirectory() as name:
        home = Path(name)
        (home / "shelf").mkdir()
        fill(home / "shelf", count)
        print(f"{count:,} blocks: first search, with indexing  {seconds(home, 'Patch 199'):7.2f} s")
        print(f"{count:,} blocks: search again                 {seconds(home, 'Patch 199'):7.2f} s")
        print(f"{count:,} blocks: list them all                {seconds(home):7.2f} s")


if __name__ == "__main__":
    main()
