"""A shelf's manifest, `shelf.toml`: what the shelf is called, and what in its folder is no part of it.

    title = "Harbour guild"
    note = "Blocks for the winter class."
    leave-out = ["drafts", "old/trial.block"]

All three may be left out, and so may the file.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from typing import Any, Final

from ..diagnostics.diagnostic import Diagnostic, Outcome, error
from ..diagnostics.source import Source, Span
from ..diagnostics.visible import shortened
from ..words.phrases import did_you_mean
from .reading import plain_bytes

LARGEST: Final = 64_000  # bytes: a manifest of a thousand names to leave out has less
LONGEST_LINE: Final = 2000  # characters: a key of 10,000 parts takes the library that reads TOML seconds
MOST_TOLD: Final = 20  # of what is wrong with one manifest
LONGEST_KEY: Final = 40  # characters of a key in a message
PLACE: Final = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")
KEYS: Final = ("title", "note", "leave-out")


@dataclass(frozen=True, slots=True)
class Manifest:
    """What a manifest says. Of `leave_out`, each is a path within the shelf, parted by `/`."""

    title: str = ""
    note: str = ""
    leave_out: tuple[str, ...] = ()
    source: Source | None = None


def read_manifest(path: str) -> Outcome[Manifest]:
    """The manifest in a file; an empty one where there is no such file, or anything is wrong with it."""
    try:
        data = plain_bytes(path, LARGEST)
    except FileNotFoundError:
        return Outcome(Manifest())
    except OSError as problem:
        return _refused(Source(path, ""), 0, problem.strerror or "it cannot be opened")
    source = Source(path, data.decode("utf-8", "replace"))
    if len(data) > LARGEST:
        return _refused(source, 0, f"it is larger than {LARGEST:,} bytes")
    for start, line in zip(source.line_starts, source.text.split("\n"), strict=False):
        if len(line) > LONGEST_LINE:
            return _refused(source, start, f"this line has more than {LONGEST_LINE:,} characters")
    try:
        told = tomllib.loads(data.decode("utf-8"))
    except UnicodeDecodeError:
        return _refused(source, 0, "it is not text in UTF-8")
    except tomllib.TOMLDecodeError as problem:
        return _not_toml(source, str(problem))
    except RecursionError:
        return _refused(source, 0, "its brackets stand too deep in one another")
    except ValueError:  # Python's own: of a number with thousands of digits
        return _refused(source, 0, "a number in it is longer than any")
    return _manifest_of(told, source)


def _refused(source: Source, at: int, reason: str) -> Outcome[Manifest]:
    return Outcome(Manifest(source=source), (damaged(source, at, reason),))


def _not_toml(source: Source, words: str) -> Outcome[Manifest]:
    place = PLACE.search(words)
    said = PLACE.sub("", words)
    if place is None or place[1] is None:
        return _refused(source, len(source.text), said)
    return _refused(source, source.line_starts[int(place[1]) - 1] + int(place[2]) - 1, said)


def _manifest_of(told: dict[str, Any], source: Source) -> Outcome[Manifest]:
    said: list[Diagnostic] = []
    for key, value in told.items():
        if len(said) >= MOST_TOLD:
            break
        if key not in KEYS:
            said.append(unknown_key(source, key))
        elif key == "leave-out":
            if not isinstance(value, list) or not all(isinstance(each, str) for each in value):
                said.append(damaged(source, _at(source, key), "`leave-out` is a list of names in quotes"))
        elif not isinstance(value, str):
            said.append(damaged(source, _at(source, key), f"`{key}` is a text in quotes"))
    if said:
        return Outcome(Manifest(source=source), tuple(said))
    left = tuple(each.strip("/") for each in told.get("leave-out", ()))
    return Outcome(Manifest(told.get("title", ""), told.get("note", ""), left, source))


def _at(source: Source, key: str) -> int:
    found = re.search(rf"(?m)^[ \t]*[\"']?({re.escape(key)})", source.text)
    return found.start(1) if found else 0


def damaged(source: Source, at: int, reason: str) -> Diagnostic:
    """A manifest that says nothing we understand."""
    lowered = reason[:1].lower() + reason[1:]
    return error(
        "manifest-damaged",
        f"This shelf's manifest cannot be read: {lowered}.",
        Span(source.name, at, at),
        help='It is TOML, as in `title = "Harbour guild"`; until it is mended, '
        "nobody knows what is on the shelf.",
    )


def unknown_key(source: Source, key: str) -> Diagnostic:
    """A line that no manifest has."""
    at = _at(source, key)
    return error(
        "manifest-key-unknown",
        f"A shelf's manifest has no `{shortened(key, LONGEST_KEY)}`.",
        Span(source.name, at, at + len(key)),
        help=did_you_mean(key[:LONGEST_KEY], KEYS) or "It has `title`, `note` and `leave-out`.",
    )
