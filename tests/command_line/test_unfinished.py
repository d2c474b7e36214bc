"""`show` of blocks that cannot be finished: what is sound is drawn, what is wrong is marked and told."""

from __future__ import annotations

from pathlib import Path

import pytest
from piecewright.diagnostics.source import Source
from piecewright.drafting.rough import RoughDraft
from piecewright.pipeline import compile_file, rough_drafts
from piecewright.sheets.arrange.rough_picture import rough_picture
from piecewright.sheets.page import PathMark, TextMark
from piecewright.words.say import INCHES
from support.check import DictShelf
from support.command import Ended, piecewright

HANGING = """\
edition 1
block "Adrift" {
  finished 6in
  grid 6 x 6
  point heel = 5in from A1 to A7
  seam heel ~~ F1 around A1
  seam A1 -- D4
  piece wedge at A1 in light
}
"""


def rough(text: str) -> RoughDraft:
    """The one block of a text that cannot be finished."""
    source, shelf = Source("a.block", text), DictShelf({})
    (draft,) = rough_drafts(source, shelf, compile_file(source, shelf).diagnostics)
    return draft


def test_the_sound_is_kept_and_the_place_of_the_mistake_is_marked() -> None:
    draft = rough(HANGING)
    assert draft.points == (("heel", (0, 5)),)
    assert draft.pieces == (("wedge", (0, 0)),)
    assert len(draft.seams) == 2
    (mistake,) = draft.mistakes
    assert [(edge.start, edge.end) for edge in mistake.edges] == [((0, 0), (3, 3))]


def test_the_picture_has_names_seams_and_the_numbered_mistake() -> None:
    page = rough_picture(rough(HANGING), 4, INCHES)
    texts = [mark.text for mark in page.marks if isinstance(mark, TextMark)]
    assert {"heel", "wedge", "1", "Adrift"} <= set(texts)
    assert any(each.startswith("1 This seam ends inside a piece") for each in texts)
    roles = [mark.role for mark in page.marks if isinstance(mark, PathMark)]
    assert roles.count("seam") == 2 and "mistake" in roles and "outline" in roles


@pytest.mark.parametrize(
    ("body", "places", "edges"),
    [
        ("piece hull at left in dark piece sail at right in light", 2, 0),
        ("seam top -- bottom piece hull at center in dark", 1, 0),
        ('grid 2 x 2 use "No Such" as gone place gone in A1..B2 seam B1 -- B3', 0, 4),
        ("point far = 9in from left to right seam top -- far piece hull at far in dark", 0, 1),
        ("seam top -- bottom seam left -- nowhere", 0, 0),
    ],
)
def test_mistakes_in_names_units_and_pieces_lie_where_their_words_put_something(
    body: str, places: int, edges: int
) -> None:
    draft = rough(f'edition 1\nblock "Trial" {{ finished 6in {body} }}\n')
    (mistake,) = draft.mistakes
    assert (len(mistake.places), len(mistake.edges)) == (places, edges)


def shown(folder: Path, text: str) -> Ended:
    """`show` of a file with this text."""
    (folder / "a.block").write_text(text)
    return piecewright("show", folder / "a.block", "--out", folder, "--format", "svg")


def test_show_writes_it_under_a_name_of_its_own_and_still_fails(tmp_path: Path) -> None:
    run = shown(tmp_path, HANGING)
    assert run.status == 1
    assert "seam-hangs" in run.err
    assert [each.name for each in tmp_path.glob("*.svg")] == ["adrift-v1-unfinished.svg"]


def test_a_mistake_of_writing_leaves_the_rest_drawn(tmp_path: Path) -> None:
    run = shown(tmp_path, HANGING.replace("piece wedge at A1 in light", "piece wedge A1 in light"))
    assert run.status == 1
    assert (tmp_path / "adrift-v1-unfinished.svg").exists()


def test_a_block_without_a_size_is_not_drawn(tmp_path: Path) -> None:
    run = shown(tmp_path, 'edition 1\nblock "Lost" { seam top -- bottom }\n')
    assert run.status == 1 and not list(tmp_path.glob("*.svg"))
