"""The papers of a foundation: every section mirrored, true to size, with allowance and match marks."""

from __future__ import annotations

from collections.abc import Sequence

from ...drafting.model import Draft
from ...sewing.foundations.foundation_model import Foundations
from ...words.pages.foundations import SAFETY, section_name, sheet_below, sheet_words
from ...words.pages.labels import label_runs
from ...words.say import Say
from ..arrange.block_sheets import Body, leaf_of
from ..arrange.leaves import Leaf, paper_for
from ..arrange.options import SheetOptions
from ..arrange.paths import Placement, Ring, flat_ring, open_path, ring_path
from ..arrange.room import Room, around
from ..arrange.style import CUT, SEW, SEW_DASH, SMALLEST, centre_drop, line_mark, set_text
from ..arrange.template_marks import MATCH_INSIDE, match_marks
from ..page import Mark
from .foundation_paper import SectionPaper, section_papers
from .inside_labels import Outside, beside_column, clear_label
from .paper_shapes import Drawn, PaperShape, ShapePage, lay_out


def foundation_leaves(draft: Draft, found: Foundations, options: SheetOptions, under: str) -> list[Leaf]:
    """The pages of every section. None where the block cannot be sewn on paper."""
    papers = section_papers(draft, found)
    shapes = [_shape(paper, options) for paper in papers]
    paper = paper_for(options)
    labels = [section.label for section in found.sections]
    return [
        leaf_of(
            _body(draft, page, labels, options.say), draft.title, under, draft.trim.dots, paper, options, ""
        )
        for page in lay_out(shapes, paper)
    ]


def _body(draft: Draft, page: ShapePage, labels: Sequence[str], say: Say) -> Body:
    """A page with its words."""
    what = sheet_words(label_runs(labels, page.shapes), len(page.shapes) > 1, page.tile)
    return Body(what, sheet_below(say, draft.allowance), SAFETY, page.marks, page.map)


def _shape(paper: SectionPaper, options: SheetOptions) -> PaperShape:
    return PaperShape(
        section_name(paper.section.label), lambda turn, avoid: _drawn(paper, Placement(turn), avoid, options)
    )


def _drawn(
    paper: SectionPaper, placement: Placement, avoid: Sequence[Sequence[Ring]], options: SheetOptions
) -> Drawn:
    """The section's marks: its lines and match marks, the numbers of its joins, the name of every patch."""
    marks = _line_marks(paper, placement, options)
    rings = [flat_ring(paper.cut, placement)]
    ticks = tuple(around(spot, MATCH_INSIDE) for spot in placement.spots(tick.at for tick in paper.ticks))
    outside: list[Outside] = []
    for each in paper.patches:
        patch = each.patch
        room = Room((flat_ring(each.ring, placement),), ticks)
        words = clear_label(room, avoid, patch.label, (patch.fabric,), patch.label)
        if words is None:
            outside.append(Outside(patch.label, placement.spot(each.inside)))
        marks += words or ()
    if outside:
        beside, ring = beside_column(rings[0], outside)
        marks += beside
        rings.append(ring)
    return Drawn(tuple(marks), tuple(rings))


def _line_marks(paper: SectionPaper, placement: Placement, options: SheetOptions) -> list[Mark]:
    label = paper.section.label
    cut_dash, sew_dash = (SEW_DASH, ()) if options.lines == "cut-dashed" else ((), SEW_DASH)
    marks: list[Mark] = [
        line_mark(ring_path(paper.cut, placement), "cut", CUT, cut_dash, label),
        line_mark(ring_path(paper.sew, placement), "sew", SEW, sew_dash, label),
        *(
            line_mark(open_path((line,), placement), "sew", SEW, sew_dash, patch.label)
            for patch, line in paper.lines
        ),
        *match_marks(paper.ticks, placement, label),
    ]
    for name in paper.names:
        x, y = placement.spot(name.at)
        marks.append(
            set_text(
                x,
                y + centre_drop(SMALLEST),
                name.text,
                SMALLEST,
                True,
                "middle",
                role="join-name",
                subject=label,
            )
        )
    return marks
