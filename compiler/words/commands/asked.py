"""What is told of a choice that there is not, with those there are."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import Final

from ...diagnostics.visible import shortened, visible
from ..phrases import one_of
from ..say import Say

LENGTHS: Final = "0.97in or 2.46cm"
WIDTHS: Final = "9in or 24cm"
MARGINS: Final = "5% or 3in"
COUNTS: Final = "5..20, ..20 or 9"
SIZES: Final = "6in..12in"
ANGLES: Final = "30deg.. or 30..60"
"""How what is asked for is written."""

TITLE_ROOM: Final = 60  # characters of a title in a message


def named(title: str) -> str:
    """A title in a message: safe to show, and of bounded length."""
    return visible(shortened(title, TITLE_ROOM))


def block_called(title: str, source: str = "") -> str:
    """A block as the subject of a message; with its file, where that is told."""
    return f"{source}{', ' if source else ''}block '{named(title)}'"


def quilt_called(title: str, source: str = "") -> str:
    """A quilt, likewise."""
    return f"{source}{', ' if source else ''}quilt '{named(title)}'"


def not_one_of(value: str, known: Iterable[str]) -> str:
    """A word that is none of a few."""
    return f"'{value}' is not one of {', '.join(known)}."


def choice_unknown(name: str, known: Iterable[str]) -> str:
    """Something chosen that cannot be chosen."""
    return f"There is no choice '{name}'; there are {', '.join(known)}."


def condition_unknown(name: str, known: Iterable[str]) -> str:
    """Something looked for that blocks are not told by."""
    return f"There is no condition '{name}'; there are {', '.join(known)}."


def check_unknown(name: str, known: Iterable[str]) -> str:
    """A check that there is not."""
    return f"There is no check '{name}'; there are {', '.join(known)}."


def blocks_no_list() -> str:
    """One title where several go."""
    return "'blocks' is a list of titles."


def no_length(value: str, examples: str) -> str:
    """Words that are no length."""
    return f"'{value}' is not a length. Write it with its unit: {examples}."


def no_range(value: str, example: str) -> str:
    """Words that are no range."""
    return f"'{value}' is not a range. Write it as {example}."


def no_grid(value: str) -> str:
    """Words that are no grid."""
    return f"'{value}' is not a grid. Write it as 4x4."


def margin_too_large(say: Say, share: Fraction, length: Fraction) -> str:
    """More cloth over than the plan takes."""
    return f"A margin is at most {round(share * 100)}%, or {say.length(length)}."


def measured_too_far() -> str:
    """No printer is that far out."""
    return (
        "The square should measure near 1in (2.54cm), the bar near 5cm. A print that is further out was "
        "fitted to the page: print it again at actual size, 100%."
    )


def which_mark(shares: Mapping[str, Fraction], marks: Iterable[str]) -> str:
    """A length that either mark may have had."""
    said = ", ".join(f"the {each} would be at {round(share * 100)}%" for each, share in shares.items())
    return (
        f"Which mark was measured, the 1in square or the 5cm bar? For this length {said}. "
        f"Measure again, or say which: {' or '.join(f'{each}=LENGTH' for each in marks)}."
    )


def no_such_block(title: str, near: Sequence[str]) -> str:
    """A title that no block has, and the nearest that one has."""
    meant = f" Did you mean '{named(near[0])}'?" if near else ""
    return f"There is no block '{named(title)}' in what was read.{meant}"


def no_block() -> str:
    """A file of quilts alone."""
    return "There is no block in what was read."


def nothing_compiled() -> str:
    """Nothing to write."""
    return "There is neither a block nor a quilt in what was compiled."


def no_such_part(of_block: Iterable[str], of_quilt: Iterable[str]) -> str:
    """Parts of a quilt asked of a block."""
    return f"A block has {', '.join(of_block)}; only for quilts are {', '.join(of_quilt)}."


def parts_of_everything(suffix: str) -> str:
    """Parts asked of a kind of file that has no parts."""
    return f"Parts are for sheets; '{suffix}' has everything."


def for_booklets(kind: str) -> str:
    """A format of booklets asked for and no booklet."""
    return f"{kind} is for booklets: ask for one."


def dpi_out_of_bounds(least: int, most: int) -> str:
    """Too coarse or too fine a picture."""
    return f"A picture has from {least} to {most} dots to the inch."


def block_out_of_bounds(say: Say, least: Fraction, most: Fraction) -> str:
    """A size that no block has."""
    return f"A block is from {say.length(least)} to {say.length(most)} wide."


def picture_out_of_bounds(say: Say, least: Fraction, most: Fraction) -> str:
    """A picture that would be too small to see, or too large to hold."""
    return f"A picture is from {say.length(least)} to {say.length(most)}."


def no_maker(most: int) -> str:
    """A name that cannot be printed on templates."""
    return f"A maker's name is printed on templates: one line of at most {most} letters."


def title_not_file(title: str) -> str:
    """A file where a block's title goes."""
    return f"'{named(title)}' is a file; name the block by its title."


def block_faulty(title: str, file: str) -> str:
    """A block with a mistake."""
    return f"'{named(title)}' has a mistake: see 'piecewright check {visible(file)}'."


def title_of_several(blocks: int) -> str:
    """One new title for several blocks."""
    return f"A new title is for one block, and {blocks} are resized: choose one with its own title first."


def draft_first(title: str) -> str:
    """A washed block cannot be resized."""
    return f"'{named(title)}' is a washed block: draft it first."


def name_shared(name: str, titles: Sequence[str]) -> str:
    """Another name that several blocks bear."""
    told = one_of([f"'{named(each)}'" for each in titles], "and")
    return f"'{named(name)}' is another name of {told}: name the one that is meant by its title."


def version_unknown(name: str, versions: Sequence[int]) -> str:
    """A title and version that no shelf has, and the versions there are."""
    known = one_of([str(each) for each in versions], "and")
    there = f"There {'is version' if len(versions) == 1 else 'are versions'} {known}."
    there = there if versions else "There is no block of that title."
    return f"'{visible(name)}' is neither a file nor on a shelf. {there}"


def no_revisions_of_standard_input() -> str:
    """git keeps files."""
    return "git knows files, not standard input."


def only_in(title: str, side: str) -> str:
    """A title that the 'old' or the 'new' side alone has."""
    return f"{title}: only in the {side} one."
