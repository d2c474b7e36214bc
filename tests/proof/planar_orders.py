"""Blocks at random that need set-in seams, each put together again by the steps of its order. Run by hand.

    python tests/proof/planar_orders.py [COUNT] [SEED]

Knows nothing of how an order is found: pieces are polygons, a step joins two parts that lie on the table
along all that they share, which is one line, and one block is left. Arcs are chords here.
"""

from __future__ import annotations

import sys
import time
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from piecewright.cutting.templates.making import make_templates
from piecewright.diagnostics.diagnostic import Severity
from piecewright.drafting.model import Draft, Edge, Piece
from piecewright.drafting.stroke import stroke_of
from piecewright.sewing.model import Assembly
from piecewright.sewing.order.assembly import assemble
from piecewright.sewing.proof.resew import prove
from shapely import MultiLineString, Polygon, line_merge, set_precision, union_all
from support.check import draft_text
from support.planar_blocks import planar_block

CHORDS = 24
"""Of each arc."""

GRID = 1e-5
"""Inches to which places are rounded, so that what touches shares its places."""

SLACK = 0.01
"""Inches by which a seam and what two parts share may differ in length: arcs are chords here."""

UNCUT = "whose allowances do not fit"
"""Said of blocks that go together as polygons, and have no sound templates: a matter of other proofs."""

COUNT, SEED = 10_000, 1


def polygon(piece: Piece) -> Polygon:
    """A piece, flat."""
    rings = [[place for part in (part for side in ring for part in side.parts) for place in _flat(part.edge)]
             for ring in (piece.ring, *piece.holes)]
    return set_precision(Polygon(rings[0], rings[1:]), GRID)


def _flat(edge: Edge) -> list[tuple[float, float]]:
    """The places of an edge but its last; an arc's are the same from both sides."""
    stroke = stroke_of(edge)
    if stroke.center is None:
        places = [stroke.start]
    elif stroke.sweep > 0:
        places = [stroke.at(at / CHORDS) for at in range(CHORDS)]
    else:
        places = [stroke.reversed().at(at / CHORDS) for at in range(CHORDS, 0, -1)]
    return [(place.real, place.imag) for place in places]


def put_together(draft: Draft, assembly: Assembly) -> int:
    """How many seams are sewn, every copy's, until the block lies there whole."""
    flat = {piece.number: polygon(piece) for piece in draft.pieces}
    table = {(number,): shape for number, shape in flat.items()}
    seams = 0
    for step, unit in zip(assembly.steps, assembly.units, strict=True):
        for copy in unit.copies:
            parts = [part for part in table if set(part) <= set(copy.pieces)]
            assert len(parts) == 2, f"step {step.step} finds {len(parts)} parts for {copy.pieces}"
            one, two = (table.pop(part) for part in parts)
            shared = one.intersection(two)
            lines = [each for each in getattr(shared, "geoms", [shared]) if each.length > 0]
            line = line_merge(MultiLineString([at.coords for at in lines]))
            assert abs(line.length - step.seam_length) < SLACK * (1 + len(lines)), (
                f"step {step.step} sews {step.seam_length:.3f}in of {line.length:.3f}in")
            assert line.geom_type == "LineString", f"step {step.step} sews more than one line"
            assert line.is_closed == step.closed, f"step {step.step} closes otherwise than it says"
            table[copy.pieces] = union_all([one, two], grid_size=GRID)
            seams += 1
    assert len(table) == 1, f"{len(table)} parts are left"
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
    raise SystemExit(main(*given, *(COUNT, SEED)[len(given):]))
