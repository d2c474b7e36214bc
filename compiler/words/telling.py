"""The words around diagnostics: what severities are called, what leads in help, how a run is summed up."""

from __future__ import annotations

from typing import Final, Literal

from .phrases import count_of, one_of

SEVERITIES: Final = {"error": "error", "warning": "warning", "note": "note"}
"""What a person reads for each severity."""

HELP: Final = "help"
"""Leads in what to do."""

Sought = Literal["mistakes", "habits"]
"""What a run looked for."""

NOTHING: Final[dict[Sought, str]] = {"mistakes": "No mistakes", "habits": "Nothing to improve"}


def mend_text(title: str) -> str:
    """What to do, where only a mend says it."""
    return f"{title}."


def summary(errors: int, warnings: int, notes: int, *, faulty: int, files: int, sought: Sought) -> str:
    """`2 errors and 1 warning in 1 of 3 files.`"""
    counted = ((errors, SEVERITIES["error"]), (warnings, SEVERITIES["warning"]), (notes, SEVERITIES["note"]))
    parts = [count_of(number, word) for number, word in counted if number]
    total = count_of(files, "file")
    if not parts:
        return f"{NOTHING[sought]} in {total}."
    where = total if faulty in (0, files) else f"{faulty} of {total}"
    return f"{one_of(parts, 'and')} in {where}."
