"""What is said of a text with a mistake, and the text when it is mended."""

from __future__ import annotations

from typing import NamedTuple

from piecewright.diagnostics.source import Source
from piecewright.language.parser import parse
from support.programs import parse_text


class Told(NamedTuple):
    """What was said: line and column, code, the words pointed at, message and help."""

    place: tuple[int, int]
    code: str
    words: str
    text: str


def told(text: str) -> list[Told]:
    """All that is said of a text."""
    source = Source("block.block", text)
    return [
        Told(
            source.place(each.primary.span.start),
            each.code,
            source.words(each.primary.span),
            f"{each.message} {each.help}",
        )
        for each in parse(source).diagnostics
    ]


def mended(text: str) -> str:
    """The text with every offered mend applied, the last first."""
    for each in sorted(parse_text(text).diagnostics, key=lambda said: -said.primary.span.start):
        assert each.fix is not None, each
        text = text[: each.fix.span.start] + each.fix.text + text[each.fix.span.end :]
    return text
