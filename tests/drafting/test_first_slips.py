"""What is said of one slip: that it is this, and nothing else."""

from __future__ import annotations

from support.check import draft_block, only


def test_an_arc_that_leaves_the_block_is_told_by_its_bulge() -> None:
    """Both ends lie on the edge. The whole arc is meant, not the part at the left that comes first."""
    told = only(draft_block("finished 6in seam left ~~ right through (1in from top at 0deg)"), "seam-outside")
    assert "bulges out of the block at the top by 1in" in told.message
    around = only(draft_block("finished 6in seam top-left ~~ top-right around center"), "seam-outside")
    assert "bulges" in around.message and "after `around` on its other side" in around.help


def test_it_is_the_bulge_and_not_the_turn() -> None:
    text = "finished 6in turn 4 about center { seam top-left ~~ top-right through (1in from top at 0deg) }"
    told = only(draft_block(text), "seam-outside")
    assert "bulges" in told.message and "turn" not in told.help


def test_it_is_the_seam_and_not_the_turn_where_the_first_copy_leaves_already() -> None:
    only(
        draft_block("finished 6in turn 4 about center { seam center -- (1in from top at 0deg) }"),
        "seam-outside",
    )


def test_it_is_the_turn_where_the_first_copy_stays_inside() -> None:
    only(draft_block("finished 6in turn 4 about top { seam top -- bottom }"), "copy-outside")


def test_names_on_one_side_of_an_arc_are_told_where_they_lie() -> None:
    """The arc is 5in from the corner; both places lie within it, one 1/4in from it."""
    told = only(
        draft_block(
            "finished 6in grid 6 x 6 seam A6 ~~ F1 around A1"
            " piece wedge at A1 in light piece rim at (4 3/4in from A1 at 135deg) in dark"
        ),
        "piece-clash",
    )
    assert "`rim` lies 1/4in inside the nearest arc, `wedge` on the same side" in told.help
    assert told.primary.text == "about 3 3/8in across, about 3 3/8in down"
    assert "at 0in across, 0in down" in told.related[0].text


def test_names_in_one_piece_without_an_arc_are_told_where_they_lie() -> None:
    told = only(
        draft_block("finished 6in piece hull at left in dark piece sail at right in light"), "piece-clash"
    )
    assert told.primary.text == "6in across, 3in down" and "arc" not in told.help
