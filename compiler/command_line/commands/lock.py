"""`piecewright lock`: the blocks that a file uses, pinned beside it, so that later builds are the same."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import click

from ...diagnostics.diagnostic import Diagnostic, Outcome, errors_in
from ...diagnostics.source import Source
from ...door.compiling import FolderShelf
from ...door.inputs import Input
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
from ...words.commands import lock as words
from ..choices import command, open_shelf, shelf_option
from ..console import COMPLAINED, Tally, is_terminal, say, show_diagnostics
from ..inputs import inputs_of

if TYPE_CHECKING:
    from ...door.locks import Change, Lock


@command("lock", help=words.HELP, epilog=words.EXAMPLES)
@click.argument("files", nargs=-1, required=True, metavar="FILE|FOLDER...", type=click.Path())
@click.option("--update", is_flag=True, help=words.UPDATE)
@click.option("--yes", is_flag=True, help=words.YES)
@click.option("--check", "only_check", is_flag=True, help=words.CHECK)
@shelf_option
def lock(files: Sequence[str], update: bool, yes: bool, only_check: bool, shelves: tuple[str, ...]) -> int:
    """The exit status, when every file is locked."""
    if update and only_check:
        raise click.UsageError(words.update_or_check())
    run = _Run(open_shelf(shelves), Tally(), only_check)
    for given in inputs_of(files):
        if given.path is None:
            raise click.UsageError(words.no_lock_of_standard_input())
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
            say(words.not_on_shelves(name))
            return
        shelved = changes_between(after, now.value.lock)
        self._tell(disagreements(name, shelved), given)
        if shelved:
            say(words.shelves_differ(name))
            _list(changes_told(shelved, kept.value, now.value))
            say(words.update_takes(given.name))

    def _begin(self, name: str, given: Input, now: Outcome[Pinned]) -> None:
        """The first lock of a file."""
        if now.value is None:
            self._tell(now.diagnostics, given)
        elif self.only_check and now.value.lock.pins:
            self.refused = True
            say(words.missing(name))
        elif now.value.lock.pins and not self.only_check:
            write_lock(name, now.value.lock)
            say(words.pinned(name, len(now.value.lock.pins)))
            for pin in now.value.lock.pins:
                say(words.pin(pin.title, pin.version, pin.found))
        elif not self.only_check:
            say(words.nothing_to_pin(given.name))

    def _keep(self, name: str, old: Lock, after: Lock, changed: Sequence[Change]) -> None:
        """The lock brought up to its file, what is pinned staying."""
        if after == old:
            say(words.up_to_file(name, len(old.pins)))
        elif self.only_check:
            self.refused = True
            say(words.not_up_to_file(name))
        else:
            write_lock(name, after)
            say(words.brought_up(name, changed=bool(changed)))
        _list(map(words.change_words, changed))

    def _update(
        self, name: str, changed: Sequence[Change], told: Sequence[str], now: Lock, yes: bool
    ) -> None:
        """The lock anew, after showing what changes."""
        if not changed:
            say(words.shelves_agree(name))
            return
        say(words.update_brings(name))
        _list(told)
        if yes or (is_terminal(sys.stdin) and click.confirm(words.ASK)):
            write_lock(name, now)
            say(words.updated(name))
        else:
            self.refused = True
            say(words.left_as_it_was())

    def _tell(self, diagnostics: Iterable[Diagnostic], given: Input) -> None:
        """Shows errors, and counts them."""
        faults = errors_in(diagnostics)
        source = read_text(given)[1].value or Source(given.name, "")
        sources = {**locked_sources(faults), **self.shelf.sources, given.name: source}
        show_diagnostics(faults, sources, err=True)
        self.tally.add(faults)


def _list(lines: Iterable[str]) -> None:
    for each in lines:
        say(words.item(each))
