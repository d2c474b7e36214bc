"""`piecewright lock`: what is pinned is built, whatever becomes of the shelf; and how a lock goes bad."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from support.block_files import put
from support.command import piecewright

VANE = """\
edition 1

block "Vane" version {version} {{
  grid 2 x 2 of 3in
  use "Pair" as pair
  {note}
  row pair, plain dark
  row plain light, pair
}}
"""

PAIR = """\
edition 1

block "Pair" version 1 {{
  finished 3in
  seam {seam}
  piece one at {one} in dark
  piece two at {two} in light
}}
"""

QUILT = """\
edition 1

quilt "Harbour Wall" version 1 {
  use "Vane" as vane
  fabric dark
  fabric light
  set straight 2 across 2 down { alternate vane, plain light }
}
"""


def vane(version: int = 1, note: str = 'note "Plain."') -> str:
    """The block that the quilt uses."""
    return VANE.format(version=version, note=note)


def pair(*, straight: bool = False) -> str:
    """The block that the block uses, cut from corner to corner, or down its middle."""
    if straight:
        return PAIR.format(seam="top -- bottom", one="left", two="right")
    return PAIR.format(seam="top-left -- bottom-right", one="top-right", two="bottom-left")


@pytest.fixture
def quilt(tmp_path: Path) -> Path:
    """A quilt file beside a shelf that has all it uses."""
    put(tmp_path / "shelf" / "vane.block", vane())
    put(tmp_path / "shelf" / "pair.block", pair())
    return put(tmp_path / "wall" / "wall.quilt", QUILT)


def lock(quilt: Path, *options: str, status: int = 0) -> str:
    """What the command says on standard output."""
    ended = piecewright("lock", quilt, "--shelf", quilt.parents[1] / "shelf", *options)
    assert ended.status == status, ended
    return ended.out


def built(quilt: Path, where: str) -> dict[str, bytes]:
    """Every file that a build makes."""
    out = quilt.parents[1] / where
    ended = piecewright("build", quilt, "--shelf", quilt.parents[1] / "shelf", "--out", out)
    assert ended.status == 0, ended
    return {path.name: path.read_bytes() for path in sorted(out.iterdir())}


def lock_of(quilt: Path) -> Path:
    return quilt.with_name("wall.quilt.lock")


def test_a_locked_quilt_is_built_the_same_whatever_the_shelf_has(quilt: Path) -> None:
    before = built(quilt, "before")
    assert lock(quilt).splitlines() == [
        f"Pinned 2 blocks in {lock_of(quilt)}:",
        "  Pair, version 1 (shelf)",
        "  Vane, version 1 (shelf)",
    ]
    put(quilt.parents[1] / "shelf" / "vane.block", vane(2, 'note "New."'))
    put(quilt.parents[1] / "shelf" / "pair.block", pair(straight=True))
    assert built(quilt, "after") == before != {}
    for path in (quilt.parents[1] / "shelf").iterdir():
        path.unlink()
    assert built(quilt, "alone") == before


def test_a_lock_is_the_same_from_every_place(quilt: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lock(quilt)
    first = lock_of(quilt).read_bytes()
    lock_of(quilt).unlink()
    monkeypatch.chdir(quilt.parent)
    assert piecewright("lock", "wall.quilt", "--shelf", "../shelf").status == 0
    assert lock_of(quilt).read_bytes() == first
    assert str(quilt.parents[1]) not in first.decode()


def test_an_update_shows_what_changes_before_it_takes_it(quilt: Path) -> None:
    lock(quilt)
    first = lock_of(quilt).read_bytes()
    put(quilt.parents[1] / "shelf" / "vane-2.block", vane(2))
    assert lock(quilt).splitlines() == [
        f"{lock_of(quilt)} is up to its file: 2 blocks pinned.",
        f"The shelves have otherwise than {lock_of(quilt)}:",
        "  Vane: version 2 in place of 1, the same outlines",
        f"'piecewright lock {quilt} --update' takes that.",
    ]
    assert "version 2 in place of 1" in lock(quilt, "--update", status=1)
    assert lock_of(quilt).read_bytes() == first
    assert lock(quilt, "--update", "--yes").endswith(f"Updated {lock_of(quilt)}.\n")
    assert json.loads(lock_of(quilt).read_text())["blocks"][1]["version"] == 2
    assert lock(quilt, "--update") == f"{lock_of(quilt)}: the shelves have what is pinned.\n"


def test_other_outlines_under_an_unchanged_version_are_an_error(quilt: Path) -> None:
    lock(quilt)
    put(quilt.parents[1] / "shelf" / "pair.block", pair(straight=True))
    ended = piecewright("lock", quilt, "--check", "--shelf", quilt.parents[1] / "shelf")
    assert ended.status == 1
    assert "error[lock-disagrees]: `Pair` version 1 has other outlines on the shelf" in ended.err
    assert "  Pair, version 1: other outlines, other words\n    A: make it anew" in ended.out


def test_other_words_for_the_same_outlines_are_none(quilt: Path) -> None:
    lock(quilt)
    put(quilt.parents[1] / "shelf" / "vane.block", vane(note='note "Press well."'))
    assert "  Vane, version 1: the same outlines, other words" in lock(quilt, "--check")


def test_what_was_written_since_is_told_and_then_pinned(quilt: Path) -> None:
    lock(quilt)
    put(quilt.parents[1] / "shelf" / "vane.block", vane(note='note "Not this one."'))
    used = (
        QUILT.replace("as vane\n", 'as vane\n  use "Pair" version 1 as pair\n')
        .replace("plain light }", "plain light, pair stretched }")
        .replace("down {", "down of 6in {")
    )
    put(quilt, used)
    ended = piecewright("check", quilt, "--shelf", quilt.parents[1] / "shelf", "--format", "short")
    assert "warning[lock-lacks] `Pair` version 1 is not pinned in `wall.quilt.lock`." in ended.out, ended.out
    assert lock(quilt, "--check", status=1).startswith(f"{lock_of(quilt)} is not up to its file:\n  Pair,")
    assert lock(quilt).startswith(f"Brought {lock_of(quilt)} up to its file:\n  Pair, version 1: new\n")
    assert "Plain." in lock_of(quilt).read_text() and "Not this one" not in lock_of(quilt).read_text()
    put(quilt, QUILT)
    assert "  Pair, version 1: no longer used\n" in lock(quilt)


def test_a_use_that_asks_for_another_version_is_no_new_one(quilt: Path) -> None:
    lock(quilt)
    put(quilt, QUILT.replace('"Vane" as', '"Vane" version 1 as'))
    assert lock(quilt) == f"Brought {lock_of(quilt)} up to its file.\n"
    put(quilt.parents[1] / "shelf" / "vane-2.block", vane(2))
    put(quilt, QUILT.replace('"Vane" as', '"Vane" version 2 as'))
    assert "  Vane: version 2 in place of 1, the same outlines\n" in lock(quilt)


def test_a_version_that_is_nowhere_cannot_be_pinned(quilt: Path) -> None:
    put(quilt, QUILT.replace('"Vane" as', '"Vane" version 7 as'))
    ended = piecewright("lock", quilt, "--shelf", quilt.parents[1] / "shelf")
    assert ended.status == 1 and "error[version-unknown]" in ended.err
    assert not lock_of(quilt).exists()


def test_check_wants_a_lock_where_blocks_are_used(quilt: Path) -> None:
    assert lock(quilt, "--check", status=1) == f"{lock_of(quilt)} is missing.\n"
    pairs = quilt.parents[1] / "shelf" / "pair.block"
    assert piecewright("lock", "--check", pairs).status == 0
    assert "nothing to pin" in piecewright("lock", pairs).out


@pytest.mark.parametrize(
    ("spoil", "told"),
    [
        (lambda text: text[:200], "lock-damaged]: The lock file is damaged: line"),
        (lambda text: "", "lock-damaged]: The lock file is damaged: line 1 is not JSON"),
        (lambda text: "[1]", "its `piecewright-lock` is missing or is not what it should be"),
        (lambda text: "[" * 100_000, "lock-damaged]"),
        (lambda text: text.replace("plain dark", "plain pale"), "the text of `Vane` was changed by hand"),
        (lambda text: text.replace('"block": 1', '"block": 5'), "a block that it names is not there"),
        (lambda text: text.replace('"version": 1', '"version": "1"', 1), "is missing or is not what it"),
        (lambda text: text.replace('"version": 1', '"version": 9'), "is not that block's"),
        (lambda text: text.replace('-lock": 1', '-lock": 2'), "lock-newer]: A newer Piecewright made"),
        (lambda text: text.replace('"title": "Vane"', '"title": 7'), "lock-damaged]"),
    ],
)
def test_a_damaged_lock_stops_every_command(quilt: Path, spoil, told: str) -> None:
    lock(quilt)
    text = spoil(lock_of(quilt).read_text())
    lock_of(quilt).write_text(text)
    for command in (["build", quilt], ["lock", quilt], ["lock", quilt, "--update", "--yes"]):
        ended = piecewright(*command, "--shelf", quilt.parents[1] / "shelf")
        assert ended.status == 1 and told in ended.err, ended
    assert lock_of(quilt).read_text() == text


def test_a_pinned_block_that_drafts_otherwise_is_told(quilt: Path) -> None:
    lock(quilt)
    text = lock_of(quilt).read_text().replace('"fingerprint": "1-', '"fingerprint": "1-f')
    lock_of(quilt).write_text(text)
    ended = piecewright("check", quilt, "--format", "short")
    assert ended.status == 0
    assert "warning[lock-drafts-otherwise] `Vane` version 1 drafts otherwise" in ended.out
