"""Files written whole or not at all.

Bytes go to a file without a name (Linux) or with a hidden one, in the folder where they will stay, and take
their name in one step when all is there. So an older good file stays until the new one is complete, whatever
stops the program; a hidden file that a killed run left behind ends in `.part` and is never taken for output.
"""

from __future__ import annotations

import errno
import os
from collections.abc import Iterable
from pathlib import Path
from typing import Final

PART: Final = ".part"
NAME_KEPT: Final = 80  # bytes of the name repeated in the hidden one: a whole name may have 255
MODE: Final = 0o666  # what the user's mask then narrows, as for any new file

NO_NAMELESS: Final = (errno.EOPNOTSUPP, errno.EISDIR, errno.ENOENT, errno.EINVAL, errno.ENOSYS)
"""What a file system answers that knows no files without names (open(2), O_TMPFILE)."""


class Staged:
    """A file's bytes, safe on the disk under a hidden name, waiting for the name they are to have."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.hidden: Path | None = None

    def fill(self, data: bytes) -> None:
        """Writes the bytes. The hidden name is known before it is used, so `discard` can always follow."""
        name = "." + self.path.name.encode("ascii", "ignore")[:NAME_KEPT].decode("ascii")
        for attempt in range(1000):
            self.hidden = self.path.with_name(f"{name}.{os.getpid()}-{attempt}{PART}")
            try:
                if not _write_nameless(self.hidden, data):
                    _write_new(self.hidden, data)
                return
            except FileExistsError:
                self.hidden = None  # left behind by a killed run: not ours to remove
        raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(self.path))

    def name(self) -> None:
        """Gives the bytes their name, in place of any older file."""
        assert self.hidden is not None, f"{self.path} was named already"
        os.replace(self.hidden, self.path)
        self.hidden = None

    def discard(self) -> None:
        """Takes the hidden file away, where there is one."""
        if self.hidden is not None:
            self.hidden.unlink(missing_ok=True)
            self.hidden = None


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
            staged[-1].fill(data)
        for each in staged:
            each.name()
    finally:
        for each in staged:
            each.discard()


def _refuse_folder(path: Path) -> None:
    """A folder in the place of the file is found before anything is named, not half-way through."""
    if path.is_dir():
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR), str(path))


def _write_nameless(hidden: Path, data: bytes) -> bool:
    """Writes to a file without a name and then gives it the hidden one; False where the system cannot.

    A process killed while it writes leaves nothing at all behind.
    """
    flag = getattr(os, "O_TMPFILE", None)
    if flag is None:
        return False
    try:
        handle = os.open(hidden.parent, flag | os.O_WRONLY, MODE)
    except OSError as problem:
        if problem.errno in NO_NAMELESS and hidden.parent.is_dir():
            return False
        raise
    try:
        _write_bytes(handle, data)
        return _link(handle, hidden)
    finally:
        os.close(handle)


def _link(handle: int, hidden: Path) -> bool:
    """Names an open file; False where /proc is not there to name it by."""
    folder = os.open(hidden.parent, os.O_RDONLY)
    try:
        # With a folder's handle given, Python calls linkat(2), which alone follows the link in /proc.
        os.link(f"/proc/self/fd/{handle}", hidden, src_dir_fd=folder, follow_symlinks=True)
    except FileExistsError:
        raise
    except OSError:
        return False
    finally:
        os.close(folder)
    return True


def _write_new(hidden: Path, data: bytes) -> None:
    """Writes to a new file of that name."""
    handle = os.open(hidden, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), MODE)
    try:
        _write_bytes(handle, data)
    finally:
        os.close(handle)


def _write_bytes(handle: int, data: bytes) -> None:
    """Every byte: a write may take fewer than it was given, and say that a disk is full when asked again."""
    rest = memoryview(data)
    while rest:
        rest = rest[os.write(handle, rest) :]
