"""What was found out of files on shelves, kept in a folder of the user's from one search to the next.

One entry a file, JSON, under the digest of all that it follows from. Safe to delete at any time. An entry is
whole or counts as not there: it begins with a digest of its name and its words. So does one that another user
wrote, and a link or a pipe. A folder that cannot be read or written keeps nothing, and nobody is told.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from contextlib import suppress
from hashlib import blake2b
from json import dumps, loads
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import Any, Final

from ... import __version__
from ..reading import plain_bytes

SETTING: Final = "PIECEWRIGHT_CACHE"  # another folder, or OFF
OFF: Final = "off"
ENDING: Final = ".kept"
PART: Final = ".kept.part"  # of an entry not yet whole
LARGEST: Final = 4_000_000  # bytes of an entry: what is larger is found out each time
MOST_BYTES: Final = 128_000_000  # of all entries together; those of 20,000 files take some 30 million
LEFT_BYTES: Final = 96_000_000  # after the oldest have been dropped


def digest_of(*told: str | bytes) -> str:
    """Forty digits that follow from these texts and bytes, in their order."""
    made = blake2b(digest_size=20)
    for each in told:
        data = each if isinstance(each, bytes) else each.encode("utf-8", "surrogatepass")
        made.update(b"%d " % len(data) + data)
    return made.hexdigest()


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
    """The entries of one folder; with None, none."""

    def __init__(self, folder: str | None) -> None:
        self._folder = folder
        self._program = _program() if folder else ""

    def find(self, told: Sequence[str]) -> Any:
        """What is kept of that which follows from all these; None where nothing is."""
        if self._folder is None:
            return None
        name = digest_of(self._program, *told)
        try:
            head, _, words = plain_bytes(self._path(name), LARGEST, owned=True).partition(b"\n")
            return loads(words) if head == digest_of(name, words).encode() else None
        except (OSError, ValueError):
            return None

    def keep(self, told: Sequence[str], found: Any) -> None:
        """Keeps it, where folder and disk let us."""
        name, words = digest_of(self._program, *told), dumps(found).encode()
        if self._folder is None or len(words) >= LARGEST - 1000:  # the digest, with room to spare
            return
        with suppress(OSError):
            os.makedirs(self._folder, mode=0o700, exist_ok=True)
            with NamedTemporaryFile(dir=self._folder, suffix=PART, delete=False) as part:
                try:
                    part.write(digest_of(name, words).encode() + b"\n" + words)
                    part.close()
                    os.replace(part.name, self._path(name))
                except BaseException:
                    os.unlink(part.name)
                    raise

    def drop_oldest(self) -> None:
        """Lets entries go, the oldest first, where there are too many; and parts that a killed run left."""
        if self._folder is None:
            return
        with suppress(OSError):
            with os.scandir(self._folder) as listing:
                named = [entry for entry in listing if entry.name.endswith((ENDING, PART))]
            ours = [(entry.stat(follow_symlinks=False), entry.path) for entry in named]
            total = sum(facts.st_size for facts, _ in ours)
            if total <= MOST_BYTES:
                return
            for facts, path in sorted(ours, key=lambda each: each[0].st_mtime_ns):
                if total > LEFT_BYTES:
                    total -= facts.st_size
                    os.unlink(path)

    def _path(self, name: str) -> str:
        return os.path.join(self._folder or "", name + ENDING)


def open_kept() -> Kept:
    """The user's entries."""
    return Kept(kept_folder())


def _program() -> str:
    """What follows from the program: its version, and its files by size and time, as Python itself tells
    whether its compiled ones still hold."""
    facts = [__version__, sys.version]
    for path in sorted(Path(__file__).parents[2].rglob("*.py")):
        found = path.stat()
        facts.append(f"{path} {found.st_size} {found.st_mtime_ns}")
    return digest_of(*facts)
