"""Ending in good order when the system or a person asks the program to stop.

A signal raises `Stopped` wherever the program happens to be, and every `finally` on the way out takes its
hidden files away. Not so while cairo draws: it calls back into Python to write, and an exception there is
lost. So while `held`, a signal is only remembered, and raised when the drawing is done.
"""

from __future__ import annotations

import signal
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType
from typing import Final

ASKED: Final = ("SIGINT", "SIGTERM", "SIGHUP")  # from the keyboard, from the system, from a closed terminal
SHELL_BASE: Final = 128  # a shell counts a program stopped by a signal as 128 and the signal's number
INTERRUPTED: Final = SHELL_BASE + signal.SIGINT


class Stopped(BaseException):
    """The program was asked to stop. No `except Exception` may take it for a mistake."""

    def __init__(self, number: int) -> None:
        super().__init__(number)
        self.number = number

    @property
    def status(self) -> int:
        """The exit status that says so."""
        return SHELL_BASE + self.number


class _State:
    """Signals belong to the process, and so does this: how deep we hold, and what came meanwhile."""

    def __init__(self) -> None:
        self.depth = 0
        self.pending: int | None = None


_STATE: Final = _State()


@contextmanager
def ended_by_signals() -> Iterator[None]:
    """Raises Stopped within, when a signal comes; gives the handlers back at the end."""
    before = {}
    try:
        for number in (getattr(signal, name) for name in ASKED if hasattr(signal, name)):
            if signal.getsignal(number) is not signal.SIG_IGN:  # nohup stays nohup
                before[number] = signal.signal(number, _stop)
    except ValueError:  # not the main thread: whoever runs us sees to signals
        before.clear()
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


@contextmanager
def held() -> Iterator[None]:
    """Puts a signal off until the end of what stands within."""
    _STATE.depth += 1
    try:
        yield
    finally:
        _STATE.depth -= 1
        if _STATE.pending is not None and not _STATE.depth:
            number, _STATE.pending = _STATE.pending, None
            raise Stopped(number)


def _stop(number: int, _frame: FrameType | None) -> None:
    """Leaves at once, or as soon as nothing is held. Another signal on the way out changes nothing."""
    if _STATE.depth:
        _STATE.pending = number
        return
    for name in ASKED:
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), signal.SIG_IGN)
    raise Stopped(number)
