"""The sheets of a quilt's blocks, kept from build to build: only those of a block that changed are laid out.

Sheets are kept under the digest of all they are laid out from: the draft, its templates, the options and the
words at the head. Numbers of cloth are never kept apart from their build: they depend on the whole quilt.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING, Any

from ...diagnostics.source import Span
from ...words.phrases import count_of
from .digests import digest_of, program_digest

if TYPE_CHECKING:
    from ...cutting.model import Template
    from ...drafting.model import Draft
    from ...sheets.arrange.leaves import Leaf
    from ...sheets.arrange.options import SheetOptions
    from ...sheets.page import Mark
    from .kept import Kept


class KeptSheets:
    """Lays out a block's sheets, or finds them where they were laid out before, and counts both."""

    def __init__(self, kept: Kept | None) -> None:
        self._kept = kept
        self._program = ""
        self.reused = 0
        self.made = 0

    def leaves(
        self, draft: Draft, templates: Sequence[Template], options: SheetOptions, under: str, part: str = ""
    ) -> list[Leaf]:
        """What `block_leaves` makes of the same."""
        from ...sheets.arrange.block_sheets import block_leaves

        key = self._key(draft, templates, options, under, part)
        found = self._kept.find(key) if self._kept and key else None
        if found is not None:
            self.reused += 1
            return leaves_from(found)
        self.made += 1
        made = block_leaves(draft, templates, options, under, part)
        if self._kept and key:
            self._kept.keep(key, bytes_of(made))
        return made

    def told(self) -> str:
        """`Reused the sheets of 9 blocks, made 1.`; '' where none were found."""
        if not self.reused:
            return ""
        return f"Reused the sheets of {count_of(self.reused, 'block')}, made {self.made}."

    def _key(self, *parts: object) -> str:
        """The digest of all that the sheets depend on; '' where nothing is kept."""
        if self._kept is None:
            return ""
        try:
            self._program = self._program or program_digest()
        except OSError:
            self._kept = None
            return ""
        return digest_of(f"sheets {self._program} {content_of(parts)}".encode("utf-8", "surrogatepass"))


def content_of(value: object) -> str:
    """Everything that a value of the model says, in one text; equal texts, equal values.

    Where it was written is left out: a line added above a block moves all its spans and changes nothing.
    """
    told: list[str] = []
    _tell(value, told)
    return " ".join(told)


def _tell(value: Any, told: list[str]) -> None:
    if value is None or isinstance(value, bool | int | float | str):
        told.append(repr(value))
    elif isinstance(value, Fraction):
        told.append(f"{value.numerator}/{value.denominator}")
    elif isinstance(value, Span):
        return
    elif isinstance(value, tuple | list) and not hasattr(value, "_fields"):
        told.append("(")
        for each in value:
            _tell(each, told)
        told.append(")")
    else:
        told.append(f"{type(value).__name__}(")
        for name in _names_in(type(value)):  # type: ignore[arg-type]
            _tell(getattr(value, name), told)
        told.append(")")


@cache
def _names_in(kind: type) -> tuple[str, ...]:
    """The names of a class's fields. mypy takes the hash of a class for that of its objects: hence the two
    `type: ignore` where this is called."""
    named: tuple[str, ...] | None = getattr(kind, "_fields", None)
    return named if named is not None else tuple(each.name for each in fields(kind))


# ---- pages as JSON ----------------------------------------------------------------------------------------


def bytes_of(leaves: Sequence[Leaf]) -> bytes:
    """The pages as JSON."""
    from json import dumps

    told = [
        [_values(each.heading), [_mark_values(mark) for mark in each.marks], each.bookmark, each.part]
        for each in leaves
    ]
    return dumps(told, default=float).encode()


def leaves_from(data: bytes) -> list[Leaf]:
    """The pages again, the same to the last digit."""
    from json import loads

    from ...sheets.arrange.furniture import Heading
    from ...sheets.arrange.leaves import Leaf

    return [
        Leaf(Heading(*heading), tuple(_mark_from(*mark) for mark in marks), bookmark, part)
        for heading, marks, bookmark, part in loads(data)
    ]


def _values(value: Any) -> list[Any]:
    return [getattr(value, name) for name in _names_in(type(value))]  # type: ignore[arg-type]


def _mark_values(mark: Mark) -> list[Any]:
    return [type(mark).__name__, *_values(mark)]


def _mark_from(kind: str, *values: Any) -> Mark:
    from ...sheets.page import PathMark, TextMark

    return (TextMark if kind == TextMark.__name__ else PathMark)(*(_tupled(each) for each in values))


def _tupled(value: Any) -> Any:
    return tuple(_tupled(each) for each in value) if isinstance(value, list) else value
