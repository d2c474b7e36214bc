"""`piecewright lock`: the blocks that a file uses, pinned beside it, so that later builds are the same."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import click

from ...diagnostics.diagnostic import Diagnostic, Outcome, Severity
from ...diagnostics.source import Source
from ...diagnostics.visible import visible
from ...door.compiling import FolderShelf
from ...door.locks import (
    Pinned,
    brought_up,
    changes_between,
    changes_told,
    disagreements,
    lock_name,
    locked_sources,
    opened_lock,
    pinned_by,
    write_lock,
)
from ...door.rewriting import read_text
from ...failures import own_mistakes
from ...words.phrases import count_of
from ..choices import command, open_shelf, shelf_option
from ..console import COMPLAINED, Tally, is_terminal, say, show_diagnostics
from ..inputs import Input, inputs_of

if TYPE_CHECKING:
    from ...door.locks import Change, Lock

EXAMPLES: Final = """
\b
Examples:
  piecewright lock sampler.quilt            pin the blocks it uses, in sampler.quilt.lock
  piecewright lock sampler.quilt --update   see what the shelves have now, and take it
  piecewright lock --check .                is every lock there, whole and up to its file?
"""


@command("lock", short_help="Pin the blocks that a quilt uses.", epilog=EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="FILE|FOLDER...", type=click.Path())
@click.option(
    "--update",
    is_flag=True,
    help="Show what the shelves have now in place of what is pinned, ask, and pin that.",
)
@click.option("--yes", is_flag=True, help="With --update: take it without asking.")
@click.option(
    "--check",
    "only_check",
    is_flag=True,
    help="Write nothing: status 1 where a lock is missing, damaged, or not up to its file.",
)
@shelf_option
def lock(files: Sequence[str], update: bool, yes: bool, only_check: bool, shelves: tuple[str, ...]) -> int:
    """Pin the blocks that FILE uses from elsewhere, with their texts, in a lock file beside it.

    Every command that reads FILE then takes those blocks, so it makes the same sheets next year, whatever the
    shelves have by then. Keep the lock with the file. Run again after changing a 'use': what is pinned stays,
    what is new is added, what is no longer used goes; and you are told what the shelves have otherwise.
    A FOLDER stands for every file in it that uses a block or has a lock.
    """
    if update and only_check:
        raise click.UsageError("--update writes and --check does not: give one of them.")
    run = _Run(open_shelf(shelves), Tally(), only_check)
    for given in inputs_of(files):
        if given.path is None:
            raise click.UsageError("A lock stands beside a file; standard input has none.")
        with own_mistakes(given.name):
            run.lock(given, update, yes)
    return COMPLAINED if run.refused else run.tally.status()


@dataclass(slots=True)
class _Run:
    """One run of the command."""

    shelf: FolderShelf
    tally: Tally
    only_check: bool
    refused: bool = False

    def lock(self, given: Input, update: bool, yes: bool) -> None:
        """Locks one file, or says why not."""
        name = lock_name(given.name)
        opened = opened_lock(given, self.shelf)
        if opened.value is None:
            self._tell(opened.diagnostics, given)
            return
        now = pinned_by(given, self.shelf)
        old = opened.value.lock
        if old is None:
            self._begin(name, given, now)
            return
        kept = pinned_by(given, self.shelf, opened.value)
        if kept.value is None:
            self._tell(kept.diagnostics, given)
            return
        after = brought_up(kept.value.lock, old)
        if update:
            if now.value is None:
                self._tell(now.diagnostics, given)
            else:
                changed = changes_between(old, now.value.lock)
                self._update(name, changed, changes_told(changed, kept.value, now.value), now.value.lock, yes)
            return
        self._keep(name, old, after, changes_between(old, after))
        if now.value is None:
            say(f"{visible(name)}: the shelves of today have not all that is pinned.")
            return
        shelved = changes_between(after, now.value.lock)
        self._tell(disagreements(name, shelved), given)
        if shelved:
            say(f"The shelves have otherwise than {visible(name)}:")
            _list(changes_told(shelved, kept.value, now.value))
            say(f"'piecewright lock {visible(given.name)} --update' takes that.")

    def _begin(self, name: str, given: Input, now: Outcome[Pinned]) -> None:
        """The first lock of a file."""
        if now.value is None:
            self._tell(now.diagnostics, given)
        elif self.only_check and now.value.lock.pins:
            self.refused = True
            say(f"{visible(name)} is missing.")
        elif now.value.lock.pins and not self.only_check:
            write_lock(name, now.value.lock)
            say(f"Pinned {count_of(len(now.value.lock.pins), 'block')} in {visible(name)}:")
            for pin in now.value.lock.pins:
                say(f"  {visible(pin.title)}, version {pin.version} ({visible(pin.found)})")
        elif not self.only_check:
            say(f"{visible(given.name)} uses no block from elsewhere: there is nothing to pin.")

    def _keep(self, name: str, old: Lock, after: Lock, changed: Sequence[Change]) -> None:
        """The lock brought up to its file, what is pinned staying."""
        if after == old:
            say(f"{visible(name)} is up to its file: {count_of(len(old.pins), 'block')} pinned.")
        elif self.only_check:
            self.refused = True
            say(f"{visible(name)} is not up to its file:")
        else:
            write_lock(name, after)
            say(f"Brought {visible(name)} up to its file{':' if changed else '.'}")
        from ...words.messages.locks import change_text

        _list(map(change_text, changed))

    def _update(
        self, name: str, changed: Sequence[Change], told: Sequence[str], now: Lock, yes: bool
    ) -> None:
        """The lock anew, after showing what changes."""
        if not changed:
            say(f"{visible(name)}: the shelves have what is pinned.")
            return
        say(f"An update of {visible(name)} brings:")
        _list(told)
        if yes or (is_terminal(sys.stdin) and click.confirm("Pin that?")):
            write_lock(name, now)
            say(f"Updated {visible(name)}.")
        else:
            self.refused = True
            say("Nothing is changed; --yes takes it without asking.")

    def _tell(self, diagnostics: Iterable[Diagnostic], given: Input) -> None:
        """Shows errors, and counts them."""
        faults = [each for each in diagnostics if each.severity is Severity.ERROR]
        source = read_text(given)[1].value or Source(given.name, "")
        sources = {**locked_sources(faults), **self.shelf.sources, given.name: source}
        show_diagnostics(faults, sources, err=True)
        self.tally.add(faults)


def _list(lines: Iterable[str]) -> None:
    for each in lines:
        say(f"  {visible(each)}")
