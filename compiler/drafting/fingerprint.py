"""A block's fingerprint: a few letters that stay the same as long as its templates do.

In: a draft. Out: 16 hexadecimal digits after the edition of this rule, `1-3f09...`. It tells the finished
outline of every piece, where it lies in the block, and the seam allowance of every side; nothing else. So
titles, names, fabrics, notes, units, the order of statements and the way a point is found do not change it.
"""

from __future__ import annotations

from collections.abc import Sequence
from hashlib import sha256
from math import floor, pi
from typing import Final

from .congruence import FigureCorner, figure_of
from .model import Draft, Piece

RULE: Final = "1"
"""The edition of what is told here. Fingerprints of different editions say nothing about each other."""

STEP: Final = 1 / 1000
"""Inches. Far finer than a change that a writer makes (the finest, 0.1mm, is four steps), far coarser than
floats differ from one machine, or from one way of writing, to another."""

SHIFT: Final = 1 / pi
"""Steps. Places are rounded between the marks of rulers, never at them: a fraction of an inch or of a
centimetre plus this is never close to a whole number of steps, where a hair's breadth would decide."""

DIGITS: Final = 16
"""Of SHA-256: 64 bits. That any two of a million drafts share a fingerprint by chance: 1 in 30 million."""

Told = tuple[int, ...]


def fingerprint_of(draft: Draft) -> str:
    """The fingerprint of the block's geometry."""
    pieces = sorted(_told(piece) for piece in draft.pieces)
    design = (_step(float(draft.width)), _step(float(draft.height)), pieces)
    return f"{RULE}-{sha256(repr(design).encode()).hexdigest()[:DIGITS]}"


def differ(first: str, second: str) -> bool:
    """Whether two fingerprints are of different outlines; false where they were taken by different rules."""
    return first != second and first.partition("-")[0] == second.partition("-")[0]


def _told(piece: Piece) -> tuple[tuple[Told, ...], ...]:
    """The piece's rings, holes in order of place, each from its first corner on."""
    figure = figure_of(piece)
    outer, *holes = (tuple(_corner(corner, figure.origin) for corner in ring) for ring in figure.rings)
    return (_from_first(outer), *sorted(_from_first(hole) for hole in holes))


def _corner(corner: FigureCorner, origin: complex) -> Told:
    """A corner, and the side that starts there: its middle tells how it curves."""
    at, middle = corner.at + origin, corner.middle + origin
    lengths = (at.real, at.imag, middle.real, middle.imag, corner.circle, corner.allowance)
    return tuple(_step(each) for each in lengths)


def _from_first(ring: Sequence[Told]) -> tuple[Told, ...]:
    """The ring from the corner that comes first in order of place."""
    start = min(range(len(ring)), key=lambda at: tuple(ring[at:]) + tuple(ring[:at]))
    return (*ring[start:], *ring[:start])


def _step(length: float) -> int:
    """Which step a length falls into."""
    return floor(length / STEP + SHIFT)
