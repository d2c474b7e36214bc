"""The command itself: help, statuses, signals, and what it does not import."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import click
import pytest
from piecewright import __version__
from piecewright.command_line import main
from piecewright.command_line.commands import check
from piecewright.command_line.group import commands
from piecewright.door.choices import PAPERS
from piecewright.words.commands.overview import COMMANDS
from support.block_files import FAULTY, VANE, put
from support.command import piecewright, process

HEAVY = ("shapely", "cairocffi", "cairosvg", "lark", "numpy")


def test_help_leads_a_newcomer_to_each_command() -> None:
    ended = piecewright("--help")
    assert ended.status == 0 and ended.err == ""
    for command in ("build", "check", "show", "explain", "completion"):
        assert f"  {command} " in ended.out
        own = piecewright(command, "--help")
        assert own.status == 0 and f"piecewright {command}" in own.out
    assert "Exit status" in ended.out


def test_version_is_the_packages() -> None:
    assert piecewright("--version").out == f"piecewright {__version__}\n"


def test_no_command_shows_the_help_and_is_wrong_use() -> None:
    ended = piecewright()
    assert ended.status == 2 and "First steps" in ended.err and ended.out == ""


@pytest.mark.parametrize(
    "arguments",
    [
        ("frobnicate",),
        ("--frobnicate",),
        ("build",),
        ("check",),
        ("show",),
        ("explain",),
        ("completion",),
        ("completion", "tcsh"),
        ("check", "x.block", "--format", "xml"),
        ("check", "no such file.block"),
        ("check", ""),
        ("check", "a" * 5000),
        ("explain", "no-such-code"),
        ("explain", "a.block"),
    ],
)
def test_wrong_use_is_status_two_with_a_word_of_help(arguments: tuple[str, ...]) -> None:
    ended = piecewright(*arguments)
    assert ended.status == 2 and ended.out == ""
    assert "Usage: piecewright" in ended.err and "--help" in ended.err


def test_missing_file_offers_the_one_beside_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    put(tmp_path / "tidewater.block", VANE)
    monkeypatch.chdir(tmp_path)
    assert "Did you mean 'tidewater.block'?" in piecewright("check", "tidewatr.block").err
    assert "Did you mean 'tidewater.block'?" in piecewright("build", "tidewater").err


def test_folder_without_blocks_and_folder_for_one_file_are_wrong_use(tmp_path: Path) -> None:
    assert "no .block or .quilt file" in piecewright("check", tmp_path).err
    ended = piecewright("show", tmp_path)
    assert ended.status == 2 and "takes one file" in ended.err


@pytest.mark.parametrize(
    "shell, words",
    [
        ("bash", "complete -o nosort"),
        ("zsh", "#compdef piecewright"),
        ("fish", "complete --no-files --command piecewright"),
    ],
)
def test_completion_prints_what_the_shell_needs(shell: str, words: str) -> None:
    ended = piecewright("completion", shell)
    assert ended.status == 0 and words in ended.out


@pytest.mark.parametrize(
    "line, count, words",
    [
        ("piecewright ch", 1, ["check"]),
        ("piecewright build --pape", 2, ["--paper"]),
        ("piecewright build --paper ", 3, list(PAPERS)),
        ("piecewright build --format pdf,s", 3, ["pdf,svg"]),
        ("piecewright completion ", 2, ["bash", "zsh", "fish"]),
    ],
)
def test_shell_is_told_what_may_follow(line: str, count: int, words: list[str]) -> None:
    asked = {"_PIECEWRIGHT_COMPLETE": "bash_complete", "COMP_WORDS": line, "COMP_CWORD": str(count)}
    ended = process(env=asked)
    assert [each.partition(",")[2] for each in ended.out.splitlines()] == words


@pytest.mark.parametrize("arguments", [["--help"], ["build", "--help"], ["--version"], ["check", "nowhere"]])
def test_nothing_heavy_is_loaded_to_answer_a_simple_question(arguments: list[str]) -> None:
    code = (
        "import sys; from piecewright.command_line.main import run; run(sys.argv[1:]); "
        f"print([name for name in {HEAVY} if name in sys.modules])"
    )
    command = [sys.executable, "-c", code, *arguments]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"


@pytest.mark.parametrize(
    "arguments", [["--help"], ["check", "nowhere"], ["lint", "--help"], ["build", "--help"]]
)
def test_a_command_loads_the_words_of_no_other(arguments: list[str]) -> None:
    code = (
        "import sys; from piecewright.command_line.main import run; run(sys.argv[1:]); "
        "print(*[name for name in sys.modules if name.startswith('piecewright.words.commands.')])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *arguments], capture_output=True, text=True, check=True
    )
    loaded = {name.rpartition(".")[2] for name in done.stdout.splitlines()[-1].split()}
    assert loaded & set(COMMANDS) == {arguments[0]} - {"--help"}


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_is_told_in_a_line_and_loaded_by_its_name(name: str) -> None:
    assert commands.get_command(click.Context(commands), name) is not None
    assert f"  {name} " in piecewright("--help").out and COMMANDS[name] in piecewright("--help").out


@pytest.mark.parametrize(
    "problem, status, words",
    [
        (KeyboardInterrupt(), 130, ""),
        (MemoryError(), 1, "not enough memory"),
        (ZeroDivisionError("x"), 3, "mistake"),
        (RecursionError("x"), 3, "mistake"),
        (OSError(5, "Input/output error"), 1, "Input/output error."),
        (BrokenPipeError(32, "Broken pipe"), 141, ""),
    ],
)
def test_whatever_happens_ends_in_one_line_at_most(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, problem: BaseException, status: int, words: str
) -> None:
    def broken(*_given: object) -> None:
        raise problem

    monkeypatch.setattr(check, "open_shelf", broken)
    ended = piecewright("check", put(tmp_path / "vane.block", VANE))
    assert ended.status == status and words in ended.err
    assert ended.err.count("\n") <= 1 and ended.out == ""


def test_reader_that_goes_away_is_no_mistake(tmp_path: Path) -> None:
    for number in range(300):
        put(tmp_path / f"gate-{number}.block", FAULTY)
    child = subprocess.Popen(
        [sys.executable, "-m", "piecewright", "check", str(tmp_path)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    assert child.stdout is not None and child.stderr is not None
    child.stdout.readline()
    child.stdout.close()
    said = child.stderr.read()
    child.stderr.close()
    assert (child.wait(timeout=60), said) == (141, b"")


def test_full_disk_under_standard_output_is_told_in_one_line(tmp_path: Path) -> None:
    gate = put(tmp_path / "gate.block", FAULTY)
    with open("/dev/full", "wb") as full:
        done = subprocess.run(
            [sys.executable, "-m", "piecewright", "check", str(gate)],
            stdout=full,
            stderr=subprocess.PIPE,
            check=False,
        )
    assert (done.returncode, done.stderr) == (1, b"piecewright: No space left on device.\n")


def test_terminal_without_our_letters_shows_their_numbers(tmp_path: Path) -> None:
    gate = put(tmp_path / "gate.block", FAULTY.replace("gaet", "gaet # →"))
    ended = process("check", gate, env={"PYTHONIOENCODING": "latin-1"})
    assert ended.status == 1 and "\\u2192" in ended.out


def on_terminal(arguments: list[str], env: dict[str, str]) -> str:
    """What a person sees who runs the command on a terminal."""
    leader, follower = pty.openpty()
    clean = {key: value for key, value in os.environ.items() if key != "NO_COLOR"}
    child = subprocess.Popen(
        [sys.executable, "-m", "piecewright", *arguments],
        stdin=follower,
        stdout=follower,
        stderr=follower,
        env={**clean, "TERM": "xterm", **env},
    )
    os.close(follower)
    seen = b""
    while True:
        try:
            piece = os.read(leader, 4096)
        except OSError:  # Linux: nobody holds the other end any more
            break
        if not piece:
            break
        seen += piece
    os.close(leader)
    child.wait(timeout=60)
    return seen.decode()


def test_terminal_gets_colour_and_progress_and_no_color_takes_colour_away(tmp_path: Path) -> None:
    gate = str(put(tmp_path / "gate.block", FAULTY))
    vane = str(put(tmp_path / "vane.block", VANE))
    seen = on_terminal(["check", gate, vane], {})
    assert "\x1b[1;31merror[" in seen
    assert "\r\x1b[K[2/2] " in seen and "vane.block" in seen
    assert "\x1b[1;31m" not in on_terminal(["check", gate], {"NO_COLOR": "1"})
    assert "\x1b[1;31m" not in on_terminal(["check", gate], {"TERM": "dumb"})


def test_signal_handlers_are_given_back(tmp_path: Path) -> None:
    import signal

    before = signal.getsignal(signal.SIGTERM)
    main.run(["check", str(put(tmp_path / "vane.block", VANE))])
    assert signal.getsignal(signal.SIGTERM) == before
