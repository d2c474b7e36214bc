"""The options of booklets."""

from __future__ import annotations

from typing import Final

import click

from ..door.choices import WAYS, sewing_way
from ..door.documents import HTML
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
    """A use error where HTML is asked for and no booklet; or a way of sewing, and neither a booklet nor a
    part of one: sheets of templates are for sewing with templates."""
    if HTML in formats and not booklet:
        raise click.UsageError(options.html_without_booklet())
    if ways and not booklet and not parts:
        raise click.UsageError(options.way_without_booklet())
