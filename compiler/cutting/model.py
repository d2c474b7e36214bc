"""A template as cut. Inches, x right, y down; lies as the shape's first piece lies in the block, so its
coordinates are the block's own. Rings run clockwise as seen."""

from __future__ import annotations

from fractions import Fraction

from ..geometry.edge import Edge, Point
from ..measure.record import record
from ..measure.tolerance import Number


@record
class Mark:
    """A match mark: `at` on the sewing line, `toward` the outward unit normal into the allowance."""

    at: Point
    toward: Point
    allowance: float  # inches of allowance there


@record
class GrainArrow:
    """Straight of grain: degrees clockwise from up (0 <= heading < 180), and the pieces it is for."""

    heading: float
    pieces: tuple[int, ...]


@record
class FabricCount:
    """How many to cut of one fabric, as drawn and reversed."""

    fabric: str
    cut: int
    reversed: int


@record
class Template:
    """One template with everything that is printed on it."""

    label: str
    block_title: str
    version: int
    maker: str
    block_width: Number  # finished
    block_height: Number
    sew: tuple[Edge, ...]  # the finished outline
    sew_holes: tuple[tuple[Edge, ...], ...]
    cut: tuple[Edge, ...]  # the outline with allowance, points trimmed
    cut_holes: tuple[tuple[Edge, ...], ...]
    dots: tuple[Point, ...]  # at the seam corners
    dot_width: Fraction
    marks: tuple[Mark, ...]
    grain: tuple[GrainArrow, ...]  # empty: grain free
    counts: tuple[FabricCount, ...]  # fabrics in order of first use; reversible shapes count nothing reversed
    reversible: bool
    pieces: tuple[int, ...]  # numbers of the pieces cut from it
    blocks: int = 0  # so many of a quilt, one of which the counts are for; 0: all that is cut

    @property
    def cut_count(self) -> int:
        """How many are cut as drawn."""
        return sum(each.cut for each in self.counts)

    @property
    def reversed_count(self) -> int:
        """How many are cut reversed."""
        return sum(each.reversed for each in self.counts)
