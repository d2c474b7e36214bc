"""The records of a whole file as `explain --format json` writes them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from ... import __version__
from ...cutting.plan_model import CuttingPlan
from ...quilt.model import Quilt
from .as_json import as_json
from .block import BlockRecord
from .quilt import QuiltRecord, numbers_of


def whole_report(blocks: Iterable[BlockRecord], quilts: Iterable[QuiltRecord]) -> dict[str, Any]:
    """The report on blocks and quilts; `quilts` only where there are some."""
    told = {"piecewright": __version__, "blocks": [as_json(each) for each in blocks]}
    found = [as_json(each) for each in quilts]
    return {**told, "quilts": found} if found else told


def quilt_report(quilt: Quilt, plan: CuttingPlan) -> dict[str, Any]:
    """What is cut, counted and bought for one quilt in one colourway."""
    told: dict[str, Any] = as_json(numbers_of(quilt, plan))
    return told
