"""What is on the shelves: the facts of every block, worked out once and kept by content.

A file's facts follow from its own bytes and those of every file that it may use a block of. They are kept
under the digest of all these, one entry a shelf, so nothing that changed is ever taken from the index,
whatever its time says; an entry that is damaged, or gone, is made anew (see `kept`). Nothing is written on a
shelf.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from json import dumps, loads
from os.path import islink, realpath
from typing import Any, Final, Protocol

from ..diagnostics.diagnostic import Diagnostic, Severity, warning
from ..diagnostics.source import Source, Span
from ..sheets.block_facts import BlockFacts, facts_from
from .digests import digest_of, program_digest
from .folders import Folder, FolderShelf, bytes_of, names_shown, uses_shown
from .index_work import Fault, Record, Task, index_records
from .listing import DEEPEST, MANIFEST, names_in
from .manifest import read_manifest

MOST_USED: Final = 500  # files used by one that are told apart; with more, any change on the shelves counts


@dataclass(frozen=True, slots=True)
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


class Store(Protocol):
    """Bytes kept from run to run, under keys."""

    def find(self, key: str) -> bytes | None:
        """The bytes kept under a key; None where there are none."""
        ...

    def keep(self, key: str, data: bytes) -> None:
        """Keeps the bytes, where that can be done."""
        ...


Doing = Callable[[str], None]
"""Told what is being done; '' when it is done."""


def index_shelves(shelf: FolderShelf, kept: Store | None, doing: Doing = lambda what: None) -> Indexed:
    """Every block on the shelves; only what changed since the last time is drafted."""
    indexed = Indexed()
    entries = {each: _Entry(each, kept) for each in shelf.shelves}
    files = list(_read(shelf.shelves, entries))
    keys = _Keys(files)
    wanted = {file: keys.key(file) for file in files}
    missing = [file for file, key in wanted.items() if entries[file.shelf].find(key) is None]
    _make(shelf, missing, wanted, entries, doing)
    for each in shelf.shelves:
        title = _opened(indexed, each)
        own = [file for file in files if file.shelf == each]
        _gather(indexed, own, title, entries[each], wanted)
        entries[each].keep({wanted[file] for file in own}, {file.digest for file in own})
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


def _read(shelves: Sequence[Folder], entries: dict[Folder, _Entry]) -> Iterator[_File]:
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
                digest = digest_of(data)
                names, uses = entries[shelf].shown(digest, data)
                yield _File(path, shelf.shown + within, shelf, digest, tuple(names), tuple(uses))


class _Keys:
    """The key of a file's facts: what follows from its bytes and from those of all it may use."""

    def __init__(self, files: Sequence[_File]) -> None:
        self._bearing: dict[str, list[_File]] = {}
        self._all = digest_of("".join(file.digest for file in files).encode())
        for file in files:
            for name in dict.fromkeys(file.names):
                self._bearing.setdefault(name, []).append(file)

    def key(self, file: _File) -> str:
        """The key: every file that may be used, and what for, told in the order in which it is met."""
        told = [file.shown]
        met = {file: None}
        queue = [file]
        for each in queue:
            told.append(each.digest)
            for title in each.uses:
                bearing = self._bearing.get(title, [])
                nearest = sorted(bearing, key=lambda other: (other != each, other.shelf != each.shelf))
                told += [title, *(other.digest for other in nearest)]
                queue += [other for other in nearest if other not in met]
                met.update(dict.fromkeys(nearest))
            if len(met) > MOST_USED:
                told.append(self._all)
                break
        return digest_of("\0".join(told).encode("utf-8", "surrogatepass"))


class _Entry:
    """What is kept of one shelf."""

    def __init__(self, shelf: Folder, kept: Store | None) -> None:
        self._kept = kept
        self._shown: dict[str, list[list[str]]] = {}
        self._records: dict[str, Record] = {}
        self._changed = False
        if kept is None:
            return
        try:
            words = f"shelf {program_digest()} {realpath(shelf.path)}"
            self._key = digest_of(words.encode("utf-8", "surrogatepass"))
            data = kept.find(self._key)
            told: Any = loads(data) if data is not None else [{}, {}]
            self._shown, self._records = told
        except (OSError, ValueError, TypeError):
            self._shown, self._records = {}, {}

    def shown(self, digest: str, data: bytes) -> list[list[str]]:
        """The names that a file bears and uses."""
        if digest not in self._shown:
            text = data.decode("utf-8", "replace")
            titles, aliases = names_shown(text)
            self._shown[digest] = [[*titles, *aliases], uses_shown(text)]
            self._changed = True
        return self._shown[digest]

    def find(self, key: str) -> Record | None:
        """What is kept under a key."""
        return self._records.get(key)

    def add(self, key: str, record: Record) -> None:
        """One file's record, made anew."""
        self._records[key] = record
        self._changed = True

    def keep(self, keys: set[str], digests: set[str]) -> None:
        """Keeps what the shelf has now, where that is not what was kept before."""
        if self._kept is None or not (self._changed or len(keys) < len(self._records)):
            return
        records = {key: record for key, record in self._records.items() if key in keys}
        shown = {digest: names for digest, names in self._shown.items() if digest in digests}
        self._kept.keep(self._key, dumps([shown, records]).encode("utf-8", "surrogatepass"))


def _make(
    shelf: FolderShelf,
    missing: Sequence[_File],
    keys: dict[_File, str],
    entries: dict[Folder, _Entry],
    doing: Doing,
) -> None:
    """Works out the facts of files that the index does not know, on every core."""
    if not missing:
        return
    tasks = [Task(file.shelf, file.path) for file in missing]
    try:
        for number, record in enumerate(index_records(shelf.shelves, tasks), 1):
            doing(f"indexing: {number:,} of {len(missing):,} files")
            file = missing[number - 1]
            entries[file.shelf].add(keys[file], record)
    finally:
        doing("")


def _gather(
    indexed: Indexed, files: Sequence[_File], title: str, entry: _Entry, keys: dict[_File, str]
) -> None:
    """One shelf's blocks, and those that stand there twice."""
    standing: dict[tuple[str, int], Shelved] = {}
    for file in files:
        record = entry.find(keys[file])
        assert record is not None, f"{file.path} was not indexed"
        if record["fault"]:
            indexed.faults.append(Fault(file.shown, *record["fault"]))
        for line, told in record["blocks"]:
            made = Shelved(facts_from(told), file.shown, line, title, Task(file.shelf, file.path))
            indexed.blocks.append(made)
            first = standing.setdefault((made.facts.title, made.facts.version), made)
            if first is not made and first.file != file.shown:
                indexed.diagnostics.append(on_shelf_twice(first, made))


def on_shelf_twice(first: Shelved, second: Shelved) -> Diagnostic:
    """Two files of a shelf hold a block of one title and version."""
    facts = second.facts
    message = f"`{facts.title}` version {facts.version} stands on this shelf already, in `{first.file}`."
    return warning(
        "block-on-shelf-twice",
        message,
        Span(second.file, 0, 0),
        help="Give one of them another version, or take it off the shelf.",
    )


def is_error(diagnostics: Sequence[Diagnostic]) -> bool:
    """Whether anything said is an error."""
    return any(each.severity is Severity.ERROR for each in diagnostics)
