"""What the cutter does at a cut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import Final, assert_never

from ...cutting.instruction import (
    Axis,
    Boxes,
    Count,
    CutBoxes,
    CutPieces,
    CutStrips,
    Instruction,
    Part,
    Remainder,
    TrimPiece,
)
from ..phrases import count_of, one_of
from ..say import Say
from .shapes import shape_word

MEASURED: Final[dict[Axis, str]] = {"across": "high", "along": "wide"}
"""What the size of a part is called, by the way it is cut off."""


def instruction_words(say: Say, instructions: Iterable[Instruction]) -> str:
    """The sentences of one cut; '' of one that was told with another."""
    return " ".join(_sentence(say, each) for each in instructions)


def _sentence(say: Say, told: Instruction) -> str:
    match told:
        case CutStrips():
            return _strips(say, told)
        case CutBoxes():
            return _boxes(say, told)
        case CutPieces():
            return _pieces(say, told)
        case Remainder(part, back, boxes):
            of = f" of {_called(say, part, True)}" if back else ""
            return f"What is left{of} is {things(boxes, 1)}."
        case TrimPiece(width, height):
            sides = [
                f"{say.on_ruler(length)} {way}"
                for length, way in ((width, "wide"), (height, "high"))
                if length is not None
            ]
            return f"Trim the piece to {' and '.join(sides)}."
    assert_never(told)


def boxes_words(boxes: Boxes) -> str:
    """`square`; `strip of 6 diamonds`."""
    held = _held(boxes)
    shape = shape_word(boxes.shape)
    return f"{shape} of {held}" if held else shape


def things(boxes: Boxes, count: int) -> str:
    """`10 squares`; `2 strips of 6 templates each`."""
    held = _held(boxes)
    each = " each" if boxes.pieces and count > 1 else ""
    return count_of(count, shape_word(boxes.shape)) + (f" of {held}{each}" if held else "")


def _held(boxes: Boxes) -> str:
    if not boxes.of:
        return ""
    of = shape_word(boxes.of)
    return count_of(boxes.pieces, of) if boxes.pieces else f"{of}s"


def _called(say: Say, part: Part, back: bool) -> str:
    """What a part is called: at its first cut, and when words come back to it from a piece of it."""
    match part.what:
        case "cloth":
            return ""
        case "rest":
            return "what is left"
        case "strip":
            return "the strip" if back else "it"
        case "piece":
            return f"the piece {say.on_ruler(part.size)} {MEASURED[part.axis]}" if back else "it"
        case "pieces":
            return "each piece" if back else "each"
    assert_never(part.what)


def _boxes(say: Say, told: CutBoxes) -> str:
    """`Cut it across every 3 7/8in: 10 squares.`"""
    called = _called(say, told.part, told.back)
    way = "from the top" if told.axis == "across" else "across"
    cut = f"Cut {called or 'it'} {way} {'every' if told.count > 1 else 'at'} {say.on_ruler(told.size)}"
    if told.boxes is None:
        return f"{cut}; the rest is left over."
    return f"{cut}: {things(told.boxes, told.count)}{' from each' if called == 'each' else ''}."


def _pieces(say: Say, told: CutPieces) -> str:
    """`From what is left, cut a piece 3 7/8in high for 9 squares.`"""
    called = _called(say, told.part, told.back)
    begin = "Cut" if called in ("", "it") else f"From {called}, cut"
    pieces = "a piece" if told.count == 1 else f"{told.count} pieces"
    held = one_of([things(*each) for each in told.held], "and")
    each = "" if told.count == 1 else " each"
    return f"{begin} {pieces} {say.on_ruler(told.size)} {MEASURED[told.axis]} for {held}{each}."


def _strips(say: Say, told: CutStrips) -> str:
    """`Cut 7 strips 3 7/8in wide across the cloth.`"""
    count = told.count
    strips = f"{'a strip' if count == 1 else f'{count} strips'} {say.on_ruler(told.wide)} wide"
    cut = f"Cut {strips} across the {'piece' if told.scrap else 'cloth'}"
    if not told.held:
        return f"{cut}."
    if len(told.held) == 1 and told.held[0][1] == count and told.held[0][0] != Boxes("strip"):
        return f"{cut}: {things(told.held[0][0], count)}."
    return f"{cut}; {_what_strips_hold(told.held, count)}."


def _what_strips_hold(held: Iterable[Count], count: int) -> str:
    """`2 hold 8 templates each, 1 holds templates and 1 stays whole`."""
    many: Counter[tuple[str, int]] = Counter()
    whole = 0
    for boxes, number in held:
        if boxes.of:
            many[_held(boxes), boxes.pieces] += number
        else:
            whole += number
    told = [
        f"{number} {'holds' if number == 1 else 'hold'} {words}{' each' if number > 1 and pieces else ''}"
        for (words, pieces), number in many.items()
    ]
    if whole == count:
        return "it stays whole" if count == 1 else "all stay whole"
    if whole:
        told.append(f"{whole} {'stays' if whole == 1 else 'stay'} whole")
    return one_of(told, "and")
