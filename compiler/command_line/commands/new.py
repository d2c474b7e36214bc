"""`piecewright new`: a block's or a quilt's file begun, from a few answers."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from typing import Any, Final

import click

from ...diagnostics.source import Source
from ...door.blocks import write_file
from ...door.choices import length_of
from ...door.finding import grid_of
from ...door.starting import SIZES, block_begun, faults_in, file_named, in_house_style, parts_of, quilt_begun
from ...failures import WrongUse
from ...words.commands import asked
from ...words.commands import new as words
from ...words.commands.files import wrote
from ..choices import Value, command, few, open_shelf, settings, shelf_option
from ..console import CLEAN, COMPLAINED, is_terminal, say, show_diagnostics

KINDS: Final = ("block", "quilt")


@command("new", help=words.HELP, epilog=words.EXAMPLES)
@click.argument("kind", type=few(KINDS))
@click.argument("title", required=False)
@click.option("--size", metavar="LENGTH", help=words.SIZE)
@click.option("--grid", type=Value("grid", grid_of), metavar="ACROSSxDOWN", help=words.GRID)
@click.option("--use", "used", multiple=True, metavar="TITLE", help=words.USE)
@click.option("--set", "shape", type=Value("grid", grid_of), metavar="ACROSSxDOWN", help=words.SET)
@click.option("--out", metavar="FILE", type=click.Path(dir_okay=False), help=words.OUT)
@shelf_option
def new(
    kind: str,
    title: str | None,
    size: str | None,
    grid: tuple[int, int] | None,
    used: tuple[str, ...],
    shape: tuple[int, int] | None,
    out: str | None,
    shelves: tuple[str, ...],
) -> int:
    """The exit status, when the file is written."""
    _refuse_others_options(kind, grid, used, shape)
    shelf, usual = open_shelf(shelves), SIZES[settings().said.get("units", "in")]
    asks = is_terminal(sys.stdin) and title is None
    if title is None:
        title = _answer(words.ASK_TITLE, None, str) if asks else ""
    if not title.strip():
        raise click.UsageError(words.title_wanted())
    if kind == "block":
        size = size or (_answer(words.ASK_SIZE, usual, _length) if asks else usual)
        grid = grid or (_answer(words.ASK_GRID, "3x3", grid_of) if asks else (3, 3))
        text = block_begun(title, _length(size), grid)
    else:
        if not used and not asks:
            raise click.UsageError(words.block_wanted())
        parts = parts_of(used, shelf) or _answer(words.ASK_USE, None, lambda each: parts_of([each], shelf))
        size = size or (_answer(words.ASK_CELL, usual, _length) if asks else usual)
        shape = shape or (_answer(words.ASK_SET, "4x5", grid_of) if asks else (4, 5))
        text = quilt_begun(title, _length(size), shape, parts)
    path = out or file_named(title, kind)
    if os.path.lexists(path):
        raise click.UsageError(words.is_here(path))
    text = in_house_style(text, path)
    faults = faults_in(text, path, shelf)
    if faults:
        show_diagnostics(faults, {path: Source(path, text), **shelf.sources}, err=True)
        return COMPLAINED
    say(wrote(write_file(path, text.encode())))
    say(words.next_steps(path))
    return CLEAN


def _length(value: str) -> str:
    """The length as it is written; WrongUse where it is none."""
    length_of(value, asked.WIDTHS)
    return value.strip()


def _answer(question: str, usual: str | None, reads: Callable[[str], Any]) -> Any:
    """What is answered on the terminal; asked again until it can be read."""

    def read(value: str) -> Any:
        try:
            return reads(value)
        except WrongUse as problem:
            raise click.UsageError(str(problem)) from problem

    return click.prompt(question, default=usual, value_proc=read, err=True)


def _refuse_others_options(
    kind: str, grid: tuple[int, int] | None, used: tuple[str, ...], shape: tuple[int, int] | None
) -> None:
    """A use error for what the other kind has."""
    of_others = {"--grid": grid} if kind == "quilt" else {"--use": used, "--set": shape}
    for option, value in of_others.items():
        if value:
            raise click.UsageError(words.not_of_it(option, kind))
