"""What an entry of the catalogue is, and how most are written: from the lines of a block."""

from __future__ import annotations

from dataclasses import dataclass
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
