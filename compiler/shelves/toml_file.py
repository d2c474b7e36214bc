"""TOML files of others, read with care: bounded in bytes, lines and depth, and every problem at its place."""

from __future__ import annotations

import re
import tomllib
from typing import Any, Final

from ..diagnostics.source import Source
from ..measure.record import record
from ..words.messages.shelves import TomlDamage
from .reading import plain_bytes

LARGEST: Final = 64_000  # bytes: a list of a thousand names has less
LONGEST_LINE: Final = 2000  # characters: a key of 10,000 parts takes the library that reads TOML seconds
PLACE: Final = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")


@record
class Problem:
    """What keeps a file from being TOML, where in the text, and the most there may be, or what the system or
    the library says of it."""

    kind: TomlDamage
    at: int = 0
    of: str | int = ""


@record
class Toml:
    """A file's text, and its keys and values; or what keeps them from being had."""

    source: Source
    told: dict[str, Any]
    problem: Problem | None = None

    def at(self, key: str) -> int:
        """Where a key stands in the text."""
        found = re.search(rf"(?m)^[ \t]*[\"']?({re.escape(key)})", self.source.text)
        return found.start(1) if found else 0


def read_toml(path: str) -> Toml | None:
    """The file; None where there is none."""
    try:
        data = plain_bytes(path, LARGEST)
    except FileNotFoundError:
        return None
    except OSError as problem:
        return Toml(Source(path, ""), {}, Problem("unreadable", 0, problem.strerror or ""))
    source = Source(path, data.decode("utf-8", "replace"))
    if len(data) > LARGEST:
        return Toml(source, {}, Problem("larger", 0, LARGEST))
    for start, line in zip(source.line_starts, source.text.split("\n"), strict=False):
        if len(line) > LONGEST_LINE:
            return Toml(source, {}, Problem("line", start, LONGEST_LINE))
    try:
        return Toml(source, tomllib.loads(data.decode("utf-8")))
    except UnicodeDecodeError:
        return Toml(source, {}, Problem("not-text"))
    except tomllib.TOMLDecodeError as problem:
        return Toml(source, {}, _not_toml(source, str(problem)))
    except RecursionError:
        return Toml(source, {}, Problem("deep"))
    except ValueError:  # Python's own: of a number with thousands of digits
        return Toml(source, {}, Problem("number"))


def _not_toml(source: Source, words: str) -> Problem:
    place = PLACE.search(words)
    at = len(source.text)
    if place is not None and place[1] is not None:
        at = source.line_starts[int(place[1]) - 1] + int(place[2]) - 1
    return Problem("not-toml", at, PLACE.sub("", words))
