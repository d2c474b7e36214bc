"""Numbers are put into words in compiler/words, by a `Say`: nobody else has the means to."""

from __future__ import annotations

import ast
import re
from pathlib import Path
from typing import Final

COMPILER: Final = Path(__file__).parent.parent.parent / "compiler"
LEFT: Final = Path(__file__).with_name("numbers_left.txt")
"""Modules that still put numbers into words themselves. A module only goes from the list."""

MEANS: Final = ("words.numbers", "words.rulers")

WRITERS: Final = {"language/rescale.py", "drafting/washed/model.py", "drafting/washed/written.py"}
"""They write the language's own text, in which a length is a number and a unit whoever reads it."""


def imported(path: Path) -> set[str]:
    """The compiler's modules that a module imports, without the compiler's own name: `words.numbers`."""
    package = path.relative_to(COMPILER).parts[:-1]
    found = set()
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Import):
            found |= {each.name.partition(".")[2] for each in node.names}
        elif isinstance(node, ast.ImportFrom):
            above = package[: len(package) + 1 - node.level] if node.level else ()
            told = (node.module or "").split(".")[0 if node.level else 1 :]
            base = ".".join((*above, *filter(None, told)))
            found |= {base, *(f"{base}.{each.name}" for each in node.names)}
    return found


def test_only_words_put_numbers_into_words() -> None:
    users = {
        path.relative_to(COMPILER).as_posix()
        for path in COMPILER.rglob("*.py")
        if imported(path).intersection(MEANS)
    }
    outside = {each for each in users if not each.startswith("words/")}
    assert outside >= WRITERS, "a writer of the language that is none"
    left = set(LEFT.read_text().split())
    assert not outside - WRITERS - left, "take a Say, and put the number into words in compiler/words"
    assert not left - outside, "it does not any more: take it from the list"
    assert "words/say.py" in users


UNIT: Final = re.compile(r" ?(?:in|cm|mm|yd|m|°|sq in|sq cm)(?:$|[^\w])")
UNIT_WRITERS: Final = WRITERS | {"language/mend_quilts.py"}


def units_written(path: Path) -> list[tuple[int, str]]:
    """Where a module sets a unit behind a number that it puts into a text: its line, and what follows the
    number. What an assertion of ours says is for us alone."""
    found = []
    tree = ast.parse(path.read_text())
    ours = {id(each) for node in ast.walk(tree) if isinstance(node, ast.Assert) for each in ast.walk(node)}
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr) and id(node) not in ours:
            for number, after in zip(node.values, node.values[1:], strict=False):
                told = isinstance(number, ast.FormattedValue) and isinstance(after, ast.Constant)
                if told and UNIT.match(str(after.value)):
                    found.append((node.lineno, str(after.value)))
    return found


def test_nobody_else_sets_a_unit_behind_a_number() -> None:
    found = {
        name: lines
        for path in sorted(COMPILER.rglob("*.py"))
        if not (name := path.relative_to(COMPILER).as_posix()).startswith("words/")
        and name not in UNIT_WRITERS
        and (lines := units_written(path))
    }
    assert found == {}
