"""Which of a file's blocks are meant, and where what is made of them goes."""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from ..diagnostics.visible import accents_joined
from ..failures import MachineFailed, WrongUse, machine_text
from ..words.commands import asked
from ..words.commands.files import folder_wanted
from .writing import write_all

if TYPE_CHECKING:
    from ..pipeline import CompiledBlock


class BlockChoice:
    """The titles asked for, and which of them have been met."""

    def __init__(self, titles: Sequence[str]) -> None:
        self._wanted = dict.fromkeys(map(accents_joined, titles), False)
        self._seen: list[str] = []

    @property
    def given(self) -> bool:
        """Whether any title was asked for."""
        return bool(self._wanted)

    def choose(self, blocks: Iterable[CompiledBlock]) -> list[CompiledBlock]:
        """Those asked for; all of them where nothing was asked for."""
        if not self._wanted:
            return list(blocks)
        return [each for each in blocks if self._is_wanted(each)]

    def wants(self, title: str) -> bool:
        """Whether a block of this title was asked for, or any."""
        return not self._wanted or title.casefold() in {each.casefold() for each in self._wanted}

    def _is_wanted(self, block: CompiledBlock) -> bool:
        """Whether a title asked for is the block's title or another name of it, capitals or not."""
        names = {name.casefold() for name in (block.draft.title, *block.draft.also)}
        self._seen.append(block.draft.title)
        met = [title for title in self._wanted if title.casefold() in names]
        self._wanted.update(dict.fromkeys(met, True))
        return bool(met)

    def refuse_unmet(self) -> None:
        """A use error for a title that no block had."""
        for title, met in self._wanted.items():
            if not met:
                from difflib import get_close_matches

                raise WrongUse(asked.no_such_block(title, get_close_matches(title, self._seen, n=1)))


def write_files(folder: str, files: Iterable[tuple[str, bytes]]) -> list[str]:
    """The paths written, all or none; MachineFailed where the folder or the disk does not let us.

    The folder is made where it is not there yet.
    """
    paths: list[str] = []

    def placed() -> Iterable[tuple[Path, bytes]]:
        for name, data in files:
            paths.append(os.path.join(folder, name) if folder != "." else name)
            yield Path(folder) / name, data

    try:
        make_folder(folder)
        write_all(placed())
    except (OSError, MemoryError) as problem:
        raise MachineFailed(machine_text(problem, paths[-1] if paths else folder)) from problem
    return paths


def write_file(path: str, data: bytes) -> str:
    """The path of the one file written, as above."""
    folder, name = os.path.split(path)
    return write_files(folder or ".", [(name, data)])[0]


def make_folder(folder: str) -> None:
    """The folder, made with those above it where they are missing."""
    try:
        os.makedirs(folder, exist_ok=True)
    except FileExistsError as problem:
        raise MachineFailed(folder_wanted(folder)) from problem
