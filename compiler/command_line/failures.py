"""What can go wrong that no writer of a block file caused: the machine's failures and our own mistakes."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Span
from ..words.messages import machine
from .shelves.listing import ShelfDamaged


class MachineFailed(Exception):
    """A disk that is full, a folder that cannot be written to, a library that is not installed: one line."""


class OwnMistake(Exception):
    """A broken promise inside the program, told in one line with what it was working on."""


class Refused(Exception):
    """What a file asks for can't be made, as told in `said`; other files still can."""

    def __init__(self, said: Diagnostic) -> None:
        super().__init__(said.code)
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
        click.ClickException,
        click.exceptions.Exit,
    ):
        raise
    except Exception as problem:
        if _is_machine_lacking(problem):
            raise MachineFailed(str(problem)) from problem
        raise OwnMistake(mistake_text(subject, problem)) from problem


@contextmanager
def laying_out(subject: str, title: Span) -> Iterator[None]:
    """The same, and refuses what has more pages than anybody prints at the title's words."""
    from ..sheets.arrange.page_bound import TooManyPages

    with own_mistakes(subject):
        try:
            yield
        except TooManyPages as problem:
            raise Refused(problem.said(title)) from problem


def mistake_text(subject: str, problem: BaseException) -> str:
    """`vane.block: This is a mistake in Piecewright ...`, with the place in the program."""
    words = " ".join(str(problem).split())
    return machine.own_mistake(subject, type(problem).__name__, _place_of(problem), words)


def machine_text(problem: OSError | MemoryError, doing: str = "") -> str:
    """`out/vane.pdf: No space left on device.`"""
    if isinstance(problem, MemoryError):
        return machine.memory_short(doing)
    subject = doing or ("" if problem.filename is None else str(problem.filename))
    return machine.system_refused(subject, problem.strerror or type(problem).__name__)


def _place_of(problem: BaseException) -> tuple[str, int] | None:
    """Where in our own code it came from: `drafting/planar.py`, line 33."""
    from traceback import extract_tb

    home = str(Path(__file__).parent.parent)
    for frame in reversed(extract_tb(problem.__traceback__)):
        if frame.filename.startswith(home) and frame.filename != __file__:
            return Path(frame.filename).relative_to(home).as_posix(), frame.lineno or 0
    return None


def _is_machine_lacking(problem: Exception) -> bool:
    """Whether the drawing library or the typeface is missing, asked without loading either."""
    return any(kind.__name__ == "MachineLacks" for kind in type(problem).__mro__)
