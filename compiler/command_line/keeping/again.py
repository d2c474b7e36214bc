"""A build run again: where nothing it depends on has changed, what it wrote is written, and nothing compiled.

A `Record` gathers, while a build runs, every file and folder it reads and all it says and writes. `replay`
looks for a record of the same command and compares, by content, everything that was read then with what is
there now.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Sequence
from typing import Any, Final

from ..owners import ENDINGS, owner_in
from ..reading import NotPlain, plain_bytes
from ..shelves.listing import ShelfDamaged, names_in
from .digests import digest_of, machine_files, program_digest
from .kept import LARGEST, Kept, open_kept

BUILD: Final = "build"
NOT_AGAIN: Final = ("-", "-h", "--help", "--no-cache")  # with these, the command is not looked up
ENVIRONMENT: Final = ("PIECEWRIGHT_SHELVES", "NO_COLOR", "TERM", "COLUMNS")
SAME: Final = "Nothing has changed: this is what was made before."
HEAD: Final = 10  # digits that say how many bytes of an entry are its JSON

MOST_READ: Final = 16_000_000  # bytes of a file read: no input that was built from has more

Step = list[Any]  # what JSON gives back for one thing read: its kind, its name, and what it was


class Record:
    """What one build read, said and wrote. Not `whole` once something happened that cannot be repeated."""

    def __init__(self) -> None:
        self.whole = True
        self._read: dict[tuple[str, str], str | int] = {}
        self._said: list[tuple[bool, str]] = []
        self._files: list[tuple[str, bytes]] = []
        self._size = 0

    def read(self, path: str, data: bytes | None) -> None:
        """A file's bytes, or None: it could not be read."""
        if not os.path.isfile(path):
            self.stop()  # a pipe: it gives its bytes once
        self._depend("file", path, "" if data is None else digest_of(data))

    def missed(self, path: str) -> None:
        """A file that was looked for and is not there."""
        self._depend("none", path, "")

    def looked(self, folder: str, depth: int, names: Sequence[str]) -> None:
        """The files that a folder has, looked through to that depth."""
        self._depend(f"folder {depth}", folder, _listing(names))

    def said(self, text: str, *, err: bool) -> None:
        """Words on standard output or standard error, without the end of the line."""
        self._said.append((err, text))

    def wrote(self, path: str, data: bytes) -> None:
        """A file."""
        self._size += len(data)
        if self._size > LARGEST // 2:
            self.stop()
        if self.whole:
            self._files.append((path, data))

    def stop(self) -> None:
        """This build will not be repeated from memory."""
        self.whole = False
        self._files.clear()

    def keep(self, kept: Kept, arguments: Sequence[str]) -> None:
        """Keeps it for the next time."""
        from json import dumps

        if not self.whole or not _is_repeatable(arguments):
            return
        try:
            key = _key_of(arguments)
            machine = [["machine", path, _facts(path)] for path in machine_files()]
        except OSError:
            return
        told = {
            "read": machine + [[kind, name, what] for (kind, name), what in self._read.items()],
            "said": self._said,
            "files": [[path, len(data)] for path, data in self._files],
        }
        text = dumps(told).encode()
        kept.keep(key, b"".join([b"%0*d" % (HEAD, len(text)), text, *(data for _, data in self._files)]))

    def _depend(self, kind: str, name: str, what: str) -> None:
        if self._read.setdefault((kind, name), what) != what:
            self.stop()  # it changed while we were at work


def replay(arguments: Sequence[str]) -> int | None:
    """Writes and says what the same command did before: its exit status. None: it has to be run."""
    if not _is_repeatable(arguments):
        return None
    kept = open_kept()
    if kept is None or not os.path.isdir(kept.folder):
        return None
    try:
        data = kept.find(_key_of(arguments))
        if data is None:
            return None
        from json import loads

        size = int(data[:HEAD])
        told = loads(data[HEAD : HEAD + size])
        if not all(_is_still(*each) for each in told["read"]) or _stands_left(told["files"]):
            return None
        files = list(_placed(told["files"], data[HEAD + size :]))
        if any(_is_others(path, made) for path, made in files):
            return None  # the build finds other names
        _write(files)
    except OSError:
        return None  # the build itself finds out, and says so
    for err, text in told["said"]:
        print(text, file=sys.stderr if err else sys.stdout)
    print(SAME)
    return 0


def page_after(path: str) -> str | None:
    """The name of the page that would follow, for a file that is one page of several."""
    stem, found, ending = path.rpartition("-page-")
    number, _, kind = ending.partition(".")
    return f"{stem}-page-{int(number) + 1}.{kind}" if found and number.isdecimal() else None


def _is_repeatable(arguments: Sequence[str]) -> bool:
    return bool(arguments) and arguments[0] == BUILD and not any(each in NOT_AGAIN for each in arguments)


def _key_of(arguments: Sequence[str]) -> str:
    """The digest of the command, where it is given, and the program. OSError where that cannot be told."""
    streams = [str(bool(stream and stream.isatty())) for stream in (sys.stdout, sys.stderr)]
    around = [f"{name}={os.environ.get(name, '')}" for name in ENVIRONMENT]
    parts = [program_digest(), os.getcwd(), *around, *streams, *arguments]
    return digest_of("\0".join(parts).encode("utf-8", "surrogateescape"))


def _is_still(kind: str, name: str, what: str) -> bool:
    """Whether something read is as it was."""
    if kind == "machine":
        return _facts(name) == what
    if kind == "file":
        return _file_is_still(name, what)
    if kind == "none":
        return not os.path.lexists(name)
    depth = int(kind.partition(" ")[2])
    try:
        return _listing(names_in(name, depth)) == what
    except ShelfDamaged:
        return False  # the build itself tells of it


def _listing(names: Sequence[str]) -> str:
    return digest_of("\0".join(os.path.normpath(name) for name in names).encode("utf-8", "surrogateescape"))


def _file_is_still(name: str, what: str) -> bool:
    try:
        return digest_of(plain_bytes(name, MOST_READ, links=True)) == what
    except NotPlain:
        return False  # a pipe: it would be empty for the build that has to be run after all
    except OSError:
        return what == "" and os.path.isfile(name)


def _facts(path: str) -> str:
    facts = os.stat(path)
    return f"{facts.st_size} {facts.st_mtime_ns}"


def _stands_left(files: Sequence[Step]) -> bool:
    """Whether pages of an older build would stand beyond the last page: the build itself tells of them."""
    written = {path for path, _ in files}
    following = (page_after(path) for path in written)
    return any(path and path not in written and os.path.exists(path) for path in following)


def _placed(files: Sequence[Step], data: bytes) -> Iterator[tuple[str, bytes]]:
    """The files, from the bytes that stand one after the other."""
    start = 0
    for path, size in files:
        yield path, data[start : start + size]
        start += size


def _is_others(path: str, made: bytes) -> bool:
    """Whether a file of something else stands there by now."""
    if not path.endswith(ENDINGS):
        return False
    try:
        return owner_in(path, plain_bytes(path, LARGEST)) not in (None, owner_in(path, made))
    except OSError:
        return False


def _write(files: Sequence[tuple[str, bytes]]) -> None:
    from pathlib import Path

    from ..writing import write_all

    for folder in dict.fromkeys(os.path.dirname(path) for path, _ in files):
        os.makedirs(folder or ".", exist_ok=True)
    write_all((Path(path), data) for path, data in files)
