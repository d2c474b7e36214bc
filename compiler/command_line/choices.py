"""The kinds of value that options take, and the options that several commands share."""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterable
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

import click

from ..measure.length import UNITS, exact_number
from .shelves.folders import FolderShelf, library_folder

if TYPE_CHECKING:
    from ..planning import Cutting

    ParamKind = click.ParamType[Any]
else:
    ParamKind = click.ParamType  # click before 8.4 knows no kinds of it

SHELVES: Final = "PIECEWRIGHT_SHELVES"  # folders of shelves, parted as the system parts folders in PATH

LENGTH: Final = re.compile(r"\s*(\d+(?:\.\d+)?|\d+/\d+|\d+ \d+/\d+)\s*(in|cm|mm)\s*")
SHARE: Final = re.compile(r"\s*(\d+(?:\.\d+)?|\d+/\d+|\d+ \d+/\d+)\s*%\s*")
RULERS: Final = ("1/8in", "1/16in", "1/4in", "0.25cm")  # what rulers for rotary cutters are marked in
MOST_SHARE: Final = Fraction(1)  # of a margin: more than twice the cloth is no margin
MOST_MARGIN: Final = Fraction(72)  # inches: two yards
LONGEST: Final = 40  # letters of a length: more is no length that a person means


class LengthChoice(ParamKind):
    """A length with its unit: `0.97in`, `15/16in`, `2.46cm`. Gives an exact Fraction of an inch."""

    name = "length"

    def __init__(self, examples: str = "0.97in or 2.46cm") -> None:
        self.examples = examples

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Fraction:
        """The length in inches, or a use error that names the units."""
        if isinstance(value, Fraction):
            return value
        found = LENGTH.fullmatch(value) if len(value) <= LONGEST else None
        number = exact_number(found[1]) if found else None
        if found is None or number is None:
            self.fail(
                f"'{value[:LONGEST]}' is not a length. Write it with its unit: {self.examples}.", param, ctx
            )
        return number * UNITS[found[2]]


class RulerChoice(ParamKind):
    """The step between a ruler's marks, one of RULERS. Gives an exact Fraction of an inch."""

    name = "ruler"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Fraction:
        """The step in inches, or a use error that lists those there are."""
        if isinstance(value, Fraction):
            return value
        step = LengthChoice().convert(value, param, ctx)
        if step not in (LengthChoice().convert(each, param, ctx) for each in RULERS):
            self.fail(f"'{value[:LONGEST]}' is not one of {', '.join(RULERS)}.", param, ctx)
        return step

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
        found = SHARE.fullmatch(value) if len(value) <= LONGEST else None
        number = exact_number(found[1]) if found else None
        share, least = Fraction(0), Fraction(0)
        if number is not None:
            share = number / 100
        else:
            least = LengthChoice("5% or 3in").convert(value, param, ctx)
        if share > MOST_SHARE or least > MOST_MARGIN:
            self.fail("A margin is at most 100%, or 72in.", param, ctx)
        return share, least


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


def cutting_of(ruler: Fraction, margin: tuple[Fraction, Fraction] | None, buy: Any) -> Cutting:
    """What those three options come to."""
    from ..cutting.plans.yardage import Margin
    from ..planning import Cutting

    return Cutting(ruler, Margin(*margin, sold=buy) if margin else Margin(sold=buy))


def open_shelf(given: tuple[str, ...]) -> FolderShelf:
    """The folders given, those of the environment, then the library that ships."""
    more = [each for each in os.environ.get(SHELVES, "").split(os.pathsep) if each]
    folders = dict.fromkeys(Path(each) for each in (*given, *more))
    return FolderShelf(folders, library=library_folder())
