"""A fingerprint of geometry: what leaves it alone, and what does not."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from piecewright.diagnostics.source import Source
from piecewright.drafting.fingerprint import differ, fingerprint_of
from support.block_files import VANE
from support.check import compile_source
from support.library import LibraryShelf, library_sources
from support.rewriting import rewritten


def fingerprints(source: Source) -> list[str]:
    """Those of the file's own blocks."""
    outcome = compile_source(source, LibraryShelf())
    assert outcome.value is not None, outcome.diagnostics
    return [fingerprint_of(each.draft) for each in outcome.value if not each.from_elsewhere]


def fingerprint(text: str) -> str:
    """That of the one block of a text."""
    (found,) = fingerprints(Source("vane.block", text))
    return found


@settings(max_examples=80, deadline=None)
@given(st.sampled_from(library_sources()), st.integers(0, 10**6))
def test_no_rewriting_changes_it(source: Source, seed: int) -> None:
    assert fingerprints(rewritten(source, Random(seed))) == fingerprints(source)


def test_it_is_the_same_on_every_machine() -> None:
    assert fingerprint(VANE) == "1-4fd3dcaea9df5828"


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('"Tidewater Vane" version 2', '"Other Vane" version 3'),
        ("light, dark", "red, green"),
        ("point gate = 1 1/4in from B1 to C1", "point gate = 1 3/4in from C1 to B1"),
        ("point gate = 1 1/4in from B1 to C1", "point gate = 1/6 from top to B1"),
        ("point gate = 1 1/4in from B1 to C1", "point gate = 5/12 from B1 to C1"),
        ("grid 3 x 3", 'grid 3 x 3  note "For the class."  maker "Wren Halloway"  trim square dots none'),
    ],
)
def test_what_changes_no_outline_leaves_it_alone(old: str, new: str) -> None:
    assert old in VANE
    assert fingerprint(VANE.replace(old, new)) == fingerprint(VANE)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("1 1/4in from B1", "1 17/64in from B1"),
        ("1 1/4in from B1", "31.8mm from B1"),
        ("finished 9in", "finished 9 1/64in"),
        ("grid 3 x 3", "grid 3 x 3  allowance 3/8in"),
        ("grid 3 x 3", "grid 3 x 3  allowance 3/8in on A1 -- C1"),
        ("    seam B2 -- gate", "    seam B2 ~~ gate through (1.1, 0.5)"),
        ("    seam A1 -- B2\n", "    seam A1 -- B2\n    seam A2 -- (0.5, 0.5)\n"),
    ],
)
def test_what_changes_an_outline_changes_it(old: str, new: str) -> None:
    assert old in VANE
    assert fingerprint(VANE.replace(old, new)) != fingerprint(VANE)


def test_another_rule_says_nothing() -> None:
    assert differ(fingerprint(VANE), "1-0000000000000000")
    assert not differ(fingerprint(VANE), "2-0000000000000000")
