"""Whatever a program asks for, drafting answers with a draft or with diagnostics."""

from __future__ import annotations

from collections import Counter

import pytest
from support.check import draft_block
from support.random_blocks import UNITS
from support.random_programs import Programmer

PROGRAMS = 600
SEED = 1871


def test_random_programs_give_drafts_or_diagnostics(capsys: pytest.CaptureFixture[str]) -> None:
    """Refitting, seam lengths and neighbours are asserted inside on every draft that comes out."""
    writer = Programmer(SEED)
    seen: Counter[str] = Counter()
    for _ in range(PROGRAMS):
        body = writer.program()
        outcome = draft_block(body, units=UNITS)
        assert outcome.value is not None or outcome.failed, body
        seen.update({each.code for each in outcome.diagnostics})
        seen["drafted"] += outcome.value is not None
    with capsys.disabled():
        print(f" {PROGRAMS} programs, {seen['drafted']} drafted, {len(seen) - 1} codes met", end=" ")
    assert seen["drafted"] >= 20 and len(seen) >= 20
