"""A message is worded for its reader: in centimetres it says the same of the same words, and no inch."""

from __future__ import annotations

import ast
import pickle
import re
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import Final

import piecewright
import pytest
from piecewright.diagnostics.diagnostic import Diagnostic
from piecewright.diagnostics.source import Span
from piecewright.words.catalogue.codes import Entry, catalogue, entries_of
from piecewright.words.messages.values import length_too_large, length_too_small
from piecewright.words.say import CENTIMETRES, INCHES
from support.check import draft_text
from support.expectations import stripped
from support.said import linted, said_of

MESSAGES: Final = Path(piecewright.__file__).parent / "words" / "messages"

QUOTED: Final = re.compile(r"`[^`]*`|\"[^\"]*\"|\u201c[^\u201d]*\u201d")
INCH: Final = re.compile(r"(?<!version )\b[\d/.]+ ?(?:in|inch|inches)\b")
OWN_INCHES: Final = ("unit-eaten",)
"""Codes of what is said of the writer's own inches: `2 in` reads as 2 inches."""

FIXTURES: Final = sorted((Path(__file__).parent.parent / "diagnostics").glob("*.block"))
BESIDE: Final = {
    path.stem: path.read_text() for path in sorted((FIXTURES[0].parent / "beside").glob("*.block"))
}
EXAMPLES: Final = [entry for entry in catalogue().values() if entry.wrong]


def makers(module: str) -> list[ast.FunctionDef]:
    """The functions of a module of messages that make a diagnostic and are no `@message`."""
    tree = ast.parse((MESSAGES / f"{module}.py").read_text())
    return [
        each
        for each in tree.body
        if isinstance(each, ast.FunctionDef)
        and not each.name.startswith("_")
        and each.returns is not None
        and ast.unparse(each.returns) == "Diagnostic"
        and "message" not in map(ast.unparse, each.decorator_list)
    ]


def check(said: tuple[Diagnostic, ...]) -> None:
    for each in said:
        assert each.facts is not None, f"{each.code} keeps no facts"
        assert each.said(INCHES) == each
        metric = each.said(CENTIMETRES)
        places = [label.span for label in (metric.primary, *metric.related)]
        assert (metric.code, metric.severity) == (each.code, each.severity)
        assert places == [label.span for label in (each.primary, *each.related)]
        assert (metric.fix and (metric.fix.span, metric.fix.text)) == (
            each.fix and (each.fix.span, each.fix.text)
        )
        if each.code not in OWN_INCHES:
            labels = [label.text for label in (metric.primary, *metric.related)]
            for words in (metric.message, metric.help, *labels):
                assert not INCH.search(QUOTED.sub("", words)), words


@pytest.mark.parametrize("path", FIXTURES, ids=lambda path: path.stem)
def test_fixture_says_the_same_in_centimetres(path: Path) -> None:
    check(draft_text(stripped(path.read_text()), **BESIDE).diagnostics)


@pytest.mark.parametrize("entry", EXAMPLES, ids=lambda entry: entry.code)
def test_example_says_the_same_in_centimetres(entry: Entry) -> None:
    check((linted if entry in entries_of("lint") else said_of)(entry.wrong))


@pytest.mark.parametrize("module", sorted(path.stem for path in MESSAGES.glob("*.py")))
def test_every_function_of_messages_is_a_message(module: str) -> None:
    assert module == "message" or not [each.name for each in makers(module)]


@pytest.mark.parametrize(
    ("message", "bound", "inches", "centimetres"),
    [
        (length_too_large, Fraction(1000), "over 1000in,", "over 2540cm,"),
        (length_too_small, Fraction(1, 64), "under 1/64in,", "under 0.04cm,"),
    ],
)
def test_bounds_are_told_in_the_readers_unit(
    message: Callable[..., Diagnostic], bound: Fraction, inches: str, centimetres: str
) -> None:
    said = message(Span("trial.block", 0, 4), "9000in", bound)
    assert inches in said.message and centimetres in said.said(CENTIMETRES).message
    assert "`9000in`" in said.said(CENTIMETRES).message


def test_a_diagnostic_that_was_stored_is_worded_again() -> None:
    said = length_too_large(Span("trial.block", 0, 4), "9000in", Fraction(1000))
    stored: Diagnostic = pickle.loads(pickle.dumps(said))
    assert stored == said and stored.said(CENTIMETRES) == said.said(CENTIMETRES)
