"""Digests of bytes, and of the program itself."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from typing import Final

from .. import __version__

try:
    from _blake2 import blake2b  # what hashlib gives, without loading a library of ciphers for it
except ImportError:
    from hashlib import blake2b

SIZE: Final = 20  # bytes of a digest


def digest_of(data: bytes) -> str:
    """Forty digits that follow from the bytes."""
    return blake2b(data, digest_size=SIZE).hexdigest()


def program_digest() -> str:
    """What follows from the program: its files, Python's version, and when packages were last installed.

    Files by size and time of change, as Python itself tells whether its compiled ones still hold. OSError
    where they cannot be looked at.
    """
    home = os.path.abspath(os.path.join(os.path.dirname(__file__), os.pardir, os.pardir))
    facts = [__version__, sys.version, sys.platform, *_files(home)]
    if not os.path.isdir(os.path.join(home, "library")):  # the data folders stand beside the program's
        above = os.path.dirname(home)
        facts += [*_files(os.path.join(above, "library")), *_files(os.path.join(above, "grammar"))]
    for place in sys.path:
        if place.endswith("-packages"):
            facts.append(_changed(place))
    return digest_of("\0".join(facts).encode())


def _files(folder: str) -> Iterator[str]:
    with os.scandir(folder) as listing:
        entries = sorted(listing, key=lambda entry: entry.name)
    for entry in entries:
        if entry.is_dir():
            if entry.name != "__pycache__":
                yield from _files(entry.path)
        else:
            facts = entry.stat()
            yield f"{entry.path} {facts.st_size} {facts.st_mtime_ns}"


def _changed(place: str) -> str:
    try:
        return f"{place} {os.stat(place).st_mtime_ns}"
    except OSError:
        return place


def machine_files() -> list[str]:
    """The drawing libraries that this process has loaded, where the system tells."""
    try:
        with open("/proc/self/maps", encoding="utf-8") as maps:
            places = [line.partition("/")[2].rstrip() for line in maps if "/" in line]
    except (OSError, UnicodeDecodeError):
        return []
    named = ("libcairo", "libfontconfig", "libfreetype", "libpixman")
    return sorted({f"/{place}" for place in places if os.path.basename(place).startswith(named)})
