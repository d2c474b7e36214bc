"""Writers' own files, read to be written again where they really stand; and new ones beside them."""

from __future__ import annotations

import errno
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from ..diagnostics.diagnostic import Outcome
from ..diagnostics.source import Source
from ..language.decode import read_source
from ..words.messages.files import file_unreadable
from .failures import MachineFailed, machine_text
from .inputs import Input
from .writing import write_like, write_over, write_whole


def read_text(given: Input) -> tuple[bytes, Outcome[Source]]:
    """The bytes and the text of an input; no text, with what is wrong, where it is not one."""
    try:
        data = given.read()
    except OSError as problem:
        said = file_unreadable(given.name, problem.strerror or "")
        return b"", Outcome(None, (said,))
    return data, read_source(given.name, data)


def bytes_like(text: str, old: bytes) -> bytes:
    """The text's bytes, its lines ended as the old bytes' first line was."""
    first, ended, _ = old.partition(b"\n")
    return text.encode().replace(b"\n", b"\r\n") if ended and first.endswith(b"\r") else text.encode()


def rewrite(path: Path, data: bytes) -> None:
    """The file with new text, its owner, mode and names as they were; of a link, what it leads to."""
    real = Path(os.path.realpath(path))
    with machine_failing(path):
        if not os.access(real, os.W_OK):
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(path))
        if real.stat().st_nlink > 1:
            write_over(real, data)
            return
        try:
            write_like(real, data)
        except PermissionError:  # another's file, or another's folder
            write_over(real, data)


def write_new(path: Path, data: bytes) -> None:
    """A file with these bytes, in place of any older one."""
    with machine_failing(path):
        write_whole(path, data)


@contextmanager
def machine_failing(path: Path) -> Iterator[None]:
    """Tells in one line what the machine cannot do with a file."""
    try:
        yield
    except OSError as problem:
        raise MachineFailed(machine_text(problem, str(path))) from problem
