"""What became of each template between two drafts of a block, and of its lines."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from ...cutting.comparison import CUT_ALIKE
from ...measure.marks import nearest_mark
from ...measure.tolerance import near

if TYPE_CHECKING:
    from ...cutting.comparison import Comparison, Match
    from ...cutting.model import Template
    from ..say import Say

FINEST: Final = Fraction(1, 32)
"""Inches: finer than this nobody measures plastic."""


def head_words(comparison: Comparison) -> str:
    """`Vane, version 2, beside version 1`."""
    old, new = comparison.old.draft, comparison.new.draft
    renamed = "" if old.title == new.title else f"{old.title}, "
    return f"{new.title}, version {new.version}, beside {renamed}version {old.version}"


def verdict_lines(say: Say, comparison: Comparison) -> list[str]:
    """What became of every template, then of the drafting."""
    old, new = comparison.old.draft, comparison.new.draft
    sizes = [say.size(each.width, each.height) for each in (old, new)]
    lines = [match_line(say, each) for each in comparison.matches]
    if sizes[0] != sizes[1]:
        lines.append(f"The block is {sizes[1]} finished; it was {sizes[0]}.")
    if comparison.distance > CUT_ALIKE:
        lines.append(f"A line lies up to {apart(say, comparison.distance)} from where it was.")
    else:
        lines.append("Every line lies where it lay.")
    return lines


def match_line(say: Say, match: Match) -> str:
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
    return f"{new.label}: make it anew; it lies up to {apart(say, match.distance)} from the old {old.label}."


def counted(template: Template) -> str:
    """`4`, or `4 and 4 reversed`."""
    reversed_ = f"{template.reversed_count} reversed" if template.reversed_count else ""
    plain = str(template.cut_count) if template.cut_count or not reversed_ else ""
    return " and ".join(each for each in (plain, reversed_) if each)


def apart(say: Say, distance: float) -> str:
    """A distance to the nearest 1/32in: `1/4in`, `about 7/32in`, `less than 1/32in`."""
    mark = nearest_mark(distance, FINEST)
    if near(distance, mark, CUT_ALIKE):
        return say.length(mark)
    return f"about {say.length(mark)}" if mark else f"less than {say.length(FINEST)}"
