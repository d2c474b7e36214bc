"""Small words, commas and brackets left out or too many: what to say, what to read instead."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ..diagnostics.source import Span
from ..words.messages import signs as complain
from .automaton import accepts, meaning, step
from .situation import LOOK, Mending, Situation
from .tokens import END, OPENERS, Token

_INSERTED: Final = (
    "EQUAL",
    "ABOUT",
    "AS",
    "AT",
    "IN",
    "OF",
    "FROM",
    "TO",
    "X",
    "ON",
    "DASHES",
    "UNTIL",
    "AROUND",
    "COMMA",
    "LBRACE",
    "RPAR",
    "WITH",
    "RADIUS",
    "SIDE",
)
"""Small words and signs that are easily left out, in the order they are tried: a border of
cloth (`in`) is commoner than one of units (`of`)."""

_BRACKETED: Final = ("NUMBER", "LENGTH", "BETWEEN", "MEET", "FOOT")
"""What begins a phrase that needs brackets inside another, a seam or a line."""


def mend_extra_comma(place: Situation) -> Mending | None:
    """A comma that the grammar has no use for."""
    if place.token.type == "COMMA" and place.reads((), 1, look=1):
        return Mending(complain.comma_extra(place.span(place.token)), (), 1)
    return None


def mend_extra_bracket(place: Situation) -> Mending | None:
    """A closing bracket that closes nothing."""
    if place.token.type == "RPAR" and place.reads((), 1, look=1):
        return Mending(complain.bracket_extra(place.span(place.token)), (), 1)
    return None


def mend_open_bracket(place: Situation) -> Mending | None:
    """A bracket that the statement never closes."""
    if "RPAR" not in place.expected:
        return None
    if place.token.type not in OPENERS and place.token.type not in ("RBRACE", END):
        return None
    brackets: list[Token] = []
    for token in place.tokens[place.statement : place.at]:
        if token.type == "LPAR":
            brackets.append(token)
        elif token.type == "RPAR" and brackets:
            brackets.pop()
    if not brackets:
        return None
    closing = (place.put_in("RPAR"),) * len(brackets)
    mend = closing if place.reads(closing, 0, look=1) else None
    return Mending(complain.bracket_open(place.gap(), place.span(brackets[-1])), mend)


def mend_missing_brackets(place: Situation) -> Mending | None:
    """A phrase without its brackets inside another phrase, a seam, a line or a list; units in `(x, y)`."""
    kinds = [token.type for token in place.tokens[max(place.at - 2, 0) : place.at + 1]]
    if kinds == ["LPAR", "LENGTH", "COMMA"]:
        return Mending(complain.steps_with_unit(place.span(place.before)))
    if place.token.type not in _BRACKETED or "LPAR" not in place.expected:
        return None
    end = _phrase_end(place)
    span = Span(place.source.name, place.token.start, place.tokens[max(end - 1, place.at)].end)
    words = place.source.text[span.start : span.end]
    if end == 0:
        return Mending(complain.brackets_missing(place.span(place.token), ""))
    mend = (place.put_in("LPAR"), *place.tokens[place.at : end], place.put_in("RPAR"))
    return Mending(complain.brackets_missing(span, words), mend, end - place.at)


def _phrase_end(place: Situation) -> int:
    """The index after the longest phrase that fits in brackets here; 0 where none does."""
    states: Sequence[int] | None = step(place.states, "LPAR")
    found = 0
    for index in range(place.at, len(place.tokens) - 1):
        token = place.tokens[index]
        states = step(states, meaning(token, states[-1])) if states is not None else None
        if states is None or (token.type in OPENERS and token.fresh):
            break
        closed = step(states, "RPAR")
        following = place.tokens[index + 1]
        if closed is not None and accepts(closed, meaning(following, closed[-1])):
            found = index + 1
    return found


def mend_left_out(place: Situation) -> Mending | None:
    """A small word or sign left out between two words."""
    if place.token.type == END:
        return None
    for look in (LOOK, 1):
        for kind in _INSERTED:
            made = place.put_in(kind)
            if kind in place.expected and place.reads((made,), 0, look=look):
                before, after = place.before.text, place.token.text
                said = complain.word_missing(place.gap(), place.span(place.token), made.text, before, after)
                return Mending(said, (made,))
    return None
