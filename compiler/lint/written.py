"""Checks of what is written: titles, families, versions, lengths, and what nothing uses."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Span
from ..language import tree
from ..language.walk import nodes_in
from ..measure.length import UNITS
from ..measure.marks import RULER_STEP
from ..words.messages import lint as complain
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
        yield complain.told_again(each, linted.line_of(owner.span) if owner and idle else None)


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
            yield complain.family_missing(block.title.span, block.title.text)


def maker_missing(linted: Linted) -> Iterator[Diagnostic]:
    """Blocks and quilts of which nobody can tell where they come from."""
    for part in linted.parts:
        if not any(isinstance(each, tree.Maker | tree.Note) for each in part.body):
            yield complain.maker_missing(part.title.span, part.title.text)


def version_missing(linted: Linted) -> Iterator[Diagnostic]:
    """Blocks and quilts without a version."""
    for part in linted.parts:
        if part.version is None:
            yield complain.version_missing(part.title.span, part.title.text)


def use_unversioned(linted: Linted) -> Iterator[Diagnostic]:
    """Uses of blocks from elsewhere that take whatever version is the newest."""
    told: set[Span] = set()
    for each in linted.choices:
        span = each.use.title.span
        if each.near != linted.source.name or each.asked is not None or span in told:
            continue
        told.add(span)
        if each.block.source.name != linted.source.name:
            yield complain.use_unversioned(span, each.use.title.text, each.block.version)


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
                yield complain.title_blanks(title.span, new)


def also_repeats(linted: Linted) -> Iterator[Diagnostic]:
    """Other names that are the title again, or another of the names."""
    for part in linted.parts:
        known = {part.title.text.casefold()}
        for also in (each for each in part.body if isinstance(each, tree.Also)):
            for name in also.titles:
                if name.text.casefold() in known:
                    yield complain.also_repeats(name.span, name.text, *_without_name(linted, also, name))
                known.add(name.text.casefold())


def _without_name(linted: Linted, also: tree.Also, name: tree.Text) -> tuple[Span, str]:
    """What takes the place of which words, so that the name is gone."""
    rest = [linted.source.words(each.span) for each in also.titles if each is not name]
    if not rest:
        return linted.line_of(also.span), ""
    return also.span, f"also {', '.join(rest)}"


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
                yield complain.size_off_ruler(length.span)


def length_decimal(linted: Linted) -> Iterator[Diagnostic]:
    """Inches written as decimals that a ruler shows as a fraction."""
    for node in nodes_in(linted.file):
        if not isinstance(node, tree.Length):
            continue
        words = linted.source.words(node.span)
        if words.endswith("in") and "." in words and Fraction(node.inches * FINEST).denominator == 1:
            yield complain.length_decimal(node.span, words, node.inches)
