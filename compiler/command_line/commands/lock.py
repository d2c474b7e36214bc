"""`piecewright lock`: the blocks that a file uses, pinned beside it, so that later builds are the same."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from ...diagnostics.diagnostic import Diagnostic, Outcome, Severity
from ...diagnostics.source import Source
from ...diagnostics.visible import visible
from ...words.phrases import count_of
from ..choices import open_shelf, shelf_option
from ..console import COMPLAINED, Tally, is_terminal, say, show_diagnostics
from ..failures import own_mistakes
from ..inputs import Input, inputs_of
from ..rewriting import read_text, rewrite, write_new
from ..shelves.folders import FolderShelf
from ..shelves.locking import Locked, fingerprints_of, lock_name, locked_sources, open_lock

if TYPE_CHECKING:
    from ...drafting.pinned import Change
    from ...language.lock_file import Lock
    from ...pipeline import CompiledBlock

EXAMPLES: Final = """
\b
Examples:
  piecewright lock sampler.quilt            pin the blocks it uses, in sampler.quilt.lock
  piecewright lock sampler.quilt --update   see what the shelves have now, and take it
  piecewright lock --check .                is every lock there, whole and up to its file?
"""


@click.command("lock", short_help="Pin the blocks that a quilt uses.", epilog=EXAMPLES)
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


@dataclass(frozen=True, slots=True)
class _Pinned:
    """A lock, and the blocks that its texts draft to."""

    lock: Lock
    blocks: Mapping[str, CompiledBlock]


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
        opened = open_lock(given, self.shelf)
        if opened.value is None:
            self._tell(opened.diagnostics, given)
            return
        now = self._locked(given, Locked(self.shelf, {}))
        old = opened.value.lock
        if old is None:
            self._begin(name, given, now)
            return
        kept = self._locked(given, opened.value)
        if kept.value is None:
            self._tell(kept.diagnostics, given)
            return
        from ...drafting.pinned import changes
        from ...language.lock import with_old_fingerprints
        from ...words.messages.locks import lock_disagrees

        after = with_old_fingerprints(kept.value.lock, old)
        if update:
            if now.value is None:
                self._tell(now.diagnostics, given)
            else:
                changed = changes(old, now.value.lock)
                self._update(name, changed, _told(changed, kept.value, now.value), now.value.lock, yes)
            return
        self._keep(name, old, after, changes(old, after))
        if now.value is None:
            say(f"{visible(name)}: the shelves of today have not all that is pinned.")
            return
        shelved = changes(after, now.value.lock)
        pins = [each.old for each in shelved if each.disagrees]
        self._tell([lock_disagrees(name, pin.title, pin.version) for pin in pins if pin], given)
        if shelved:
            say(f"The shelves have otherwise than {visible(name)}:")
            _list(_told(shelved, kept.value, now.value))
            say(f"'piecewright lock {visible(given.name)} --update' takes that.")

    def _begin(self, name: str, given: Input, now: Outcome[_Pinned]) -> None:
        """The first lock of a file."""
        if now.value is None:
            self._tell(now.diagnostics, given)
        elif self.only_check and now.value.lock.pins:
            self.refused = True
            say(f"{visible(name)} is missing.")
        elif now.value.lock.pins and not self.only_check:
            self._write(name, now.value.lock)
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
            self._write(name, after)
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
            self._write(name, now)
            say(f"Updated {visible(name)}.")
        else:
            self.refused = True
            say("Nothing is changed; --yes takes it without asking.")

    def _locked(self, given: Input, locked: Locked) -> Outcome[_Pinned]:
        """The lock that the file would have with blocks from that shelf."""
        from ...language.lock import lock_of, pinned_text, place_of
        from ...pipeline import compile_file

        self.shelf.forget()
        read = read_text(given)[1]
        made = read.then(lambda source: compile_file(source, locked.shelf))
        if made.value is None or made.failed:
            return Outcome(None, made.diagnostics)
        drafted = {each.draft.origin: each for each in made.value.blocks}
        blocks = {
            pinned_text(each.block): drafted[place_of(each.block)]
            for each in made.value.choices
            if place_of(each.block) in drafted
        }
        return Outcome(_Pinned(lock_of(given.name, made.value.choices, fingerprints_of(made.value)), blocks))

    def _write(self, name: str, new: Lock) -> None:
        from ...language.lock_file import lock_text

        write = rewrite if os.path.exists(name) else write_new
        write(Path(name), lock_text(new).encode())

    def _tell(self, diagnostics: Iterable[Diagnostic], given: Input) -> None:
        """Shows errors, and counts them."""
        faults = [each for each in diagnostics if each.severity is Severity.ERROR]
        source = read_text(given)[1].value or Source(given.name, "")
        sources = {**locked_sources(faults), **self.shelf.sources, given.name: source}
        show_diagnostics(faults, sources, err=True)
        self.tally.add(faults)


def _told(changed: Iterable[Change], old: _Pinned, new: _Pinned) -> list[str]:
    """Every change in words; where outlines change, with what becomes of each template."""
    from ...cutting.comparison import Side, compare
    from ...sheets.reports.comparison_report import verdict_lines
    from ...words.messages.locks import change_text

    lines: list[str] = []
    for each in changed:
        lines.append(change_text(each))
        before = old.blocks.get(each.old.text) if each.old else None
        after = new.blocks.get(each.new.text) if each.new else None
        if each.redraws and before and after:
            comparison = compare(Side(before.draft, before.templates), Side(after.draft, after.templates))
            lines += [f"  {line}" for line in verdict_lines(comparison)]
    return lines


def _list(lines: Iterable[str]) -> None:
    for each in lines:
        say(f"  {visible(each)}")
