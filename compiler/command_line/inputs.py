"""Files, folders and standard input, as they are named at the command line."""

from __future__ import annotations

import sys
from collections.abc import Sequence

import click

from ..door import inputs
from ..door.inputs import MOST_READ, Input
from ..words.commands.files import from_keyboard
from .console import is_terminal


def inputs_of(given: Sequence[str]) -> list[Input]:
    """Every file named, those in every folder named, and standard input for `-`; each once."""
    return inputs.inputs_of(given, standard_input)


def one_input(name: str) -> Input:
    """The one file named, or standard input for `-`."""
    return inputs.one_input(name, standard_input)


def standard_input() -> bytes:
    """The bytes of standard input, up to MOST_READ of them."""
    if sys.stdin is None:  # closed by whoever started us
        return b""
    if is_terminal(sys.stdin):
        click.echo(from_keyboard(), err=True)
    return sys.stdin.buffer.read(MOST_READ)
