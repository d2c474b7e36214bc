"""Words with letters that the sheets cannot print: told at the words, with what is printed instead."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Source
from ..language import tree
from ..language.parser import parse
from ..language.walk import nodes_in
from ..words.messages.sheets import letter_missing
from .drawing.lettering import SUBSTITUTE, lost_letters, printable
from .drawing.typeface import MachineLacks

TEXTS_TOLD: Final = 40  # of one file: a file in another script would say the same of every line


def missing_letters(source: Source) -> tuple[Diagnostic, ...]:
    """A warning for each quoted text of a file that has letters which the faces lack. The title after `use`
    is another block's, and is told where that is written. Nothing on a machine that has no faces."""
    if source.text.isascii():
        return ()
    try:
        if not any(map(lost_letters, set(source.text))):
            return ()
        file = parse(source).value
        found = [] if file is None else list(_texts(file))
        return tuple(_missing(text, lost) for text in found if (lost := lost_letters(text.text)))[:TEXTS_TOLD]
    except MachineLacks:
        return ()


def _texts(file: tree.File) -> Iterator[tree.Text]:
    used = {node.title.span for node in nodes_in(file) if isinstance(node, tree.Use)}
    yield from (node for node in nodes_in(file) if isinstance(node, tree.Text) and node.span not in used)


def _missing(text: tree.Text, lost: tuple[str, ...]) -> Diagnostic:
    """What is said of one text."""
    printed = " ".join(printable(text.text).split())
    return letter_missing(text.span, lost, printed, SUBSTITUTE)
