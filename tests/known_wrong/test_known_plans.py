"""What cutting plans get wrong today, asserted as it is: a test here fails when its answer becomes right, and then
moves to tests/proof/test_replay.py as a property of every seed."""

from random import Random

import pytest
from proof.test_replay import check
from support.needs import need, quilt


def test_templates_of_both_hands_may_lie_over_each_other():
    """An irregular template cut both as drawn and reversed: where a row goes over from the one hand to the other,
    the step between two templates is taken from two of one hand, and is too short."""
    chance = Random(3222)
    corners = [(0, 0), (chance.uniform(1, 6), 0), (chance.uniform(2, 7), chance.uniform(1, 5)),
               (chance.uniform(-1, 1), chance.uniform(1, 5))]
    made = quilt([need(corners, chance.randint(1, 30), back=chance.randint(0, 12), reversible=False)])
    with pytest.raises(AssertionError, match="templates lie over each other"):
        check(made)
