"""What to mind with the tools that are used; the makers' own instructions come first.

Keep the cutter from children, blade closed, adults beside young makers, the iron on its heel and unplugged:
guides of university extension services; common to several makers' pages."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

TITLE: Final = "Safety"

AT_MACHINE: Final = (
    "The machine: keep your fingers clear of the needle, and switch it off before you thread it or change a "
    "needle or foot.",
    "Mind the cords: nobody should trip over iron or machine.",
)
BY_HAND: Final = (
    "Count needles and pins before you put your work away: one left in a quilt hurts whoever finds it.",
    "Mind the iron’s cord: nobody should trip over it.",
)
MINDED: Final = "Good light and a chair of the right height save eyes and back; stop before you are tired."
"""What to mind with any work, besides the tools that cut (common practice, no published source)."""


def safety_words(rotary: bool) -> Iterator[str]:
    """What to mind, with the rotary cutter or without; the makers' own instructions come first."""
    yield "Follow the instructions that came with your tools; they come before anything said here."
    if rotary:
        yield (
            "The rotary cutter is as sharp as a razor. Close its guard after every cut, cut away from "
            "yourself, keep your "
            "fingers off the ruler’s edge, and store it closed, out of children’s reach."
        )
        yield "A young maker uses the rotary cutter and the iron only with an adult beside them."
        yield "Store the mat flat, away from heat and direct sun; never iron on it."
    else:
        yield "A young maker uses blades and the iron only with an adult beside them."
    yield "Scissors: pass them handles first. Keep pins and needles in a cushion, not in the mouth."
    yield "The iron: stand it on its heel, never leave it hot and alone, and unplug it when you are done."
