"""Remarks that silence a check: `# lint: allow NAME, NAME`.

After words it holds for their line. On a line of its own it holds for the whole statement that follows,
braces and all: before a `block`, for the block.
"""

from __future__ import annotations

import re
from typing import Final

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Span
from ..language.tokens import scan
from ..measure.record import record
from .linted import Linted

ALLOW: Final = re.compile(r"#[ \t]*lint:[ \t]*allow\b(?P<names>[^\n]*)")
NAME: Final = re.compile(r"[^\s,]+")
ALLOW_CODES: Final = ("allow-unknown", "allow-idle")


@record
class Allowance:
    """One name of one such remark, and the characters it holds for."""

    name: str
    span: Span
    start: int
    end: int

    def covers(self, said: Diagnostic) -> bool:
        """Whether it silences that."""
        return said.code == self.name and self.start <= said.primary.span.start < self.end


def allowances_of(linted: Linted) -> list[Allowance]:
    """Every silence of a file, in order."""
    source = linted.source
    text = source.text
    for token in scan(source).tokens:
        if token.type == "STRING":  # a `#` between quotes begins no remark
            text = text[: token.start] + "\0" * (token.end - token.start) + text[token.end :]
    starts = sorted((node.span.start, node.span.end) for node in linted.statements())
    found: list[Allowance] = []
    for remark in ALLOW.finditer(text):
        begins = text.rfind("\n", 0, remark.start()) + 1
        if "#" in text[begins : remark.start()]:
            continue  # a remark on remarks
        if text[begins : remark.start()].strip():
            scope = begins, remark.start()
        else:
            scope = next((each for each in starts if each[0] >= remark.end()), (len(text), len(text)))
        for name in NAME.finditer(text, remark.start("names"), remark.end("names")):
            found.append(Allowance(name.group(), Span(source.name, name.start(), name.end()), *scope))
    return found
