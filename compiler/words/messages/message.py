"""What every message is made by: facts go in, and a diagnostic comes out that can be put into words again."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import field, replace
from functools import update_wrapper
from typing import Any, Concatenate, Generic, ParamSpec

from ...diagnostics.diagnostic import Diagnostic
from ...measure.record import record
from ..say import INCHES, Say

P = ParamSpec("P")


@record
class Facts:
    """A message and what it was made of."""

    message: Message[Any]
    values: tuple[Any, ...]
    named: dict[str, Any] = field(hash=False)

    def worded(self, say: Say) -> Diagnostic:
        """The diagnostic in that reader's words."""
        return replace(self.message.words(say, *self.values, **self.named), facts=self)

    def alike(self, other: object) -> bool:
        """Whether both are worded by one function."""
        return isinstance(other, Facts) and self.message is other.message


class Message(Generic[P]):
    """A function that words a diagnostic for a reader, to be called with the facts alone: the diagnostic is
    worded in inches, and keeps its facts to be worded otherwise (`Diagnostic.said`)."""

    def __init__(self, words: Callable[Concatenate[Say, P], Diagnostic]) -> None:
        self.words = words
        update_wrapper(self, words)

    def __call__(self, *values: P.args, **named: P.kwargs) -> Diagnostic:
        return Facts(self, values, named).worded(INCHES)

    def __reduce__(self) -> str:
        """Pickled by name, as a function is."""
        return self.words.__qualname__


def message(words: Callable[Concatenate[Say, P], Diagnostic]) -> Message[P]:
    """Marks a function that words a diagnostic: its first parameter is who it is said to, the others are the
    facts. Numbers come in as numbers, spans as spans."""
    return Message(words)
