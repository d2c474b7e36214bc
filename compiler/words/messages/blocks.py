"""Complaints about a block as a whole: its size, grid, statements given twice."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...diagnostics.diagnostic import Diagnostic, Label, error
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from ...diagnostics.source import Span
    from ...measure.tolerance import Number


@message
def statement_twice(say: Say, whole: str, word: str, span: Span, first: Span) -> Diagnostic:
    """A statement that a whole (`block` or `quilt`) may have once."""
    return error(
        "statement-twice",
        f"A {whole} has one `{word}`, and this is the second.",
        span,
        related=(Label(first, "the first"),),
        help="Take one of them away.",
    )


@message
def size_missing(say: Say, span: Span) -> Diagnostic:
    """A block with no size at all."""
    return error(
        "size-missing",
        "This block has no size.",
        span,
        help="Write `finished 6in`, or `grid 3 x 3 of 2in`, or draw its `outline`.",
    )


@message
def size_too_large(say: Say, span: Span, width: Number, height: Number, most: Number) -> Diagnostic:
    """A grid or an outline that makes a block larger than any length that may be written."""
    return error(
        "size-too-large",
        f"This block is {say.size(width, height)}, and a block is at most {say.length(most)} either way.",
        span,
        help="Is the unit right? Look at `of` after `grid`, or at the lengths of the `outline`.",
    )


@message
def size_disagrees(
    say: Say, span: Span, first: Span, written: tuple[Number, Number], made: tuple[Number, Number]
) -> Diagnostic:
    """`finished` and `grid ... of` that say different sizes."""
    return error(
        "size-disagrees",
        f"The grid comes to {say.size(*made)}, and `finished` says {say.size(*written)}.",
        span,
        related=(Label(first, "the finished size"),),
        help="Mend one of them, or leave one out.",
    )


@message
def outline_single(say: Say, span: Span) -> Diagnostic:
    """An outline whose path has no inside."""
    return error(
        "outline-no-inside", "This outline has no inside.", span, help="An outline goes round the block once."
    )


@message
def title_twice(say: Say, title: str, version: int, span: Span, first: Span) -> Diagnostic:
    """Two blocks of one title and version in one file."""
    return error(
        "block-twice",
        f'There are two blocks "{title[:60]}" version {version} in this file.',
        span,
        related=(Label(first, "the first"),),
        help="Give one another title or another version.",
    )


@message
def too_many_pieces(say: Say, span: Span, most: int) -> Diagnostic:
    """More lines than the compiler takes on."""
    return error(
        "block-too-large",
        f"With all its copies, this draws more than {most:,} lines.",
        span,
        help="Divide it into blocks, and set those side by side.",
    )


@message
def too_many_faces(say: Say, span: Span, count: int, most: int) -> Diagnostic:
    """More pieces than the compiler takes on."""
    return error(
        "block-too-large",
        f"The seams of this block make {count:,} pieces, and it may have {most:,}.",
        span,
        help="Divide it into blocks, and set those side by side.",
    )


@message
def crossings_too_many(say: Say, span: Span, most: int) -> Diagnostic:
    """More meetings of lines than the compiler takes on."""
    return error(
        "crossings-too-many",
        f"Seams of this block cross or meet at more than {most:,} places.",
        span,
        "this one among the most often",
        help="Turn it fewer times, draw fewer seams across one another, or divide the block.",
    )


@message
def outline_too_long(say: Say, span: Span, count: int, most: int) -> Diagnostic:
    """An outline of more sides than anybody sews round."""
    return error(
        "block-too-large",
        f"This outline has {count:,} sides, and an outline has at most {most}.",
        span,
        help="Draw what is round as an arc: `~~ Q through R`.",
    )


@message
def file_too_full(say: Say, span: Span, most: int) -> Diagnostic:
    """Blocks that are too large together."""
    return error(
        "block-too-large",
        f"With this block, the blocks of the file have more than {most:,} seams and edges.",
        span,
        help="Put some of them into files of their own; a block finds the others beside it.",
    )
