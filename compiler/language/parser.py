"""Text to the tree of a file, with every mistake of the writing. Never raises, whatever the text.

In: a source. Out: the tree, partial beside an error. An LALR(1) parser over shipped tables: it keeps a stack
instead of calling itself, so no nesting can exhaust Python. At a word that cannot come where it stands,
`mending` says what is wrong and, where what was meant is plain, which words to read instead. Else the
statement is given up and reading goes on at the next word that opens one.
"""

from __future__ import annotations

from typing import Any, Final, NamedTuple

from ..diagnostics.diagnostic import Diagnostic, Outcome, in_order
from ..diagnostics.source import Source, Span
from ..words.messages.files import errors_too_many
from . import limits, tree
from .automaton import ACTIONS, FINISHED, RULES, START, accepts, may_open, meaning, opens, within
from .builder import Builder
from .tokens import END, ODD_WORD, OPENERS, Scan, Token, scan
from .whole_file import out_of_bounds, whole_file

_PATIENCE: Final = 6
"""Mistakes found at one word before it is passed over: more than any mending of one word needs."""


def parse(source: Source) -> Outcome[tree.File]:
    """The tree of a file; all its mistakes of writing in one run."""
    read = scan(source)
    bound = out_of_bounds(source, read.tokens)
    if bound is not None:
        return Outcome(None, in_order((*read.said[: limits.ERRORS], bound)))
    run = _Run(source, read)
    run.read_all()
    said = in_order((*read.said, *run.builder.values.said, *run.said))
    if len(said) > limits.ERRORS:
        more = errors_too_many(said[limits.ERRORS].primary.span, limits.ERRORS)
        return Outcome(None, (*said[: limits.ERRORS], more))
    assert run.result is not None, "the end of the text is always reached"
    whole = whole_file(source, read.tokens, run.result, quiet=bool(said))
    if any(each.code == "blocks-too-many" for each in whole):
        return Outcome(None, in_order((*whole, *said)))
    return Outcome(run.result, in_order((*whole, *said)))


_LEFT_OVER: Final = ("word-unexpected", "statement-unknown", "statement-unfinished")
"""Codes that tell of words nobody knows what to do with."""


class _Entry(NamedTuple):
    """What stands on the stack: a state, what led to it, and the characters it covers."""

    state: int
    value: Any
    start: int
    end: int


class _Inlined(list[Any]):
    """The parts of a rule whose name begins with `_`: they go into the rule around it."""


class _Run:
    """One reading of one source. The stack always holds a sentence's beginning that the grammar allows."""

    def __init__(self, source: Source, read: Scan) -> None:
        self.source = source
        self.tokens = read.tokens
        self.dropped = read.dropped
        self.said: list[Diagnostic] = []
        self.builder = Builder(source.name)
        self.result: tree.File | None = None
        self._stack = [_Entry(START, None, 0, 0)]
        self._at = 0
        self._statement = 0  # index of the token that opened the statement being read
        self._anchor = 1  # height of the stack before that token
        self._told = (-1, -1)  # the statement and the line of the last mistake that was told
        self._tries: dict[int, int] = {}

    def read_all(self) -> None:
        """Reads to the end of the text."""
        while self.result is None and len(self.said) <= limits.ERRORS:
            before = [entry.state for entry in self._stack]
            if not self._take(self.tokens[self._at]):
                self._mistake(before)

    def _take(self, token: Token) -> bool:
        """Shifts a token, after the reductions that it brings; false where it cannot come."""
        while True:
            state = self._stack[-1].state
            terminal = meaning(token, state)
            if terminal == END and state == FINISHED:
                self.result = self._stack[-1].value
                return True
            move = ACTIONS[state].get(terminal)
            if move is None:
                return False
            if move >= 0:
                break
            self._reduce(-1 - move)
        if terminal in OPENERS and opens(state):
            self._statement, self._anchor = self._at, len(self._stack)
        self._stack.append(_Entry(move, token, token.start, token.end))
        self._at += 1
        return True

    def _reduce(self, number: int) -> None:
        """Replaces the parts of a rule on the stack by what the rule makes."""
        rule = RULES[number]
        if rule.plain:  # one part that stands for itself
            top = self._stack.pop()
            state = ACTIONS[self._stack[-1].state][rule.origin]
            self._stack.append(_Entry(state, top.value, top.start, top.end))
            return
        found = self._stack[len(self._stack) - rule.size :]
        del self._stack[len(self._stack) - rule.size :]
        start = found[0].start if found else 0
        end = found[-1].end if found else 0
        parts: list[Any] = _Inlined()
        for place in rule.kept:
            value = found[place].value
            if not isinstance(value, _Inlined):
                parts.append(value)
            elif parts:
                parts.extend(value)
            else:
                parts = value  # a long list grows in place
        value = parts
        if not rule.name.startswith("_"):
            value = self.builder.make(rule.name, list(parts), Span(self.source.name, start, end))
        self._stack.append(_Entry(ACTIONS[self._stack[-1].state][rule.origin], value, start, end))

    # ---- mistakes -----------------------------------------------------------------------------------------

    def _mistake(self, before: list[int]) -> None:
        """Says what is wrong at the next token, and gets past it."""
        token = self.tokens[self._at]
        self._tries[token.start] = self._tries.get(token.start, 0) + 1
        if self._tries[token.start] > _PATIENCE and token.type != END:
            self._at += 1
            return
        from .mending import explain  # only where something is amiss: a third of what parsing loads
        from .situation import Situation

        found = explain(Situation(self.source, self.tokens, self._at, before, self._statement))
        if found.said is not None and not self._marred(token) and not self._follows(found.said):
            self.said.append(found.said)
            self._told = (self._statement, self.source.place(token.start)[0])
        if found.mend is not None:
            self.tokens[self._at : self._at + found.skip] = found.mend
            return
        self._give_up()

    def _follows(self, said: Diagnostic) -> bool:
        """Whether a complaint says no more than that words are left over, after another one about the same
        statement or line: what was put in or passed over there leaves such."""
        token = self.tokens[self._at]
        line = self.source.place(token.start)[0]
        here = self._told[1] == line or (self._told[0] == self._statement and not token.fresh)
        return said.code in _LEFT_OVER and said.fix is None and here

    def _marred(self, token: Token) -> bool:
        """Whether the statement holds a character that was complained of and dropped."""
        opening = self.tokens[min(self._statement, self._at)].start
        return any(opening <= at <= token.start for at in self.dropped)

    def _give_up(self) -> None:
        """Leaves the statement and goes on at the next one, or at the end of the body."""
        from .situation import stand_in

        a_line = self._between_statements()  # it may be followed by another that no statement opens
        if not a_line:
            del self._stack[self._anchor :]
        states = [entry.state for entry in self._stack]
        inside = accepts(states, "RBRACE")
        start = self._at
        opener = self.tokens[self._at if a_line else self._statement].type
        while not self._may_go_on(states):
            if a_line and inside and self._at > start and self._opens_a_line():
                return
            if self.tokens[self._at].type != "LBRACE":
                self._at += 1
                continue
            made = stand_in(self.tokens[self._at], within(states), opener)
            if made:
                self.tokens[self._at : self._at] = made
                return
            self._skip_body()

    def _may_go_on(self, states: list[int]) -> bool:
        """Whether reading can go on at the next token."""
        token = self.tokens[self._at]
        if token.type in (END, "BLOCK", "QUILT"):
            return True
        if token.type == "OUTLINE" and self.tokens[self._at - 1].type in ("DASHES", "COMMA"):
            return False
        return (token.type in OPENERS or token.type == "RBRACE") and accepts(states, token.type)

    def _opens_a_line(self) -> bool:
        """Whether the next token is a word of the writer's at the start of a line."""
        token = self.tokens[self._at]
        return token.fresh and token.type in ("NAME", ODD_WORD)

    def _between_statements(self) -> bool:
        """Whether the statement before the mistake is whole."""
        states = [entry.state for entry in self._stack]
        return may_open(states)

    def _skip_body(self) -> None:
        """Passes over braces and all between them."""
        depth = 0
        while self.tokens[self._at].type != END:
            kind = self.tokens[self._at].type
            depth += (kind == "LBRACE") - (kind == "RBRACE")
            self._at += 1
            if depth == 0:
                return
