"""Paper pieces for sewing over paper by hand: finished size, mirrored, every copy with its own number.

The print lies toward the sewer, on the wrong side of the cloth, so a paper shows its piece from behind.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...drafting.model import Draft, Piece
from ...measure.length import POINTS_PER_INCH
from ...words.numbers import ruler_text
from ...words.pages.labels import number_ranges
from ...words.phrases import count_of
from ..arrange.block_drawing import draw_block, piece_rings
from ..arrange.block_sheets import Body, leaf_of
from ..arrange.leaves import Leaf, paper_for
from ..arrange.options import SheetOptions
from ..arrange.paths import Placement, Ring, flat_ring, ring_path
from ..arrange.room import Room
from ..arrange.style import CUT, line_mark
from ..page import Mark
from ..quilts.flow import Column, Row
from ..quilts.wearing import Worn, always_worn
from .content import Chapter, List, Paragraph, Part, Picture, Table
from .foundations.foundation_paper import MIRROR, mirrored_ring
from .inside_labels import Outside, beside_column, clear_label
from .paper_shapes import Drawn, PaperShape, ShapePage, lay_out

TITLE: Final = "Paper pieces"
PICTURE: Final = 230.0  # points of the longer side of the picture of the papers

SAFETY: Final = (
    "Scissors are sharp: cut paper away from your fingers; keep scissors and needles from children; follow "
    "the maker’s instructions."
)

COLUMNS: Final = (
    Column("letter", 40.0, bold=True),
    Column("papers", 50.0, "end", bold=True),
    Column("fabric", 150.0),
    Column("numbers", 0.0),
)

PAPERS_OUT: Final = (
    "Leave each paper in until all its neighbours are whipped on; those on the outside of the block stay in "
    "until what comes next to it is whipped on, or come out just before that is sewn on by machine.",
    "Press at the end, with the papers in: lift the iron and set it down, do not push. The folds hold the "
    "allowances, so nothing is pressed to one side.",
    "Then take the basting out and lift the papers out; they can be used again.",
)
"""When papers come out, and how the block is pressed (common practice, no published source)."""


def how_words(draft: Draft) -> tuple[str, ...]:
    """How a block is sewn over paper, step by step (common practice, no published source)."""
    curved = any(side.edge.arc for piece in draft.pieces for side in piece.ring)
    words = [
        "Cut every paper on its line, exactly: the papers are finished size, and their edges are the seams. "
        "Light card or heavy paper holds its edge best.",
        "Lay each paper on the wrong side of its cloth, the print toward you: the papers are mirrored, so "
        "that the block comes out right on the front. Pin or dab with glue.",
        f"Cut the cloth about {ruler_text(draft.allowance)} larger all round. It need not be exact, but "
        "on the outside of the block it must not be less.",
        "Fold the allowance over the paper, one edge after another, and baste it: through both, "
        "or at the corners only. At a sharp point fold one edge over the other and let the tail hang.",
        "Lay two neighbours right sides together, edges level, and whip the edges from corner to corner: "
        "small stitches, 14 to 18 to the inch, through the folds and not through the paper. Knot well.",
        "At a set-in corner sew up to the corner, fold the papers softly, and go on along the next edge.",
        *PAPERS_OUT,
    ]
    if curved:
        words.insert(4, "At an inner curve clip the allowance, not quite to the paper, so that it lies flat.")
    return tuple(words)


def paper_chapter(draft: Draft, options: SheetOptions, under: str, worn: Worn | None = None) -> Chapter:
    """The chapter with its papers. `worn`: in which fabrics, as far as they are always the same."""
    worn = always_worn(draft, worn)
    draft = worn.draft(draft)
    parts: tuple[Part, ...] = (
        Paragraph(f"{count_of(len(draft.pieces), 'paper')}, one for every piece of the block.", strong=True),
        *(Paragraph(words) for words in worn.words),
        _picture(draft),
        List(how_words(draft), "number"),
        Table(COLUMNS, tuple(_rows(draft)), "Papers by letter", ticks=True),
    )
    return Chapter(TITLE, parts, tuple(paper_leaves(draft, options, under)))


def _picture(draft: Draft) -> Picture:
    """The block from the front, every piece with the letter and number of its paper."""
    longest = max(float(draft.width), float(draft.height)) * POINTS_PER_INCH
    placement = Placement(0.0, 0.0, 0.0, PICTURE / longest)
    far = placement.spot_at(draft.width, draft.height)
    return Picture(
        tuple(draw_block(draft, placement).marks), far.x, far.y,
        "The block from the front, every piece with the letter and number of its paper.",
        "From the front: where each paper lies, by its letter and number.",
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
    yield Row(("all", str(len(draft.pieces)), "", ""), "all", total=True)


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
    several = f"{names[0]}–{names[-1]}" if len(names) > 1 else names[0]
    what = f"paper pieces {several}"
    if page.tile:
        what += f", {page.tile}"
    papers = count_of(len(page.shapes), "paper")
    return Body(what, f"finished size, mirrored; {papers} on this page", SAFETY, page.marks, page.map)


def _shape(piece: Piece, letter: str) -> PaperShape:
    outline, *holes = (mirrored_ring(ring) for ring in piece_rings(piece))

    def draw(turned: float, avoid: Sequence[Sequence[Ring]]) -> Drawn:
        placement = Placement(turned)
        rings = tuple(flat_ring(ring, placement) for ring in (outline, *holes))
        path = tuple(segment for ring in (outline, *holes) for segment in ring_path(ring, placement))
        marks: list[Mark] = [line_mark(path, "cut", CUT, (), letter)]
        words = (str(piece.number), piece.fabric)
        label = clear_label(Room(rings), avoid, letter, words, letter)
        if label:
            return Drawn((*marks, *label), rings[:1])
        beside, ring = beside_column(
            rings[0], [Outside(f"{letter} {piece.number}", placement.spot(MIRROR(piece.inside)))]
        )
        return Drawn((*marks, *beside), (rings[0], ring))

    return PaperShape(f"{letter} {piece.number}", draw)
