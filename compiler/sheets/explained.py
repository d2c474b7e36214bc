"""What `explain` says to people: chapters of blocks and quilts that can be read at a terminal."""

from __future__ import annotations

from typing import Final

from .arrange.options import SheetOptions
from .arrange.swatches import fills_of
from .chapters.block_steps import block_steps
from .chapters.chart import chart
from .chapters.counts import counts
from .chapters.difficulty import difficulty
from .chapters.foundations import patches
from .chapters.looks import looks
from .chapters.needs import needs
from .chapters.pieces import about_block, about_quilt, defaults, pieces
from .chapters.rows import rows
from .pictures.quilt import own_titles, quilt_fills
from .setting.text import report_text
from .work import Work

QUILT: Final = (needs, counts, chart, rows)
"""Those of a quilt's chapters that can be read there."""


def quilt_text(work: Work, options: SheetOptions) -> str:
    """What its sheets say, how it is sewn and drawn, and its defaults."""
    told = [chapter for maker in QUILT for chapter in maker(work, options)]
    drawn = looks(quilt_fills(work.quilt), dict(own_titles(work.quilt)))
    return report_text([about_quilt(work, options), *told, drawn, *defaults(work.quilt.defaults, options)])


def block_text(work: Work, options: SheetOptions, *, elsewhere: bool) -> str:
    """A block alone: piece by piece, how it is sewn and drawn, and its defaults."""
    (block,) = work.blocks
    return report_text([
        about_block(block, options, elsewhere=elsewhere),
        *pieces(block, options),
        block_steps(block, options),
        patches(block, options),
        *difficulty(work, options),
        looks(fills_of(block.draft), {}),
        *defaults(block.draft.defaults, options),
    ])  # fmt: skip
