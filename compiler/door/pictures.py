"""Blocks and quilts as pictures to look at."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import partial
from typing import TYPE_CHECKING, Final

from ..failures import WrongUse, own_mistakes
from ..measure.record import record
from ..words.commands import asked
from ..words.commands.files import a_picture
from ..words.say import INCHES, Say
from .choices import length_of
from .documents import stem_of
from .formats import FORMATS
from .naming import Names
from .owners import marked
from .stopping import held

if TYPE_CHECKING:
    from ..drafting.model import Draft
    from ..drafting.rough import RoughDraft
    from ..pipeline import CompiledBlock
    from ..quilt.model import Quilt
    from ..sheets.page import Page


SHOWN_AS: Final = ("png", "svg", "pdf")
LEAST: Final = Fraction(1, 2)  # inches: nothing can be told apart in a smaller picture
MOST: Final = Fraction(40)  # inches: a poster
MOST_DOTS: Final = 7_200  # across, 24in at 300dpi: with four bytes a dot, 200 MB


def picture_size(value: str) -> Fraction:
    """The longer side of a picture, in exact inches."""
    size = length_of(value)
    if not LEAST <= size <= MOST:
        raise WrongUse(asked.picture_out_of_bounds(INCHES, LEAST, MOST))
    return size


@record
class Drawing:
    """What is to be drawn: its name for messages and for files, and how its page is made."""

    what: str
    stem: str
    title: str
    author: str
    subject: str
    page: Callable[[], Page]
    kind: str = "picture"  # what ends its file's name


def block_drawings(
    blocks: Sequence[CompiledBlock], names: Names, source: str, size: float, say: Say
) -> list[Drawing]:
    """The blocks' pictures. `size` is in inches."""
    return [
        _of_block(draft, names, source, draft.maker, partial(block_page, draft, size, say))
        for draft in (each.draft for each in blocks)
    ]


def rough_drawings(
    blocks: Sequence[RoughDraft], names: Names, source: str, size: float, say: Say
) -> list[Drawing]:
    """The pictures of blocks that cannot be finished, under a name of their own."""
    from ..sheets.arrange.rough_picture import rough_picture

    return [
        _of_block(each, names, source, "", partial(rough_picture, each, size, say), "unfinished")
        for each in blocks
    ]


def _of_block(
    block: Draft | RoughDraft,
    names: Names,
    source: str,
    author: str,
    page: Callable[[], Page],
    kind: str = "picture",
) -> Drawing:
    stem = names.stem(block.title, block.version, source)
    subject = a_picture(block.version)
    return Drawing(asked.block_called(block.title), stem, block.title, author, subject, page, kind)


def quilt_drawings(
    quilts: Sequence[Quilt], names: Names, source: str, size: float, say: Say
) -> list[Drawing]:
    """The quilts' pictures, a colourway each."""
    return [
        Drawing(
            asked.quilt_called(quilt.title),
            stem_of(names, quilt, source),
            quilt.title,
            quilt.maker,
            a_picture(quilt.version),
            partial(quilt_page, quilt, size, say),
        )
        for quilt in quilts
    ]


def bare(drawings: Sequence[Drawing], *, lines_only: bool) -> list[Drawing]:
    """The same without words and letters, in their fabrics or as pages to colour."""

    def page_of(drawing: Drawing) -> Page:
        from ..sheets.pictures.bare import bare_page

        return bare_page(drawing.page(), lines_only=lines_only)

    kind = "colouring" if lines_only else "unlettered"
    return [replace(each, page=partial(page_of, each), kind=kind) for each in drawings]


def beside(drawings: Sequence[Drawing]) -> list[Drawing]:
    """All of them on one sheet, under the first one's name."""

    def page_of() -> Page:
        from ..sheets.pictures.bare import side_by_side

        return side_by_side([each.page() for each in drawings], first.title)

    first = drawings[0]
    return [replace(first, page=page_of, kind="side-by-side")]


def pictures_of(
    drawings: Sequence[Drawing], source: str, formats: Sequence[str], dpi: int
) -> Iterator[tuple[str, bytes]]:
    """A file of each kind for each picture, made one at a time."""
    for each in drawings:
        with own_mistakes(f"{source}, {each.what}"):
            page = each.page()
        for kind in formats:
            with own_mistakes(f"{source}, {each.what}"), held():
                data = drawn(each, page, kind, dpi)
            yield f"{each.stem}-{each.kind}.{kind}", data


def block_page(draft: Draft, size: float, say: Say) -> Page:
    """The block as one page, just large enough."""
    from ..sheets.arrange.picture import block_picture

    return block_picture(draft, size, say)


def quilt_page(quilt: Quilt, size: float, say: Say) -> Page:
    """The quilt as one page."""
    from ..sheets.pictures.show import quilt_show

    return quilt_show(quilt, size, say)


def drawn(drawing: Drawing, page: Page, kind: str, dpi: int) -> bytes:
    """The picture as the bytes of one kind of file."""
    from ..sheets.drawing.lettering import printable
    from ..sheets.page import Document

    form, title = FORMATS[kind], printable(drawing.title)
    if form.unit == "document":
        data = form.make(Document(title, drawing.subject, drawing.author, "", (page,)))
    else:
        data = form.make(page, dpi)
    return marked(kind, data, title)
