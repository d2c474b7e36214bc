"""Killed at any moment, or on a full disk: every file is the old one or the new one, whole, and the next run
makes what it would have made anyway.

Run by hand with a number of moments: `python tests/proof/test_kills.py 200`. A run is killed either by the
clock or just before (for a write: half-way through) one of its own calls to the system. A file of several
names is written where it stands: there a write counts as one step, as it is for a killed process on Linux
where the file is no larger than a page of memory; and blank lines behind its last one say nothing.
"""

from __future__ import annotations

import os
import random
import resource
import shutil
import signal
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from piecewright.command_line.main import run
from piecewright.command_line.writing import MARK
from support.block_files import VANE, put

CALLS = (
    "write",
    "open",
    "replace",
    "unlink",
    "rmdir",
    "chmod",
    "chown",
    "mkdir",
    "utime",
    "scandir",
    "close",
)
"""The calls to the system before which a run may die."""

OLDER = VANE.replace("1 1/4in from B1", "1 3/8in from B1")
ROUGH = VANE.replace("  grid", "grid").replace(" -- ", "--")
ROW = (
    'edition 1\n\nblock "Row" version 1 {\n  use "Tidewater Vane" as vane\n  grid 2 x 1 of 9in\n'
    "  row 2 vane\n}\n"
)

State = dict[str, bytes]


def state_of(folder: Path) -> State:
    """Every file below a folder."""
    return {
        str(path.relative_to(folder)): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def forked(arguments: list[str], prepare: Callable[[], None] = lambda: None) -> int:
    """A command in a process of its own, begun: its number."""
    process = os.fork()
    if process:
        return process
    try:
        nothing = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(nothing, stream)
        sys.stdout, sys.stderr = os.fdopen(1, "w"), os.fdopen(2, "w")
        prepare()
        status = run(arguments)
    except BaseException:
        status = 99
    finally:
        os._exit(status)


def ended(process: int) -> int:
    """How a process ended: its status, or minus the signal that ended it."""
    return os.waitstatus_to_exitcode(os.waitpid(process, 0)[1])


def dying_at(moment: int) -> Callable[[], None]:
    """Makes this process kill itself at its call of that number."""

    def prepare() -> None:
        count = 0

        def wrapped(name: str, real: Callable[..., object]) -> Callable[..., object]:
            def call(*given: object, **named: object) -> object:
                nonlocal count
                count += 1
                if count == moment:
                    if name == "write" and os.fstat(given[0]).st_nlink < 2:  # type: ignore[call-overload]
                        handle, data = given
                        real(handle, data[: len(data) // 2])  # type: ignore[index]
                    os.kill(os.getpid(), signal.SIGKILL)
                return real(*given, **named)

            return call

        for name in CALLS:
            if hasattr(os, name):
                setattr(os, name, wrapped(name, getattr(os, name)))

    return prepare


class Scene:
    """A folder in a state that a command changes, and what may be found there afterwards."""

    def __init__(self, folder: Path, command: list[str], before: Callable[[Path], None]) -> None:
        self.folder, self.command = folder, command
        self.set_up = before
        self.reset()
        self.old = state_of(folder)
        assert ended(forked(command)) == 0
        self.new = state_of(folder)
        assert self.new != self.old
        self.reset()
        begun = time.monotonic()
        ended(forked(command))
        self.lasts = time.monotonic() - begun

    def reset(self) -> None:
        """The folder as it was before."""
        for path in list(self.folder.iterdir()):
            shutil.rmtree(path) if path.is_dir() else path.unlink()
        self.set_up(self.folder)

    def look(self) -> str:
        """Whether the old files are there, the new ones, or some of each; any other is a fault."""
        found = state_of(self.folder)
        parts = [name for name in found if MARK in name]
        for name in parts:
            del found[name]
        for name in self.old.keys() | self.new.keys():
            if (self.folder / name).exists() and (self.folder / name).stat().st_nlink > 1:
                found[name] = found[name].rstrip() + b"\n"
            assert found.get(name) in (self.old.get(name), self.new.get(name)), f"{name} is neither"
        assert found.keys() <= self.old.keys() | self.new.keys(), found.keys()
        what = "old" if found == self.old else "new" if found == self.new else "some of each"
        return what + (", a part left" if parts else "")

    def finish(self) -> None:
        """The next run, which must end as any, with nothing left over."""
        assert ended(forked(self.command)) == 0
        assert state_of(self.folder) == self.new


def hard_linked(folder: Path) -> None:
    put(folder / "vane.block", ROUGH)
    os.link(put(folder / "linked.block", ROUGH.replace("Vane", "Gate")), folder / "other.block")


def built_before(folder: Path) -> None:
    """Sheets of an older draft, and the draft of today."""
    put(folder / "vane.block", VANE)
    for name, data in OLD_SHEETS.items():
        (folder / "out").mkdir(exist_ok=True)
        (folder / "out" / name).write_bytes(data)


def locked_before(folder: Path) -> None:
    """A lock that is no longer up to its file."""
    put(folder / "vane.block", VANE)
    put(folder / "row.block", ROW)
    if OLD_LOCK:
        (folder / "row.block.lock").write_bytes(OLD_LOCK)


OLD_SHEETS: State = {}
OLD_LOCK = b""


def scenes(folder: Path) -> Iterator[tuple[str, Scene]]:
    """Each command with its folder."""
    global OLD_LOCK
    work = folder / "work"
    work.mkdir()
    build = ["build", str(work / "vane.block"), "--format", "pdf,svg", "--out", str(work / "out")]
    put(work / "vane.block", OLDER)
    assert ended(forked(build)) == 0
    OLD_SHEETS.update(state_of(work / "out"))
    yield "build", Scene(work, build, built_before)
    lock = ["lock", str(work / "row.block"), "--update", "--yes"]
    for path in list(work.iterdir()):
        shutil.rmtree(path) if path.is_dir() else path.unlink()
    put(work / "vane.block", OLDER)
    put(work / "row.block", ROW)
    assert ended(forked(["lock", str(work / "row.block")])) == 0
    OLD_LOCK = (work / "row.block.lock").read_bytes()
    yield "lock", Scene(work, lock, locked_before)
    yield "fmt", Scene(work, ["fmt", str(work)], hard_linked)


def killed(scene: Scene, moments: int, chance: random.Random) -> Counter[str]:
    """The command killed at so many moments, and what was found."""
    found: Counter[str] = Counter()
    calls = 1
    scene.reset()
    while ended(forked(scene.command, dying_at(calls))) == -signal.SIGKILL:
        calls *= 2
        scene.reset()
    for number in range(moments):
        scene.reset()
        if number % 2:
            process = forked(scene.command, dying_at(chance.randint(1, calls)))
        else:
            process = forked(scene.command)
            time.sleep(chance.uniform(0, scene.lasts * 1.1))
            os.kill(process, signal.SIGKILL)
        status = ended(process)
        assert status in (0, -signal.SIGKILL), status
        found[scene.look() + (" (had ended)" if status == 0 else "")] += 1
        scene.finish()
    return found


def filled(scene: Scene, trials: int, chance: random.Random) -> Counter[str]:
    """The command with a disk on which files stop growing at some size."""
    found: Counter[str] = Counter()
    largest = max(len(data) for data in scene.new.values())
    for _ in range(trials):
        scene.reset()
        most = chance.randint(0, largest)
        status = ended(
            forked(
                scene.command,
                lambda most=most: resource.setrlimit(  # type: ignore[misc]
                    resource.RLIMIT_FSIZE, (most, resource.RLIM_INFINITY)
                ),
            )
        )
        assert status in (0, 1), status
        look = scene.look()
        assert "part" not in look
        found[f"status {status}: {look}"] += 1
        scene.finish()
    return found


def figures(folder: Path, moments: int, seed: int = 11) -> Iterator[tuple[str, Counter[str]]]:
    """Everything, a line at a time."""
    chance = random.Random(seed)
    for name, scene in scenes(folder):
        yield f"{name}: killed at {moments} moments", killed(scene, moments, chance)
        few = max(moments // 4, 3)
        yield f"{name}: {few} full disks", filled(scene, few, chance)


def test_whatever_ends_a_run_leaves_old_files_or_new_ones(tmp_path: Path) -> None:
    assert all(found for _, found in figures(tmp_path, 4))


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as made:
        for what, counted in figures(Path(made), int(sys.argv[1]) if len(sys.argv) > 1 else 200):
            told = ", ".join(f"{count} {kind}" for kind, count in sorted(counted.items()))
            print(f"{what}: {told}", flush=True)
