"""What is on the shelves: the facts of every block, worked out once and kept by content.

A file's facts follow from its own bytes and those of every file that it may use a block of. They are kept
under the digest of all these, one entry a file, so nothing that changed is ever taken from what was kept,
whatever its time says; an entry that is damaged, or gone, is made anew (see `kept`). Nothing is written on a
shelf.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from os.path import islink, realpath
from typing import Final

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Source
from ..measure.record import record
from ..searching.block_facts import BlockFacts, facts_from
from ..words.commands.files import indexing_files
from ..words.messages.shelves import on_shelf_twice
from .folders import Folder, FolderShelf, bytes_of, names_shown, uses_shown
from .index_work import Fault, Record, Task, index_records
from .kept import Kept, digest_of
from .listing import DEEPEST, MANIFEST, names_in
from .manifest import read_manifest

MOST_USED: Final = 500  # files used by one that are told apart; with more, any change on the shelves counts


@record
class Shelved:
    """A block on a shelf: its facts, and where it stands."""

    facts: BlockFacts
    file: str
    line: int
    shelf: str  # its manifest's title, or its folder
    task: Task  # to draft it again


@dataclass(slots=True)
class Indexed:
    """Everything on the shelves: blocks, the nearest shelf first; files with mistakes; what else is wrong."""

    blocks: list[Shelved] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    diagnostics: list[Diagnostic] = field(default_factory=list)
    sources: dict[str, Source] = field(default_factory=dict)
    shelves: list[tuple[str, str, str]] = field(default_factory=list)  # title, folder, note


@dataclass(frozen=True, slots=True, eq=False)
class _File:
    """A file on a shelf, how its places are written, its digest, and the names that its text shows."""

    path: str
    shown: str
    shelf: Folder
    digest: str
    names: tuple[str, ...]
    uses: tuple[str, ...]


Doing = Callable[[str], None]
"""Told what is being done; '' when it is done."""


def index_shelves(shelf: FolderShelf, kept: Kept, doing: Doing = lambda what: None) -> Indexed:
    """Every block on the shelves; only what changed since the last time is drafted."""
    indexed = Indexed()
    files = list(_read(shelf.shelves))
    causes = _Causes(files)
    records = {file: kept.find(causes.of(file)) for file in files}
    missing = [file for file, entry in records.items() if entry is None]
    for file, entry in zip(missing, _made(shelf, missing, doing), strict=True):
        records[file] = entry
        kept.keep(causes.of(file), entry)
    if missing:
        kept.drop_oldest()
    for each in shelf.shelves:
        own = {file: record for file, record in records.items() if file.shelf == each}
        _gather(indexed, own, _opened(indexed, each))
    return indexed


def _opened(indexed: Indexed, shelf: Folder) -> str:
    """What the shelf is called, with all else that its manifest says."""
    read = read_manifest(str(shelf.path / MANIFEST))
    manifest = read.value
    assert manifest is not None, "there is always a manifest"
    indexed.diagnostics += read.diagnostics
    if manifest.source is not None:
        indexed.sources[manifest.source.name] = manifest.source
    indexed.shelves.append((manifest.title or shelf.shown, str(shelf.path), manifest.note))
    return manifest.title or shelf.shown


def _read(shelves: Sequence[Folder]) -> Iterator[_File]:
    """Every file of every shelf, once, with what its text shows."""
    seen: set[str] = set()
    for shelf in shelves:
        folder, home = str(shelf.path), realpath(shelf.path)
        for path in names_in(folder, DEEPEST, anyway=True):
            within = path[len(folder) :]  # folders on the way are no links: see `listing`
            real = realpath(path) if islink(path) else home + within
            data = None if real in seen else bytes_of(path)
            seen.add(real)
            if data is not None:
                text = data.decode("utf-8", "replace")
                titles, aliases = names_shown(text)
                names, uses = (*titles, *aliases), tuple(uses_shown(text))
                yield _File(path, shelf.shown + within, shelf, digest_of(data), names, uses)


class _Causes:
    """What a file's facts follow from: its bytes and those of all it may use."""

    def __init__(self, files: Sequence[_File]) -> None:
        self._bearing: dict[str, list[_File]] = {}
        self._all = digest_of(*(file.digest for file in files))
        for file in files:
            for name in dict.fromkeys(file.names):
                self._bearing.setdefault(name, []).append(file)

    def of(self, file: _File) -> list[str]:
        """Every file that may be used, and what for, told in the order in which it is met."""
        told = [file.shown]
        met = {file: None}
        queue = [file]
        for each in queue:
            told.append(each.digest)
            for title in each.uses:
                bearing = self._bearing.get(title, [])
                nearest = sorted(bearing, key=lambda other: (other != each, other.shelf != each.shelf))
                told += [title, *(f"{other.digest} {other.shown}" for other in nearest)]
                queue += [other for other in nearest if other not in met]
                met.update(dict.fromkeys(nearest))
            if len(met) > MOST_USED:
                told.append(self._all)
                break
        return told


def _made(shelf: FolderShelf, missing: Sequence[_File], doing: Doing) -> Iterator[Record]:
    """The facts of files of which nothing is kept, worked out on every core."""
    tasks = [Task(file.shelf, file.path) for file in missing]
    try:
        for number, record in enumerate(index_records(shelf.shelves, tasks), 1):
            doing(indexing_files(number, len(missing)))
            yield record
    finally:
        doing("")


def _gather(indexed: Indexed, records: dict[_File, Record], title: str) -> None:
    """One shelf's blocks, and those that stand there twice."""
    standing: dict[tuple[str, int], Shelved] = {}
    for file, entry in records.items():
        if entry["fault"]:
            indexed.faults.append(Fault(file.shown, *entry["fault"]))
        for line, told in entry["blocks"]:
            made = Shelved(facts_from(told), file.shown, line, title, Task(file.shelf, file.path))
            indexed.blocks.append(made)
            first = standing.setdefault((made.facts.title, made.facts.version), made)
            if first is not made and first.file != file.shown:
                indexed.diagnostics.append(_twice(first, made))


def _twice(first: Shelved, second: Shelved) -> Diagnostic:
    facts = second.facts
    return on_shelf_twice(second.file, facts.title, facts.version, first.file)
