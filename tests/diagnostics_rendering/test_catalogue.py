"""The catalogue and the program know the same codes, and every example does what its entry says."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import piecewright
import pytest
from piecewright.words.catalogue.codes import Entry, catalogue, entries_of
from support.said import linted, said_of

HOME = Path(piecewright.__file__).parent
MAKERS = ("error", "warning", "note", "Diagnostic")
CODE = re.compile(r"[a-z]+(-[a-z]+)+")
ENTRIES = tuple(catalogue().values())


def constants(node: ast.expr) -> Iterator[str]:
    """Every code that an expression may come to: `"a" if ... else "b"` comes to two."""
    for each in ast.walk(node):
        if isinstance(each, ast.Constant) and isinstance(each.value, str):
            yield each.value


def codes_in(path: Path) -> Iterator[str]:
    """Every code that a module makes diagnostics of, read from its own text.

    A code in a variable is found where the variable is given its value in that module, or, where it is the
    first parameter of a function, at that function's callers.
    """
    tree = ast.parse(path.read_text(encoding="utf-8"))
    makers = set(MAKERS)
    for function in (each for each in ast.walk(tree) if isinstance(each, ast.FunctionDef)):
        if function.args.args and function.args.args[0].arg == "code":
            makers.add(function.name)
    given = {
        target.id: each.value
        for each in ast.walk(tree)
        if isinstance(each, ast.Assign)
        for target in each.targets
        if isinstance(target, ast.Name) and target.id == "code"
    }
    for call in (each for each in ast.walk(tree) if isinstance(each, ast.Call)):
        name = call.func.id if isinstance(call.func, ast.Name) else getattr(call.func, "attr", "")
        if name in makers and call.args:
            first = call.args[0]
            value = given.get(first.id, first) if isinstance(first, ast.Name) else first
            yield from (each for each in constants(value) if CODE.fullmatch(each))


def codes_in_program() -> set[str]:
    """Every code of the program."""
    paths = list(HOME.rglob("*.py"))
    assert len(paths) > 50, "the program's own text is there to be read"
    return {code for path in paths if not path.name.startswith("catalogue") for code in codes_in(path)}


def test_every_code_has_an_entry_and_every_entry_a_code() -> None:
    known, listed = codes_in_program(), set(catalogue())
    assert sorted(known - listed) == [], "codes without an entry"
    assert sorted(listed - known) == [], "entries without a code"


@pytest.mark.parametrize("entry", [each for each in ENTRIES if each.wrong], ids=lambda entry: entry.code)
def test_wrong_example_gives_its_code_and_right_example_nothing(entry: Entry) -> None:
    said = linted if entry in entries_of("lint") else said_of
    wrong = [each.code for each in said(entry.wrong)]
    assert entry.code in wrong, wrong
    right = said(entry.right)
    assert right == (), [(each.code, each.message) for each in right]


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: entry.code)
def test_entry_reads_well(entry: Entry) -> None:
    assert CODE.fullmatch(entry.code)
    assert entry.title[0].isupper() or entry.title.startswith("`")
    assert not entry.title.endswith(".") and len(entry.title) <= 70
    assert entry.explanation.endswith((".", "?")) and "  " not in entry.explanation
    assert bool(entry.wrong) == bool(entry.right)
    for word in ("invalid", "illegal", "syntax", "token", "polygon", "!"):
        assert word not in entry.title + entry.explanation


def test_few_entries_have_no_example() -> None:
    without = {each.code for each in ENTRIES if not each.wrong}
    assert without == {
        "file-unreadable",
        "shelf-file-faulty",
        "file-too-large",
        "source-not-text",
        "source-encoding",
        "nesting-too-deep",
        "statements-too-many",
        "words-too-many",
        "blocks-too-many",
        "errors-too-many",
        "pages-too-many",
        "block-too-large",
        "crossings-too-many",
        "use-too-deep",
        "unit-failed",
        "quilt-too-large",
        "fabric-no-width",
        "cloth-short",
        "lock-unreadable",
        "lock-damaged",
        "lock-newer",
        "lock-lacks",
        "lock-drafts-otherwise",
        "lock-disagrees",
        "use-unversioned",
        "scrap-too-small",
        "piece-too-wide",
        "backing-from-scraps",
        "block-does-not-sew",
        "name-shared",
        "manifest-damaged",
        "manifest-key-unknown",
        "block-on-shelf-twice",
        "block-drawn-twice",
        "settings-damaged",
        "setting-unknown",
        "setting-wrong",
        "block-hides-another",
    }
