"""What is made of a block: its template sheets, its booklet, or chapters of it; how it is to be sewn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Final

import click

from ..diagnostics.visible import accents_joined
from .choices import Decorated, ParamKind

if TYPE_CHECKING:
    from ..cutting.needs import SizedBlock
    from ..pipeline import CompiledBlock
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.booklet.content import Book
    from ..sheets.page import Document

BOOKLET: Final = "booklet"  # ends the names of its files
HTML: Final = "html"

PARTS: Final = (
    "needs",
    "chart",
    "templates",
    "foundation",
    "papers",
    "steps",
    "difficulty",
    "exercise",
    "card",
    "safety",
    "glossary",
)
"""Chapters of a block, those of sheets.booklet."""

WAYS: Final = ("templates", "foundation", "papers")  # those of sheets.booklet
LONGEST: Final = 60  # letters of a value in a message


class SewChoice(ParamKind):
    """A way of sewing, for all blocks or one: `foundation`, `Log Cabin=foundation`. Gives (title, way)."""

    name = "sew"

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[str, str]:
        """The block's title, '' for all, and the way; a use error that lists the ways there are."""
        if isinstance(value, tuple):
            return value
        title, _, way = value.rpartition("=")
        if way.strip().lower() not in WAYS:
            self.fail(f"'{way.strip()[:LONGEST]}' is not one of {', '.join(WAYS)}.", param, ctx)
        return accents_joined(title.strip()), way.strip().lower()

    def get_metavar(self, param: click.Parameter, ctx: click.Context | None = None) -> str:
        """What the help shows for the value."""
        return f"[TITLE=]{'|'.join(WAYS)}"


@dataclass(frozen=True, slots=True)
class Booklets:
    """Whether booklets are asked for, and how each block is to be sewn: the last word for a title counts."""

    wanted: bool = False
    ways: tuple[tuple[str, str], ...] = ()
    met: dict[str, bool] = field(default_factory=dict)

    def way_for(self, block: CompiledBlock | SizedBlock) -> Any:
        """The way for a block: by its title or another of its names, else that for all, else templates."""
        names = {name.casefold() for name in (block.draft.title, *block.draft.also)}
        own = [way for title, way in self.ways if title.casefold() in names]
        self.met.update({title: True for title, _ in self.ways if title.casefold() in names})
        return (own or [way for title, way in self.ways if not title] or ["templates"])[-1]

    def on_paper(self, block: SizedBlock) -> bool:
        """Whether a block of a quilt is to be cut for foundations and sewn on them."""
        return bool(self.way_for(block) == "foundation")

    def refuse_unmet(self) -> None:
        """A use error for a title that no block had."""
        for title, _ in self.ways:
            if title and title not in self.met:
                raise click.UsageError(f"--sew: there is no block '{title[:LONGEST]}' in what was read.")


@dataclass(frozen=True, slots=True)
class Made:
    """One document, what ends its files' names, and the book it is set from, where it can be HTML as well."""

    ending: str
    document: Document
    book: Book | None = None


def booklet_options(command: Decorated) -> Decorated:
    """`--booklet` and `--sew`."""
    for option in (
        click.option(
            "--sew",
            "ways",
            multiple=True,
            type=SewChoice(),
            help="How blocks are sewn, in a booklet or its parts: with templates and ruler, on "
            "foundations, or over paper pieces by hand. A quilt's cloth is cut for it. For one "
            "block: 'Log Cabin=foundation'. Repeatable.  "
            "[default: templates]",
        ),
        click.option(
            "--booklet",
            is_flag=True,
            help="A booklet for a class: what you need, cutting, templates or foundations, steps in "
            "pictures, a drafting exercise, a storage card. '--format pdf,html' makes it a "
            "page for phones, too.",
        ),
    ):
        command = option(command)
    return command


def made_of_block(
    block: CompiledBlock, options: SheetOptions, booklets: Booklets, parts: tuple[str, ...]
) -> Iterator[Made]:
    """The booklet, or each part asked for, or the template sheets."""
    if not booklets.wanted and not parts:
        from ..sheets.arrange.block_sheets import arrange_block

        yield Made("", arrange_block(block.draft, block.templates, options))
        return
    from ..sheets.arrange.page_bound import bounded
    from ..sheets.booklet.block_book import BLOCK_PARTS, Sewn, block_book, block_part
    from ..sheets.booklet.setting.set_pages import chapters_document, set_book

    sewn = Sewn(block.draft, block.templates, block.assembly, block.proof)
    way = booklets.way_for(block)
    if booklets.wanted:
        book = block_book(sewn, options, way)
        yield Made(BOOKLET, bounded(set_book(book, options)), book)
    for part in BLOCK_PARTS:
        if part in parts:
            alone = chapters_document(block_part(sewn, part, options, way), options)
            yield Made(part, bounded(alone))


def refuse_html(formats: tuple[str, ...], booklets: Booklets) -> None:
    """A use error where HTML is asked for and no booklet."""
    if HTML in formats and not booklets.wanted:
        raise click.UsageError("--format html is for booklets: add --booklet.")


def refuse_ways(booklets: Booklets, parts: tuple[str, ...]) -> None:
    """A use error where a way of sewing is given and neither a booklet nor a part of one is wanted: sheets
    of templates are for sewing with templates."""
    if booklets.ways and not booklets.wanted and not parts:
        raise click.UsageError("--sew is for booklets and their parts: add --booklet or --parts.")
