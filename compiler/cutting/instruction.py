"""What the cutter is told to do at a cut. Inches."""

from __future__ import annotations

from typing import Literal

from ..measure.record import record
from ..measure.tolerance import Number
from .shapes import Shape

Axis = Literal["across", "along"]
"""A cut runs across the bolt, which parts strips from each other, or along it."""


@record
class Boxes:
    """What boxes of one size are: squares, strips, panels; strips that hold so many `pieces` of a shape, or
    (0) templates of several sorts."""

    shape: Shape
    of: Shape | None = None
    pieces: int = 0


Count = tuple[Boxes, int]
"""Boxes of one size, and how many of them."""


@record
class Part:
    """What is cut up: the cloth, a strip of it, what is left of what was spoken of, or one of several pieces.
    `size`: how high or wide a piece is, cut off by a cut of that axis."""

    what: Literal["cloth", "strip", "rest", "piece", "pieces"]
    size: Number = 0
    axis: Axis = "across"


@record
class CutStrips:
    """Strips are cut across the cloth, or across a `scrap`; what they hold, kind by kind."""

    count: int
    wide: Number
    held: tuple[Count, ...]
    scrap: bool


@record
class CutBoxes:
    """A part is cut once or several times, `size` apart: each is one of `boxes`, or left over (None). `back`:
    something else was spoken of since."""

    part: Part
    back: bool
    axis: Axis
    count: int
    size: Number
    boxes: Boxes | None


@record
class CutPieces:
    """Pieces are cut off a part, to be cut up in turn into what each holds."""

    part: Part
    back: bool
    axis: Axis
    count: int
    size: Number
    held: tuple[Count, ...]


@record
class Remainder:
    """What is left of a part is one of `boxes`."""

    part: Part
    back: bool
    boxes: Boxes


@record
class TrimPiece:
    """A piece of cloth is trimmed to the last mark within its edges, in width or height or both."""

    width: Number | None
    height: Number | None


Instruction = CutStrips | CutBoxes | CutPieces | Remainder | TrimPiece
