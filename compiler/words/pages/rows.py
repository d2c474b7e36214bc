"""The words of the steps of a quilt's top."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Final

from ..phrases import count_of, one_of

if TYPE_CHECKING:
    from ...sewing.order.row_tree import Way
    from ...sewing.pressing.pressing_model import Toward

TITLE: Final = "Steps: the quilt"
NAME: Final = "name"
COUNT: Final = "count"
WHAT: Final = "what"
FABRIC: Final = "fabric"
KEY: Final = "key"
SEWN: Final = "sewn, or cut"
FINISHED: Final = "finished"
PARTS: Final = "Parts of the top"
ONE_BLOCK: Final = "The top is one block: there is nothing to sew round it."
PRESSING: Final = "Pressing"
ROUND_TEMPLATE: Final = "round the template"
MIRRORED: Final = ", mirrored"

READ_TOLD: Final = (
    "Units are named by the step that makes them. A key is the letter of a cut in the cutting chart."
)
READ: Final = (
    "First or left, the parts as they lie, with their names from the table; cloth is shaded. Then the row "
    f"sewn together: small arrows show which way the seams are pressed. {READ_TOLD}"
)
"""How to read the cards: with pictures, and without."""

HOW: Final = {
    "across": "side by side, left to right",
    "down": "one under another, from the top",
    "slantwise": "along the slant, in this order",
    "set-in": "round the corner: stop at the dot, turn, sew on",
}


WAYS: Final[dict[Toward, str]] = {
    "first": "as the arrows show",
    "second": "the other way",
    "open": "so that seams that meet lie opposite",
}

TRIM: Final = ("as much off one side as off the other", "1/4in beyond the blocks’ points")
"""How a unit is trimmed; on point."""


LAID: Final = {
    "quarter-square-triangle": "Lay side triangles even at the square corner; their points reach beyond.",
    "half-square-triangle": "Lay corner triangles with the middle of their long side on the edge's middle.",
}
"""How triangles that are cut large are laid (common practice, no published source)."""


def mitred(parts: Sequence[str], *, pictured: bool) -> tuple[str, str]:
    """How four strips are sewn round what comes first."""
    pressed = f" {press(WAYS['first'])}" if pictured else ""
    return (
        f"Sew {', '.join(parts[1:])} to the four sides of {parts[0]}, each from dot to dot: lock the "
        f"stitch there, the allowances beyond stay free.{pressed}",
        "Then close the four mitres, the strips right sides together, each from the dot out; trim the "
        "ends to 1/4in from the seam, and press open.",
    )


def sew(parts: Sequence[str], way: Way, longest: str) -> str:
    """What is joined, how it lies, and the longest of its seams."""
    seams = count_of(len(parts) - 1, "seam")
    return f"Sew {', '.join(parts)} {HOW[way]}: {seams}, the longest {longest}."


def press(ways: str) -> str:
    """`Press as the arrows show.`"""
    return f"Press {ways}."


def trim(size: str, way: Way) -> str:
    """To what a unit is trimmed, and how."""
    return f"Trim to {size}, {TRIM[way == 'slantwise']}."


def keep(kept: Mapping[str, int]) -> str:
    """`Keep 2 for Border 1.`, where a later stage uses some of them."""
    return f"Keep {one_of([f'{count} for {title}' for title, count in kept.items()], 'and')}."


def sizes(unfinished: str, finished: str) -> str:
    """The sizes of a row."""
    return f"Unfinished {unfinished}, finished {finished}."


def unfinished(name: str, size: str) -> str:
    """The size of a part that is cut in another shape."""
    return f"{name}: {size} unfinished, over all."


def cut_into(shape: str, size: str, pieces: int) -> str:
    """`square 9 3/4in, cut into 4`."""
    return f"{shape} {size}, cut into {pieces}" if pieces > 1 else size


def card_title(name: str, batch: int, last: bool) -> str:
    """`R3 · make 4`; of the last `R9 · the top`."""
    return f"{name} · the top" if last else f"{name} · make {batch}" if batch > 1 else name


def pictured(name: str, line: str) -> str:
    """A row's picture, in words."""
    return f"Row {name} apart, and sewn together. {line}"
