"""Shelves that are folders: where `use "Title"` finds its block.

First the folder of the file that asks, then the folders that the writer gave, then the library that ships.
A folder's files are looked through once for their titles, by two regular expressions; only a file that has
the title wanted is parsed. Nothing outside these folders is read, not even through a link.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Final

from ..diagnostics.source import Source
from ..diagnostics.visible import accents_joined
from ..measure.record import record
from .listing import DEEPEST, names_in
from .reading import plain_bytes

if TYPE_CHECKING:
    from ..diagnostics.diagnostic import Diagnostic
    from ..language import tree
    from ..language.shelf import ShelfBlock

LIBRARY_LABEL: Final = "library"
LIBRARY: Final = "<library>"  # what places in the library that ships begin with
LARGEST: Final = 4_000_000  # bytes of a shelf's file looked at; a block by hand has a few thousand

# Patterns as text: `re` compiles them with the first file looked through, and most builds look through none.
# What is matched is never tried again shorter (`*+`), and a title ends where the language ends one, so a file
# of any words takes time and room by its length alone.
WORDS: Final = r'((?:[^"\\\n]|\\.){0,240}+)'  # twice what a title may have, for each letter may be escaped
QUOTED: Final = f'"{WORDS}"'
TITLE: Final = rf"\bblock\s*+{QUOTED}"
USE: Final = rf"\buse\s*+{QUOTED}"
ALSO: Final = r'\balso\s*+("W"(?:\s*+,\s*+"W")*+)'.replace("W", WORDS.replace("(", "(?:", 1))


@record
class Parsed:
    """A shelf's file: its source, its blocks (none where it has mistakes), and what is wrong with it."""

    source: Source
    blocks: tuple[tree.Block, ...]
    diagnostics: tuple[Diagnostic, ...]


@record
class Folder:
    """One shelf. `shown` is what its files' names begin with, in places of diagnostics."""

    label: str  # 'beside', 'shelf' or 'library'
    path: Path
    shown: str
    deep: bool  # folders within it too


@dataclass(slots=True)
class Index:
    """Which files of a folder may hold which title."""

    titles: dict[str, list[Path]] = field(default_factory=dict)
    aliases: dict[str, list[Path]] = field(default_factory=dict)


class FolderShelf:
    """Finds blocks in real folders. One may serve a whole run: `forget` lets go what one file needed."""

    def __init__(self, folders: Iterable[Path] = (), *, library: Path | None = None) -> None:
        self._given = tuple(Folder("shelf", path, str(path), True) for path in folders)
        self._library = (Folder(LIBRARY_LABEL, library, LIBRARY, True),) if library else ()
        self._indexes: dict[Folder, Index] = {}
        self._parsed: dict[str, Parsed] = {}
        self._homes: dict[str, tuple[Folder, Path]] = {}
        self._anyway = False

    @classmethod
    def searched(cls, shelves: Iterable[Folder]) -> FolderShelf:
        """The same shelves again, to be searched whatever their manifests say; in another process, too."""
        made = cls()
        made._given, made._anyway = tuple(shelves), True
        return made

    def find(self, title: str, near: str) -> tuple[ShelfBlock, ...]:
        """Every version of every block of that title, the nearest shelf first; a title before an alias."""
        called: list[ShelfBlock] = []
        known: list[ShelfBlock] = []
        looked_at: set[str] = set()
        if near not in self._homes:
            looked_at.add(os.path.realpath(near))  # the blocks of the file compiled are looked up elsewhere
        for folder, path in self._files_with(title, near):
            real = os.path.realpath(path)
            if real in looked_at:
                continue
            looked_at.add(real)
            for block in self._blocks(path, folder):
                if block.block.title.text == title:
                    called.append(block)
                elif title in _aliases(block.block):
                    known.append(block)
        return (*called, *known)

    def _files_with(self, title: str, near: str) -> Iterator[tuple[Folder, Path]]:
        """The files that may hold a title; first that of the source itself, where it is a shelf's."""
        if near in self._homes:
            yield self._homes[near]
        for folder in self._folders(near):
            index = self._index(folder)
            for path in dict.fromkeys(index.titles.get(title, []) + index.aliases.get(title, [])):
                yield folder, path

    def titles(self, near: str) -> Iterable[str]:
        """Every title and alias that the shelves may hold, each once, for suggestions."""
        found: dict[str, None] = {}
        for folder in self._folders(near):
            index = self._index(folder)
            found.update(dict.fromkeys((*index.titles, *index.aliases)))
        return tuple(found)

    @property
    def sources(self) -> Mapping[str, Source]:
        """Every source parsed since the last `forget`, by the name its places are written with."""
        return {name: parsed.source for name, parsed in self._parsed.items()}

    @property
    def faults(self) -> tuple[Diagnostic, ...]:
        """What is wrong with files that held a title asked for and could not be used."""
        faulty = (parsed for parsed in self._parsed.values() if not parsed.blocks)
        return tuple(each for parsed in faulty for each in parsed.diagnostics)

    @property
    def shelves(self) -> tuple[Folder, ...]:
        """The shelves, nearest first: those given, then the library."""
        return (*self._given, *self._library)

    def own_file(self, path: Path, shelf: Folder) -> Parsed | None:
        """A shelf's own file; what it uses is looked for on its own shelf first. None: it cannot be read."""
        return self._parse(path, shelf)

    def home_of(self, block: ShelfBlock) -> tuple[Folder, Path]:
        """Where the file of a block stands that was found here."""
        return self._homes[block.source.name]

    def settle(self, name: str, home: tuple[Folder, Path]) -> None:
        """What the source of that name uses is looked for on the shelf where it stands first."""
        self._homes[name] = home

    def forget(self) -> None:
        """Lets go the parsed files and the titles beside them; those of the shelves stay."""
        self._parsed.clear()
        self._homes.clear()
        self._indexes = {folder: index for folder, index in self._indexes.items() if folder in self.shelves}

    # ---- folders ------------------------------------------------------------------------------------------

    def _folders(self, near: str) -> Iterator[Folder]:
        """The shelves for a source, nearest first: the one it was found in, or else its own folder."""
        beside = Folder("beside", Path(near).parent, os.path.dirname(near), False)
        first, _ = self._homes.get(near, (beside, None))
        yield first
        yield from (each for each in self.shelves if each != first)

    def _index(self, folder: Folder) -> Index:
        """The titles of a folder's files, read once."""
        index = self._indexes.get(folder)
        if index is None:
            index = Index()
            depth = DEEPEST if folder.deep else 0
            paths = block_files(folder.path, depth, anyway=self._anyway)
            for path in paths:
                data = bytes_of(path)
                if data is not None:
                    _add_titles(index, path, data)
            self._indexes[folder] = index
        return index

    # ---- files --------------------------------------------------------------------------------------------

    def _blocks(self, path: Path, folder: Folder) -> Iterator[ShelfBlock]:
        """The blocks of a shelf's file, in order."""
        from ..language.shelf import ShelfBlock

        parsed = self._parse(path, folder)
        if parsed is not None:
            for block in parsed.blocks:
                yield ShelfBlock(block, parsed.source, folder.label, folder=folder.shown)

    def _parse(self, path: Path, folder: Folder) -> Parsed | None:
        """The file's blocks; None where it cannot be read at all."""
        name = shown_path(path, folder)
        if name not in self._parsed:
            data = bytes_of(path)
            if data is None:
                return None
            self._homes[name] = (folder, path)
            self._parsed[name] = _parse_bytes(name, data)
        return self._parsed[name]


def shown_path(path: Path, folder: Folder) -> str:
    """How places in a shelf's file are written."""
    return os.path.join(folder.shown, path.relative_to(folder.path).as_posix())


def library_folder() -> Path | None:
    """The library that ships with the program; None where it is not in a folder of its own."""
    from importlib.util import find_spec

    found = find_spec(__package__.partition(".")[0] + ".library")
    places = list(found.submodule_search_locations or ()) if found else []
    return Path(places[0]) if places else None


def block_files(folder: Path, depth: int = 0, *, anyway: bool = False) -> list[Path]:
    """Every readable block or quilt file in a folder, sorted by name (see `listing`)."""
    return [Path(each) for each in names_in(str(folder), depth, anyway=anyway)]


def bytes_of(path: Path | str) -> bytes | None:
    """The file's bytes; None where it cannot be read or is far larger than any block file."""
    try:
        data = plain_bytes(path, LARGEST, links=True)
    except OSError:
        return None
    return data if len(data) <= LARGEST else None


def _add_titles(index: Index, path: Path, data: bytes) -> None:
    """Notes every title and every other name that a file's text shows."""
    titles, aliases = names_shown(data.decode("utf-8", "replace"))
    for title in titles:
        index.titles.setdefault(title, []).append(path)
    for name in aliases:
        index.aliases.setdefault(name, []).append(path)


def names_shown(text: str) -> tuple[list[str], list[str]]:
    """The titles and the other names that a file's text shows, without parsing it."""
    aliases = [unescaped(name) for names in re.findall(ALSO, text) for name in re.findall(QUOTED, names)]
    return [unescaped(title) for title in re.findall(TITLE, text)], aliases


def uses_shown(text: str) -> list[str]:
    """The titles that a file's text uses, each once, sorted."""
    return sorted({unescaped(title) for title in re.findall(USE, text)})


def unescaped(text: str) -> str:
    """A title as it reads: a backslash takes the next letter as it is, and accents join their letters."""
    return accents_joined(re.sub(r"\\(.)", r"\1", text) if "\\" in text else text)


def _parse_bytes(name: str, data: bytes) -> Parsed:
    """The blocks of a file's bytes; none where it has a mistake."""
    from ..language.decode import read_source
    from ..language.parser import parse

    read = read_source(name, data)
    if read.value is None or read.failed:
        return Parsed(read.value or Source(name, ""), (), read.diagnostics)
    outcome = parse(read.value)
    usable = outcome.value is not None and not outcome.failed
    return Parsed(
        read.value,
        outcome.value.blocks if usable and outcome.value else (),
        read.diagnostics + outcome.diagnostics,
    )


def _aliases(block: tree.Block) -> tuple[str, ...]:
    """The other names of a block."""
    from ..language import tree

    return tuple(
        each.text for statement in block.body if isinstance(statement, tree.Also) for each in statement.titles
    )
