"""A block at another size, and which sizes suit it."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Final

from .. import __version__
from ..diagnostics.diagnostic import Diagnostic, errors_in
from ..diagnostics.source import Source
from ..failures import WrongUse
from ..words.commands import asked
from ..words.say import INCHES
from .choices import length_of
from .compiling import Compiled, FolderShelf

if TYPE_CHECKING:
    from ..language.edits import Edit
    from ..pipeline import CompiledBlock


LEAST: Final = Fraction(1)  # inches: smaller blocks are all allowance
MOST: Final = Fraction(120)  # inches: a quilt of one block


def width_of(value: str) -> Fraction:
    """The width that a block is to have, in exact inches."""
    width = length_of(value, asked.WIDTHS)
    if not LEAST <= width <= MOST:
        raise WrongUse(asked.block_out_of_bounds(INCHES, LEAST, MOST))
    return width


def outermost(compiled: Compiled) -> list[CompiledBlock]:
    """The file's blocks that no other block in it uses."""
    used = {use for each in compiled.own_blocks for use in each.draft.uses}
    return [each for each in compiled.own_blocks if (each.draft.title, each.draft.version) not in used]


def resized(
    compiled: Compiled,
    blocks: Sequence[CompiledBlock],
    to: Fraction,
    shelf: FolderShelf,
    title: str | None = None,
) -> str:
    """The file with the blocks drafted that wide, each with the next version that no block of its title has
    yet, or with the title given; WrongUse for one that has yet to be drafted, and for one title of several.

    Templates of two sizes never bear the same title and version. Where the size stays, so do both.
    """
    from ..language.edits import with_edits
    from ..language.parser import parse
    from ..language.rescale import renamed, rescaled

    if title is not None and len(blocks) > 1:
        raise WrongUse(asked.title_of_several(len(blocks)))

    file = parse(compiled.source).value
    assert file is not None, "the file has compiled"
    trees = {each.title.span: each for each in file.blocks}
    edits: list[Edit] = []
    for each in blocks:
        block = trees[each.draft.origin] if each.draft.origin else None
        assert block is not None, "every block of the file has its words"
        if any(measured.block.title.span == each.draft.origin for measured in compiled.measured):
            raise WrongUse(asked.draft_first(each.draft.title))
        edits += rescaled(compiled.source, block, to / each.draft.width)
        if to != each.draft.width or title is not None:
            version = 1 if title is not None else _next_version(each.draft.title, compiled, shelf)
            edits += renamed(file, block, title, version)
    return with_edits(compiled.source.text, edits)


def _next_version(title: str, compiled: Compiled, shelf: FolderShelf) -> int:
    """One more than any block of that title has, in the file and on the shelves."""
    own = [each.draft.version for each in compiled.blocks if each.draft.title == title]
    shelved = [each.version for each in shelf.find(title, compiled.name) if each.block.title.text == title]
    return max(own + shelved) + 1


def faults_of(source: Source, shelf: FolderShelf) -> list[Diagnostic]:
    """The errors in a resized file."""
    from ..pipeline import compile_file

    return errors_in(compile_file(source, shelf).diagnostics)


def report(blocks: Sequence[CompiledBlock], to: Fraction | None, ruler: Fraction, form: str) -> str:
    """What is told of the blocks, to read or as JSON."""
    from json import dumps

    from ..cutting.sizes import block_at
    from ..sheets.reports.sizes_report import size_text, sizes_text
    from .records.sizes import sizes_record

    sizes = [block_at(each.draft, each.templates, to, ruler) if to is not None else None for each in blocks]
    pairs = list(zip(blocks, sizes, strict=True))
    if form == "json":
        records = [sizes_record(each.draft, each.templates, ruler, size) for each, size in pairs]
        return dumps({"piecewright": __version__, "blocks": records}, ensure_ascii=True)
    return "\n\n\n".join(
        size_text(each.draft, each.templates, size, ruler)
        if size
        else sizes_text(each.draft, each.templates, ruler)
        for each, size in pairs
    )
