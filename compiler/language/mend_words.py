"""Single words that cannot come where they stand, but whose meaning is plain: what to say and to read."""

from __future__ import annotations

import re
from typing import Final

from ..diagnostics.source import Span
from ..words.messages import spelling as complain
from ..words.phrases import nearest
from .automaton import SPELLING
from .situation import Mending, Situation
from .tokens import ODD_WORD, RESERVED, Token

_OTHER_WORDS: Final = {
    "by": ("x",),
    "to": ("--", ".."),
    "and": (",",),
    "about": ("around",),
    "around": ("about",),
    "round": ("about", "around"),
    "thru": ("through",),
    "via": ("through",),
    "into": ("in",),
    "inside": ("in",),
    "toward": ("to",),
    "towards": ("to",),
    "till": ("..",),
    "until": ("..",),
    "along": ("on",),
    "is": ("=",),
    "miter": ("mitred",),
    "mitered": ("mitred",),
    "rotated": ("turned",),
    "flipped": ("mirrored",),
    "reflected": ("mirrored",),
    "off": ("none",),
    "no": ("none",),
    "called": ("as",),
    "named": ("as",),
    "cornerstones": ("posts",),
    "cornerstone": ("posts",),
    "corners": ("posts",),
    "squares": ("posts",),
}
"""What others write for the small words of the language."""

_NUMBER_WORDS: Final = (
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)


_PATH: Final = re.compile(r"([a-z][a-z0-9_]*)-([A-Z]+[0-9]+)")
"""`gate-B1`, meant for `gate -- B1`."""


def mend_missing_unit(place: Situation) -> Mending | None:
    """A bare number where a length or an angle is due."""
    token = place.token
    if token.type != "NUMBER":
        return None
    for kind, unit in (("LENGTH", "in"), ("ANGLE", "deg")):
        made = place.made(kind, token.text + unit)
        if kind in place.expected and "NUMBER" not in place.expected and place.reads((made,), 1, look=1):
            return Mending(complain.unit_missing(place.span(token), kind, made.text), (made,), 1)
    return None


def mend_unwanted_unit(place: Situation) -> Mending | None:
    """A length or an angle where a bare number, or the other of the two, is due."""
    token = place.token
    if token.type not in ("LENGTH", "ANGLE"):
        return None
    number = token.text.rstrip("degincm").rstrip()
    turned = (place.made("NUMBER", number), place.made("ABOUT", "about"))
    if place.opener.type == "TURN" and token.text.endswith("in") and place.reads(turned, 1, look=1):
        eaten = Span(place.source.name, token.end - len("in"), token.end)  # `turn 4 in center`
        return Mending(complain.word_unknown(eaten, "in", "about"), turned, 1)
    for kind, unit in (("NUMBER", ""), ("LENGTH", "in"), ("ANGLE", "deg")):
        made = place.made(kind, number + unit)
        if kind != token.type and kind in place.expected and place.reads((made,), 1, look=1):
            if (
                token.type == "LENGTH"
                and token.text.endswith("in")
                and kind == "NUMBER"
                and place.reads(
                    (made, place.made("IN", "in")),
                    1,
                    look=1,
                )
            ):
                return Mending(
                    complain.in_eaten(place.span(token), number), (made, place.made("IN", "in")), 1
                )
            return Mending(complain.unit_unwanted(place.span(token), token.text, kind, made.text), (made,), 1)
    return None


def mend_dash(place: Situation) -> Mending | None:
    """Another dash than the grammar's, or `--` where `..` is due."""
    token = place.token
    if token.type not in ("DASH_LIKE", "DASHES", "UNTIL"):
        return None
    for kind in ("DASHES", "UNTIL"):
        if kind in place.expected and kind != token.type:
            said = complain.dash_other(place.span(token), token.text, SPELLING[kind])
            return Mending(said, (place.made(kind, SPELLING[kind]),), 1)
    if token.type == "DASH_LIKE":
        return Mending(complain.dash_stray(place.span(token), token.text), (), 1)
    return None


def mend_unquoted_title(place: Situation) -> Mending | None:
    """Bare words where quoted text is due."""
    if "STRING" not in place.expected or place.token.type not in ("NAME", ODD_WORD, "GRID_POINT", "NUMBER"):
        return None
    if place.between and place.token.fresh:  # the title may be left out, and this is the next statement
        return None
    end = place.at
    while place.tokens[end].type in ("NAME", ODD_WORD, "GRID_POINT", "NUMBER") and _in_title(place, end):
        end += 1
    if end == place.at:
        return None
    title = place.source.text[place.token.start : place.tokens[end - 1].end]
    span = Span(place.source.name, place.token.start, place.tokens[end - 1].end)
    made = Token("STRING", f'"{title}"', span.start, span.end)
    return Mending(complain.title_unquoted(span, title, place.opener.text), (made,), end - place.at)


def _in_title(place: Situation, index: int) -> bool:
    """Whether a bare word still belongs to a title without quotes."""
    token = place.tokens[index]
    if index == place.at:
        return True
    if token.fresh or place.tokens[index - 1].text == "version" or place.tokens[index + 1].type == "EQUAL":
        return False
    return not (token.text == "version" and place.tokens[index + 1].type == "NUMBER")


def mend_odd_word(place: Situation) -> Mending | None:
    """A word with capitals or other letters where a name or keyword is due; a grid point in small letters."""
    token = place.token
    span = place.span(token)
    if token.type == "NAME" and "GRID_POINT" in place.expected and "NAME" not in place.expected:
        made = place.made("GRID_POINT", token.text.upper())
        letters = token.text.rstrip("0123456789")
        if letters.isalpha() and letters != token.text:
            return Mending(complain.grid_point_small(span, token.text, made.text), (made,), 1)
        return None
    if token.type not in (ODD_WORD, "GRID_POINT"):
        return None
    small = token.text.lower()
    for kind in place.expected:
        if SPELLING.get(kind) == small:
            return Mending(complain.word_capital(span, token.text, small), (place.made(kind, small),), 1)
    if "NAME" not in place.expected:
        return None
    if token.type == "GRID_POINT":
        return Mending(complain.name_is_grid_point(span, token.text), (place.made("NAME", "name"),), 1)
    made = place.made("NAME", plain_name(token.text))
    path = _PATH.fullmatch(token.text)
    if path:
        said = complain.name_of_path(span, token.text, f"{path.group(1)} -- {path.group(2)}")
    else:
        said = complain.name_letters(span, token.text, made.text)
    return Mending(said, (made,), 1)


def mend_reserved_name(place: Situation) -> Mending | None:
    """A word of the language used as a name."""
    token = place.token
    if token.text not in RESERVED or "NAME" not in place.expected:
        return None
    made = place.made("NAME", token.text)
    if place.reads((made,), 1):
        return Mending(complain.name_reserved(place.span(token), token.text), (made,), 1)
    return None


def mend_outline_first(place: Situation) -> Mending | None:
    """`seam outline -- A1`."""
    if place.token.type != "OUTLINE" or place.before.type not in ("SEAM", "OUTLINE", "ON"):
        return None
    made = place.made("NAME", "center")
    return (
        Mending(complain.outline_first(place.span(place.token)), (made,), 1)
        if place.reads((made,), 1)
        else None
    )


def mend_other_word(place: Situation) -> Mending | None:
    """A word of the language misspelt, or another word for it."""
    token = place.token
    if not token.text.isalpha():
        return None
    spellings = {SPELLING[kind]: kind for kind in place.expected if kind in SPELLING}
    meant = [word for word in _OTHER_WORDS.get(token.text.lower(), ()) if word in spellings]
    for word in (*meant, *(nearest(token.text, spellings) if token.type == "NAME" else ())):
        made = place.made(spellings[word], word)
        if place.reads((made,), 1):
            return Mending(complain.word_unknown(place.span(token), token.text, word), (made,), 1)
    if token.text.lower() in _NUMBER_WORDS and "NUMBER" in place.expected:
        number = str(_NUMBER_WORDS.index(token.text.lower()) + 1)
        said = complain.word_unknown(place.span(token), token.text, number)
        made = place.made("NUMBER", number)
        return Mending(said, (made,), 1) if place.reads((made,), 1, look=1) else Mending(said)
    if place.before.text in ("circle", "regular") and place.before.soft == "":
        return Mending(complain.after_two_faced(place.span(token), place.before.text))
    return None


def plain_name(text: str) -> str:
    """The nearest word that can be a name."""
    made = re.sub(r"[^a-z0-9_]+", "-", text.lower()).strip("-_").lstrip("0123456789_-")
    return made if re.fullmatch(r"[a-z][a-z0-9_]*(-[a-z0-9_]+)*", made) else "name"
