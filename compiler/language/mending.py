"""What the writer meant at a word that cannot come where it stands.

In: the situation: the tokens, the place of the word, the states of the grammar before it. Out: what to say, and,
where what was meant is plain, the tokens to read instead. Each kind of mistake is one function in MENDINGS,
tried in turn; the words are in `syntax_errors`. A mending is proposed only where the grammar then takes the next
few tokens, so that one mistake gives one message.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final, NamedTuple

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Source, Span
from ..diagnostics.wording import nearest
from . import syntax_errors as words
from .automaton import SPELLING, accepts, expected, meaning, step
from .tokens import BLOCK_OPENERS, END, LATER_OPENERS, ODD_WORD, OPENERS, RESERVED, Token

_LOOK: Final = 3
"""Tokens after a mending that must fit: two nearer mistakes in one statement are told as one."""

_INSERTED: Final = (
    "EQUAL", "ABOUT", "AS", "AT", "OF", "FROM", "TO", "IN", "X", "ON", "DASHES", "UNTIL", "AROUND", "COMMA", "LBRACE",
    "RPAR", "WITH", "RADIUS", "SIDE",
)
"""Small words and signs that are easily left out, in the order they are tried."""


class Mending(NamedTuple):
    """What to say (None: it was said before), and the tokens that take the place of `skip` tokens.

    `mend` is None where the statement is to be given up.
    """

    said: Diagnostic | None
    mend: tuple[Token, ...] | None = None
    skip: int = 0


@dataclass(frozen=True)
class Situation:
    """The place of a mistake: `tokens[at]` cannot come after `states`. `statement` opened at that index."""

    source: Source
    tokens: Sequence[Token]
    at: int
    states: Sequence[int]
    statement: int

    @property
    def token(self) -> Token:
        """The word that cannot come here."""
        return self.tokens[self.at]

    @property
    def before(self) -> Token:
        """The word before it; at the start of the text, the word itself."""
        return self.tokens[max(self.at - 1, 0)]

    @property
    def opener(self) -> Token:
        """The word that opened the statement."""
        return self.tokens[min(self.statement, self.at)]

    @cached_property
    def expected(self) -> tuple[str, ...]:
        """What could come here."""
        return expected(self.states)

    @cached_property
    def between(self) -> bool:
        """Whether a statement could open here."""
        return accepts(self.states, "SEAM") or accepts(self.states, "BLOCK")

    def span(self, token: Token) -> Span:
        """A token's place."""
        return Span(self.source.name, token.start, token.end)

    def gap(self) -> Span:
        """The place right after the word before."""
        end = self.before.end if self.at else 0
        return Span(self.source.name, end, end)

    def reads(self, mend: Sequence[Token], skip: int, look: int = _LOOK) -> bool:
        """Whether the grammar takes the mended tokens and the next few, or all up to the next statement."""
        states: Sequence[int] = self.states
        following = self.tokens[self.at + skip:self.at + skip + look]
        for index, token in enumerate((*mend, *following)):
            taken = step(states, meaning(token, states[-1])) if token.type != END else step(states, END)
            if taken is None:
                return index > len(mend) and token.type in OPENERS and _ends(states)
            if index >= len(mend) and (token.type in OPENERS or token.type in ("LBRACE", "RBRACE", END)):
                return True
            states = taken
        return True

    def made(self, kind: str, text: str) -> Token:
        """A token that was meant, standing in the place of the next one."""
        return Token(kind, text, self.token.start, self.token.end, self.token.fresh)

    def put_in(self, kind: str) -> Token:
        """A token that was left out."""
        end = self.gap().end
        return Token(kind, SPELLING[kind], end, end)


def _ends(states: Sequence[int]) -> bool:
    """Whether a statement may end here."""
    return accepts(states, "RBRACE") or accepts(states, END)


def explain(place: Situation) -> Mending:
    """What is wrong at a place, and how to go on."""
    for mending in MENDINGS:
        found = mending(place)
        if found is not None:
            return found
    return Mending(words.unexpected(place.source, place.span(place.token), place.before, place.token,
                                    place.expected))


# ---- braces and statements --------------------------------------------------------------------------------


def _brace_open(place: Situation) -> Mending | None:
    """The text, or a block, ends before its braces are closed."""
    if place.token.type not in (END, "BLOCK", "QUILT") or not accepts(place.states, "RBRACE"):
        return None
    braces = _open_braces(place.tokens[:place.at])
    closing = (Token("RBRACE", "}", place.before.end, place.before.end),) * len(braces)
    culprit = _never_closed(place.source, place.tokens[:place.at]) or braces[-1]
    return Mending(words.brace_open(place.gap(), place.span(culprit), len(braces)), closing)


def _open_braces(tokens: Iterable[Token]) -> list[Token]:
    """The braces not yet closed, the outermost first."""
    braces: list[Token] = []
    for token in tokens:
        if token.type == "LBRACE":
            braces.append(token)
        elif token.type == "RBRACE" and braces:
            braces.pop()
    return braces


def _never_closed(source: Source, tokens: Iterable[Token]) -> Token | None:
    """The first brace whose own closing one seems to be missing, going by how the lines are set in."""
    braces: list[Token] = []
    for token in tokens:
        if token.type == "LBRACE":
            braces.append(token)
        elif token.type == "RBRACE" and braces:
            opened = braces.pop()
            if token.fresh and _set_in(source, token) < _set_in(source, opened):
                return opened
    return None


def _set_in(source: Source, token: Token) -> int:
    """How many blanks the token's line begins with."""
    line = source.line(source.place(token.start)[0])
    return len(line) - len(line.lstrip())


def _brace_extra(place: Situation) -> Mending | None:
    """A closing brace that closes nothing."""
    if place.token.type == "RBRACE" and place.between and not accepts(place.states, "RBRACE"):
        return Mending(words.brace_extra(place.span(place.token)), (), 1)
    return None


def _foreign_opener(place: Situation) -> Mending | None:
    """A statement that cannot stand here: of a quilt, of the file, or outside any block."""
    token = place.token
    if not place.between or token.type not in OPENERS:
        return None
    span = place.span(token)
    if token.type == "QUILT":
        return Mending(words.quilt_not_yet(span))
    if token.type == "EDITION":
        skip = 2 if place.tokens[place.at + 1].type == "NUMBER" else 1
        return Mending(words.edition_not_first(span), (), skip)
    if token.text in LATER_OPENERS:
        return Mending(words.washed_not_yet(span) if token.text == "washed" else words.of_a_quilt(span, token.text))
    return Mending(words.outside_block(span, token.text))


def _statement_unknown(place: Situation) -> Mending | None:
    """A word that opens no statement, where one could open."""
    token = place.token
    if not place.between or (place.at and not token.fresh and place.before.type not in ("LBRACE", "RBRACE")):
        return None
    inside = accepts(place.states, "RBRACE")
    known = BLOCK_OPENERS if inside else ("block", "edition")
    close = nearest(token.text.lower(), known) if token.type in ("NAME", ODD_WORD) else []
    said = words.statement_unknown(place.span(token), token, close, inside)
    for word in close[:1]:
        made = place.made(word.upper(), word)
        if place.reads((made,), 1, look=1):
            return Mending(said, (made,), 1)
    return Mending(said)


def _hole(place: Situation) -> Mending | None:
    """The statement before is not finished when the next one opens, or the body or the text ends."""
    token = place.token
    ends = token.type in ("RBRACE", END) or (token.type in OPENERS and token.fresh)
    if not ends or place.between or _ends(place.states):
        return None
    if place.before.type == "COMMA":
        return Mending(words.comma_last(place.span(place.before), place.expected))
    if place.opener.type == "USE" and "AS" in place.expected:
        return Mending(words.use_without_as(place.gap()))
    return Mending(words.unfinished(place.gap(), place.opener, place.before, place.expected))


# ---- single words -----------------------------------------------------------------------------------------


def _unit_missing(place: Situation) -> Mending | None:
    """A bare number where a length or an angle is due."""
    token = place.token
    if token.type != "NUMBER":
        return None
    for kind, unit in (("LENGTH", "in"), ("ANGLE", "deg")):
        made = place.made(kind, token.text + unit)
        if kind in place.expected and "NUMBER" not in place.expected and place.reads((made,), 1, look=1):
            return Mending(words.unit_missing(place.span(token), kind, made.text), (made,), 1)
    return None


def _unit_unwanted(place: Situation) -> Mending | None:
    """A length or an angle where a bare number, or the other of the two, is due."""
    token = place.token
    if token.type not in ("LENGTH", "ANGLE"):
        return None
    number = token.text.rstrip("degincm").rstrip()
    for kind, unit in (("NUMBER", ""), ("LENGTH", "in"), ("ANGLE", "deg")):
        made = place.made(kind, number + unit)
        if kind != token.type and kind in place.expected and place.reads((made,), 1, look=1):
            if token.type == "LENGTH" and token.text.endswith("in") and kind == "NUMBER" and place.reads(
                (made, place.made("IN", "in")), 1, look=1,
            ):
                return Mending(words.in_eaten(place.span(token), number), (made, place.made("IN", "in")), 1)
            return Mending(words.unit_unwanted(place.span(token), token.text, kind, made.text), (made,), 1)
    return None


def _dash(place: Situation) -> Mending | None:
    """Another dash than the grammar's."""
    if place.token.type != "DASH_LIKE":
        return None
    for kind in ("DASHES", "UNTIL"):
        if kind in place.expected:
            return Mending(words.dash_other(place.span(place.token), place.token.text, SPELLING[kind]),
                           (place.made(kind, SPELLING[kind]),), 1)
    return Mending(words.dash_stray(place.span(place.token), place.token.text), (), 1)


def _title_unquoted(place: Situation) -> Mending | None:
    """Bare words where quoted text is due."""
    if "STRING" not in place.expected or place.token.type not in ("NAME", ODD_WORD, "GRID_POINT", "NUMBER"):
        return None
    end = place.at
    while place.tokens[end].type in ("NAME", ODD_WORD, "GRID_POINT", "NUMBER") and _in_title(place, end):
        end += 1
    if end == place.at:
        return None
    title = place.source.text[place.token.start:place.tokens[end - 1].end]
    span = Span(place.source.name, place.token.start, place.tokens[end - 1].end)
    made = Token("STRING", f'"{title}"', span.start, span.end)
    return Mending(words.title_unquoted(span, title, place.opener.text), (made,), end - place.at)


def _in_title(place: Situation, index: int) -> bool:
    """Whether a bare word still belongs to a title without quotes."""
    token = place.tokens[index]
    if index == place.at:
        return True
    if token.fresh or place.tokens[index - 1].text == "version":
        return False
    return not (token.text == "version" and place.tokens[index + 1].type == "NUMBER")


def _odd_word(place: Situation) -> Mending | None:
    """A word with capitals or other letters where a name or a keyword is due; a grid point in small letters."""
    token = place.token
    span = place.span(token)
    if token.type == "NAME" and "GRID_POINT" in place.expected and "NAME" not in place.expected:
        made = place.made("GRID_POINT", token.text.upper())
        letters = token.text.rstrip("0123456789")
        if letters.isalpha() and letters != token.text:
            return Mending(words.grid_point_small(span, token.text, made.text), (made,), 1)
        return None
    if token.type not in (ODD_WORD, "GRID_POINT"):
        return None
    small = token.text.lower()
    for kind in place.expected:
        if SPELLING.get(kind) == small:
            return Mending(words.word_capital(span, token.text, small), (place.made(kind, small),), 1)
    if "NAME" not in place.expected:
        return None
    if token.type == "GRID_POINT":
        return Mending(words.name_is_grid_point(span, token.text), (place.made("NAME", "name"),), 1)
    made = place.made("NAME", words.plain_name(token.text))
    return Mending(words.name_odd(span, token.text, made.text), (made,), 1)


def _reserved(place: Situation) -> Mending | None:
    """A word of the language used as a name."""
    token = place.token
    if token.text not in RESERVED or "NAME" not in place.expected:
        return None
    made = place.made("NAME", token.text)
    if place.reads((made,), 1):
        return Mending(words.name_reserved(place.span(token), token.text), (made,), 1)
    return None


def _outline_first(place: Situation) -> Mending | None:
    """`seam outline -- A1`."""
    if place.token.type != "OUTLINE" or place.before.type not in ("SEAM", "OUTLINE", "ON"):
        return None
    made = place.made("NAME", "center")
    return Mending(words.outline_first(place.span(place.token)), (made,), 1) if place.reads((made,), 1) else None


def _misspelt(place: Situation) -> Mending | None:
    """A small word of the language misspelt, or the statement's next word run into another spelling."""
    token = place.token
    if token.type != "NAME":
        return None
    spellings = {SPELLING[kind]: kind for kind in place.expected if SPELLING.get(kind, "").isalpha()}
    for word in nearest(token.text, spellings):
        made = place.made(spellings[word], word)
        if place.reads((made,), 1):
            return Mending(words.word_misspelt(place.span(token), token.text, word), (made,), 1)
    return None


# ---- small words and signs left out or too many -----------------------------------------------------------


def _comma_extra(place: Situation) -> Mending | None:
    """A comma that the grammar has no use for."""
    if place.token.type != "COMMA":
        return None
    if place.reads((), 1, look=1):
        return Mending(words.comma_extra(place.span(place.token)), (), 1)
    return None


def _left_out(place: Situation) -> Mending | None:
    """A small word or sign left out between two words."""
    if place.token.type == END:
        return None
    for look in (_LOOK, 1):
        for kind in _INSERTED:
            made = place.put_in(kind)
            if kind in place.expected and place.reads((made,), 0, look=look):
                return Mending(words.left_out(place.gap(), place.span(place.token), place.opener, made.text,
                                              place.before, place.token), (made,))
    return None


def _bracket_open(place: Situation) -> Mending | None:
    """A bracket that the statement never closes."""
    if "RPAR" not in place.expected or not (place.token.type in OPENERS or place.token.type in ("RBRACE", END)):
        return None
    brackets: list[Token] = []
    for token in place.tokens[place.statement:place.at]:
        if token.type == "LPAR":
            brackets.append(token)
        elif token.type == "RPAR" and brackets:
            brackets.pop()
    if not brackets:
        return None
    closing = (place.put_in("RPAR"),) * len(brackets)
    mend = closing if place.reads(closing, 0, look=1) else None
    return Mending(words.bracket_open(place.gap(), place.span(brackets[-1])), mend)


def _bracket_extra(place: Situation) -> Mending | None:
    """A closing bracket that closes nothing."""
    if place.token.type == "RPAR" and place.reads((), 1, look=1):
        return Mending(words.bracket_extra(place.span(place.token)), (), 1)
    return None


MENDINGS: Final[tuple[Callable[[Situation], Mending | None], ...]] = (
    _brace_open, _brace_extra, _foreign_opener, _dash, _unit_missing, _unit_unwanted, _title_unquoted,
    _statement_unknown, _outline_first, _bracket_open, _hole, _reserved, _odd_word, _comma_extra, _bracket_extra,
    _misspelt, _left_out,
)
"""Every kind of mistake, the surest first."""
