"""What is made of a block: its template sheets, its booklet, or chapters of it; how it is to be sewn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Final

import click

from .choices import Decorated, ParamKind
from .shelves.folders import joined

if TYPE_CHECKING:
    from ..cutting.needs import SizedBlock
    from ..pipeline import CompiledBlock
    from ..planning import Cutting
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.documents import Made

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
"""Chapters of a block, those of sheets.documents."""

WAYS: Final = ("templates", "foundation", "papers")  # those of sheets.documents
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
        return joined(title.strip()), way.strip().lower()

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


def wanted_of(booklets: Booklets, parts: tuple[str, ...]) -> tuple[str, ...]:
    """The documents asked for, by what ends their names: the sheets where nothing is."""
    return (*((BOOKLET,) if booklets.wanted else ()), *parts) or ("",)


def documents_of_block(
    block: CompiledBlock, cutting: Cutting, options: SheetOptions, booklets: Booklets, parts: tuple[str, ...]
) -> Iterator[Made]:
    """The booklet, or each part asked for, or the template sheets."""
    from ..planning import plan_block
    from ..sheets.documents import documents_of
    from ..sheets.work import Work

    planned = plan_block(block, cutting).value
    assert planned is not None, "the cloth of a block alone is as wide as it wants"
    return documents_of(Work(planned, booklets.way_for), wanted_of(booklets, parts), options)


def refuse_html(formats: tuple[str, ...], booklets: Booklets) -> None:
    """A use error where HTML is asked for and no booklet."""
    if HTML in formats and not booklets.wanted:
        raise click.UsageError("--format html is for booklets: add --booklet.")


def refuse_ways(booklets: Booklets, parts: tuple[str, ...]) -> None:
    """A use error where a way of sewing is given and neither a booklet nor a part of one is wanted: sheets
    of templates are for sewing with templates."""
    if booklets.ways and not booklets.wanted and not parts:
        raise click.UsageError("--sew is for booklets and their parts: add --booklet or --parts.")
