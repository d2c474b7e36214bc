"""What a whole quilt costs. Run by hand:

    python tests/benchmarks/bench_quilts.py

A sampler of 100 blocks of ten kinds, about 3,000 pieces, from a cold process to its finished PDF; and its
pages beside the same marks drawn straight by cairocffi's own methods. Every time is the least of several.
"""

from __future__ import annotations

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
from piecewright.sheets.documents import sheets
from piecewright.sheets.drawing import ink
from piecewright.sheets.drawing.files import pdf_bytes
from piecewright.sheets.page import Document
from piecewright.sheets.work import Work
from piecewright.shelves.folders import FolderShelf, library_folder

KINDS = 10
ROUNDS = 3


def block(number: int) -> str:
    """A block of 32 pieces and 8 templates; no two blocks share one."""
    knee, heel = 700 + 23 * number, 900 + 31 * number
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


def sampler() -> str:
    """100 blocks, with sashing and a border."""
    uses = "".join(f'  use "Bench Star {n}" version 1 as star{n}\n' for n in range(KINDS))
    blocks = "".join(block(n) for n in range(KINDS))
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


def build(file: Path, folder: Path) -> float:
    """Seconds of a whole process."""
    command = [sys.executable, "-m", "piecewright", "build", str(file), "--out", str(folder / "out")]
    start = perf_counter()
    subprocess.run(command, capture_output=True, check=True)
    return perf_counter() - start


def document_of(file: Path) -> tuple[Document, int]:
    """The quilt's pages, made in this process, and how many pieces its top has."""
    cutting: Cutting = cutting_of(Fraction(1, 8), None).for_text("")
    (planned,) = compile_input(one_input(str(file)), FolderShelf(library=library_folder()), cutting).planned
    return sheets(Work(planned), "", SheetOptions()), len(planned.quilt.pieces)


def bench_cold(file: Path, folder: Path) -> None:
    """From nothing to the PDF, and the drawing alone beside cairocffi's own methods."""
    build(file, folder)  # once before, so that compiled modules and the disk are warm
    times = [build(file, folder) for _ in range(ROUNDS)]
    document, pieces = document_of(file)
    ink.load()
    pages = list(document.pages)
    ours, plain = least(lambda _: pdf_bytes(document), ROUNDS), least(lambda _: by_cairocffi(pages), ROUNDS)
    share = 1000 / len(pages)
    print(f"100 blocks of {KINDS} kinds, {pieces} pieces, {len(pages)} pages: {min(times):.2f} s from cold")
    print(f"  all of it             {min(times) * share:7.2f} ms a page")
    print(f"  drawing alone         {ours * share:7.2f} ms a page")
    print(f"  cairocffi's methods   {plain * share:7.2f} ms a page   drawing takes {ours / plain:5.2f} x")


def main() -> None:
    """Prints every figure."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        file = folder / "sampler.quilt"
        file.write_text(sampler())
        bench_cold(file, folder)


if __name__ == "__main__":
    main()
