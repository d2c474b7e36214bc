"""The file that a new block or quilt is begun with."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Final

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Source
from ..failures import WrongUse
from ..measure.length import UNITS
from ..words.commands import asked
from ..words.commands import new as words
from ..words.commands.new import Edges, Part
from ..words.pages.finding import use_words
from ..words.say import CENTIMETRES, INCHES, Say
from .compiling import compile_input
from .inputs import Input, one_input
from .naming import alias_of, digest, slug
from .rewriting import laid_out

if TYPE_CHECKING:
    from ..shelves.folders import FolderShelf

__all__ = ["Part"]

CM: Final = UNITS["cm"]
SIZES: Final = {"in": "9in", "cm": "24cm"}  # thirds and quarters of both lie on a ruler's marks
EDGES: Final = {
    "in": Edges(Fraction(42), Fraction(3), Fraction(9, 4), Fraction(4)),
    "cm": Edges(110 * CM, 8 * CM, 6 * CM, 10 * CM),
}
METRIC_ALLOWANCE: Final = "0.75cm"  # what metric rulers add (common practice, no published source)
BACKGROUND: Final = "background"


def unit_of(size: str) -> str:
    """The unit that a length is written in, 'in' or 'cm'."""
    return "in" if size.endswith("in") else "cm"


def block_begun(title: str, size: str, grid: tuple[int, int]) -> str:
    """A block's file, in the units of its size."""
    return words.block_text(title, size, grid, METRIC_ALLOWANCE if unit_of(size) == "cm" else "")


def quilt_begun(title: str, cell: str, shape: tuple[int, int], parts: Sequence[Part]) -> str:
    """A quilt's file, in the units of its cells' size."""
    unit = unit_of(cell)
    say: Say = CENTIMETRES if unit == "cm" else INCHES
    return words.quilt_text(title, cell, shape, parts, say, EDGES[unit])


def parts_of(titles: Sequence[str], shelf: FolderShelf) -> list[Part]:
    """The blocks of these titles, here or on a shelf, each once; WrongUse for one that there is not, or that
    has a mistake."""
    parts: dict[tuple[str, int], Part] = {}
    for title in titles:
        given = one_input(title, None, shelf)
        if given.titled is None:
            raise WrongUse(asked.title_not_file(title))
        blocks = compile_input(given, shelf).blocks
        if not blocks:
            raise WrongUse(asked.block_faulty(title, given.name))
        draft = blocks[0].draft
        name = alias_of(draft.title)
        taken = {part.name for part in parts.values()}
        if name in taken and given.titled.key not in parts:
            name = f"{name}-{digest(draft.title)}"
        roles = tuple(dict.fromkeys(piece.fabric for piece in draft.pieces))
        parts[given.titled.key] = Part(use_words(draft.title, draft.version, name), name, roles)
    return list(parts.values())


def file_named(title: str, kind: str) -> str:
    """`pebble-path.block`"""
    return f"{slug(title) or digest(title)}.{kind}"


def in_house_style(text: str, name: str) -> str:
    """The text as `fmt` would lay it out; as it is, where it has a mistake."""
    return laid_out(Source(name, text)).value or text


def faults_in(text: str, name: str, shelf: FolderShelf) -> tuple[Diagnostic, ...]:
    """What is wrong with a file that is begun so, if the answers do not go together."""
    made = compile_input(Input(name, None, text.encode), shelf)
    return made.diagnostics if not made.blocks and not made.quilts else ()
