"""Units at another size than their own: a remark where their cuts leave the ruler's marks."""

from __future__ import annotations

import pytest
from piecewright.diagnostics.source import Source
from support.check import DictShelf, compile_source


def said_of(cell: str) -> list[tuple[str, str]]:
    text = f"""edition 1
block "Thirds" {{ grid 3 x 3 of 1in  alternate plain dark, plain pale }}
block "Trial" {{ grid 3 x 1 of {cell}  use "Thirds" as thirds  row 2 thirds, plain pale }}
"""
    made = compile_source(Source("trial.block", text), DictShelf({}))
    return [(each.code, each.message) for each in made.diagnostics]


@pytest.mark.parametrize("cell", ["3in", "6in", "4 1/2in"])
def test_sizes_on_the_ruler_are_passed_over(cell):
    assert said_of(cell) == []


def test_thirds_of_four_inches_leave_it():
    """A third of 4in and 1/2in of allowances are 1.833in, between the marks of any ruler in eighths."""
    ((code, message),) = said_of("4in")
    assert code == "cuts-leave-ruler" and "A would be cut between 1 3/4in and 1 7/8in" in message
