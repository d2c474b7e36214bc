"""The tables of the grammar at work: which word may come next, and what a step leads to.

Nothing here makes a tree or says anything; the parser and the mending of mistakes both walk these tables.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from . import _tables
from .tokens import END, Token


class Rule(NamedTuple):
    """A rule: what it makes, the builder's name for it, its length, the parts kept; `plain`: a lone part."""

    origin: str
    name: str
    size: int
    kept: tuple[int, ...]
    plain: bool


RULES: Final = tuple(
    Rule(origin, name, size, kept, kept == (0,) and size == 1 and name.startswith("_"))
    for origin, name, size, kept in _tables.RULES
)

ACTIONS: Final[tuple[dict[str, int], ...]] = tuple(
    dict(zip(row[::2], row[1::2], strict=True)) for row in _tables.ACTIONS
)
"""A row a state: a symbol leads to a state (0 and up) or to a reduction by rule -1 - number."""

START: Final = _tables.START
FINISHED: Final = _tables.END

TERMINALS: Final = (*(name for name, _, _ in _tables.TERMINALS if name not in ("BLANKS", "COMMENT")), END)

SPELLING: Final = {name: value for name, kind, value in _tables.TERMINALS if kind == "str"}
SPELLING.update(CIRCLE="circle", FOOT="foot", SMOOTH="smooth", REGULAR="regular")


def meaning(token: Token, state: int) -> str:
    """What the token is in this state: a word that is also a keyword is one where a keyword is due."""
    return token.soft if token.soft and token.soft in ACTIONS[state] else token.type


def step(states: Sequence[int], terminal: str) -> list[int] | None:
    """The states after taking a terminal; None where it cannot come here."""
    stack = list(states)
    while True:
        if terminal == END and stack[-1] == FINISHED:
            return stack
        move = ACTIONS[stack[-1]].get(terminal)
        if move is None:
            return None
        if move >= 0:
            stack.append(move)
            return stack
        rule = RULES[-1 - move]
        if rule.size:
            del stack[-rule.size :]
        stack.append(ACTIONS[stack[-1]][rule.origin])


def accepts(states: Sequence[int], terminal: str) -> bool:
    """Whether the terminal can come next."""
    return step(states, terminal) is not None


_OPENING: Final = ("NOTE", "ROW", "BLOCK")
"""A statement may open where one of these may: in a block or quilt, in the braces of a set, outside both."""


def opens(state: int) -> bool:
    """Whether the state itself, nothing left to reduce, awaits a statement."""
    return any(each in ACTIONS[state] for each in _OPENING)


def may_open(states: Sequence[int]) -> bool:
    """Whether a statement may come next."""
    return any(accepts(states, each) for each in _OPENING)


def within(states: Sequence[int]) -> str:
    """What a new statement would stand in: a `block`, `quilt` or `set`; `file`: none of them."""
    for terminal, thing in (("SEAM", "block"), ("FABRIC", "quilt"), ("ROW", "set")):
        if accepts(states, terminal):
            return thing
    return "file"


def expected(states: Sequence[int]) -> tuple[str, ...]:
    """Every terminal that can come next, in the order of their names."""
    return tuple(each for each in TERMINALS if accepts(states, each))
