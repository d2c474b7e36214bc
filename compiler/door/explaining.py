"""Everything about a file's blocks and quilts, to read or as JSON."""

from __future__ import annotations

from fractions import Fraction
from json import dumps

from .compiling import Compiled


def explained(compiled: Compiled, form: str, ruler: Fraction) -> str:
    """The report as 'text', quilts first, or as 'json'; `ruler`: its marks are so far apart."""
    if form == "text":
        from ..sheets.reports.quilt_report_text import quilts_text
        from ..sheets.reports.report_text import report_text

        texts = (quilts_text(compiled.planned), report_text(compiled.blocks, ruler))
        return "\n\n\n".join(each for each in texts if each)
    from .records.block import block_of
    from .records.quilt import quilt_of
    from .records.reports import whole_report

    blocks = [block_of(each, ruler) for each in compiled.blocks]
    return dumps(whole_report(blocks, [quilt_of(each) for each in compiled.planned]), ensure_ascii=True)
