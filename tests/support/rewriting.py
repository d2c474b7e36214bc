"""One block file written in other words: what a rewrite may change, and the draft may not."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from random import Random
from typing import Final

from piecewright.diagnostics.source import Source
from piecewright.language import tree
from piecewright.language.parser import parse
from piecewright.language.tokens import END, scan
from piecewright.language.walk import nodes_in
from piecewright.measure.length import UNITS, exact_number


def rewritten(source: Source, chance: Random) -> Source:
    """The same block in other words: names, units, remarks, order of statements, each by chance."""
    file = parse(source).value
    assert file is not None
    names = _new_names(file, chance)
    words = []
    for token in scan(source).tokens:
        if token.type == END:
            break
        text = names.get(token.text, token.text) if token.type == "NAME" else token.text
        if token.type == "LENGTH" and chance.random() < 0.5:
            text = _other_unit(text, chance.choice(("cm", "mm", "in")))
        words.append(text + chance.choice((" ", "\n", "  # changed nothing\n")))
    again = Source(source.name, "".join(words))
    return _shuffled(again, chance)


def _new_names(file: tree.File, chance: Random) -> dict[str, str]:
    """Other names for points and pieces."""
    roles = {role.text for node in nodes_in(file) if isinstance(node, tree.PieceDef) for role in node.roles}
    known = dict.fromkeys(
        node.name.text for node in nodes_in(file) if isinstance(node, tree.PointDef | tree.PieceDef)
    )
    kept = roles | {node.alias.text for node in nodes_in(file) if isinstance(node, tree.Use)}
    kept |= {*SOFT} | {node.role.text for node in nodes_in(file) if isinstance(node, tree.PlainCell)}
    return {
        name: f"{chance.choice('abcdz')}-new-{number}"
        for number, name in enumerate(known)
        if name not in kept and chance.random() < 0.7
    }


SOFT: Final = (
    "top",
    "right",
    "bottom",
    "left",
    "center",
    "x",
    "free",
    "along",
    "radius",
    "side",
    "none",
    "matched",
    "square",
    "version",
    "parallel",
    "circle",
    "stretched",
    "dots",
    "butted",
)


def _other_unit(text: str, unit: str) -> str:
    """A length in another unit, exactly."""
    spelled = text[-2:]
    number = exact_number(text[:-2].strip())
    assert number is not None
    return f"{_spelled(number * UNITS[spelled] / UNITS[unit])}{unit}"


def _spelled(number: Fraction) -> str:
    whole, part = divmod(number, 1)
    if not part:
        return str(whole)
    return f"{whole} {part}" if whole else str(part)


def _shuffled(source: Source, chance: Random) -> Source:
    """The statements of each block in another order; rows fill the grid, so they keep theirs."""
    file = parse(source).value
    assert file is not None, source.text
    text = source.text
    for block in reversed(file.blocks):
        moved = _moved(block.body, chance)
        parts = [source.words(each.span) for each in moved]
        text = text[: block.body[0].span.start] + "\n".join(parts) + "\n" + text[block.body[-1].span.end :]
    return Source(source.name, text)


def _moved(body: Sequence[tree.Statement], chance: Random) -> list[tree.Statement]:
    others = [each for each in body if not isinstance(each, tree.Row)]
    chance.shuffle(others)
    rows = [each for each in body if isinstance(each, tree.Row)]
    for row in rows:
        others.insert(len(others), row)
    return others
