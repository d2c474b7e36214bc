"""Files written whole or not at all.

Bytes go to a hidden folder of this run's, within the one where they will stay, and are moved to their place
in one step when all are there. So an older good file stays until the new one is complete, whatever stops the
program. The hidden folder goes at the end; one that a killed run left goes with the next run.
"""

from __future__ import annotations

import errno
import os
import shutil
from collections.abc import Iterable, Iterator
from contextlib import ExitStack, contextmanager, suppress
from io import FileIO
from pathlib import Path
from tempfile import TemporaryDirectory
from time import time
from typing import Final

from .stopping import held

try:
    from fcntl import LOCK_EX, LOCK_NB, flock
except ImportError:  # Windows: nobody can tell a killed run's folder from one at work, so it stays
    flock = None  # type: ignore[assignment]

MARK: Final = ".piecewright-"  # begins the names of hidden folders
JUST_BEGUN: Final = 60.0  # seconds: an empty folder so young may be of a run that has not locked it yet


def write_whole(path: Path, data: bytes) -> None:
    """The file with these bytes, or, on any exception, what was there before."""
    write_all([(path, data)])


def write_all(files: Iterable[tuple[Path, bytes]]) -> None:
    """All the files, or, on any exception while bytes are being made or written, none of them.

    `files` may be made as it goes: each file's bytes are let go when they are on the disk.
    """
    with ExitStack() as opened:
        rooms: dict[Path, Path] = {}
        staged: dict[Path, Path] = {}
        for path, data in files:
            _refuse_folder(path)
            if path.parent not in rooms:
                rooms[path.parent] = opened.enter_context(_room(path.parent))
            staged[path] = rooms[path.parent] / path.name
            _write_new(staged[path], data)
        for path, part in staged.items():
            os.replace(part, path)


def write_like(path: Path, data: bytes) -> None:
    """The file with these bytes, its owner, mode and further marks as they were. PermissionError where we may
    not."""
    with _room(path.parent) as room:
        part = room / path.name
        _write_new(part, data)
        _take_after(part, path)
        os.replace(part, path)


def write_over(path: Path, text: bytes) -> None:
    """A file of lines written where it stands, for whoever else holds it: it may have several names.

    It cannot take its bytes in one step. But it first grows by blank lines, which alone can fail for want of
    room; then all that it says is written at once; then blank lines left over go. Whatever stops the program
    between two of these, the file says what it said before, or what it was to say.
    """
    with path.open("r+b", buffering=0) as stream, held():
        old = stream.read()
        grown = max(len(old), len(text))
        try:
            _write_at(stream, len(old), b"\n" * (grown - len(old)))
            _write_at(stream, 0, text.ljust(grown, b"\n"))
        except OSError:
            _write_at(stream, 0, old)
            stream.truncate(len(old))
            raise
        stream.truncate(len(text))


def _write_at(stream: FileIO, start: int, data: bytes) -> None:
    stream.seek(start)
    _write_bytes(stream.fileno(), data)


def _refuse_folder(path: Path) -> None:
    """A folder in the place of the file is found before anything is named, not half-way through."""
    if path.is_dir():
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR), str(path))


@contextmanager
def _room(folder: Path) -> Iterator[Path]:
    """A hidden folder within that one, locked while this run is at work in it, and gone at the end."""
    _sweep(folder)
    room: TemporaryDirectory[str] | None = None
    try:
        with held():  # a signal while it comes or goes would leave it
            room = TemporaryDirectory(prefix=MARK, dir=folder)
        with _locked(room.name, wait=True):
            yield Path(room.name)
    finally:
        with held():
            if room is not None:
                room.cleanup()


def _sweep(folder: Path) -> None:
    """Takes away the hidden folders that killed runs of this user's left: nobody locks them."""
    if flock is None:
        return
    with suppress(OSError), os.scandir(folder) as listing:  # whoever writes there finds out, and says so
        for each in [entry for entry in listing if entry.name.startswith(MARK)]:
            with suppress(OSError):
                facts = each.stat(follow_symlinks=False)
                if not each.is_dir(follow_symlinks=False) or facts.st_uid != os.geteuid():
                    continue
                with _locked(each.path, wait=False) as locked:
                    if locked and (os.listdir(each.path) or time() - facts.st_mtime > JUST_BEGUN):
                        shutil.rmtree(each.path, ignore_errors=True)


@contextmanager
def _locked(folder: str, *, wait: bool) -> Iterator[bool]:
    """Whether the folder is locked, as a killed process's is no more. False where the system cannot."""
    if flock is None:
        yield False
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        try:
            flock(handle, LOCK_EX if wait else LOCK_EX | LOCK_NB)
            locked = True
        except OSError:
            locked = False
        yield locked
    finally:
        os.close(handle)


def _take_after(part: Path, older: Path) -> None:
    """The owner, mode and further marks of an older file. PermissionError where we may not."""
    facts, own = older.stat(), part.stat()
    if (facts.st_uid, facts.st_gid) != (own.st_uid, own.st_gid):
        os.chown(part, facts.st_uid, facts.st_gid)
    shutil.copystat(older, part)
    os.utime(part)  # written now


def _write_new(part: Path, data: bytes) -> None:
    with part.open("wb", buffering=0) as stream:
        _write_bytes(stream.fileno(), data)


def _write_bytes(handle: int, data: bytes) -> None:
    """Every byte: a write may take fewer than it was given, and say that a disk is full when asked again."""
    rest = memoryview(data)
    while rest:
        rest = rest[os.write(handle, rest) :]
