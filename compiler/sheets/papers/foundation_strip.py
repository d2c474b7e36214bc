"""Foundations being sewn, in pictures: a strip of frames for each section, a card for each join. Points."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import chain
from typing import Final

from ...drafting.model import Draft
from ...geometry.edge import Edge
from ...geometry.stroke import place_of
from ...measure.length import POINTS_PER_INCH
from ...sewing.foundations.foundation_model import Foundations, Section, SectionJoin
from ...words.pages.foundations import (
    ALONG,
    PATCH_BY_PATCH,
    READ,
    covered_words,
    join_pictured,
    join_title,
    patch_pictured,
    patch_size,
    same_way,
    section_title,
    trimmed_pictured,
    trimmed_title,
)
from ...words.say import Say
from ..arrange.block_drawing import piece_rings
from ..arrange.fills import Fill, texture_mark
from ..arrange.paths import Placement, Ring, closed, flat_ring, open_path, ring_path, straight
from ..arrange.room import Box, Room
from ..arrange.style import BLACK, WHITE, line_mark
from ..content import Card, Cards, Paragraph, Part, Picture
from ..content import Section as Heading
from ..packing.packing import area_of
from ..page import Mark, PathMark, Segment
from ..pictures.step_picture import HEAVY, SHADE, THIN, WIDE, Scene, Shown, draw_step
from .foundation_paper import MIRROR, SectionPaper, join_name, mirrored_ring
from .foundation_sewn import FLAT, Laid, SewnSection, Stage, sew_section
from .inside_labels import label_marks

ACROSS: Final = 6  # frames side by side
FRAME: Final = 78.0  # points: each is as wide, and no taller
LARGEST: Final = 0.5  # of true size
PAPER_LINE: Final = 0.8
PRINT_LINE: Final = 0.5
PRINT: Final = (0.55, 0.55, 0.55)  # as it shines through
SIZES: Final = (10.5, 8.5, 7.0)


def strip_parts(
    draft: Draft, papers: Sequence[SectionPaper], fills: Mapping[str, Fill], say: Say
) -> Iterator[Part]:
    """A strip for each kind of section."""
    yield Heading(PATCH_BY_PATCH)
    patches = sum(len(paper.patches) for paper in papers)
    yield Paragraph(covered_words(patches), strong=True)
    yield Paragraph(READ)
    for alike in _kinds(papers):
        sewn = sew_section(alike[0], draft.allowance)
        others = same_way([paper.section.label for paper in alike[1:]])
        yield Heading(section_title(alike[0].section.label), others)
        yield Cards(tuple(_frames(alike[0], sewn, fills, say)), ACROSS)


def join_cards(draft: Draft, found: Foundations, words: Sequence[str], fills: Mapping[str, Fill]) -> Cards:
    """A card for each join, with what is said of it."""
    sections = {section.label: section for section in found.sections}
    cards = []
    for number, (join, text) in enumerate(zip(found.joins, words, strict=True)):
        marks, tall = draw_step(_join_scene(draft, sections, join), fills)
        picture = Picture(marks, WIDE, tall, join_pictured(number + 1, text))
        cards.append(Card(join_title(join_name(number), join.first, join.second), picture, (text,)))
    return Cards(tuple(cards))


# ---- sections that are sewn alike ------------------------------------------------------------------


def _kinds(papers: Sequence[SectionPaper]) -> list[list[SectionPaper]]:
    """The sections in groups of those whose pictures would be the same."""
    kinds: dict[tuple[object, ...], list[SectionPaper]] = {}
    for paper in papers:
        kinds.setdefault(_likeness(paper), []).append(paper)
    return list(kinds.values())


def _likeness(paper: SectionPaper) -> tuple[object, ...]:
    """What two sections have in common that are sewn alike: each fabric, size and outline, in order; from the
    first line's start and along it."""
    line = paper.lines[0][1] if paper.lines else paper.sew[0]
    start, way = place_of(line.start), place_of(line.end) - place_of(line.start)

    def told(ring: Sequence[Edge]) -> tuple[tuple[float, float], ...]:
        spots = [(place - start) / way * abs(way) for place in (place_of(edge.start) for edge in ring)]
        return tuple(sorted((round(spot.real, 4) + 0.0, round(spot.imag, 4) + 0.0) for spot in spots))

    patches = (
        (each.patch.fabric, each.patch.width, each.patch.height, told(each.ring)) for each in paper.patches
    )
    return told(paper.sew), *patches


# ---- frames ----------------------------------------------------------------------------------------


def _frames(paper: SectionPaper, sewn: SewnSection, fills: Mapping[str, Fill], say: Say) -> Iterator[Card]:
    """A frame for every patch, and the section trimmed."""
    box = _box(paper, sewn)
    placement, tall = _fitted(box)
    before = ""
    for stage in sewn.stages:
        patch = stage.laid[-1].patch
        marks = (*_paper_marks(paper, placement), *_stage_marks(stage, placement))
        told = patch_pictured(before, patch.label, patch.fabric, bool(stage.line))
        size = patch_size(say, patch.width, patch.height)
        yield Card(patch.label, Picture(marks, FRAME, tall, told), (patch.fabric, size))
        before = patch.label
    label = paper.section.label
    marks = tuple(_trimmed_marks(paper, sewn.trimmed, placement, fills))
    yield Card(
        trimmed_title(label),
        Picture(marks, FRAME, tall, trimmed_pictured(label)),
        (ALONG,),
    )


def _box(paper: SectionPaper, sewn: SewnSection) -> Box:
    """What the frames must hold: the paper and all cloth that hangs over, in inches from the front."""
    rings = [flat_ring(mirrored_ring(paper.cut), FLAT)]
    rings += [ring for stage in sewn.stages for ring in stage.laid[-1].rings]
    spots = list(chain(*rings))
    xs, ys = [spot.x for spot in spots], [spot.y for spot in spots]
    return min(xs), min(ys), max(xs), max(ys)


def _fitted(box: Box) -> tuple[Placement, float]:
    """Where the box lies in a frame, and how tall the frame is."""
    left, top, right, bottom = (edge * POINTS_PER_INCH for edge in box)
    scale = min(LARGEST, FRAME / (right - left), FRAME / (bottom - top))
    return Placement(0.0, (FRAME - (left + right) * scale) / 2, -top * scale, scale), (bottom - top) * scale


def _paper_marks(paper: SectionPaper, placement: Placement) -> Iterator[Mark]:
    """The paper with its print, as it shines through."""
    yield line_mark(ring_path(mirrored_ring(paper.cut), placement), "paper", PAPER_LINE)
    for ring in (paper.sew, *((line,) for _, line in paper.lines)):
        path = open_path([MIRROR.edge(edge) for edge in ring], placement)
        yield PathMark(path, PRINT, PRINT_LINE, (), None, "print")


def _stage_marks(stage: Stage, placement: Placement) -> Iterator[Mark]:
    """The cloth laid so far: the new patch shaded over the others, its seam, the names that find room."""
    for at, laid in enumerate(stage.laid, 1):
        new = at == len(stage.laid)
        rings = _rings(laid, placement)
        yield PathMark(
            _path(rings), BLACK, THIN, (), SHADE if new else WHITE, "new" if new else "laid", laid.patch.label
        )
        if stage.line and new:
            ends = (placement.spot_at(spot.x, spot.y) for spot in stage.line)
            yield line_mark(straight(*ends), "sewn", HEAVY)
        largest = max(rings, key=area_of, default=())
        if largest:
            yield from label_marks(Room((largest,)), laid.patch.label, (), laid.patch.label, SIZES) or ()


def _trimmed_marks(
    paper: SectionPaper, trimmed: Sequence[Laid], placement: Placement, fills: Mapping[str, Fill]
) -> Iterator[Mark]:
    """The section in its fabrics, cut out."""
    for fabric in dict.fromkeys(laid.patch.fabric for laid in trimmed):
        rings = [ring for laid in trimmed if laid.patch.fabric == fabric for ring in _rings(laid, placement)]
        path, fill = _path(rings), fills[fabric]
        yield PathMark(path, None, 0.0, (), fill.ground, "fill", fabric)
        spots = list(chain(*rings))
        xs, ys = [spot.x for spot in spots], [spot.y for spot in spots]
        texture = texture_mark(fill, (min(xs), min(ys), max(xs), max(ys)), path, fabric)
        if texture:
            yield texture
    for laid in sorted(trimmed, key=lambda each: not fills[each.patch.fabric].dark):
        colour = WHITE if fills[laid.patch.fabric].dark else BLACK
        yield PathMark(_path(_rings(laid, placement)), colour, THIN, (), None, "seam")
    yield line_mark(ring_path(mirrored_ring(paper.cut), placement), "paper", PAPER_LINE)


def _rings(laid: Laid, placement: Placement) -> list[Ring]:
    return [tuple(placement.spot_at(spot.x, spot.y) for spot in ring) for ring in laid.rings]


def _path(rings: Sequence[Ring]) -> tuple[Segment, ...]:
    return tuple(chain(*(closed(ring) for ring in rings)))


# ---- joins -----------------------------------------------------------------------------------------


def _join_scene(draft: Draft, sections: Mapping[str, Section], join: SectionJoin) -> Scene:
    """The two groups of sections, and the seam with the first on its right."""
    first, second = (
        [number for label in name.split("-") for number in sections[label].order]
        for name in (join.first, join.second)
    )
    start, end = place_of(join.seam.start), place_of(join.seam.end)
    beside = sum((place_of(draft.pieces[n - 1].inside) - start) / (end - start) for n in first).imag
    seam = join.seam if beside > 0 else join.seam.reversed()
    fabrics = {patch.piece: patch.fabric for section in sections.values() for patch in section.patches}
    names = {
        max(section.order, key=lambda number: float(draft.pieces[number - 1].area)): section.label
        for section in sections.values()
    }  # each section is named once, on its largest piece
    shown = [
        tuple(
            Shown(piece_rings(draft.pieces[number - 1]), fabrics[number], names.get(number, ""))
            for number in group
        )
        for group in (first, second)
    ]
    return Scene(shown[0], shown[1], int(len(shown[1]) <= len(shown[0])), (seam,), "open")
