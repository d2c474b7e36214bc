"""What stands in a text and is no word of the language: other quotes, other dashes, units written otherwise.

In: the place of such characters. Out: the token that was meant, where that is plain, and what to say.
"""

from __future__ import annotations

import re
import unicodedata
from itertools import islice
from typing import Final, NamedTuple

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Source, Span
from ..words.messages import signs as complain
from .limits import ERRORS

UNSEEN: Final = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]"
)
"""Characters that print nothing or change the order in which others are read."""

_QUOTES: Final = "'‘’‚“”„«»`´"
_QUOTED: Final = re.compile(f'[{_QUOTES}]([^{_QUOTES}"\n]*)[{_QUOTES}"]')
_TITLE_END: Final = re.compile(r"\s*(?:version\s+[0-9]+\s*)?(?:as\s+[a-z].*)?(?:\{.*)?$")
_LINE_SEARCHED: Final = 1_000
"""Letters of a line in which the end of a title is looked for: the search begins anew at every letter."""
_DASHES: Final = re.compile(r"[-–—−‒→⟶]+>?|=>|<-+>?|\.\.\.+|…")
_TILDES: Final = re.compile(r"[~∼≈]+")
_COMMENT: Final = re.compile(r"//[^\n]*|/\*[^\n]*|%[^\n]*")
_STANDS_FOR: Final = {"[": ("LPAR", "("), "]": ("RPAR", ")"), "×": ("X", "x"), "*": ("X", "x")}
_UNIT_LETTERS: Final = (("°", "deg"), ("deg", "deg"), ("m", "mm"), ("c", "cm"))
_NUMBER_PART: Final = re.compile(r"[-0-9./ \t]*[0-9]")


VULGAR: Final = "-?[0-9]*[ \\t]*[¼½¾⅐-⅞]"
"""A number with a fraction in one character: `6½`."""


COMMA_DECIMAL: Final = (
    "-?[0-9]++,[0-9]++[ \\t]*(?:(?:in|cm|mm|deg)(?![A-Za-z0-9_])|%)"
    "|-?[0-9]++,[0-9]++(?=[ \\t]+from(?![a-z0-9_-]))"
    "|(?<=\\()-?[0-9]++,[0-9]++(?=,[ \\t])|(?<=, )-?[0-9]++,[0-9]++(?=\\))"
)
"""A number with a comma as its decimal mark, where no list can stand: before a unit or `from`, in a pair."""


class Reading(NamedTuple):
    """A token's type and text (empty: the characters are dropped), where it ends, and what to say."""

    type: str
    text: str
    end: int
    said: tuple[Diagnostic, ...]


def read_odd(source: Source, start: int) -> Reading:
    """What was meant by a character that begins nothing in the language."""
    text = source.text
    letter = text[start]
    if letter == '"':
        return _open_quote(source, start)
    if letter in _QUOTES:
        found = _QUOTED.match(text, start)
        if found:
            span = Span(source.name, start, found.end())
            words = found.group(1).replace("\\", "\\\\")
            return Reading("STRING", f'"{words}"', found.end(), (complain.other_quotes(span, words),))
    for pattern, kind, meant in (
        (_COMMENT, "", "#"),
        (_DASHES, "DASH_LIKE", "--"),
        (_TILDES, "TILDES", "~~"),
    ):
        found = pattern.match(text, start)
        if found:
            span = Span(source.name, start, found.end())
            said = () if kind == "DASH_LIKE" else (complain.sign_other(span, found.group(), meant),)
            return Reading(kind, found.group(), found.end(), said)
    span = Span(source.name, start, start + 1)
    if letter in _STANDS_FOR:
        kind, meant = _STANDS_FOR[letter]
        return Reading(kind, meant, start + 1, (complain.sign_other(span, letter, meant),))
    return Reading("", "", start + 1, (_meaningless(span, letter),))


def read_unit(source: Source, words: str, start: int) -> Reading:
    """A length or angle whose unit is written another way: `6"`, `6 inches`, `45°`."""
    end = start + len(words)
    plain = _plain_fraction(words)
    if plain != words:
        said = (complain.fraction_sign(Span(source.name, start, end), words, plain),)
        kind = "ANGLE" if plain.endswith("deg") else "LENGTH" if plain[-1:].isalpha() else "NUMBER"
        return Reading(kind, plain, end, said)
    number_end = _NUMBER_PART.match(words)
    assert number_end is not None, words
    spelled = words[number_end.end() :].strip()
    meant = next((unit for letters, unit in _UNIT_LETTERS if spelled.lower().startswith(letters)), "in")
    right = number_end.group().strip() + meant
    kind = "ANGLE" if meant == "deg" else "LENGTH"
    return Reading(kind, right, end, (complain.unit_spelled(Span(source.name, start, end), spelled, right),))


def read_comma(source: Source, words: str, start: int) -> Reading:
    """`7,5cm` as `7.5cm`."""
    right = words.replace(",", ".")
    kind = "ANGLE" if right.endswith("deg") else "PERCENT" if right.endswith("%") else "LENGTH"
    kind = "NUMBER" if right[-1].isdigit() else kind
    end = start + len(words)
    return Reading(kind, right, end, (complain.comma_decimal(Span(source.name, start, end), right),))


def _plain_fraction(words: str) -> str:
    """`6½in` as `6 1/2in`."""
    if not any(_is_fraction(letter) for letter in words):
        return words
    plain = "".join(
        " " + unicodedata.normalize("NFKC", letter).replace("\u2044", "/") if _is_fraction(letter) else letter
        for letter in words
        if not letter.isspace()
    )
    return plain.strip().replace("- ", "-")


def _is_fraction(letter: str) -> bool:
    """Whether the character is a fraction such as `½`."""
    return unicodedata.numeric(letter, 0) % 1 != 0


def unseen_in(source: Source, start: int, end: int) -> tuple[Diagnostic, ...]:
    """A complaint for each unseen character within quotes or a comment, but for no more than are shown."""
    found = islice(UNSEEN.finditer(source.text, start, end), ERRORS + 1)
    return tuple(_unseen(Span(source.name, each.start(), each.end()), each.group()) for each in found)


def _unseen(span: Span, letter: str) -> Diagnostic:
    return complain.character_unseen(span, ord(letter))


def _meaningless(span: Span, letter: str) -> Diagnostic:
    """The complaint about a character that has no meaning outside quotes."""
    if UNSEEN.match(letter):
        return _unseen(span, letter)
    if letter == ";":
        return complain.semicolon_needless(span)
    if letter.isspace():
        return complain.blank_odd(span, ord(letter))
    return complain.sign_unknown(
        span, letter, "" if letter.isascii() else unicodedata.name(letter, "").lower()
    )


def _open_quote(source: Source, start: int) -> Reading:
    """The rest of the line as text, without what plainly comes after a title."""
    stop = source.text.find("\n", start)
    line = source.text[start + 1 :] if stop < 0 else source.text[start + 1 : stop]
    ending = _TITLE_END.search(line) if len(line) <= _LINE_SEARCHED else None
    words = line[: ending.start()] if ending else line
    end = start + 1 + len(words)
    title = words.replace("\\", "").replace('"', "")
    return Reading("STRING", f'"{title}"', end, (complain.quote_open(Span(source.name, start, end)),))
