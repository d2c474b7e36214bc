"""What earlier builds made, kept in a folder of the user's: bytes under the digest of all they depend on.

Safe to delete at any time. Every entry carries a digest of its key and its own bytes: one that is damaged, or
stands under another's name, counts as not there, and so does one that another user wrote (in a shared folder,
others' entries could name any file to write), and a link or a pipe. Entries are written
whole (see `writing`), so two builds at once at worst write the same twice. A folder that cannot be read or
written keeps nothing, and nobody is told: a build is right without it. Loads little: a build in which nothing
has changed does no more than this.
"""

from __future__ import annotations

import os
import sys
from typing import Final

from ..shelves.digests import digest_of
from ..shelves.reading import plain_bytes

SETTING: Final = "PIECEWRIGHT_CACHE"  # another folder, or OFF
OFF: Final = "off"
ENDING: Final = ".kept"
MARK: Final = b"piecewright 2 "  # an entry: this, the digest of its key and the rest, a new line, the rest
MOST_BYTES: Final = 256_000_000  # of all entries together; a large quilt's takes some hundred thousand
LEFT_BYTES: Final = 192_000_000  # after the oldest have been dropped
LARGEST: Final = 64_000_000  # bytes of one entry: what is larger is made anew each time


def kept_folder() -> str | None:
    """Where entries are: PIECEWRIGHT_CACHE, or the place the system has for such things. None: nowhere."""
    told = os.environ.get(SETTING)
    if told is not None:
        return None if told in ("", OFF) else told
    if sys.platform == "win32":
        places = [os.environ.get("LOCALAPPDATA", "")]
    else:
        within = ("Library", "Caches") if sys.platform == "darwin" else (".cache",)
        home = os.environ.get("HOME", "")
        places = [os.environ.get("XDG_CACHE_HOME", ""), os.path.join(home, *within) if home else ""]
    return next((os.path.join(place, "piecewright") for place in places if os.path.isabs(place)), None)


class Kept:
    """The entries of one folder."""

    def __init__(self, folder: str) -> None:
        self.folder = folder

    def find(self, key: str) -> bytes | None:
        """The bytes kept under a key; None where there are none, or where they are damaged."""
        path = self._path(key)
        try:
            data = plain_bytes(path, LARGEST, owned=True)
            os.utime(path)  # used again: not among the oldest
        except OSError:
            return None
        head, _, rest = data.partition(b"\n")
        return rest if head == _head(key, rest) else None

    def keep(self, key: str, data: bytes) -> None:
        """Keeps the bytes, where folder and disk let us, and drops the oldest where there are too many."""
        from pathlib import Path

        from .writing import write_whole

        if len(data) >= LARGEST - 1000:  # the head's bytes, with room to spare
            return
        try:
            os.makedirs(self.folder, mode=0o700, exist_ok=True)
            write_whole(Path(self._path(key)), _head(key, data) + b"\n" + data)
            self._drop_oldest()
        except OSError:
            return

    def _path(self, key: str) -> str:
        return os.path.join(self.folder, key + ENDING)

    def _drop_oldest(self) -> None:
        with os.scandir(self.folder) as listing:
            ours = [entry for entry in listing if ENDING in entry.name]  # entries, and parts left of them
        found = [(entry.stat(follow_symlinks=False), entry.path) for entry in ours]
        total = sum(facts.st_size for facts, _ in found)
        if total <= MOST_BYTES:
            return
        for facts, path in sorted(found, key=lambda each: each[0].st_mtime_ns):
            if total <= LEFT_BYTES:
                return
            total -= facts.st_size
            try:
                os.unlink(path)
            except FileNotFoundError:
                continue  # another build dropped it


def _head(key: str, data: bytes) -> bytes:
    """What stands before an entry's bytes."""
    return MARK + digest_of(key.encode() + data).encode()


def open_kept() -> Kept | None:
    """The user's entries, where there is a place for them."""
    folder = kept_folder()
    return Kept(folder) if folder else None
