"""Any text at all gives a tree or diagnostics, and never an exception."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from piecewright.diagnostics.source import Source
from piecewright.language.decode import read_source
from piecewright.language.parser import parse
from support.programs import miswritten, programs, spoilt

QUIET = list(HealthCheck)


def check_places(text: str) -> bool:
    """Parses the text; each place lies in it and each message is for people. True where it is clean."""
    outcome = parse(Source("block.block", text))
    for each in outcome.diagnostics:
        span = each.primary.span
        assert 0 <= span.start <= span.end <= len(text)
        assert each.fix is None or 0 <= each.fix.span.start <= each.fix.span.end <= len(text)
        assert each.message.endswith((".", "?")) and "$END" not in each.message + each.help
        assert "_" not in each.code and not any(char.isupper() for char in each.code)
    assert outcome.failed or outcome.value is not None
    return not outcome.failed


@settings(max_examples=400, derandomize=True, deadline=None, suppress_health_check=QUIET)
@given(st.text(st.characters(exclude_categories=())))
def test_any_text_gives_a_tree_or_diagnostics(text: str) -> None:
    check_places(text)


@settings(max_examples=200, derandomize=True, deadline=None, suppress_health_check=QUIET)
@given(st.binary())
def test_any_bytes_give_a_source_or_diagnostics(data: bytes) -> None:
    outcome = read_source("block.block", data)
    assert outcome.failed or outcome.value is not None


@settings(max_examples=500, derandomize=True, deadline=None, suppress_health_check=QUIET)
@given(miswritten())
def test_miswritten_programs_give_diagnostics(text: str) -> None:
    check_places(text)


def test_spoilt_programs_give_diagnostics(capsys: pytest.CaptureFixture[str]) -> None:
    tried: Counter[bool] = Counter()

    @settings(max_examples=400, derandomize=True, deadline=None, suppress_health_check=QUIET)
    @given(spoilt())
    def attempt(text: str) -> None:
        tried[check_places(text)] += 1

    attempt()
    with capsys.disabled():
        print(f"\nlanguage: {tried.total()} spoilt programs tried, {tried[False]} complained of")
    assert tried[False] > 200


def test_generated_programs_never_raise(capsys: pytest.CaptureFixture[str]) -> None:
    tried: Counter[bool] = Counter()

    @settings(max_examples=400, derandomize=True, deadline=None, suppress_health_check=QUIET)
    @given(programs())
    def attempt(text: str) -> None:
        tried[check_places(text)] += 1

    attempt()
    with capsys.disabled():
        print(f"\nlanguage: {tried.total()} programs from the grammar tried, {tried[True]} without an error")
    assert tried[True] > 50
