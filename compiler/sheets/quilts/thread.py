"""How much thread a quilt takes: its seams' whole length, times what a seam uses. Inches, unless a name
says yards."""

from __future__ import annotations

from math import ceil
from typing import Final

from ...measure.length import UNITS
from ...measure.tolerance import ROUNDED
from ...quilt.model import Quilt

MACHINE_SHARE: Final = 3
"""Inches of thread in an inch of machine seam, top and bobbin together (common practice, no published
source)."""

HAND_SHARE: Final = 2
"""Inches of thread in an inch of seam sewn by hand, with what is lost at its ends (common practice, no
published
source)."""

ROUND: Final = 10  # yards and metres: the estimate is no better than that
YARD: Final = 36


def seam_inches(quilt: Quilt) -> float:
    """The length of all seams of the top: every side of every piece, less the quilt's edge, twice over.

    Each seam joins two sides.
    """
    sides = sum(edge.length for piece in quilt.pieces for ring in piece.rings for edge in ring)
    return (sides - 2 * float(quilt.width + quilt.height)) / 2


def binding_inches(quilt: Quilt) -> float:
    """The seam that sews the binding on; 0 without one."""
    return 2 * float(quilt.width + quilt.height) if quilt.binding else 0.0


def thread_yards(quilt: Quilt, share: int) -> int:
    """Yards for piecing and binding, up to the next ten."""
    return rounded_up((seam_inches(quilt) + binding_inches(quilt)) * share / YARD)


def thread_metres(quilt: Quilt, share: int) -> int:
    """Metres for piecing and binding, up to the next ten."""
    metre = float(100 * UNITS["cm"])
    return rounded_up((seam_inches(quilt) + binding_inches(quilt)) * share / metre)


def rounded_up(amount: float) -> int:
    """The next whole ten."""
    return ceil(amount / ROUND - ROUNDED) * ROUND
