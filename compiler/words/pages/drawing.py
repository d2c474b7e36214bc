"""What this machine lacks for drawing, and what to install."""

from __future__ import annotations

from typing import Final

NO_CAIRO: Final = "The library cairo is missing: install it (on Debian: libcairo2)."
NO_FONTCONFIG: Final = "The library fontconfig is missing: install it (on Debian: libfontconfig1)."


def cannot_draw(said: str) -> str:
    """cairo's own words on a page that it gives up."""
    return f"cairo cannot draw this page: {said}."


def picture_too_large(across: int, down: int, most: int) -> str:
    """A PNG of more dots a side than cairo draws."""
    return f"A picture of {across} x {down} dots is too large: cairo draws up to {most:,} a side."


def no_typeface(family: str) -> str:
    """The package is not there."""
    return f"The typeface {family} is missing: install the package font-source-sans-pro."


def no_face(family: str, file: str) -> str:
    """The package is there without one of its files."""
    return f"The typeface {family} lacks {file}: install font-source-sans-pro again."


def face_not_found(family: str) -> str:
    """The files are there, and cairo draws with another face."""
    return f"cairo cannot find the typeface {family}: install font-source-sans-pro again."


def face_unreadable(file: str) -> str:
    """One of the files is damaged."""
    return f"{file} cannot be read: install font-source-sans-pro again."
