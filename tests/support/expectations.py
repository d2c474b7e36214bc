"""Expectations that stand in a block file's comments, beside the words that they are about.

    seam center -- gaet
    #              ^^^^ error[point-unknown]: There is no point called `gaet` here.
    #              ^^^^ help: Did you mean `gate`?

All begin with `#` in the first column. Carets stand under the words of the last line that was no expectation,
`# <-` marks its first column, and `++++` a related place. A span of several lines is marked to the end of its
first. `label:` gives the words under the carets. `#= pieces 4` states a fact of the drafts.
No expectation means no diagnostic at all, notes included.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from piecewright.diagnostics.diagnostic import Diagnostic
from piecewright.diagnostics.source import Source, Span
from piecewright.drafting.model import Draft
from piecewright.measure.length import exact_number
from piecewright.measure.tolerance import near

EXPECTATION = re.compile(
    r"#(?P<pad> *)(?P<mark>\^+|\++|<-\+?) (?P<words>(?:(?:error|warning|note)\[|help: "
    r"|label: |).*)$"
)
FACT = re.compile(r"#= (?P<what>[a-z]+)(?P<rest>.*)$")


class Expected(NamedTuple):
    """What is said at a place: line of the source without its expectations, column and length, both of the
    first line."""

    line: int
    column: int
    length: int
    related: bool
    words: str


def stripped(text: str) -> str:
    """The text without its expectations."""
    return "".join(line for line in text.splitlines(keepends=True) if not _is_expectation(line))


def _is_expectation(line: str) -> bool:
    found = EXPECTATION.match(line.rstrip("\n"))
    return found is not None and bool(found["words"])


def expected(text: str) -> list[Expected]:
    """What the comments expect, in order."""
    found: list[Expected] = []
    line = 0
    for each in text.splitlines():
        if not _is_expectation(each):
            line += 1
            continue
        match = EXPECTATION.match(each)
        assert match is not None
        mark = match["mark"]
        start = 1 if mark.startswith("<") else len(match["pad"]) + 2
        length = 1 if mark.startswith("<") else len(mark)
        found.append(Expected(line, start, length, "+" in mark, match["words"]))
    return sorted(found)


def actual(source: Source, diagnostics: Sequence[Diagnostic]) -> list[Expected]:
    """What is said, as the comments would have it."""
    found: list[Expected] = []
    for each in diagnostics:
        place = _placed(source, each.primary.span)
        found.append(Expected(*place, False, f"{each.severity.value}[{each.code}]: {each.message}"))
        if each.primary.text:
            found.append(Expected(*place, False, f"label: {each.primary.text}"))
        if each.help:
            found.append(Expected(*place, False, f"help: {each.help}"))
        found += [Expected(*_placed(source, label.span), True, label.text) for label in each.related]
    return sorted(found)


def _placed(source: Source, span: Span) -> tuple[int, int, int]:
    line, column = source.place(span.start)
    room = len(source.line(line)) - column + 1
    length = max(1, min(span.end - span.start, room))
    return line, column, 1 if column == 1 else length


def annotated(source: Source, diagnostics: Sequence[Diagnostic]) -> str:
    """A text without expectations, with those written in that its diagnostics meet."""
    wanted = actual(source, diagnostics)
    kinds = {"error": 0, "warning": 0, "note": 0, "label": 1, "help": 2}
    lines = []
    for number, line in enumerate(source.text.splitlines(), 1):
        lines.append(line)
        here = [each for each in wanted if each.line == number]
        here.sort(
            key=lambda each: (each.related, each.column, kinds.get(re.split(r"[\[:]", each.words)[0], 3))
        )
        for each in dict.fromkeys(here):
            mark = "+" if each.related else "^"
            if each.column == 1:
                lines.append(f"# <-{'+' if each.related else ''} {each.words}")
            else:
                lines.append(f"#{' ' * (each.column - 2)}{mark * each.length} {each.words}")
    return "\n".join(lines) + "\n"


def check_facts(text: str, drafts: Sequence[Draft]) -> list[str]:
    """Every fact stated in the text that is not so, with what is. At least the fact's words must be known."""
    wrong = []
    for line in text.splitlines():
        fact = FACT.match(line)
        if fact is None:
            continue
        rest = fact["rest"].split()
        is_so = _fact(fact["what"], rest, drafts[0])
        if not is_so[0]:
            wrong.append(f"{line}: {is_so[1]}")
    return wrong


def _fact(what: str, rest: list[str], draft: Draft) -> tuple[bool, str]:
    match what:
        case "pieces":
            return len(draft.pieces) == int(rest[0]), f"{len(draft.pieces)} pieces"
        case "shapes":
            return len(draft.shapes) == int(rest[0]), f"{len(draft.shapes)} shapes"
        case "fabric":
            count = sum(piece.fabric == rest[0] for piece in draft.pieces)
            return count == int(rest[1]), f"{count} of {rest[0]}"
        case "area":
            value = exact_number(" ".join(rest[1:]))
            assert value is not None
            seen = sorted(float(piece.area) for piece in draft.pieces if piece.name == rest[0])
            return bool(seen) and all(near(each, value) for each in seen), f"areas {seen}"
        case "template":
            shape = next((each for each in draft.shapes if each.label == rest[0]), None)
            if shape is None:
                return False, "there is no such template"
            back = sum(member.reversed for member in shape.members)
            numbers = [len(shape.members) - back, back]
            return rest[1:] == [
                "cut",
                str(numbers[0]),
                "reversed",
                str(numbers[1]),
            ], f"cut and reversed {numbers}"
    raise AssertionError(f"no fact is called {what}")
