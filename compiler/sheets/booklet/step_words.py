"""What is said under a step's picture: what is sewn to what, set-in seams, curves, pressing, sizes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, Literal

from ...diagnostics.wording import count_of, one_of
from ...drafting.model import Draft
from ...sewing.model import Assembly, Size, Step
from ...sewing.pressing_model import Pressing, Toward
from ..quilts.words import about
from .copy_places import copies_told

Needle = Literal["machine", "hand", "papers"]
"""How a seam is sewn: by machine; by hand on a marked line; by hand over papers, whose edges are whipped."""

ALIKE: Final = 1e-4  # inches between two sizes that are one in print


def part_words(assembly: Assembly, part: str) -> str:
    """`A (dark)`, `B (light), reversed`, `unit 3`."""
    if part.startswith("u"):
        return f"unit {part[1:]}"
    cloth = assembly.pieces[int(part) - 1]
    return f"{cloth.template} ({cloth.fabric}{', reversed' if cloth.reversed else ''})"


def step_title(assembly: Assembly, step: Step) -> str:
    """`Step 2 · unit 2, make 4`; the last makes the block."""
    if step.step == len(assembly.steps):
        return f"Step {step.step} · the block"
    if step.batch == 1:
        return f"Step {step.step} · unit {step.step}"
    return f"Step {step.step} · unit {step.step}, make {step.batch}"


def step_lines(
    draft: Draft, assembly: Assembly, step: Step, pressing: Pressing, needle: Needle
) -> tuple[str, ...]:
    """The lines under the picture."""
    return (
        f"{_sew(assembly, step)} {' '.join(_care(assembly, step, needle))}".strip(),
        press_words(draft, assembly, step, pressing),
        size_words(step),
    )


def _sew(assembly: Assembly, step: Step) -> str:
    first, second = (part_words(assembly, part) for part in step.parts)
    if first == second:
        return f"Sew two of {first} together." if first.startswith("unit") else f"Sew {first} to {second}."
    return f"Sew {first} to {second}."


def _care(assembly: Assembly, step: Step, needle: Needle) -> Iterator[str]:
    """What is special about the seam."""
    later = [each.step for each in assembly.steps if each.partial and each.partial.opened == step.step]
    if later:
        yield (
            f"Partial seam: sew half of it, leave the rest open at the dot: closed after step {later[-1]}."
        )
    if step.partial:
        yield f"Then close the seam of step {step.partial.opened}, which was left open."
    elif step.closed:
        yield "Set in: the seam runs all round. Pin the corners first; begin in the middle of a side."
    elif step.turns:
        yield f"Set in, {count_of(len(step.turns), 'turn')}. {_turn_words(len(step.turns), needle)}"
    if later:
        return
    if step.stops and not step.turns:
        yield _stop_words(len(step.stops), needle)
    elif step.stops:
        yield "Stop at the dot at the seam’s end, too."
    if step.curved:
        yield _curve_words(len(step.eased))


def _turn_words(turns: int, needle: Needle) -> str:
    where = "the dot" if turns == 1 else "each dot"
    if needle == "papers":
        return f"At {where} bend the papers, and whip on along the next edge."
    if needle == "hand":
        return f"At {where} take a backstitch, pass the needle through the seam, turn, and sew on."
    return f"Stop at {where} with the needle down, lift the foot, turn the cloth, lower it and sew on."


def _stop_words(stops: int, needle: Needle) -> str:
    if needle == "papers":
        return "Whip from corner to corner."
    if needle == "hand":
        return "Sew from corner to corner only, never into the allowance."
    if stops == 1:
        return "Stop at the dot and lock the stitch: the allowance beyond it stays free."
    return "Start and stop at the dots and lock the stitch: the allowance beyond them stays free."


def _curve_words(pins: int) -> str:
    marks = f" and at the {count_of(pins, 'match mark')}" if pins else ""
    return f"Curved: pin at both ends{marks}, the hollow edge on top, and ease it in as you sew."


def press_words(draft: Draft, assembly: Assembly, step: Step, pressing: Pressing) -> str:
    """`Press toward A (dark).`; where the copies of a batch differ, which of them each way."""
    first, second = (part_words(assembly, part) for part in step.parts)
    names: dict[Toward, str] = {"first": f"toward {first}", "second": f"toward {second}", "open": "open"}
    if first == second:
        names |= {"first": "the other way", "second": "the other way"}
        if pressing.toward != "open":
            names[pressing.toward] = "as the arrow shows"
    if pressing.even:
        return f"Press {names[pressing.toward]}."
    told = []
    for way, places in copies_told(draft, assembly.units[step.step - 1], pressing.ways):
        count = pressing.ways.count(way)
        others = "the other one" if count == 1 else f"the other {count}"
        told.append(f"{count} {names[way]} ({places})" if places else f"{others} {names[way]}")
    return f"Press {one_of(told, 'and')}."


def size_words(step: Step) -> str:
    """`Unfinished 3 1/2in square, finished 3in.`"""
    return f"Unfinished {_size(step.unfinished)}, finished {_size(step.finished)}."


def _size(size: Size) -> str:
    if abs(size.width - size.height) <= ALIKE:
        return f"{about(size.width)} square"
    return f"{about(size.width)} x {about(size.height)}"
