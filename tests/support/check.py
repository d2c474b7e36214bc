"""The one door from the tests into the compiler: texts in, drafts and diagnostics out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from piecewright.diagnostics.diagnostic import Diagnostic, Outcome, in_order
from piecewright.diagnostics.source import Source
from piecewright.drafting.draft import Drafter
from piecewright.drafting.model import Draft, Piece
from piecewright.language.decode import read_source
from piecewright.language.parser import parse
from piecewright.language.shelf import Shelf, ShelfBlock
from piecewright.language.tree import Also, Block
from piecewright.pipeline import CompiledBlock, compile_file

FILE = "block.block"
"""The name that the text under test is read by."""

HEADER = 'edition 1\nblock "Trial" {\n'
"""What `check_block` puts before a body, in two lines."""


class DictShelf:
    """A shelf of texts by file name, all of them beside the file under test, in the order given."""

    def __init__(self, files: Mapping[str, str]) -> None:
        self.blocks: list[ShelfBlock] = []
        for name, text in files.items():
            source = Source(name, text)
            parsed = parse(source)
            assert not parsed.failed and parsed.value is not None, f"{name}: {parsed.diagnostics}"
            self.blocks += [ShelfBlock(block, source, "beside") for block in parsed.value.blocks]

    def find(self, title: str, near: str) -> tuple[ShelfBlock, ...]:
        """Every version of every block of that title; then those that bear it as another name."""
        called = [each for each in self.blocks if each.block.title.text == title]
        return (*called, *(each for each in self.blocks if title in _other_names(each.block)))

    def titles(self, near: str) -> Iterable[str]:
        """Every title on the shelf."""
        return [each.block.title.text for each in self.blocks]


def _other_names(block: Block) -> list[str]:
    return [each.text for statement in block.body if isinstance(statement, Also) for each in statement.titles]


def draft_text(text: str, **other_files: str) -> Outcome[tuple[Draft, ...]]:
    """The drafts of a text, with everything said of it.

    Other files are named `NAME.block`, lie beside it, and are found by title; so is the text itself by them.
    """
    read = read_source(FILE, text.encode())
    if read.value is None:
        return Outcome(None, read.diagnostics)
    parsed = parse(read.value)
    if parsed.value is None:
        return Outcome(None, in_order(parsed.diagnostics))
    shelf = DictShelf({f"{name}.block": other for name, other in other_files.items()})
    shelf.blocks += [ShelfBlock(block, read.value, "beside") for block in parsed.value.blocks]
    drafter = Drafter(read.value, parsed.value, shelf)
    drafts = (*drafter.draft_blocks(parsed.value, parsed.diagnostics), *drafter.from_elsewhere)
    outcome = Outcome(drafts, in_order([*parsed.diagnostics, *drafter.diagnostics]))
    return Outcome(None, outcome.diagnostics) if outcome.failed else outcome


def compile_source(source: Source, shelf: Shelf) -> Outcome[tuple[CompiledBlock, ...]]:
    """The blocks of a file, compiled."""
    made = compile_file(source, shelf)
    return Outcome(made.value.blocks if made.value else None, made.diagnostics)


def clean_drafts(text: str, **other_files: str) -> tuple[Draft, ...]:
    """The drafts of a text about which nothing at all is said."""
    outcome = draft_text(text, **other_files)
    assert outcome.value is not None and not outcome.diagnostics, said(outcome)
    return outcome.value


def check_block(body: str, **other_files: str) -> Draft:
    """The draft of one block's body, about which nothing at all is said."""
    return clean_drafts(f"{HEADER}{body}\n}}\n", **other_files)[0]


def check_noted(code: str, body: str, **other_files: str) -> Draft:
    """The draft of one block's body, about which that one note is made."""
    outcome = draft_block(body, **other_files)
    assert outcome.value is not None and codes(outcome) == [code], said(outcome)
    return outcome.value[0]


def draft_block(body: str, **other_files: str) -> Outcome[tuple[Draft, ...]]:
    """One block's body, with everything said of it."""
    return draft_text(f"{HEADER}{body}\n}}\n", **other_files)


def codes(outcome: Outcome[tuple[Draft, ...]]) -> list[str]:
    """The codes said, in order."""
    return [each.code for each in outcome.diagnostics]


def said(outcome: Outcome[tuple[Draft, ...]]) -> str:
    """Everything said, a line each."""
    return "\n".join(f"{each.code}: {each.message} [{each.help}]" for each in outcome.diagnostics)


def only(outcome: Outcome[tuple[Draft, ...]], code: str) -> Diagnostic:
    """The one thing said, which has that code."""
    assert codes(outcome) == [code], said(outcome) or "nothing was said"
    return outcome.diagnostics[0]


def words(diagnostic: Diagnostic, text: str) -> str:
    """The words of the text that a complaint points at."""
    span = diagnostic.primary.span
    return text[span.start : span.end]


def named(draft: Draft, name: str) -> list[Piece]:
    """The pieces of that name."""
    return [piece for piece in draft.pieces if piece.name == name]


def areas(draft: Draft, name: str) -> set[Fraction | float]:
    """The areas of the pieces of that name."""
    return {piece.area for piece in named(draft, name)}


def counts(draft: Draft) -> list[tuple[int, int]]:
    """For each shape, how many to cut and how many reversed."""
    return [
        (sum(not each.reversed for each in shape.members), sum(each.reversed for each in shape.members))
        for shape in draft.shapes
    ]


def at(draft: Draft, x: float, y: float) -> Piece:
    """The piece in which a place lies."""
    from piecewright.drafting.seams import inside_ring
    from piecewright.geometry.edge import Point

    found = [
        piece
        for piece in draft.pieces
        if inside_ring(Point(x, y), tuple(side.edge for side in piece.ring))
        and not any(inside_ring(Point(x, y), tuple(side.edge for side in hole)) for hole in piece.holes)
    ]
    assert len(found) == 1, f"{len(found)} pieces at {x}, {y}"
    return found[0]
