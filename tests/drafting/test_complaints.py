"""Every complaint of drafting, at the right words: a file of tests/diagnostics for each code."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest
from piecewright.diagnostics.source import Source
from support.check import FILE, draft_text
from support.expectations import actual, annotated, check_facts, expected, stripped

FOLDER = Path(__file__).parent.parent / "diagnostics"
FIXTURES = sorted(FOLDER.glob("*.block"))
BESIDE = {path.stem: path.read_text() for path in sorted((FOLDER / "beside").glob("*.block"))}
COMPLAINTS = Path(__file__).parent.parent.parent / "compiler" / "words" / "messages"


def drafting_codes() -> list[str]:
    """Every code written in drafting's complaints."""
    found = []
    for name in ("blocks", "pieces", "points", "seams", "units", "washed"):
        path = COMPLAINTS / f"{name}.py"
        for call in ast.walk(ast.parse(path.read_text())):
            if (
                isinstance(call, ast.Call)
                and isinstance(call.func, ast.Name)
                and (call.func.id in ("error", "warning", "note"))
            ):
                found += [
                    each.value
                    for each in ast.walk(call.args[0])
                    if isinstance(each, ast.Constant) and isinstance(each.value, str)
                ]
    return found


@pytest.mark.parametrize("path", FIXTURES, ids=lambda path: path.stem)
def test_says_this_at_these_words_and_nothing_else(path: Path, request: pytest.FixtureRequest) -> None:
    text = path.read_text()
    outcome = draft_text(stripped(text), **BESIDE)
    said_here = [each for each in outcome.diagnostics if each.primary.span.source == FILE]
    source = Source(FILE, stripped(text))
    if request.config.getoption("--update"):
        path.write_text(annotated(source, said_here))
        text = path.read_text()
    assert expected(text) == actual(source, said_here)
    assert not check_facts(text, outcome.value or ())


@pytest.mark.parametrize("path", FIXTURES, ids=lambda path: path.stem)
def test_comments_move_nothing(path: Path) -> None:
    """The file as it stands on disk, comments and all, gives the same complaints as without them."""
    text = path.read_text()
    with_comments = draft_text(text, **BESIDE).diagnostics
    without = draft_text(stripped(text), **BESIDE).diagnostics
    assert [(each.code, each.message, each.help) for each in with_comments] == [
        (each.code, each.message, each.help) for each in without
    ]


def test_every_code_has_a_fixture_and_none_is_an_orphan() -> None:
    codes = drafting_codes()
    assert codes, f"no complaints were found in {COMPLAINTS}"
    names = {path.stem for path in FIXTURES}
    assert not set(codes) - names
    for path in FIXTURES:
        said = [each.words for each in expected(path.read_text())]
        assert any(f"[{path.stem}]" in each for each in said), f"{path.name} does not show its own code"


@pytest.mark.parametrize("path", FIXTURES, ids=lambda path: path.stem)
def test_messages_are_sentences_of_the_trade(path: Path) -> None:
    """One sentence with a full stop, no insides of the compiler, no blame (EXEMPLARS, wording)."""
    for each in draft_text(path.read_text(), **BESIDE).diagnostics:
        assert each.message.endswith((".", "?")) and len(each.message) <= 150
        for word in ("token", "node", "polygon", "invalid", "illegal", "None", "Fraction", "!"):
            assert word not in each.message.split() and word not in each.help.split(), each.message
