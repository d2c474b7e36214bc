"""The place of a mistake: what stands around it, what could stand there, and whether a mending would fit."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final, NamedTuple

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Source, Span
from .automaton import SPELLING, accepts, expected, may_open, meaning, step, within
from .tokens import DASH_LIKE, END, OPENERS, Token

LOOK: Final = 3
"""Tokens after a mending that must fit: two nearer mistakes in one statement are told as one."""


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
        return may_open(self.states)

    @cached_property
    def within(self) -> str:
        """What a statement here stands in: `block`, `quilt`, `set` or `file`."""
        return within(self.states)

    def span(self, token: Token) -> Span:
        """A token's place."""
        return Span(self.source.name, token.start, token.end)

    def gap(self) -> Span:
        """The place right after the word before."""
        end = self.before.end if self.at else 0
        return Span(self.source.name, end, end)

    def reads(self, mend: Sequence[Token], skip: int, look: int = LOOK) -> bool:
        """Whether the grammar takes the mended tokens and the next few, or all up to the next statement."""
        states: Sequence[int] = self.states
        following = self.tokens[self.at + skip : self.at + skip + look]
        for index, token in enumerate((*mend, *following)):
            taken = step(states, self._as_read(token, states))
            if taken is None:
                return index > len(mend) and token.type in OPENERS and may_end(states)
            if index >= len(mend) and (token.type in OPENERS or token.type in ("LBRACE", "RBRACE", END)):
                return True
            states = taken
        return True

    def _as_read(self, token: Token, states: Sequence[int]) -> str:
        """The token's type here; any dash is the one that is due."""
        if token.type == DASH_LIKE:
            return "DASHES" if accepts(states, "DASHES") else "UNTIL"
        return meaning(token, states[-1])

    def made(self, kind: str, text: str) -> Token:
        """A token that was meant, standing in the place of the next one."""
        return Token(kind, text, self.token.start, self.token.end, self.token.fresh)

    def put_in(self, kind: str) -> Token:
        """A token that was left out."""
        end = self.gap().end
        return Token(kind, SPELLING[kind], end, end)


def may_end(states: Sequence[int]) -> bool:
    """Whether a statement may end here."""
    return accepts(states, "RBRACE") or accepts(states, END)


_STAND_INS: Final = {
    "block": (("TURN", "turn"), ("NUMBER", "2"), ("ABOUT", "about"), ("NAME", "center")),
    "quilt": (
        ("SET", "set"),
        ("NAME", "straight"),
        ("NUMBER", "1"),
        ("NAME", "across"),
        ("NUMBER", "1"),
        ("NAME", "down"),
    ),
    "file": (("BLOCK", "block"), ("STRING", '"untitled"')),
}


def stand_in(token: Token, within: str, opener: str) -> list[Token]:
    """Words to open a body whose own opening words were given up, so that what it holds is still read.

    None where what it holds could not be read: of a `turn` within a quilt, of a `set` within a block.
    """
    if (within, opener) in (("quilt", "TURN"), ("quilt", "MIRROR"), ("block", "SET")) or within == "set":
        return []
    made = _STAND_INS[within]
    if (within, opener) == ("file", "QUILT"):
        made = (("QUILT", "quilt"), ("STRING", '"untitled"'))
    return [
        Token(kind, text, token.start, token.start, soft=text.upper() if kind == "NAME" else "")
        for kind, text in made
    ]
