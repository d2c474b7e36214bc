"""`piecewright compare`: two files, two versions, two revisions; words, JSON and a picture."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path

import pytest
from support.block_files import FAULTY, HALVES, VANE, put
from support.command import piecewright

MOVED = VANE.replace("1 1/4in from B1", "1 3/8in from B1").replace("version 2", "version 3")


def git(folder: Path, *words: str) -> None:
    """git in a folder, with nothing of the user's."""
    subprocess.run(
        ["git", "-C", folder, "-c", "user.name=Wren", "-c", "user.email=wren@example.org", *words],
        check=True,
        capture_output=True,
    )


@pytest.fixture
def kept(tmp_path: Path) -> Path:
    """A block file under git."""
    vane = put(tmp_path / "blocks" / "vane.block", VANE)
    git(tmp_path, "init", "--quiet")
    git(tmp_path, "add", ".")
    git(tmp_path, "commit", "--quiet", "-m", "The vane")
    return vane


def test_two_files_tell_what_to_keep_and_how_far_lines_moved(tmp_path: Path) -> None:
    old, new = put(tmp_path / "old.block", VANE), put(tmp_path / "new.block", MOVED)
    ended = piecewright("compare", old, new)
    assert (ended.status, ended.err) == (0, "")
    assert ended.out.startswith("Tidewater Vane, version 3, beside version 2\n====")
    assert "A: keep your A; cut 8." in ended.out and "C: make it anew; it lies up to " in ended.out
    # By hand: the old seam B2 to gate is farthest, 0.1095in, where the new one and the top are equally near.
    assert "A line lies up to about 3/32in from where it was." in ended.out
    ended = piecewright("compare", old, old)
    assert "D: keep your D; cut 4.\nE: keep your E; cut 1.\nEvery line lies where it lay." in ended.out


def test_json_says_the_same(tmp_path: Path) -> None:
    old, new = put(tmp_path / "old.block", VANE), put(tmp_path / "new.block", MOVED)
    (told,) = json.loads(piecewright("compare", old, new, "--format", "json").out)["comparisons"]
    assert (told["old"]["version"], told["new"]["version"]) == (2, 3)
    assert told["redrawn"] and not told["unversioned"]
    assert told["distance"] == pytest.approx(0.1095, abs=1 / 128)
    assert [each["kind"] for each in told["templates"]] == ["same", "changed", "changed", "changed", "same"]
    assert told["old"]["fingerprint"] != told["new"]["fingerprint"]


def test_two_versions_in_one_file(tmp_path: Path) -> None:
    both = put(tmp_path / "vane.block", VANE + MOVED.partition("\n")[2])
    assert piecewright("compare", both).out.startswith("Tidewater Vane, version 3, beside version 2\n")


def test_two_versions_on_a_shelf(tmp_path: Path) -> None:
    put(tmp_path / "vane.block", VANE)
    put(tmp_path / "later" / "vane.block", MOVED)
    shelf = ("--shelf", tmp_path)
    ended = piecewright("compare", "Tidewater Vane@2", "Tidewater Vane@3", *shelf)
    assert ended.out.startswith("Tidewater Vane, version 3, beside version 2\n")
    assert "versions 2 and 3" in piecewright("compare", "Tidewater Vane@2", "Tidewater Vane@7", *shelf).err
    assert "no block of that title" in piecewright("compare", "Vane@1", "Vane@2", *shelf).err


def test_a_file_beside_its_revisions(kept: Path) -> None:
    put(kept, MOVED)
    assert piecewright("compare", kept).out.startswith("Tidewater Vane, version 3, beside version 2\n")
    git(kept.parent, "commit", "--quiet", "-am", "The gate moved")
    assert "Every line lies where it lay." in piecewright("compare", kept).out
    assert "up to about 3/32in" in piecewright("compare", kept, "--since", "HEAD~1").out


def test_a_revision_uses_the_blocks_beside_it_as_they_were(kept: Path) -> None:
    row = put(
        kept.with_name("row.block"),
        'edition 1\n\nblock "Row" {\n  use "Tidewater Vane" as vane\n  grid 2 x 1 of 9in\n  row 2 vane\n}\n',
    )
    git(kept.parent, "add", ".")
    git(kept.parent, "commit", "--quiet", "-m", "A row")
    put(kept, MOVED)
    ended = piecewright("compare", row)
    assert "A line lies up to about 3/32in from where it was." in ended.out
    assert "The outlines of 'Row' changed and its version did not: write 'version 2'." in ended.err


def test_check_refuses_outlines_that_change_under_one_version(kept: Path) -> None:
    put(kept.with_name("new.block"), HALVES)
    put(kept, VANE.replace("light, dark", "rose, sand").replace("point gate", "# moved?\n  point gate"))
    assert piecewright("compare", "--check", kept.parent).status == 0
    put(kept, MOVED)
    assert piecewright("compare", "--check", kept.parent).status == 0
    put(kept, MOVED.replace("version 3", "version 2"))
    ended = piecewright("compare", "--check", kept.parent)
    assert ended.status == 1
    assert ended.err == (
        f"{kept}: The outlines of 'Tidewater Vane' changed and its version did not: write 'version 3'.\n"
    )


def test_check_refuses_what_it_cannot_look_up(kept: Path) -> None:
    ended = piecewright("compare", "--check", "--since", "HEAAD", kept)
    assert ended.status == 2 and "git knows no revision 'HEAAD' here." in ended.err
    assert piecewright("compare", "--check", "-", stdin=VANE.encode()).status == 2


def test_check_takes_all_for_new_before_the_first_commit(tmp_path: Path) -> None:
    git(tmp_path, "init", "--quiet")
    vane = put(tmp_path / "vane.block", VANE)
    assert piecewright("compare", "--check", vane).status == 0
    ended = piecewright("compare", vane)
    assert ended.status == 2 and "git has recorded nothing here yet." in ended.err


def test_a_picture_shows_both_outlines(tmp_path: Path) -> None:
    old, new = put(tmp_path / "old.block", VANE), put(tmp_path / "new.block", MOVED)
    ended = piecewright("compare", old, new, "--picture", "svg,pdf,png", "--out", tmp_path / "out")
    assert ended.status == 0
    names = sorted(path.name for path in (tmp_path / "out").iterdir())
    assert names == [f"tidewater-vane-v3-beside-v2-picture.{kind}" for kind in ("pdf", "png", "svg")]
    drawn = (tmp_path / "out" / names[2]).read_text("utf-8")
    assert "version 2, before" in drawn and "stroke-dasharray" in drawn


@pytest.mark.parametrize(
    "asked", [("--size", "0.01in"), ("--size", "41in"), ("--size", "40in", "--dpi", "1200")]
)
def test_a_picture_is_of_a_size_that_can_be_seen(tmp_path: Path, asked: tuple[str, ...]) -> None:
    old = put(tmp_path / "old.block", VANE)
    ended = piecewright("compare", old, old, "--picture", "png", *asked, "--out", tmp_path / "out")
    assert ended.status == 2 and "A picture" in ended.err and not (tmp_path / "out").exists()


def test_what_cannot_be_compared_is_told(kept: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    halves, gate = put(tmp_path / "halves.block", HALVES), put(tmp_path / "gate.block", FAULTY)
    both = put(tmp_path / "both.block", HALVES + VANE.partition("\n")[2])
    renamed = both.read_text("utf-8").replace("Two Halves", "One").replace("Vane", "Two")
    others = put(tmp_path / "others.block", renamed)
    assert piecewright("compare", both, others).status == 2
    assert "1 error" not in piecewright("compare", halves, halves).err
    assert piecewright("compare", halves, gate).status == 1
    assert "in revision 'HEAD'" in piecewright("compare", halves).err
    assert "no revision 'nowhere'" in piecewright("compare", kept, "--since", "nowhere").err
    assert piecewright("compare", kept, "--since", "--output=x").status == 2
    outside = put(tmp_path.parent / f"{tmp_path.name}-outside" / "vane.block", VANE)
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(outside.parent.parent))
    assert "keeps no revisions" in piecewright("compare", outside).err
    monkeypatch.setenv("PATH", "")
    assert "git: It is not installed" in piecewright("compare", kept).err
