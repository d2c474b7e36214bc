"""Every code once: what it means, an example that gives it and one that does not.

`explain CODE` prints an entry. The entries stand in one module for each folder that makes diagnostics; a test
compares them with the codes in the program both ways and compiles every example.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache


@dataclass(frozen=True, slots=True)
class Entry:
    """What there is to know of one code.

    `wrong` is a whole file that gives the code, `right` the same with the fault mended. Where no file can
    show the fault (it lies in a file's bytes, its size or its folder), both are empty and `explanation` says
    how it comes about.
    """

    code: str
    title: str  # a few words: "A seam ends inside a piece"
    explanation: str
    wrong: str = ""
    right: str = ""


@cache
def catalogue() -> dict[str, Entry]:
    """Every entry by its code, in the order of the program's folders."""
    from .catalogue_files import FILES

    entries = FILES
    found = {entry.code: entry for entry in entries}
    assert len(found) == len(entries), "a code has one entry"
    return found
