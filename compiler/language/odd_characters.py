"""What stands in a text and is no word of the language: other quotes, other dashes, units written otherwise.

In: the place of such characters. Out: the token that was meant, where that is plain, and what to say.
"""

from __future__ import annotations

import re
import unicodedata
from itertools import islice
from typing import Final, NamedTuple

from ..diagnostics.diagnostic import Diagnostic, Fix, error
from ..diagnostics.source import Source, Span
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
            return Reading("STRING", f'"{words}"', found.end(), (other_quotes(span, words),))
    for pattern, kind, meant in (
        (_COMMENT, "", "#"),
        (_DASHES, "DASH_LIKE", "--"),
        (_TILDES, "TILDES", "~~"),
    ):
        found = pattern.match(text, start)
        if found:
            span = Span(source.name, start, found.end())
            said = () if kind == "DASH_LIKE" else (sign_other(span, found.group(), meant),)
            return Reading(kind, found.group(), found.end(), said)
    span = Span(source.name, start, start + 1)
    if letter in _STANDS_FOR:
        kind, meant = _STANDS_FOR[letter]
        return Reading(kind, meant, start + 1, (sign_other(span, letter, meant),))
    return Reading("", "", start + 1, (sign_unknown(span, letter),))


def read_unit(source: Source, words: str, start: int) -> Reading:
    """A length or angle whose unit is written another way: `6"`, `6 inches`, `45°`."""
    end = start + len(words)
    plain = _plain_fraction(words)
    if plain != words:
        said = (fraction_sign(Span(source.name, start, end), words, plain),)
        kind = "ANGLE" if plain.endswith("deg") else "LENGTH" if plain[-1:].isalpha() else "NUMBER"
        return Reading(kind, plain, end, said)
    number_end = _NUMBER_PART.match(words)
    assert number_end is not None, words
    spelled = words[number_end.end() :].strip()
    meant = next((unit for letters, unit in _UNIT_LETTERS if spelled.lower().startswith(letters)), "in")
    right = number_end.group().strip() + meant
    kind = "ANGLE" if meant == "deg" else "LENGTH"
    return Reading(kind, right, end, (unit_spelled(Span(source.name, start, end), spelled, right),))


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
    return tuple(sign_unknown(Span(source.name, each.start(), each.end()), each.group()) for each in found)


def _open_quote(source: Source, start: int) -> Reading:
    """The rest of the line as text, without what plainly comes after a title."""
    stop = source.text.find("\n", start)
    line = source.text[start + 1 :] if stop < 0 else source.text[start + 1 : stop]
    ending = _TITLE_END.search(line) if len(line) <= _LINE_SEARCHED else None
    words = line[: ending.start()] if ending else line
    end = start + 1 + len(words)
    title = words.replace("\\", "").replace('"', "")
    return Reading("STRING", f'"{title}"', end, (quote_open(Span(source.name, start, end)),))


# ---- words ------------------------------------------------------------------------------------------------


def other_quotes(span: Span, words: str) -> Diagnostic:
    """`'Title'`, or the curved quotes that a word processor makes."""
    return error(
        "text-quotes",
        'Text stands in straight double quotes: `"`.',
        span,
        help=f'Write `"{words}"`.',
        fix=Fix("Use straight double quotes", span, f'"{words}"'),
    )


def quote_open(span: Span) -> Diagnostic:
    """`"Title` with no second quote on the line."""
    return error(
        "text-open",
        "This text has no closing quote on its line.",
        span,
        "it begins here",
        help='Put a `"` where the text ends. Text cannot go on to another line.',
        fix=Fix("Close the quotes", Span(span.source, span.end, span.end), '"'),
    )


def sign_other(span: Span, sign: str, meant: str) -> Diagnostic:
    """A sign for which this language has another."""
    if meant == "#":
        return error(
            "sign-unknown",
            f"A remark begins with `#`, not with `{sign[:1]}`.",
            span,
            help="Put a `#` before it.",
            fix=Fix("Make it a remark", span, "# " + sign.lstrip("/*% ")),
        )
    return error(
        "sign-unknown",
        f"`{sign[:8]}` is written `{meant}` here.",
        span,
        help=f"Write `{meant}`.",
        fix=Fix(f"Write `{meant}`", span, meant),
    )


def unit_spelled(span: Span, spelled: str, right: str) -> Diagnostic:
    """`6"`, `6 inches`, `45°`."""
    return error(
        "measure-unknown",
        f"The unit is not written `{spelled}`: did you mean `{right}`?",
        span,
        help="Lengths end in `in`, `cm` or `mm`, angles in `deg`.",
        fix=Fix(f"Write `{right}`", span, right),
    )


def fraction_sign(span: Span, words: str, right: str) -> Diagnostic:
    """`6½in`."""
    return error(
        "fraction-sign",
        f"Fractions are written out: `{right}`.",
        span,
        help=f"Write `{right}`.",
        fix=Fix(f"Write `{right}`", span, right),
    )


def sign_unknown(span: Span, letter: str) -> Diagnostic:
    """A character that has no meaning outside quotes, or that no reader could see."""
    if UNSEEN.match(letter):
        return error(
            "character-unseen",
            f"The character U+{ord(letter):04X} cannot be seen in print.",
            span,
            help="Take it away.",
            fix=Fix("Take it away", span, ""),
        )
    if letter == ";":
        return error(
            "sign-unknown",
            "A statement needs no `;` at its end.",
            span,
            help="Take it away.",
            fix=Fix("Take it away", span, ""),
        )
    if letter.isspace():
        return error(
            "sign-unknown",
            f"This blank is not an ordinary one (U+{ord(letter):04X}).",
            span,
            help="Write an ordinary blank.",
            fix=Fix("Write an ordinary blank", span, " "),
        )
    name = unicodedata.name(letter, "").lower()
    shown = f"`{letter}` ({name})" if name and not letter.isascii() else f"`{letter}`"
    return error(
        "sign-unknown",
        f"The sign {shown} means nothing here.",
        span,
        help="Outside quotes stand only words, numbers and the signs `-- ~~ .. ( ) { } , = : #`.",
    )
