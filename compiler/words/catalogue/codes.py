"""Every code once: what it means, an example that gives it and one that does not.

`explain CODE` prints an entry. The entries stand in a text for each folder that makes diagnostics; a test
compares them with the codes in the program both ways and compiles every example. An entry reads

    = size-missing: A block without a size
    A block says how large it is: `finished 6in`, or a grid with cells `of 2in`.
    @ block
      grid 2 x 2
    + finished 6in
      seam A1 -- C3

Of an example's lines, `-` is before those of the wrong one alone, `+` before those of the right one
alone, a blank before those of both; the words after `@` say which of FRAMES stands around them.
There is no example where no file worth printing shows the fault: it lies in a file's bytes, its size or its
folder.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import Final

from ...measure.record import record

TOPICS: Final = (
    "files", "language", "writing", "drafting", "pieces", "washed", "units", "lint", "locks", "quilts",
    "fabrics", "sewing",
)  # fmt: skip
"""The texts beside this module, in the order of the program's folders."""

PAIR: Final = """\
block "Pair" {
  finished 2in
  faces top-left
  seam top-right -- bottom-left
  piece half at top-left in dark
  piece rest at bottom-right in pale
}

"""
GOOSE: Final = """\
block "Goose" {
  finished 4in x 2in
  faces top
  seam bottom-left -- top -- bottom-right
  piece goose at bottom in dark
  piece sky at top-left, top-right in pale
}

"""
TRIAL: Final = 'block "Trial" {\n'
QUILT: Final = 'quilt "Sampler" {\n'
CLOTHS: Final = """\
  use "Pair" as pair
  fabric indigo
  fabric sand
  roles dark = indigo, pale = sand
"""
SET: Final = "  set straight 3 across 2 down { alternate pair, plain sand }\n"
END: Final = "  binding 2 1/2in in indigo\n  backing in sand 4in over\n  batting 4in over\n}\n"

FRAMES: Final = {
    "block": (TRIAL, "}\n"),
    "block of 6in": (f"{TRIAL}  finished 6in\n", "}\n"),
    "block beside Pair": (PAIR + TRIAL, "}\n"),
    "block of 6in beside Pair": (f"{PAIR}{TRIAL}  finished 6in\n", "}\n"),
    "quilt of Pair": (PAIR + QUILT, END),
    "quilt of Pair and Goose": (PAIR + GOOSE + QUILT, END),
    "quilt in cloths": (PAIR + QUILT + CLOTHS, END),
    "quilt in cloths and a set": (PAIR + QUILT + CLOTHS + SET, END),
}
"""What comes before the lines of an example and after them; `file` has nothing around it."""


@record
class Entry:
    """What there is to know of one code: `wrong` is a whole file that gives it, `right` the same mended; both
    are empty where there is no example."""

    code: str
    title: str  # a few words: "A seam ends inside a piece"
    explanation: str
    wrong: str = ""
    right: str = ""


@cache
def catalogue() -> dict[str, Entry]:
    """Every entry by its code, in the order of the program's folders."""
    entries = [entry for topic in TOPICS for entry in entries_of(topic)]
    found = {entry.code: entry for entry in entries}
    assert len(found) == len(entries), "a code has one entry"
    return found


@cache
def entries_of(topic: str) -> tuple[Entry, ...]:
    """The entries of one text."""
    text = files(__package__).joinpath(f"{topic}.txt").read_text(encoding="utf-8")
    return tuple(map(_entry, text.removeprefix("= ").removesuffix("\n").split("\n\n= ")))


def _entry(text: str) -> Entry:
    words, _, example = text.partition("\n@ ")
    heading, *explanation = words.split("\n")
    code, _, title = heading.partition(": ")
    if not example:
        return Entry(code, title, " ".join(explanation))
    frame, *lines = example.split("\n")
    return Entry(code, title, " ".join(explanation), _file(frame, lines, "-"), _file(frame, lines, "+"))


def _file(frame: str, lines: list[str], sign: str) -> str:
    """The whole file of the lines that stand after that sign or after a blank."""
    body = [line[2:] for line in lines if line[:1] in ("", " ", sign)]
    if frame == "file":
        return "".join(f"{line}\n" for line in body)
    before, after = FRAMES[frame]
    return "edition 1\n\n" + before + "".join(f"  {line}\n" for line in body) + after
