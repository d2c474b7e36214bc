"""What is told of sheets that cannot be made, or not as the words are written."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, Literal

from ...diagnostics.diagnostic import Diagnostic, error, warning
from ...diagnostics.source import Span
from ...diagnostics.visible import visible
from ..phrases import one_of
from ..say import Say
from .message import message

LETTERS_TOLD: Final = 6  # of those that one text lacks; more are told by their number
SHOWN: Final = 40  # letters of what is printed instead


@message
def letter_missing(say: Say, span: Span, lost: Sequence[str], printed: str, substitute: str) -> Diagnostic:
    """Letters that the faces lack, what is printed of the text, and what stands for the rest."""
    told = [f"`{visible(letter)}`" for letter in lost[:LETTERS_TOLD]]
    if len(lost) > LETTERS_TOLD:
        told.append(f"{len(lost) - LETTERS_TOLD} more")
    shown = printed if len(printed) <= SHOWN else f"{printed[: SHOWN - 1]}…"
    boxes = f" {substitute} stands for a letter that no other comes near." if substitute in shown else ""
    return warning(
        "letter-missing",
        f"The sheets are set in a typeface that lacks {one_of(told, 'and')}.",
        span,
        f"printed as \u201c{shown}\u201d" if shown else "not printed",
        help=f"Latin, Greek and Cyrillic letters are printed as they are.{boxes}",
    )


Counted = Literal["templates", "templates-at-least", "sheets"]
"""Whose pages are counted: those of the templates, those that their areas alone cover, or all of a block."""


@message
def pages_too_many(say: Say, span: Span, counted: Counted, pages: int, most: int) -> Diagnostic:
    """A block takes more pages than anybody prints."""
    subject = "The sheets take" if counted == "sheets" else "The templates take"
    at_least = "at least " if counted == "templates-at-least" else ""
    return error(
        "pages-too-many",
        f"{subject} {at_least}{pages:,} pages; {most} is the most of one block.",
        span,
        help="Make it smaller, or look at the units of its lengths.",
    )
