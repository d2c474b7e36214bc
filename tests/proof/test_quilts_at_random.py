"""Random quilts counted a second time: nothing that is written or printed of them says anything else.
Three hundred by hand: `python tests/proof/quilts_at_random.py 300`."""

from __future__ import annotations

from quilts_at_random import CLOTHS, Plan, trial

FIRST = 1000  # other quilts than those that the program looks at by hand
MANY = 30


def test_random_quilts_come_out_as_counted_by_hand() -> None:
    found = trial(range(FIRST, FIRST + MANY))
    assert found["quilts"] == MANY and found["booklets"] >= 2
    assert found["colourways"] > MANY and found["drawn"] > 2000 and found["cuts"] > 100
    assert found["yardages"] > MANY


def test_random_quilts_hold_what_they_are_to_try() -> None:
    """Among few quilts each kind of set, sashing, border and cloth comes up."""
    texts = [Plan(number).text for number in range(FIRST, FIRST + MANY)]
    for words in (
        "set straight",
        "set on point",
        "set rows",
        "sashing",
        "posts in",
        "around",
        "mitred",
        "corners",
        "border to",
        "place ",
        "turned",
        "mirrored",
        "Buoy",
        "Flood",
        "one way",
        "striped",
        "fat quarter",
        "scrap",
        "shrinks",
        "bias",
        "cm in",
    ):
        assert any(words in text for text in texts), f"no quilt has `{words}`"
    assert all(f"fabric {cloth}" in text for text in texts for cloth in CLOTHS)
