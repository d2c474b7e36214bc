"""What is said under a step's picture: what is sewn to what, set-in seams, curves, pressing, sizes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Final, Literal

from ...drafting.model import Draft
from ...measure.record import record
from ...measure.tolerance import ALIKE
from ...sewing.model import Assembly, Size, Step
from ...sewing.pressing.pressing_model import Pressing, Toward
from ..phrases import count_of
from ..say import Say
from ..work.pressing import ways_shaded, ways_told

if TYPE_CHECKING:
    from ...sheets.work import Needle


@record
class NamedPiece:
    """A piece as a step calls it."""

    template: str
    fabric: str
    reversed: bool


@record
class NamedUnit:
    """What an earlier step makes."""

    step: int


NamedPart = NamedPiece | NamedUnit


@record
class Parts:
    """The two parts that a step sews together; `added`: which of them is shaded in the picture, 0 or 1; None
    where no picture is drawn."""

    first: NamedPart
    second: NamedPart
    added: Literal[0, 1] | None

    @property
    def same(self) -> bool:
        """Whether both have the same name."""
        return self.first == self.second

    @property
    def alike(self) -> bool:
        """Whether they look alike before they are sewn: two units, or pieces of one template."""
        if isinstance(self.first, NamedPiece) and isinstance(self.second, NamedPiece):
            return self.first.template == self.second.template
        return isinstance(self.first, NamedUnit) and isinstance(self.second, NamedUnit)


ALL_ROUND: Final[dict[Needle, str]] = {
    "machine": "Begin between two marks.",
    "hand": "Begin anywhere.",
    "papers": "Pin at four places first; begin anywhere.",
}
"""Where a seam begins that closes on itself without a corner."""


def step_title(assembly: Assembly, step: Step) -> str:
    """`Step 2 · unit 2, make 4`; the last makes the block."""
    if step.step == len(assembly.steps):
        return f"Step {step.step} · the block"
    if step.batch == 1:
        return f"Step {step.step} · unit {step.step}"
    return f"Step {step.step} · unit {step.step}, make {step.batch}"


def step_lines(
    say: Say,
    draft: Draft,
    assembly: Assembly,
    step: Step,
    pressing: Pressing,
    parts: Parts,
    needle: Needle,
    shaded: Toward | None,
) -> tuple[str, ...]:
    """The lines under the picture. Over papers nothing is pressed to a side: folds hold the allowances."""
    pressed = (
        () if needle == "papers" else (press_words(draft, assembly, step, pressing, parts, needle, shaded),)
    )
    return (
        f"{_sew(parts, needle)} {' '.join(_care(assembly, step, needle))}".strip(),
        *pressed,
        size_words(say, assembly, step, needle),
    )


def seam_words(say: Say, step: Step, pressing: Pressing) -> str:
    """`Piece 1 to unit 3: the seam 4.243in long, pressed to the darker.`; and the unfinished size where a
    ruler's nearest marks do not give it."""
    first, second = (f"unit {part[1:]}" if part.startswith("u") else f"piece {part}" for part in step.parts)
    size = step.unfinished.width, step.unfinished.height
    exact = any(say.on_ruler(each) != say.about(each) for each in size)
    unfinished = f", {say.size_on_ruler(*size)} unfinished" if exact else ""
    darker = ", pressed to the darker" if pressing.reason == "darker" else ""
    joined = f"{first[:1].upper()}{first[1:]} to {second}"
    seam = "the seam" if step.seams == 1 else "both seams together"
    return f"{joined}: {seam} {say.on_ruler(step.seam_length)} long{unfinished}{darker}."


def part_words(part: NamedPart, shaded: bool = False) -> str:
    """`A (dark)`, `B (light), reversed`, `unit 3`; which one is meant, where it is shaded."""
    if isinstance(part, NamedUnit):
        return f"unit {part.step}{' (shaded)' if shaded else ''}"
    told = (part.fabric, *(["reversed"] if part.reversed else []), *(["shaded"] if shaded else []))
    return f"{part.template} ({', '.join(told)})"


def _sew(parts: Parts, needle: Needle) -> str:
    """`Sew A (dark) to unit 3.`; of two that look alike before they are sewn, which one is shaded."""
    sew = "Whip" if needle == "papers" else "Sew"
    if parts.same and isinstance(parts.first, NamedUnit):
        return f"{sew} two of {part_words(parts.first)} together."
    told = parts.alike and not parts.same
    first, second = (
        part_words(parts.first, told and parts.added == 0),
        part_words(parts.second, told and parts.added == 1),
    )
    return f"{sew} {first} to {second}."


def _care(assembly: Assembly, step: Step, needle: Needle) -> Iterator[str]:
    """What is special about the seam."""
    later = [each.step for each in assembly.steps if each.partial and each.partial.opened == step.step]
    if later:
        yield (
            f"Partial seam: sew half of it, leave the rest open at the dot: closed after step {later[-1]}."
        )
    if step.seams > 1:
        yield "Two seams close the ring: sew the one, then the other."
    if step.partial:
        yield f"Then close the seam of step {step.partial.opened}, which was left open."
    elif step.all_round:
        yield f"Set in: the seam runs all round. {ALL_ROUND[needle]}"
    elif step.closed:
        yield "Set in: the seam runs all round. Pin the corners first; begin in the middle of a side."
    elif step.turns:
        yield f"Set in, {count_of(len(step.turns), 'turn')}. {_turn_words(len(step.turns), needle)}"
    if later:
        return
    if needle == "machine" and step.stops:
        yield "Stop at the dot at the seam’s end, too." if step.turns else _stop_words(len(step.stops))
    elif needle == "hand" and step.stops and not step.turns:
        yield "Sew from corner to corner only, never into the allowance."
    if step.curved:
        yield _curve_words(step, needle)


def _turn_words(turns: int, needle: Needle) -> str:
    where = "the dot" if turns == 1 else "each dot"
    if needle == "papers":
        return f"At {where} bend the papers softly, and whip on along the next edge."
    if needle == "hand":
        return f"At {where} take a backstitch, pass the needle through the seam, turn, and sew on."
    return f"Stop at {where} with the needle down, lift the foot, turn the cloth, lower it and sew on."


def _stop_words(stops: int) -> str:
    if stops == 1:
        return "Stop at the dot and lock the stitch: the allowance beyond it stays free."
    return "Start and stop at the dots and lock the stitch: the allowance beyond them stays free."


def _curve_words(step: Step, needle: Needle) -> str:
    if needle == "papers":
        return "Curved: hold the two edges level a little at a time, bending the papers as you whip."
    pins = len(step.eased)
    if step.all_round:  # where it begins and ends there is a mark, too
        where = f"at the {count_of(pins + 1, 'match mark')}"
    else:
        where = f"at both ends and at the {count_of(pins, 'match mark')}" if pins else "at both ends"
    return f"Curved: pin {where}, the hollow edge on top, and ease it in as you sew."


def press_words(
    draft: Draft,
    assembly: Assembly,
    step: Step,
    pressing: Pressing,
    parts: Parts,
    needle: Needle,
    shaded: Toward | None,
) -> str:
    """`Press toward A (dark).`; where the copies of a batch differ, which of them each way: those pressed as
    `shaded` says are shaded in a picture of the block."""
    first, second = part_words(parts.first), part_words(parts.second)
    names: dict[Toward, str] = {"first": f"toward {first}", "second": f"toward {second}", "open": "open"}
    if parts.same and parts.added is None:
        names |= {"first": "toward the first of them", "second": "toward the second of them"}
    elif parts.same:
        names |= {"first": "the other way", "second": "the other way"}
        if pressing.toward != "open":
            names[pressing.toward] = "as the arrow shows"
    if needle == "hand":
        names["open"] = "either way"  # running stitches show in a seam that is pressed open
    press = "Finger-press" if needle == "hand" else "Press"
    if shaded:
        return f"{press} {ways_shaded(pressing, names, shaded)}."
    return f"{press} {ways_told(draft, assembly.units[step.step - 1], pressing, names)}."


def size_words(say: Say, assembly: Assembly, step: Step, needle: Needle) -> str:
    """`Unfinished 3 1/2in square, finished 3in square.`; over papers the allowances are folded away."""
    rectangle = assembly.units[step.step - 1].rectangle
    unfinished, finished = (_size(say, each, rectangle) for each in (step.unfinished, step.finished))
    words = "" if rectangle else "over all "
    if needle != "papers":
        words += f"unfinished {unfinished}, finished {finished}"
    elif step.step < len(assembly.steps):
        words += f"{finished} on the papers"
    else:
        words += f"{finished} on the papers, {unfinished} with the outer allowances unfolded"
    return f"{words[:1].upper()}{words[1:]}."


def _size(say: Say, size: Size, rectangle: bool) -> str:
    if rectangle and abs(size.width - size.height) <= ALIKE:
        return f"{say.about(size.width)} square"
    return f"{say.about(size.width)} x {say.about(size.height)}"
