"""What two drafts have in common, for other programs. Lengths are inches."""

from __future__ import annotations

from ... import __version__
from ...cutting.comparison import Comparison, Match, Side
from ...cutting.model import Template
from ...drafting.fingerprint import fingerprint_of
from .as_json import Record, number


def _counts(as_drawn: int, turned: int) -> Record:
    """How many are cut, in the words of every list: as drawn, reversed, and both together."""
    return {"as_drawn": as_drawn, "reversed": turned, "in_all": as_drawn + turned}


def comparison_record(comparison: Comparison) -> Record:
    """The comparison for other programs."""
    return {
        "old": _side_record(comparison.old),
        "new": _side_record(comparison.new),
        "redrawn": comparison.redrawn,
        "unversioned": comparison.unversioned,
        "distance": number(comparison.distance),
        "templates": [_match_record(each) for each in comparison.matches],
    }


def comparisons_record(comparisons: list[Comparison], only_old: list[str], only_new: list[str]) -> Record:
    """All comparisons of a run, and the titles that one side alone has."""
    return {
        "piecewright": __version__,
        "comparisons": [comparison_record(each) for each in comparisons],
        "only_old": only_old,
        "only_new": only_new,
    }


def _side_record(side: Side) -> Record:
    draft = side.draft
    return {
        "title": draft.title,
        "version": draft.version,
        "fingerprint": fingerprint_of(draft),
        "finished": {"width": number(draft.width), "height": number(draft.height)},
    }


def _match_record(match: Match) -> Record:
    return {
        "kind": match.kind,
        "old": _template_record(match.old),
        "new": _template_record(match.new),
        "mirrored": match.mirrored,
        "trimmed": match.trimmed,
        "distance": number(match.distance),
    }


def _template_record(template: Template | None) -> Record | None:
    if template is None:
        return None
    return {
        "label": template.label,
        "cut": template.cut_count,
        "cut_reversed": template.reversed_count,
        **_counts(template.cut_count, template.reversed_count),
    }
