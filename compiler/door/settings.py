"""A folder's settings, `piecewright.toml`: what its owner would otherwise say with every command.

    paper = "a4"
    units = "cm"
    ruler = "0.25cm"
    measured = "0.98in"
    shelves = ["../guild"]
    maker = "Wren Halloway"

All may be left out, and so may the file. It holds for commands given in its folder; options win over it.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from dataclasses import field
from typing import Any, Final

from ..diagnostics.diagnostic import Diagnostic, Outcome
from ..diagnostics.source import Source, Span
from ..failures import WrongUse
from ..language.limits import TITLE_LETTERS
from ..measure.record import record
from ..shelves.toml_file import Toml, read_toml
from ..words.commands import asked
from ..words.messages import folder_settings as complain
from ..words.work.defaults import SETTINGS
from .choices import PAPERS, SOLD, UNIT_WORDS, among, margin_of, measured_square, ruler_step

MOST_TOLD: Final = 20  # of what is wrong with one file
SHELVES: Final = "shelves"
MAKER: Final = "maker"


def _maker_named(value: str) -> str:
    if not value.strip() or len(value) > TITLE_LETTERS or not value.isprintable():
        raise WrongUse(asked.no_maker(TITLE_LETTERS))
    return value


READERS: Final[Mapping[str, Callable[[str], Any]]] = {
    "paper": lambda value: among(value.lower(), PAPERS),
    "ruler": ruler_step,
    "units": lambda value: among(value.lower(), UNIT_WORDS),
    "measured": measured_square,
    "margin": margin_of,
    "buy": lambda value: among(value.lower(), SOLD),
    MAKER: _maker_named,
}
"""What reads each setting that is a text: as the option of that name does."""

KEYS: Final = (*READERS, SHELVES)


@record
class Settings:
    """What a settings file says, each as it is written there, in its order."""

    said: Mapping[str, str] = field(default_factory=dict)
    shelves: tuple[str, ...] = ()
    source: Source | None = None

    @property
    def maker(self) -> str:
        """Who is named where a file of one's own names nobody; '' for nobody."""
        return self.said.get(MAKER, "")

    @property
    def listed(self) -> tuple[tuple[str, str], ...]:
        """What is set, for people: names and values as they are written."""
        shelves = {SHELVES: ", ".join(self.shelves)} if self.shelves else {}
        return tuple({**self.said, **shelves}.items())

    @property
    def record(self) -> dict[str, Any]:
        """The same for other programs; nothing where nothing is set."""
        shelves = {SHELVES: list(self.shelves)} if self.shelves else {}
        return {"settings": {**self.said, **shelves}} if self.said or shelves else {}

    @property
    def options(self) -> dict[str, str]:
        """The options that are given so."""
        return {key: value for key, value in self.said.items() if key != MAKER}


def read_settings(folder: str = "") -> Outcome[Settings]:
    """The settings of a folder; with diagnostics, if anything is wrong with them, none."""
    path = os.path.join(folder, SETTINGS)
    read = read_toml(path)
    if read is None:
        return Outcome(Settings())
    problem = read.problem
    if problem is not None:
        at = Span(path, problem.at, problem.at)
        said = complain.settings_damaged(at, problem.kind, problem.of)
        return Outcome(Settings(source=read.source), (said,))
    faults = _faults(read, folder)
    if faults:
        return Outcome(Settings(source=read.source), tuple(faults[:MOST_TOLD]))
    shelves = tuple(os.path.join(folder, each) for each in read.told.get(SHELVES, ()))
    texts = {key: value for key, value in read.told.items() if key != SHELVES}
    return Outcome(Settings(texts, shelves, read.source))


def _faults(read: Toml, folder: str) -> list[Diagnostic]:
    """What is wrong with each setting, at its name."""
    said: list[Diagnostic] = []
    for key, value in read.told.items():
        at = read.at(key)
        span = Span(read.source.name, at, at + len(key))
        if key not in KEYS:
            said.append(complain.setting_unknown(span, key, KEYS))
        elif key == SHELVES:
            if not isinstance(value, list) or not all(isinstance(each, str) for each in value):
                said.append(complain.setting_not_text(span, key, True))
                continue
            gone = [each for each in value if not os.path.isdir(os.path.join(folder, each))]
            said += [complain.setting_no_folder(span, each) for each in gone]
        elif not isinstance(value, str):
            said.append(complain.setting_not_text(span, key, False))
        else:
            try:
                READERS[key](value)
            except WrongUse as problem:
                said.append(complain.setting_wrong(span, key, str(problem)))
    return said
