"""The one record of everything a pass has to say, and the outcome of a pass."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import field
from enum import Enum
from functools import partial
from typing import Final, Generic, Protocol, TypeVar

from ..measure.record import record
from ..words.say import Say
from .source import Span

T = TypeVar("T")
U = TypeVar("U")


class Severity(Enum):
    """ERROR stops the next pass; WARNING and NOTE do not."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@record
class Label:
    """A place, and a few words that stand under its carets."""

    span: Span
    text: str = ""


@record
class Fix:
    """A mend that can be applied: the span replaced by the text."""

    title: str
    span: Span
    text: str


class Facts(Protocol):
    """What a diagnostic was made of."""

    def worded(self, say: Say) -> Diagnostic:
        """The diagnostic in that reader's words."""

    def alike(self, other: Facts) -> bool:
        """Whether both are worded by one function."""


@record
class Diagnostic:
    """One thing to say about one place.

    `code` is subject first, then what is wrong with it (`point-unknown`). `message` is one sentence that
    stands alone; `help` says what to do, in the language's own words. `facts` is what it was made of: it
    can be said again in other units.
    """

    code: str
    severity: Severity
    message: str
    primary: Label
    related: tuple[Label, ...] = ()
    help: str = ""
    fix: Fix | None = None
    facts: Facts | None = field(default=None, compare=False, repr=False)

    def said(self, say: Say) -> Diagnostic:
        """The same said to that reader."""
        return self.facts.worded(say) if self.facts else self


@record
class Outcome(Generic[T]):
    """What a pass made and all it has to say. A value beside an error is partial."""

    value: T | None
    diagnostics: tuple[Diagnostic, ...] = ()

    @property
    def failed(self) -> bool:
        """Whether anything said is an error."""
        return any(each.severity is Severity.ERROR for each in self.diagnostics)

    def then(self, step: Callable[[T], Outcome[U]]) -> Outcome[U]:
        """The next pass, with both passes' diagnostics; after an error nothing runs."""
        if self.value is None or self.failed:
            return Outcome(None, self.diagnostics)
        following = step(self.value)
        return Outcome(following.value, self.diagnostics + following.diagnostics)


def _of(
    severity: Severity,
    code: str,
    message: str,
    span: Span,
    label: str = "",
    *,
    help: str = "",
    related: tuple[Label, ...] = (),
    fix: Fix | None = None,
) -> Diagnostic:
    return Diagnostic(code, severity, message, Label(span, label), related, help, fix)


error: Final = partial(_of, Severity.ERROR)
"""A complaint that stops the next pass."""

warning: Final = partial(_of, Severity.WARNING)
"""A complaint that stops nothing."""

note: Final = partial(_of, Severity.NOTE)
"""A remark that stops nothing."""


def errors_in(diagnostics: Iterable[Diagnostic]) -> list[Diagnostic]:
    """The errors among what was said."""
    return [each for each in diagnostics if each.severity is Severity.ERROR]


def in_order(diagnostics: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """By source, place and code, exact repeats dropped."""
    seen: dict[Diagnostic, None] = dict.fromkeys(diagnostics)
    return tuple(
        sorted(seen, key=lambda each: (each.primary.span.source, each.primary.span.start, each.code))
    )
