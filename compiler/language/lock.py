"""A lock: the blocks that a file used when it was locked, with their texts, so that they can be used again.

In: what every `use` was found to mean. Out: a Lock, and a shelf that finds what is pinned. A pin
holds the block's own words, so a build needs nothing of the shelf that it came from, which may have moved on.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from ..diagnostics.diagnostic import Outcome
from ..diagnostics.source import Source, Span
from ..words.messages.locks import lock_damaged
from .lock_file import Lock, Pin, PinnedUse
from .parser import parse
from .shelf import Choice, Shelf, ShelfBlock

# ---- what was used, to a lock -----------------------------------------------------------------------------


def lock_of(own: str, choices: Sequence[Choice], fingerprints: Mapping[Span, str]) -> Lock:
    """The lock of a file named `own`. `fingerprints` are those of blocks by the place of their titles."""
    places = {place_of(each.block): each.block for each in choices if not own == each.near == _home(each)}
    order = sorted(places, key=lambda place: (*_called(places[place]), place.source, place.start))
    numbers = {place: number for number, place in enumerate(order)}
    uses: dict[str, dict[tuple[str, int | None], PinnedUse]] = {}
    for each in choices:
        number = numbers.get(place_of(each.block))
        if number is not None:
            asked = (each.use.title.text, each.asked)
            uses.setdefault(each.near, {})[asked] = PinnedUse(*asked, number)
    pins = []
    for place in order:
        inside = [each for each in choices if _within(each, places[place])]
        known = uses.get(place.source, {})
        pins.append(
            _pin(
                places[place],
                fingerprints.get(place, ""),
                _in_order(known[each.use.title.text, each.asked] for each in inside),
            )
        )
    return Lock(tuple(pins), _in_order(uses.get(own, {}).values()))


def _home(choice: Choice) -> str:
    return choice.block.source.name


def place_of(block: ShelfBlock) -> Span:
    """Where the block's title stands: no two blocks share it."""
    return block.block.title.span


def _called(block: ShelfBlock) -> tuple[str, int]:
    return block.block.title.text, block.version


def _within(choice: Choice, block: ShelfBlock) -> bool:
    """Whether the `use` stands in the block."""
    span, inside = block.block.span, choice.use.span
    return choice.near == block.source.name and span.start <= inside.start < span.end


def _in_order(uses: Iterable[PinnedUse]) -> tuple[PinnedUse, ...]:
    """Each once; those that ask for any version before those that ask for one."""
    return tuple(sorted(dict.fromkeys(uses), key=lambda each: (each.title, each.version or 0)))


def pinned_text(block: ShelfBlock) -> str:
    """The block's own words as a text that stands alone."""
    return f"edition 1\n\n{block.source.words(block.block.span)}\n"


def _pin(block: ShelfBlock, fingerprint: str, uses: tuple[PinnedUse, ...]) -> Pin:
    file = block.source.name.replace("\\", "/").rpartition("/")[2]
    return Pin(*_called(block), fingerprint, block.shelf, file, pinned_text(block), uses)


# ---- the shelf of a lock ----------------------------------------------------------------------------------


class LockedShelf:
    """Finds what is pinned; after it, what the shelf has, for a `use` that was written since."""

    def __init__(self, lock: Lock, blocks: Sequence[ShelfBlock], beyond: Shelf) -> None:
        self._lock, self._blocks, self._beyond = lock, blocks, beyond
        self._numbers = {block.source.name: number for number, block in enumerate(blocks)}

    @property
    def sources(self) -> dict[str, Source]:
        """The pinned texts, by the names that places in them are written with."""
        return {block.source.name: block.source for block in self._blocks}

    def find(self, title: str, near: str) -> tuple[ShelfBlock, ...]:
        """The pinned blocks that a use of that title means, then all that the shelf has."""
        number = self._numbers.get(near)
        uses = self._lock.uses if number is None else self._lock.pins[number].uses
        pinned = [self._blocks[use.pin] for use in uses if use.title == title]
        if number is not None:
            return tuple(pinned)
        return (
            *pinned,
            *(replace(each, unpinned=True) for each in self._beyond.find(title, near)),
        )

    def titles(self, near: str) -> Iterable[str]:
        """Every title that the shelf has."""
        return self._beyond.titles(near)


def pinned_blocks(name: str, lock: Lock) -> Outcome[tuple[ShelfBlock, ...]]:
    """The blocks of a lock's pins, in order; none, with what is wrong, where a text is damaged."""
    blocks: list[ShelfBlock] = []
    for number, pin in enumerate(lock.pins, 1):
        source = Source(f"{name}/{number}/{pin.file}", pin.text)
        parsed = parse(source)
        found = parsed.value.blocks if parsed.value and not parsed.failed else ()
        if len(found) != 1 or _called(ShelfBlock(found[0], source, "")) != (pin.title, pin.version):
            return Outcome(None, (lock_damaged(name, "other", pin.title),))
        blocks.append(ShelfBlock(found[0], source, pin.found))
    return Outcome(tuple(blocks))


def with_old_fingerprints(lock: Lock, old: Lock) -> Lock:
    """The lock with the fingerprints that the same texts had when they were first pinned."""
    known = {(pin.title, pin.version, pin.text): pin.fingerprint for pin in old.pins}
    return replace(
        lock,
        pins=tuple(
            replace(pin, fingerprint=known.get((pin.title, pin.version, pin.text), pin.fingerprint))
            for pin in lock.pins
        ),
    )
