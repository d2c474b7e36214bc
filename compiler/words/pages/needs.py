"""What you need: the words of the supply list."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil
from typing import Final

from ..phrases import count_of, one_of
from ..say import Say

YARD_IN_METRES: Final = 0.9144  # exactly (the yard of 1959)

TITLE: Final = "What you need"
FABRIC: Final = "fabric"
BUY: Final = "buy"
COUNTED: Final = "counted in"
FABRICS: Final = "Fabric"
FABRICS_UNDER: Final = "in the order of the pattern"
FABRICS_ALONE: Final = "for one block; multiply for more"
TO_BUY: Final = "Fabric to buy"
REST: Final = "Batting, backing and binding"
THREAD: Final = "Thread"
THREAD_UNDER: Final = "an estimate"
TOOLS: Final = "Tools"
TOOLS_UNDER: Final = "what these ways of cutting and sewing need"
FOR_FOUNDATIONS: Final = "For foundations"
FOR_PAPERS: Final = "For sewing over papers"

FOUNDATION_TOOLS: Final = (
    "Thin paper that goes through your printer and tears well, for the foundations.",
    "Rotary cutter, mat, and a ruler with a line for the allowance, to trim along the folded paper.",
    "Card or a second ruler, to fold the paper along.",
    "Sewing machine with a strong needle, size 90/14, thread, pins, and a seam ripper.",
    "Iron and pressing board.",
)
PAPER_TOOLS: Final = (
    "Light card or heavy paper that goes through your printer, for the papers, and paper scissors.",
    "Fabric scissors, fine needles, matching thread, basting thread or a glue pen, clips or pins.",
    "Iron and pressing board.",
)
"""Tools of a way of sewing (common practice, no published source)."""

SHARES: Final = (
    "These shares are common practice, with no published source. Quilting and basting are not counted."
)


def for_one(size: str) -> str:
    """`For one block, 9in finished.`"""
    return f"For one block, {size} finished."


SOLD: Final[dict[tuple[int, int], tuple[str, str]]] = {
    (5, 5): ("a 5in square", "a square of 12.7cm"),
    (10, 10): ("a 10in square", "a square of 25.4cm"),
    (21, 9): ("a fat eighth, 9in x 21in", "a fat eighth, 22.8cm x 53.3cm"),
    (21, 18): ("a fat quarter, 18in x 21in", "a fat quarter, 45.7cm x 53.3cm"),
}
"""Pieces in which shops sell cloth cut (common practice; fat quarter and fat eighth as in guides of the
trade), by their inches across and along the grain; for who reads in centimetres too, down to a millimetre."""


def sold_words(say: Say, across: int, along: int) -> str:
    """`a fat quarter, 18in x 21in`: the piece in which a shop sells cloth cut."""
    return SOLD[across, along][say.unit == "cm"]


def piece_words(say: Say, area: float, by_length: str) -> str:
    """Of cloth that is sold cut: what its cuts take, and what it would be off the bolt."""
    return f"Its cuts cover {ceil(say.area(area)):,} {say.area_unit}. Off the bolt: {by_length}."


def also_counted(parts: Sequence[str]) -> str:
    """` Binding and backing counted in.`"""
    return f" {' and '.join(parts).capitalize()} counted in." if parts else ""


def scraps_after(scraps: str, before: Sequence[str]) -> str:
    """`3 of 21in x 18in, as they are after washing: before it at least 21 3/4in x 18 5/8in`."""
    ask = f": before it at least {one_of(list(before), 'and')}" if before else ""
    return f"{scraps}, as they are after washing{ask}"


def scraps_words(counts: Sequence[tuple[str, int]]) -> str:
    """`3 of 21in x 18in`: the pieces of cloth, equal ones together."""
    return ", ".join(f"{count} of {size}" for size, count in counts)


def sum_of_cloth(used: str, margin: str, shrinkage: float, step: str, usable: str, ask: str) -> str:
    """How an amount of cloth comes about. `shrinkage` in per cent; `ask`: the width to ask for, where cloth
    shrinks."""
    sums = [f"{used} to cut", f"{margin} for safety"]
    if shrinkage:
        sums.append(f"{shrinkage:g}% for shrinking")
    words = f"{', '.join(sums)}; up to the next {step}. Usable width {usable}"
    return f"{words} after washing: ask for {ask} between the selvages" if shrinkage else words


def print_words(one_way: bool, striped: bool) -> str:
    """What is said of a print with a direction."""
    return "; a one-way print" if one_way else "; a stripe" if striped else ""


def batting_words(size: str) -> str:
    """How much batting."""
    return f"Batting: a piece {size}, larger than the top all round."


def backing_words(size: str, fabric: str, panels: Sequence[str]) -> str:
    """Of what and from how many panels the back is made; `panels`: the size of each."""
    joined = f", joined from {count_of(len(panels), 'panel')}" if len(panels) > 1 else ""
    sizes = " and ".join(dict.fromkeys(panels))
    return f"Backing: {size} of {fabric}{joined}{f' ({sizes})' if sizes else ''}."


def binding_words(length: str, bias: bool, wide: str, fabric: str, slack: str) -> str:
    """How much binding."""
    way = "bias" if bias else "straight"
    return (
        f"Binding: {length} of {way} strip {wide} wide, of {fabric}: the quilt’s four sides, and {slack} for "
        "the corners and the last join."
    )


def missing_words(parts: Sequence[str]) -> str:
    """What the pattern leaves out."""
    return f"Not in this pattern, and not counted: {', '.join(parts)}."


def machine_thread(say: Say, yards: int, metres: int, bound: bool, seam_yards: float, share: int) -> str:
    """Thread by machine, and what the estimate supposes."""
    metric = say.unit == "cm"
    seams = f"{seam_yards * YARD_IN_METRES:,.0f} m" if metric else f"{seam_yards:,.0f} yd"
    return (
        f"Sewn by machine, about {_thread(say, yards, metres)} to piece the top"
        f"{' and to sew the binding on' if bound else ''}: its seams are {seams} long, and a "
        f"machine takes {share} times that, top and bobbin together."
    )


def hand_thread(say: Say, yards: int, metres: int, share: int) -> str:
    """Thread by hand."""
    return f"Sewn by hand, about {_thread(say, yards, metres)}: {share} times the seams."


def _thread(say: Say, yards: int, metres: int) -> str:
    """`90 yd (80 m)`; `80 m`: reels are marked in both."""
    return f"{metres:,} m" if say.unit == "cm" else f"{yards:,} yd ({metres:,} m)"
