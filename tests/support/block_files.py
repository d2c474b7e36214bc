"""Small block files that many tests of the command line start from."""

from __future__ import annotations

from pathlib import Path
from typing import Final

VANE: Final = """\
edition 1

block "Tidewater Vane" version 2 {
  finished 9in
  grid 3 x 3
  point gate = 1 1/4in from B1 to C1
  turn 4 about center {
    seam B1 -- B2 -- C2 -- C1
    seam B2 -- gate -- C2
    seam A1 -- B2
    piece sail at between B2, gate, C2 in light, dark
    piece quay at between A1, B1, B2 in dark
  }
  piece keel at center in medium
}
"""

VANE_FILE: Final = "../files/vane.block"  # as the fixture `here` of the command line's tests places it

HALVES: Final = """\
edition 1

block "Two Halves" {
  finished 4in
  seam top-left -- bottom-right
  piece one at top-right in dark
  piece two at bottom-left in pale
}
"""

FAULTY: Final = """\
edition 1

block "Gate Test" {
  finished 4in
  seam center -- gaet
}
"""


def titled(title: str, version: int = 1) -> str:
    """A sound block of that title, as the language writes it."""
    quoted = title.replace("\\", "\\\\").replace('"', '\\"')
    return HALVES.replace('"Two Halves"', f'"{quoted}" version {version}')


def put(path: Path, text: str | bytes) -> Path:
    """A file with that text, its folder made."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path
