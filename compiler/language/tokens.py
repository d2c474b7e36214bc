"""Text to words, numbers and signs. Never raises, whatever the text.

In: a source. Out: its tokens, each with its place, and complaints about what no grammar could take:
characters that are no part of the language, quotes never closed, units spelled another way. Where what was
meant is plain, the token that was meant stands in the list, so that the parser goes on as if it had been
written.
"""

from __future__ import annotations

import re
from typing import Final, NamedTuple

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Source
from . import _tables, limits
from .odd_characters import COMMA_DECIMAL, VULGAR, Reading, read_comma, read_odd, read_unit, unseen_in

BLOCK_OPENERS: Final = (
    "finished",
    "grid",
    "outline",
    "point",
    "seam",
    "piece",
    "turn",
    "mirror",
    "repeat",
    "use",
    "place",
    "row",
    "alternate",
    "rounds",
    "faces",
    "allowance",
    "grain",
    "trim",
    "washed",
    "family",
    "also",
    "note",
    "maker",
)
"""Words that open a statement inside a block."""

QUILT_OPENERS: Final = (
    "set",
    "roles",
    "fabric",
    "sashing",
    "border",
    "binding",
    "backing",
    "batting",
    "fits",
    "use",
    "also",
    "note",
    "maker",
)
"""Words that open a statement inside a quilt."""

SET_OPENERS: Final = ("row", "alternate", "place")
"""Words that open a statement inside the braces of a `set`."""

JOINING: Final = (
    "in",
    "at",
    "from",
    "to",
    "of",
    "on",
    "with",
    "as",
    "about",
    "around",
    "through",
    "between",
    "meet",
    "next",
    "previous",
    "turned",
    "mirrored",
    "facing",
    "plain",
)

FREE: Final = ("repeat", "border")
"""Words that open statements, and are names where a name is due: after `point` or a comma, say."""

RESERVED: Final = frozenset(
    (
        "edition",
        "block",
        "quilt",
        *BLOCK_OPENERS,
        *QUILT_OPENERS,
        *JOINING,
    )
) - frozenset(FREE)
"""Every word that no name may take."""

OPENERS: Final = frozenset(
    word.upper() for word in ("edition", "block", "quilt", *BLOCK_OPENERS, *QUILT_OPENERS)
)
"""The token types that open a statement."""

ODD_WORD: Final = "ODD_WORD"
"""A word that is neither a name nor a grid point: `Gate`, `été`."""

DASH_LIKE: Final = "DASH_LIKE"
"""`-`, `->` and the like: somebody's way of writing `--` or `..`."""

END: Final = "$END"


class Token(NamedTuple):
    """A word, number or sign. `type` names it for the grammar; `soft` is the keyword it may also be."""

    type: str
    text: str
    start: int
    end: int
    fresh: bool = False  # first on its line
    soft: str = ""


_PATTERNS: Final = {name: value for name, kind, value in _tables.TERMINALS if kind == "re"}
_SIGNS: Final = {
    value: name for name, kind, value in _tables.TERMINALS if kind == "str" and not value[0].isalpha()
}
_SOFT: Final = {
    value: name
    for name, kind, value in _tables.TERMINALS
    if kind == "str" and value[0].isalpha() and value not in RESERVED
}

# Patterns of the grammar that repeat a group, with the repeats made possessive (`*+`): they take the same
# texts, and keep no way back for each of a million letters.
_STRING: Final = r'"(?:[^"\\\n]++|\\.)*+"'
_ASIDE: Final = r"(?:[ \t\n]|#[^\n]*+\n)++"
_BETWEEN: Final = "BETWEEN"  # blanks and remarks, all that stand between two words

_OTHER_UNITS: Final = (
    r'(?<![ \t])["″”]|°|(?i:inches|inch|ins|in|centimetres?|centimeters?|cm|millimetres?|millimeters?|mm'
    r"|degrees?|degs?)(?![A-Za-z0-9_]|-[a-z0-9])"
)

_MASTER: Final = re.compile(
    "|".join(
        (
            rf"(?P<{_BETWEEN}>(?:[ \t\n]++|#[^\n]*+)++)",
            r"(?P<WORD>[a-z][a-z0-9_]*+(?:-[a-z0-9_]++)*+(?!\w|-\w))",
            f"(?P<SIGN>{'|'.join(re.escape(sign) for sign in sorted(_SIGNS, key=len, reverse=True))})",
            rf"(?P<GRID_POINT>{_PATTERNS['GRID_POINT']}(?!\w))",
            f"(?P<COMMA_DECIMAL>{COMMA_DECIMAL})",
            f"(?P<LENGTH>{_PATTERNS['LENGTH']})",
            f"(?P<ANGLE>{_PATTERNS['ANGLE']})",
            f"(?P<PERCENT>{_PATTERNS['PERCENT']})",
            rf"(?P<VULGAR>{VULGAR}(?:[ \t]*(?:in|cm|mm|deg)(?![\w]))?)",
            f"(?P<OTHER_UNIT>(?:{_PATTERNS['NUMBER']})[ \\t]*(?:{_OTHER_UNITS}))",
            f"(?P<NUMBER>{_PATTERNS['NUMBER']})",
            f"(?P<STRING>{_STRING})",
            rf"(?P<{ODD_WORD}>[^\W\d]\w*+(?:-\w++)*+)",
            r"(?P<ODD>[\s\S])",
        )
    )
)

_TWO_FACED: Final = {
    "foot": re.compile(rf"foot(?={_ASIDE}of(?![a-z0-9_-]))"),
    "circle": re.compile(rf"circle(?={_ASIDE}around(?![a-z0-9_-]))"),
    "smooth": re.compile(r"smooth(?=(?:[ \t\n]|#[^\n]*+\n)*+[A-Za-z(])"),
    "regular": re.compile(rf"regular(?={_ASIDE}[0-9])"),
}

_NAME_DUE: Final = (
    *("SEAM", "POINT", "PIECE", "PLACE", "ROW", "ALTERNATE", "FAMILY", "FABRIC", "ROLES", "FITS"),
    *("IN", "AT", "FROM", "TO", "OF", "ON", "WITH", "AS", "ABOUT", "AROUND", "THROUGH", "BETWEEN", "MEET"),
    *("NEXT", "PREVIOUS", "PLAIN", "COMMA", "EQUAL", "DASHES", "TILDES", "LPAR"),
)
"""Words and signs after which a statement cannot open."""

_OPENING_NUMBER: Final = re.compile(rf"{_ASIDE}(?:to{_ASIDE})?[0-9]")
"""What follows `repeat` or `border` where it opens a statement."""

_TIMES: Final = re.compile(r"x(?=[0-9])")
_SIZED: Final = ("grid", "finished", "washed", "set", "fabric", "border")
"""Statements that hold a size, `2x2` or `6inx9in`."""


class Scan(NamedTuple):
    """The tokens of a text, `$END` last; what was said; and where characters were dropped."""

    tokens: list[Token]
    said: list[Diagnostic]
    dropped: list[int]


def scan(source: Source) -> Scan:
    """Every token of the text, blanks and comments left out; no further than a word beyond limits.WORDS or a
    complaint beyond limits.ERRORS, since the text is then not read on."""
    text = source.text
    tokens: list[Token] = []
    said: list[Diagnostic] = []
    dropped: list[int] = []
    at, fresh, opener = 0, True, ""
    while at < len(text) and len(tokens) <= limits.WORDS and len(said) <= limits.ERRORS:
        found = _MASTER.match(text, at)
        assert found is not None, "the last alternative takes any character"
        kind, words, end = str(found.lastgroup), found.group(), found.end()
        if kind == _BETWEEN:
            fresh = fresh or "\n" in words
            if "#" in words:
                said.extend(unseen_in(source, at, end))
            at = end
            continue
        if kind == "WORD":
            if _is_times(words, tokens, opener):
                words, end = "x", at + 1
            free = words in FREE and _opens(text, end, fresh, tokens)
            token = (
                Token(words.upper(), words, at, end, fresh) if free else _word(text, words, at, end, fresh)
            )
            opener = words if token.type in OPENERS else opener
        elif kind == "SIGN":
            token = Token(_SIGNS[words], words, at, end, fresh)
        elif kind in ("OTHER_UNIT", "VULGAR", "COMMA_DECIMAL", "STRING", "ODD"):
            read = _read(source, kind, words, at)
            said.extend(read.said)
            end = read.end
            if not read.type:
                dropped.append(at)
                at = end
                continue
            token = Token(read.type, read.text, at, end, fresh)
        else:
            token = Token(kind, words, at, end, fresh)
        tokens.append(token)
        at, fresh = end, False
    tokens.append(Token(END, "", at, at, True))
    return Scan(tokens, said, dropped)


def _read(source: Source, kind: str, words: str, at: int) -> Reading:
    """Quoted text, a unit spelled another way, or a character that begins nothing."""
    if kind == "STRING":
        return Reading(kind, words, at + len(words), unseen_in(source, at, at + len(words)))
    if kind == "COMMA_DECIMAL":
        return read_comma(source, words, at)
    return read_unit(source, words, at) if kind in ("OTHER_UNIT", "VULGAR") else read_odd(source, at)


def _is_times(words: str, tokens: list[Token], opener: str) -> bool:
    """Whether the word is the `x2` of `grid 2x2` or the `x9in` of `6inx9in`."""
    return (
        opener in _SIZED
        and bool(_TIMES.match(words))
        and bool(tokens)
        and tokens[-1].type in ("NUMBER", "LENGTH")
    )


def _opens(text: str, end: int, fresh: bool, before: list[Token]) -> bool:
    """Whether a word that is free as a name opens a statement here."""
    if before and before[-1].type in _NAME_DUE:
        return False
    return fresh or _OPENING_NUMBER.match(text, end) is not None


def _word(text: str, words: str, start: int, end: int, fresh: bool) -> Token:
    """A reserved word, or a name that may also be a keyword where one is due."""
    if words in RESERVED:
        return Token(words.upper(), words, start, end, fresh)
    pattern = _TWO_FACED.get(words)
    if pattern is not None:
        return Token("NAME", words, start, end, fresh, words.upper() if pattern.match(text, start) else "")
    return Token("NAME", words, start, end, fresh, _SOFT.get(words, ""))
