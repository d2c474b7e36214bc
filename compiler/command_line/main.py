"""The command `piecewright`: what every run goes through, its exit statuses, and what ends it early."""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Sequence
from typing import Final

from .stopping import INTERRUPTED, Stopped, ended_by_signals

COMPLAINED: Final = 1
CYCLES_BORN: Final = 100_000
"""Objects made between two searches for cycles. A build makes many that live to its end and hardly a cycle:
searching as often as Python does by itself (700) took a quarter of a small build."""


ONE_THREAD: Final = ("OPENBLAS_NUM_THREADS", "1")
"""For the arithmetic library that shapely brings along. It starts a thread for every processor as it is
loaded, for products of large matrices; there are none here, and it took a tenth of a small build."""


def main() -> int:
    """The exit status of the process's own command line; the process ends with it."""
    status = run()
    gc.freeze()  # what is left goes with the process: looking it through for cycles took a tenth of a build
    return status


def run(arguments: Sequence[str] | None = None) -> int:
    """The exit status of a command line (the process's own where none is given). Never raises."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    gc.set_threshold(CYCLES_BORN)
    os.environ.setdefault(*ONE_THREAD)
    _show_whatever_comes()
    try:
        with ended_by_signals():
            from .group import run_command

            return run_command(given)
    except (Stopped, KeyboardInterrupt) as end:
        _end_line()
        return end.status if isinstance(end, Stopped) else INTERRUPTED
    except SystemExit as end:
        return end.code if isinstance(end.code, int) else COMPLAINED
    except Exception as problem:
        from .group import status_after

        return status_after(problem)


def _show_whatever_comes() -> None:
    """Lets a terminal that lacks a letter show its number, where Python would stop."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="backslashreplace")


def _end_line() -> None:
    """A new line after the ^C that a terminal shows."""
    from .group import end_line

    end_line()
