"""No program breaks the compiler: whatever stands in a file, `check` ends with a status and words for it."""

from __future__ import annotations

from pathlib import Path

import pytest
from proof.hostile_programs import try_all

PROGRAMS = 2_000
SEED = 7


def test_hostile_programs_are_taken_or_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    tally = try_all(PROGRAMS, SEED, tmp_path)
    with capsys.disabled():
        print(f" {dict(tally.ends)}, {len(tally.codes)} codes, slowest {tally.slowest[0][0]:.1f}s", end=" ")
    assert not tally.broken, tally.broken[:5]
    assert tally.ends["clean"] > PROGRAMS / 50 and len(tally.codes) > 60
