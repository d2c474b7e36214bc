"""Catalogue entries for locks: what is wrong with the blocks pinned beside a file."""

from __future__ import annotations

from typing import Final

from .entry import Entry

LOCKS: Final = (
    Entry(
        "lock-unreadable",
        "A lock file cannot be read",
        "Beside the file stands a lock, in which the blocks that it uses are pinned, and the system does "
        "not let Piecewright read it. Without it other blocks might be taken, so nothing is made.",
    ),
    Entry(
        "lock-damaged",
        "A lock file is damaged",
        "The lock beside the file is cut short, or somebody changed it by hand: each pinned text bears a "
        "digest. Take it from your backup, or delete it and pin the blocks of today.",
    ),
    Entry(
        "lock-newer",
        "A lock file of a newer Piecewright",
        "The lock beside the file has a form that this Piecewright does not know. Use the newer one, or "
        "delete the lock and pin the blocks of today.",
    ),
    Entry(
        "lock-lacks",
        "A used block is not pinned",
        "The file has a lock, but this `use` was written, or asks for another version, since the file was "
        "locked. The block was taken from the shelf. `piecewright lock` pins it too, and leaves what is "
        "pinned already as it is.",
    ),
    Entry(
        "lock-drafts-otherwise",
        "A pinned block drafts otherwise than it did",
        "The text of the block is the one that was pinned, but its outlines are not: this Piecewright "
        "drafts it otherwise than the one that pinned it. Templates cut before may not fit those "
        "printed now.",
    ),
    Entry(
        "lock-disagrees",
        "A version has other outlines than the pinned one",
        "A block on the shelf has the title and the version of one that is pinned, and other outlines. "
        "Somebody changed the block and left its version: whoever asks for that version no longer knows "
        "what comes. Give the changed block a new version, and the old one back its text.",
    ),
)
