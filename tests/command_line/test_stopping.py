"""Asked to stop, the program ends in good order, at once or as soon as the drawing in hand is done."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from piecewright.door.stopping import Stopped, ended_by_signals, held
from support.block_files import VANE, put


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_signal_stops_at_once_and_handlers_are_given_back(number: int) -> None:
    before = signal.getsignal(number)
    with pytest.raises(Stopped) as told, ended_by_signals():
        os.kill(os.getpid(), number)
        time.sleep(10)
    assert told.value.status == 128 + number
    assert signal.getsignal(number) == before


def test_signal_waits_while_held() -> None:
    done = []
    with pytest.raises(Stopped) as told, ended_by_signals(), held():
        with held():
            os.kill(os.getpid(), signal.SIGTERM)
            time.sleep(0.01)
            done.append("inner")
        done.append("outer")
    assert done == ["inner", "outer"]
    assert told.value.status == 143


def test_nothing_is_raised_where_nothing_came() -> None:
    with ended_by_signals(), held():
        pass


def test_real_build_stopped_at_any_moment_leaves_only_whole_sheets(tmp_path: Path) -> None:
    for number in range(60):
        put(tmp_path / "files" / f"vane-{number}.block", VANE.replace("Vane", f"Vane {number}"))
    moments = random.Random(5)
    out = tmp_path / "sheets"
    killed: set[str] = set()  # hidden folders that a killed run left; an empty one stays for a minute
    for number in [signal.SIGTERM, signal.SIGKILL, signal.SIGINT, signal.SIGHUP] * 2:
        command = [sys.executable, "-m", "piecewright", "build", str(tmp_path / "files"), "--out", str(out)]
        child = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        assert child.stdout is not None
        child.stdout.readline()  # the first sheet is written, the next under way
        time.sleep(moments.uniform(0, 0.5))
        child.send_signal(number)
        _, said = child.communicate(timeout=60)
        assert child.returncode in (128 + number, -number, 0), said
        assert b"Traceback" not in said and b"mistake" not in said
        hidden = {name for name in os.listdir(out) if name.startswith(".")}
        made = set(os.listdir(out)) - hidden
        assert made
        if number == signal.SIGKILL:
            killed |= hidden
        else:
            assert hidden <= killed and not any(os.listdir(out / name) for name in hidden)
        for name in made:
            assert (out / name).read_bytes().rstrip().endswith(b"%%EOF")
