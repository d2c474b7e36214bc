"""What the writer named at the command line: files, folders of files, and `-` for standard input."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import click

from ..diagnostics.visible import visible
from ..words.phrases import one_of
from .console import is_terminal
from .shelves.folders import block_files
from .shelves.listing import DEEPEST, EXTENSIONS

STANDARD_INPUT: Final = "<stdin>"  # what places in a file read from standard input are called
DASH: Final = "-"
MOST_READ: Final = 16_000_000  # bytes; far beyond what the language takes, so the rest need not be read


@dataclass(frozen=True, slots=True)
class Input:
    """One file to compile, with the name that its places are written with."""

    name: str
    path: Path | None  # None: standard input

    def read(self) -> bytes:
        """The bytes, up to MOST_READ of them. OSError where they cannot be had."""
        if self.path is not None:
            with self.path.open("rb") as stream:
                return stream.read(MOST_READ)
        if sys.stdin is None:  # closed by whoever started us
            return b""
        if is_terminal(sys.stdin):
            click.echo("Reading from the keyboard; Ctrl-D on a line of its own ends.", err=True)
        return sys.stdin.buffer.read(MOST_READ)


def inputs_of(given: Sequence[str]) -> list[Input]:
    """Every file named, and for every folder the block and quilt files in it, sorted; each once.

    A name that is not there, or a folder without such files, is a use error before any work is done.
    """
    found: dict[Input, None] = {}
    for name in given:
        if name != DASH and os.path.isdir(name):
            files = block_files(Path(name), DEEPEST)
            if not files:
                kinds = one_of(EXTENSIONS)
                raise click.UsageError(f"There is no {kinds} file in the folder '{visible(name)}'.")
            found.update((Input(str(path), path), None) for path in files)
        else:
            found[one_input(name)] = None
    return list(found)


def one_input(name: str) -> Input:
    """The one file named, or standard input; a use error for a folder or a name that is not there."""
    if name == DASH:
        return Input(STANDARD_INPUT, None)
    if not os.path.exists(name):
        raise click.UsageError(f"There is no file or folder '{visible(name)}'.{_near(name)}")
    if os.path.isdir(name):
        raise click.UsageError(f"'{visible(name)}' is a folder; this command takes one file.")
    return Input(name, Path(name))


def _near(name: str) -> str:
    """The file that was probably meant, or nothing."""
    from difflib import get_close_matches

    folder, last = os.path.split(name)
    known = [path.name for path in block_files(Path(folder or "."))]
    close = get_close_matches(last, known, n=1)
    for ending in EXTENSIONS:
        close = close or get_close_matches(last + ending, known, n=1, cutoff=0.9)
    return f" Did you mean '{visible(os.path.join(folder, close[0]))}'?" if close else ""
