"""Files, folders and standard input, as they are named at the command line."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import replace

import click

from ..door import inputs
from ..door.compiling import FolderShelf
from ..door.inputs import MOST_READ, Input
from ..words.commands.files import from_keyboard
from .choices import settings
from .console import is_terminal


def inputs_of(given: Sequence[str], shelf: FolderShelf | None = None) -> list[Input]:
    """Every file named, those in every folder named, and standard input for `-`; each once. With a shelf, the
    title of a block on it stands for a file."""
    return [_made_here(each) for each in inputs.inputs_of(given, standard_input, shelf)]


def one_input(name: str, shelf: FolderShelf | None = None) -> Input:
    """The one file named, or standard input for `-`, or the block of that title on the shelf."""
    return _made_here(inputs.one_input(name, standard_input, shelf))


def _made_here(given: Input) -> Input:
    """The input with the maker of this folder's settings, unless it stands on a shelf elsewhere."""
    return given if given.on_a_shelf else replace(given, maker=settings().maker)


def standard_input() -> bytes:
    """The bytes of standard input, up to MOST_READ of them."""
    if sys.stdin is None:  # closed by whoever started us
        return b""
    if is_terminal(sys.stdin):
        click.echo(from_keyboard(), err=True)
    return sys.stdin.buffer.read(MOST_READ)
