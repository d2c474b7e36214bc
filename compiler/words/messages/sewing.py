"""What can be told about an order of sewing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...diagnostics.diagnostic import Diagnostic, error
from ...diagnostics.source import Span
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from ...drafting.model import Draft


@message
def does_not_sew(say: Say, draft: Draft, reason: str) -> Diagnostic:
    """The printed templates and steps, cut and sewn again, do not make the block: no sheet may leave."""
    return error(
        "block-does-not-sew",
        reason,
        draft.origin or Span("", 0, 0),
        "sewn again from what would be printed",
        help=f"This is a mistake in Piecewright, not in `{draft.title}`: nothing was printed.",
    )
