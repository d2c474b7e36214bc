"""A block that cannot be finished, as far as it is sound: its seams, its names, and where its mistakes lie.

Drafted anew and in silence from what was read of it, so that nothing which ends in a draft knows of this.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from ..diagnostics.diagnostic import Diagnostic, Severity
from ..diagnostics.source import Source, Span
from ..geometry.edge import Edge, Point
from ..language import tree
from ..measure.record import record
from ..measure.tolerance import Number
from .body import sketch_body
from .context import Bench, EnoughSaid
from .counting import draws_too_much
from .frame import Frame, rectangle
from .ground import lay_ground
from .sketch import Sketch

if TYPE_CHECKING:
    from .draft import Drafter


@record
class Mistake:
    """One error of a block, and where it lies: the lines and places that its words put down."""

    diagnostic: Diagnostic
    edges: tuple[Edge, ...]
    places: tuple[Point, ...]


@record
class RoughDraft:
    """A block drafted as far as it is sound. All in inches, from its top left."""

    title: str
    version: int
    width: Number
    height: Number
    rules_across: tuple[Number, ...]
    rules_down: tuple[Number, ...]
    outline: tuple[Edge, ...]
    seams: tuple[Edge, ...]
    points: tuple[tuple[str, Point], ...]
    pieces: tuple[tuple[str, Point], ...]  # their names, where they were put
    mistakes: tuple[Mistake, ...]


def rough_drafts(
    blocks: Sequence[tree.Block], source: Source, drafter: Drafter, said: Sequence[Diagnostic]
) -> list[RoughDraft]:
    """Those of a file's blocks in which an error was told, and that have a size."""
    drafts = []
    for block in blocks:
        errors = [each for each in said if each.severity is Severity.ERROR and _holds(block, each, source)]
        rough = _rough(block, source, drafter, errors) if errors else None
        if rough is not None:
            drafts.append(rough)
    return drafts


def _holds(block: tree.Block, said: Diagnostic, source: Source) -> bool:
    span = said.primary.span
    return span.source == source.name and block.span.start <= span.start <= block.span.end


def _rough(
    block: tree.Block, source: Source, drafter: Drafter, errors: Sequence[Diagnostic]
) -> RoughDraft | None:
    nothing = Fraction(0)
    empty = Frame(nothing, nothing, (nothing, nothing), (nothing, nothing))
    try:
        uses = [each for each in block.body if isinstance(each, tree.Use)]
        units = drafter.units(uses, source, Bench(empty), [])
        bench = Bench(empty)
        frame = lay_ground(block, bench)
        if frame is None or frame.outline is None:
            return None
        bench.frame = frame
        if draws_too_much(block, units, bench):
            return None
        sketch = sketch_body(block, bench, units)
    except EnoughSaid:
        return None
    return RoughDraft(
        block.title.text,
        block.version.value if block.version else 1,
        frame.width,
        frame.height,
        frame.across,
        frame.down,
        frame.outline,
        tuple(line.edge for line in sketch.lines),
        tuple((definition.name.text, place) for definition, place in sketch.called),
        tuple((claim.statement.name.text, claim.place) for claim in sketch.claims),
        tuple(_mistake(each, sketch, _cells_of(block, frame)) for each in errors),
    )


def _cells_of(block: tree.Block, frame: Frame) -> list[tuple[Span, tuple[Edge, ...]]]:
    """The words that call each used block, and the boxes of the cells where it was to lie."""
    cells: list[tuple[Span, tuple[Edge, ...]]] = []
    for use in (each for each in block.body if isinstance(each, tree.Use)):
        for place in (each for each in block.body if isinstance(each, tree.Place)):
            if not isinstance(place.cell, tree.UnitCell) or place.cell.unit.text != use.alias.text:
                continue
            for region in place.regions:
                ends = [frame.grid_point(each.column, each.row) for each in (region.first, region.second)]
                if ends[0] and ends[1]:
                    cells.append((use.span, rectangle(*ends[0], *ends[1])))
    return cells


def _mistake(said: Diagnostic, sketch: Sketch, cells: Sequence[tuple[Span, tuple[Edge, ...]]]) -> Mistake:
    """Where in the block the words of an error, and those that it points to, put something down."""
    spans = [label.span for label in (said.primary, *said.related)]
    edges = [line.edge for line in sketch.lines if _met(line.origin, spans)]
    edges += [edge for each in sketch.placed if _met(each.origin, spans) for edge in each.outline]
    edges += [edge for span, box in cells if _met(span, spans) for edge in box]
    places = [claim.place for claim in sketch.claims if _met(claim.phrase.span, spans)]
    places += [place for definition, place in sketch.called if _met(definition.span, spans)]
    return Mistake(said, tuple(edges), tuple(places))


def _met(own: Span, spans: Sequence[Span]) -> bool:
    """Whether one of the spans lies in one's own words, or holds them."""
    return any(
        own.source == each.source
        and (own.start <= each.start <= each.end <= own.end or each.start <= own.start <= own.end <= each.end)
        for each in spans
    )
