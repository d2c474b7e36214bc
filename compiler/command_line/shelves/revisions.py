"""Files as they were: an earlier revision of a file and of those beside it, asked of git.

git runs with the file's folder and nothing else; no setting of the project's is read or needed.
"""

from __future__ import annotations

import re
import subprocess
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from ...diagnostics.source import Source
from ...diagnostics.visible import visible
from ..failures import MachineFailed
from .folders import TITLE, unescaped
from .listing import EXTENSIONS

if TYPE_CHECKING:
    from ...language.shelf import Shelf, ShelfBlock

GIT: Final = "git"
UNBORN: Final = "HEAD"  # git does not know it, though it is spelt right, before the first commit
MOST_SAID: Final = 200  # characters of git's own words in a message


class FileIsNew(click.UsageError):
    """The revision has no such file."""


def file_at(revision: str, path: Path) -> tuple[bytes, dict[str, bytes]]:
    """The file's bytes at a revision, and those of the block files beside it, by name.

    MachineFailed where there is no git or no repository; a use error where git knows no such revision;
    FileIsNew where the revision has no such file, or nothing was ever recorded.
    """
    if revision.startswith("-") or not revision.strip():
        raise click.UsageError(f"'{visible(revision)}' is no revision.")
    folder = path.parent
    listed = _git(folder, "ls-tree", "-z", "--name-only", revision, "./")
    if listed is None and revision == UNBORN:
        raise FileIsNew("git has recorded nothing here yet.")
    if listed is None:
        raise click.UsageError(f"git knows no revision '{visible(revision)}' here.")
    names = [name for name in listed.decode("utf-8", "replace").split("\0") if name.endswith(EXTENSIONS)]
    if path.name not in names:
        raise FileIsNew(f"'{visible(str(path))}' is not in revision '{visible(revision)}'.")
    texts = _contents(folder, revision, names)
    return texts.pop(path.name), texts


def _contents(folder: Path, revision: str, names: Iterable[str]) -> dict[str, bytes]:
    """The bytes of files of one folder at a revision, by one run of git."""
    wanted = [name for name in names if "\n" not in name]
    asked = "".join(f"{revision}:./{name}\n" for name in wanted).encode("utf-8", "surrogateescape")
    told = _git(folder, "cat-file", "--batch", given=asked) or b""
    texts: dict[str, bytes] = {}
    at = 0
    for name in wanted:
        head, _, _ = told[at:].partition(b"\n")
        at += len(head) + 1
        kind, _, size = head.rpartition(b" ")
        if not kind.endswith(b" blob"):
            continue
        texts[name] = told[at:at + int(size)]
        at += int(size) + 1
    return texts


def _git(folder: Path, *words: str, given: bytes = b"") -> bytes | None:
    """What git says; None where it does not know what is asked. MachineFailed where it cannot be asked."""
    try:
        done = subprocess.run([GIT, "-C", str(folder), *words], input=given, capture_output=True, check=False)
    except OSError as problem:
        raise MachineFailed("git: It is not installed, and it alone knows earlier revisions.") from problem
    if done.returncode == 0:
        return done.stdout
    said = done.stderr.decode("utf-8", "replace").strip().splitlines()
    if said and "not a git repository" in said[0]:
        raise MachineFailed(f"{visible(str(folder))}: git keeps no revisions of this folder.")
    if said and "dubious ownership" in said[0]:
        raise MachineFailed(f"git: {visible(said[0][:MOST_SAID])}")
    return None


class RevisionShelf:
    """The files beside a file at a revision, before the shelves of today."""

    def __init__(self, texts: Mapping[str, bytes], shown: str, beyond: Shelf) -> None:
        self._texts, self._shown, self._beyond = texts, shown, beyond
        self._sources: dict[str, Source] = {}

    @property
    def sources(self) -> Mapping[str, Source]:
        """The sources read, by the names that places in them are written with."""
        return self._sources

    def find(self, title: str, near: str) -> tuple[ShelfBlock, ...]:
        """Every block of that title beside the file as it was, then what the shelves of today have."""
        beside = [block for name in self._names(title) for block in self._blocks(name)
                  if block.block.title.text == title]
        return (*beside, *self._beyond.find(title, near))

    def titles(self, near: str) -> Iterable[str]:
        """Every title beside the file as it was, and of the shelves."""
        found = (unescaped(each) for data in self._texts.values()
                 for each in re.findall(TITLE, data.decode("utf-8", "replace")))
        return tuple(dict.fromkeys((*found, *self._beyond.titles(near))))

    def _names(self, title: str) -> list[str]:
        return [name for name, data in sorted(self._texts.items())
                if title in map(unescaped, re.findall(TITLE, data.decode("utf-8", "replace")))]

    def _blocks(self, name: str) -> list[ShelfBlock]:
        from ...language.decode import read_source
        from ...language.parser import parse
        from ...language.shelf import ShelfBlock

        read = read_source(f"{self._shown}:{name}", self._texts[name])
        parsed = read.then(parse)
        if read.value is None or parsed.value is None or parsed.failed:
            return []
        self._sources[read.value.name] = read.value
        return [ShelfBlock(block, read.value, "beside") for block in parsed.value.blocks]
