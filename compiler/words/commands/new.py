"""`piecewright new`: its help, what it asks, and the files that it starts."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from ...measure.record import record
from ..phrases import one_of
from ..say import Say

HELP: Final = """\
Start a block's or a quilt's file, which builds as it stands.

What no option says is asked for, on a terminal; elsewhere it has a usual value. The file has remarks that
say how to go on. A file of that name that is here already stays as it is.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright new block                                    asks for title, size and grid
  piecewright new block "Pebble Path" --size 9in --grid 3x3
  piecewright new quilt "Harbour Throw" --use "Ohio Star" --use "Evening Star" --set 4x5
"""

SIZE: Final = "How large: of a block, or of a quilt's cells.  [default: 9in, or 24cm]"
GRID: Final = "A block's grid: squares across and down.  [default: 3x3]"
USE: Final = "A block that the quilt is set from, by its title. Repeatable; they take turns."
SET: Final = "A quilt's cells across and down.  [default: 4x5]"
OUT: Final = "The file to write.  [default: named after the title]"

ASK_TITLE: Final = "Its title"
ASK_SIZE: Final = "How large, finished"
ASK_CELL: Final = "How large each block in it, finished"
ASK_GRID: Final = "Its grid, squares across and down"
ASK_USE: Final = "A block for it, by its title ('piecewright find' lists them)"
ASK_SET: Final = "Blocks across and down"


def title_wanted() -> str:
    """Nobody to ask, and no title."""
    return "Say what its title is to be."


def block_wanted() -> str:
    """A quilt of no block."""
    return "Say with --use which block the quilt is set from; 'piecewright find' lists them."


def not_of_it(option: str, kind: str) -> str:
    """An option of blocks for a quilt, or the other way round."""
    return f"{option} is not for a {kind}."


def is_here(path: str) -> str:
    """A file that would be lost."""
    return f"{path} is here already and stays as it is; choose another with --out."


def next_steps(path: str) -> str:
    """What to do with it now."""
    name = f'"{path}"' if " " in path else path
    return f"Draw it with 'piecewright show {name}', make its sheets with 'piecewright build {name}'."


@record
class Part:
    """A block that a quilt is set from: the line that uses it, its name there, and its roles."""

    use: str
    name: str
    roles: tuple[str, ...]


def title_written(title: str) -> str:
    """A title as the language writes it."""
    escaped = title.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def block_text(title: str, size: str, grid: tuple[int, int], allowance: str) -> str:
    """A block of squares that take turns, with remarks on what to write in their place."""
    across, down = grid
    lines = [
        "edition 1",
        "",
        f"block {title_written(title)} version 1 {{",
        f"  finished {size}",
        "  # Points of the grid have a letter, across, and a number, down: A1 is the top left corner.",
        f"  grid {across} x {down}",
        *([f"  allowance {allowance}"] if allowance else []),
        "",
        "  # Squares, to begin with. Light and dark are roles: a quilt says which cloth each of them is.",
        f"  alternate plain dark{', plain light' if across * down > 1 else ''}",
        "",
        "  # To draw your own, take that line away and write seams between points, and pieces between seams:",
        "  #",
        "  #   seam A1 -- B2",
        "  #   piece sail at between A1, B1, B2 in dark",
        "  #",
        "  # What stands in `turn 4 about center { ... }` comes again in each quarter of the block.",
        "}",
        "",
    ]
    return "\n".join(lines)


def quilt_text(
    title: str, cell: str, shape: tuple[int, int], parts: Sequence[Part], say: Say, edges: Edges
) -> str:
    """A quilt of these blocks by turns, with a fabric for every role."""
    across, down = shape
    roles = list(dict.fromkeys(role for part in parts for role in part.roles))
    first, last = roles[0], roles[-1]
    names = [part.name for part in parts]
    turns = " take turns" if len(names) > 1 else ""
    width = f"width {say.length(edges.cloth)}"
    lines = [
        "edition 1",
        "",
        f"quilt {title_written(title)} version 1 {{",
        *(f"  {part.use}" for part in parts),
        "",
        "  # Your fabrics, a line each: write what each is called, and its width between the selvages.",
        *(f'  fabric {role} "{role.replace("-", " ").capitalize()}" {width}' for role in roles),
        "",
        f"  # {across} blocks across and {down} down; {one_of(names, 'and')}{turns}.",
        f"  set straight {across} across {down} down of {cell} {{ alternate {', '.join(names)} }}",
        "",
        "  # Change what stands here, or take a line away.",
        f"  border {say.length(edges.border)} in {first}",
        f"  binding {say.length(edges.binding)} in {last}",
        f"  backing in {last} {say.length(edges.over)} over",
        f"  batting {say.length(edges.over)} over",
        "}",
        "",
    ]
    return "\n".join(lines)


@record
class Edges:
    """Usual measures, in inches: width of cloth and of a border, of a binding's strip, and what backing and
    batting reach over (common practice, no published source)."""

    cloth: Fraction
    border: Fraction
    binding: Fraction
    over: Fraction
