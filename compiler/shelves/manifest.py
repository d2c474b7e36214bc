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

from ..diagnostics.diagnostic import Diagnostic, Outcome
from ..diagnostics.source import Source, Span
from ..words.messages import shelves as complain
from .reading import plain_bytes

LARGEST: Final = 64_000  # bytes: a manifest of a thousand names to leave out has less
LONGEST_LINE: Final = 2000  # characters: a key of 10,000 parts takes the library that reads TOML seconds
MOST_TOLD: Final = 20  # of what is wrong with one manifest
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
    whole = Span(path, 0, 0)
    try:
        data = plain_bytes(path, LARGEST)
    except FileNotFoundError:
        return Outcome(Manifest())
    except OSError as problem:
        return _refused(
            Source(path, ""), complain.manifest_damaged(whole, "unreadable", problem.strerror or "")
        )
    source = Source(path, data.decode("utf-8", "replace"))
    if len(data) > LARGEST:
        return _refused(source, complain.manifest_damaged(whole, "larger", LARGEST))
    for start, line in zip(source.line_starts, source.text.split("\n"), strict=False):
        if len(line) > LONGEST_LINE:
            return _refused(source, complain.manifest_damaged(Span(path, start, start), "line", LONGEST_LINE))
    try:
        told = tomllib.loads(data.decode("utf-8"))
    except UnicodeDecodeError:
        return _refused(source, complain.manifest_damaged(whole, "not-text"))
    except tomllib.TOMLDecodeError as problem:
        return _not_toml(source, str(problem))
    except RecursionError:
        return _refused(source, complain.manifest_damaged(whole, "deep"))
    except ValueError:  # Python's own: of a number with thousands of digits
        return _refused(source, complain.manifest_damaged(whole, "number"))
    return _manifest_of(told, source)


def _refused(source: Source, said: Diagnostic) -> Outcome[Manifest]:
    return Outcome(Manifest(source=source), (said,))


def _not_toml(source: Source, words: str) -> Outcome[Manifest]:
    place = PLACE.search(words)
    said = PLACE.sub("", words)
    at = len(source.text)
    if place is not None and place[1] is not None:
        at = source.line_starts[int(place[1]) - 1] + int(place[2]) - 1
    return _refused(source, complain.manifest_damaged(Span(source.name, at, at), "not-toml", said))


def _manifest_of(told: dict[str, Any], source: Source) -> Outcome[Manifest]:
    said: list[Diagnostic] = []
    for key, value in told.items():
        if len(said) >= MOST_TOLD:
            break
        at = _at(source, key)
        span = Span(source.name, at, at)
        if key not in KEYS:
            known = Span(source.name, at, at + len(key))
            said.append(complain.manifest_key_unknown(known, key, KEYS))
        elif key == "leave-out":
            if not isinstance(value, list) or not all(isinstance(each, str) for each in value):
                said.append(complain.manifest_damaged(span, "not-names", key))
        elif not isinstance(value, str):
            said.append(complain.manifest_damaged(span, "not-quoted", key))
    if said:
        return Outcome(Manifest(source=source), tuple(said))
    left = tuple(each.strip("/") for each in told.get("leave-out", ()))
    return Outcome(Manifest(told.get("title", ""), told.get("note", ""), left, source))


def _at(source: Source, key: str) -> int:
    found = re.search(rf"(?m)^[ \t]*[\"']?({re.escape(key)})", source.text)
    return found.start(1) if found else 0
