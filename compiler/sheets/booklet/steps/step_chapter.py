"""The steps of a block: every step a card, how to read the pictures, and how the seams are pressed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from ....drafting.model import Draft
from ....sewing.model import Assembly, Proof, Step, Unit
from ....sewing.pressing.copies import by_rows, shaded_way
from ....sewing.pressing.pressing import press
from ....sewing.pressing.pressing_model import Pressing, PressingPlan, Toward
from ....words.work.pressing import ROWS, places_words, pressing_words
from ....words.work.proofs import proof_text
from ...arrange.block_drawing import piece_rings
from ...arrange.fills import Fill
from ...quilts.wearing import Worn, own_roles
from ..content import Card, Cards, Chapter, List, Paragraph, Part, Picture, Section
from ..paper_pieces import PAPERS_OUT
from .places_picture import draw_places
from .step_picture import WIDE, Scene, Shown, draw_step
from .step_words import Needle, added_side, step_lines, step_title

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

HAND: Final = (
    "Mark the seams: draw round each template on the wrong side of the cloth, and cut about 1/4in outside "
    "the line. On pieces cut by the ruler draw the line 1/4in inside their edges.",
    "Lay two pieces right sides together, corners matched: put a pin through both corners, then "
    "along the line.",
    "Sew on the marked line with small running stitches, 8 to 10 to the inch, and a backstitch every few.",
    "Begin and end at the corners with a knot or two backstitches: never sew into the allowance.",
    "Where seams meet, pass the needle through at the corner and leave all allowances free, so that they can "
    "be pressed round, each over the next.",
)
"""Piecing by hand with templates of finished size (common practice, no published source)."""

HAND_PRESSED: Final = (
    "While you sew, only finger-press each seam as its arrow shows. Iron the block when it is done, from the "
    "back: lift the iron and set it down, do not push. No seam is pressed open, for hand stitches would "
    "show; where seams meet, their allowances are free and lie round in a ring."
)
"""How hand-pieced seams are pressed (common practice, no published source)."""


def step_chapter(
    draft: Draft,
    assembly: Assembly,
    proof: Proof | None,
    needle: Needle = "machine",
    worn: Worn | None = None,
) -> Chapter:
    """The chapter. `worn`: in which fabrics; the block's own roles unless given."""
    worn = worn or own_roles(draft)
    said: list[Part] = [Paragraph(words) for words in worn.words]
    if proof:
        sentence = f"Checked by sewing it from the printed numbers: {proof_text(proof)}."
        said.insert(0, Paragraph(sentence, strong=True))
    return Chapter(TITLE, (*said, *_parts(draft, worn.assembly(assembly), needle, worn)))


def _parts(draft: Draft, assembly: Assembly, needle: Needle, worn: Worn) -> Iterator[Part]:
    if not assembly.steps:
        yield Paragraph("The block is one piece: there is nothing to sew.")
        return
    plan = press(draft, assembly, worn.lightness)
    cards = tuple(_cards(draft, assembly, plan, needle, worn.fills))
    if not worn.always and needle != "papers":
        yield Paragraph("Seams are pressed as suits the fabrics shown: to the darker where they may.")
    yield Paragraph(" ".join(_read(assembly, plan, needle)))
    if not all(unit.rectangle for unit in assembly.units):
        yield Paragraph(SHAPED)
    pressed = zip(assembly.units, plan.seams, cards, strict=True)
    if needle != "papers" and any(_tells_rows(draft, *each) for each in pressed):
        yield Paragraph(ROWS.format("block"))
    if needle == "hand":
        yield Section("Piecing by hand")
        yield List(HAND, "number")
    yield Cards(cards)
    if needle == "papers":
        yield Section("Pressing, and taking the papers out")
        yield List(PAPERS_OUT, "number")
        return
    yield Section("Pressing")
    yield Paragraph(HAND_PRESSED if needle == "hand" else pressing_words(plan))


def _read(assembly: Assembly, plan: PressingPlan, needle: Needle) -> Iterator[str]:
    """How to read the pictures: what these steps have in them."""
    yield PICTURES
    opened = any("open" in each.ways for each in plan.seams)
    yield NO_ARROW if needle == "papers" else f"{ARROW}{TWO_HEADS[needle] if opened else ''}."
    if any(step.turns or step.stops for step in assembly.steps):
        yield DOTS
    if any(step.eased for step in assembly.steps) and needle != "papers":
        yield TICKS
    yield NAMED
    yield SEWN[needle]


def _cards(
    draft: Draft, assembly: Assembly, plan: PressingPlan, needle: Needle, fills: Mapping[str, Fill]
) -> Iterator[Card]:
    """A card for every step."""
    for step, unit, pressing in zip(assembly.steps, assembly.units, plan.seams, strict=True):
        shaded = None if needle == "papers" else shaded_way(draft, unit, pressing)
        beside = _places(draft, unit, pressing, shaded) if shaded else None
        lines = step_lines(draft, assembly, step, pressing, needle, shaded if beside else None)
        scene = scene_of(draft, assembly, step, None if needle == "papers" else pressing.toward)
        marks, tall = draw_step(scene, fills)
        picture = Picture(marks, WIDE, tall, f"Before and after step {step.step}. {lines[0]}")
        yield Card(step_title(assembly, step), picture, lines, beside)


def _tells_rows(draft: Draft, unit: Unit, pressing: Pressing, card: Card) -> bool:
    """Whether a card's words tell copies by rows: where no picture beside them shows which."""
    return card.beside is None and by_rows(draft, unit, pressing)


def _places(draft: Draft, unit: Unit, pressing: Pressing, shaded: Toward) -> Picture | None:
    """The block with the copies shaded that are pressed so; None where they would be too small to see."""
    copies = [copy for copy, way in zip(unit.copies, pressing.ways, strict=True) if way == shaded]
    drawn = draw_places(draft, unit, copies)
    words = f"The finished block. {places_words(draft, unit, pressing, shaded)}"
    return drawn and Picture(*drawn, words)


def scene_of(draft: Draft, assembly: Assembly, step: Step, toward: Toward | None) -> Scene:
    """The step as it lies in the block, in its first copy."""
    pieces = assembly.units[step.step - 1].pieces
    first = step.parts[0]
    count = len(assembly.units[int(first[1:]) - 1].pieces) if first.startswith("u") else 1
    return Scene(
        tuple(_shown(draft, assembly, number) for number in pieces[:count]),
        tuple(_shown(draft, assembly, number) for number in pieces[count:]),
        added_side(assembly, step), step.seam, toward, (*step.turns, *step.stops), step.eased,
    )  # fmt: skip


def _shown(draft: Draft, assembly: Assembly, number: int) -> Shown:
    piece, cloth = draft.pieces[number - 1], assembly.pieces[number - 1]
    return Shown(piece_rings(piece), cloth.fabric, cloth.template)
