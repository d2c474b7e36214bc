"""How much a block draws, counted from its words before anything is drawn.

Turns multiply what stands inside them, so a few lines of text can ask for more than any machine holds. The
count never falls short of the lines drawn: every hop, cell and name in every copy counts.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from ..diagnostics.source import Span
from ..language import tree
from ..words.messages.blocks import too_many_pieces
from .context import Bench
from .sketch import Unit

LINES_MOST: Final = 100_000
"""Drawn lines in one block, copies counted: four for each of the pieces that it may have."""

PIECES_MOST: Final = 25_000
"""Pieces of one block: 158 postage stamps each way, eight times the 3,000-piece sampler that pages are made
for. Each takes a thousandth of a second to draft, template, order and prove."""

FILE_LINKS_MOST: Final = 100_000
"""Seams and edges, from corner to corner, of all blocks of a file: twice what the largest block has."""

BOX_LINES: Final = 4
"""Lines round a plain cell."""


def draws_too_much(block: tree.Block, units: Mapping[str, Unit | None], bench: Bench) -> bool:
    """Whether a block draws more than LINES_MOST lines; complained of at the statement that asks for the
    most."""
    counts = [_drawn(each, units, bench) for each in block.body]
    if sum(counts) <= LINES_MOST:
        return False
    bench.say(too_many_pieces(_words(block.body[counts.index(max(counts))]), LINES_MOST))
    return True


def _words(statement: tree.Statement) -> Span:
    return statement.count.span if isinstance(statement, tree.Turn | tree.Repeat) else statement.span


def _drawn(statement: tree.Statement, units: Mapping[str, Unit | None], bench: Bench) -> int:
    """Lines, names and points that a statement puts down, all its copies counted."""
    frame = bench.frame
    match statement:
        case tree.Turn() | tree.Repeat():
            return statement.count.value * (1 + sum(_drawn(each, units, bench) for each in statement.body))
        case tree.MirrorIn():
            return 2 * (1 + sum(_drawn(each, units, bench) for each in statement.body))
        case tree.Seam():
            return len(statement.path.hops)
        case tree.SeamSmooth():
            return 2 * len(statement.points)
        case tree.Allowance() if statement.path is not None:
            return len(statement.path.hops)
        case tree.PieceDef():
            return len(statement.places)
        case tree.Row():
            return sum(
                (item.count.value if item.count else 1) * _cell_lines(item.cell, units)
                for item in statement.items
            )
        case tree.Alternate():
            cells = (len(frame.across) - 1) * (len(frame.down) - 1)
            return cells * _mean([_cell_lines(cell, units) for cell in statement.cells])
        case tree.Place():
            return len(statement.regions) * _cell_lines(statement.cell, units)
        case tree.Rounds():
            return statement.count.value * 4 * BOX_LINES
    return 1


def _mean(counts: Sequence[int]) -> int:
    return -(-sum(counts) // len(counts))


def _cell_lines(cell: tree.Cell, units: Mapping[str, Unit | None]) -> int:
    """Lines of what is put into a cell: round it, and at least one between each two pieces of a unit."""
    unit = units.get(cell.unit.text) if isinstance(cell, tree.UnitCell) else None
    return BOX_LINES + (2 * len(unit.draft.pieces) if unit else 0)
