"""Everything about a file's blocks and quilts, to read or as JSON."""

from __future__ import annotations

from collections.abc import Iterator
from json import dumps
from typing import TYPE_CHECKING

from .compiling import Compiled

if TYPE_CHECKING:
    from .settings import Settings


def explained(compiled: Compiled, form: str, settings: Settings) -> str:
    """The report as 'text', quilts first, or as 'json', with what the folder's settings say."""
    if form == "text":
        return "\n\n\n".join(_texts(compiled, settings))
    from .records.block import block_of
    from .records.quilt import quilt_of
    from .records.reports import whole_report

    blocks = [block_of(each, compiled.cutting.ruler) for each in compiled.blocks]
    told = whole_report(blocks, [quilt_of(each) for each in compiled.planned])
    return dumps({**told, **settings.record}, ensure_ascii=True)


def _texts(compiled: Compiled, settings: Settings) -> Iterator[str]:
    """Every quilt, then every block."""
    from ..planning import plan_block
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.explained import block_text, quilt_text
    from ..sheets.work import Work

    options = SheetOptions(say=compiled.say, pictures=False, settings=settings.listed)
    for planned in compiled.planned:
        yield quilt_text(Work(planned, say=compiled.say), options)
    for block in compiled.blocks:
        work = Work(plan_block(block, compiled.cutting), say=compiled.say)
        yield block_text(work, options, elsewhere=block.from_elsewhere)
