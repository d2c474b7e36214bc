"""Shelves, locks and kept entries that somebody sent: whatever lies there, it is told in a diagnostic,
nothing out of the folder is shown, and nobody waits."""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from hashlib import sha256
from pathlib import Path

import pytest
from support.block_files import VANE, put
from support.command import Ended, piecewright

ROW = (
    'edition 1\n\nblock "Row" version 1 {\n  use "Tidewater Vane" as vane\n'
    "  grid 2 x 1 of 6in\n  row 2 vane\n}\n"
)
SECRET = "a line of a private file"


@pytest.fixture(autouse=True)
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A place of its own for what is kept, and no shelves but those given."""
    monkeypatch.setenv("PIECEWRIGHT_CACHE", str(tmp_path / "kept"))
    monkeypatch.delenv("PIECEWRIGHT_SHELVES", raising=False)
    monkeypatch.setattr("piecewright.command_line.choices.library_folder", lambda: None)
    return tmp_path / "kept"


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    """A shelf of one block, of which another is left out."""
    put(tmp_path / "shelf" / "vane.block", VANE)
    return tmp_path / "shelf"


@pytest.fixture
def row(tmp_path: Path) -> Path:
    """A file that uses the block."""
    return put(tmp_path / "own" / "row.block", ROW)


def words(text: str | bytes) -> Callable[[Path], object]:
    """Makes a file with these words."""
    return lambda place: place.write_bytes(text if isinstance(text, bytes) else text.encode())


def pipe(place: Path) -> None:
    os.mkfifo(place)


def link_out(place: Path) -> None:
    place.symlink_to(put(place.parent.parent / "private.txt", SECRET))


def link_to_device(place: Path) -> None:
    place.symlink_to("/dev/zero")


def link_to_nothing(place: Path) -> None:
    place.symlink_to("nowhere")


ODD: dict[str, Callable[[Path], object]] = {
    "pipe": pipe,
    "link out": link_out,
    "device": link_to_device,
    "nothing": link_to_nothing,
    "folder": lambda place: place.mkdir(),
    "large": words("#" * 20_000_000),
    "zeros": words(b"\0" * 1000),
    "not text": words(b"\xff\xfe"),
}
MANIFESTS = ODD | {
    "nested": words("title = " + "[" * 30_000),
    "tables": words("title = " + "{a = " * 10_000),
    "digits": words("title = " + "9" * 5_000),
    "more digits": words("title = [\n" + "9" * 1_900 + "\n]"),
    "blanks": words(" \n" * 20_000 + "titel = 1\n"),
    "blank line": words(" " * 40_000),
    "returns": words("\r" * 40_000),
    "dots": words("a." * 30_000 + "b = 1\n"),
    "keys": words("".join(f"k{n} = 1\n" for n in range(6_000))),
    "key": words(f'"{"k" * 1_900}" = 1\n'),
    "control": words('"\x1b[2J" = 1\n'),
    "odd": words('"\\u001b[2J" = 1\n'),
    "cut short": words('title = "Har'),
}


def well_told(ended: Ended, name: Path) -> None:
    """An error that names the file, and shows nothing of another."""
    said = ended.out + ended.err
    assert ended.status == 1, said
    assert str(name) in said and "mistake in Piecewright" not in said
    assert SECRET not in said and "\x1b" not in said and len(said) < 30_000


@pytest.mark.parametrize("kind", MANIFESTS)
def test_a_damaged_manifest_stops_check_and_build(shelf: Path, row: Path, kind: str) -> None:
    manifest = shelf / "shelf.toml"
    MANIFESTS[kind](manifest)
    ended = piecewright("check", row, "--shelf", shelf)
    well_told(ended, manifest)
    assert "error[manifest-" in ended.out
    out = row.parent / "out"
    well_told(piecewright("build", row, "--shelf", shelf, "--out", out), manifest)
    assert not out.exists()
    well_told(piecewright("check", shelf), manifest)
    well_told(piecewright("find", "--shelf", shelf), manifest)


@pytest.mark.parametrize("command", ["build", "explain", "lint", "lock", "show"])
def test_every_command_that_looks_on_the_shelf_says_so(shelf: Path, row: Path, command: str) -> None:
    put(shelf / "shelf.toml", "title = \n")
    ended = piecewright(command, row, "--shelf", shelf)
    well_told(ended, shelf / "shelf.toml")
    assert "manifest-damaged" in ended.err + ended.out
    assert os.listdir(row.parent) == ["row.block"]


def test_a_folder_of_blocks_with_a_file_of_one_endless_title_is_searched(shelf: Path, row: Path) -> None:
    put(shelf / "odd.block", 'block "' + "a" * 3_900_000)
    put(shelf / "many.block", "also " + '"a",' * 900_000)
    assert piecewright("check", row, "--shelf", shelf).status == 0


# ---- locks ------------------------------------------------------------------------------------------------


def locked(row: Path, shelf: Path) -> dict[str, object]:
    """What a good lock of the file holds."""
    assert piecewright("lock", row, "--shelf", shelf).status == 0
    lock = row.with_name("row.block.lock")
    told: dict[str, object] = json.loads(lock.read_text("utf-8"))
    lock.unlink()
    return told


def pin(title: str, told: str, **more: object) -> dict[str, object]:
    """A pin as `lock` writes it."""
    lines = told.splitlines()
    whole = "".join(f"{line}\n" for line in lines).encode("utf-8", "surrogatepass")
    return {
        "title": title,
        "version": 1,
        "fingerprint": "",
        "found": "shelf",
        "file": "x.block",
        "digest": sha256(whole).hexdigest(),
        "text": lines,
        "uses": [],
    } | more


def lock_of(*pins: dict[str, object], uses: object = ()) -> Callable[[Path], object]:
    return words(json.dumps({"piecewright-lock": 1, "uses": uses, "blocks": pins}))


UNIT = 'edition 1\n\nblock "Unit" {\n  finished 6in\n}\n'
LOCKS = ODD | {
    "nested": words("[" * 100_000),
    "digits": words('{"piecewright-lock": ' + "9" * 5_000 + "}"),
    "list": words("[]"),
    "null": words("null"),
    "number": words('{"piecewright-lock": 1e999}'),
    "uses of nothing": words('{"piecewright-lock": 1, "blocks": [], "uses": [1]}'),
    "pin of nothing": words('{"piecewright-lock": 1, "blocks": [1], "uses": []}'),
    "far use": lock_of(pin("Unit", UNIT), uses=[{"title": "Tidewater Vane", "version": None, "block": 7}]),
    "true": lock_of(pin("Unit", UNIT), uses=[{"title": "Tidewater Vane", "version": None, "block": False}]),
    "half letter": lock_of(pin("Unit", UNIT, fingerprint="\ud800")),
    "half letter in words": lock_of(pin("Unit", UNIT + "# \ud800")),
    "lines of lists": lock_of(pin("Unit", UNIT, **{"text": [["edition 1"]]})),
    "many": lock_of(*[pin("Unit", UNIT)] * 20_000),
    "faulty": lock_of(pin("Unit", 'edition 1\n\nblock "Unit" { finished }\n')),
}


@pytest.mark.parametrize("kind", LOCKS)
def test_a_damaged_lock_stops_every_command(shelf: Path, row: Path, kind: str) -> None:
    lock = row.with_name("row.block.lock")
    LOCKS[kind](lock)
    for command in ("check", "lock"):
        ended = piecewright(command, row, "--shelf", shelf)
        well_told(ended, lock)
        assert "error[lock-" in ended.out + ended.err


def test_pins_that_use_one_another_in_a_ring_or_a_long_row_are_told(shelf: Path, row: Path) -> None:
    def using(number: int, next_: int) -> dict[str, object]:
        text = (
            f'edition 1\n\nblock "B{number}" {{\n  use "B{next_}" as unit\n'
            f"  grid 1 x 1 of 6in\n  row unit\n}}\n"
        )
        return pin(f"B{number}", text, uses=[{"title": f"B{next_}", "version": None, "block": next_}])

    lock = row.with_name("row.block.lock")
    first = [{"title": "Tidewater Vane", "version": None, "block": 0}]
    for count in (2, 1_000):
        lock_of(*(using(n, (n + 1) % count) for n in range(count)), uses=first)(lock)
        ended = piecewright("check", row, "--shelf", shelf)
        assert ended.status == 1 and "error[" in ended.out


# ---- kept entries -----------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ["pipe", "link out", "device", "nothing", "folder", "large", "zeros"])
def test_entries_that_are_no_entries_are_passed_over(shelf: Path, cache: Path, kind: str) -> None:
    assert piecewright("find", "--shelf", shelf).status == 0
    entries = sorted(cache.iterdir())
    assert entries
    for entry in entries:
        entry.unlink()
        ODD[kind](entry)
    found = piecewright("find", "vane", "--shelf", shelf)
    assert found.status == 0 and "Tidewater Vane" in found.out
