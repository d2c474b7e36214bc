"""What is told of the machine's failures, and of our own mistakes: sentences, no diagnostics."""

from __future__ import annotations

from typing import Final

from ...diagnostics.visible import shortened

TELLING: Final = 300  # characters of an exception's own words in a message

PROGRAM: Final = "piecewright"


def own_mistake(subject: str, kind: str, place: tuple[str, int] | None, words: str) -> str:
    """`vane.block: This is a mistake in Piecewright ...`, with the place in the program: a module, a line."""
    where = f" in {place[0]}, line {place[1]}" if place else ""
    told = f"{kind}{where}{': ' if words else ''}{shortened(words, TELLING)}"
    return f"{subject}: This is a mistake in Piecewright, not in your file. Please report it. ({told})"


def memory_short(doing: str) -> str:
    """The machine has no more room."""
    return f"{doing or PROGRAM}: There is not enough memory for this."


def system_refused(subject: str, reason: str) -> str:
    """`out/vane.pdf: No space left on device.`"""
    return f"{subject or PROGRAM}: {reason}."


def worker_ended() -> str:
    """One of several processes was ended."""
    return (
        "A process at work on the shelves was ended from outside, perhaps for want "
        "of memory. Try again, or with fewer shelves."
    )


def too_slow(seconds: float) -> str:
    """A file that takes longer than anybody waits."""
    return f"It takes more than {seconds:.0f} seconds to draft."


def not_read() -> str:
    """A file on a shelf that the system does not give."""
    return "It cannot be read."
