"""Every code once: what it means, an example that gives it and one that does not.

`explain CODE` prints an entry. The entries stand in one module for each folder that makes diagnostics; a test
compares them with the codes in the program both ways and compiles every example.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Final

Lines = tuple[str, ...]

PAIR: Final = """\
block "Pair" {
  finished 2in
  faces top-left
  seam top-right -- bottom-left
  piece half at top-left in dark
  piece rest at bottom-right in pale
}

"""
"""A unit for the examples that need one."""


@dataclass(frozen=True, slots=True)
class Entry:
    """What there is to know of one code.

    `wrong` is a whole file that gives the code, `right` the same with the fault mended. Where no file worth
    printing shows the fault (it lies in a file's bytes, its size or its folder), both are empty and
    `explanation` says how it comes about.
    """

    code: str
    title: str  # a few words: "A seam ends inside a piece"
    explanation: str
    wrong: str = ""
    right: str = ""


def in_block(code: str, title: str, explanation: str, wrong: Lines, right: Lines) -> Entry:
    """An entry whose examples are the bodies of one block, a line each."""
    return Entry(code, title, explanation, _file(wrong), _file(right))


def beside_pair(code: str, title: str, explanation: str, wrong: Lines, right: Lines) -> Entry:
    """An entry whose examples use the block `Pair`, which stands before them."""
    return Entry(code, title, explanation, _file(wrong, PAIR), _file(right, PAIR))


def _file(body: Lines, before: str = "") -> str:
    """A whole file with one block of that body."""
    lines = "".join(f"  {line}\n" for line in body)
    return f'edition 1\n\n{before}block "Trial" {{\n{lines}}}\n'


@cache
def catalogue() -> dict[str, Entry]:
    """Every entry by its code, in the order of the program's folders."""
    from .catalogue_drafting import DRAFTING
    from .catalogue_files import FILES
    from .catalogue_language import LANGUAGE
    from .catalogue_lint import LINT
    from .catalogue_locks import LOCKS
    from .catalogue_quilts import QUILTS
    from .catalogue_sewing import SEWING
    from .catalogue_units import UNITS
    from .catalogue_washed import WASHED
    from .catalogue_writing import WRITING

    entries = (*FILES, *LANGUAGE, *WRITING, *DRAFTING, *WASHED, *UNITS, *LINT, *LOCKS, *QUILTS, *SEWING)
    found = {entry.code: entry for entry in entries}
    assert len(found) == len(entries), "a code has one entry"
    return found
