"""`piecewright explain`: everything about a file's blocks and quilts, or about one code of a diagnostic."""

from __future__ import annotations

import os
import re
from fractions import Fraction
from typing import TYPE_CHECKING, Any, Final

import click

from ...door.choices import cutting_of
from ...door.explaining import explained
from ...failures import own_mistakes
from ..choices import command, cutting_options, open_shelf, shelf_option
from ..console import CLEAN, say
from ..inputs import DASH, one_input
from ..one_input import compile_alone

if TYPE_CHECKING:
    from ...words.catalogue.codes import Entry

CODE: Final = re.compile(r"[a-z0-9]+(-[a-z0-9]+)+")

EXAMPLES: Final = """
\b
Examples:
  piecewright explain vane.block                  every piece, its template and size
  piecewright explain vane.block --format json    the same for another program
  piecewright explain sampler.quilt               its blocks, every cut, what to buy
  piecewright explain seam-hangs                  what that message means
"""


@command("explain", short_help="Say everything about blocks and quilts, or about a code.", epilog=EXAMPLES)
@click.argument("subject", metavar="FILE|CODE", type=click.Path(allow_dash=True))
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "json"]),
    default="text",
    show_default=True,
    help="A table to read, or JSON.",
)
@cutting_options
@shelf_option
def explain(
    subject: str,
    form: str,
    ruler: Fraction,
    margin: tuple[Fraction, Fraction] | None,
    buy: Any,
    shelves: tuple[str, ...],
) -> int:
    """Say everything about the blocks and quilts in FILE, or what the CODE of a message means.

    For a block: every piece, its template, sizes, angles, how many to cut in what fabric and how, how every
    unit lies, how it is sewn. For a quilt: its blocks, every cut, what to buy, its rows and
    borders. And every default in force. For a code, as in error[seam-hangs]: what it means, with an example
    of each.
    """
    if subject != DASH and not os.path.lexists(subject) and CODE.fullmatch(subject):
        return explain_code(subject, form)
    given = one_input(subject)
    compiled, status = compile_alone(given, open_shelf(shelves), cutting_of(ruler, margin, buy))
    if status != CLEAN:
        return status
    with own_mistakes(given.name):
        text = explained(compiled, form, ruler)
    say(text)
    return CLEAN


def explain_code(code: str, form: str) -> int:
    """The catalogue's entry; a use error with the nearest codes where there is none."""
    from ...words.catalogue.codes import catalogue

    entries = catalogue()
    entry = entries.get(code)
    if entry is None:
        from difflib import get_close_matches

        close = get_close_matches(code, sorted(entries), n=3, cutoff=0.5)
        near = f" Near it are: {', '.join(close)}." if close else ""
        raise click.UsageError(f"There is neither a file nor a code '{code}'.{near}")
    say(entry_json(entry) if form == "json" else entry_text(entry))
    return CLEAN


def entry_text(entry: Entry) -> str:
    """The entry for people."""
    from textwrap import fill, indent

    parts = [f"{entry.code}: {entry.title}", "", fill(entry.explanation, 78)]
    for words, example in (("This is complained of:", entry.wrong), ("This is well:", entry.right)):
        if example:
            parts += ["", words, "", indent(example.rstrip(), "    ")]
    return "\n".join(parts)


def entry_json(entry: Entry) -> str:
    """The entry for programs."""
    from json import dumps

    return dumps(
        {
            "code": entry.code,
            "title": entry.title,
            "explanation": entry.explanation,
            "wrong": entry.wrong,
            "right": entry.right,
        }
    )
