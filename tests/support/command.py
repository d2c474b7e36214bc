"""The one door to the command line for tests: in this process, or as a process of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from click.testing import CliRunner
from piecewright.command_line.main import run


@dataclass(frozen=True, slots=True)
class Ended:
    """How a command ended: its status, and what it wrote."""

    status: int
    out: str
    err: str


def piecewright(
    *arguments: str | Path, stdin: bytes = b"", env: Mapping[str, str | None] | None = None
) -> Ended:
    """Runs a command in this process. The status is what the process would have ended with."""
    runner = CliRunner(env=env)
    with runner.isolation(input=stdin) as streams:
        status = run([str(each) for each in arguments])
        sys.stdout.flush()
        sys.stderr.flush()
        out, err = streams[0].getvalue(), streams[1].getvalue()
    ended = Ended(status, out.decode(), err.decode())
    assert "Traceback" not in ended.out + ended.err, ended.err
    return ended


def process(
    *arguments: str | Path,
    stdin: bytes = b"",
    env: Mapping[str, str] | None = None,
    folder: Path | None = None,
) -> Ended:
    """Runs a command as a user does, in a process of its own."""
    command = [sys.executable, "-m", "piecewright", *map(str, arguments)]
    done = subprocess.run(
        command,
        input=stdin,
        cwd=folder,
        capture_output=True,
        timeout=120,
        check=False,
        env={**os.environ, **(env or {})},
    )
    ended = Ended(done.returncode, done.stdout.decode(), done.stderr.decode())
    assert "Traceback" not in ended.out + ended.err, ended.err
    return ended
