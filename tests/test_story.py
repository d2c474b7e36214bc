"""The story in examples/ holds: its commands, run in its order, say what it says they say."""

from __future__ import annotations

import filecmp
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

from pypdf import PdfReader
from support.command import piecewright

FOLDER = Path(__file__).parent.parent / "examples" / "a-year-of-a-block"
ANY = "..."  # stands in the story for lines that it leaves out


def steps_of(story: str) -> Iterator[tuple[str, str]]:
    """Each command, and what the story says of its output."""
    for fence in re.findall(r"^```console\n(.*?)^```$", story, re.DOTALL | re.MULTILINE):
        for step in re.split(r"^\$ ", fence, flags=re.MULTILINE)[1:]:
            command, _, said = step.partition("\n")
            yield command, said


def as_told(said: str, out: str) -> bool:
    """Whether the output is what the story says, but for the lines it leaves out."""
    parts = [re.escape(part) for part in re.split(rf"^{re.escape(ANY)}\n", said, flags=re.MULTILINE)]
    return re.fullmatch("(?:.*\n)*".join(parts), out) is not None


def done(command: str) -> str:
    """The output of one command of the story, which must end well."""
    name, *words = command.split()
    match name:
        case "piecewright":
            ended = piecewright(*words)
            assert ended.status == 0, ended.err
            return ended.out
        case "cp":
            shutil.copyfile(*words)
        case "mkdir":
            Path(*words).mkdir()
        case "cmp":
            assert filecmp.cmp(*words, shallow=False), command
        case _:
            raise AssertionError(f"the story has a command of its own: {command}")
    return ""


def test_the_year_goes_as_told(tmp_path, monkeypatch):
    shutil.copytree(FOLDER, tmp_path / "year")
    monkeypatch.chdir(tmp_path / "year")
    story = Path("STORY.md").read_text(encoding="utf-8")
    commands = []
    for command, said in steps_of(story):
        out = done(command)
        assert as_told(said, out), f"{command}\n{out}"
        commands.append(command)
    assert len(commands) == story.count("\n$ ") and any(each.startswith("cmp ") for each in commands)
    pages = PdfReader("sheets/hall-lanterns-v1.pdf").pages
    assert any("Lantern Gate 8in · v2" in page.extract_text() for page in pages)


def test_without_the_lock_the_old_quilt_is_refused(tmp_path, monkeypatch):
    """It asks for version 1, and the shelf has version 2 alone: nothing else is taken in its place."""
    (tmp_path / "shelf").mkdir()
    shutil.copyfile(FOLDER / "july" / "lantern-gate.block", tmp_path / "shelf" / "lantern-gate.block")
    shutil.copyfile(FOLDER / "march" / "winter-lanterns.quilt", tmp_path / "winter-lanterns.quilt")
    monkeypatch.chdir(tmp_path)
    ended = piecewright("build", "winter-lanterns.quilt", "--shelf", "shelf")
    assert ended.status == 1 and 'use "Lantern Gate" version 1' in ended.err
    assert not list(tmp_path.glob("*.pdf"))


def test_the_correction_under_the_old_version_is_refused(tmp_path, monkeypatch):
    """One version with two geometries: her classes would have two sets of plastic under one name."""
    (tmp_path / "shelf").mkdir()
    monkeypatch.chdir(tmp_path)
    shutil.copyfile(FOLDER / "february" / "lantern-gate.block", "shelf/lantern-gate.block")
    shutil.copyfile(FOLDER / "march" / "winter-lanterns.quilt", "winter-lanterns.quilt")
    assert piecewright("lock", "winter-lanterns.quilt", "--shelf", "shelf").status == 0
    corrected = (FOLDER / "july" / "lantern-gate.block").read_text(encoding="utf-8")
    Path("shelf/lantern-gate.block").write_text(corrected.replace('Gate" version 2', 'Gate" version 1'))
    ended = piecewright("lock", "--check", "winter-lanterns.quilt", "--shelf", "shelf")
    assert ended.status == 1
    assert "error[lock-disagrees]: `Lantern Gate` version 1 has other outlines on the shelf" in ended.err
