"""The words of every complaint about a quilt."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...diagnostics.diagnostic import Diagnostic, Label, error, note, warning
from ...diagnostics.source import Span
from ..numbers import ruler_text
from ..phrases import count_of, did_you_mean, one_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ...language import quilt_tree, tree
    from ...measure.tolerance import Number
    from ...quilt.model import Quilt


def size_text(width: Number, height: Number) -> str:
    """`8in x 8in`."""
    return f"{ruler_text(width)} x {ruler_text(height)}"


def set_missing(quilt: quilt_tree.Quilt) -> Diagnostic:
    """A quilt that sets no blocks."""
    return error(
        "set-missing",
        "This quilt sets no blocks.",
        quilt.title.span,
        help="Write `set straight 4 across 5 down { ... }`, `set on point ...` or `set rows ...`.",
    )


def cells_size_missing(span: Span) -> Diagnostic:
    """Cells of plain cloth only, and no size."""
    return error(
        "set-size-missing",
        "The cells of this set have no size.",
        span,
        help="Write it: `set straight 4 across 5 down of 8in { ... }`.",
    )


def cells_size_differs(span: Span, sizes: Sequence[str]) -> Diagnostic:
    """Blocks of different sizes in one set."""
    return error(
        "set-sizes-differ",
        f"The blocks of this set differ in size: {one_of(sizes, 'and')}.",
        span,
        help="Say the size to draft them all at: `of 8in`.",
    )


def cells_not_square(span: Span, size: str) -> Diagnostic:
    """Blocks on point that are not square."""
    return error(
        "set-not-square",
        f"On point, blocks are square, and these are {size}.",
        span,
        help="Set them straight, or give a square size: `of 8in`.",
    )


def cells_uncovered(span: Span, count: int, first: str) -> Diagnostic:
    """Cells of the set that nothing covers."""
    verb = "has" if count == 1 else "have"
    return error(
        "set-uncovered",
        f"{count_of(count, 'cell')} of this set {verb} no block: the first is {first}.",
        span,
        help="Add `row` lines, or `alternate ...`, or `plain sand` cells.",
    )


def rows_missing(span: Span) -> Diagnostic:
    """`set rows { }`."""
    return error("set-uncovered", "This set has no rows.", span, help="Write them, as in `row 9 goose`.")


def rows_differ(row: tree.Row, made: Number, count: int, first: Number, first_count: int) -> Diagnostic:
    """Rows of different lengths in `set rows`."""
    return error(
        "rows-differ",
        f"This row is {ruler_text(made)} long and the first is {ruler_text(first)}: "
        f"{count} make {ruler_text(made)}, {first_count} make {ruler_text(first)}.",
        row.span,
        help="All rows are of one length.",
    )


def row_heights_differ(cell: tree.Cell, height: Number, first: Number) -> Diagnostic:
    """A row of blocks of different heights."""
    return error(
        "row-heights-differ",
        f"This is {ruler_text(height)} high in a row {ruler_text(first)} high.",
        cell.span,
        help="Turn it, or give it a row of its own.",
    )


def plain_cell_no_size(cell: tree.PlainCell) -> Diagnostic:
    """A plain cell in a row with no block to take a height from."""
    return error(
        "row-size-missing",
        "This row is all plain, so nothing says how high it is.",
        cell.span,
        help="Put a block in the row.",
    )


def block_too_small(span: Span, title: str, size: tuple[Number, Number], width: float) -> Diagnostic:
    """A block drafted so small that a piece of it can be neither cut nor sewn."""
    return error(
        "block-too-small",
        f'At {size_text(*size)} a piece of "{title[:40]}" is at most {width:.3f}in wide.',
        span,
        help="Write a larger size, or take a block of fewer pieces.",
    )


def too_many_cells(span: Span, count: int, most: int) -> Diagnostic:
    """1000 x 1000 blocks."""
    return error(
        "quilt-too-large",
        f"This quilt has {count:,} cells, and {most:,} is the most.",
        span,
        help="Are the counts right? 20 across and 20 down is a large quilt already.",
    )


def too_many_pieces(span: Span, count: int, most: int) -> Diagnostic:
    """More pieces than the compiler takes on."""
    return error(
        "quilt-too-large",
        f"This quilt has {count:,} pieces, and {most:,} is the most.",
        span,
        help="Are the counts right? Make it of fewer or simpler blocks.",
    )


def too_many_of(span: Span, things: str, count: int, most: int) -> Diagnostic:
    """More borders, or colourways, than a quilt may have."""
    return error(
        "quilt-too-large",
        f"This quilt has {count:,} {things}, and {most:,} is the most.",
        span,
        help="Take some away, or make it two quilts.",
    )


def border_no_room(span: Span, want: str, have: str) -> Diagnostic:
    """`border to` a size that the quilt has reached already."""
    return error(
        "border-no-room",
        f"The quilt is {have} here already, and this border goes to {want}.",
        span,
        help="Write a larger size, or take the border away.",
    )


def border_unequal_mitre(span: Span, side: Number, end: Number) -> Diagnostic:
    """Mitred borders of two widths."""
    return error(
        "border-unequal",
        f"This border would be {ruler_text(side)} wide at the sides and {ruler_text(end)} at top and bottom.",
        span,
        help="Only plain butted borders may differ: a mitre or a unit needs one width.",
    )


def border_unfit(
    span: Span, side: str, length: Number, under: tuple[int, Number], over: tuple[int, Number]
) -> Diagnostic:
    """A pieced border that does not come out."""
    return error(
        "border-unfit",
        f"The {side} is {ruler_text(length)} long: "
        f"{under[0]} units make {ruler_text(under[1])}, {over[0]} make {ruler_text(over[1])}.",
        span,
        help="Put a plain border of the missing width inside this one, or change the unit's size.",
    )


def border_across_print(span: Span, width: Number, length: Number, fabric: str, wide: Number) -> Diagnostic:
    """A border strip that may not be joined, across a print with a direction that is not so wide."""
    size = size_text(width, length)
    return error(
        "border-too-long",
        f"This border needs a strip {size} with its print up, and `{fabric}` is {ruler_text(wide)} wide.",
        span,
        help="Take `unjoined` away, or cut the border from cloth without a direction.",
    )


def border_too_long(span: Span, width: Number, length: Number, fabric: str) -> Diagnostic:
    """A border strip that may not be joined, longer than every scrap or fat quarter."""
    return error(
        "border-too-long",
        f"This border needs a strip {size_text(width, length)}, and no piece of `{fabric}` is as long.",
        span,
        help="Take `unjoined` away, or cut the border off the bolt, where it runs along the cloth.",
    )


def sashing_needs_posts(span: Span) -> Diagnostic:
    """On point, sashing without posts."""
    return error(
        "sashing-needs-posts",
        "On point, sashing needs posts where it crosses.",
        span,
        help="Add `posts in` and a fabric, the sashing's own if they should not show.",
    )


def sashing_posts_rows(span: Span) -> Diagnostic:
    """Posts in a set of rows."""
    return error(
        "sashing-no-posts",
        "Between rows of different blocks there are no crossings for posts.",
        span,
        help="Take `posts in ...` away.",
    )


def region_over_sashing(span: Span) -> Diagnostic:
    """A block over several cells that the sashing would cross, on point."""
    return error(
        "region-over-cells",
        "On point a place covers one cell.",
        span,
        help="Name the corners of one: the first is A1..B2. To cover more, make the block of units.",
    )


def mattress_unknown(fits: quilt_tree.Fits, known: Sequence[str]) -> Diagnostic:
    """A bed that no list has."""
    words = " ".join(each.text for each in fits.mattress)
    return error(
        "mattress-unknown",
        f"No list here has the mattress `{words}`.",
        fits.span,
        help=did_you_mean(words, known) or f"Known are {one_of(list(known), 'and')}.",
    )


def fits_not(span: Span, wanted: str, made: str, across: Number, down: Number) -> Diagnostic:
    """A quilt that misses the size it should reach."""

    def off(length: Number, more: str, less: str) -> str:
        return f"{ruler_text(max(length, -length))} {more if length > 0 else less}" if length else ""

    both = (off(across, "too wide", "too narrow"), off(down, "too long", "too short"))
    parts = [each for each in both if each]
    return note(
        "fits-not",
        f"The quilt is {made} and this bed wants {wanted}: {one_of(parts, 'and')}.",
        span,
        help=f"`border to {wanted} in sand` as a last border makes it up."
        if max(across, down) <= 0
        else "Take a border or some blocks away, or change the drop.",
    )


def statement_missing(quilt: quilt_tree.Quilt, words: Sequence[str]) -> Diagnostic:
    """Binding, backing or batting that is not mentioned."""
    return note(
        "quilt-incomplete", f"This quilt mentions no {one_of(words)}, so none is cut.", quilt.title.span
    )


def quilt_twice(title: str, version: int, span: Span, first: Span) -> Diagnostic:
    """Two quilts of one title and version."""
    return error(
        "quilt-twice",
        f'There are two quilts "{title[:60]}" version {version} in this file.',
        span,
        related=(Label(first, "the first"),),
    )


def block_no_rectangle(quilt: Quilt, title: str) -> Diagnostic:
    """A block that does not fill its cell, told where it is first set."""
    cell = next((need.origin for need in quilt.needs if need.template.rpartition(" ")[0] == title), None)
    return error(
        "block-no-rectangle",
        f"`{title}` is no rectangle: beside it this quilt would have holes.",
        cell or quilt.origin or Span("", 0, 0),
        help="Use it in a block with a rectangular outline, which gives it a ground.",
    )


def allowances_differ(quilt: Quilt, title: str, over: float, usual: Number) -> Diagnostic:
    """A block whose outside has another allowance than strips and borders."""
    return warning(
        "quilt-allowances-differ",
        f"`{title}` has {ruler_text(over)} of allowance outside, the quilt's own pieces {ruler_text(usual)}.",
        quilt.origin or Span("", 0, 0),
        help="Match the sewing lines, not the cut edges; or draft the block with the usual allowance.",
    )
