"""Blocks at random that need set-in seams, each put together again by the steps of its order. Run by hand.

    python tests/proof/planar_orders.py [COUNT] [SEED]

Knows nothing of how an order is found: a part is the short lines round it. A step joins two parts that lie on
the table along all that they share, which must be one line of the length it says, or two that close a ring,
and one block is left.
"""

from __future__ import annotations

import sys
import time
from collections import Counter
from itertools import pairwise, product
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from piecewright.cutting.templates.making import make_templates
from piecewright.diagnostics.diagnostic import Severity
from piecewright.drafting.model import Draft
from piecewright.geometry.edge import Edge
from piecewright.geometry.stroke import stroke_of
from piecewright.sewing.model import Assembly
from piecewright.sewing.order.assembly import assemble
from piecewright.sewing.proof.resew import prove
from support.check import draft_text
from support.planar_blocks import planar_block

CHORDS = 24
"""Of each arc."""

NEAR = 1e-4
"""Inches. Places nearer than this are one."""

SLACK = 0.01
"""Share of its length by which a seam may differ from what two parts share, for each arc: here it is
chords."""

Lines = frozenset[tuple[int, int]]
"""Short lines from place to place, with the cloth on the right of each."""

UNCUT = "whose allowances do not fit"
"""Said of blocks that go together as polygons, and have no sound templates: a matter of other proofs."""

COUNT, SEED = 10_000, 1


class Table:
    """What lies on the table: each part by its pieces, as the lines round it."""

    def __init__(self, draft: Draft) -> None:
        self.places: list[complex] = []
        self._squares: dict[tuple[int, int], list[int]] = {}
        self.parts: dict[tuple[int, ...], Lines] = {
            (piece.number,): frozenset(
                line
                for ring in (piece.ring, *piece.holes)
                for side in ring
                for part in side.parts
                for line in self._lines(part.edge)
            )
            for piece in draft.pieces
        }

    def _lines(self, edge: Edge) -> list[tuple[int, int]]:
        stroke, chords = stroke_of(edge), CHORDS if edge.arc else 1
        numbers = [self._number(stroke.at(at / chords)) for at in range(chords + 1)]
        return list(pairwise(numbers))

    def _number(self, place: complex) -> int:
        x, y = round(place.real / NEAR), round(place.imag / NEAR)
        for at in product((x - 1, x, x + 1), (y - 1, y, y + 1)):
            for number in self._squares.get(at, ()):
                if abs(self.places[number] - place) < NEAR:
                    return number
        self._squares.setdefault((x, y), []).append(len(self.places))
        self.places.append(place)
        return len(self.places) - 1

    def join(self, pieces: tuple[int, ...], seams: int) -> tuple[float, int]:
        """Sews the two parts that have these pieces along all that they share, which must be so many lines:
        their length together and how many ends they have."""
        found = [part for part in self.parts if set(part) <= set(pieces)]
        assert len(found) == 2 and len(found[0]) + len(found[1]) == len(pieces), f"{found} make no {pieces}"
        one, two = (self.parts.pop(part) for part in found)
        shared = frozenset((a, b) for a, b in one if (b, a) in two)
        assert shared, f"{found} do not touch"
        self.parts[pieces] = (one - shared) | (two - frozenset((b, a) for a, b in shared))
        met = Counter(place for line in shared for place in line)
        ends = sum(many % 2 for many in met.values())
        assert ends in (0, 2 * seams) and _hanging(shared) == seams, f"{found} do not share {seams} lines"
        return sum(abs(self.places[a] - self.places[b]) for a, b in shared), ends


def _hanging(lines: Lines) -> int:
    """Of how many lines, each hanging together, short lines are."""
    beside: dict[int, list[int]] = {}
    for a, b in lines:
        beside.setdefault(a, []).append(b)
        beside.setdefault(b, []).append(a)
    count = 0
    while beside:
        count += 1
        seen = [next(iter(beside))]
        for place in seen:
            seen += [each for each in dict.fromkeys(beside.pop(place)) if each not in seen]
    return count


def put_together(draft: Draft, assembly: Assembly) -> int:
    """How many seams are sewn, every copy's, until the block lies there whole."""
    table, seams = Table(draft), 0
    for step, unit in zip(assembly.steps, assembly.units, strict=True):
        arcs = sum(edge.arc is not None for edge in step.seam)
        for copy in unit.copies:
            length, ends = table.join(copy.pieces, step.seams)
            off = abs(length - step.seam_length)
            slack = NEAR + SLACK * arcs * step.seam_length
            assert off <= slack, f"step {step.step}: {off:.3f}in are not sewn"
            assert step.closed == (not ends), f"step {step.step} closes otherwise than it says"
            seams += 1
    assert len(table.parts) == 1, f"{len(table.parts)} parts are left"
    return seams


def tried(text: str) -> tuple[str, int]:
    """What became of a block: 'sewn', or the code of why there is none; and its seams."""
    drafted = draft_text(text)
    if drafted.value is None:
        return next(each.code for each in drafted.diagnostics if each.severity is Severity.ERROR), 0
    draft = drafted.value[-1]
    assembly = assemble(draft)
    seams = put_together(draft, assembly)
    assert seams == len(draft.pieces) - 1, f"{seams} seams for {len(draft.pieces)} pieces"
    try:
        templates = make_templates(draft)
    except AssertionError:
        return UNCUT, seams
    if templates.value is None:
        return next(each.code for each in templates.diagnostics if each.severity is Severity.ERROR), seams
    proved = prove(draft, templates.value, assembly)
    said = [each.message for each in proved.diagnostics]
    if said and said[0].startswith("As cut"):
        return UNCUT, seams
    assert proved.value is not None, said
    return "sewn", seams


def main(count: int, seed: int) -> int:
    """Prints what became of so many blocks, the most pieces and the slowest."""
    ends: Counter[str] = Counter()
    most, slowest, failed = (0, 0), (0.0, 0), 0
    for number in range(seed, seed + count):
        start = time.process_time()
        try:
            end, seams = tried(planar_block(number))
        except AssertionError as fault:
            failed += 1
            print(f"block {number}: {fault}")
            continue
        ends[end] += 1
        most = max(most, (seams + 1, number))
        slowest = max(slowest, (time.process_time() - start, number))
    print(f"{count} blocks from {seed}: {failed} without an order")
    print(", ".join(f"{many} {end}" for end, many in ends.most_common()))
    print(f"most pieces: {most[0]} (block {most[1]}); slowest: {slowest[0]:.2f} s (block {slowest[1]})")
    return 1 if failed else 0


if __name__ == "__main__":
    given = [int(each) for each in sys.argv[1:]]
    raise SystemExit(main(*given, *(COUNT, SEED)[len(given) :]))
