"""What finding an order of sewing costs, re-sewing included: 1,000 pieces beside 100, and 2,000. Run by hand.

python tests/benchmarks/bench_sewing.py
"""

from __future__ import annotations

import gc
import sys
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from benchmarks.bench_growth import grid
from piecewright.command_line.main import CYCLES_BORN
from piecewright.diagnostics.source import Source
from piecewright.drafting.frame import column_letters
from piecewright.pipeline import CompiledBlock
from piecewright.sewing.foundations.foundation import foundations
from piecewright.sewing.order.assembly import assemble
from piecewright.sewing.pressing.pressing import press
from piecewright.sewing.proof.resew import prove
from piecewright.sheets.quilts.wearing import own_roles
from support.library import compiled
from support.quilts import assemble_quilt, try_quilt

ROUNDS = 7
"""Each is timed so often, large and small by turns; the least counts, which load on the machine disturbs
least."""


def logs(rounds: int) -> str:
    """A log cabin: every seam waits for the one before it, and no two units are alike."""
    side, at = 2 * rounds + 1, rounds + 1
    cells = f"{column_letters(at)}{at}..{column_letters(at + 1)}{at + 1}"
    return (
        f'edition 1\nblock "Logs" {{ grid {side} x {side} of 1in\n'
        f"  rounds {rounds} of 1in about {cells} in pale, pale, dark, dark\n}}\n"
    )


def hexagons(across: int, down: int) -> str:
    """A honeycomb, in which every seam but the first is set in."""
    seams = [
        f"seam {' -- '.join(f'({x}, {3 * row + (x + row + 1) % 2})' for x in range(2 * across + 1))}"
        for row in range(1, down)
    ]
    seams += [
        f"seam ({x}, {3 * row + 1 if row else 0}) -- ({x}, {3 * row + 3})"
        for row in range(down)
        for x in range(1, 2 * across)
        if (x + row) % 2 == 0
    ]
    size = f"finished {2 * across}in x {3 * down}in\ngrid {2 * across} x {3 * down}"
    lines = "\n".join([size, *seams])
    return f'edition 1\nblock "Honeycomb" {{\n{lines}\n}}\n'


def seconds(text: str) -> tuple[int, Callable[[], float]]:
    """A block's pieces, and what times finding and proving its order."""
    made = compiled_last(text)

    def once() -> float:
        start = time.perf_counter()
        assert prove(made.draft, made.templates, assemble(made.draft)).value is not None
        return time.perf_counter() - start

    return len(made.draft.pieces), once


def compiled_last(text: str) -> CompiledBlock:
    """The last block of a text."""
    outcome = compiled(Source("bench.block", text))
    assert outcome.value is not None, [each.message for each in outcome.diagnostics]
    return outcome.value[-1]


def costs(made: CompiledBlock) -> str:
    """What each pass over one block takes."""
    order = assemble(made.draft)
    passes: dict[str, Callable[[], object]] = {
        "order": lambda: assemble(made.draft),
        "proof": lambda: prove(made.draft, made.templates, order),
        "pressing": lambda: press(made.draft, order, own_roles(made.draft).lightness),
        "foundations": lambda: foundations(made.draft, order),
    }
    told = []
    for name, run in passes.items():
        start = time.perf_counter()
        run()
        told.append(f"{name} {time.perf_counter() - start:.2f} s")
    return f"{len(made.draft.pieces)} pieces: {', '.join(told)}"


def main() -> None:
    """Prints every ratio."""
    gc.set_threshold(CYCLES_BORN)  # as the command does
    cases = (
        ("log cabin", logs(25), logs(250)),
        ("checkerboard of pairs", grid(10, 5), grid(25, 20)),
        ("honeycomb", hexagons(9, 11), hexagons(30, 33)),
    )
    for name, few, many in cases:
        (small, first), (large, second) = seconds(few), seconds(many)
        times = [(first(), second()) for _ in range(ROUNDS)]
        least, most = min(each for each, _ in times), min(each for _, each in times)
        print(
            f"{name}: {small} pieces {1000 * least:.0f} ms, {large} pieces {1000 * most:.0f} ms: "
            f"{most / least:.1f} x (bound 12)"
        )
    for name, text in (("pairs", grid(50, 20)), ("honeycomb", hexagons(40, 50))):
        print(f"{name}, {costs(compiled_last(text))}")
    for across, down in ((10, 10), (25, 40)):
        made = try_quilt(
            f"set straight {across} across {down} down of 4in {{ alternate pair, sail }}\n"
            "sashing 1in in sand posts in dark"
        ).value
        assert made is not None
        start = time.perf_counter()
        assert assemble_quilt(made.quilts[0]).value is not None
        print(f"quilt of {across * down} blocks, sashed: {time.perf_counter() - start:.2f} s, proof included")


if __name__ == "__main__":
    main()
