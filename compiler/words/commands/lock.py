"""`piecewright lock`: its help, and what is told of locks."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ...diagnostics.visible import visible
from ..phrases import count_of

if TYPE_CHECKING:
    from ...drafting.pinned import Change

HELP: Final = """\
Pin the blocks that FILE uses from elsewhere, with their texts, in a lock file beside it.

Every command that reads FILE then takes those blocks, so it makes the same sheets next year, whatever the
shelves have by then. Keep the lock with the file. Run again after changing a 'use': what is pinned stays,
what is new is added, what is no longer used goes; and you are told what the shelves have otherwise.
A FOLDER stands for every file in it that uses a block or has a lock.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright lock sampler.quilt            pin the blocks it uses, in sampler.quilt.lock
  piecewright lock sampler.quilt --update   see what the shelves have now, and take it
  piecewright lock --check .                is every lock there, whole and up to its file?
"""

UPDATE: Final = "Show what the shelves have now in place of what is pinned, ask, and pin that."
YES: Final = "With --update: take it without asking."
CHECK: Final = "Write nothing: status 1 where a lock is missing, damaged, or not up to its file."
ASK: Final = "Pin that?"


def update_or_check() -> str:
    """Both were given."""
    return "--update writes and --check does not: give one of them."


def no_lock_of_standard_input() -> str:
    """Nothing beside which a lock could stand."""
    return "A lock stands beside a file; standard input has none."


def missing(lock: str) -> str:
    """No lock beside a file that needs one."""
    return f"{visible(lock)} is missing."


def pinned(lock: str, blocks: int) -> str:
    """The first lock of a file; what it pins follows."""
    return f"Pinned {count_of(blocks, 'block')} in {visible(lock)}:"


def pin(title: str, version: int, found: str) -> str:
    """A block pinned, and where it was found."""
    return item(f"{title}, version {version} ({found})")


def nothing_to_pin(file: str) -> str:
    """A file that needs no lock."""
    return f"{visible(file)} uses no block from elsewhere: there is nothing to pin."


def up_to_file(lock: str, blocks: int) -> str:
    """A lock that is as it should be."""
    return f"{visible(lock)} is up to its file: {count_of(blocks, 'block')} pinned."


def not_up_to_file(lock: str) -> str:
    """A lock that is not; what would change follows."""
    return f"{visible(lock)} is not up to its file:"


def brought_up(lock: str, *, changed: bool) -> str:
    """A lock that was not; what changed follows, where it is told."""
    return f"Brought {visible(lock)} up to its file{':' if changed else '.'}"


def not_on_shelves(lock: str) -> str:
    """Pinned blocks that are gone from the shelves."""
    return f"{visible(lock)}: the shelves of today have not all that is pinned."


def shelves_differ(lock: str) -> str:
    """Blocks that changed since they were pinned; they follow."""
    return f"The shelves have otherwise than {visible(lock)}:"


def update_takes(file: str) -> str:
    """How to have what the shelves have."""
    return f"'piecewright lock {visible(file)} --update' takes that."


def shelves_agree(lock: str) -> str:
    """Nothing to update."""
    return f"{visible(lock)}: the shelves have what is pinned."


def update_brings(lock: str) -> str:
    """What an update would change follows."""
    return f"An update of {visible(lock)} brings:"


def updated(lock: str) -> str:
    """The lock was written anew."""
    return f"Updated {visible(lock)}."


def left_as_it_was() -> str:
    """The update was not wanted."""
    return "Nothing is changed; --yes takes it without asking."


def item(text: str) -> str:
    """A line of a list."""
    return f"  {visible(text)}"


def change_words(change: Change) -> str:
    """`Pair: version 2 in place of 1, other outlines`: what a `use` means in a newer lock."""
    old, new = change.old, change.new
    if old is None or new is None:
        pin, what = (new, "new") if new else (old, "no longer used")
        assert pin is not None, "a change has one side at least"
        return f"{pin.title}, version {pin.version}: {what}"
    outlines = "the same outlines" if old.fingerprint == new.fingerprint else "other outlines"
    if old.version == new.version:
        return f"{old.title}, version {old.version}: {outlines}, other words"
    return f"{old.title}: version {new.version} in place of {old.version}, {outlines}"
