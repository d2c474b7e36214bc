"""What planning asks of a quilt: shapes to cut, of how many, from which cloth. Inches.

A laid-out quilt (`quilt.model`) answers to these; it lies to the right of this folder, so they are written
as what is read of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Protocol

from ..diagnostics.source import Span
from ..drafting.model import Draft, Edge
from ..measure.tolerance import Number
from .model import Template


class Need(Protocol):
    """Pieces of one shape from one fabric; see `quilt.model.Need`."""

    @property
    def fabric(self) -> str:
        """The fabric's name."""

    @property
    def part(self) -> str:
        """Where the pieces belong: 'blocks', 'setting', 'sashing', 'posts', 'border'."""

    @property
    def what(self) -> str:
        """The pieces' name: 'blade', 'border strip'."""

    @property
    def outline(self) -> tuple[Edge, ...]:
        """The finished shape, clockwise, straight of grain up and down."""

    @property
    def allowances(self) -> tuple[Fraction, ...]:
        """Of each edge, in inches."""

    @property
    def count(self) -> int:
        """How many as drawn."""

    @property
    def reversed(self) -> int:
        """How many mirror-wise."""

    @property
    def reversible(self) -> bool:
        """Whether either side of the template may be up."""

    @property
    def template(self) -> str:
        """'Tidewater Vane A', or ''."""

    @property
    def block(self) -> int | None:
        """Index of its block."""

    @property
    def label(self) -> str:
        """The template's letter."""

    @property
    def unjoined(self) -> bool:
        """Whether it must be of one length."""


class Scrap(Protocol):
    """A piece of cloth of given size: `width` across the grain, `height` along it."""

    @property
    def width(self) -> Fraction:
        """Inches across."""

    @property
    def height(self) -> Fraction:
        """Inches along the selvage."""

    @property
    def fat_quarter(self) -> bool:
        """Whether it is sold as one."""


class Fabric(Protocol):
    """One cloth; without scraps it comes off the bolt."""

    @property
    def name(self) -> str:
        """The writer's word for it."""

    @property
    def usable_width(self) -> Fraction:
        """Inches across the bolt."""

    @property
    def shrinkage(self) -> Fraction:
        """Share lost in washing."""

    @property
    def one_way(self) -> bool:
        """Pieces may not be turned at all."""

    @property
    def striped(self) -> bool:
        """Pieces may not be turned across."""

    @property
    def scraps(self) -> Sequence[Scrap]:
        """The pieces of it there are, if it is not cut from the bolt."""

    @property
    def origin(self) -> Span | None:
        """The writer's words."""


class BindingNeed(Protocol):
    """Binding: strips of a cut width, joined to a length."""

    @property
    def fabric(self) -> str:
        """The fabric's name."""

    @property
    def strip_width(self) -> Fraction:
        """As cut."""

    @property
    def length(self) -> Number:
        """Of joined strip."""

    @property
    def bias(self) -> bool:
        """Whether it is cut on the bias."""


class BackingNeed(Protocol):
    """The back, joined from panels."""

    @property
    def fabric(self) -> str:
        """The fabric's name."""

    @property
    def width(self) -> Number:
        """Inches across."""

    @property
    def height(self) -> Number:
        """Inches down."""


class Block(Protocol):
    """A block at the size the quilt uses, with its templates."""

    @property
    def draft(self) -> Draft:
        """The drafted block."""

    @property
    def templates(self) -> tuple[Template, ...]:
        """Its templates."""


class PlacedBlock(Protocol):
    """One use of a block."""

    @property
    def block(self) -> int:
        """Index of the block."""

    @property
    def fabrics(self) -> tuple[tuple[str, str], ...]:
        """Role to fabric."""


class Quilt(Protocol):
    """What planning reads of a quilt."""

    @property
    def blocks(self) -> Sequence[Block]:
        """The blocks, sized."""

    @property
    def placed(self) -> Sequence[PlacedBlock]:
        """Every use of them."""

    @property
    def fabrics(self) -> Sequence[Fabric]:
        """In order of mention."""

    @property
    def needs(self) -> Sequence[Need]:
        """Everything the top is cut from."""

    @property
    def binding(self) -> BindingNeed | None:
        """Its binding."""

    @property
    def backing(self) -> BackingNeed | None:
        """Its back."""
