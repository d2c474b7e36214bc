"""The options of booklets."""

from __future__ import annotations

from typing import Any

import click

from ..door.choices import WAYS, sewing_way
from ..door.formats import of_books
from .choices import Decorated, ParamKind, understood


class SewChoice(ParamKind):
    """A way of sewing, for all blocks or one: `foundation`, `Log Cabin=foundation`. Gives (title, way)."""

    name = "sew"

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[str, str]:
        """The block's title, '' for all, and the way; a use error that lists the ways there are."""
        if isinstance(value, tuple):
            return value
        return understood(self, sewing_way, value, param, ctx)

    def get_metavar(self, param: click.Parameter, ctx: click.Context | None = None) -> str:
        """What the help shows for the value."""
        return f"[TITLE=]{'|'.join(WAYS)}"


def booklet_options(command: Decorated) -> Decorated:
    """`--booklet` and `--sew`."""
    for option in (
        click.option(
            "--sew",
            "ways",
            multiple=True,
            type=SewChoice(),
            help="How blocks are sewn, in a booklet or its parts: with templates and ruler, on "
            "foundations, or over paper pieces by hand. A quilt's cloth is cut for it. For one "
            "block: 'Log Cabin=foundation'. Repeatable.  "
            "[default: templates]",
        ),
        click.option(
            "--booklet",
            is_flag=True,
            help="A booklet for a class: what you need, cutting, templates or foundations, steps in "
            "pictures, a drafting exercise, a storage card. '--format pdf,html' makes it a "
            "page for phones, too.",
        ),
    ):
        command = option(command)
    return command


def refuse_format(formats: tuple[str, ...], booklet: bool) -> None:
    """A use error where a format of booklets is asked for and no booklet."""
    for kind in filter(of_books, () if booklet else formats):
        raise click.UsageError(f"--format {kind} is for booklets: add --booklet.")


def refuse_ways(ways: tuple[tuple[str, str], ...], booklet: bool, parts: tuple[str, ...]) -> None:
    """A use error where a way of sewing is given and neither a booklet nor a part of one is wanted: sheets
    of templates are for sewing with templates."""
    if ways and not booklet and not parts:
        raise click.UsageError("--sew is for booklets and their parts: add --booklet or --parts.")
