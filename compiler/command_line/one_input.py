"""The one input of a command, compiled."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from ..door.compiling import Compiled, FolderShelf, compile_input
from ..door.inputs import Input
from ..words.commands.files import drafting
from .console import CLEAN, Progress, Tally, show_diagnostics

if TYPE_CHECKING:
    from ..door.choices import ToCut


def compile_alone(given: Input, shelf: FolderShelf, cutting: ToCut | None = None) -> tuple[Compiled, int]:
    """The one input of a command compiled, all there is to say of it shown; and the exit status so far."""
    tally, progress = Tally(), Progress(1)
    progress.doing(drafting(given.name))
    try:
        compiled = compile_input(given, shelf, cutting)
    finally:
        progress.clear()
    tally.add(compiled.diagnostics)
    show_diagnostics(compiled.said, compiled.sources, err=True)
    if tally.status() != CLEAN:
        click.echo(tally.summary(), err=True)
    return compiled, tally.status()
