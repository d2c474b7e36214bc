"""The lock beside a file: found, read, and used in place of the shelves."""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Final

from ..diagnostics.diagnostic import Diagnostic, Outcome
from ..diagnostics.source import Source, Span
from ..measure.record import record
from .folders import FolderShelf
from .reading import plain_bytes

if TYPE_CHECKING:
    from ..language.lock_file import Lock
    from ..language.shelf import Shelf, ShelfBlock
    from ..pipeline import Compilation

ENDING: Final = ".lock"
LARGEST: Final = 8_000_000  # bytes: as a block file; a lock of a hundred blocks has some hundred thousand


@record
class Locked:
    """Where a file's blocks are found: a shelf, and the lock that it stands behind, if there is one."""

    shelf: Shelf
    sources: Mapping[str, Source]
    name: str = ""
    lock: Lock | None = None
    blocks: tuple[ShelfBlock, ...] = ()

    def said(self, own: str, made: Compilation) -> list[Diagnostic]:
        """What there is to say of a file compiled with it."""
        if self.lock is None:
            return []
        from ..drafting.pinned import said_of_choices

        return said_of_choices(self.name, own, self.lock, self.blocks, made.choices, fingerprints_of(made))


def lock_name(file: str) -> str:
    """Where the lock of a file stands: `sampler.quilt.lock` beside `sampler.quilt`."""
    return file + ENDING


def open_lock(file: str | None, shelf: FolderShelf) -> Outcome[Locked]:
    """The shelf behind the lock beside a file; the shelf alone where there is no lock, or no file."""
    name = lock_name(file or "")
    if file is None or not os.path.lexists(name):
        return Outcome(Locked(shelf, {}))
    from ..language.lock import LockedShelf, pinned_blocks
    from ..language.lock_file import read_lock
    from ..words.messages import locks as complain

    try:
        data = plain_bytes(name, LARGEST)
    except OSError as problem:
        return Outcome(None, (complain.lock_unreadable(name, problem.strerror or ""),))
    if len(data) > LARGEST:
        return Outcome(None, (complain.lock_damaged(name, "larger"),))
    lock = read_lock(name, data)
    blocks = lock.then(lambda read: pinned_blocks(name, read))
    if lock.value is None or blocks.value is None:
        return Outcome(None, blocks.diagnostics)
    locked = LockedShelf(lock.value, blocks.value, shelf)
    return Outcome(Locked(locked, locked.sources, name, lock.value, blocks.value))


def locked_sources(diagnostics: Iterable[Diagnostic]) -> dict[str, Source]:
    """An empty source for each file that is complained of as a whole."""
    return {each.primary.span.source: Source(each.primary.span.source, "") for each in diagnostics}


def fingerprints_of(made: Compilation) -> dict[Span, str]:
    """The fingerprint of each block, by the place of its title."""
    from ..drafting.fingerprint import fingerprint_of

    return {draft.origin: fingerprint_of(draft) for draft in made.drafts if draft.origin is not None}
