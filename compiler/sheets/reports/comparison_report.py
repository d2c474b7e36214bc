"""What two drafts have in common, in words and as JSON. Lengths are inches."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from ... import __version__
from ...cutting.comparison import CUT_ALIKE, Comparison, Match, Side
from ...cutting.model import Template
from ...drafting.fingerprint import fingerprint_of
from ...measure.marks import nearest_mark
from ...measure.tolerance import near
from ...words.numbers import ruler_text
from .report_numbers import Record, counts, number

FINEST: Final = Fraction(1, 32)
"""Inches: finer than this nobody measures plastic."""


def comparison_text(comparison: Comparison) -> str:
    """The comparison for people: a head, a line for each template, and how far lines moved."""
    old, new = comparison.old.draft, comparison.new.draft
    renamed = "" if old.title == new.title else f"{old.title}, "
    head = f"{new.title}, version {new.version}, beside {renamed}version {old.version}"
    return "\n".join((head, "=" * len(head), *verdict_lines(comparison)))


def verdict_lines(comparison: Comparison) -> list[str]:
    """What became of every template, then of the drafting."""
    old, new = comparison.old.draft, comparison.new.draft
    sizes = [f"{ruler_text(each.width)} x {ruler_text(each.height)}" for each in (old, new)]
    lines = [match_line(each) for each in comparison.matches]
    if sizes[0] != sizes[1]:
        lines.append(f"The block is {sizes[1]} finished; it was {sizes[0]}.")
    if comparison.distance > CUT_ALIKE:
        lines.append(f"A line lies up to {apart(comparison.distance)} from where it was.")
    else:
        lines.append("Every line lies where it lay.")
    return lines


def match_line(match: Match) -> str:
    """What became of one template."""
    old, new = match.old, match.new
    if new is None:
        assert old is not None, "a match has one side at least"
        return f"Old {old.label}: no longer used."
    if old is None:
        return f"{new.label}: new; cut {counted(new)}."
    over = ", turned over" if match.mirrored else ""
    was = "keep your" if old.label == new.label else "keep your old"
    if match.kind == "same":
        return f"{new.label}: {was} {old.label}{over}; cut {counted(new)}."
    if match.kind == "count":
        return f"{new.label}: {was} {old.label}{over}; cut {counted(new)}, where it was {counted(old)}."
    if match.trimmed:
        return f"{new.label}: the old {old.label} serves{over}; only its points are trimmed otherwise."
    if match.distance <= CUT_ALIKE:
        return f"{new.label}: make it anew; the old {old.label} has other seam allowances."
    return f"{new.label}: make it anew; it lies up to {apart(match.distance)} from the old {old.label}."


def counted(template: Template) -> str:
    """`4`, or `4 and 4 reversed`."""
    reversed_ = f"{template.reversed_count} reversed" if template.reversed_count else ""
    plain = str(template.cut_count) if template.cut_count or not reversed_ else ""
    return " and ".join(each for each in (plain, reversed_) if each)


def apart(distance: float) -> str:
    """A distance to the nearest 1/32in: `1/4in`, `about 7/32in`, `less than 1/32in`."""
    mark = nearest_mark(distance, FINEST)
    if near(distance, mark, CUT_ALIKE):
        return ruler_text(mark)
    return f"about {ruler_text(mark)}" if mark else f"less than {ruler_text(FINEST)}"


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
        **counts(template.cut_count, template.reversed_count),
    }
