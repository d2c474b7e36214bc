"""Checks of what is written: titles, families, versions, lengths, and what nothing uses."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, Fix, warning
from ..diagnostics.source import Span
from ..language import quilt_tree, tree
from ..language.walk import nodes_in
from ..measure.length import UNITS
from ..measure.marks import RULER_STEP
from ..words.numbers import ruler_text
from .linted import Linted

PASSED_ON: Final = ("edition-missing", "point-unused", "unit-unused")
"""What compiling says that is a habit, too: told again here, to be silenced and mended."""

METRIC_STEP: Final = UNITS["cm"] / 4
"""Inches: 0.25cm, the marks of a metric ruler (common practice, no published source)."""

BLANKS: Final = re.compile(r"\s+")

FINEST: Final = 32
"""Parts of an inch that a decimal may be, to be written as a fraction."""


def passed_on(linted: Linted) -> Iterator[Diagnostic]:
    """What is left over, with the mend that takes it away; an edition that is missing, as it is told."""
    for each in linted.said:
        if each.code not in PASSED_ON or not linted.holds(each.primary.span):
            continue
        owner = next(
            (
                node
                for node in linted.statements()
                if isinstance(node, tree.PointDef | tree.Use) and each.primary.span in (_name_of(node).span,)
            ),
            None,
        )
        idle = owner is not None and not _is_called(owner, linted)
        fix = linted.without("Take it away", owner.span) if owner and idle else each.fix
        yield replace(
            warning(each.code, each.message, each.primary.span, each.primary.text, help=each.help), fix=fix
        )


def _is_called(node: tree.PointDef | tree.Use, linted: Linted) -> bool:
    """Whether a cell calls the unit all the same, as the row of a quilt does under a `place`."""
    return isinstance(node, tree.Use) and any(
        isinstance(each, tree.UnitCell) and each.unit.text == node.alias.text
        for part in linted.parts
        if part.span.start <= node.span.start < part.span.end
        for each in nodes_in(part)
    )


def _name_of(node: tree.PointDef | tree.Use) -> tree.Name:
    return node.name if isinstance(node, tree.PointDef) else node.alias


def family_missing(linted: Linted) -> Iterator[Diagnostic]:
    """Blocks without a family."""
    for block in linted.file.blocks:
        if not any(isinstance(each, tree.Family) for each in block.body):
            yield warning(
                "family-missing",
                f'"{_short(block)}" has no family to be found by.',
                block.title.span,
                help="Write `family` and a word such as `star` or `nine-patch`.",
            )


def maker_missing(linted: Linted) -> Iterator[Diagnostic]:
    """Blocks and quilts of which nobody can tell where they come from."""
    for part in linted.parts:
        if not any(isinstance(each, tree.Maker | tree.Note) for each in part.body):
            yield warning(
                "maker-missing",
                f'Nothing says where "{_short(part)}" comes from.',
                part.title.span,
                help='Write `maker "..."`, or a `note` with the source of its name.',
            )


def version_missing(linted: Linted) -> Iterator[Diagnostic]:
    """Blocks and quilts without a version."""
    for part in linted.parts:
        if part.version is None:
            end = Span(linted.source.name, part.title.span.end, part.title.span.end)
            yield warning(
                "version-missing",
                f'"{_short(part)}" has no version; it counts as 1.',
                part.title.span,
                help="Write `version 1` after the title.",
                fix=Fix("Write `version 1`", end, " version 1"),
            )


def use_unversioned(linted: Linted) -> Iterator[Diagnostic]:
    """Uses of blocks from elsewhere that take whatever version is the newest."""
    told: set[Span] = set()
    for each in linted.choices:
        span = each.use.title.span
        if each.near != linted.source.name or each.asked is not None or span in told:
            continue
        told.add(span)
        if each.block.source.name != linted.source.name:
            version = f"version {each.block.version}"
            title = each.use.title.text[:60]
            yield warning(
                "use-unversioned",
                f'This takes the newest "{title}", whichever that is.',
                span,
                help=f"Write `{version}` after the title: that is today's.",
                fix=Fix(f"Write `{version}`", Span(span.source, span.end, span.end), f" {version}"),
            )


def title_blanks(linted: Linted) -> Iterator[Diagnostic]:
    """Titles that begin or end with a blank, or have two together: a search by eye does not find them."""
    for node in nodes_in(linted.file):
        if isinstance(node, tree.Block | tree.Use):
            titles: tuple[tree.Text, ...] = (node.title,)
        else:
            titles = node.titles if isinstance(node, tree.Also) else ()
        for title in titles:
            tidy = " ".join(title.text.split())
            if tidy and tidy != title.text:
                new = f'"{BLANKS.sub(" ", linted.source.words(title.span)[1:-1]).strip()}"'
                yield warning(
                    "title-blanks",
                    "This title has blanks that nobody sees.",
                    title.span,
                    help=f"Write `{new}`.",
                    fix=Fix("Take the blanks away", title.span, new),
                )


def also_repeats(linted: Linted) -> Iterator[Diagnostic]:
    """Other names that are the title again, or another of the names."""
    for part in linted.parts:
        known = {part.title.text.casefold()}
        for also in (each for each in part.body if isinstance(each, tree.Also)):
            for name in also.titles:
                if name.text.casefold() in known:
                    yield warning(
                        "also-repeats",
                        f'"{name.text[:60]}" is a name of this block already.',
                        name.span,
                        help="Take it away.",
                        fix=_without_name(linted, also, name),
                    )
                known.add(name.text.casefold())


def _without_name(linted: Linted, also: tree.Also, name: tree.Text) -> Fix:
    rest = [linted.source.words(each.span) for each in also.titles if each is not name]
    if not rest:
        return linted.without("Take it away", also.span)
    return Fix("Take it away", also.span, f"also {', '.join(rest)}")


def size_off_ruler(linted: Linted) -> Iterator[Diagnostic]:
    """Sizes of blocks and cells that neither an inch nor a centimetre ruler marks."""
    for node in linted.statements():
        lengths: tuple[tree.Length | None, ...]
        match node:
            case tree.Finished():
                lengths = (node.width, node.height)
            case tree.Grid():
                lengths = (node.cell_width, node.cell_height)
            case tree.OutlineRegular():
                lengths = (node.side,)
            case _:
                continue
        for length in lengths:
            if length is not None and length.inches % RULER_STEP and length.inches % METRIC_STEP:
                yield warning(
                    "size-off-ruler",
                    "A ruler does not mark this size.",
                    length.span,
                    "neither an eighth of an inch nor a quarter of a centimetre",
                    help="Every piece that is cut by it falls between two marks.",
                )


def length_decimal(linted: Linted) -> Iterator[Diagnostic]:
    """Inches written as decimals that a ruler shows as a fraction."""
    for node in nodes_in(linted.file):
        if not isinstance(node, tree.Length):
            continue
        words = linted.source.words(node.span)
        if words.endswith("in") and "." in words and Fraction(node.inches * FINEST).denominator == 1:
            new = ruler_text(node.inches)
            yield warning(
                "length-decimal",
                f"A ruler shows `{words}` as `{new}`.",
                node.span,
                help=f"Write `{new}`.",
                fix=Fix(f"Write `{new}`", node.span, new),
            )


def _short(part: tree.Block | quilt_tree.Quilt) -> str:
    return part.title.text[:60]
