"""The steps of a block: every step a card, how to read the pictures, and how the seams are pressed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from ...diagnostics.wording import count_of
from ...drafting.model import Draft
from ...sewing.model import Assembly, Proof, Step
from ...sewing.pressing import press
from ...sewing.pressing_model import Pressing, PressingPlan
from ..arrange.block_drawing import piece_rings
from ..arrange.fills import Fill
from .content import Card, Cards, Chapter, List, Paragraph, Part, Picture, Section
from .copy_places import ROWS
from .step_picture import WIDE, Scene, Shown, draw_step
from .step_words import Needle, step_lines, step_title
from .worn import Worn, own_roles

TITLE: Final = "Steps"
SHAPED: Final = (
    "Sizes of units that are no rectangle are over all, along their own straight edge where there is one."
)

READ: Final = (
    "Left: before, right sides up; what is added is shaded, and the seam is the heavy line. Right: after, in "
    "its fabrics. The arrow shows which way the seam allowances are pressed; two heads: open. "
    "Letters are the templates’; sew right sides together."
)

HAND: Final = (
    "Lay two pieces right sides together, corners matched: put a pin through both corners, then "
    "along the line.",
    "Sew on the marked line with small running stitches, 8 to 10 to the inch, and a backstitch every few.",
    "Begin and end at the corners with a knot or two backstitches: never sew into the allowance.",
    "Where seams meet, pass the needle through at the corner and leave all allowances free; press them "
    "round.",
)
"""Piecing by hand with templates of finished size (common practice, no published source)."""


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
        sentence = f"Checked by sewing it from the printed numbers: {proof.sentence}."
        said.insert(0, Paragraph(sentence, strong=True))
    return Chapter(TITLE, (*said, *_parts(draft, worn.assembly(assembly), needle, worn.fills)))


def _parts(draft: Draft, assembly: Assembly, needle: Needle, fills: Mapping[str, Fill]) -> Iterator[Part]:
    if not assembly.steps:
        yield Paragraph("The block is one piece: there is nothing to sew.")
        return
    plan = press(draft, assembly)
    yield Paragraph(READ)
    if needle == "hand":
        yield Section("Piecing by hand")
        yield List(HAND, "number")
    cards = tuple(_cards(draft, assembly, plan, needle, fills))
    yield Cards(cards)
    yield Section("Pressing")
    yield Paragraph(pressing_words(plan))
    if any("(row " in line for card in cards for line in card.lines):
        yield Paragraph(ROWS)
    if not all(unit.rectangle for unit in assembly.units):
        yield Paragraph(SHAPED)


def _cards(
    draft: Draft, assembly: Assembly, plan: PressingPlan, needle: Needle, fills: Mapping[str, Fill]
) -> Iterator[Card]:
    """A card for every step."""
    for step, pressing in zip(assembly.steps, plan.seams, strict=True):
        lines = step_lines(draft, assembly, step, pressing, needle)
        title = step_title(assembly, step)
        yield Card(title, _picture(draft, assembly, step, pressing, fills, lines[0]), lines)


def _picture(
    draft: Draft, assembly: Assembly, step: Step, pressing: Pressing, fills: Mapping[str, Fill], words: str
) -> Picture:
    marks, tall = draw_step(scene_of(draft, assembly, step, pressing), fills)
    return Picture(marks, WIDE, tall, f"Before and after step {step.step}. {words}")


def scene_of(draft: Draft, assembly: Assembly, step: Step, pressing: Pressing) -> Scene:
    """The step as it lies in the block, in its first copy."""
    pieces = assembly.units[step.step - 1].pieces
    first = step.parts[0]
    count = len(assembly.units[int(first[1:]) - 1].pieces) if first.startswith("u") else 1
    return Scene(
        tuple(_shown(draft, assembly, number) for number in pieces[:count]),
        tuple(_shown(draft, assembly, number) for number in pieces[count:]),
        step.seam, pressing.toward, (*step.turns, *step.stops), step.eased,
    )  # fmt: skip


def _shown(draft: Draft, assembly: Assembly, number: int) -> Shown:
    piece, cloth = draft.pieces[number - 1], assembly.pieces[number - 1]
    return Shown(piece_rings(piece), cloth.fabric, cloth.template)


def pressing_words(plan: PressingPlan) -> str:
    """What pressing comes to: how many seams that meet lie opposite, and what is pressed open."""
    opened = [str(each.step) for each in plan.seams if "open" in each.ways]
    words = ["Press every seam as sewn, then as its arrow shows: lift the iron and set it down, do not push."]
    places = count_of(len(plan.meetings), "place")
    if not plan.meetings:
        words.append("No two seams meet end to end here, so nothing has to lie opposite.")
    elif plan.opposite == len(plan.meetings):
        words.append(f"Seams meet at {places}, and lie opposite at each: push them together.")
    else:
        words.append(f"Seams meet at {places}, and lie opposite at {plan.opposite}.")
    if opened:
        several = "s" if len(opened) > 1 else ""
        words.append(f"Press open in step{several} {', '.join(opened)}: no one side serves there.")
    return " ".join(words)
