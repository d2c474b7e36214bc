"""A shelf's manifest, `shelf.toml`: what the shelf is called, and what in its folder is no part of it.

    title = "Harbour guild"
    note = "Blocks for the winter class."
    leave-out = ["drafts", "old/trial.block"]

All three may be left out, and so may the file.
"""

from __future__ import annotations

from typing import Final

from ..diagnostics.diagnostic import Diagnostic, Outcome
from ..diagnostics.source import Source, Span
from ..measure.record import record
from ..words.messages import shelves as complain
from .toml_file import Toml, read_toml

MOST_TOLD: Final = 20  # of what is wrong with one manifest
KEYS: Final = ("title", "note", "leave-out")


@record
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
    problem = read.problem
    if problem is not None:
        at = Span(path, problem.at, problem.at)
        return Outcome(
            Manifest(source=read.source), (complain.manifest_damaged(at, problem.kind, problem.of),)
        )
    return _manifest_of(read)


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
                said.append(complain.manifest_damaged(span, "not-names", key))
        elif not isinstance(value, str):
            said.append(complain.manifest_damaged(span, "not-quoted", key))
    if said:
        return Outcome(Manifest(source=source), tuple(said))
    left = tuple(each.strip("/") for each in told.get("leave-out", ()))
    return Outcome(Manifest(told.get("title", ""), told.get("note", ""), left, source))
