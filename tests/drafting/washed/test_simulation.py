"""Blocks drafted at random, washed and read again: how often the true draft is found, and found first."""

from __future__ import annotations

from random import Random

from piecewright.diagnostics.source import Source
from piecewright.drafting.washed.written import drafted_source
from piecewright.words.numbers import exact_text
from piecewright.words.work.washed import remarks
from support.check import draft_text, said
from support.washed_blocks import measure, place_of_truth, washed_block

CASES = 120
FIRST = 0.95
AMONG_THREE = 0.99


def test_the_true_draft_is_first_in_95_of_100_and_among_three_in_99() -> None:
    """`tests/benchmarks/bench_washed.py` tries a thousand."""
    places = []
    for seed in range(1000, 1000 + CASES):
        block = washed_block(Random(seed))
        places.append(place_of_truth(block, measure(block.text).grids))
    first = sum(place == 0 for place in places) / CASES
    three = sum(place is not None and place < 3 for place in places) / CASES
    print(f"\nwashed blocks: {CASES} cases, true draft first in {first:.1%}, among three in {three:.1%}")
    assert first >= FIRST and three >= AMONG_THREE


def test_what_is_printed_compiles_to_a_block_of_the_drafted_size() -> None:
    for seed in range(20):
        text = washed_block(Random(seed)).text
        new = drafted_source(Source("old.block", text), [measure(text)], remarks)
        seams = "".join(f"  seam through p{number} at 45deg\n" for number in range(new.count("point p")))
        outcome = draft_text(new.replace("\n}", f"\n{seams}}}"))
        assert outcome.value is not None, said(outcome)
        assert f"finished {exact_text(outcome.value[0].width)}in x" in text
