"""How the fabrics of a quilt, or the roles of a block, are drawn: told, so that a guess can be mended."""

from __future__ import annotations

from collections.abc import Mapping

from ...looks.colour import to_hex
from ...words.pages import looks as words
from ..arrange.fills import Fill
from ..content import Chapter, List, Paragraph


def looks(fills: Mapping[str, Fill], titles: Mapping[str, str]) -> Chapter:
    """A line for each fabric; `titles` has what those with a title are called."""
    told = (
        words.look_words(
            titles.get(name, name), to_hex(fill.ground), fill.texture, named=fill.named, stated=fill.stated
        )
        for name, fill in fills.items()
    )
    return Chapter(words.LOOKS, (Paragraph(words.GUESSED), List(tuple(told))))
