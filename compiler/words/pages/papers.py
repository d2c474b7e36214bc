"""The words of sewing over paper pieces by hand; and how papers of either kind serve a block's copies."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

from ..phrases import count_of

if TYPE_CHECKING:
    from ...drafting.model import Draft
    from ...sheets.work import CutOut, WorkBlock
    from ..say import Say

TITLE: Final = "Paper pieces"
LETTER: Final = "letter"
PAPERS: Final = "papers"
FABRIC: Final = "fabric"
NUMBERS: Final = "numbers"
ALL: Final = "all"
CAPTION: Final = "Papers by letter"
PICTURED: Final = "The block from the front, every piece with the letter and number of its paper."
PICTURE: Final = "From the front: where each paper lies, by its letter and number."

SAFETY: Final = (
    "Scissors are sharp: cut paper away from your fingers; keep scissors and needles from children; follow "
    "the maker’s instructions."
)

PAPERS_OUT: Final = (
    "Leave each paper in until all its neighbours are whipped on; those on the outside of the block stay in "
    "until what comes next to it is whipped on, or come out just before that is sewn on by machine.",
    "Press at the end, with the papers in: lift the iron and set it down, do not push. The folds hold the "
    "allowances, so nothing is pressed to one side.",
    "Then take the basting out and lift the papers out; they can be used again.",
)
"""When papers come out, and how the block is pressed (common practice, no published source)."""

MIRRORED: Final[dict[CutOut, str]] = {
    "": "For a mirrored block trace the lines through onto the back of its papers, and sew from that side.",
    "paper-shape": "For a mirrored block lay the papers with the print on the cloth.",
}
"""How papers, which are printed mirrored, serve a block that lies mirrored in the quilt."""


def number_words(count: int) -> str:
    """`16 papers, one for every piece of the block.`"""
    return f"{count_of(count, 'paper')}, one for every piece of the block."


def sheet_words(first: str, last: str, tile: str) -> str:
    """`paper pieces A–C, tile 1`."""
    several = f"{first}–{last}" if first != last else first
    return f"paper pieces {several}{f', {tile}' if tile else ''}"


def count_on_page(count: int) -> str:
    """`finished size, mirrored; 5 papers on this page`."""
    return f"finished size, mirrored; {count_of(count, 'paper')} on this page"


def copies_words(block: WorkBlock) -> Iterator[str]:
    """How often papers are printed, and what cuts the cloth, for a block that a quilt has so many times, some
    of them mirrored; nothing of a block alone."""
    if block.work.alone:
        return
    times = block.times
    if block.cut_out == "paper-shape":
        again = f" The quilt has {times}: print them for each, or use them again." if times > 1 else ""
        yield f"These are the papers of one block.{again}"
    elif times == 1:
        yield "The quilt has one of this block; the cutting chart cuts the cloth for its patches."
    else:
        yield f"Print the papers for each block: the cutting chart cuts the cloth for all {times}."
    if block.mirrored:
        yield MIRRORED[block.cut_out]


def how_words(say: Say, draft: Draft) -> tuple[str, ...]:
    """How a block is sewn over paper, step by step (common practice, no published source)."""
    stitches = "6 or 7 to the centimetre" if say.unit == "cm" else "14 to 18 to the inch"
    curved = any(side.edge.arc for piece in draft.pieces for side in piece.ring)
    told = [
        "Cut every paper on its line, exactly: the papers are finished size, and their edges are the seams. "
        "Light card or heavy paper holds its edge best.",
        "Lay each paper on the wrong side of its cloth, the print toward you: the papers are mirrored, so "
        "that the block comes out right on the front. Pin or dab with glue.",
        f"Cut the cloth about {say.length(draft.allowance)} larger all round. It need not be exact, but "
        "on the outside of the block it must not be less.",
        "Fold the allowance over the paper, one edge after another, and baste it: through both, "
        "or at the corners only. At a sharp point fold one edge over the other and let the tail hang.",
        "Lay two neighbours right sides together, edges level, and whip the edges from corner to corner: "
        f"small stitches, {stitches}, through the folds and not through the paper. Knot well.",
        "At a set-in corner sew up to the corner, fold the papers softly, and go on along the next edge.",
        *PAPERS_OUT,
    ]
    if curved:
        told.insert(4, "At an inner curve clip the allowance, not quite to the paper, so that it lies flat.")
    return tuple(told)
