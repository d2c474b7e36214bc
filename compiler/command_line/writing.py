"""Files written whole or not at all.

Bytes go to a file without a name (Linux) or with a hidden one, in the folder where they will stay, and take
their name in one step when all is there. So an older good file stays until the new one is complete, whatever
stops the program; a hidden file that a killed run left behind ends in `.part` and is never taken for output.
"""

from __future__ import annotations

import errno
import os
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Final

PART: Final = ".part"
NAME_KEPT: Final = 80  # bytes of the name repeated in the hidden one: a whole name may have 255
MODE: Final = 0o666  # what the user's mask then narrows, as for any new file
OPEN_AT_ONCE: Final = 100  # files without a name held open: systems allow 256 and more
ATTEMPTS: Final = 1000  # hidden names tried, where killed runs left some behind

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
        name = "." + self.path.name.encode("ascii", "ignore")[:NAME_KEPT].decode("ascii")
        for attempt in range(ATTEMPTS):
            self._hidden = self.path.with_name(f"{name}.{os.getpid()}-{attempt}{PART}")
            try:
                if make(self._hidden):
                    return True
            except FileExistsError:
                self._hidden = None  # left behind by a killed run: not ours to remove
                continue
            self._hidden = None
            return False
        raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(self.path))


def write_whole(path: Path, data: bytes) -> None:
    """The file with these bytes, or, on any exception, what was there before."""
    write_all([(path, data)])


def write_all(files: Iterable[tuple[Path, bytes]]) -> None:
    """All the files, or, on any exception while bytes are being made or written, none of them.

    `files` may be made as it goes: each file's bytes are let go when they are on the disk.
    """
    staged: list[Staged] = []
    try:
        for path, data in files:
            _refuse_folder(path)
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
