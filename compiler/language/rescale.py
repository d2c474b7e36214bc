"""A block's text at another size: every drafted length in proportion, every other word as it was.

Seam allowances, trims and dots do not scale: they are the needle's. Shares, grid points and units follow the
size by themselves.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from ..diagnostics.source import Source, Span
from ..measure.length import UNITS
from ..words.numbers import exact_text
from . import tree
from .edits import Edit
from .walk import nodes_in

DECIMALS: Final = 9
"""Of a length that is no fraction (a regular outline's side): a thousandth of what counts as one place."""


def rescaled(source: Source, block: tree.Block, scale: Fraction | float) -> Iterator[Edit]:
    """The edits that draft a block at another size, in the units that the writer used."""
    for statement in block.body:
        kept = _kept(statement)
        for node in nodes_in(statement):
            if isinstance(node, tree.Length) and node.span not in kept:
                yield node.span, _words(source, node, scale)


def renamed(file: tree.File, block: tree.Block, title: str | None, version: int) -> Iterator[Edit]:
    """The edits that give a block of the file another version, and another title where one is given; where
    the file itself uses it, too, if it says which version."""
    known = block.title.text, block.version.value if block.version else 1
    named: list[tree.Block | tree.Use] = [block]
    for each in nodes_in(file):
        if isinstance(each, tree.Use) and each.version and (each.title.text, each.version.value) == known:
            named.append(each)
    for each in named:
        end = Span(each.title.span.source, each.title.span.end, each.title.span.end)
        if title is not None:
            yield each.title.span, _quoted(title)
        if each.version is not None:
            yield each.version.span, str(version)
        elif version != 1:
            yield end, f" version {version}"


def _quoted(title: str) -> str:
    """A title as the language writes it."""
    escaped = title.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def _kept(statement: tree.Node) -> set[Span]:
    """The lengths of a statement that do not scale, by their places."""
    found: list[tree.Length] = []
    for node in nodes_in(statement):
        if isinstance(node, tree.Allowance):
            found.append(node.width)
        elif isinstance(node, tree.Trim):
            found += [each for each in (node.limit, node.dots) if each is not None]
    return {each.span for each in found}


def _words(source: Source, length: tree.Length, scale: Fraction | float) -> str:
    """The scaled length, in the unit it was written in."""
    unit = source.text[length.span.start : length.span.end][-2:]
    scaled = length.inches * scale / UNITS[unit]
    if isinstance(scaled, Fraction):
        return exact_text(scaled) + unit
    return f"{scaled:.{DECIMALS}f}".rstrip("0").rstrip(".") + unit
