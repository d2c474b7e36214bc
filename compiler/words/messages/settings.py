"""The words of every complaint about how a quilt sets its blocks."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...diagnostics.diagnostic import Diagnostic, error
from ..phrases import count_of, one_of
from ..places import cell_place
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ...diagnostics.source import Span
    from ...language import tree
    from ...measure.tolerance import Number


@message
def cells_size_missing(say: Say, span: Span) -> Diagnostic:
    """Cells of plain cloth only, and no size."""
    return error(
        "set-size-missing",
        "The cells of this set have no size.",
        span,
        help="Write it: `set straight 4 across 5 down of 8in { ... }`.",
    )


@message
def cells_size_differs(say: Say, span: Span, sizes: Sequence[tuple[Number, Number]]) -> Diagnostic:
    """Blocks of different sizes in one set."""
    told = dict.fromkeys(say.size(*size) for size in sizes)
    return error(
        "set-sizes-differ",
        f"The blocks of this set differ in size: {one_of(list(told), 'and')}.",
        span,
        help="Say the size to draft them all at: `of 8in`.",
    )


@message
def cells_not_square(say: Say, span: Span, width: Number, height: Number) -> Diagnostic:
    """Blocks on point that are not square."""
    return error(
        "set-not-square",
        f"On point, blocks are square, and these are {say.size(width, height)}.",
        span,
        help="Set them straight, or give a square size: `of 8in`.",
    )


@message
def cells_uncovered(say: Say, span: Span, count: int, column: int, row: int) -> Diagnostic:
    """Cells of the set that nothing covers; column and row of the first, from 0."""
    verb = "has" if count == 1 else "have"
    return error(
        "set-uncovered",
        f"{count_of(count, 'cell')} of this set {verb} no block: the first is {cell_place(column, row)}.",
        span,
        help="Add `row` lines, or `alternate ...`, or `plain sand` cells.",
    )


@message
def rows_missing(say: Say, span: Span) -> Diagnostic:
    """`set rows { }`."""
    return error("set-uncovered", "This set has no rows.", span, help="Write them, as in `row 9 goose`.")


@message
def rows_differ(
    say: Say, row: tree.Row, made: Number, count: int, first: Number, first_count: int
) -> Diagnostic:
    """Rows of different lengths in `set rows`."""
    return error(
        "rows-differ",
        f"This row is {say.length(made)} long and the first is {say.length(first)}: "
        f"{count} make {say.length(made)}, {first_count} make {say.length(first)}.",
        row.span,
        help="All rows are of one length.",
    )


@message
def row_heights_differ(say: Say, cell: tree.Cell, height: Number, first: Number) -> Diagnostic:
    """A row of blocks of different heights."""
    return error(
        "row-heights-differ",
        f"This is {say.length(height)} high in a row {say.length(first)} high.",
        cell.span,
        help="Turn it, or give it a row of its own.",
    )


@message
def plain_cell_no_size(say: Say, cell: tree.PlainCell) -> Diagnostic:
    """A plain cell in a row with no block to take a height from."""
    return error(
        "row-size-missing",
        "This row is all plain, so nothing says how high it is.",
        cell.span,
        help="Put a block in the row.",
    )


@message
def too_many_cells(say: Say, span: Span, count: int, most: int) -> Diagnostic:
    """1000 x 1000 blocks."""
    return error(
        "quilt-too-large",
        f"This quilt has {count:,} cells, and {most:,} is the most.",
        span,
        help="Are the counts right? 20 across and 20 down is a large quilt already.",
    )


@message
def sashing_needs_posts(say: Say, span: Span) -> Diagnostic:
    """On point, sashing without posts."""
    return error(
        "sashing-needs-posts",
        "On point, sashing needs posts where it crosses.",
        span,
        help="Add `posts in` and a fabric, the sashing's own if they should not show.",
    )


@message
def sashing_posts_rows(say: Say, span: Span) -> Diagnostic:
    """Posts in a set of rows."""
    return error(
        "sashing-no-posts",
        "Between rows of different blocks there are no crossings for posts.",
        span,
        help="Take `posts in ...` away.",
    )


@message
def region_over_sashing(say: Say, span: Span) -> Diagnostic:
    """A block over several cells that the sashing would cross, on point."""
    return error(
        "region-over-cells",
        "On point a place covers one cell.",
        span,
        help="Name the corners of one: the first is A1..B2. To cover more, make the block of units.",
    )
