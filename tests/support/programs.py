"""Texts to try the language on: examples out of the grammar, programs made from it, and programs spoilt."""

from __future__ import annotations

import re
from functools import cache
from typing import Any, Final, NamedTuple

from hypothesis import strategies as st
from hypothesis.extra.lark import from_lark
from piecewright.diagnostics.diagnostic import Outcome, Severity
from piecewright.diagnostics.source import Source
from piecewright.language import tree
from piecewright.language.decode import read_source
from piecewright.language.parser import parse
from piecewright.language.regenerate import build_lark, grammar_text

RULE: Final = re.compile(r"^([a-z_]+):", re.MULTILINE)
EXAMPLE: Final = re.compile(r"^// (yes|no): +(.*)$")

WHOLE: Final = """\
edition 1

block "Tidewater Vane" version 2 {
  finished 6in x 9in
  washed 5 7/8in x 9 1/8in read to 1/16in
  grid 1:2:1 x 3 of 3in
  outline A1 -- B1 ~~ B2 around C3 -- A2
  outline regular 6 side 3in turned 30deg
  point gate = 1 1/4in from B1 to C1
  point crook = meet tip parallel to center--top-right, top--bottom
  point tip = meet center at 22.5deg, outline
  point rim = meet A1 ~~ C3 around A3, circle around center radius 2in nearest gate
  point heel = foot of (1.5, 0) on A1--B2
  turn 4 about center {
    seam B2 -- gate -- next crook -- outline
    seam previous previous crook at 22.5deg -- outline
    mirror in top--bottom {
      piece sail at between B2, gate, (1/2 from A1 to C2) in light, dark
    }
  }
  turn 3 of 15deg about gate mirrored in A1--B2 { seam A1 ~~ B1 through C1 ~~ D1 around D2 }
  repeat 6 along A1--C1 { seam A1 -- B2 -- next A1 }
  repeat 3 along A1 ~~ C3 around A3 { seam A1 -- B2 }
  seam circle around center radius 1 1/4in
  seam circle around center through previous gate
  seam smooth A1, gate, (1/2 from A1 to C2), B2
  seam through center at 45deg
  use "Two-Triangle Square" version 1 as pair with dark = pale, pale = dark
  row 3 pair facing top-left, plain pale
  alternate plain dark, pair
  place pair turned 90deg mirrored stretched in A1..B2, C3..D4
  rounds 5 of 1in about F6..H8 in pale, dark mitred
  faces top  allowance 1/4in on A1 -- C1
  grain along A1--A3 on sail  grain free on sail
  trim matched 1/4in dots none
  family star  also "T", "U"  note "x"  maker "y"
}
"""
"""Every statement of a block at least once."""

WHOLE_QUILT: Final = """\
edition 1

quilt "Breakwater Sampler" version 1 {
  use "Tidewater Vane" version 2 as vane
  use "Harbour Square" as harbour with pale = sand
  fabric indigo "Indigo print" width 42in shrinks 3% one way
  fabric rose fat quarter 3 scrap 10in x 12in striped
  fabric sand
  roles "Sea" dark = indigo, light = sand
  roles "Land" dark = sand, light = rose
  set straight 4 across 5 down of 8in {
    row 3 vane turned 90deg, plain sand
    place harbour mirrored in B3..C4
    alternate vane, harbour
  }
  sashing 1 1/2in in sand posts in indigo around
  border 2in in sand
  border 4in of vane, plain sand corners vane facing left
  border to 60in x 72in in indigo mitred unjoined
  binding 2 1/2in in indigo bias
  backing in sand 4in over
  batting 3in over
  fits double mattress drop 12in
  note "Press towards the sashing."  maker "Wren Halloway"  also "Breakwater"
}

quilt "Two Others" {
  set on point 3 across 3 down of 12in with triangles in sand { alternate vane, plain sand }
  set rows { row 9 goose row 3 house }
}
"""
"""Every statement of a quilt at least once."""


class Example(NamedTuple):
    """A line of the grammar file: the rule it stands above, whether the rule takes it, and the text."""

    rule: str
    taken: bool
    text: str


@cache
def grammar_examples() -> tuple[Example, ...]:
    """Every yes and no line of the grammar file."""
    waiting: list[tuple[str, str]] = []
    examples: list[Example] = []
    for line in grammar_text().splitlines():
        found = EXAMPLE.match(line)
        rule = RULE.match(line)
        if found:
            waiting.append((found.group(1), found.group(2)))
        elif rule:
            examples.extend(Example(rule.group(1), kind == "yes", text) for kind, text in waiting)
            waiting = []
    assert not waiting, "an example stands above no rule"
    return tuple(examples)


@cache
def rule_names() -> tuple[str, ...]:
    """Every rule of the grammar, in its order."""
    return tuple(RULE.findall(grammar_text()))


def read(text: str) -> Outcome[tree.File]:
    """The tree of a text, through both steps of reading."""
    return read_source("block.block", text.encode("utf-8", "surrogatepass")).then(parse)


def parse_text(text: str) -> Outcome[tree.File]:
    """The tree of a text that was never bytes."""
    return parse(Source("block.block", text))


def in_block(body: str) -> str:
    """A file of one block with the body between its braces, which begins on line 3."""
    return f'edition 1\nblock "Trial" {{\n{body}\n}}\n'


def in_quilt(body: str) -> str:
    """A file of one quilt with the body between its braces, which begins on line 3."""
    return f'edition 1\nquilt "Trial" {{\n{body}\n}}\n'


def errors(outcome: Outcome[Any]) -> list[str]:
    """The codes of all that is an error, in order."""
    return [each.code for each in outcome.diagnostics if each.severity is Severity.ERROR]


# ---- strategies -------------------------------------------------------------------------------------------

NAMES: Final = st.sampled_from(
    (
        "gate",
        "tip",
        "top-left",
        "center",
        "inner_1",
        "x",
        "dark",
        "circle",
        "regular",
        "smooth",
        "foot",
        "none",
    )
)
NUMBERS: Final = st.sampled_from(
    ("2", "3", "4", "5", "6", "8", "10", "12", "90") * 8 + ("3/4", "1 1/2", "0", "-1", "1000000", "1/0")
)

TITLES: Final = (
    '"Vane"',
    '"Two"',
    '"Three"',
    '"A \\"b\\" \\\\"',
    '""',
    '"a/../b"',
    '"<b>&amp;"',
    '"\u05d0\u05d1"',
)

_WORDS: Final[dict[str, st.SearchStrategy[str]]] = {
    "NAME": NAMES,
    "GRID_POINT": st.sampled_from(("A1", "B3", "C2", "D4", "AA12", "C0", "Z9999")),
    "STRING": st.sampled_from(TITLES),
    "NUMBER": NUMBERS,
    "LENGTH": st.builds(lambda number, unit: number + unit, NUMBERS, st.sampled_from(("in", "cm", " mm"))),
    "ANGLE": st.builds(lambda number: number + "deg", NUMBERS),
    "PERCENT": st.builds(lambda number: number + "%", NUMBERS),
    "CIRCLE": st.just("circle"),
    "REGULAR": st.just("regular"),
    "SMOOTH": st.just("smooth"),
    "FOOT": st.just("foot"),
    "BLANKS": st.sampled_from((" ", "\n", "\t")),
    "COMMENT": st.just("# a remark\n"),
}


def programs() -> st.SearchStrategy[str]:
    """Whole files made from the grammar, a blank after each word."""
    lark = build_lark(["file"])
    explicit = {
        terminal.name: _WORDS[terminal.name] if terminal.name in _WORDS else st.just(terminal.pattern.value)
        for terminal in lark.terminals
    }
    spaced = {name: words.map(lambda text: text + " ") for name, words in explicit.items()}
    return from_lark(lark, start="file", explicit=spaced)


PIECES: Final = tuple(re.findall(r"\S+|\n", WHOLE))
QUILT_PIECES: Final = tuple(re.findall(r"\S+|\n", WHOLE_QUILT))
ODD: Final = (
    "(",
    ")",
    "{",
    "}",
    '"',
    "'",
    "quilt",
    "set",
    "on-point",
    "3%",
    "%",
    "corners",
    "over",
    "mattress",
    "washed",
    "border",
    "-",
    "->",
    "..",
    "E0",
    "6",
    "1/0in",
    "Gate",
    "\u00e9t\u00e9",
    "\0",
    ";",
    "\u201cVane\u201d",
    "6\u00bdin",
    '6"',
    "edition",
    "block",
    "#",
    "\\",
    "\u2026",
)


@st.composite
def spoilt(draw: st.DrawFn) -> str:
    """A whole program with a few words changed, left out or put in."""
    words = list(draw(st.sampled_from((PIECES, QUILT_PIECES))))
    for _ in range(draw(st.integers(1, 6))):
        place = draw(st.integers(0, len(words) - 1))
        kind = draw(st.sampled_from(("drop", "change", "insert")))
        word = draw(st.sampled_from(PIECES + QUILT_PIECES + ODD))
        if kind == "drop":
            del words[place]
        elif kind == "change":
            words[place] = word
        else:
            words.insert(place, word)
    return draw(st.sampled_from((" ", ""))).join(words)


SIGNS: Final = "aZ19 \t\n\0\x07\u00e9\u201c\u201d\u00bd\u00b0\"'`~-\u2013\u2192\u2026\u00d7*[]{}()\\;/.,:=#"


@st.composite
def miswritten(draw: st.DrawFn) -> str:
    """A whole program with characters left out, changed, put in or copied elsewhere."""
    text = draw(st.sampled_from((WHOLE, WHOLE_QUILT)))
    for _ in range(draw(st.integers(1, 10))):
        place, width = draw(st.integers(0, len(text) - 1)), draw(st.integers(0, 20))
        new = draw(st.one_of(st.text(SIGNS, max_size=3), st.just(text[place : place + width])))
        onto = draw(st.integers(0, len(text) - 1))
        text = text[:onto] + new + text[onto + draw(st.integers(0, 3)) :]
    return text
