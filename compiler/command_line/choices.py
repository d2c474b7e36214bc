"""The kinds of value that options take, and the options that several commands share."""

from __future__ import annotations

import os
import re
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

import click

from ..measure.length import UNITS, exact_number
from .folders import FolderShelf, library_folder

if TYPE_CHECKING:
    ParamKind = click.ParamType[Any]
else:
    ParamKind = click.ParamType  # click before 8.4 knows no kinds of it

SHELVES: Final = "PIECEWRIGHT_SHELVES"  # folders of shelves, parted as the system parts folders in PATH

LENGTH: Final = re.compile(r"\s*(\d+(?:\.\d+)?|\d+/\d+|\d+ \d+/\d+)\s*(in|cm|mm)\s*")
LONGEST: Final = 40  # letters of a length: more is no length that a person means


class LengthChoice(ParamKind):
    """A length with its unit: `0.97in`, `15/16in`, `2.46cm`. Gives an exact Fraction of an inch."""

    name = "length"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Fraction:
        """The length in inches, or a use error that names the units."""
        if isinstance(value, Fraction):
            return value
        found = LENGTH.fullmatch(value) if len(value) <= LONGEST else None
        number = exact_number(found[1]) if found else None
        if found is None or number is None:
            self.fail(f"'{value[:LONGEST]}' is not a length. Write it with its unit: 0.97in or 2.46cm.",
                      param, ctx)
        return number * UNITS[found[2]]


class ListChoice(ParamKind):
    """One or more of a few words, parted by commas. Gives a tuple, each word once."""

    name = "list"

    def __init__(self, words: tuple[str, ...]) -> None:
        self.words = words

    def convert(self, value: Any, param: click.Parameter | None,
                ctx: click.Context | None) -> tuple[str, ...]:
        """The words, in the order given."""
        if isinstance(value, tuple):
            return value
        given = [word.strip().lower() for word in value.split(",")]
        for word in given:
            if word not in self.words:
                self.fail(f"'{word[:LONGEST]}' is not one of {', '.join(self.words)}.", param, ctx)
        return tuple(dict.fromkeys(given))

    def get_metavar(self, param: click.Parameter, ctx: click.Context | None = None) -> str:
        """What the help shows for the value."""
        return f"[{'|'.join(self.words)}]"

    def shell_complete(self, ctx: click.Context, param: click.Parameter, incomplete: str) -> list[Any]:
        """The words that begin so, for the shell."""
        from click.shell_completion import CompletionItem

        before, comma, last = incomplete.rpartition(",")
        return [CompletionItem(before + comma + word) for word in self.words if word.startswith(last)]


Decorated = Callable[..., Any]


def shelf_option(command: Decorated) -> Decorated:
    """`--shelf FOLDER`, repeatable."""
    return click.option(
        "--shelf", "shelves", multiple=True, metavar="FOLDER", type=click.Path(file_okay=False, exists=True),
        help="A folder of blocks that 'use' may find, after the file's own. Repeatable. "
             f"{SHELVES} adds more.")(command)


def out_option(command: Decorated) -> Decorated:
    """`--out FOLDER`."""
    return click.option("--out", default=".", metavar="FOLDER", type=click.Path(),
                        help="Where the files go; made if need be.  [default: where you are]")(command)


def block_option(command: Decorated) -> Decorated:
    """`--block TITLE`, repeatable."""
    return click.option("--block", "titles", multiple=True, metavar="TITLE",
                        help="Only the block of this title. Repeatable.")(command)


def dpi_option(default: int) -> Callable[[Decorated], Decorated]:
    """`--dpi NUMBER`."""
    return click.option("--dpi", default=default, show_default=True, type=click.IntRange(36, 1200),
                        metavar="NUMBER", help="Dots to the inch of a PNG.")


def open_shelf(given: tuple[str, ...]) -> FolderShelf:
    """The folders given, those of the environment, then the library that ships."""
    more = [each for each in os.environ.get(SHELVES, "").split(os.pathsep) if each]
    folders = dict.fromkeys(Path(each) for each in (*given, *more))
    return FolderShelf(folders, library=library_folder())
