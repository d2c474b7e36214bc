"""What a lock holds, and its JSON: written, and read with every damage told.

A lock stands beside a file and holds every block that the file used from elsewhere, as text.
"""

from __future__ import annotations

import json
import re
from hashlib import sha256
from typing import Any, Final, TypeVar

from ..diagnostics.diagnostic import Outcome
from ..diagnostics.visible import accents_joined
from ..measure.record import record
from ..words.messages import locks as complain

FORM: Final = 1
"""The form of a lock's JSON. A later one has a higher number."""

HEAD: Final = "piecewright-lock"

MOST_PINS: Final = 5_000
"""Blocks in one lock. A quilt with a block of its own in every cell has some hundred."""

SURROGATE: Final = re.compile("[\\ud800-\\udfff]")
"""Half a letter: JSON can say it, and no file can hold it."""

T = TypeVar("T")


@record
class PinnedUse:
    """A `use` by what it asks for (version None: any), and the pin that it means."""

    title: str
    version: int | None
    pin: int


@record
class Pin:
    """One block as it was. `text` stands alone; `found` and `file` say where it came from."""

    title: str
    version: int
    fingerprint: str
    found: str  # 'beside', 'shelf' or 'library'
    file: str
    text: str
    uses: tuple[PinnedUse, ...] = ()


@record
class Lock:
    """Every block used from elsewhere, in order of title and version, and what the file's own uses mean."""

    pins: tuple[Pin, ...]
    uses: tuple[PinnedUse, ...]


def lock_text(lock: Lock) -> str:
    """The lock as JSON, texts line by line, so that a comparison of two of them can be read."""
    pins = [
        {
            "title": pin.title,
            "version": pin.version,
            "fingerprint": pin.fingerprint,
            "found": pin.found,
            "file": pin.file,
            "digest": digest_of(pin.text),
            "text": pin.text.splitlines(),
            "uses": [_use_record(each) for each in pin.uses],
        }
        for pin in lock.pins
    ]
    told = {HEAD: FORM, "uses": [_use_record(each) for each in lock.uses], "blocks": pins}
    return json.dumps(told, indent=2, ensure_ascii=False) + "\n"


def _use_record(use: PinnedUse) -> dict[str, Any]:
    return {"title": use.title, "version": use.version, "block": use.pin}


def digest_of(text: str) -> str:
    """What tells whether a pinned text was changed by hand."""
    return sha256(text.encode()).hexdigest()


def read_lock(name: str, data: bytes) -> Outcome[Lock]:
    """The lock that a file holds; none, with what is wrong with it."""
    try:
        told = json.loads(data)
        form = _value(told, HEAD, int)
        if form > FORM:
            return Outcome(None, (complain.lock_newer(name),))
        blocks = _value(told, "blocks", list)
        if len(blocks) > MOST_PINS:
            return Outcome(None, (complain.lock_damaged(name, "pins", MOST_PINS),))
        pins = tuple(_read_pin(each) for each in blocks)
        lock = Lock(pins, _read_uses(told))
    except RecursionError:
        return Outcome(None, (complain.lock_damaged(name, "deep"),))
    except UnicodeDecodeError:
        return Outcome(None, (complain.lock_damaged(name, "not-text"),))
    except json.JSONDecodeError as problem:
        return Outcome(None, (complain.lock_damaged(name, "not-json", problem.lineno),))
    except _Damaged as problem:
        return Outcome(None, (complain.lock_damaged(name, problem.damage, problem.of),))
    except ValueError:  # Python's own: of a number with thousands of digits
        return Outcome(None, (complain.lock_damaged(name, "number"),))
    if any(not 0 <= use.pin < len(pins) for use in (*lock.uses, *(u for pin in pins for u in pin.uses))):
        return Outcome(None, (complain.lock_damaged(name, "pin-missing"),))
    return Outcome(lock)


class _Damaged(Exception):
    """What is wrong with a lock, and of which key or block."""

    def __init__(self, damage: complain.LockDamage, of: str) -> None:
        self.damage, self.of = damage, of


def _read_pin(told: Any) -> Pin:
    title, lines = _title(told), _value(told, "text", list)
    text = "".join(f"{line}\n" for line in lines)
    if SURROGATE.search(text):
        raise _Damaged("half-letters", title)
    if digest_of(text) != _value(told, "digest", str):
        raise _Damaged("changed", title)
    return Pin(
        title,
        _value(told, "version", int),
        _value(told, "fingerprint", str),
        _value(told, "found", str),
        _value(told, "file", str),
        text,
        _read_uses(told),
    )


def _read_uses(told: Any) -> tuple[PinnedUse, ...]:
    return tuple(
        PinnedUse(
            _title(each), each.get("version") and _value(each, "version", int), _value(each, "block", int)
        )
        for each in _value(told, "uses", list)
    )


def _title(told: Any) -> str:
    """A title, its accents joined to their letters as in a file's."""
    return accents_joined(_value(told, "title", str))


def _value(told: Any, key: str, kind: type[T]) -> T:
    """What stands under a key. _Damaged where it is not there or of another kind."""
    value = told.get(key) if isinstance(told, dict) else None
    if (
        not isinstance(value, kind)
        or isinstance(value, bool)
        or (isinstance(value, str) and SURROGATE.search(value))
    ):
        raise _Damaged("key", key)
    return value
