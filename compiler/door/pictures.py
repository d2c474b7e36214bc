"""Blocks and quilts as pictures to look at."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING

from ..failures import own_mistakes
from ..words.commands.files import a_picture
from .blocks import named
from .documents import stem_of
from .formats import FORMATS
from .naming import Names
from .owners import marked
from .stopping import held

if TYPE_CHECKING:
    from ..drafting.model import Draft
    from ..pipeline import CompiledBlock
    from ..quilt.model import Quilt
    from ..sheets.page import Page


@dataclass(frozen=True, slots=True)
class Drawing:
    """What is to be drawn: its name for messages and for files, and how its page is made."""

    what: str
    stem: str
    title: str
    author: str
    subject: str
    page: Callable[[], Page]


def block_drawings(blocks: Sequence[CompiledBlock], names: Names, source: str, size: float) -> list[Drawing]:
    """The blocks' pictures. `size` is in inches."""
    return [
        Drawing(
            f"block '{named(draft.title)}'",
            names.stem(draft.title, draft.version, source),
            draft.title,
            draft.maker,
            a_picture(draft.version),
            partial(block_page, draft, size),
        )
        for draft in (each.draft for each in blocks)
    ]


def quilt_drawings(quilts: Sequence[Quilt], names: Names, source: str, size: float) -> list[Drawing]:
    """The quilts' pictures, a colourway each."""
    return [
        Drawing(
            f"quilt '{named(quilt.title)}'",
            stem_of(names, quilt, source),
            quilt.title,
            quilt.maker,
            a_picture(quilt.version),
            partial(quilt_page, quilt, size),
        )
        for quilt in quilts
    ]


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
            yield f"{each.stem}-picture.{kind}", data


def block_page(draft: Draft, size: float) -> Page:
    """The block as one page, just large enough."""
    from ..sheets.arrange.picture import block_picture

    return block_picture(draft, size)


def quilt_page(quilt: Quilt, size: float) -> Page:
    """The quilt as one page."""
    from ..sheets.pictures.show import quilt_show

    return quilt_show(quilt, size)


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
