"""Shelves that are folders: what a `use` finds, in what order, and what is never read."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from piecewright.shelves import folders
from piecewright.shelves.folders import FolderShelf, block_files, library_folder


def block_text(title: str, version: int | None = None, also: str = "") -> str:
    """A whole file with one block of one piece."""
    numbered = f" version {version}" if version else ""
    other = f'  also "{also}"\n' if also else ""
    return f'edition 1\nblock "{title}"{numbered} {{\n  finished 4in\n{other}}}\n'


def put(path: Path, text: str | bytes) -> Path:
    """A file with that text, its folder made."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def found(shelf: FolderShelf, title: str, near: Path | str) -> list[tuple[str, int, str]]:
    """Where, in what version and under what name of a source a title is found."""
    return [(each.shelf, each.version, each.source.name) for each in shelf.find(title, str(near))]


def test_beside_comes_before_given_shelves_and_these_before_the_library(tmp_path: Path) -> None:
    put(tmp_path / "mine" / "pair.block", block_text("Pair", 1))
    put(tmp_path / "given" / "pair.block", block_text("Pair", 2))
    put(tmp_path / "shipped" / "basics" / "pair.block", block_text("Pair", 3))
    vane = put(tmp_path / "mine" / "vane.block", block_text("Vane"))
    shelf = FolderShelf([tmp_path / "given"], library=tmp_path / "shipped")
    assert found(shelf, "Pair", vane) == [
        ("beside", 1, f"{tmp_path}/mine/pair.block"),
        ("shelf", 2, f"{tmp_path}/given/pair.block"),
        ("library", 3, "<library>/basics/pair.block"),
    ]


def test_title_comes_before_another_name(tmp_path: Path) -> None:
    put(tmp_path / "a.block", block_text("Churn", also="Pair"))
    put(tmp_path / "b.block", block_text("Pair", 4))
    shelf = FolderShelf()
    assert [name for _, _, name in found(shelf, "Pair", tmp_path / "vane.block")] == [
        f"{tmp_path}/b.block",
        f"{tmp_path}/a.block",
    ]
    assert list(shelf.titles(str(tmp_path / "vane.block"))) == ["Churn", "Pair"]


def test_the_file_that_asks_is_not_searched_again(tmp_path: Path) -> None:
    vane = put(tmp_path / "vane.block", block_text("Vane"))
    assert found(FolderShelf(), "Vane", vane) == []
    assert found(FolderShelf([tmp_path], library=tmp_path), "Vane", vane) == []


def test_one_file_on_two_shelves_is_found_once(tmp_path: Path) -> None:
    put(tmp_path / "pair.block", block_text("Pair"))
    shelf = FolderShelf([tmp_path], library=tmp_path)
    assert len(found(shelf, "Pair", tmp_path / "vane.block")) == 1


def test_block_of_a_shelf_finds_its_neighbours_there(tmp_path: Path) -> None:
    put(tmp_path / "shipped" / "one" / "pair.block", block_text("Pair"))
    put(tmp_path / "shipped" / "two" / "star.block", block_text("Star"))
    shelf = FolderShelf(library=tmp_path / "shipped")
    (star,) = shelf.find("Star", str(tmp_path / "vane.block"))
    assert found(shelf, "Pair", star.source.name) == [("library", 1, "<library>/one/pair.block")]


def test_block_of_a_shelf_finds_those_of_its_own_file_first(tmp_path: Path) -> None:
    put(tmp_path / "a.block", block_text("Pair", 7))
    put(tmp_path / "b.block", block_text("Churn") + block_text("Pair", 2).partition("\n")[2])
    shelf = FolderShelf()
    assert found(shelf, "Churn", tmp_path / "vane.block") == [("beside", 1, f"{tmp_path}/b.block")]
    assert found(shelf, "Pair", f"{tmp_path}/b.block") == [
        ("beside", 2, f"{tmp_path}/b.block"),
        ("beside", 7, f"{tmp_path}/a.block"),
    ]


def test_only_files_that_may_have_the_title_are_parsed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for number in range(30):
        put(tmp_path / f"other-{number}.block", block_text(f"Other {number}"))
    put(tmp_path / "pair.block", block_text("Pair"))
    parsed: list[str] = []
    real = folders._parse_bytes
    monkeypatch.setattr(folders, "_parse_bytes", lambda name, data: parsed.append(name) or real(name, data))
    shelf = FolderShelf()
    assert found(shelf, "Pair", "x") == []
    for _ in range(3):
        assert len(found(shelf, "Pair", tmp_path / "vane.block")) == 1
    assert parsed == [f"{tmp_path}/pair.block"]


def test_title_in_a_comment_or_a_note_is_no_block(tmp_path: Path) -> None:
    put(tmp_path / "a.block", '# block "Pair"\n' + block_text("Churn"))
    put(tmp_path / "b.block", block_text("Wheel").replace("}", '  note "like block \\"Pair\\" but round"\n}'))
    assert found(FolderShelf(), "Pair", tmp_path / "vane.block") == []


def test_title_with_quotes_in_it_is_found(tmp_path: Path) -> None:
    put(tmp_path / "a.block", block_text('The \\"Old\\" Pair'))
    assert len(found(FolderShelf(), 'The "Old" Pair', tmp_path / "vane.block")) == 1


def test_unreadable_neighbours_are_passed_over(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    put(tmp_path / "binary.block", b'block "Pair"\x00\xff\xfe' * 2)
    put(tmp_path / "broken.block", 'edition 1\nblock "Pair" {\n')
    (tmp_path / "folder.block").mkdir()
    (tmp_path / "dangling.block").symlink_to(tmp_path / "nowhere")
    os.mkfifo(tmp_path / "pipe.block")
    put(tmp_path / "sound.block", block_text("Pair"))
    monkeypatch.setattr(folders, "LARGEST", (tmp_path / "sound.block").stat().st_size)
    put(tmp_path / "huge.block", block_text("Pair") + "\n" * 10)
    shelf = FolderShelf([tmp_path / "no such folder"])
    assert [name for _, _, name in found(shelf, "Pair", tmp_path / "vane.block")] == [
        f"{tmp_path}/sound.block"
    ]
    assert {each.primary.span.source for each in shelf.faults} == {
        f"{tmp_path}/binary.block",
        f"{tmp_path}/broken.block",
    }


def test_links_that_lead_out_of_a_shelf_are_not_followed(tmp_path: Path) -> None:
    secret = put(tmp_path / "secret" / "pair.block", block_text("Pair"))
    shelf_folder = tmp_path / "shelf"
    shelf_folder.mkdir()
    (shelf_folder / "out.block").symlink_to(secret)
    (shelf_folder / "folder").symlink_to(secret.parent)
    put(shelf_folder / "inner.block", block_text("Inner"))
    (shelf_folder / "inside.block").symlink_to(shelf_folder / "inner.block")
    assert found(FolderShelf([shelf_folder]), "Pair", "vane.block") == []
    assert [path.name for path in block_files(shelf_folder, 8)] == ["inner.block", "inside.block"]


def test_link_in_a_ring_of_folders_ends(tmp_path: Path) -> None:
    put(tmp_path / "a" / "pair.block", block_text("Pair"))
    (tmp_path / "a" / "again").symlink_to(tmp_path / "a")
    assert [path.name for path in block_files(tmp_path, 8)] == ["pair.block"]


@pytest.mark.parametrize("title", ["../secret/pair", "../../etc/passwd", "pair.block", "", "*", "[", "\0"])
def test_title_is_never_a_path_or_a_pattern(tmp_path: Path, title: str) -> None:
    put(tmp_path / "secret" / "pair.block", block_text("Pair"))
    put(tmp_path / "mine" / "pair.block", block_text("Pair"))
    assert found(FolderShelf(), title, tmp_path / "mine" / "vane.block") == []


def test_files_are_listed_in_order_and_hidden_ones_are_not(tmp_path: Path) -> None:
    for name in ("b.block", "a.block", ".hidden.block", "c.txt", "sub/d.block", ".git/e.block"):
        put(tmp_path / name, block_text("X"))
    assert [path.relative_to(tmp_path).as_posix() for path in block_files(tmp_path, 8)] == [
        "a.block",
        "b.block",
        "sub/d.block",
    ]
    assert [path.name for path in block_files(tmp_path)] == ["a.block", "b.block"]


def test_what_one_file_needed_is_let_go(tmp_path: Path) -> None:
    put(tmp_path / "mine" / "pair.block", block_text("Pair"))
    put(tmp_path / "given" / "star.block", block_text("Star"))
    shelf = FolderShelf([tmp_path / "given"])
    shelf.find("Pair", str(tmp_path / "mine" / "vane.block"))
    assert list(shelf.sources) == [f"{tmp_path}/mine/pair.block"]
    shelf.forget()
    assert not shelf.sources and not shelf.faults
    put(tmp_path / "mine" / "new.block", block_text("New"))
    assert len(found(shelf, "New", tmp_path / "mine" / "vane.block")) == 1


def test_library_ships_as_a_folder() -> None:
    folder = library_folder()
    assert folder is not None and folder.is_dir()
