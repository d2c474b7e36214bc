"""The words of the cutting pictures."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from ..phrases import count_of
from ..phrases import one_of as one_of_list
from ..work.shapes import shape_word

if TYPE_CHECKING:
    from ...cutting.needs import Fabric
    from ...cutting.shapes import Shape

TITLE: Final = "Cutting pictures"
TO_SCALE: Final = "drawn to scale, not true to size"
FAT_QUARTER: Final = "Fat quarter"
SCRAP: Final = "Scrap"
LENGTH: Final = "Length"

NOTE: Final = (
    "Every cut runs from edge to edge of the piece it parts. Grey is left over. Small numbers are the step "
    "that begins there; dashed lines cut squares into triangles. Drawn to scale, not true to size. Close the "
    "blade after every cut, cut away from yourself, and keep it from children."
)


def of_cloth(used: str, wide: str) -> str:
    """`54 3/4in of cloth 42in wide`."""
    return f"{used} of cloth {wide} wide"


def drawn_at(share: str) -> str:
    """` · drawn at 12% of true size`."""
    return f" · drawn at {share} of true size"


def one_of(piece: str, number: int, count: int) -> str:
    """`Fat quarter 2 of 3`."""
    return f"{piece} {number} of {count}"


def print_words(fabric: Fabric) -> str:
    """Which way a print with a direction lies in the pictures."""
    if fabric.one_way:
        return " · the print stands up the page"
    return " · the stripes run up the page" if fabric.striped else ""


# ---- the sizes of cuts -------------------------------------------------------------------------------


def about_size(wide: str, tall: str) -> str:
    """`about 2in x 3in`: what a template measures over all."""
    return f"about {wide} x {tall}"


def slanted_size(strip: str, apart: str) -> str:
    """`from a strip 2 1/4in wide, cuts 2 1/4in apart`."""
    return f"from a strip {strip} wide, cuts {apart} apart"


def along_strip(strip: str, wide: str) -> str:
    """`3in along a strip 2 1/4in wide`."""
    return f"{wide} along a strip {strip} wide"


def round_template(size: str) -> str:
    """`about 2in x 3in, round the template`."""
    return f"{size}, round the template"


def shapes(shape: Shape, count: int) -> str:
    """`square`, `squares`."""
    return shape_word(shape) + ("" if count == 1 else "s")


def strips_of(count: int, length: str) -> str:
    """`2 strips of 42in`."""
    return f"{count_of(count, 'strip')} of {length}"


def count_of_length(count: int, length: str) -> str:
    """`5 of 42in`."""
    return f"{count} of {length}"


def joined(cuts: int, strips: Sequence[str]) -> str:
    """`both from 2 strips of 42in and 1 of 9in, joined`."""
    which = {1: "", 2: "both "}.get(cuts, "all ")
    return f"{which}from {one_of_list(list(strips), 'and')}, joined"


def bias_strips(count: int) -> str:
    """`4 bias strips`."""
    return count_of(count, "bias strip")


def strips_wide(wide: str, lengths: Sequence[str]) -> str:
    """`strips 2 1/4in wide: 5 of 42in and 1 of 9in`."""
    return f"strips {wide} wide: {one_of_list(list(lengths), 'and')}"


def strip_key(wide: str, whole: str, purpose: str) -> str:
    """`strip 2 1/4in wide, joined to 60in: border strip`; without a `whole` it is not told."""
    return f"strip {wide} wide{f', joined to {whole}' if whole else ''}: {purpose}"


def shape_key(shape: Shape, size: str, parted: int, purpose: str) -> str:
    """`square 3 7/8in, cut into 2: Ohio Star A`."""
    return f"{shape_word(shape)} {size}{f', cut into {parted}' if parted > 1 else ''}: {purpose}"


# ---- the steps -----------------------------------------------------------------------------------------


def parted_into(text: str, strips: Sequence[int], left: int) -> str:
    """A cut that parts the cloth, the strips it makes, and the one that is left, if one is."""
    return f"{text} ({strip_words(strips)}{f'; what is left is strip {left}' if left else ''}.)"


def done_to(strips: Sequence[int]) -> str:
    """Over the steps that are done to these strips."""
    return f"{strip_words(strips)}{', each' if len(strips) > 1 else ''}:"


def strip_words(strips: Sequence[int]) -> str:
    """`Strip 1`, `Strips 1 and 2`, `Strips 1 to 4`, `Strips 1, 2 and 5`."""
    if len(strips) == 1:
        return f"Strip {strips[0]}"
    first, last = strips[0], strips[-1]
    if len(strips) > 2 and last - first + 1 == len(strips):
        return f"Strips {first} to {last}"
    return f"Strips {one_of_list([str(each) for each in strips], 'and')}"


def part_of_strips(title: str, number: int, count: int, strips: Sequence[int]) -> str:
    """`Fat quarter 2 of 3, part 1 of 2: strips 1 to 4`."""
    told = strip_words(strips)
    return ", ".join(filter(None, (title, f"part {number} of {count}: {told[:1].lower()}{told[1:]}")))
