"""What `explain` says of sewing for people: steps, pressing, foundations, and what makes a block hard."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from ...drafting.model import Draft
from ...sewing.difficulty import causes, difficulty
from ...sewing.foundations.foundation import foundations
from ...sewing.foundations.foundation_model import Foundations, Section
from ...sewing.model import Assembly, Size, Step
from ...sewing.pressing.copies import by_rows
from ...sewing.pressing.pressing import press
from ...sewing.pressing.pressing_model import Pressing, PressingPlan, Toward
from ...words.phrases import one_of
from ...words.rulers import length_text
from ...words.say import INCHES
from ...words.work.difficulty import causes_words
from ...words.work.foundations import refusal_words
from ...words.work.pressing import ROWS, meeting_words, ways_told
from ...words.work.proofs import proof_text
from ..quilts.wearing import own_roles
from ..setting.text_table import table, wrapped
from .report_sewing import Sewn


def sewing_lines(sewn: Sewn, ruler: Fraction) -> list[str]:
    """All there is to say of sewing one block, sizes as a ruler with such marks shows them."""
    assembly = sewn.assembly
    plan = press(sewn.draft, assembly, own_roles(sewn.draft).lightness)
    lines = ["", f"Sewing: {proof_text(sewn.proof)}"]
    if assembly.steps:
        lines += table(
            ("Step", "Makes", "From", "Make", "Seam", "Unfinished", "Press toward"),
            [step_row(*each, ruler) for each in zip(assembly.steps, plan.seams, strict=True)],
        )
    for remark in remarks(sewn.draft, assembly, plan):
        lines += wrapped(remark, "  ", "    ")
    lines += ["", "Foundations", *foundation_lines(foundations(sewn.draft, assembly), ruler)]
    told = causes_words(causes(difficulty(sewn.draft, sewn.templates, assembly)))
    return [*lines, "", "What makes it hard", *wrapped(", ".join(told), "  ", "    ")]


def step_row(step: Step, pressing: Pressing, ruler: Fraction) -> tuple[str, ...]:
    """One line of the table of steps."""
    return (
        str(step.step),
        step.makes,
        " + ".join(step.parts),
        str(step.batch),
        length_text(step.seam_length, ruler),
        size_text(step.unfinished, ruler),
        press_text(step, pressing),
    )


def size_text(size: Size, ruler: Fraction) -> str:
    """`3 1/2in x 3 1/2in`."""
    return f"{length_text(size.width, ruler)} x {length_text(size.height, ruler)}"


def press_text(step: Step, pressing: Pressing) -> str:
    """`u1`, `u1 (darker)`, `open`; of two alike `2nd u1`; where copies differ `8 to u1, 4 open`."""
    names = way_names(step)
    if not pressing.even:
        counts = [(way, pressing.ways.count(way)) for way in dict.fromkeys(pressing.ways)]
        return ", ".join(f"{count} {'' if way == 'open' else 'to '}{names[way]}" for way, count in counts)
    return names[pressing.toward] + (" (darker)" if pressing.reason == "darker" else "")


def way_names(step: Step) -> dict[Toward, str]:
    """What each way of a step's seam is called: by the part it lies on."""
    one, two = step.parts
    if one == two:
        return {"first": f"1st {one}", "second": f"2nd {two}", "open": "open"}
    return {"first": one, "second": two, "open": "open"}


def remarks(draft: Draft, assembly: Assembly, plan: PressingPlan) -> Iterator[str]:
    """What the table cannot show."""
    set_in = [str(step.step) for step in assembly.steps if step.turns and not step.partial]
    if set_in:
        yield f"Set in: {steps_text(set_in)}. Stop at each dot, needle down, and turn the cloth."
    rounds = [str(step.step) for step in assembly.steps if step.all_round]
    if rounds:
        yield f"Set in, all round: {steps_text(rounds)}. Begin between two match marks."
    curved = [str(step.step) for step in assembly.steps if step.curved]
    if curved:
        yield f"Curved: {steps_text(curved)}. Pin at the match marks, and ease the edges between them."
    for step in assembly.steps:
        if step.partial:
            yield (
                f"Step {step.step}: leave the seam of step {step.partial.opened} open at this end; "
                "close it after this."
            )
    yield from pressing_remarks(draft, assembly, plan)


def pressing_remarks(draft: Draft, assembly: Assembly, plan: PressingPlan) -> Iterator[str]:
    """Which copies are pressed which way, where they differ, and whether seams that meet lie opposite."""
    rows = False
    for step, unit, pressing in zip(assembly.steps, assembly.units, plan.seams, strict=True):
        if not pressing.even:
            names = {
                way: name if way == "open" else f"toward {'piece ' if name.isdigit() else ''}{name}"
                for way, name in way_names(step).items()
            }
            rows = rows or by_rows(draft, unit, pressing)
            yield f"Step {step.step}: press {ways_told(draft, unit, pressing, names)}."
    if rows:
        yield ROWS.format("block")
    if assembly.steps:
        yield meeting_words(plan)


def steps_text(numbers: list[str]) -> str:
    """`step 2`, `steps 2, 4 and 6`."""
    return f"step{'s' if len(numbers) > 1 else ''} {one_of(numbers, 'and')}"


def foundation_lines(found: Foundations, ruler: Fraction) -> list[str]:
    """The papers, each with its patches in order, and how they are joined; or why there are none."""
    if not found.possible:
        return wrapped(f"None: {refusal_words(INCHES, found.why_not)}", "  ", "    ")
    lines = []
    for section in found.sections:
        lines += wrapped(section_text(section, ruler), "  ", "     ")
    joins = [f"{each.first} to {each.second}" for each in found.joins]
    return lines + (wrapped(f"Join {', then '.join(joins)}.", "  ", "    ") if joins else [])


def section_text(section: Section, ruler: Fraction) -> str:
    """`A: A1 piece 4, dark, 2 1/2in x 3in; A2 piece 5, ...`."""
    patches = [
        f"{each.label} piece {each.piece}, {each.fabric}, "
        f"{length_text(each.width, ruler)} x {length_text(each.height, ruler)}"
        for each in section.patches
    ]
    return f"{section.label}: {'; '.join(patches)}"
