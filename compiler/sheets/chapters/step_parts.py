"""What a step sews to what: the facts of which its words are made."""

from __future__ import annotations

from typing import Literal

from ...sewing.model import Assembly, Step
from ...words.pages.steps import NamedPart, NamedPiece, NamedUnit, Parts


def step_parts(assembly: Assembly, step: Step, *, shaded: bool = True) -> Parts:
    """Both parts as they are called, and which of them a picture shades, where there is one."""
    first, second = (_named(assembly, part) for part in step.parts)
    return Parts(first, second, added_side(assembly, step) if shaded else None)


def added_side(assembly: Assembly, step: Step) -> Literal[0, 1]:
    """Which of a step's two parts is added: the smaller one, of equals the second. Pictures shade it."""
    first, second = (len(_pieces(assembly, part)) for part in step.parts)
    return 1 if second <= first else 0


def _named(assembly: Assembly, part: str) -> NamedPart:
    if part.startswith("u"):
        return NamedUnit(int(part[1:]))
    cloth = assembly.pieces[int(part) - 1]
    return NamedPiece(cloth.template, cloth.fabric, cloth.reversed)


def _pieces(assembly: Assembly, part: str) -> tuple[int, ...]:
    return assembly.units[int(part[1:]) - 1].pieces if part.startswith("u") else (int(part),)
