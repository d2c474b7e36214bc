"""Complaints about units: used blocks, rows, places and rounds."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, Literal

from ...diagnostics.diagnostic import Diagnostic, Fix, Label, error, note
from ..phrases import count_of, did_you_mean, nearest, one_of, quoted
from ..places import at_place, cell_place, outside_by
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from ...diagnostics.source import Span
    from ...geometry.edge import Point
    from ...language import tree
    from ...measure.tolerance import Number

Symmetry = Literal["turned", "mirrored-across", "mirrored-down"]

SYMMETRIES: Final[Mapping[Symmetry, str]] = {
    "turned": "turned by quarters",
    "mirrored-across": "left and right",
    "mirrored-down": "above and below",
}


@message
def block_unknown(say: Say, title: tree.Text, known: Iterable[str]) -> Diagnostic:
    """A `use` of a title that no shelf has, or that stands only in a file with a mistake."""
    names = list(known)
    if title.text in names:
        return error(
            "block-unknown",
            f'No file without a mistake has the block "{title.text[:60]}".',
            title.span,
            help="Mend the file that has it: a note says what is wrong there.",
        )
    close = nearest(title.text, names)
    help = (
        f"Did you mean {one_of([f'{chr(34)}{each}{chr(34)}' for each in close])}?"
        if close
        else "It is looked for in this file, beside it, on your shelves (`--shelf FOLDER` adds one) "
        "and in the library."
    )
    fix = Fix(f'Write "{close[0]}"', title.span, f'"{close[0]}"') if close else None
    return error("block-unknown", f'There is no block "{title.text[:60]}".', title.span, help=help, fix=fix)


@message
def name_shared(say: Say, title: tree.Text, titles: Sequence[str]) -> Diagnostic:
    """A `use` of another name that several blocks bear."""
    told = one_of([f'"{each[:40]}"' for each in titles], "and")
    return error(
        "name-shared",
        f'"{title.text[:40]}" is another name of {told}.',
        title.span,
        help="Use the one that is meant by its title.",
    )


@message
def version_unknown(say: Say, use: tree.Use, versions: Sequence[int]) -> Diagnostic:
    """A version that the block does not have."""
    assert use.version is not None
    have = one_of([str(each) for each in versions], "and")
    return error(
        "version-unknown",
        f'"{use.title.text[:60]}" has no version {use.version.value}.',
        use.version.span,
        help=f"It has {'version' if len(versions) == 1 else 'versions'} {have}.",
    )


@message
def use_cycle(say: Say, span: Span, titles: Sequence[str]) -> Diagnostic:
    """Units that contain each other."""
    names = [f"`{each[:40]}`" for each in titles]
    chain = ", which uses ".join([f"{names[0]} uses {names[1]}", *names[2:]]) if len(names) > 1 else names[0]
    message = f"{names[0]} uses itself." if len(names) == 2 and names[0] == names[1] else chain + "."
    return error("use-cycle", message, span, help="A block cannot be a part of itself: take one `use` away.")


@message
def use_too_deep(say: Say, span: Span, most: int) -> Diagnostic:
    """Units in units in units."""
    return error(
        "use-too-deep",
        f"Units lie in units more than {most} deep here.",
        span,
        help="Draft the innermost ones as one block.",
    )


@message
def unit_failed(say: Say, use: tree.Use, where: str) -> Diagnostic:
    """A used block of another file that did not compile."""
    return error(
        "unit-failed",
        f'The block "{use.title.text[:60]}" needs mending before it can be used.',
        use.title.span,
        help=f"It stands in {where}: mend it there.",
    )


@message
def unit_twice(say: Say, name: tree.Name, first: Span) -> Diagnostic:
    """Two units of one name."""
    return error(
        "unit-twice",
        f"There are two units called `{name.text}`.",
        name.span,
        related=(Label(first, "first named here"),),
        help="Give one of them another name.",
    )


@message
def unit_unknown(say: Say, name: tree.Name, known: Iterable[str]) -> Diagnostic:
    """A unit name that no `use` gives."""
    names = list(known)
    close = nearest(name.text, names)
    return error(
        "unit-unknown",
        f"There is no unit called `{name.text}` here.",
        name.span,
        help=did_you_mean(name.text, names) or f'Bring it in: use "Title" as {name.text}',
        fix=Fix(f"Write `{close[0]}`", name.span, close[0]) if close else None,
    )


@message
def unit_unused(say: Say, name: tree.Name) -> Diagnostic:
    """A unit that is brought in and not placed."""
    return note(
        "unit-unused",
        f"The unit `{name.text}` is placed nowhere.",
        name.span,
        help="Place it, or take its `use` away.",
    )


@message
def role_not_in_unit(say: Say, rename: tree.Rename, title: str, roles: Sequence[str]) -> Diagnostic:
    """`with` a role that the unit does not have."""
    return error(
        "role-unknown",
        f'"{title[:60]}" has no role `{rename.theirs.text}`.',
        rename.theirs.span,
        help=f"It has {one_of(quoted(roles), 'and')}. The unit's word stands on the left.",
    )


@message
def role_renamed_twice(say: Say, rename: tree.Rename, first: Span) -> Diagnostic:
    """One role renamed twice."""
    return error(
        "role-renamed-twice",
        f"`{rename.theirs.text}` is renamed twice.",
        rename.theirs.span,
        related=(Label(first, "first renamed here"),),
        help="Keep one of the two.",
    )


@message
def row_wrong_count(
    say: Say, row: tree.Row, made: int, wanted: int, cell: Number, whole: str = "grid"
) -> Diagnostic:
    """Too many or too few in a row of a grid, or of a quilt's set."""
    verb = "makes" if made == 1 else "make"
    return error(
        "row-too-long" if made > wanted else "row-too-short",
        f"This row has {count_of(made, 'cell')} and the {whole} is {wanted} across: {made} {verb} "
        f"{say.length(made * cell)}, {wanted} make {say.length(wanted * cell)}.",
        row.span,
        help=f"{'Take away' if made > wanted else 'Add'} {abs(made - wanted)}.",
    )


@message
def alternate_idle(say: Say, cell: tree.Cell) -> Diagnostic:
    """One of an `alternate`'s cells that falls nowhere, in a block or in a quilt's set."""
    from ...language import tree

    words = f"plain {cell.role.text}" if isinstance(cell, tree.PlainCell) else cell.unit.text
    return note(
        "alternate-idle",
        f"No cell is left for `{words}`.",
        cell.span,
        help="`alternate` fills the cells that nothing else covers, in turns; on point it takes two, "
        "one for either kind of cell.",
    )


@message
def row_uneven_count(say: Say, row: tree.Row, made: int, wanted: int) -> Diagnostic:
    """The same on a grid of unequal columns, where sums say nothing."""
    return error(
        "row-too-long" if made > wanted else "row-too-short",
        f"This row has {count_of(made, 'cell')} and the grid is {wanted} across.",
        row.span,
        help=f"{'Take away' if made > wanted else 'Add'} {abs(made - wanted)}.",
    )


@message
def rows_too_many(say: Say, row: tree.Row, down: int, whole: str = "grid") -> Diagnostic:
    """A row beyond the grid, or beyond a quilt's set."""
    return error(
        "row-off-grid",
        f"The {whole} is {count_of(down, 'row')} down, and this is one more.",
        row.span,
        help=f"Take a row away, or make the {whole} deeper.",
    )


@message
def region_not_cells(say: Say, region: tree.Region) -> Diagnostic:
    """`A1..B1`: two corners with nothing between them."""
    a, b = region.first, region.second
    if (a.column, a.row) == (b.column, b.row):
        message = f"`{a.column}{a.row}..{b.column}{b.row}` is one point: these are corners, not cells."
    else:
        message = f"`{a.column}{a.row}..{b.column}{b.row}` lies on one line: these are corners, not cells."
    return error(
        "region-no-cells",
        message,
        region.span,
        help="Name two opposite corners: the first cell is A1..B2, the first two in a row are A1..C2.",
    )


@message
def faces_missing(say: Say, pose: tree.Facing, title: str) -> Diagnostic:
    """`facing` a unit that faces nowhere."""
    return error(
        "faces-missing",
        f'"{title[:60]}" does not say which way it faces.',
        pose.span,
        help="Write `faces top` in that block, or turn it: `turned 90deg`.",
    )


@message
def facing_corner(say: Say, pose: tree.Facing, title: str, faces: str) -> Diagnostic:
    """A side asked of a unit that faces a corner, or the other way about."""
    kind = "corner" if "-" in faces else "side"
    words = (
        "`top-left`, `top-right`, `bottom-left` or `bottom-right`"
        if kind == "corner"
        else ("`top`, `right`, `bottom` or `left`")
    )
    return error(
        "facing-wrong-kind",
        f'"{title[:60]}" faces a {kind} (`{faces}`), so it cannot face `{pose.side}`.',
        pose.span,
        help=f"Write {words}.",
    )


@message
def proportions_differ(
    say: Say, cell: tree.UnitCell, unit: tuple[Number, Number], room: tuple[Number, Number]
) -> Diagnostic:
    """A unit of other proportions than its cell."""
    return error(
        "unit-proportions",
        f"The unit is {say.size(*unit)} as it lies, and its cell is {say.size(*room)}.",
        cell.span,
        help="Give it a cell of its own proportions, turn it, or write `stretched` after it.",
    )


@message
def stretch_bends(say: Say, cell: tree.UnitCell) -> Diagnostic:
    """Curves do not stretch."""
    return error(
        "stretch-curves",
        "This unit has curved seams, which cannot be stretched.",
        cell.span,
        help="Give it a cell of its own proportions.",
    )


@message
def units_overlap(say: Say, span: Span, other: Span, place: Point) -> Diagnostic:
    """Two units on one place."""
    return _overlap(span, other, at_place(say, place))


@message
def cells_overlap(say: Say, span: Span, other: Span, column: int, row: int) -> Diagnostic:
    """Two places of a quilt's set on one cell, whose column and row count from 0."""
    return _overlap(span, other, cell_place(column, row))


def _overlap(span: Span, other: Span, place: str) -> Diagnostic:
    if span == other:
        return error(
            "units-overlap",
            f"Copies of this unit overlap each other, at {place}.",
            span,
            help="Turn it fewer times, or place it in fewer cells.",
        )
    return error(
        "units-overlap",
        f"This overlaps what is placed elsewhere, at {place}.",
        span,
        related=(Label(other, "placed here"),),
        help="Give each its own cells.",
    )


@message
def unit_outside(say: Say, span: Span, place: Point, size: tuple[Number, Number]) -> Diagnostic:
    """A unit or strip that leaves the outline."""
    return error(
        "unit-outside",
        f"This leaves the block {outside_by(say, place, *size)}.",
        span,
        help="Give it cells that lie inside.",
    )


@message
def seam_through_unit(say: Say, span: Span, title: str) -> Diagnostic:
    """A seam through the inside of a used unit."""
    return error(
        "seam-through-unit",
        f'This seam runs through the inside of the unit "{title[:60]}".',
        span,
        help="Seams may run along a unit's edge or cut a `plain` cell.",
    )


@message
def rounds_roles(say: Say, rounds: tree.Rounds) -> Diagnostic:
    """More than four roles for four strips."""
    return error(
        "rounds-too-many-roles",
        f"A round has four strips, and here are {len(rounds.roles)} roles.",
        rounds.roles[4].span,
        help="They go top, right, bottom, left, and start afresh each round.",
    )


@message
def odd_unit(say: Say, span: Span, odd: Sequence[tuple[str, Point]], symmetry: Symmetry) -> Diagnostic:
    """A block symmetrical but for a few units, each told by its name and its middle."""
    names = [f"`{name}` at {say.length(at.x)} across, {say.length(at.y)} down" for name, at in odd]
    asked = "does it lie right" if len(names) == 1 else "do they lie right"
    return note(
        "unit-odd",
        f"The block is the same {SYMMETRIES[symmetry]}, but for {one_of(names, 'and')}: {asked}?",
        span,
        help="Turn it as its counterparts lie, or leave it if it is meant.",
    )
