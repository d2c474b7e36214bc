"""The kinds of value that options take, and the options that several commands share."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Sequence
from functools import partial
from typing import TYPE_CHECKING, Any, Final

import click

from ..door.choices import (
    DPI_LEAST,
    DPI_MOST,
    LONGEST,
    PAPERS,
    RULERS,
    SOLD,
    length_of,
    margin_of,
    ruler_step,
)
from ..door.compiling import open_shelves
from ..door.settings import Settings
from ..failures import WrongUse
from ..words.commands import asked, options

if TYPE_CHECKING:
    from ..door.compiling import FolderShelf

    ParamKind = click.ParamType[Any]
else:
    ParamKind = click.ParamType  # click before 8.4 knows no kinds of it

SHELVES: Final = "PIECEWRIGHT_SHELVES"  # folders of shelves, parted as the system parts folders in PATH


class Command(click.Command):
    """A command whose caller is told what there is instead of what was asked for."""

    def invoke(self, ctx: click.Context) -> Any:
        """The command's own result; a use error where something asked for is not there."""
        try:
            return super().invoke(ctx)
        except WrongUse as problem:
            raise click.UsageError(str(problem), ctx) from problem


command = partial(click.command, cls=Command)
Decorated = Callable[..., Any]


class Value(ParamKind):
    """A kind of value that the door reads from words. `known`: all there are of it, where they are few."""

    def __init__(self, name: str, reads: Callable[[str], Any], known: Sequence[str] = ()) -> None:
        self.name, self.reads, self.known = name, reads, known

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        """What the door makes of the words, or a use error that says how it is written."""
        if not isinstance(value, str):
            return value
        try:
            return self.reads(value)
        except WrongUse as problem:
            self.fail(str(problem), param, ctx)

    def get_metavar(self, param: click.Parameter, ctx: click.Context | None = None) -> str | None:
        """What the help shows for the value, where the option does not say it."""
        return f"[{'|'.join(self.known)}]"

    def shell_complete(self, ctx: click.Context, param: click.Parameter, incomplete: str) -> list[Any]:
        """The words that begin so, for the shell."""
        from click.shell_completion import CompletionItem

        return [CompletionItem(each) for each in self.known if each.startswith(incomplete)]


class ListChoice(Value):
    """One or more of a few words, parted by commas. Gives a tuple, each word once, in the order given."""

    def __init__(self, words: tuple[str, ...]) -> None:
        super().__init__("list", self.words_of, words)

    def words_of(self, value: str) -> tuple[str, ...]:
        """The words; WrongUse for one that there is not."""
        given = [word.strip().lower() for word in value.split(",")]
        for word in given:
            if word not in self.known:
                raise WrongUse(asked.not_one_of(word[:LONGEST], self.known))
        return tuple(dict.fromkeys(given))

    def shell_complete(self, ctx: click.Context, param: click.Parameter, incomplete: str) -> list[Any]:
        """The words that the last one begins so, for the shell."""
        from click.shell_completion import CompletionItem

        before, comma, last = incomplete.rpartition(",")
        return [CompletionItem(before + comma + word) for word in self.known if word.startswith(last)]


LENGTH: Final = Value("length", length_of)
RULER: Final = Value("ruler", ruler_step, RULERS)
MARGIN: Final = Value("margin", margin_of)


def each_once(given: Iterable[Iterable[str]]) -> tuple[str, ...]:
    """The words of a list option that may be repeated, in the order given."""
    return tuple(dict.fromkeys(word for each in given for word in each))


def few(known: Sequence[str]) -> click.Choice[Any]:
    """One of a few words, in capitals or not."""
    return click.Choice(known, case_sensitive=False)


def together(*options: Callable[[Decorated], Decorated]) -> Callable[[Decorated], Decorated]:
    """Several options at once, the first of them first in the help."""

    def decorated(command: Decorated) -> Decorated:
        for each in reversed(options):
            command = each(command)
        return command

    return decorated


shelf_option: Final = click.option(
    "--shelf",
    "shelves",
    multiple=True,
    metavar="FOLDER",
    type=click.Path(file_okay=False, exists=True),
    help=options.shelf(SHELVES),
)
out_option: Final = click.option("--out", default=".", metavar="FOLDER", type=click.Path(), help=options.OUT)
block_option: Final = click.option("--block", "titles", multiple=True, metavar="TITLE", help=options.BLOCK)
ruler_option: Final = partial(click.option, "--ruler", type=RULER, default=RULERS[0], show_default=True)
paper_option: Final = partial(click.option, "--paper", type=few(PAPERS), default=PAPERS[0], show_default=True)
cutting_options: Final = together(
    ruler_option(help=options.RULER),
    click.option("--margin", type=MARGIN, metavar="SHARE|LENGTH", help=options.MARGIN),
    click.option("--buy", type=few(SOLD), help=options.BUY),
)
out_file_option: Final = partial(click.option, "--out", metavar="FILE", type=click.Path(dir_okay=False))
files_argument: Final = click.argument(
    "files", nargs=-1, required=True, metavar="FILE|FOLDER...", type=click.Path(allow_dash=True)
)
file_argument: Final = click.argument("file", metavar="FILE", type=click.Path(allow_dash=True))


def dpi_option(default: int) -> Callable[[Decorated], Decorated]:
    """`--dpi NUMBER`."""
    return click.option(
        "--dpi",
        default=default,
        show_default=True,
        type=click.IntRange(DPI_LEAST, DPI_MOST),
        metavar="NUMBER",
        help=options.DPI,
    )


def form_option(default: str, *others: str, help: str) -> Callable[[Decorated], Decorated]:
    """`--format`, one of a few forms in which a command tells what it has to tell."""
    forms = click.Choice([default, *others])
    return click.option("--format", "form", type=forms, default=default, show_default=True, help=help)


def open_shelf(given: tuple[str, ...]) -> FolderShelf:
    """The folders given, those of the folder's settings, those of the environment, then the library that
    ships."""
    more = [each for each in os.environ.get(SHELVES, "").split(os.pathsep) if each]
    return open_shelves((*given, *settings().shelves, *more))


def settings() -> Settings:
    """The settings of the folder that the command was given in."""
    return click.get_current_context().find_object(Settings) or Settings()
