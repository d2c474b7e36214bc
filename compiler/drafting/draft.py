"""Blocks to drafts: finds the blocks that a block uses, drafts each once, and checks the result."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from ..diagnostics.diagnostic import Diagnostic, Severity
from ..diagnostics.source import Source, Span
from ..geometry.faces import find_faces
from ..geometry.planar import PlanarGraph
from ..language import tree
from ..language.limits import ERRORS
from ..language.shelf import Choice, Shelf, ShelfBlock
from ..words.messages import blocks as complain
from ..words.messages import pieces as complain_pieces
from ..words.messages import units as complain_units
from ..words.messages.files import errors_too_many
from .body import sketch_body
from .checks import check_holes, check_names, check_refit, check_slivers, check_symmetry
from .context import Bench, EnoughSaid, gathered
from .counting import FILE_LINKS_MOST, draws_too_much
from .details import Details, details_of, placement, restored
from .frame import Frame
from .ground import lay_ground
from .line_checks import check_crossings, check_ends, check_idle, check_inside, node_lines
from .model import Default, DefaultKind, Draft, Piece
from .naming import BACKGROUND, cloth_of_faces, owners_of
from .overlaps import check_overlaps
from .pieces import make_pieces
from .shapes import match_shapes
from .sketch import Sketch, Unit
from .twins import said_of_twins, twins_of

if TYPE_CHECKING:
    from .washed.model import Measured

USE_DEPTH_MOST = 24
"""Units in units: a quilt of blocks of units of patches is four deep; the parser's own bound is of this
order."""


class Drafter:
    """Drafts blocks, each once. What it says gathers in `diagnostics`."""

    def __init__(
        self,
        source: Source,
        file: tree.File,
        shelf: Shelf,
        compared: set[tuple[str, int]] | None = None,
        maker: str = "",
    ) -> None:
        self.maker = maker  # who is named where a block or quilt of the file names nobody
        self.compared: set[tuple[str, int]] = set() if compared is None else compared  # see `twins`
        self.source, self.shelf = source, shelf
        self.own = [ShelfBlock(block, source, "own-file") for block in file.blocks]
        self.diagnostics: list[Diagnostic] = []
        self.from_elsewhere: list[Draft] = []
        self.choices: list[Choice] = []
        self.measured: dict[Span, Measured] = {}  # washed blocks, by their place in their file
        self._done: dict[Span, Draft | None] = {}
        self._deep: dict[Span, int] = {}  # how deep units lie in units in each block
        self._underway: list[tuple[Span, str]] = []
        self._errors = 0
        self._links = 0

    def draft_blocks(self, file: tree.File, misread: Sequence[Diagnostic]) -> list[Draft]:
        """The file's own blocks, those without errors.

        `misread` is what the parser said: a block with an error in its text is not drafted, since whatever is
        missing from it would be complained of again; all the others are.
        """
        for block in file.blocks:
            if any(
                each.severity is Severity.ERROR
                and block.span.start <= each.primary.span.start <= block.span.end
                for each in misread
            ):
                self.give_up(block)
        self.check_titles(file)
        return [draft for each in file.blocks if (draft := self.draft(each, self.source)) is not None]

    def draft(self, block: tree.Block, source: Source) -> Draft | None:
        """One block; None where an error was found in it."""
        if block.span not in self._done and (self._errors > ERRORS or self._links > FILE_LINKS_MOST):
            self.give_up(block)  # enough is said of this file
        if block.span not in self._done:
            self._underway.append((block.span, block.title.text))
            draft, said = self._draft(block, source)
            if draft is not None and not draft.maker and source.name == self.source.name:
                draft = replace(draft, maker=self.maker)
            self._underway.pop()
            self.diagnostics += said
            errors = sum(each.severity is Severity.ERROR for each in said)
            self._errors += errors
            if self._errors > ERRORS and said[-1].code != "errors-too-many":
                self.diagnostics.append(errors_too_many(said[-1].primary.span, ERRORS))
            self._done[block.span] = None if errors else draft
            if source.name != self.source.name and self._done[block.span] is not None and draft is not None:
                self.from_elsewhere.append(draft)
        return self._done[block.span]

    def give_up(self, block: tree.Block) -> None:
        """Counts a block as failed, without another word about it."""
        self._done[block.span] = None

    def check_titles(self, file: tree.File) -> None:
        """Complains of two blocks with one title and version."""
        seen: dict[tuple[str, int], Span] = {}
        for block in file.blocks:
            key = (block.title.text, block.version.value if block.version else 1)
            if key in seen:
                self.diagnostics.append(complain.title_twice(*key, block.title.span, seen[key]))
            seen.setdefault(key, block.title.span)

    def _draft(self, block: tree.Block, source: Source) -> tuple[Draft | None, list[Diagnostic]]:
        zero = Fraction(0)
        bench = Bench(Frame(zero, zero, (zero, zero), (zero, zero)))
        draft = None
        try:
            draft = self._drafted(block, source, bench)
            self._links += bench.links
            if self._links > FILE_LINKS_MOST >= self._links - bench.links:
                bench.say(complain.file_too_full(block.title.span, FILE_LINKS_MOST))
        except EnoughSaid:
            pass
        return draft, gathered(bench.diagnostics)

    def _drafted(self, block: tree.Block, source: Source, bench: Bench) -> Draft | None:
        defaults: list[Default] = []
        units = self.units(
            [each for each in block.body if isinstance(each, tree.Use)], source, bench, defaults
        )
        measured = restored(block, bench)
        if measured is not None:
            self.measured[block.span] = measured
            block = measured.block
        frame = None if bench.failed else lay_ground(block, bench)
        if frame is None:
            return None
        bench.frame = frame
        if draws_too_much(block, units, bench):
            return None
        details = details_of(block, bench)
        sketch = sketch_body(block, bench, units)
        check_overlaps(sketch.placed, bench)
        for name, unit in units.items():
            if unit is not None and not _mentions(block.body, name):
                bench.say(complain_units.unit_unused(unit.use.alias))
        if bench.failed or any(each is None for each in units.values()):
            noded = node_lines(sketch.lines, block.title.span, bench)
            if noded is not None:
                check_inside(*noded, bench)
            return None
        made = _pieces_of(block, sketch, details.allowance, bench)
        if made is None or bench.failed:
            return None
        return _finish(block, frame, *made, sketch, details, units, defaults)

    def units(
        self, uses: Sequence[tree.Use], source: Source, bench: Bench, defaults: list[Default]
    ) -> dict[str, Unit | None]:
        """The blocks used, under their names here; None for those that were complained of."""
        units: dict[str, Unit | None] = {}
        first: dict[str, Span] = {}
        for use in uses:
            name = use.alias.text
            if name in first:
                bench.say(complain_units.unit_twice(use.alias, first[name]))
                continue
            first[name] = use.alias.span
            draft = self._used(use, source, bench, defaults)
            units[name] = None if draft is None else Unit(use, draft, _renames(use, draft, bench))
        return units

    def _used(self, use: tree.Use, source: Source, bench: Bench, defaults: list[Default]) -> Draft | None:
        found = self._find(use, source, bench)
        if found is None:
            return None
        self.choices.append(Choice(source.name, use, found))
        if use.version is None:
            kind: DefaultKind = "version-unpinned" if found.unpinned else "version-of"
            defaults.append(Default(kind, found.version, of=(use.title.text,), source=found.shelf))
        spans = [span for span, _ in self._underway]
        if found.block.span in spans:
            titles = [title for _, title in self._underway[spans.index(found.block.span) :]]
            bench.say(complain_units.use_cycle(use.title.span, [*titles, titles[0]]))
            return None
        too_deep = len(spans) > USE_DEPTH_MOST
        draft = None if too_deep else self.draft(found.block, found.source)
        if draft is not None and spans:
            deep = max(self._deep.get(spans[-1], 0), self._deep.get(found.block.span, 0) + 1)
            self._deep[spans[-1]] = deep
            too_deep = deep > USE_DEPTH_MOST
        if too_deep:
            bench.say(complain_units.use_too_deep(use.title.span, USE_DEPTH_MOST))
        elif draft is None and source.name == self.source.name != found.source.name:
            bench.say(complain_units.unit_failed(use, found.source.name))
        return None if too_deep else draft

    def _find(self, use: tree.Use, source: Source, bench: Bench) -> ShelfBlock | None:
        """The block of that title and version: in the same file, then as the shelf orders them."""
        title = use.title.text
        own = [
            each for each in self.own if each.source.name == source.name and each.block.title.text == title
        ]
        found = [*own, *self.shelf.find(title, source.name)]
        meant = self._meant(use, found, bench)
        twins = twins_of(meant, found) if meant else ()
        if meant and twins:
            for each in said_of_twins(use.title.span, meant, twins, self.shelf, self.compared):
                bench.say(each)
        return meant

    def _meant(self, use: tree.Use, found: Sequence[ShelfBlock], bench: Bench) -> ShelfBlock | None:
        """The one of those found that is of the title and the version asked for; of the nearest shelf, where
        none was."""
        title = use.title.text
        if not found:
            near = use.title.span.source
            known = [*(each.block.title.text for each in self.own), *self.shelf.titles(near)]
            bench.say(complain_units.block_unknown(use.title, known))
            return None
        titles = dict.fromkeys(each.block.title.text for each in found if each.home == found[0].home)
        if len(titles) > 1 and title not in titles:
            bench.say(complain_units.name_shared(use.title, list(titles)))
            return None
        if use.version is None:
            nearest = [each for each in found if each.home == found[0].home]
            return max(nearest, key=lambda each: each.version)
        for each in found:
            if each.version == use.version.value:
                return each
        bench.say(complain_units.version_unknown(use, sorted({each.version for each in found})))
        return None


def _renames(use: tree.Use, draft: Draft, bench: Bench) -> dict[str, str]:
    roles = list(dict.fromkeys([*(piece.fabric for piece in draft.pieces), BACKGROUND]))
    renames: dict[str, str] = {}
    first: dict[str, Span] = {}
    for rename in use.renames:
        theirs = rename.theirs.text
        if theirs in first:
            bench.say(complain_units.role_renamed_twice(rename, first[theirs]))
        elif theirs not in roles:
            bench.say(complain_units.role_not_in_unit(rename, draft.title, roles))
        first.setdefault(theirs, rename.theirs.span)
        renames[theirs] = rename.ours.text
    return renames


def _mentions(body: Sequence[tree.Statement], unit: str) -> bool:
    for each in body:
        match each:
            case tree.Row():
                cells: Sequence[tree.Cell] = [item.cell for item in each.items]
            case tree.Alternate():
                cells = each.cells
            case tree.Place():
                cells = [each.cell]
            case tree.Turn() | tree.MirrorIn() | tree.Repeat():
                if _mentions(each.body, unit):
                    return True
                continue
            case _:
                continue
        if any(isinstance(cell, tree.UnitCell) and cell.unit.text == unit for cell in cells):
            return True
    return False


def _pieces_of(
    block: tree.Block, sketch: Sketch, allowance: Fraction, bench: Bench
) -> tuple[tuple[Piece, ...], PlanarGraph] | None:
    """The planar passes: nodes, faces, cloth, pieces and their graph; None where a complaint stops them."""
    assert bench.frame.outline is not None
    noded = node_lines(sketch.lines, block.title.span, bench)
    if noded is None:
        return None
    graph, lines = noded
    check_inside(graph, lines, bench)
    check_ends(graph, lines, bench)
    if bench.failed:
        return None
    faces = find_faces(graph)
    check_idle(graph, faces, lines, bench)
    if bench.failed:
        return None
    check_crossings(graph, lines, sketch.named, bench)
    owners = owners_of(faces, sketch.placed)
    cloth = cloth_of_faces(graph, faces, lines, sketch, owners, bench)
    check_slivers(graph, faces, lines, bench)
    check_holes(graph, faces, lines, bench)
    check_names(faces, cloth, block.title, bench)
    if bench.failed:
        return None
    check_symmetry(faces, cloth, sketch.placed, owners, bench)
    pieces, planar, met = make_pieces(graph, faces, lines, cloth, allowance, sketch.allowances)
    for wish in sketch.allowances:
        if wish.statement.span not in met:
            bench.say(complain_pieces.allowance_nowhere(wish.statement.span))
    check_refit(pieces, bench.frame.outline)
    return pieces, planar


def _finish(
    block: tree.Block,
    frame: Frame,
    pieces: tuple[Piece, ...],
    graph: PlanarGraph,
    sketch: Sketch,
    details: Details,
    units: dict[str, Unit | None],
    defaults: list[Default],
) -> Draft:
    """The draft with everything that is printed about it."""
    body = block.body
    assert frame.outline is not None
    return Draft(
        title=block.title.text,
        version=block.version.value if block.version else 1,
        width=frame.width,
        height=frame.height,
        outline=frame.outline,
        rules_across=frame.across,
        rules_down=frame.down,
        pieces=pieces,
        shapes=match_shapes(pieces),
        units=tuple(placement(each) for each in sketch.placed if each.unit is not None),
        trim=details.rule,
        allowance=details.allowance,
        defaults=(*_defaults(block, frame, details), *defaults),
        family=tuple(name.text for each in body if isinstance(each, tree.Family) for name in each.names),
        also=tuple(title.text for each in body if isinstance(each, tree.Also) for title in each.titles),
        notes=tuple(each.text.text for each in body if isinstance(each, tree.Note)),
        maker=details.maker.text.text if details.maker else "",
        faces=details.faces.side if details.faces else None,
        uses=tuple(
            dict.fromkeys(
                (unit.draft.title, unit.draft.version) for unit in units.values() if unit is not None
            )
        ),
        origin=block.title.span,
        allowances=details.allowances,
        graph=graph,
    )


def _defaults(block: tree.Block, frame: Frame, details: Details) -> list[Default]:
    """Every default in force, in the order in which a reader meets them."""
    trim, rule = details.trim, details.rule
    found = []
    if block.version is None:
        found.append(Default("version", 1))
    if not any(isinstance(each, tree.Finished) for each in block.body):
        found.append(Default("finished", (frame.width, frame.height)))
    if not frame.grid_written:
        found.append(Default("grid", (1, 1)))
    if not any(isinstance(each, tree.Allowance) and each.path is None for each in block.body):
        found.append(Default("allowance", details.allowance))
    if trim is None:
        found.append(Default("trim", rule.style))
    if trim is None or trim.limit is None:
        found.append(Default("trim-limit", rule.limit))
    if trim is None or trim.dots is None:
        found.append(Default("dots", rule.dots))
    if not any(isinstance(each, tree.Grain) for each in block.body):
        found.append(Default("grain", "ruled"))
    found.append(Default("unnamed", BACKGROUND))
    return found
