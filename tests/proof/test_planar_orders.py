"""A few of the blocks of `planar_orders.py`: each goes together by its steps, or is refused."""

from __future__ import annotations

from collections import Counter

import pytest
from proof.planar_orders import UNCUT, tried
from support.planar_blocks import planar_block

SHARE = 15
"""Blocks of each test."""

SHARES = 8


@pytest.mark.parametrize("share", range(SHARES))
def test_every_flat_block_is_sewn_by_its_steps(share):
    ends = Counter(tried(planar_block(seed))[0] for seed in range(share * SHARE, (share + 1) * SHARE))
    assert ends["sewn"] > SHARE / 2, "most are blocks that can be made"
    assert ends[UNCUT] <= SHARE / 3, ends


def test_the_same_number_writes_the_same_block():
    texts = [planar_block(seed) for seed in range(50)]
    assert texts == [planar_block(seed) for seed in range(50)] and len(set(texts)) == 50
