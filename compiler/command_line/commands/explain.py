"""`piecewright explain`: everything about a file's blocks and quilts, or about one code of a diagnostic."""

from __future__ import annotations

import os
import re
from dataclasses import asdict
from fractions import Fraction
from typing import Any, Final

import click

from ...door.choices import cutting_of
from ...door.explaining import explained
from ...door.inputs import DASH
from ...failures import own_mistakes
from ...words.commands import explain as words
from ..choices import command, cutting_options, form_option, open_shelf, shelf_option
from ..console import CLEAN, say
from ..inputs import one_input
from ..one_input import compile_alone

CODE: Final = re.compile(r"[a-z0-9]+(-[a-z0-9]+)+")


@command("explain", help=words.HELP, epilog=words.EXAMPLES)
@click.argument("subject", metavar="FILE|CODE", type=click.Path(allow_dash=True))
@form_option("text", "json", help=words.FORMAT)
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
    """The exit status, when everything is told."""
    if subject != DASH and not os.path.lexists(subject) and CODE.fullmatch(subject):
        return explain_code(subject, form)
    shelf, cutting = open_shelf(shelves), cutting_of(ruler, margin, buy)
    given = one_input(subject, shelf)
    compiled, status = compile_alone(given, shelf, cutting)
    if status != CLEAN:
        return status
    with own_mistakes(given.name):
        text = explained(compiled, form, cutting)
    say(text)
    return CLEAN


def explain_code(code: str, form: str) -> int:
    """The catalogue's entry; a use error with the nearest codes where there is none."""
    from ...words.catalogue.codes import catalogue

    entries = catalogue()
    entry = entries.get(code)
    if entry is None:
        from difflib import get_close_matches

        near = get_close_matches(code, sorted(entries), n=3, cutoff=0.5)
        raise click.UsageError(words.code_unknown(code, near))
    if form == "json":
        from json import dumps

        say(dumps(asdict(entry)))
    else:
        say(words.entry_text(entry))
    return CLEAN
