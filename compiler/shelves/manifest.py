"""A shelf's manifest, `shelf.toml`: what the shelf is called, and what in its folder is no part of it.

    title = "Harbour guild"
    note = "Blocks for the winter class."
    leave-out = ["drafts", "old/trial.block"]

All three may be left out, and so may the file.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, Outcome
from ..diagnostics.source import Source, Span
from ..words.messages import shelves as complain
from .toml_file import LARGEST, LONGEST_LINE, Problem, Toml, read_toml

MOST_TOLD: Final = 20  # of what is wrong with one manifest
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
    read = read_toml(path)
    if read is None:
        return Outcome(Manifest())
    if read.problem is not None:
        at = Span(path, read.problem.at, read.problem.at)
        return Outcome(Manifest(source=read.source), (_damaged(read.problem, at),))
    return _manifest_of(read)


def _damaged(problem: Problem, at: Span) -> Diagnostic:
    match problem.kind:
        case "unreadable":
            return complain.manifest_unreadable(at, problem.detail)
        case "too-large":
            return complain.manifest_too_large(at, LARGEST)
        case "line-too-long":
            return complain.manifest_line_too_long(at, LONGEST_LINE)
        case "not-text":
            return complain.manifest_not_text(at)
        case "not-toml":
            return complain.manifest_not_toml(at, problem.detail)
        case "too-deep":
            return complain.manifest_too_deep(at)
        case "number-too-long":
            return complain.manifest_number_too_long(at)


def _manifest_of(read: Toml) -> Outcome[Manifest]:
    told, source = read.told, read.source
    said: list[Diagnostic] = []
    for key, value in told.items():
        if len(said) >= MOST_TOLD:
            break
        at = read.at(key)
        span = Span(source.name, at, at)
        if key not in KEYS:
            known = Span(source.name, at, at + len(key))
            said.append(complain.manifest_key_unknown(known, key, KEYS))
        elif key == "leave-out":
            if not isinstance(value, list) or not all(isinstance(each, str) for each in value):
                said.append(complain.manifest_not_names(span, key))
        elif not isinstance(value, str):
            said.append(complain.manifest_not_quoted(span, key))
    if said:
        return Outcome(Manifest(source=source), tuple(said))
    left = tuple(each.strip("/") for each in told.get("leave-out", ()))
    return Outcome(Manifest(told.get("title", ""), told.get("note", ""), left, source))
