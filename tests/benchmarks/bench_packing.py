"""How well templates are packed: used area / bound area over the whole library. Run by hand.

Used is the area of the templates' cut outlines; bound is the box round all of them on their page. Tiled
templates are left out: their pages are theirs alone.

    python tests/benchmarks/bench_packing.py
"""

from __future__ import annotations

import sys
from pathlib import Path

import shapely

sys.path.insert(0, str(Path(__file__).parent.parent))

from piecewright.sheets.arrange.block_sheets import arrange_block
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.page import Page, PathMark
from support.library import compiled, library_sources


def areas(page: Page) -> tuple[float, float]:
    """Square points used and bound on one page; nothing on pages without whole templates."""
    outlines = [
        shapely.Polygon([segment[-2:] for segment in mark.path if segment[0] != "Z"])
        for mark in page.marks
        if isinstance(mark, PathMark) and mark.role == "cut" and mark.clip is None and mark.subject
    ]
    if not outlines:
        return 0.0, 0.0
    left, top, right, bottom = shapely.total_bounds(outlines)
    return sum(each.area for each in outlines), (right - left) * (bottom - top)


def main() -> None:
    """A line a block, and the whole library's."""
    whole = [0.0, 0.0]
    pages = 0
    blocks = [
        block
        for source in library_sources()
        for block in compiled(source).value or ()
        if not block.from_elsewhere
    ]
    for block in blocks:
        used = bound = 0.0
        document = arrange_block(block.draft, block.templates, SheetOptions())
        for page in document.pages[1:]:
            if "tile" in page.title:
                continue
            u, b = areas(page)
            used, bound, pages = used + u, bound + b, pages + 1
        if bound:
            print(f"{used / bound:5.2f}  {block.draft.title} ({len(document.pages)} pages)")
        whole[0] += used
        whole[1] += bound
    print(f"{whole[0] / whole[1]:5.3f}  the whole library, {pages} pages of templates")


if __name__ == "__main__":
    main()
