"""Records: what a pass hands on, compared by what they hold."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, fields
from operator import attrgetter
from typing import Any, TypeVar, dataclass_transform

Kind = TypeVar("Kind")


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def record(kind: type[Kind]) -> type[Kind]:
    """The class as a dataclass with slots that type checkers hold frozen.

    The standard library writes and compiles six functions for each frozen dataclass whenever the program
    starts, which took longer than drafting a small block; here only its `__init__` is compiled, and
    comparing, hashing and telling are the functions below, with the meaning that they have in `dataclasses`.
    """
    made = dataclass(slots=True, eq=False, repr=False)(kind)
    parts = fields(made)  # type: ignore[arg-type]
    compared = _getter([each.name for each in parts if each.compare])
    hashed = _getter([each.name for each in parts if (each.compare if each.hash is None else each.hash)])
    told = [each.name for each in parts if each.repr]

    def equal(self: Any, other: Any) -> bool:
        return compared(self) == compared(other) if other.__class__ is self.__class__ else NotImplemented

    own: dict[str, Any] = {
        "__eq__": equal,
        "__hash__": lambda self: hash(hashed(self)),
        "__repr__": lambda self: (
            f"{kind.__qualname__}({', '.join(f'{n}={getattr(self, n)!r}' for n in told)})"
        ),
    }
    for method, function in own.items():
        if method not in kind.__dict__:
            setattr(made, method, function)
    return made


def _getter(names: list[str]) -> Callable[[Any], Any]:
    return attrgetter(*names) if names else lambda _: ()
