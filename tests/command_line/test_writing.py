"""Files are written whole or not at all, whatever stops the writing."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from piecewright.command_line import writing
from piecewright.command_line.writing import write_all, write_whole

OLD = b"an older good file"


@pytest.fixture
def target(tmp_path: Path) -> Path:
    """A file that is there already."""
    path = tmp_path / "vane-v2.pdf"
    path.write_bytes(OLD)
    return path


def names_in(folder: Path) -> list[str]:
    """Everything in a folder, hidden files too."""
    return sorted(os.listdir(folder))


def test_new_bytes_take_the_place_of_the_old(target: Path) -> None:
    write_whole(target, b"new" * 100_000)
    assert target.read_bytes() == b"new" * 100_000
    assert names_in(target.parent) == [target.name]


def test_new_file_has_the_users_permissions(tmp_path: Path) -> None:
    before = os.umask(0o027)
    try:
        write_whole(tmp_path / "a.pdf", b"x")
    finally:
        os.umask(before)
    assert (tmp_path / "a.pdf").stat().st_mode & 0o777 == 0o640


@pytest.mark.parametrize(
    "problem",
    [OSError(errno.ENOSPC, "No space left on device"), KeyboardInterrupt(), SystemExit(143), MemoryError()],
)
def test_stop_in_the_middle_leaves_the_old_file_and_nothing_else(
    target: Path, monkeypatch: pytest.MonkeyPatch, problem: BaseException
) -> None:
    real = os.write

    def stops_half_way(handle: int, data: bytes) -> int:
        if len(data) < 900_000:
            raise problem
        return real(handle, data[:200_000])

    monkeypatch.setattr(writing.os, "write", stops_half_way)
    with pytest.raises(type(problem)):
        write_whole(target, b"n" * 1_000_000)
    assert target.read_bytes() == OLD
    assert names_in(target.parent) == [target.name]


def test_of_several_files_none_is_named_when_a_later_one_fails(target: Path) -> None:
    def made() -> Iterator[tuple[Path, bytes]]:
        yield target, b"new"
        yield target.with_name("other.pdf"), b"new"
        raise OSError(errno.ENOSPC, "No space left on device")

    with pytest.raises(OSError, match="No space"):
        write_all(made())
    assert target.read_bytes() == OLD
    assert names_in(target.parent) == [target.name]


def test_several_files_are_all_there_at_the_end(target: Path) -> None:
    files = [(target.with_name(f"page-{number}.svg"), b"%d" % number * 1000) for number in range(4)]
    write_all([*files, (target, b"new")])
    assert {path: path.read_bytes() for path, _ in files} == dict(files)
    assert target.read_bytes() == b"new"
    assert names_in(target.parent) == sorted([*(path.name for path, _ in files), target.name])


def test_hundreds_of_files_need_no_hundreds_of_open_ones(tmp_path: Path) -> None:
    write_all((tmp_path / f"page-{number}.svg", b"x") for number in range(400))
    assert len(names_in(tmp_path)) == 400


def test_folder_in_the_place_of_the_last_file_stops_before_the_first_is_named(target: Path) -> None:
    (target.parent / "taken.pdf").mkdir()
    with pytest.raises(IsADirectoryError):
        write_all([(target, b"new"), (target.parent / "taken.pdf", b"new")])
    assert target.read_bytes() == OLD
    assert names_in(target.parent) == ["taken.pdf", target.name]


def test_what_killed_runs_left_goes_and_what_is_at_work_stays(target: Path, tmp_path: Path) -> None:
    def room(name: str, *files: str) -> Path:
        made = tmp_path / name
        made.mkdir()
        for file in files:
            (made / file).write_bytes(b"half")
        return made

    room(".piecewright-dead", "vane.pdf", "page-1.svg")
    os.utime(room(".piecewright-long-dead"), (1, 1))
    stays = [
        room(".piecewright-at-work", "vane.pdf"),
        room(".piecewright-just-begun"),
        room("piecewright-of-hers", "vane.pdf"),
        room(".others", "vane.pdf"),
    ]
    (tmp_path / ".piecewright-link").symlink_to(stays[-1])
    (tmp_path / ".piecewright-file").write_bytes(b"hers")
    stays += [tmp_path / ".piecewright-link", tmp_path / ".piecewright-file", target]
    with writing._locked(str(stays[0]), wait=False) as locked:
        assert locked
        write_whole(target, b"new")
    assert target.read_bytes() == b"new"
    assert names_in(tmp_path) == sorted(path.name for path in stays)
    assert names_in(stays[0]) == names_in(tmp_path / ".others") == ["vane.pdf"]


def test_a_folder_that_another_user_began_stays(target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (target.parent / ".piecewright-theirs").mkdir()
    (target.parent / ".piecewright-theirs" / "vane.pdf").write_bytes(b"half")
    monkeypatch.setattr(writing.os, "geteuid", lambda: os.getuid() + 1)
    write_whole(target, b"new")
    assert names_in(target.parent) == [".piecewright-theirs", target.name]


def test_long_names_and_names_in_other_scripts_can_be_written(tmp_path: Path) -> None:
    for name in ("a" * 250 + ".pdf", "中" * 80 + ".pdf"):
        write_whole(tmp_path / name, b"x")
        assert (tmp_path / name).read_bytes() == b"x"


SLOW_WRITER = """
import os, sys, time
from pathlib import Path
from piecewright.command_line import group as commands, writing
real = os.write
def slow(handle, data):
    done = real(handle, data[:1000])
    Path(sys.argv[1] + ".started").touch()
    time.sleep(30)
    return done
writing.os.write = slow
def command(_given):
    writing.write_whole(Path(sys.argv[1]), b"n" * 5000)
    return 0
commands.run_command = command
from piecewright.command_line.main import run
sys.exit(run([]))
"""


@pytest.mark.parametrize(
    "number, status",
    [(signal.SIGTERM, 143), (signal.SIGINT, 130), (signal.SIGHUP, 129), (signal.SIGKILL, -9)],
)
def test_process_stopped_in_the_middle_of_a_write(target: Path, number: int, status: int) -> None:
    started = Path(f"{target}.started")
    child = subprocess.Popen([sys.executable, "-c", SLOW_WRITER, str(target)], stderr=subprocess.PIPE)
    for _ in range(2000):
        if started.exists():
            break
        time.sleep(0.01)
    child.send_signal(number)
    _, said = child.communicate(timeout=60)
    started.unlink()
    assert child.returncode == status
    assert b"Traceback" not in said
    assert target.read_bytes() == OLD
    assert [name for name in names_in(target.parent) if not name.startswith(".")] == [target.name]
    if number == signal.SIGKILL:
        assert len(names_in(target.parent)) == 2
        write_whole(target.with_name("next.pdf"), b"x")
        target.with_name("next.pdf").unlink()
    assert names_in(target.parent) == [target.name]
