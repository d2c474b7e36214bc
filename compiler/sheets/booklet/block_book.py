"""The booklet of one block: everything that a class needs to draft, cut and sew it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final, Literal, get_args

from ...cutting.model import Template
from ...cutting.needs import SizedBlock
from ...drafting.model import Draft
from ...measure.length import POINTS_PER_INCH
from ...sewing.difficulty import difficulty
from ...sewing.foundations.foundation import foundations
from ...sewing.foundations.foundation_model import Foundations
from ...sewing.model import Assembly, Proof
from ...words.phrases import count_of
from ...words.work.proofs import proof_text
from ..arrange.block_drawing import portray
from ..arrange.block_sheets import block_leaves, finished_size
from ..arrange.options import SheetOptions
from ..arrange.paths import Placement
from ..quilts.tools import by_rotary
from ..quilts.wearing import Worn
from .content import Book, Chapter, Picture
from .envelope_chapters import CutOut, card_chapter, difficulty_chapter, glossary_chapter, safety_chapter
from .exercise.exercise_chapter import exercise_chapter, has_exercise
from .foundations.foundation_chapter import foundation_chapter
from .needs_chapters import block_plan, cutting_chapter, needs_chapter
from .notes_chapter import cover_notes, notes_chapters
from .paper_pieces import paper_chapter
from .steps.step_chapter import step_chapter
from .steps.step_words import Needle
from .words_of import words_of

Way = Literal["templates", "foundation", "papers"]
WAYS: Final[tuple[Way, ...]] = get_args(Way)
"""How a block is to be sewn: with templates or the ruler, on paper foundations, or over paper pieces."""

BlockPart = Literal["needs", "chart", "templates", "foundation", "papers", "steps", "difficulty", "exercise",
"card", "safety", "glossary"]  # fmt: skip
BLOCK_PARTS: Final[tuple[BlockPart, ...]] = get_args(BlockPart)
"""The chapters that can be had alone, in the order of the booklet."""

CUT_BY: Final[dict[Way, tuple[BlockPart, ...]]] = {
    "templates": ("chart", "templates"),
    "foundation": ("foundation",),
    "papers": ("papers",),
}
"""The chapters that belong to a way of sewing alone."""

QUILTED: Final[tuple[BlockPart, ...]] = ("templates", "foundation", "papers", "steps", "exercise")
"""The chapters that each block of a quilt's booklet has."""

COVER: Final = 420.0  # points of the longer side of the cover's picture


@dataclass(frozen=True, slots=True)
class Sewn:
    """A block with what is known of its sewing."""

    draft: Draft
    templates: tuple[Template, ...]
    assembly: Assembly
    proof: Proof | None
    worn: Worn | None = None  # the fabrics of the quilt that it is shown in


def block_book(block: Sewn, options: SheetOptions, way: Way = "templates") -> Book:
    """The whole booklet, the block sewn in one of the ways."""
    maker = _Maker(block, options, way)
    chapters = [*notes_chapters(block.draft.notes), *(maker.chapter(part) for part in maker.parts())]
    return _bound(maker, (*chapters, glossary_chapter(words_of(chapters))))


def block_part(block: Sewn, part: BlockPart, options: SheetOptions, way: Way = "templates") -> Book:
    """One chapter, as a book of its own without cover and contents."""
    maker = _Maker(block, options, way)
    if part == "glossary":
        return _bound(maker, block_book(block, options, way).chapters[-1:])
    return _bound(maker, (maker.chapter(part),))


def cut_out_of(way: Way, on_paper: bool) -> CutOut:
    """What is cut out once for each shape. `on_paper`: the block goes on foundations."""
    if way == "papers":
        return "paper shape"
    return "" if on_paper else "template"


class _Maker:
    """Makes chapters; what several need is found once."""

    def __init__(
        self,
        block: Sewn,
        options: SheetOptions,
        way: Way,
        under: str = "",
        worn: SizedBlock | None = None,
    ) -> None:
        self.block, self.options, self.way, self.worn = block, options, way, worn or block
        self.under = under or under_title(block.draft)
        self._found: Foundations | None = None

    def found(self) -> Foundations:
        """The block's foundations, or why there are none."""
        if self._found is None:
            self._found = foundations(self.block.draft, self.block.assembly)
        return self._found

    def parts(self) -> Iterator[BlockPart]:
        """The chapters that belong in the booklet, in order."""
        yield from ("needs", "difficulty")
        yield from CUT_BY[self.way]
        if self.way == "foundation" and not self.on_paper():
            yield from CUT_BY["templates"]
        if not self.on_paper():
            yield "steps"
        if has_exercise(self.block.draft):
            yield "exercise"
        if not self.on_paper():  # there are no templates for its envelope
            yield "card"
        yield "safety"

    def on_paper(self) -> bool:
        """Whether the block is sewn on foundations, and can be."""
        return self.way == "foundation" and self.found().possible

    def cut_out(self) -> CutOut:
        """What is cut out once for each shape."""
        return cut_out_of(self.way, self.on_paper())

    def chapter(self, part: BlockPart) -> Chapter:
        """One chapter."""
        block, options = self.block, self.options
        draft, templates = block.draft, block.templates
        makers: dict[str, Callable[[], Chapter]] = {
            "needs": self._needs,
            "chart": lambda: cutting_chapter(templates, block_plan(draft, templates)),
            "templates": self._templates,
            "foundation": lambda: foundation_chapter(draft, self.found(), options, self.under, block.worn),
            "papers": lambda: paper_chapter(draft, options, self.under, block.worn),
            "steps": lambda: step_chapter(draft, block.assembly, block.proof, self._needle(), block.worn),
            "difficulty": lambda: difficulty_chapter(
                difficulty(draft, templates, block.assembly), self.cut_out()
            ),
            "exercise": lambda: exercise_chapter(draft, options, self.under, self.cut_out()),
            "card": lambda: card_chapter(draft, templates, self.way == "papers"),
            "safety": lambda: safety_chapter(self._rotary(), self._needle() == "machine"),
        }
        return makers[part]()

    def _rotary(self) -> bool:
        """Whether the rotary cutter is used."""
        if self.way == "papers":
            return False
        return self.on_paper() or by_rotary(block_plan(self.block.draft, self.block.templates))

    def _needle(self) -> Needle:
        if self.way == "papers":
            return "papers"
        return "hand" if self.options.kind == "finished" else "machine"

    def _needs(self) -> Chapter:
        plan = block_plan(self.block.draft, self.block.templates)
        return needs_chapter(
            self.block.draft,
            self.block.templates,
            plan,
            self.found() if self.on_paper() else None,
            self.way == "papers",
        )

    def _templates(self) -> Chapter:
        draft, templates = self.worn.draft, self.worn.templates
        return Chapter("Templates", (), tuple(block_leaves(draft, templates, self.options, self.under)))


def block_chapters(
    block: Sewn, options: SheetOptions, way: Way, under: str, worn: SizedBlock, parts: Sequence[BlockPart]
) -> Iterator[Chapter]:
    """A block's chapters in a quilt's booklet: of several parts, those that belong to its way of sewing; of
    one alone, that one. `worn`: the block in the quilt's cloths."""
    maker = _Maker(block, options, way, under, worn)
    for part in maker.parts() if len(parts) > 1 else parts:
        if part in parts:
            yield maker.chapter(part)


def under_title(draft: Draft) -> str:
    """`6in finished · version 2`."""
    return f"{finished_size(draft)} finished · version {draft.version}"


def _bound(maker: _Maker, chapters: Sequence[Chapter]) -> Book:
    draft = maker.block.draft
    keywords = ", ".join(("patchwork", "quilt block", "class booklet", *draft.family, *draft.also))
    return Book(
        draft.title,
        under_title(draft),
        cover_picture(draft),
        tuple(_cover_lines(maker.block, maker.cut_out())),
        tuple(chapters),
        f"version {draft.version}, {finished_size(draft)} finished",
        draft.maker,
        keywords,
    )


def cover_picture(draft: Draft) -> Picture:
    """The block as it looks when it is sewn."""
    scale = COVER / (max(float(draft.width), float(draft.height)) * POINTS_PER_INCH)
    placement = Placement(0.0, 0.0, 0.0, scale)
    far = placement.spot_at(draft.width, draft.height)
    return Picture(tuple(portray(draft, placement)), far.x, far.y, f"The finished block {draft.title}.")


def _cover_lines(block: Sewn, cut_out: CutOut) -> Iterator[str]:
    draft = block.draft
    if draft.also:
        yield f"also called {', '.join(draft.also)}"
    yield (
        f"{count_of(len(draft.pieces), 'piece')}, "
        f"{count_of(len(block.templates), cut_out) + ', ' if cut_out else ''}"
        f"{count_of(block.assembly.seams, 'seam')}"
    )
    if block.proof:
        yield f"Checked by sewing it from the printed numbers: {proof_text(block.proof)}."
    if draft.maker:
        yield draft.maker
    yield from cover_notes(draft.notes)
