"""What a whole quilt costs: cold, again with nothing changed, and with one block changed. Run by hand:

    python tests/benchmarks/bench_quilts.py

1. A sampler of 100 blocks of ten kinds, about 3,000 pieces, from a cold process to its finished PDF; and its
   pages beside the same marks drawn straight by cairocffi's own methods.
2. The same command again, beside Python's own start.
3. The same command after one block was changed, with what it says it reused.

Every time is the least of several; ratios are of times of this run.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from fractions import Fraction
from pathlib import Path
from time import perf_counter

from bench_pages import by_cairocffi, least
from piecewright.door.choices import cutting_of
from piecewright.door.compiling import compile_input
from piecewright.door.inputs import one_input
from piecewright.planning import Cutting
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.drawing import ink
from piecewright.sheets.drawing.files import pdf_bytes
from piecewright.sheets.page import Document
from piecewright.sheets.quilts.sheets import arrange_quilt
from piecewright.shelves.folders import FolderShelf, library_folder

KINDS = 10
ROUNDS = 3
START_ROUNDS = 15


def block(number: int, shift: int = 0) -> str:
    """A block of 32 pieces and 8 templates; no two blocks share one."""
    knee, heel = 700 + 23 * number + shift, 900 + 31 * number
    return f"""
block "Bench Star {number}" version 1 {{
  finished 6in
  grid 2 x 2
  point knee = {knee / 1000:.3f}in from B1 to C1
  point heel = {heel / 1000:.3f}in from C2 to C1
  point hub = {(knee + 500) / 1000:.3f}in from center to B1
  point rim = {(heel + 300) / 1000:.3f}in from center to C2
  turn 4 about center {{
    seam center -- B1
    seam center -- knee -- heel -- center
    seam center -- C1
    seam hub -- knee
    seam rim -- heel
    piece tip at between center, hub, knee in dark
    piece ray at between center, rim, heel in medium
    piece wing at between hub, B1, knee in light
  }}
}}
"""


def sampler(shift: int = 0) -> str:
    """100 blocks, with sashing and a border. `shift` changes block 0 by so many thousandths."""
    uses = "".join(f'  use "Bench Star {n}" version 1 as star{n}\n' for n in range(KINDS))
    blocks = "".join(block(n, shift if n == 0 else 0) for n in range(KINDS))
    cells = ", ".join(f"star{n}" for n in range(KINDS))
    return f"""edition 1
{blocks}
quilt "Bench Sampler" version 1 {{
{uses}
  fabric navy
  fabric sand
  fabric rust
  roles dark = navy, light = sand, medium = rust, background = sand
  set straight 10 across 10 down of 6in {{ alternate {cells} }}
  sashing 1in in sand posts in navy
  border 3in in navy
  binding 2 1/4in in navy
  backing in sand 4in over
  batting 4in over
}}
"""


def build(file: Path, folder: Path) -> tuple[float, str]:
    """Seconds of a whole process, and what it said."""
    command = [sys.executable, "-m", "piecewright", "build", str(file), "--out", str(folder / "out")]
    environment = {**os.environ, "PIECEWRIGHT_CACHE": str(folder / "kept")}
    start = perf_counter()
    ended = subprocess.run(command, capture_output=True, text=True, check=True, env=environment)
    return perf_counter() - start, ended.stdout


def document_of(file: Path) -> tuple[Document, int]:
    """The quilt's pages, made in this process, and how many pieces its top has."""
    cutting: Cutting = cutting_of(Fraction(1, 8), None, None)
    (planned,) = compile_input(one_input(str(file)), FolderShelf(library=library_folder()), cutting).planned
    return arrange_quilt(planned.quilt, planned.plan, SheetOptions()), len(planned.quilt.pieces)


def bench_cold(file: Path, folder: Path) -> None:
    """From nothing to the PDF, and the drawing alone beside cairocffi's own methods."""
    build(file, folder)  # once before, so that compiled modules and the disk are warm
    times = []
    for _ in range(ROUNDS):
        subprocess.run(["rm", "-r", str(folder / "kept")], check=False)
        times.append(build(file, folder)[0])
    document, pieces = document_of(file)
    ink.load()
    pages = list(document.pages)
    ours, plain = least(lambda _: pdf_bytes(document), ROUNDS), least(lambda _: by_cairocffi(pages), ROUNDS)
    share = 1000 / len(pages)
    print(f"100 blocks of {KINDS} kinds, {pieces} pieces, {len(pages)} pages: {min(times):.2f} s from cold")
    print(f"  all of it             {min(times) * share:7.2f} ms a page")
    print(f"  drawing alone         {ours * share:7.2f} ms a page")
    print(f"  cairocffi's methods   {plain * share:7.2f} ms a page   drawing takes {ours / plain:5.2f} x")


def bench_again(file: Path, folder: Path) -> None:
    """Nothing changed."""
    pairs = []
    for _ in range(START_ROUNDS):
        start = perf_counter()
        subprocess.run([sys.executable, "-c", "pass"], check=True)
        pairs.append((perf_counter() - start, build(file, folder)[0]))
    bare, again = (min(times) for times in zip(*pairs, strict=True))
    print(
        f"nothing changed: {again * 1000:.0f} ms; Python's own start {bare * 1000:.0f} ms: "
        f"{again / bare:.2f} x"
    )


def bench_changed(file: Path, folder: Path) -> None:
    """One block of ten changed, each time otherwise."""
    for number in range(1, ROUNDS + 1):
        file.write_text(sampler(shift=number))
        seconds, said = build(file, folder)
        print(f"one block changed: {seconds:.2f} s. {said.strip().splitlines()[-1]}")


def main() -> None:
    """Prints every figure."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        file = folder / "sampler.quilt"
        file.write_text(sampler())
        bench_cold(file, folder)
        bench_again(file, folder)
        bench_changed(file, folder)


if __name__ == "__main__":
    main()
