"""Locks: the blocks that a file uses, pinned beside it, and what the shelves have otherwise."""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from ..diagnostics.diagnostic import Diagnostic, Outcome
from ..measure.record import record
from ..shelves.locking import Locked, fingerprints_of, lock_name, locked_sources, open_lock
from .compiling import FolderShelf
from .inputs import Input
from .rewriting import read_text, rewrite, write_new

if TYPE_CHECKING:
    from ..drafting.pinned import Change
    from ..language.lock_file import Lock
    from ..pipeline import CompiledBlock

__all__ = ["Change", "Lock", "Locked", "lock_name", "locked_sources"]


@record
class Pinned:
    """A lock, and the blocks that its texts draft to."""

    lock: Lock
    blocks: Mapping[str, CompiledBlock]


def opened_lock(given: Input, shelf: FolderShelf) -> Outcome[Locked]:
    """The shelf behind the lock beside a file; the shelf alone where there is no lock."""
    return open_lock(given.file, shelf)


def pinned_by(given: Input, shelf: FolderShelf, behind: Locked | None = None) -> Outcome[Pinned]:
    """The lock that the file would have with blocks from that shelf, or from behind its lock."""
    locked = behind or Locked(shelf, {})
    from ..language.lock import lock_of, pinned_text, place_of
    from ..pipeline import compile_file

    shelf.forget()
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
    return Outcome(Pinned(lock_of(given.name, made.value.choices, fingerprints_of(made.value)), blocks))


def brought_up(lock: Lock, old: Lock) -> Lock:
    """A lock with the fingerprints that the old one has for the same texts."""
    from ..language.lock import with_old_fingerprints

    return with_old_fingerprints(lock, old)


def changes_between(old: Lock, new: Lock) -> Sequence[Change]:
    """What is pinned otherwise."""
    from ..drafting.pinned import changes

    return changes(old, new)


def disagreements(name: str, changed: Iterable[Change]) -> list[Diagnostic]:
    """Of the changes, those by which one version has two drafts."""
    from ..words.messages.locks import lock_disagrees

    pins = [each.old for each in changed if each.disagrees]
    return [lock_disagrees(name, pin.title, pin.version) for pin in pins if pin]


def write_lock(name: str, new: Lock) -> None:
    """Writes the lock, over an older one where it stands."""
    from ..language.lock_file import lock_text

    write = rewrite if os.path.exists(name) else write_new
    write(Path(name), lock_text(new).encode())


def changes_told(changed: Iterable[Change], old: Pinned, new: Pinned) -> list[str]:
    """Every change in words; where outlines change, with what becomes of each template."""
    from ..cutting.comparison import Side, compare
    from ..words.commands.lock import change_words
    from ..words.say import INCHES
    from ..words.work.comparison import verdict_lines

    lines: list[str] = []
    for each in changed:
        lines.append(change_words(each))
        before = old.blocks.get(each.old.text) if each.old else None
        after = new.blocks.get(each.new.text) if each.new else None
        if each.redraws and before and after:
            comparison = compare(Side(before.draft, before.templates), Side(after.draft, after.templates))
            lines += [f"  {line}" for line in verdict_lines(INCHES, comparison)]
    return lines
