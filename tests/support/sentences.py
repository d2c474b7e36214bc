"""Sentences in a module's own text: what a person would read, found without running anything."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

HOLE = "\N{OBJECT REPLACEMENT CHARACTER}"  # stands for what an f-string puts in
WORD = re.compile(r"[(\"'`“]*[A-Za-z][A-Za-z’'-]+[.,;:!?)\"'`”]*")
MARKUP = re.compile(r"<style.*?</style>|<script.*?</script>|<[^>]*>|\{%.*?%\}|\{\{.*?\}\}|\{#.*?#\}", re.S)
PATTERNS = ("compile", "match", "search", "fullmatch", "findall", "finditer", "sub", "split")


def sentences_in(path: Path) -> Iterator[tuple[int, str]]:
    """Every string with two words or more that a blank parts, with its line. None of them is a docstring, the
    words of an assertion, a regular expression or a type."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    passed = set(_not_words(tree))
    for node in ast.walk(tree):
        if id(node) in passed:
            continue
        if isinstance(node, ast.JoinedStr):
            passed.update(id(each) for each in node.values)
            text = "".join(
                str(each.value) if isinstance(each, ast.Constant) else HOLE for each in node.values
            )
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            text = node.value
        else:
            continue
        if is_sentence(text):
            yield node.lineno, text


def is_sentence(text: str) -> bool:
    """Whether a text has two words or more; tags, templates' own signs and styles are none."""
    return sum(WORD.fullmatch(each) is not None for each in MARKUP.sub(" ", text).split()) > 1


def _not_words(tree: ast.AST) -> Iterator[int]:
    """Every node that no person reads, and what is in it."""
    for node in ast.walk(tree):
        inner: list[ast.AST | None] = []
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            inner = [node.value]
        elif isinstance(node, ast.Assert):
            inner = [node.msg]
        elif isinstance(node, ast.AnnAssign):
            inner = [node.annotation]
        elif isinstance(node, ast.Call):
            called = ast.unparse(node.func)
            if (called.startswith("re.") and called.removeprefix("re.") in PATTERNS) or called == "cast":
                inner = [node.args[0]]
            elif called == "AssertionError":
                inner = [*node.args]
        for each in inner:
            if each is not None:
                yield from (id(within) for within in ast.walk(each))
