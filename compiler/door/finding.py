"""The blocks on the shelves, by name and by what they are."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Any, Final

from ..diagnostics.visible import accents_joined
from ..failures import WrongUse
from ..measure.length import UNITS, exact_number
from ..searching.block_facts import METHODS, SYMMETRIES, BlockFacts, record_of
from ..searching.finding import Range, Wanted
from ..words.commands import asked
from .choices import LONGEST
from .compiling import FolderShelf

if TYPE_CHECKING:
    from ..shelves.indexing import Indexed, Shelved

__all__ = ["METHODS", "SYMMETRIES", "Indexed", "Shelved"]

BOUND: Final = re.compile(r"(\d+(?:\.\d+)?|\d+/\d+|\d+ \d+/\d+)(?: ?([a-z]+))?")
BETWEEN: Final = ".."
GRID: Final = re.compile(r"(\d{1,3}) ?x ?(\d{1,3})")
ANGLE_UNITS: Final = {"": Fraction(1), "deg": Fraction(1)}


def wanted_of(words: Sequence[str], conditions: Mapping[str, Any]) -> Wanted:
    """What is asked for; conditions that are None leave their defaults."""
    given = {name: value for name, value in conditions.items() if value is not None}
    return Wanted(tuple(map(accents_joined, words)), **given)


def indexed_of(shelf: FolderShelf, doing: Callable[[str], None] = lambda what: None) -> Indexed:
    """Everything on the shelves; `doing` is told what is being done."""
    from ..shelves.indexing import index_shelves
    from ..shelves.kept import open_kept

    return index_shelves(shelf, open_kept(), doing)


def found_in(indexed: Indexed, wanted: Wanted) -> list[Shelved]:
    """The blocks of which all holds that is asked."""
    return [each for each in indexed.blocks if wanted.holds(each.facts)]


def found_told(found: Sequence[Shelved], indexed: Indexed, form: str) -> str:
    """What was found, as a 'table' or as 'json'."""
    if form == "json":
        from json import dumps

        return dumps(found_record(found, indexed), indent=2, ensure_ascii=False)
    from ..searching.block_facts import shared_names
    from ..sheets.reports.find_table import table_of
    from ..words.pages.finding import count_words, shared_words

    facts = [each.facts for each in found]
    standing = [(each.file, use_line(each.facts)) for each in found]
    lines = table_of(facts, standing) if facts else []
    shared = shared_names(each.facts for each in indexed.blocks)
    titles = {each.title for each in facts}
    told = {name: of for name, of in shared.items() if titles & set(of)}
    lines += ["", *shared_words(told)] if told else []
    return "\n".join(
        [*lines, "", count_words(len(found), len(indexed.blocks))]
        if lines
        else [count_words(0, len(indexed.blocks))]
    )


def found_record(found: Sequence[Shelved], indexed: Indexed) -> dict[str, Any]:
    """What was found, for other programs."""
    from ..searching.block_facts import shared_names

    return {
        "shelves": [
            {"title": title, "folder": folder, "note": note} for title, folder, note in indexed.shelves
        ],
        "blocks": [
            {
                **block_record(each.facts),
                "shelf": each.shelf,
                "file": each.file,
                "line": each.line,
                "use": use_line(each.facts),
            }
            for each in found
        ],
        "shared_names": {
            name: list(titles) for name, titles in shared_names(each.facts for each in indexed.blocks).items()
        },
    }


def block_record(facts: BlockFacts) -> dict[str, Any]:
    """The block for other programs: lengths in inches."""
    told = record_of(facts)
    grid = {"across": told.pop("across"), "down": told.pop("down")}
    finished = {"width": told.pop("width"), "height": told.pop("height")}
    symmetry = {"turns": told.pop("turns"), "mirror": told.pop("mirrors")}
    return {**told, "grid": grid, "finished": finished, "symmetry": symmetry}


def use_line(facts: BlockFacts) -> str:
    """`use "Ohio Star" version 1 as ohio-star`: what a block or a quilt says to use the block."""
    from ..words.pages.finding import use_words
    from .naming import alias_of

    return use_words(facts.title, facts.version, alias_of(facts.title))


def counts_of(value: str) -> Range:
    """How many: `5..20`, `..20` or `9`."""
    return range_of(value, {}, asked.COUNTS)


def sizes_of(value: str) -> Range:
    """Inches: `6in..12in`."""
    return range_of(value, UNITS, asked.SIZES)


def angles_of(value: str) -> Range:
    """Degrees: `30deg..`, `30..60`."""
    return range_of(value, ANGLE_UNITS, asked.ANGLES)


def range_of(value: str, units: Mapping[str, Fraction], example: str) -> Range:
    """A number, or two parted by `..`, either left out, both included. `units`: what each may bear, and its
    worth."""
    first, between, last = value.strip().partition(BETWEEN)
    least = _bound(first.strip(), units)
    most = _bound(last.strip(), units) if between else least
    unread = (least is None and first.strip()) or (most is None and between and last.strip())
    if unread or (least is None and most is None):
        raise WrongUse(asked.no_range(value[:LONGEST], example))
    if least is not None and most is not None and least > most:
        raise WrongUse(asked.no_range(value[:LONGEST], example))
    return Range(least, most)


def _bound(text: str, units: Mapping[str, Fraction]) -> Fraction | None:
    """One bound; None where it is left out, or cannot be read."""
    found = BOUND.fullmatch(text) if text and len(text) <= LONGEST else None
    number = exact_number(found[1]) if found else None
    unit = (found[2] or "") if found else ""
    if number is None or (unit not in units if units else unit):
        return None
    return number * units.get(unit, Fraction(1))


def grid_of(value: str) -> tuple[int, int]:
    """A grid, `4x4`: the squares across and down."""
    found = GRID.fullmatch(value.strip())
    if found is None:
        raise WrongUse(asked.no_grid(value[:LONGEST]))
    return int(found[1]), int(found[2])
