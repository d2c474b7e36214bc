"""What is to be compiled: files, folders of files, and bytes that the caller has."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final

from ..failures import WrongUse
from ..measure.record import record
from ..shelves.folders import Folder, FolderShelf, block_files
from ..shelves.listing import DEEPEST, EXTENSIONS
from ..words.commands.files import file_wanted, no_file_and_no_title, no_files_in, no_such_file
from ..words.phrases import one_of

if TYPE_CHECKING:
    from ..language.shelf import ShelfBlock

__all__ = ["EXTENSIONS"]

STANDARD_INPUT: Final = "<stdin>"  # what places in a file read from standard input are called
DASH: Final = "-"
MOST_READ: Final = 16_000_000  # bytes; far beyond what the language takes, so the rest need not be read


@record
class Titled:
    """Which block of a shelf's file is meant, and where that file stands."""

    block: ShelfBlock
    home: tuple[Folder, Path]
    twins: tuple[ShelfBlock, ...] = ()  # of the same title and version, in other files

    @property
    def key(self) -> tuple[str, int]:
        """Its title and version."""
        return self.block.block.title.text, self.block.version


@record
class Input:
    """One file to compile, with the name that its places are written with."""

    name: str
    path: Path | None  # None: no file
    data: Callable[[], bytes] | None = None  # what is read where there is no file
    titled: Titled | None = None  # the one block of it that is meant
    maker: str = ""  # who is named where the file names nobody

    def read(self) -> bytes:
        """The bytes, up to MOST_READ of them. OSError where they cannot be had."""
        if self.path is not None:
            with self.path.open("rb") as stream:
                return stream.read(MOST_READ)
        return self.data() if self.data else b""

    @property
    def on_a_shelf(self) -> bool:
        """Whether it was found by its title, and not in the folder one is in."""
        return self.titled is not None and self.titled.home[0].label != "beside"

    @property
    def file(self) -> str | None:
        """The file's name; None where there is no file."""
        return self.name if self.path is not None else None


def inputs_of(
    given: Sequence[str], standard: Callable[[], bytes] | None = None, shelf: FolderShelf | None = None
) -> list[Input]:
    """Every file named, and for every folder the block and quilt files in it, sorted; each once. With a
    shelf, a block's title may stand for a file.

    A name that is not there, or a folder without such files, is a use error before any work is done.
    """
    found: dict[Input, None] = {}
    for name in given:
        if (name != DASH or not standard) and os.path.isdir(name):
            files = block_files(Path(name), DEEPEST)
            if not files:
                kinds = one_of(EXTENSIONS)
                raise WrongUse(no_files_in(name, kinds))
            found.update((Input(str(path), path), None) for path in files)
        else:
            found[one_input(name, standard, shelf)] = None
    return list(found)


def one_input(
    name: str, standard: Callable[[], bytes] | None = None, shelf: FolderShelf | None = None
) -> Input:
    """The one file named, or standard input, or with a shelf the block of that title; a use error for a
    folder or a name that is not there."""
    if name == DASH and standard:
        return Input(STANDARD_INPUT, None, standard)
    if not os.path.exists(name):
        return _titled(name, shelf)
    if os.path.isdir(name):
        raise WrongUse(file_wanted(name))
    return Input(name, Path(name))


def _titled(name: str, shelf: FolderShelf | None) -> Input:
    """The block of that title; a use error where nothing is called so."""
    from .titles import is_title, near_titles, titled_input

    if shelf is None or not is_title(name):
        raise WrongUse(no_such_file(name, _near(name)))
    found = titled_input(name, shelf)
    if found is None:
        near = _near(name) or next(iter(near_titles(name, shelf)), "")
        raise WrongUse(no_file_and_no_title(name, near))
    return found


def _near(name: str) -> str:
    """The file that was probably meant, or nothing."""
    from difflib import get_close_matches

    folder, last = os.path.split(name)
    known = [path.name for path in block_files(Path(folder or "."))]
    close = get_close_matches(last, known, n=1)
    for ending in EXTENSIONS:
        close = close or get_close_matches(last + ending, known, n=1, cutoff=0.9)
    return os.path.join(folder, close[0]) if close else ""
