"""The words of sewing on paper foundations."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from ..numbers import ruler_text
from ..phrases import count_of, one_of

if TYPE_CHECKING:
    from ...measure.tolerance import Number
    from ..say import Say

TITLE: Final = "Foundations"
FABRIC: Final = "fabric"
CUT: Final = "cut"
SIZE: Final = "size"
FOR_PATCHES: Final = "for patches"
PATCH: Final = "patch"
PIECE: Final = "piece"
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


def can_words(count: int) -> str:
    """`This block can be sewn on paper in 3 sections.`"""
    return f"This block can be sewn on paper in {count_of(count, 'section')}."


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


# ---- the papers, and how they are sewn patch by patch ----------------------------------------------

SAFETY: Final = (
    "Rotary blades are very sharp: cut away from yourself, close the blade after every cut. Let a hot iron "
    "touch neither toner nor fingers; keep both from children."
)
PATCH_BY_PATCH: Final = "Patch by patch"
READ: Final = (
    "From the cloth’s side, as the block will look; the print lies on the other side. Each picture: the "
    "cloth laid so far, the new patch shaded and already opened out, its seam heavy; the grey lines are the "
    "print. The last is trimmed along the solid line, in its fabrics."
)
ALONG: Final = "along the solid line"


def sheet_words(labels: str, several: bool, tile: str) -> str:
    """`foundation sections A–C, tile 1`."""
    return f"foundation {'sections' if several else 'section'} {labels}{f', {tile}' if tile else ''}"


def sheet_below(say: Say, allowance: Number) -> str:
    """`mirrored; 1/4in allowance round each`."""
    return f"mirrored; {say.length(allowance)} allowance round each"


def section_name(label: str) -> str:
    """A section's paper, alone."""
    return f"section {label}"


def section_title(label: str) -> str:
    """`Section A`."""
    return f"Section {label}"


def same_way(labels: Sequence[str]) -> str:
    """The other sections that are sewn alike; nothing where there are none."""
    if not labels:
        return ""
    return f"and {'sections' if len(labels) > 1 else 'section'} {one_of(labels, 'and')} in the same way"


def covered_words(patches: int) -> str:
    """That every patch was found to reach as far as it must."""
    covered = "its patch covers its area" if patches == 1 else f"all {patches} patches cover their areas"
    return f"Checked by sewing it from the print: {covered} and the allowance."


def patch_pictured(before: str, label: str, fabric: str, sewn: bool) -> str:
    """A picture of a patch being laid, in words; `before`: the label of the patch before it."""
    laid = f"Patches up to {before} on the paper" if before else "The paper bare"
    how = "sewn along its line and opened out." if sewn else "pinned behind its number."
    return f"{laid}; then {label} ({fabric}) {how}"


def trimmed_title(label: str) -> str:
    """`A trimmed`."""
    return f"{label} trimmed"


def trimmed_pictured(label: str) -> str:
    """A section that is sewn, in words."""
    return f"Section {label} trimmed, in its fabrics."


def join_title(name: str, first: str, second: str) -> str:
    """`1 · A to B`."""
    return f"{name} · {first} to {second}"


def join_pictured(number: int, told: str) -> str:
    """The picture of a join, with what is said of it."""
    return f"Before and after join {number}. {told}"
