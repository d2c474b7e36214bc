"""A file's text laid out in the house style: nothing but blanks, line ends and the edition's line changes.

In: a source. Out: its text, each word as the writer wrote it, each remark in its place.

- A statement stays on the line where the writer put it; two on one line stand two blanks apart. Braces that
  hold more than one line end the line they open on and stand alone where they close.
- Two blanks for each brace that is open, four more where a statement goes on.
- One blank line where the writer left any; one between blocks, always; none inside braces at their ends.
- A path is spaced (`A1 -- B2`), a line is not (`A1--B2`); a unit touches its number.
- Remarks after words stand two blanks off. Those that stood in one column under each other still do.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final, NamedTuple

from ..diagnostics.diagnostic import Outcome
from ..diagnostics.source import Source
from . import tree
from .parser import parse
from .tokens import END, Token, scan
from .walk import nodes_in, statements_in

INDENT: Final = "  "
GOING_ON: Final = 2  # indents more, where a statement goes on on another line
EDITION: Final = "edition 1"  # the newest, in which every older text means the same

_TOUCHES_BEFORE: Final = ("COMMA", "COLON", "UNTIL", "RPAR")
_TOUCHES_AFTER: Final = ("COLON", "UNTIL", "LPAR")
_MEASURES: Final = ("LENGTH", "ANGLE", "PERCENT", "NUMBER")
_BLANK: Final = " \t"
_BLANKS: Final = re.compile(r"[ \t]+")
_BEFORE_UNIT: Final = re.compile(r" (?=[a-z%])")


def format_source(source: Source) -> Outcome[str]:
    """The text in the house style; none where it has a mistake, with all that there is to say of it.

    What comes out is read again, and has the same tree, the same words and the same remarks.
    """
    parsed = parse(source)
    if parsed.value is None or parsed.failed:
        return Outcome(None, parsed.diagnostics)
    tokens = scan(source).tokens
    text = _text_of(_Layout(source, tokens, parsed.value).lines)
    if parsed.value.edition is None:
        text = f"{EDITION}\n\n{text}"
    _assert_same(source, tokens, parsed.value, text)
    return Outcome(text, parsed.diagnostics)


@dataclass(slots=True)
class Line:
    """A line to be: its words, and the remark after them with the column in which it stood."""

    depth: int
    words: str
    blank_before: bool
    remark: str = ""
    column: int = 0


class Gap(NamedTuple):
    """What stands between two words: a remark on the first one's line, then remarks and blank lines ("")."""

    broken: bool  # the second stands on a later line
    remark: str
    at: int  # where the remark begins
    between: tuple[str, ...]

    @property
    def bare(self) -> bool:
        """Whether no remark stands in it."""
        return not self.remark and not any(self.between)


def gaps_of(source: Source, tokens: Sequence[Token]) -> list[Gap]:
    """What stands before each word of a text without mistakes, the end of the text counted as one."""
    text = source.text + "\n"  # the last remark, too, has an end of line
    gaps: list[Gap] = []
    start = 0
    for token in tokens:
        end = len(text) if token.type == END else token.start
        first, *rest = text[start:end].split("\n")
        lines = tuple(each.strip(_BLANK) for each in rest[:-1])
        remark = first.strip(_BLANK)
        if gaps:
            gaps.append(Gap(bool(rest), remark, start + len(first) - len(first.lstrip(_BLANK)), lines))
        else:  # no word stands on the line before the first remark
            gaps.append(Gap(True, "", 0, (remark, *lines) if rest else ()))
        start = token.end
    return gaps


class _Layout:
    """The lines of one source, gathered word by word."""

    def __init__(self, source: Source, tokens: Sequence[Token], file: tree.File) -> None:
        self.lines: list[Line] = []
        self._source = source
        self._starts = {each.span.start for each in statements_in(file)}
        self._spaced = {
            each.span.start for each in nodes_in(file) if isinstance(each, tree.StraightTo | tree.ToOutline)
        }
        self._open = _open_braces(source.text, tokens)
        self._depth = 0
        self._gather(tokens)

    def _gather(self, tokens: Sequence[Token]) -> None:
        before: Token | None = None
        for token, gap in zip(tokens, gaps_of(self._source, tokens), strict=True):
            if token.type == END:
                self._remarks(gap, 0, before, parted=False)
            else:
                self._put(token, before, gap)
            before = token

    def _put(self, token: Token, before: Token | None, gap: Gap) -> None:
        """Puts a word on the line that it belongs on."""
        closes = token.type == "RBRACE"
        if closes:
            self._depth -= 1
        opens_statement = token.start in self._starts or token.type == "EDITION"
        if self._begins_line(token, before, gap, opens_statement):
            going_on = not (opens_statement or closes)
            depth = self._depth + (GOING_ON if going_on else 0)
            parted = self._depth == 0 and opens_statement and before is not None
            blank = self._remarks(gap, depth + closes, before, parted=parted)
            self.lines.append(Line(depth, _words(token), blank and not closes and not going_on))
        else:
            self.lines[-1].words += self._space(token, before, opens_statement) + _words(token)
        if token.type == "LBRACE":
            self._depth += 1

    def _begins_line(self, token: Token, before: Token | None, gap: Gap, opens_statement: bool) -> bool:
        """Whether a word is the first of its line."""
        if before is None:
            return True
        if token.type == "RBRACE" or before.type == "LBRACE":
            return (token if token.type == "RBRACE" else before).start in self._open
        if opens_statement:
            return gap.broken or self._depth == 0 or before.start in self._open
        return gap.broken and not (token.type == "LBRACE" and gap.bare)

    def _space(self, token: Token, before: Token | None, opens_statement: bool) -> str:
        """What stands between two words of one line."""
        assert before is not None, "a line's first word stands after none"
        if opens_statement and before.type != "LBRACE":
            return "  "
        for sign in (token, before):
            if sign.type == "DASHES" and sign.start not in self._spaced:
                return ""
        touches = token.type in _TOUCHES_BEFORE or before.type in _TOUCHES_AFTER
        return "" if touches else " "

    def _remarks(self, gap: Gap, depth: int, before: Token | None, *, parted: bool) -> bool:
        """Adds the remarks of a gap; whether what follows has a blank line before it.

        `parted`: a blank line comes somewhere before what follows.
        """
        if gap.remark and before is not None:
            last = self.lines[-1]
            last.remark, last.column = gap.remark, self._source.place(gap.at)[1]
        opened = before is not None and before.type == "LBRACE"
        blank = parted and "" not in gap.between
        for each in gap.between:
            if not each:
                blank = bool(self.lines) and not opened
                continue
            self.lines.append(Line(depth, each, blank))
            blank = opened = False
        return blank


def _open_braces(text: str, tokens: Sequence[Token]) -> frozenset[int]:
    """Where the braces stand, opening and closing, that hold something and more than one line."""
    found: list[int] = []
    waiting: list[Token] = []
    for token in tokens:
        if token.type == "LBRACE":
            waiting.append(token)
        elif token.type == "RBRACE":
            opening = waiting.pop()
            inside = text[opening.end : token.start]
            if "\n" in inside and inside.strip():
                found += (opening.start, token.start)
    return frozenset(found)


def _words(token: Token) -> str:
    """A word as the writer wrote it, a number's blanks set right."""
    if token.type not in _MEASURES:
        return token.text
    return _BEFORE_UNIT.sub("", _BLANKS.sub(" ", token.text))


def _text_of(lines: Sequence[Line]) -> str:
    """The lines as one text."""
    texts: list[str] = []
    for paragraph in _paragraphs(lines):
        texts += [""] if texts else []
        for line, column in zip(paragraph, _remark_columns(paragraph), strict=True):
            words = INDENT * line.depth + line.words
            texts.append(f"{words.ljust(column)}{line.remark}" if line.remark else words)
    return "".join(f"{text}\n" for text in texts)


def _paragraphs(lines: Sequence[Line]) -> list[list[Line]]:
    """Lines that no blank line parts."""
    found: list[list[Line]] = []
    for line in lines:
        if line.blank_before or not found:
            found.append([])
        found[-1].append(line)
    return found


def _remark_columns(paragraph: Sequence[Line]) -> list[int]:
    """How many letters stand before each line's remark: alike for those that stood in one column."""
    room: dict[int, int] = {}
    for line in paragraph:
        if line.remark:
            needed = len(INDENT) * line.depth + len(line.words) + 2
            room[line.column] = max(room.get(line.column, 0), needed)
    return [room.get(line.column, 0) for line in paragraph]


def _assert_same(source: Source, tokens: Sequence[Token], file: tree.File, text: str) -> None:
    """An assertion that nothing was lost or changed on the way."""
    after = Source(source.name, text)
    parsed = parse(after)
    kept = parsed.value and replace(parsed.value, edition=file.edition)
    assert kept == file and not parsed.failed, "the tree has changed in laying out the text"
    words = [_words(each) for each in scan(after).tokens]
    assert words[len(words) - len(tokens) :] == [_words(each) for each in tokens], "a word has changed"
    assert remarks_in(after) == remarks_in(source), "a remark has changed"


def remarks_in(source: Source) -> list[str]:
    """Every remark of a text without mistakes, in order, with its `#`."""
    gaps = gaps_of(source, scan(source).tokens)
    return [each for gap in gaps for each in (gap.remark, *gap.between) if each]
