"""Files written whole or not at all.

Bytes go to a file without a name (Linux) or with a hidden one, in the folder where they will stay, and take
their name in one step when all is there. So an older good file stays until the new one is complete, whatever
stops the program; a hidden file that a killed run left behind is never taken for output, and goes with the
next run (see `leftovers`).
"""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Callable, Iterable
from io import FileIO
from pathlib import Path
from typing import Final

from .leftovers import hidden_name, sweep
from .stopping import held

NAME_KEPT: Final = 80  # bytes of the name repeated in the hidden one: a whole name may have 255
MODE: Final = 0o666  # what the user's mask then narrows, as for any new file
OPEN_AT_ONCE: Final = 100  # files without a name held open: systems allow 256 and more
ATTEMPTS: Final = 1000  # hidden names tried, where files with names that begin alike take some

NO_NAMELESS: Final = (errno.EOPNOTSUPP, errno.EISDIR, errno.ENOENT, errno.EINVAL, errno.ENOSYS)
"""What a file system answers that knows no files without names (open(2), O_TMPFILE)."""


class Staged:
    """A file's bytes, safe on the disk without a name or under a hidden one, waiting for the name to be."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self._handle: int | None = None  # of the file without a name
        self._hidden: Path | None = None

    def fill(self, data: bytes, *, stay_open: bool) -> None:
        """Writes the bytes. A process killed meanwhile leaves nothing behind, where files need no name.

        `stay_open` keeps that so until the file is named, at the cost of an open file.
        """
        self._handle = _open_nameless(self.path.parent)
        if self._handle is None:
            self._hide(data)
            return
        _write_bytes(self._handle, data)
        if not stay_open:
            self._give_hidden_name()

    def take_after(self, older: Path) -> None:
        """The owner, mode and further marks of an older file. PermissionError where we may not."""
        target = self._hidden
        assert target is not None, f"{self.path} has no hidden name"
        facts, own = older.stat(), os.stat(target)
        if (facts.st_uid, facts.st_gid) != (own.st_uid, own.st_gid):
            os.chown(target, facts.st_uid, facts.st_gid)
        os.chmod(target, stat.S_IMODE(facts.st_mode))
        if hasattr(os, "listxattr"):  # what else the system lets files be marked with, lists of access too
            try:
                for name in os.listxattr(older):
                    os.setxattr(target, name, os.getxattr(older, name))
            except OSError:
                return  # this file system has no such marks, or they are not ours to give

    def name(self) -> None:
        """Gives the bytes their name, in place of any older file."""
        if self._handle is not None:
            try:
                if _link(self._handle, self.path):
                    self.discard()
                    return
            except FileExistsError:
                pass  # the older file has to be replaced, which takes a name to replace it by
            self._give_hidden_name()
        assert self._hidden is not None, f"{self.path} has no bytes"
        os.replace(self._hidden, self.path)
        self._hidden = None

    def discard(self) -> None:
        """Lets go of whatever has not got its name."""
        if self._handle is not None:
            os.close(self._handle)
            self._handle = None
        if self._hidden is not None:
            self._hidden.unlink(missing_ok=True)
            self._hidden = None

    def _give_hidden_name(self) -> None:
        """Names the nameless file, or writes its bytes again where the system cannot."""
        assert self._handle is not None
        handle = self._handle
        if not self._under_hidden_name(lambda hidden: _link(handle, hidden)):
            self._hide(os.pread(handle, os.fstat(handle).st_size, 0))
        os.close(handle)
        self._handle = None

    def _hide(self, data: bytes) -> None:
        """Writes the bytes under a hidden name."""
        self._under_hidden_name(lambda hidden: _write_new(hidden, data))

    def _under_hidden_name(self, make: Callable[[Path], bool]) -> bool:
        """Makes the hidden file. Its name is known before it is there, so `discard` can always follow."""
        name = self.path.name.encode("ascii", "ignore")[:NAME_KEPT].decode("ascii")
        for attempt in range(ATTEMPTS):
            self._hidden = self.path.with_name(hidden_name(name, attempt))
            try:
                if make(self._hidden):
                    return True
            except FileExistsError:
                self._hidden = None  # of another file of ours
                continue
            self._hidden = None
            return False
        raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(self.path))


def write_whole(path: Path, data: bytes) -> None:
    """The file with these bytes, or, on any exception, what was there before."""
    write_all([(path, data)])


def write_like(path: Path, data: bytes) -> None:
    """The file with these bytes, its owner and mode as they were. PermissionError where we may not."""
    sweep(path.parent)
    staged = Staged(path)
    try:
        staged.fill(data, stay_open=False)
        staged.take_after(path)
        staged.name()
    finally:
        staged.discard()


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


def write_all(files: Iterable[tuple[Path, bytes]]) -> None:
    """All the files, or, on any exception while bytes are being made or written, none of them.

    `files` may be made as it goes: each file's bytes are let go when they are on the disk.
    """
    staged: list[Staged] = []
    swept: set[Path] = set()
    try:
        for path, data in files:
            _refuse_folder(path)
            if path.parent not in swept:
                swept.add(path.parent)
                sweep(path.parent)
            staged.append(Staged(path))
            staged[-1].fill(data, stay_open=len(staged) <= OPEN_AT_ONCE)
        for each in staged:
            each.name()
    finally:
        for each in staged:
            each.discard()


def _refuse_folder(path: Path) -> None:
    """A folder in the place of the file is found before anything is named, not half-way through."""
    if path.is_dir():
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR), str(path))


def _open_nameless(folder: Path) -> int | None:
    """A new file without a name in that folder; None where the system knows no such thing."""
    flag = getattr(os, "O_TMPFILE", None)
    if flag is None:
        return None
    try:
        return os.open(folder, flag | os.O_RDWR, MODE)
    except OSError as problem:
        if problem.errno in NO_NAMELESS and folder.is_dir():
            return None
        raise


def _link(handle: int, name: Path) -> bool:
    """Names an open file; False where the system cannot. FileExistsError where the name is taken."""
    folder = os.open(name.parent, os.O_RDONLY)
    try:
        # With a folder's handle given, Python calls linkat(2), which alone follows the link in /proc.
        os.link(f"/proc/self/fd/{handle}", name, src_dir_fd=folder, follow_symlinks=True)
    except FileExistsError:
        raise
    except OSError:
        return False
    finally:
        os.close(folder)
    return True


def _write_new(hidden: Path, data: bytes) -> bool:
    """Writes to a new file of that name. FileExistsError where it is taken."""
    handle = os.open(hidden, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), MODE)
    try:
        _write_bytes(handle, data)
    finally:
        os.close(handle)
    return True


def _write_bytes(handle: int, data: bytes) -> None:
    """Every byte: a write may take fewer than it was given, and say that a disk is full when asked again."""
    rest = memoryview(data)
    while rest:
        rest = rest[os.write(handle, rest) :]
