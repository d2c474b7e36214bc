"""What two drafts have in common, in words."""

from __future__ import annotations

from ...cutting.comparison import Comparison
from ...words.say import INCHES
from ...words.work.comparison import head_words, verdict_lines


def comparison_text(comparison: Comparison) -> str:
    """The comparison for people: a head, a line for each template, and how far lines moved."""
    head = head_words(comparison)
    return "\n".join((head, "=" * len(head), *verdict_lines(INCHES, comparison)))
