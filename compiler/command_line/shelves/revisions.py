"""Files as they were: an earlier revision of a file and of those beside it (see `repository`)."""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from ...diagnostics.source import Source
from ...words.messages import revisions as told_of
from ..failures import MachineFailed
from .folders import LARGEST, TITLE, unescaped
from .listing import EXTENSIONS
from .repository import MOST_SAID, Reader, reader_of, repository_of

if TYPE_CHECKING:
    from ...language.shelf import Shelf, ShelfBlock

UNBORN: Final = "HEAD"  # git does not know it, though it is spelt right, before the first commit
LONGEST: Final = 1000  # letters of a revision: one with words to search for has a hundred
OBJECT: Final = re.compile(rb"[0-9a-f]{40,64}")
PLAIN_FILES: Final = (b"100644", b"100755", b"100664")  # git's kinds of a plain file


class FileIsNew(click.UsageError):
    """The revision has no such file."""


def file_at(revision: str, path: Path) -> tuple[bytes, dict[str, bytes]]:
    """The file's bytes at a revision, and those of the block files beside it, by name.

    MachineFailed where there is no git or no repository, or one that is not whole; a use error where git
    knows no such revision; FileIsNew where the revision has no such file, or nothing was ever recorded.
    """
    if revision.startswith("-") or not revision.strip() or "\0" in revision or len(revision) > LONGEST:
        raise click.UsageError(told_of.revision_odd(revision))
    folder = Path(os.path.realpath(path.parent))
    repository = repository_of(folder)
    with reader_of(repository, revision) as git:
        known = (git.ask("rev-parse", "--verify", "--quiet", revision) or b"").strip()
        if not OBJECT.fullmatch(known):
            if revision == UNBORN:
                raise FileIsNew(told_of.nothing_recorded())
            raise click.UsageError(told_of.revision_unknown(revision))
        objects = _listed(git, known, folder.relative_to(repository.root), revision)
        if path.name not in objects:
            raise FileIsNew(told_of.file_is_new(str(path), revision))
        texts = _contents(git, objects, path.name)
    if path.name not in texts:
        raise MachineFailed(told_of.no_copy(str(path), revision))
    return texts.pop(path.name), texts


def _listed(git: Reader, known: bytes, within: Path, revision: str) -> dict[str, bytes]:
    """The objects of a folder's block files at a revision, by name."""
    place = os.fsencode(within.as_posix())
    below = [] if place == b"." else [b"--", place + b"/"]
    listed = git.ask("ls-tree", "-z", "--full-tree", known, *below)
    if listed is None:
        raise click.UsageError(told_of.no_files(revision))
    found: dict[str, bytes] = {}
    for line in listed.split(b"\0"):
        facts, _, name = line.partition(b"\t")
        mode, _, rest = facts.partition(b" ")
        last = os.fsdecode(name.rpartition(b"/")[2])
        if mode in PLAIN_FILES and last.endswith(EXTENSIONS):
            found[last] = rest.rpartition(b" ")[2]
    return found


def _contents(git: Reader, objects: Mapping[str, bytes], first: str) -> dict[str, bytes]:
    """The bytes of files by their objects: `first`, then others as far as there is room; none that is not
    there, or is larger than any block file."""
    order = [first, *(name for name in objects if name != first)]
    sizes = git.ask("cat-file", "--batch-check", given=_asked(objects[name] for name in order)) or b""
    wanted, room = [], MOST_SAID
    for name, line in zip(order, sizes.split(b"\n"), strict=False):
        kind, _, size = line.rpartition(b" ")
        if kind.endswith(b" blob") and int(size) <= LARGEST and int(size) + len(line) + 2 <= room:
            room -= int(size) + len(line) + 2
            wanted.append(name)
    told = git.ask("cat-file", "--batch", given=_asked(objects[name] for name in wanted)) or b""
    texts: dict[str, bytes] = {}
    at = 0
    for name in wanted:
        head, _, _ = told[at : at + LONGEST].partition(b"\n")
        kind, _, size = head.rpartition(b" ")
        at += len(head) + 1
        if not kind.endswith(b" blob"):
            continue
        texts[name] = told[at : at + int(size)]
        at += int(size) + 1
    return texts


def _asked(objects: Iterable[bytes]) -> bytes:
    return b"".join(each + b"\n" for each in objects)


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
        beside = [
            block
            for name in self._names(title)
            for block in self._blocks(name)
            if block.block.title.text == title
        ]
        return (*beside, *self._beyond.find(title, near))

    def titles(self, near: str) -> Iterable[str]:
        """Every title beside the file as it was, and of the shelves."""
        found = (
            unescaped(each)
            for data in self._texts.values()
            for each in re.findall(TITLE, data.decode("utf-8", "replace"))
        )
        return tuple(dict.fromkeys((*found, *self._beyond.titles(near))))

    def _names(self, title: str) -> list[str]:
        return [
            name
            for name, data in sorted(self._texts.items())
            if title in map(unescaped, re.findall(TITLE, data.decode("utf-8", "replace")))
        ]

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
