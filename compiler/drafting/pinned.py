"""What a lock says beside today's drafts: uses that it lacks, changed outlines, what an update brings."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Span
from ..language.lock import place_of
from ..language.lock_file import Lock, Pin, PinnedUse
from ..language.shelf import Choice, ShelfBlock
from ..measure.record import record
from ..words.messages.locks import lock_drafts_otherwise, lock_lacks
from .fingerprint import differ


@record
class Change:
    """What one `use` meant in the older lock, and what it means in the newer; None: it is not there."""

    old: Pin | None
    new: Pin | None

    @property
    def disagrees(self) -> bool:
        """Whether outlines changed under an unchanged version."""
        old, new = self.old, self.new
        return (
            old is not None
            and new is not None
            and old.version == new.version
            and differ(old.fingerprint, new.fingerprint)
        )

    @property
    def redraws(self) -> bool:
        """Whether one block takes another's place, with other outlines."""
        return self.old is not None and self.new is not None and self.old.fingerprint != self.new.fingerprint


def changes(old: Lock, new: Lock) -> tuple[Change, ...]:
    """Every use that means another block, or other words, in the newer lock; outer uses first."""
    changed: dict[Change, None] = {}
    seen: set[tuple[Pin | None, Pin | None]] = set()
    waiting = [(old.uses, new.uses)]
    while waiting:
        before, after = waiting.pop(0)
        for pair in _pairs(_meanings(old, before), _meanings(new, after)):
            if pair in seen:
                continue
            seen.add(pair)
            waiting.append((pair[0].uses if pair[0] else (), pair[1].uses if pair[1] else ()))
            if _says(pair[0]) != _says(pair[1]):
                changed[Change(*pair)] = None
    return tuple(changed)


Asked = tuple[str, int]  # a title, and the version asked for; 0: any


def _meanings(lock: Lock, uses: Sequence[PinnedUse]) -> dict[Asked, Pin]:
    return {(use.title, use.version or 0): lock.pins[use.pin] for use in uses}


def _pairs(before: dict[Asked, Pin], after: dict[Asked, Pin]) -> Iterator[tuple[Pin | None, Pin | None]]:
    """What each use meant and means; one that asks for another version of a title now is the same use."""
    gone = {asked[0]: before[asked] for asked in before if asked not in after}
    for asked in sorted({**before, **after}):
        if asked in after:
            yield before.get(asked) or gone.pop(asked[0], None), after[asked]
    for title in sorted(gone):
        yield gone[title], None


def _says(pin: Pin | None) -> object:
    """What makes a pin another one: neither its number nor where it was found."""
    return pin and (pin.title, pin.version, pin.fingerprint, pin.text)


def said_of_choices(
    name: str,
    own: str,
    lock: Lock,
    blocks: Sequence[ShelfBlock],
    choices: Sequence[Choice],
    fingerprints: Mapping[Span, str],
) -> list[Diagnostic]:
    """What a build has to say: uses that are not pinned, and pins that draft otherwise than they did."""
    pinned = {place_of(block): pin for block, pin in zip(blocks, lock.pins, strict=True)}
    said: list[Diagnostic] = []
    for each in choices:
        pin = pinned.get(place_of(each.block))
        now = fingerprints.get(place_of(each.block), "")
        if pin is None and each.near == own != each.block.source.name:
            said.append(
                lock_lacks(each.use.title.span, name, each.block.block.title.text, each.block.version)
            )
        elif pin is not None and differ(pin.fingerprint, now):
            said.append(lock_drafts_otherwise(each.use.title.span, pin.title, pin.version))
    return said
