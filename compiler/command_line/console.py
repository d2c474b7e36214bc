"""What reaches the terminal: diagnostics and their tally, messages of one line, and a line of progress.

Colour and progress only where a person looks: on a terminal, and never against NO_COLOR.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import IO, Any, Final, Literal

import click

from ..diagnostics.diagnostic import Diagnostic, Severity
from ..diagnostics.source import Source
from ..diagnostics.visible import end_of, shortened, visible
from ..failures import OwnMistake
from ..words.commands.files import wrote
from ..words.telling import Sought, summary

CLEAN: Final = 0
COMPLAINED: Final = 1
USED_WRONGLY: Final = 2
OWN_MISTAKE: Final = 3

FORGET_LINE: Final = "\r\x1b[K"  # back to the line's start, and clear to its end
PROGRESS_ROOM: Final = 78  # columns, on a terminal of 80
ONE_LINE: Final = 1000  # characters of a message of one line


def wants_colour(stream: IO[Any] | None) -> bool:
    """Whether a person looks at the stream and has not asked for plain text (the NO_COLOR convention)."""
    return is_terminal(stream) and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def is_terminal(stream: IO[Any] | None) -> bool:
    """Whether the stream is a terminal."""
    try:
        return stream is not None and stream.isatty()
    except ValueError:  # closed by whoever started us
        return False


def say(text: str) -> None:
    """A line on standard output."""
    click.echo(text)


def complain(text: str) -> None:
    """A message of one line on standard error, safe to show."""
    click.echo(shortened(visible(text), ONE_LINE), err=True)


def say_wrote(paths: Iterable[str], *, err: bool = False) -> None:
    """A line for every file that was made."""
    for path in paths:
        click.echo(wrote(path), err=err)


@dataclass(slots=True)
class Tally:
    """How much was said in a run, and so the exit status."""

    errors: int = 0
    warnings: int = 0
    notes: int = 0
    files: int = 0
    faulty: int = 0  # files with at least one error or warning
    own_mistakes: int = 0
    _last_faulty: bool = False

    def add(self, diagnostics: Iterable[Diagnostic]) -> None:
        """Counts what was said about one file."""
        self.files += 1
        self._last_faulty = False
        self.add_to_last(diagnostics)

    def add_to_last(self, diagnostics: Iterable[Diagnostic]) -> None:
        """Counts what more was said about the same file."""
        said = [each.severity for each in diagnostics]
        self.errors += said.count(Severity.ERROR)
        self.warnings += said.count(Severity.WARNING)
        self.notes += said.count(Severity.NOTE)
        if not self._last_faulty and (Severity.ERROR in said or Severity.WARNING in said):
            self._last_faulty = True
            self.faulty += 1

    def status(self, *, strict: bool = False) -> int:
        """0 clean, 1 where there is an error (or, when strict, a warning), 3 for a mistake of our own."""
        if self.own_mistakes:
            return OWN_MISTAKE
        return COMPLAINED if self.errors or (strict and self.warnings) else CLEAN

    def summary(self, sought: Sought = "mistakes") -> str:
        """`2 errors and 1 warning in 1 of 3 files.`"""
        counted = self.errors, self.warnings, self.notes
        return summary(*counted, faulty=self.faulty, files=self.files, sought=sought)


Shown = Literal["people", "short", "github"]
Form = Literal["people", "short", "json", "github"]


def show_diagnostics(
    diagnostics: Iterable[Diagnostic], sources: Mapping[str, Source], *, err: bool, form: Shown = "people"
) -> None:
    """Every diagnostic on standard output or standard error, with an empty line between those for people."""
    from ..diagnostics.render import Style, render

    colour = form != "github" and wants_colour(sys.stderr if err else sys.stdout)
    for each in diagnostics:
        text = render(each, sources, Style(form, colour)) + ("\n" if form == "people" else "")
        click.echo(text, err=err, color=True)  # whether there is colour was asked in rendering


@dataclass(slots=True)
class Report:
    """What is said of one file after another on standard output, in the form asked for, and counted. JSON is
    written as it grows, so that a long run keeps nothing."""

    form: Form
    tally: Tally = field(default_factory=Tally)
    _opening: str = "["

    def add(self, diagnostics: Sequence[Diagnostic], sources: Mapping[str, Source]) -> None:
        """Says all of one file."""
        self.tally.add(diagnostics)
        if self.form != "json":
            show_diagnostics(diagnostics, sources, err=False, form=self.form)
            return
        from ..diagnostics.as_json import as_json

        for each in diagnostics:
            click.echo(f"{self._opening}\n{as_json(each, sources)}", nl=False)
            self._opening = ","

    def end(self, sought: Sought = "mistakes") -> None:
        """The end of a list; a summary for people."""
        if self.form == "json":
            click.echo("[]" if self._opening == "[" else "\n]")
        elif self.form == "people":
            say(self.tally.summary(sought))


class Progress:
    """A line on standard error that says what is being done, only on a terminal, and gone afterwards."""

    def __init__(self, total: int) -> None:
        self._stream = sys.stderr if is_terminal(sys.stderr) else None
        self._total = total
        self._done = 0

    @contextmanager
    def file(self, doing: str, tally: Tally) -> Iterator[None]:
        """One file further on: a mistake of ours with it is told and counted, and ends no run."""
        self._done += 1
        self.doing(doing)
        try:
            yield
        except OwnMistake as problem:
            tally.own_mistakes += 1
            self.clear()
            complain(str(problem))
        finally:
            self.clear()

    def doing(self, what: str) -> None:
        """Shows `[3/40] vane.block: laying out 12 templates` in place of what was there; '' takes it away."""
        if not what:
            self.clear()
            return
        if self._stream is not None:
            counted = f"[{self._done}/{self._total}] " if self._total > 1 else ""
            self._stream.write(FORGET_LINE + counted + end_of(visible(what), PROGRESS_ROOM - len(counted)))
            self._stream.flush()

    def clear(self) -> None:
        """Takes the line away: before anything else is said, and at the end."""
        if self._stream is not None:
            self._stream.write(FORGET_LINE)
            self._stream.flush()
