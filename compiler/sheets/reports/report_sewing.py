"""What is told of sewing is told of this: a drafted block with how it goes together."""

from __future__ import annotations

from typing import Protocol

from ...cutting.model import Template
from ...drafting.model import Draft
from ...sewing.model import Assembly, Proof


class Sewn(Protocol):
    """A drafted block with how it goes together."""

    @property
    def draft(self) -> Draft:
        """The drafted block."""
        ...

    @property
    def templates(self) -> tuple[Template, ...]:
        """Its templates."""
        ...

    @property
    def assembly(self) -> Assembly:
        """Its order of sewing."""
        ...

    @property
    def proof(self) -> Proof:
        """What sewing it again found."""
        ...
