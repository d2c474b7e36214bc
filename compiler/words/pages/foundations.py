"""The words of sewing on paper foundations."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from ..numbers import ruler_text
from ..phrases import count_of, one_of

if TYPE_CHECKING:
    from ...measure.tolerance import Number

TITLE: Final = "Foundations"
FABRIC: Final = "fabric"
CUT: Final = "cut"
SIZE: Final = "size"
FOR_PATCHES: Final = "for patches"
CANNOT: Final = "This block cannot be sewn on paper foundations."
OTHERWISE: Final = "Sew it with its templates, or over paper pieces by hand."
CLOTH: Final = "Cloth for the patches"
HOW: Final = "How to sew on a foundation"
JOIN: Final = "Join the sections"
JOIN_UNDER: Final = "in this order"
PICTURE: Final = "From the front. Heavy lines part the sections; the papers are mirrored."

OUT: Final = "Leave the paper in until the sections are joined; then tear it away."
OUT_OF_ONE: Final = (
    "Leave the paper in until what comes next to the block is sewn on: it keeps the edges from stretching. "
    "Then tear it away."
)


def prints_words(prints: Sequence[str]) -> str:
    """Of patches of prints with a direction."""
    return (
        f"Cut the patches of {one_of(prints, 'and')} by the cutting chart, not by the sizes here: its print "
        "stands up in the quilt, and so the cloth lies on the paper."
    )


def sections_words(count: int) -> str:
    """`This block is sewn on paper in 3 sections.`"""
    return f"This block is sewn on paper in {count_of(count, 'section')}."


def cloth_under(margin: str) -> str:
    """What the sizes of cloth count in."""
    return f"allowance and {margin} more on every side counted in"


def cloth_words(allowance: str, margin: str, wider: bool) -> str:
    """What the sizes of cloth are; `wider`: some sides have another allowance."""
    allowance += ", or its widest side’s," if wider else ""
    return (
        f"Each size covers its patch with the seam allowance of {allowance} and a margin of {margin} on "
        "every side, rounded up to the next quarter inch: cut without fuss, and trim on the paper. Pin its "
        "name to each."
    )


def join_words(first: str, second: str, name: str, long: str) -> str:
    """How two sections are joined along their edges of a name and a length."""
    return (
        f"Join {first} to {second} along the edges marked {name}, {long} long: pin through the corners and "
        "the match marks first. Press the seam open or to one side."
    )


def pictured(sections: Sequence[tuple[str, int]]) -> str:
    """The picture of the sections, in words: each with how many patches it has."""
    names = ", ".join(f"{label} with {count_of(count, 'patch', 'patches')}" for label, count in sections)
    return f"The block from the front, in sections: {names}."


def how_words(allowance: Number) -> tuple[str, ...]:
    """How a block is sewn on foundations, step by step (common practice, no published source)."""
    wide = ruler_text(allowance)
    return (
        "Cut out the paper of each section along the solid line; one that lies on several pages is taped "
        "together first. The paper is printed mirrored: the print faces you while you sew, the cloth lies "
        "behind it.",
        "Set the machine to a short stitch, 15 to 20 to the inch, so that the paper tears away clean.",
        "Lay patch 1 behind the paper, wrong side to the paper, so that it covers its area and "
        f"{wide} all round: hold it up to the light. Pin.",
        f"Lay the next patch on it, right sides together, so that it reaches {wide} over the line between "
        "the two. Sew on the line, from the print side, two stitches past each end.",
        f"Fold the paper back along the line and trim the allowance to {wide}. Lay the paper flat again, "
        "flip the new patch over its area, and press it there with a dry iron: so after every seam.",
        "Go on in the order of the numbers. Then press the section and trim the cloth along the edge of the "
        "paper, the solid line.",
    )
