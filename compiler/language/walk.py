"""Every node of a tree, found by its fields, so that a new kind of statement needs no entry here."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from typing import Any

from . import tree


def nodes_in(whole: tree.Node) -> Iterator[tree.Node]:
    """The node and all that stand in it, in the order in which they are written."""
    waiting: list[tree.Node] = [whole]
    while waiting:
        node = waiting.pop()
        yield node
        inner = [child for part in fields(node) for child in _children(getattr(node, part.name))]
        inner.sort(key=lambda child: child.span.start)
        waiting.extend(reversed(inner))


def statements_in(whole: tree.Node) -> Iterator[tree.Node]:
    """The node's statements, and those in their bodies: of a file, its blocks and quilts too."""
    for node in nodes_in(whole):
        if isinstance(node, tree.File):
            yield from (*node.blocks, *node.quilts)
        yield from getattr(node, "body", ())


def _children(value: Any) -> list[tree.Node]:
    """The nodes among a field's values."""
    if isinstance(value, tree.Node):
        return [value]
    return [each for each in value if isinstance(each, tree.Node)] if isinstance(value, tuple) else []
