"""Lines of at most 80 columns, for people at a terminal."""

from __future__ import annotations

from typing import Final

from ...diagnostics.visible import visible, width_of

ROOM: Final = 80  # columns of the narrowest terminal in common use
GAP: Final = "  "


def told(what: str, value: str, indent: str = GAP) -> list[str]:
    """`Maker: A. Writer`, over as many lines as it takes."""
    return wrapped(f"{what}: {visible(value)}", indent, indent + GAP)


def wrapped(text: str, first: str = "", later: str = "") -> list[str]:
    """The text over lines of ROOM columns that begin with `first` and `later`; long words are parted."""
    lines = [first]
    for word in text.split(" "):
        space = " " if lines[-1].strip() and lines[-1] != first else ""
        if width_of(lines[-1] + space + word) <= ROOM:
            lines[-1] += space + word
            continue
        lines.append(later)
        for letter in word:
            if width_of(lines[-1] + letter) > ROOM:
                lines.append(later)
            lines[-1] += letter
    return [line.rstrip() for line in lines if line.strip()]
