"""Paper pieces for sewing over paper by hand: finished size, mirrored, every copy with its own number.

The print lies toward the sewer, on the wrong side of the cloth, so a paper shows its piece from behind.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...drafting.model import Draft, Piece
from ...measure.length import POINTS_PER_INCH
from ...words.pages import papers as words
from ...words.pages.labels import number_ranges
from ..arrange.block_drawing import draw_block, piece_rings
from ..arrange.block_sheets import Body, leaf_of
from ..arrange.leaves import Leaf, paper_for
from ..arrange.options import SheetOptions
from ..arrange.paths import Placement, Ring, flat_ring, ring_path
from ..arrange.room import Room
from ..arrange.style import CUT, line_mark
from ..content import Chapter, Column, List, Paragraph, Part, Picture, Row, Table
from ..page import Mark
from ..papers.foundation_paper import MIRROR, mirrored_ring
from ..papers.inside_labels import Outside, beside_column, clear_label
from ..papers.paper_shapes import Drawn, PaperShape, ShapePage, lay_out
from ..quilts.wearing import always_worn
from ..work import WorkBlock

PICTURE: Final = 230.0  # points of the longer side of the picture of the papers

COLUMNS: Final = (
    Column(words.LETTER, 40.0, bold=True),
    Column(words.PAPERS, 50.0, "end", bold=True),
    Column(words.FABRIC, 150.0),
    Column(words.NUMBERS, 0.0),
)


def papers(block: WorkBlock, options: SheetOptions) -> Chapter:
    """The chapter with its papers, in the fabrics of the block as far as those are always the same."""
    worn = always_worn(block.draft, block.worn)
    draft = worn.draft(block.draft)
    parts: tuple[Part, ...] = (
        Paragraph(words.number_words(len(draft.pieces)), strong=True),
        *map(Paragraph, words.copies_words(block) if block.cut_out == "paper-shape" else ()),
        *map(Paragraph, worn.words),
        _picture(draft),
        List(words.how_words(options.say, draft), "number"),
        Table(COLUMNS, tuple(_rows(draft)), words.CAPTION, ticks=True),
    )
    return Chapter(block.titled(words.TITLE), parts, tuple(paper_leaves(draft, options, block.under)))


def _picture(draft: Draft) -> Picture:
    """The block from the front, every piece with the letter and number of its paper."""
    longest = max(float(draft.width), float(draft.height)) * POINTS_PER_INCH
    placement = Placement(0.0, 0.0, 0.0, PICTURE / longest)
    far = placement.spot_at(draft.width, draft.height)
    return Picture(
        tuple(draw_block(draft, placement).marks), far.x, far.y,
        words.PICTURED, words.PICTURE,
    )  # fmt: skip


def _rows(draft: Draft) -> Iterator[Row]:
    """How many papers of each letter and fabric, and which pieces they are."""
    for shape in draft.shapes:
        fabrics: dict[str, list[int]] = {}
        for member in shape.members:
            fabrics.setdefault(draft.pieces[member.piece - 1].fabric, []).append(member.piece)
        for fabric, numbers in fabrics.items():
            cells = (shape.label, str(len(numbers)), fabric, number_ranges(sorted(numbers)))
            yield Row(cells, shape.label)
    yield Row((words.ALL, str(len(draft.pieces)), "", ""), "all", total=True)


def paper_leaves(draft: Draft, options: SheetOptions, under: str) -> list[Leaf]:
    """The pages of every paper."""
    letters = {member.piece: shape.label for shape in draft.shapes for member in shape.members}
    order = sorted(
        draft.pieces, key=lambda piece: (len(letters[piece.number]), letters[piece.number], piece.number)
    )
    shapes = [_shape(piece, letters[piece.number]) for piece in order]
    paper = paper_for(options)
    return [
        leaf_of(_body(page, order, letters), draft.title, under, draft.trim.dots, paper, options, "")
        for page in lay_out(shapes, paper)
    ]


def _body(page: ShapePage, order: Sequence[Piece], letters: dict[int, str]) -> Body:
    """A page with its words: it counts the papers that lie on it."""
    names = list(dict.fromkeys(letters[order[at].number] for at in page.shapes))
    what = words.sheet_words(names[0], names[-1], page.tile)
    return Body(what, words.count_on_page(len(page.shapes)), words.SAFETY, page.marks, page.map)


def _shape(piece: Piece, letter: str) -> PaperShape:
    outline, *holes = (mirrored_ring(ring) for ring in piece_rings(piece))

    def draw(turned: float, avoid: Sequence[Sequence[Ring]]) -> Drawn:
        placement = Placement(turned)
        rings = tuple(flat_ring(ring, placement) for ring in (outline, *holes))
        path = tuple(segment for ring in (outline, *holes) for segment in ring_path(ring, placement))
        marks: list[Mark] = [line_mark(path, "cut", CUT, (), letter)]
        under = (str(piece.number), piece.fabric)
        label = clear_label(Room(rings), avoid, letter, under, letter)
        if label:
            return Drawn((*marks, *label), rings[:1])
        beside, ring = beside_column(
            rings[0], [Outside(f"{letter} {piece.number}", placement.spot(MIRROR(piece.inside)))]
        )
        return Drawn((*marks, *beside), (rings[0], ring))

    return PaperShape(f"{letter} {piece.number}", draw)
