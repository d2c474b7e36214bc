"""One-way prints and stripes stand upright in random quilts: read from the picture and the JSON alone.

By hand: `python tests/proof/test_prints_upright.py 200` says what it found of so many quilts.
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parents[1]))

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.diagnostics.diagnostic import Severity
from piecewright.diagnostics.source import Source
from piecewright.door.records.reports import quilt_report
from piecewright.pipeline import compile_file
from support.library import LibraryShelf
from support.random_prints import random_quilt
from support.upright import cloth_of_prints, missing, pieces_of_picture
from support.works import quilt_sheets


def amiss(text: str) -> tuple[int, list[str]]:
    """How many pieces of prints a quilt has, and what is amiss with them."""
    outcome = compile_file(Source("trial.quilt", text), LibraryShelf())
    if outcome.value is None:  # an unjoined border, across a print that is not so wide, told as that
        errors = {each.code for each in outcome.diagnostics if each.severity is Severity.ERROR}
        assert errors == {"border-too-long"}
        return 0, []
    pieces, found = 0, []
    for quilt in outcome.value.quilts:
        planned = plan_cutting(quilt)
        if planned.value is None:  # a piece wider than the cloth, told as that
            assert {each.code for each in planned.diagnostics} <= {"piece-too-wide"}
            continue
        numbers = quilt_report(quilt, planned.value)
        drawn = quilt_sheets(quilt, planned.value, "picture")
        picture = pieces_of_picture(drawn, numbers)
        for fabric in numbers["fabrics"]:
            wanted = picture.get(fabric["title"], Counter())
            if "print" in fabric and wanted:
                cut = cloth_of_prints(numbers)[fabric["name"]]
                lost = missing(cut, wanted, fabric["print"] == "striped")
                pieces += wanted.total()
                if lost:
                    found.append(f"{lost} of {wanted.total()} pieces of {fabric['print']} {fabric['name']}")
    return pieces, found


@pytest.mark.parametrize("seed", range(24))
def test_every_piece_of_a_print_stands_upright(seed):
    pieces, found = amiss(random_quilt(seed))
    assert not found
    assert pieces >= 0


if __name__ == "__main__":
    total = 0
    for seed in range(int(sys.argv[1]) if len(sys.argv) > 1 else 200):
        pieces, found = amiss(random_quilt(seed))
        total += pieces
        if found:
            print(seed, found)
    print(f"{total} pieces of prints looked at")
