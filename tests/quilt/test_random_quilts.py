"""Random quilts lie out without a gap, an overlap or a piece that no need counts, and never raise."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings
from support.quilts import check_quilt, codes, quilts, try_quilt

MAY_BE_SAID = {
    "alternate-idle",
    "border-unfit",
    "border-no-room",
    "border-unequal",
    "rows-differ",
    "border-too-long",
}
"""What a quilt put together at random may rightly be told of."""


@settings(max_examples=60, derandomize=True, deadline=None, suppress_health_check=list(HealthCheck))
@given(quilts())
def test_random_quilts_lie_out_whole(body: str) -> None:
    outcome = try_quilt(body)
    said = codes(outcome)
    assert set(said) <= MAY_BE_SAID, (body, outcome.diagnostics)
    if outcome.value is None:
        assert said
        return
    (quilt,) = outcome.value.quilts
    check_quilt(quilt)
