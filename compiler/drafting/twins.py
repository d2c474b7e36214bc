"""Blocks of one title and version in different files: which of them is meant must not matter to the cloth.

A printed template bears its block's title and version, and nothing else tells it from another's. So two
drafts that share both must have the same outlines.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from ..language.parser import parse
from ..language.shelf import ShelfBlock
from ..words.messages import shelves as complain
from .fingerprint import differ, fingerprint_of

if TYPE_CHECKING:
    from ..diagnostics.diagnostic import Diagnostic
    from ..diagnostics.source import Span
    from ..language.shelf import Shelf
    from .model import Draft

Key = tuple[str, int]


def twins_of(block: ShelfBlock, found: Sequence[ShelfBlock]) -> list[ShelfBlock]:
    """Those in other files that have the block's title and version, where a lock does not tell them apart."""
    return [
        each
        for each in found
        if each.source.name != block.source.name
        and (each.block.title.text, each.version) == (block.block.title.text, block.version)
        and each.unpinned == block.unpinned
    ]


def said_of_twins(
    at: Span, block: ShelfBlock, twins: Sequence[ShelfBlock], shelf: Shelf, compared: set[Key]
) -> list[Diagnostic]:
    """An error where one on the same shelf has other outlines, and a warning where it has the same; a warning
    where one on a farther shelf has others, for the nearer is taken. Told at the words that name it, once of
    each title and version in `compared`."""
    key = block.block.title.text, block.version
    if not twins or key in compared:
        return []
    compared.add(key)
    said: list[Diagnostic] = []
    own = _outlines(block, shelf, compared)
    for twin in twins:
        other = _outlines(twin, shelf, compared)
        if own is None or other is None:
            continue  # it has a mistake, which is told where it is used
        differing = differ(own, other)
        names = block.source.name, twin.source.name
        if (twin.home, twin.folder) == (block.home, block.folder):
            said.append(complain.block_twice_on_shelf(at, *key, names, differing))
        elif differing:
            said.append(complain.block_hides_another(at, *key, names))
    return said


def _outlines(block: ShelfBlock, shelf: Shelf, compared: set[Key]) -> str | None:
    """The block's fingerprint; None where it has a mistake."""
    made = _drafted(block, shelf, compared)
    return fingerprint_of(made) if made is not None else None


def _drafted(block: ShelfBlock, shelf: Shelf, compared: set[Key]) -> Draft | None:
    from .draft import Drafter

    file = parse(block.source).value
    if file is None:
        return None
    apart = Drafter(block.source, file, shelf, compared)
    return apart.draft(block.block, block.source)
