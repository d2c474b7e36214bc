"""Lines and tables of at most 80 columns, for people at a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from ...diagnostics.visible import shortened, visible, width_of

ROOM: Final = 80  # columns of the narrowest terminal in common use
NARROWEST: Final = 8  # columns that a cell keeps, however many columns the table has
GAP: Final = "  "


def table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> list[str]:
    """Columns side by side, each as wide as it must be; where that is too wide, the widest are cut."""
    cells = [[visible(cell) for cell in row] for row in (heads, *rows)]
    widths = [max(width_of(row[column]) for row in cells) for column in range(len(heads))]
    while sum(widths) + len(GAP) * len(widths) > ROOM and max(widths) > NARROWEST:
        widths[widths.index(max(widths))] -= 1
    lines = []
    for row in cells:
        cut = [_fitted(cell, width) for cell, width in zip(row, widths, strict=True)]
        padded = (cell + " " * (width - width_of(cell)) for cell, width in zip(cut, widths, strict=True))
        lines.append(GAP + GAP.join(padded).rstrip())
    return lines


def _fitted(cell: str, width: int) -> str:
    """The cell, or as much of it as the columns hold."""
    limit = len(cell)
    while width_of(cell) > width:
        limit -= 1
        cell = shortened(cell, max(limit, 1))
    return cell


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
