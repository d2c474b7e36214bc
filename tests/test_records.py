"""Our `dataclass` behaves as the standard library's, on the same classes."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from typing import Any

import pytest
from piecewright.records import dataclass


def shelf(decorator: Callable[..., Any]) -> tuple[type, type]:
    @decorator(frozen=True, slots=True, kw_only=True)
    class Words:
        span: int = dataclasses.field(compare=False, repr=False)

    @decorator(frozen=True, slots=True, kw_only=True)
    class Board(Words):
        wood: str
        width: float = 3.5
        nails: tuple[int, ...] = ()
        total: float = dataclasses.field(init=False)

        def __post_init__(self) -> None:
            object.__setattr__(self, "total", self.width * 2)

    @decorator(slots=True)
    class Heap:
        name: str
        boards: list[int] = dataclasses.field(default_factory=list)

    return Board, Heap


OURS, THEIRS = shelf(dataclass), shelf(dataclasses.dataclass)


def told(make: Callable[[], object]) -> str:
    """What comes of it: its words, or the kind of exception."""
    try:
        return repr(make()).replace("<locals>.", "")
    except Exception as problem:
        return type(problem).__name__


def outcomes(board: Any, heap: Any) -> list[str]:
    one = board(span=1, wood="oak", nails=(1, 2))
    two = board(span=9, wood="oak", nails=(1, 2))
    first, second = heap("a"), heap("a", [1])
    first.boards.append(7)
    return [
        told(lambda: one), told(lambda: first), told(lambda: heap("a")), told(lambda: second),
        told(lambda: one == two), told(lambda: one == board(span=1, wood="elm")), told(lambda: one == 3),
        told(lambda: hash(one) == hash(two)), told(lambda: hash(first)), told(lambda: {one: 1}[two]),
        told(lambda: setattr(one, "wood", "elm")), told(lambda: delattr(one, "wood")),
        told(lambda: setattr(first, "name", "b")), told(lambda: first.name),
        told(lambda: setattr(first, "colour", "b")),
        told(lambda: dataclasses.replace(one, width=5.0)), told(lambda: dataclasses.replace(one, total=5.0)),
        told(lambda: board(1, "oak")), told(lambda: board(span=1)), told(lambda: heap()),
        told(lambda: board(span=1, wood="oak", paint="red")),
        told(lambda: [each.name for each in dataclasses.fields(one)]), told(lambda: heap.__match_args__),
    ]  # fmt: skip


@pytest.mark.parametrize("number", range(len(outcomes(*THEIRS))))
def test_each_use_comes_out_as_with_the_library(number: int) -> None:
    assert outcomes(*OURS)[number] == outcomes(*THEIRS)[number]
