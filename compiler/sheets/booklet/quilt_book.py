"""The booklet of a quilt: what is needed, cutting, every block as its maker chose, the rows, the borders."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import ClassVar, Final, Literal, get_args

from ...cutting.model import Template
from ...cutting.needs import SizedBlock
from ...cutting.plan_model import CuttingPlan
from ...measure.length import POINTS_PER_INCH
from ...quilt.assembly_model import QuiltAssembly
from ...quilt.counting import ALLOWANCE
from ...quilt.model import Quilt
from ...sewing.difficulty import difficulty
from ...sewing.foundations.foundation_model import Foundations
from ...words.phrases import count_of
from ...words.work.proofs import proof_text
from ..arrange.block_sheets import template_leaves
from ..arrange.leaves import Leaf, paper_for
from ..arrange.options import SheetOptions
from ..arrange.paths import Placement
from ..quilts.cutting import cutting_leaves
from ..quilts.drawing import draw_quilt
from ..quilts.frame import under_title
from ..quilts.picture import picture_leaves
from ..quilts.tables import block_name, size_text
from ..quilts.templates import setting_templates
from ..quilts.tools import by_rotary
from ..quilts.wearing import in_quilt, worn_block
from .block_book import QUILTED, BlockPart, Sewn, Way, block_chapters, cut_out_of
from .content import Book, Chapter, List, Paragraph, Part, Picture, Section
from .envelope_chapters import card_parts, cause_lines, glossary_chapter, safety_chapter
from .finish_chapter import finish_chapter
from .foundations.foundation_chapter import TITLE as FOUNDATIONS
from .notes_chapter import cover_notes, notes_chapters
from .paper_pieces import TITLE as PAPERS
from .quilt_chapters import chart_chapter, counts_chapter, cutting_chapter, sewn_singly, supplies_chapter
from .quilt_ways import copies_words, way_parts
from .steps.row_chapter import row_chapter
from .words_of import words_of

QuiltBookPart = Literal[
    "picture", "needs", "counts", "chart", "cutting", "blocks", "rows", "finish", "difficulty", "card",
    "safety"
]  # fmt: skip
QUILT_BOOK_PARTS: Final[tuple[QuiltBookPart, ...]] = get_args(QuiltBookPart)
"""What a quilt's booklet holds, in order; a glossary comes last."""

NO_CARDS: Final = "Every block is sewn on foundations: there are no templates to keep."
COVER: Final = 400.0  # points of the longer side of the cover's picture

WayFor = Callable[[SizedBlock], Way]
"""The maker's choice for a block."""


class QuiltBook:
    """Makes the chapters of one quilt's booklet. `papers` are the foundations that the plan
    cuts for, by the block's index."""

    def __init__(
        self,
        quilt: Quilt,
        plan: CuttingPlan,
        made: QuiltAssembly,
        options: SheetOptions,
        way_for: WayFor,
        papers: Mapping[int, Foundations],
    ) -> None:
        self.quilt, self.made = quilt, made
        self.options, self.way_for = options, way_for
        self.papers = papers
        self.cut_outs = [cut_out_of(way_for(block), at in papers) for at, block in enumerate(quilt.blocks)]
        self.plan = sewn_singly(quilt, plan, self.cut_outs)

    def book(self) -> Book:
        """The whole booklet."""
        chapters = [chapter for part in QUILT_BOOK_PARTS for chapter in self.chapters(part)]
        return self.bound((*chapters, glossary_chapter(words_of(chapters))))

    def alone(self, part: BlockPart) -> Book:
        """One part of every block and of the quilt, as a book of its own without cover and contents."""
        if part == "glossary":
            return self.bound(self.book().chapters[-1:])
        if part in self.ALONE:
            none = Chapter("Storage cards", (Paragraph(NO_CARDS),))
            return self.bound(tuple(self.chapters(self.ALONE[part])) or (none,))
        of_top = (*self.chapters("rows"), *self.chapters("finish")) if part == "steps" else ()
        return self.bound((*self._block_chapters((part,)), *of_top))

    ALONE: ClassVar[dict[BlockPart, QuiltBookPart]] = {
        "needs": "needs", "chart": "chart", "difficulty": "difficulty", "card": "card", "safety": "safety",
    }  # fmt: skip

    def chapters(self, part: QuiltBookPart) -> Iterator[Chapter]:
        """The chapters of a part."""
        quilt, plan, paper = self.quilt, self.plan, paper_for(self.options)
        match part:
            case "picture":
                plain = replace(quilt, notes=())  # which the cover has, or a chapter of their own
                yield Chapter("The quilt", (), tuple(picture_leaves(plain, paper)), true_size=False)
                yield from notes_chapters(quilt.notes, [block.draft for block in quilt.blocks])
            case "needs":
                found = supplies_chapter(quilt, plan, self.cut_outs)
                more = way_parts(quilt, self.cut_outs)
                yield replace(found, parts=(*found.parts, *more))
            case "counts":
                yield counts_chapter(quilt, plan)
            case "chart":
                yield chart_chapter(quilt, plan, self.cut_outs)
            case "cutting":
                yield cutting_chapter(quilt, plan, cutting_leaves(quilt, plan, paper))
            case "blocks":
                yield from (*self._block_chapters(QUILTED), *self._setting_chapters())
            case "rows":
                yield row_chapter(quilt, plan, self.made)
            case "finish":
                yield finish_chapter(quilt, plan)
            case "difficulty":
                yield Chapter("What makes it hard", tuple(self._causes()), joins=True)
            case "card":
                yield from self._card_chapter()
            case "safety":
                yield safety_chapter(by_rotary(plan))

    def _block_chapters(self, wanted: Sequence[BlockPart]) -> Iterator[Chapter]:
        """Those chapters of every block, as far as they belong to its way of sewing; then the papers to draft
        on, where one of a kind serves all blocks."""
        papers: dict[str, Leaf] = {}
        for index, block in enumerate(self.quilt.blocks):
            name, sewn = block_name(self.quilt, index), self._sewn(index)
            size = size_text(block.draft.width, block.draft.height)
            times = count_of(self.quilt.block_counts[index], "time")
            under = f"{size} finished · version {block.draft.version} · {times} in {self.quilt.title}"
            way, worn = self.way_for(block), worn_block(self.quilt, index)
            for chapter in block_chapters(sewn, self.options, way, under, worn, wanted):
                parts = chapter.parts
                if chapter.title == {"": FOUNDATIONS, "paper shape": PAPERS}.get(self.cut_outs[index]):
                    parts = (parts[0], *self._copies(index), *parts[1:])
                own = tuple(leaf for leaf in chapter.sheets if not leaf.bookmark.endswith("graph paper"))
                papers = {leaf.bookmark: leaf for leaf in chapter.sheets if leaf not in own} | papers
                yield replace(chapter, title=f"{name}: {chapter.title.lower()}", parts=parts, sheets=own)
        if papers:
            under = "for the drafting exercises of all blocks"
            yield Chapter("Paper to draft on", (), tuple(
                replace(leaf, heading=replace(leaf.heading, block=self.quilt.title, under=under))
                for leaf in papers.values()
            ))  # fmt: skip

    def _copies(self, index: int) -> Iterator[Paragraph]:
        """How a block's papers serve all its copies."""
        lying = [placed.mirrored for placed in self.quilt.placed if placed.block == index]
        yield from map(Paragraph, copies_words(self.cut_outs[index], len(lying), sum(lying)))

    def _setting_chapters(self) -> Iterator[Chapter]:
        """The templates of the setting and the borders, where there are any."""
        own = setting_templates(self.quilt, self.plan)
        if own:
            yield Chapter("Setting and borders: templates", (), tuple(self._setting_leaves(own)))

    def _setting_leaves(self, own: Sequence[Template]) -> list[Leaf]:
        under = f"{under_title(self.quilt)} · counts are for the whole quilt"
        return template_leaves(own, self.quilt.title, under, ALLOWANCE, self.options, "")

    def _sewn(self, index: int) -> Sewn:
        block, made = self.quilt.blocks[index], self.made.blocks[index]
        worn = in_quilt(self.quilt, index)
        return Sewn(block.draft, block.templates, made.assembly, made.proof, worn)

    def _causes(self) -> Iterator[Part]:
        yield Paragraph("There is no score: these are the causes in each block, and what each asks of you.")
        for index, block in enumerate(self.quilt.blocks):
            yield Section(block_name(self.quilt, index))
            found = difficulty(block.draft, block.templates, self.made.blocks[index].assembly)
            yield List(tuple(cause_lines(found, self.cut_outs[index])))

    def _card_chapter(self) -> Iterator[Chapter]:
        """The cards, where there is one."""
        cards = tuple(self._cards())
        if cards:
            yield Chapter("Storage cards", cards)

    def _cards(self) -> Iterator[Part]:
        """A card for the envelope of each block."""
        for index, cut_out in enumerate(self.cut_outs):
            if cut_out:
                block = worn_block(self.quilt, index)
                yield from card_parts(block.draft, block.templates, cut_out == "paper shape")

    def bound(self, chapters: Sequence[Chapter]) -> Book:
        """The chapters as a book with the quilt's cover."""
        quilt = self.quilt
        subject = f"version {quilt.version}, {size_text(quilt.width, quilt.height)} finished"
        if quilt.colourway:
            subject += f", colourway {quilt.colourway}"
        titles = dict.fromkeys(block.draft.title for block in quilt.blocks)
        keywords = ", ".join(("patchwork", "quilt", "class booklet", *titles))
        cover, lines = self._cover(), tuple(self._lines())
        return Book(
            quilt.title, under_title(quilt), cover, lines, tuple(chapters), subject, quilt.maker, keywords
        )

    def _cover(self) -> Picture:
        """The whole top."""
        quilt = self.quilt
        scale = COVER / (max(float(quilt.width), float(quilt.height)) * POINTS_PER_INCH)
        placement = Placement(0.0, 0.0, 0.0, scale)
        far = placement.spot_at(quilt.width, quilt.height)
        return Picture(
            tuple(draw_quilt(quilt, placement)), far.x, far.y, f"The finished quilt {quilt.title}."
        )

    def _lines(self) -> Iterator[str]:
        yield f"{count_of(sum(self.quilt.block_counts), 'block')}, set {self.quilt.setting}"
        yield f"Checked by sewing it from the printed numbers: {proof_text(self.made.proof)}."
        if self.quilt.maker:
            yield self.quilt.maker
        yield from cover_notes(self.quilt.notes)
