"""Everything about a file's blocks and quilts, to read or as JSON."""

from __future__ import annotations

from collections.abc import Iterator
from json import dumps
from typing import TYPE_CHECKING

from .compiling import Compiled

if TYPE_CHECKING:
    from ..planning import Cutting


def explained(compiled: Compiled, form: str, cutting: Cutting) -> str:
    """The report as 'text', quilts first, or as 'json'; how it is cut."""
    if form == "text":
        return "\n\n\n".join(_texts(compiled, cutting))
    from .records.block import block_of
    from .records.quilt import quilt_of
    from .records.reports import whole_report

    blocks = [block_of(each, cutting.ruler) for each in compiled.blocks]
    return dumps(whole_report(blocks, [quilt_of(each) for each in compiled.planned]), ensure_ascii=True)


def _texts(compiled: Compiled, cutting: Cutting) -> Iterator[str]:
    """Every quilt, then every block."""
    from ..planning import plan_block
    from ..sheets.arrange.options import SheetOptions
    from ..sheets.explained import block_text, quilt_text
    from ..sheets.work import Work
    from ..words.say import by_ruler

    options = SheetOptions(say=by_ruler(cutting.ruler), pictures=False)
    for planned in compiled.planned:
        yield quilt_text(Work(planned), options)
    for block in compiled.blocks:
        yield block_text(Work(plan_block(block, cutting)), options, elsewhere=block.from_elsewhere)
