"""`piecewright fmt`: what it writes, what it leaves alone, and that sheets stay the same."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest
from support.block_files import FAULTY, HALVES, VANE, put
from support.command import piecewright

UNTIDY = VANE.replace("  ", "\t ").replace(" -- ", "--").replace("edition 1\n\n", "").replace("\n", "\r\n")


def test_a_file_is_laid_out_and_keeps_its_line_ends_and_its_permissions(tmp_path: Path) -> None:
    vane = put(tmp_path / "vane.block", UNTIDY)
    vane.chmod(0o640)
    ended = piecewright("fmt", vane)
    assert (ended.status, ended.out, ended.err) == (0, f"Laid out {vane}.\n", "1 file laid out.\n")
    assert vane.read_bytes() == VANE.replace("\n", "\r\n").encode()
    assert vane.stat().st_mode & 0o777 == 0o640
    assert piecewright("fmt", "--check", vane).status == 0


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    vane = put(tmp_path / "vane.block", UNTIDY)
    link = tmp_path / "link.block"
    link.symlink_to(vane)
    assert piecewright("fmt", link).status == 0
    assert link.is_symlink() and vane.read_bytes() == VANE.replace("\n", "\r\n").encode()


def test_check_and_diff_name_what_would_change_and_write_nothing(tmp_path: Path) -> None:
    vane, halves = put(tmp_path / "vane.block", UNTIDY), put(tmp_path / "halves.block", HALVES)
    ended = piecewright("fmt", "--check", tmp_path)
    assert (ended.status, ended.out) == (1, f"{vane} is not in the house style.\n")
    assert ended.err == "1 file would change and 1 file already in the house style.\n"
    ended = piecewright("fmt", "--diff", vane, halves)
    assert ended.status == 1 and "+    seam B2 -- gate -- C2\n" in ended.out
    assert vane.read_text("utf-8").replace("\n", "\r\n") == UNTIDY.replace("\r\r", "\r")


def test_standard_input_goes_to_standard_output() -> None:
    ended = piecewright("fmt", "-", stdin=UNTIDY.encode())
    assert ended.status == 0 and ended.out.replace("\r", "") == VANE
    assert piecewright("fmt", "--check", "-", stdin=UNTIDY.encode()).status == 1


def test_a_file_with_a_mistake_is_left_as_it_is(tmp_path: Path) -> None:
    text = 'block   "A" { finished 6 }\n'
    odd = put(tmp_path / "odd.block", text)
    ended = piecewright("fmt", odd)
    assert ended.status == 1 and "error[" in ended.err and "1 file left alone for a mistake." in ended.err
    assert odd.read_text("utf-8") == text
    assert piecewright("fmt", "-", stdin=text.encode()).out == ""


def test_a_mistake_of_drafting_is_no_hindrance(tmp_path: Path) -> None:
    gate = put(tmp_path / "gate.block", FAULTY.replace("  seam", " seam"))
    assert piecewright("fmt", gate).status == 0
    assert gate.read_text("utf-8") == FAULTY


def test_sheets_are_the_same_before_and_after(tmp_path: Path) -> None:
    vane = put(tmp_path / "vane.block", UNTIDY)
    assert piecewright("build", vane, "--out", tmp_path / "before").status == 0
    assert piecewright("fmt", vane).status == 0
    assert piecewright("build", vane, "--out", tmp_path / "after").status == 0
    before, after = (sorted((tmp_path / each).iterdir()) for each in ("before", "after"))
    assert [path.read_bytes() for path in before] == [path.read_bytes() for path in after] != []


def test_a_file_of_several_names_keeps_them(tmp_path: Path) -> None:
    for text in (VANE.replace("  grid", "grid"), VANE + "\n" * 20_000):  # it gets longer, and shorter
        vane = put(tmp_path / "vane.block", text)
        other = tmp_path / "other.block"
        other.hardlink_to(vane)
        assert piecewright("fmt", vane).status == 0
        assert vane.samefile(other) and other.read_text("utf-8") == VANE
        other.unlink()


def test_a_disk_that_fills_up_leaves_a_file_of_several_names_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    rough = VANE.replace("  grid", "grid")
    vane = put(tmp_path / "vane.block", rough)
    (tmp_path / "other.block").hardlink_to(vane)
    real, failed = os.write, []

    def full(handle: int, data: bytes) -> int:
        if not failed:
            failed.append(real(handle, data[:1]))
            raise OSError(errno.ENOSPC, "No space left on device")
        return real(handle, data)

    monkeypatch.setattr("piecewright.command_line.writing.os.write", full)
    ended = piecewright("fmt", vane)
    assert ended.status == 1 and "No space left on device" in ended.err
    assert vane.read_text("utf-8") == rough


@pytest.mark.skipif(os.geteuid() != 0, reason="only root can give files away")
def test_another_users_file_stays_theirs(tmp_path: Path) -> None:
    vane = put(tmp_path / "vane.block", VANE.replace("  grid", "grid"))
    os.chown(vane, 65534, 65533)
    vane.chmod(0o664)
    assert piecewright("fmt", vane).status == 0
    facts = vane.stat()
    assert (facts.st_uid, facts.st_gid, facts.st_mode & 0o777) == (65534, 65533, 0o664)
    assert vane.read_text("utf-8") == VANE


def test_a_file_that_cannot_be_given_back_to_its_owner_is_written_where_it_stands(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    vane = put(tmp_path / "vane.block", VANE.replace("  grid", "grid"))
    number = vane.stat().st_ino

    def refused(*_: object) -> None:
        raise PermissionError(errno.EPERM, "Operation not permitted")

    monkeypatch.setattr("piecewright.command_line.writing._take_after", refused)
    assert piecewright("fmt", vane).status == 0
    assert vane.stat().st_ino == number and vane.read_text("utf-8") == VANE
    assert os.listdir(tmp_path) == ["vane.block"]
