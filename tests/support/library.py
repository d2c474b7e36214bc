"""Every block of the library, drafted once for all tests that want it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from importlib.resources import files

from piecewright.diagnostics.diagnostic import Outcome
from piecewright.diagnostics.source import Source
from piecewright.drafting.model import Draft
from piecewright.language.shelf import ShelfBlock
from piecewright.pipeline import CompiledBlock
from piecewright.searching.block_facts import facts_of
from piecewright.sheets.catalogue.entries import Entry
from support.check import compile_source


@lru_cache(maxsize=1)
def library_sources() -> tuple[Source, ...]:
    """The library's files, in order of their names."""
    root = files("piecewright.library")
    found = []
    for folder in sorted((each for each in root.iterdir() if each.is_dir()), key=lambda each: each.name):
        for file in sorted(folder.iterdir(), key=lambda each: each.name):
            if file.name.endswith(".block"):
                found.append(Source(f"{folder.name}/{file.name}", file.read_text(encoding="utf-8")))
    return tuple(found)


class LibraryShelf:
    """The library as a shelf, for blocks that use others of it."""

    def find(self, title: str, near: str) -> tuple[ShelfBlock, ...]:
        """Every block of that title or alias."""
        named = [(block, source) for block, source in _parsed() if block.title.text == title]
        return tuple(ShelfBlock(block, source, "library") for block, source in named)

    def titles(self, near: str) -> tuple[str, ...]:
        """Every title in the library."""
        return tuple(block.title.text for block, _ in _parsed())


@lru_cache(maxsize=1)
def _parsed() -> tuple[tuple, ...]:
    from piecewright.language.parser import parse

    found = []
    for source in library_sources():
        tree = parse(source).value
        found += [(block, source) for block in (tree.blocks if tree else ())]
    return tuple(found)


@lru_cache(maxsize=256)
def compiled(source: Source) -> Outcome[tuple[CompiledBlock, ...]]:
    """The blocks of one library file."""
    return compile_source(source, LibraryShelf())


def library_drafts() -> Iterator[tuple[str, Draft]]:
    """Title and draft of every block written in the library."""
    for source in library_sources():
        for block in compiled(source).value or ():
            if not block.from_elsewhere:
                yield block.draft.title, block.draft


@lru_cache(maxsize=1)
def library_entries() -> tuple[Entry, ...]:
    """Every block written in the library, as the catalogue shows it."""
    found = []
    for _, draft in library_drafts():
        facts = facts_of(draft).value
        assert facts is not None
        found.append(Entry(draft, facts, "Library"))
    return tuple(found)
