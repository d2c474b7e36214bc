"""Where used blocks are found. The command line supplies real folders; tests supply texts."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol

from ..diagnostics.source import Source
from ..measure.record import record
from . import tree


@record
class ShelfBlock:
    """A parsed block, the source it stands in, and where that source was found ('own-file', 'beside', ...).

    `unpinned`: there is a lock, and it lacks this block.
    """

    block: tree.Block
    source: Source
    shelf: str
    unpinned: bool = False
    folder: str = ""  # of several shelves of a kind, which

    @property
    def home(self) -> tuple[str, bool]:
        """What is searched as one: the shelf, and whether before or behind a lock."""
        return self.shelf, self.unpinned

    @property
    def version(self) -> int:
        """The block's version; 1 where none is written."""
        return self.block.version.value if self.block.version else 1


@record
class Choice:
    """Which block a `use` of the source named `near` was found to mean."""

    near: str
    use: tree.Use
    block: ShelfBlock

    @property
    def asked(self) -> int | None:
        """The version asked for; None where any was."""
        return self.use.version.value if self.use.version else None


class Shelf(Protocol):
    """Finds blocks by title or `also` title, for a `use` in the source named `near`."""

    def find(self, title: str, near: str) -> tuple[ShelfBlock, ...]:
        """Every version of every block of that title, the nearest shelf first; a title before an alias."""
        ...

    def titles(self, near: str) -> Iterable[str]:
        """Every title that `find` would know, for suggestions."""
        ...
