"""The words on a template and in the table of templates: how many to cut, and which grain is whose."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...cutting.model import FabricCount, GrainArrow, Template
from ...measure.tolerance import near
from ..say import Say

THIS_SIDE_UP: Final = "this side up"
TABLE_HEADS: Final = ("template", "cut", "finished, over all")


def counted(count: FabricCount) -> tuple[str, ...]:
    """How many of one fabric: `4 of dark` and, where some are turned over, `and 4 reversed`; or `4 of dark,
    reversed`. Nothing where none is cut."""
    if count.cut and count.reversed:
        return f"{count.cut} of {count.fabric}", f"and {count.reversed} reversed"
    if count.cut:
        return (f"{count.cut} of {count.fabric}",)
    return (f"{count.reversed} of {count.fabric}, reversed",) if count.reversed else ()


def to_cut(template: Template) -> Iterator[str]:
    """`4 of dark and 4 reversed`, a line a fabric."""
    return (" ".join(said) for count in template.counts if (said := counted(count)))


def cut_words(template: Template) -> str:
    """`4 of dark and 4 reversed; 2 of light`."""
    return "; ".join(to_cut(template))


def cut_lines(template: Template) -> Iterator[str]:
    """`Cut 4 of dark`, `and 4 reversed`: the lines of a label."""
    for count in template.counts:
        for number, said in enumerate(counted(count)):
            yield said if number else f"Cut {said}"


def more_counts(number: int) -> str:
    """So many lines that the label has no room for."""
    return f"and {number} more: see the table"


def share_words(blocks: int) -> str:
    """`for one block of 4`: what its counts are for."""
    return f"for one block of {blocks}"


def size_words(say: Say, template: Template) -> str:
    """`6in · v2`, `6in x 9in · v2`."""
    width, height = template.block_width, template.block_height
    size = say.length(width) if near(width, height) else say.size(width, height)
    return f"{size} · v{template.version}"


def beside_words(template: Template) -> str:
    """All that stands beside a template too small for a label."""
    version = f"v{template.version}"
    return f"{template.label} · {cut_words(template)} · {template.block_title} · {version}"


def more_grains(number: int) -> str:
    """So many grain arrows that the label does not say whose each is."""
    return f"{number} arrows: see the table for their pieces"


def grain_words(number: int, grain: GrainArrow) -> str:
    """Which pieces one of several arrows is for: `arrow 2: pieces 7, 10–12`."""
    word = "piece" if len(grain.pieces) == 1 else "pieces"
    return f"arrow {number}: {word} {number_ranges(sorted(grain.pieces))}"


def too_small(pieces: Sequence[tuple[str, Sequence[int]]]) -> str:
    """Which pieces a drawing has no room to letter, by the labels of their templates."""
    told = "; ".join(f"{label} {number_ranges(numbers)}" for label, numbers in pieces)
    return f"Too small to letter, counted along the rows from the top left: {told}"


def number_ranges(numbers: Sequence[int]) -> str:
    """`1–4, 7, 9–12` for numbers in order."""
    runs = _runs(numbers)
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs)


def label_runs(labels: Sequence[str], numbers: Sequence[int]) -> str:
    """`A–C, F`: the labels of those numbers, neighbours run together."""
    return ", ".join(
        f"{labels[run[0]]}–{labels[run[-1]]}" if len(run) > 2 else ", ".join(labels[each] for each in run)
        for run in _runs(numbers)
    )


def _runs(numbers: Sequence[int]) -> list[list[int]]:
    """The numbers, neighbours together."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return runs
