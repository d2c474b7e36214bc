"""The kinds of value that options take, and the options that several commands share."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable
from fractions import Fraction
from functools import partial
from typing import TYPE_CHECKING, Any, Final, TypeVar

import click

from ..door.choices import LONGEST, RULERS, length_of, margin_of, ruler_step
from ..door.compiling import open_shelves
from ..failures import WrongUse

if TYPE_CHECKING:
    from ..door.compiling import FolderShelf

    ParamKind = click.ParamType[Any]
else:
    ParamKind = click.ParamType  # click before 8.4 knows no kinds of it

Made = TypeVar("Made")

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


def understood(
    kind: ParamKind,
    reads: Callable[..., Made],
    value: str,
    param: click.Parameter | None,
    ctx: click.Context | None,
    *more: str,
) -> Made:
    """A value read from its words, or a use error that says how it is written."""
    try:
        return reads(value, *more)
    except WrongUse as problem:
        kind.fail(str(problem), param, ctx)


class LengthChoice(ParamKind):
    """A length with its unit: `0.97in`, `15/16in`, `2.46cm`. Gives an exact Fraction of an inch."""

    name = "length"

    def __init__(self, examples: str = "0.97in or 2.46cm") -> None:
        self.examples = examples

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Fraction:
        """The length in inches, or a use error that names the units."""
        if isinstance(value, Fraction):
            return value
        return understood(self, length_of, value, param, ctx, self.examples)


class RulerChoice(ParamKind):
    """The step between a ruler's marks, one of RULERS. Gives an exact Fraction of an inch."""

    name = "ruler"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Fraction:
        """The step in inches, or a use error that lists those there are."""
        if isinstance(value, Fraction):
            return value
        return understood(self, ruler_step, value, param, ctx)

    def get_metavar(self, param: click.Parameter, ctx: click.Context | None = None) -> str:
        """What the help shows for the value."""
        return f"[{'|'.join(RULERS)}]"

    def shell_complete(self, ctx: click.Context, param: click.Parameter, incomplete: str) -> list[Any]:
        """The steps that begin so, for the shell."""
        from click.shell_completion import CompletionItem

        return [CompletionItem(each) for each in RULERS if each.startswith(incomplete)]


class MarginChoice(ParamKind):
    """Cloth over what the plan takes: a share such as `5%`, or a length as `3in`. Gives (share, inches)."""

    name = "margin"

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[Fraction, Fraction]:
        """The share of the length and the least length, one of them 0; a use error where it is neither."""
        if isinstance(value, tuple):
            return value
        return understood(self, margin_of, value, param, ctx)


class ListChoice(ParamKind):
    """One or more of a few words, parted by commas. Gives a tuple, each word once."""

    name = "list"

    def __init__(self, words: tuple[str, ...]) -> None:
        self.words = words

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[str, ...]:
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


def each_once(given: Iterable[Iterable[str]]) -> tuple[str, ...]:
    """The words of a list option that may be repeated, in the order given."""
    return tuple(dict.fromkeys(word for each in given for word in each))


Decorated = Callable[..., Any]


def shelf_option(command: Decorated) -> Decorated:
    """`--shelf FOLDER`, repeatable."""
    return click.option(
        "--shelf",
        "shelves",
        multiple=True,
        metavar="FOLDER",
        type=click.Path(file_okay=False, exists=True),
        help="A folder of blocks that 'use' may find, after the file's own. Repeatable. "
        f"{SHELVES} adds more.",
    )(command)


def out_option(command: Decorated) -> Decorated:
    """`--out FOLDER`."""
    return click.option(
        "--out",
        default=".",
        metavar="FOLDER",
        type=click.Path(),
        help="Where the files go; made if need be.  [default: where you are]",
    )(command)


def block_option(command: Decorated) -> Decorated:
    """`--block TITLE`, repeatable."""
    return click.option(
        "--block", "titles", multiple=True, metavar="TITLE", help="Only the block of this title. Repeatable."
    )(command)


def dpi_option(default: int) -> Callable[[Decorated], Decorated]:
    """`--dpi NUMBER`."""
    return click.option(
        "--dpi",
        default=default,
        show_default=True,
        type=click.IntRange(36, 1200),
        metavar="NUMBER",
        help="Dots to the inch of a PNG.",
    )


def cutting_options(command: Decorated) -> Decorated:
    """`--ruler`, `--margin` and `--buy`."""
    for option in (
        click.option(
            "--buy",
            type=click.Choice(["yards", "metres"], case_sensitive=False),
            help="Say what to buy in eighths of a yard or in tenths of a metre.  [default: as the ruler]",
        ),
        click.option(
            "--margin",
            type=MarginChoice(),
            metavar="SHARE|LENGTH",
            help="Cloth to buy over what the cutting plan takes: 10%, 4in, or 0in for none.  "
            "[default: 5%, at least 1in]",
        ),
        click.option(
            "--ruler",
            type=RulerChoice(),
            default="1/8in",
            show_default=True,
            help="What the marks on your ruler are apart. Quilts are cut to them.",
        ),
    ):
        command = option(command)
    return command


def open_shelf(given: tuple[str, ...]) -> FolderShelf:
    """The folders given, those of the environment, then the library that ships."""
    more = [each for each in os.environ.get(SHELVES, "").split(os.pathsep) if each]
    return open_shelves((*given, *more))
