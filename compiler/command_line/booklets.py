"""The options of booklets."""

from __future__ import annotations

from typing import Final

import click

from ..door.choices import WAYS, sewing_way
from ..door.formats import of_books
from ..words.commands import options
from .choices import Value, together

booklet_options: Final = together(
    click.option("--booklet", is_flag=True, help=options.BOOKLET),
    click.option(
        "--sew",
        "ways",
        multiple=True,
        type=Value("sew", sewing_way),
        metavar=f"[TITLE=]{'|'.join(WAYS)}",
        help=options.SEW,
    ),
)


def refuse_without_booklet(
    formats: tuple[str, ...], ways: tuple[tuple[str, str], ...], booklet: bool, parts: tuple[str, ...]
) -> None:
    """A use error where a format of booklets is asked for and no booklet; or a way of sewing, and neither a
    booklet nor a part of one: sheets of templates are for sewing with templates."""
    for kind in filter(of_books, () if booklet else formats):
        raise click.UsageError(options.format_without_booklet(kind))
    if ways and not booklet and not parts:
        raise click.UsageError(options.way_without_booklet())
