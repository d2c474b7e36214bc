"""The two faces that all lettering is set in, read from their font files: which letters, how wide, how high.

In: the files of Source Sans Pro (SIL Open Font License) that the package font-source-sans-pro installs.
Out: a Face. Only the tables that measuring needs are read (OpenType 1.9: cmap, head, hhea, hmtx, OS/2), so
layout measures text without loading the drawing library, and measures exactly what that library sets.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from struct import error as StructError
from struct import unpack_from
from typing import Final

from ...measure.record import record
from ...words.pages.drawing import face_unreadable, no_face, no_typeface

FAMILY: Final = "Source Sans Pro"
PACKAGE: Final = "font_source_sans_pro"
FILES: Final = {False: "SourceSansPro-Regular.ttf", True: "SourceSansPro-Bold.ttf"}


class MachineLacks(Exception):
    """This machine lacks a part that sheets need; says which, and what to install. For the command line."""


class FontMissing(MachineLacks):
    """The typeface is not installed, or its file cannot be read."""


@record
class Face:
    """One weight. `widths` gives, for each letter the face has, its advance; all heights are above or below
    the baseline. Everything in ems: multiply by the size."""

    widths: dict[str, float]
    ascent: float
    descent: float
    cap_height: float


def font_file(bold: bool) -> Path:
    """Where the face lies on this machine. FontMissing where it does not."""
    from importlib.util import find_spec

    found = find_spec(PACKAGE)  # looks, without running the package
    if found is None or not found.submodule_search_locations:
        raise FontMissing(no_typeface(FAMILY))
    path = Path(found.submodule_search_locations[0]) / "files" / FILES[bold]
    if not path.is_file():
        raise FontMissing(no_face(FAMILY, FILES[bold]))
    return path


@cache
def face(bold: bool) -> Face:
    """The regular or the bold face, read once."""
    path = font_file(bold)
    try:
        return _read_face(path.read_bytes())
    except (OSError, IndexError, KeyError, ValueError, ArithmeticError, StructError) as fault:
        raise FontMissing(face_unreadable(path.name)) from fault


def _read_face(font: bytes) -> Face:
    tables = _tables(font)
    em = unpack_from(">H", font, tables["head"] + 18)[0]
    ascent, descent = unpack_from(">hh", font, tables["hhea"] + 4)
    (cap_height,) = unpack_from(">h", font, tables["OS/2"] + 88)
    glyphs = _letters(font, tables["cmap"])
    advances = _advances(font, tables)
    last = len(advances) - 1  # glyphs beyond the table are as wide as its last (hmtx)
    widths = {letter: advances[min(glyph, last)] / em for letter, glyph in glyphs.items()}
    return Face(widths, ascent / em, -descent / em, cap_height / em)


def _tables(font: bytes) -> dict[str, int]:
    """Where each table starts."""
    count = unpack_from(">H", font, 4)[0]
    records = (unpack_from(">4sIII", font, 12 + 16 * each) for each in range(count))
    return {tag.decode("latin-1"): offset for tag, _, offset, _ in records}


def _advances(font: bytes, tables: dict[str, int]) -> tuple[int, ...]:
    """The advance of each glyph, in font units: every second number of hmtx, the others are side bearings."""
    count = unpack_from(">H", font, tables["hhea"] + 34)[0]
    advances: tuple[int, ...] = unpack_from(f">{2 * count}H", font, tables["hmtx"])[::2]
    return advances


def _letters(font: bytes, cmap: int) -> dict[str, int]:
    """The glyph of each letter, from the table for all of Unicode (format 12: first, last, first glyph)."""
    count = unpack_from(">H", font, cmap + 2)[0]
    for each in range(count):
        offset = cmap + unpack_from(">HHI", font, cmap + 4 + 8 * each)[2]
        if unpack_from(">H", font, offset)[0] == 12:
            groups = unpack_from(">I", font, offset + 12)[0]
            numbers = unpack_from(f">{3 * groups}I", font, offset + 16)
            return {
                chr(code): glyph + code - first
                for first, last, glyph in zip(numbers[::3], numbers[1::3], numbers[2::3], strict=True)
                for code in range(first, last + 1)
            }
    raise ValueError("cmap")
