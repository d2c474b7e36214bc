"""What sewing again from the printed numbers proved."""

from __future__ import annotations

from ...sewing.model import Proof
from ..phrases import count_of


def proof_text(proof: Proof) -> str:
    """`24 pieces, 23 seams, closes exactly`."""
    return f"{count_of(proof.pieces, 'piece')}, {count_of(proof.seams, 'seam')}, closes exactly"
