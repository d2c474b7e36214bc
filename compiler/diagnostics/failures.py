"""What can go wrong that no writer of a block file caused: the machine's failures and our own mistakes."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from .visible import shortened

if TYPE_CHECKING:
    from .diagnostic import Diagnostic
    from .source import Source

TELLING = 300  # characters of an exception's own words in a message


class MachineFailed(Exception):
    """A disk that is full, a folder that cannot be written to, a library that is not installed: one line."""


class OwnMistake(Exception):
    """A broken promise inside the program, told in one line with what it was working on."""


class ShelfDamaged(Exception):
    """A shelf's manifest cannot be read, so nobody knows what is on the shelf: as told in `said`."""

    def __init__(self, said: tuple[Diagnostic, ...], source: Source) -> None:
        super().__init__(said[0].message)
        self.said, self.source = said, source


class WrongUse(ValueError):
    """What the caller asked for that there is not, told with the choices that there are."""


class FileIsNew(WrongUse):
    """The revision has no such file."""


class Refused(Exception):
    """What a file asks for can't be made, as told in `said`; other files still can."""

    def __init__(self, said: Diagnostic) -> None:
        super().__init__(said.message)
        self.said = said


@contextmanager
def own_mistakes(subject: str) -> Iterator[None]:
    """Turns any exception that is a mistake of ours into an OwnMistake that names the subject."""
    try:
        yield
    except (
        MachineFailed,
        OwnMistake,
        Refused,
        ShelfDamaged,
        OSError,
        MemoryError,
        WrongUse,
    ):
        raise
    except Exception as problem:
        if _is_machine_lacking(problem):
            raise MachineFailed(str(problem)) from problem
        raise OwnMistake(mistake_text(subject, problem)) from problem


def mistake_text(subject: str, problem: BaseException) -> str:
    """`vane.block: This is a mistake in Piecewright ...`, with the place in the program."""
    words = " ".join(str(problem).split())
    told = f"{type(problem).__name__}{_place_of(problem)}{': ' if words else ''}{shortened(words, TELLING)}"
    return f"{subject}: This is a mistake in Piecewright, not in your file. Please report it. ({told})"


def machine_text(problem: OSError | MemoryError, doing: str = "") -> str:
    """`out/vane.pdf: No space left on device.`"""
    if isinstance(problem, MemoryError):
        return f"{doing or 'piecewright'}: There is not enough memory for this."
    name = problem.filename
    subject = doing or (str(name) if name is not None else "piecewright")
    return f"{subject}: {problem.strerror or type(problem).__name__}."


def _place_of(problem: BaseException) -> str:
    """Where in our own code it came from: ` in drafting/planar.py, line 33`."""
    from traceback import extract_tb

    home = str(Path(__file__).parent.parent)
    for frame in reversed(extract_tb(problem.__traceback__)):
        if frame.filename.startswith(home) and frame.filename != __file__:
            return f" in {Path(frame.filename).relative_to(home).as_posix()}, line {frame.lineno}"
    return ""


def _is_machine_lacking(problem: Exception) -> bool:
    """Whether the drawing library or the typeface is missing, asked without loading either."""
    return any(kind.__name__ == "MachineLacks" for kind in type(problem).__mro__)
