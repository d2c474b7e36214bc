"""The words of a block's steps, besides those of each step."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from ...measure.tolerance import Number
    from ...sheets.work import Needle
    from ..say import Say

TITLE: Final = "Steps"
SHAPED: Final = (
    "Sizes ‘over all’ are of units that are no rectangle: across and down the block, or along their longest "
    "straight side where all their edges run slantwise."
)

PICTURES: Final = (
    "Left: before, right sides up; what is added is shaded, and the seam is the heavy line. Right: after, in "
    "its fabrics."
)
ARROW: Final = "The arrow shows which way the seam allowances are pressed"
TWO_HEADS: Final[dict[Needle, str]] = {"machine": "; two heads: open", "hand": "; two heads: either way"}
NO_ARROW: Final = "No arrows: over papers no seam is pressed to one side."
DOTS: Final = "Dots: where a seam starts, stops or turns."
TICKS: Final = "Ticks across the seam: match marks, to pin at."
NAMED: Final = "‘Unit 2’ is what step 2 makes."
SEWN: Final[dict[Needle, str]] = {
    "machine": "Letters are the templates’; sew right sides together.",
    "hand": "Letters are the templates’; sew right sides together.",
    "papers": "Letters are the papers’; lay right sides together, and whip from corner to corner.",
}


def by_hand(say: Say, allowance: Number) -> tuple[str, ...]:
    """Piecing by hand with templates of finished size (common practice, no published source)."""
    wide = say.length(allowance)
    stitches = "3 to 4 to the centimetre" if say.unit == "cm" else "8 to 10 to the inch"
    return (
        "Mark the seams: draw round each template on the wrong side of the cloth, and cut about "
        f"{wide} outside the line. On pieces cut by the ruler draw the line {wide} inside their edges.",
        "Lay two pieces right sides together, corners matched: put a pin through both corners, then "
        "along the line.",
        f"Sew on the marked line with small running stitches, {stitches}, and a backstitch every few.",
        "Begin and end at the corners with a knot or two backstitches: never sew into the allowance.",
        "Where seams meet, pass the needle through at the corner and leave all allowances free, so that they "
        "can be pressed round, each over the next.",
    )


HAND_PRESSED: Final = (
    "While you sew, only finger-press each seam as its arrow shows. Iron the block when it is done, from the "
    "back: lift the iron and set it down, do not push. No seam is pressed open, for hand stitches would "
    "show; where seams meet, their allowances are free and lie round in a ring."
)
"""How hand-pieced seams are pressed (common practice, no published source)."""

ONE_PIECE: Final = "The block is one piece: there is nothing to sew."
AS_SHOWN: Final = "Seams are pressed as suits the fabrics shown: to the darker where they may."
BY_HAND: Final = "Piecing by hand"
PAPERS_OUT: Final = "Pressing, and taking the papers out"
PRESSING: Final = "Pressing"


def arrow_words(opened: Needle | None) -> str:
    """What arrows mean; `opened`: what sews a block that has seams pressed open."""
    return f"{ARROW}{TWO_HEADS[opened] if opened else ''}."


def pictured(step: int, line: str) -> str:
    """A step's picture, in words."""
    return f"Before and after step {step}. {line}"


def places_pictured(places: str) -> str:
    """The picture of a step's places in the block, in words."""
    return f"The finished block. {places}"
