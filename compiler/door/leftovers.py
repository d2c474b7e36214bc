"""Hidden files of bytes not yet named: whose they are, and the end of those that a killed run left behind.

The name of a hidden file says which run wrote it: the place (machine, or container on it), the process, and
when that process was started. The next run that writes in the folder takes away what ours left, once they are
dead. A folder may be shared with other places, whose processes we cannot see: theirs are let be for a day.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path
from time import time
from typing import Final
from zlib import crc32

PART: Final = ".part"
MARK: Final = ".piecewright-"
FORGOTTEN: Final = 86_400.0  # seconds: no run takes a day to write its files
FIELDS: Final = 4  # place, process, start and attempt, parted by hyphens
STARTED: Final = 19  # of the facts in /proc/PID/stat after the program's name: its start (proc(5), 22)


def hidden_name(name: str, attempt: int) -> str:
    """The hidden name for a file: `.vane-v2.pdf.piecewright-8f3a12c0-4711-99120-0.part`."""
    return f".{name}{MARK}{_place()}-{os.getpid()}-{_started(os.getpid())}-{attempt}{PART}"


def sweep(folder: Path) -> None:
    """Takes away the hidden files in a folder that dead runs of this user's left."""
    try:
        with os.scandir(folder) as listing:
            found = [each for each in listing if each.name.startswith(".") and each.name.endswith(PART)]
    except OSError:
        return  # whoever writes there finds out, and says so
    for each in found:
        try:
            if each.is_file(follow_symlinks=False) and _is_left(each):
                os.unlink(each.path)
        except OSError:
            continue  # another run took it away


def _is_left(entry: os.DirEntry[str]) -> bool:
    facts = entry.name.rpartition(MARK)[2].removesuffix(PART).split("-")
    if len(facts) != FIELDS or not all(each.isdecimal() for each in facts[1:]):
        return False
    about = entry.stat(follow_symlinks=False)
    if hasattr(os, "geteuid") and about.st_uid != os.geteuid():
        return False
    if facts[0] != _place():
        return time() - about.st_mtime > FORGOTTEN
    return not _is_alive(int(facts[1]), int(facts[2]))


def _is_alive(process: int, started: int) -> bool:
    """Whether that very process still runs, and not a later one of its number."""
    if sys.platform == "win32":  # asking there would end it
        return True
    try:
        os.kill(process, 0)
    except (ProcessLookupError, OverflowError):
        return False
    except PermissionError:
        pass
    now = _started(process)
    return not (now and started) or now == started


def _started(process: int) -> int:
    """When a process was started, in the system's ticks; 0 where the system does not say."""
    try:
        with open(f"/proc/{process}/stat", "rb") as facts:
            return int(facts.read().rpartition(b")")[2].split()[STARTED])
    except (OSError, IndexError, ValueError):
        return 0


def _place() -> str:
    """Eight digits for where processes have numbers of their own: the machine, or the container on it."""
    try:
        within = os.readlink("/proc/self/ns/pid")
    except OSError:
        within = ""
    name = os.uname().nodename if hasattr(os, "uname") else os.environ.get("COMPUTERNAME", "")
    return f"{crc32(f'{name} {within}'.encode()):08x}"
