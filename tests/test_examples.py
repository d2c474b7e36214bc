"""Every class in examples/: its blocks compile with nothing said, and one command makes their sheets."""

from __future__ import annotations

from pathlib import Path
from textwrap import dedent

import pytest
from piecewright.diagnostics.source import Source
from piecewright.drafting.model import Draft
from support.check import compile_source
from support.command import piecewright
from support.library import LibraryShelf

EXAMPLES = Path(__file__).parent.parent / "examples"
SCENARIOS = sorted(path for path in EXAMPLES.iterdir() if any(path.glob("*.block")))
FILES = sorted(EXAMPLES.glob("*/*.block"))


def blocks_of(path: Path):
    outcome = compile_source(Source(path.name, path.read_text(encoding="utf-8")), LibraryShelf())
    assert outcome.value is not None and outcome.diagnostics == ()
    return [block for block in outcome.value if not block.from_elsewhere]


def draft_of(title: str) -> Draft:
    (draft,) = [block.draft for path in FILES for block in blocks_of(path) if block.draft.title == title]
    return draft


@pytest.mark.parametrize("path", FILES, ids=[path.stem for path in FILES])
def test_an_example_says_who_made_it_and_what_to_do(path):
    text = path.read_text(encoding="utf-8")
    assert text.startswith("# "), "each example opens with a comment that tells what it shows"
    for block in blocks_of(path):
        assert block.draft.maker and block.draft.notes and block.draft.family and block.templates


@pytest.mark.parametrize("folder", SCENARIOS, ids=[path.name for path in SCENARIOS])
def test_a_scenario_has_one_maker(folder):
    makers = {block.draft.maker for path in sorted(folder.glob("*.block")) for block in blocks_of(path)}
    assert len(makers) == 1


@pytest.mark.parametrize("folder", SCENARIOS, ids=[path.name for path in SCENARIOS])
def test_one_command_builds_a_scenario(folder, tmp_path):
    ended = piecewright("build", folder, "--out", tmp_path / "sheets")
    assert ended.status == 0, ended.err
    made = sorted((tmp_path / "sheets").iterdir())
    assert len(made) == len(list(folder.glob("*.block"))) == 3
    assert all(path.suffix == ".pdf" and path.read_bytes().startswith(b"%PDF") for path in made)


@pytest.mark.parametrize("folder", SCENARIOS, ids=[path.name for path in SCENARIOS])
def test_a_check_of_a_scenario_finds_nothing(folder):
    ended = piecewright("check", folder)
    assert ended.status == 0 and "No mistakes" in ended.out + ended.err


def test_the_packet_is_made_of_the_library_s_square_of_two_triangles():
    draft = draft_of("Evening Packet")
    assert set(draft.uses) == {("Half-Square Triangle", 1)}
    assert [unit.alias for unit in draft.units] == ["sail"] * 4 + ["bow"] * 2
    canvas = sum(float(piece.area) for piece in draft.pieces if piece.fabric == "canvas")
    assert canvas == 4 * 4.5 + 2 * 9


def test_the_packet_s_outer_edges_alone_are_cut_wider():
    draft = draft_of("Evening Packet")
    widths = {(side.outside, float(side.allowance)) for piece in draft.pieces for side in piece.ring}
    assert widths == {(True, 0.5), (False, 0.25)}


def test_the_light_has_eight_beams_of_one_template_with_the_threads_along_each():
    draft = draft_of("Pierhead Light")
    beams = [piece for piece in draft.pieces if piece.name == "beam"]
    assert sorted(piece.fabric for piece in beams) == ["dusk"] * 4 + ["lamplight"] * 4
    (shape,) = [each for each in draft.shapes if each.members[0].piece == beams[0].number]
    assert {member.piece for member in shape.members} == {piece.number for piece in beams}
    assert shape.reversible
    headings = sorted(piece.grain % 180 for piece in beams)
    assert headings == pytest.approx([22.5] * 2 + [67.5] * 2 + [112.5] * 2 + [157.5] * 2)
    assert [piece.grain for piece in draft.pieces if piece.name == "lamp"] == ["free"]


def test_the_swells_are_one_template_and_their_curves_stay_arcs():
    draft = draft_of("Slack Water")
    swells = [piece.number for piece in draft.pieces if piece.name in ("far-swell", "near-swell")]
    (shape,) = [each for each in draft.shapes if each.members[0].piece == swells[0]]
    assert [member.piece for member in shape.members] == swells and shape.turns == 2
    for number in swells:
        piece = draft.pieces[number - 1]
        arcs = [side.edge for side in piece.ring if side.edge.arc]
        assert len(arcs) == 4
        assert [edge.arc.radius for edge in arcs] == pytest.approx([4.25] * 4)  # (2^2 + 1/2^2) / (2 x 1/2)
        assert float(piece.area) == pytest.approx(16)


def test_the_readme_s_block_and_quilt_are_checked_without_a_word(tmp_path):
    page = (EXAMPLES.parent / "README.md").read_text(encoding="utf-8")
    block, quilt = (
        dedent(page.split(heading)[1].split("\n## ")[0].split("\n\n`")[0])
        for heading in ("## A block\n", "## A quilt\n")
    )
    file = tmp_path / "breakwater.quilt"
    file.write_text(block + quilt, encoding="utf-8")
    ended = piecewright("check", file)
    assert (ended.status, ended.out, ended.err) == (0, "No mistakes in 1 file.\n", "")
