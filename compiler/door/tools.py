"""What else may be asked: the house style, habits, another size, what changed, what is on shelves."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from typing import Any, Final, Literal, TypedDict, Unpack

from ..diagnostics.source import Source
from ..failures import WrongUse
from ..language.decode import read_source
from ..measure.record import record
from ..searching.block_facts import BlockFacts
from ..words.commands import asked
from .choices import all_among
from .comparing import compared, paired
from .compiling import compile_input, open_shelves
from .finding import (
    METHODS,
    SYMMETRIES,
    angles_of,
    counts_of,
    found_in,
    grid_of,
    indexed_of,
    sizes_of,
    wanted_of,
)
from .inputs import Input
from .linting import Linter, check_names
from .messages import CompileError, Message, message_of
from .resizing import faults_of, outermost, resized, width_of
from .rewriting import laid_out
from .work import Place, Work


class Conditions(TypedDict, total=False):
    """What blocks on shelves are told by. All that is given must hold, and all of it may be left out.

    `family`: one of these families. `grid`: '4x4'. `pieces`, `templates`: how many, '5..20', '..4', '9'.
    `size`: the longer side as written, '6in..12in'. `smallest_angle`: of the sharpest corner in degrees,
    '30..'. `methods`: 'rotary', 'foundation', or both. `symmetries`: 'quarter-turn', 'half-turn',
    'third-turn', 'mirror', 'none': all of these.
    """

    family: Sequence[str]
    grid: str
    pieces: str
    templates: str
    size: str
    smallest_angle: str
    methods: Sequence[str]
    symmetries: Sequence[str]


@record
class Found:
    """A block on a shelf: what it is found by, and where it stands."""

    facts: BlockFacts
    shelf: str
    file: str
    line: int


@record
class TemplateChange:
    """What became of a template, by its letters before and after: 'same', another 'count' of it is cut,
    'changed', 'new' or 'gone'. `mirrored`: the old one serves turned over. `distance`: inches that the
    farthest part of a changed sewing line lies from the old one; `trimmed`: only its points are cut
    otherwise."""

    kind: Literal["same", "count", "changed", "new", "gone"]
    old: str | None
    new: str | None
    mirrored: bool
    distance: float
    trimmed: bool


@record
class BlockChange:
    """What changed between two drafts of a block. `distance`: inches that the farthest line of one lies from
    all lines of the other. `unversioned`: an outline changed and the version did not."""

    title: str
    old_version: int
    new_version: int
    distance: float
    redrawn: bool
    unversioned: bool
    templates: tuple[TemplateChange, ...]


def format_text(text: str, name: str = "text") -> str:
    """The text in the house style. CompileError where it has a mistake."""
    read = read_source(name, text.encode("utf-8", "surrogatepass"))
    outcome = read.then(laid_out)
    if outcome.value is None:
        sources = {name: read.value or Source(name, "")}
        raise CompileError(tuple(message_of(each, sources) for each in outcome.diagnostics))
    return outcome.value


def lint_text(
    text: str,
    name: str = "text",
    *,
    shelves: Sequence[Place] = (),
    only: Sequence[str] = (),
    allow: Sequence[str] = (),
) -> tuple[Message, ...]:
    """What could be better in a text that has no error; its errors, where it has some. `only` names the
    checks to make, `allow` those not to make; ValueError where there is none of that name."""
    for each in (*only, *allow):
        if each not in check_names():
            raise WrongUse(asked.check_unknown(each[:40], check_names()))
    data = text.encode("utf-8", "surrogatepass")
    read = read_source(name, data)
    shelf = open_shelves(shelves)
    if read.value is None or read.failed:
        return tuple(message_of(each, {name: Source(name, "")}) for each in read.diagnostics)
    linter = Linter(shelf, tuple(only), tuple(allow))
    said, sources, _ = linter.said_of(Input(name, None, lambda: data), read.value)
    return tuple(message_of(each, {**sources, name: read.value}) for each in said)


def resize_text(
    text: str, to: str, name: str = "text", *, title: str | None = None, shelves: Sequence[Place] = ()
) -> str:
    """The text with its blocks drafted so wide, `9in`: all but those that others in it use, which fill their
    cells. Each is a new version, or has the title given. CompileError where it has an error, at its own size
    or at that; ValueError where `to` is no length from 1in to 120in, or there is no block."""
    width = width_of(to)
    data, shelf = text.encode("utf-8", "surrogatepass"), open_shelves(shelves)
    compiled = compile_input(Input(name, None, lambda: data), shelf)
    if not compiled.blocks and compiled.diagnostics:
        raise CompileError(tuple(message_of(each, compiled.sources) for each in compiled.diagnostics))
    blocks = outermost(compiled)
    if not blocks:
        raise WrongUse(asked.no_block())
    made = resized(compiled, blocks, width, shelf, title)
    source = Source(name, made)
    faults = faults_of(source, shelf)
    if faults:
        raise CompileError(tuple(message_of(each, {**shelf.sources, name: source}) for each in faults))
    return made


def compare_works(old: Work, new: Work) -> tuple[BlockChange, ...]:
    """What changed from one to the other, block by block: the newest version of each title that both have;
    where each has one block, those two."""
    pairs, _, _ = paired(old.own_blocks, new.own_blocks)
    return tuple(
        BlockChange(
            each.new.draft.title,
            each.old.draft.version,
            each.new.draft.version,
            each.distance,
            each.redrawn,
            each.unversioned,
            tuple(
                TemplateChange(
                    match.kind,
                    match.old.label if match.old else None,
                    match.new.label if match.new else None,
                    match.mirrored,
                    match.distance,
                    match.trimmed,
                )
                for match in each.matches
            ),
        )
        for each in compared(pairs)
    )


def find_blocks(
    *words: str, shelves: Sequence[Place] = (), **conditions: Unpack[Conditions]
) -> tuple[Found, ...]:
    """The blocks on the shelves and in the library that ships: every word begins a word of one of the
    block's names, and every condition holds. ValueError where a condition is none."""
    wanted = wanted_of(words, _understood(conditions))
    indexed = indexed_of(open_shelves(shelves))
    return tuple(Found(each.facts, each.shelf, each.file, each.line) for each in found_in(indexed, wanted))


def _understood(conditions: Conditions) -> dict[str, object]:
    for name in conditions:
        if name not in READERS:
            raise WrongUse(asked.condition_unknown(name[:40], READERS))
    given = conditions.items()
    return {"families" if name == "family" else name: READERS[name](value) for name, value in given}


READERS: Final[Mapping[str, Callable[[Any], object]]] = {
    "family": tuple,
    "grid": grid_of,
    "pieces": counts_of,
    "templates": counts_of,
    "size": sizes_of,
    "smallest_angle": angles_of,
    "methods": partial(all_among, known=METHODS),
    "symmetries": partial(all_among, known=SYMMETRIES),
}
"""What reads each of the conditions."""
