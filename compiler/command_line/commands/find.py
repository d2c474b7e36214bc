"""`piecewright find`: the blocks on the shelves, by name and by what they are."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any, Final

import click

from ...diagnostics.visible import accents_joined
from ...words.phrases import count_of
from ..choices import ListChoice, open_shelf, shelf_option
from ..console import CLEAN, COMPLAINED, complain, say, show_diagnostics
from ..ranges import ANGLES, COUNTS, SIZES, GridChoice

if TYPE_CHECKING:
    from ...sheets.finding import Wanted
    from ..shelves.indexing import Indexed, Shelved

METHODS: Final = ("rotary", "foundation")
SYMMETRIES: Final = ("quarter-turn", "half-turn", "third-turn", "mirror", "none")
FAULTS_TOLD: Final = 5  # files with mistakes that are named; more are counted

EXAMPLES: Final = """
\b
Examples:
  piecewright find                              every block on the shelves
  piecewright find star                         every block with a name in which a word begins so
  piecewright find --family nine-patch --pieces ..20 --methods rotary
  piecewright find --grid 4x4 --smallest-angle 45.. --symmetry quarter-turn,mirror
  piecewright find --size 6in..12in --format json
"""

Decorated = Callable[..., Any]


def condition_options(command: Decorated) -> Decorated:
    """What blocks are told by. All that is given must hold."""
    for option in (
        click.option(
            "--symmetry",
            "symmetries",
            type=ListChoice(SYMMETRIES),
            default=(),
            help="How it looks the same again, fabrics and all; several with commas.",
        ),
        click.option(
            "--methods",
            type=ListChoice(METHODS),
            default=(),
            help="Every template by the ruler; on paper foundations; both with a comma.",
        ),
        click.option("--size", type=SIZES, metavar="RANGE", help="Its longer side as written: 6in..12in."),
        click.option(
            "--smallest-angle", type=ANGLES, metavar="RANGE", help="Of its sharpest corner, in degrees: 30.."
        ),
        click.option("--templates", type=COUNTS, metavar="RANGE", help="How many templates: ..4"),
        click.option("--pieces", type=COUNTS, metavar="RANGE", help="How many pieces: 5..20"),
        click.option("--grid", type=GridChoice(), metavar="ACROSSxDOWN", help="Its grid: 4x4"),
        click.option(
            "--family",
            "families",
            multiple=True,
            metavar="NAME",
            help="Its family: four-patch, basket ... Repeatable: any of them.",
        ),
    ):
        command = option(command)
    return command


@click.command("find", short_help="Find blocks on the shelves.", epilog=EXAMPLES)
@click.argument("words", nargs=-1, metavar="[WORD...]")
@condition_options
@click.option(
    "--format",
    "form",
    type=click.Choice(["table", "json"]),
    default="table",
    show_default=True,
    help="A table for people, or JSON for other programs.",
)
@shelf_option
def find(words: tuple[str, ...], form: str, shelves: tuple[str, ...], **conditions: Any) -> int:
    """Find blocks on your shelves, those of PIECEWRIGHT_SHELVES, and in the library that ships.

    Every WORD must begin a word of one of the block's names. One block may have several names, and one name
    may be borne by several blocks: both are told. The first search of a large shelf takes a while.
    """
    indexed = open_index(shelves)
    wanted = wanted_of(words, conditions)
    found = [each for each in indexed.blocks if wanted.holds(each.facts)]
    if form == "json":
        from json import dumps

        say(dumps(found_record(found, indexed), indent=2, ensure_ascii=False))
    else:
        _show_table(found, indexed)
    return tell_faults(indexed)


def wanted_of(words: Sequence[str], conditions: dict[str, Any]) -> Wanted:
    """What the options ask for; those that were not given leave their defaults."""
    from ...sheets.finding import Wanted

    given = {name: value for name, value in conditions.items() if value is not None}
    return Wanted(tuple(map(accents_joined, words)), **given)


def open_index(shelves: tuple[str, ...]) -> Indexed:
    """Everything on the shelves given, on those of the environment, and in the library."""
    from ..shelves.indexing import index_shelves
    from ..shelves.kept import open_kept

    return index_shelves(open_shelf(shelves), open_kept())


def _show_table(found: Sequence[Shelved], indexed: Indexed) -> None:
    from ...sheets.block_facts import shared_names
    from ...sheets.reports.find_table import count_text, shared_text, table_of

    facts = [each.facts for each in found]
    lines = table_of(facts) if facts else []
    shared = shared_names(each.facts for each in indexed.blocks)
    titles = {each.title for each in facts}
    told = {name: of for name, of in shared.items() if titles & set(of)}
    lines += ["", *shared_text(told)] if told else []
    say(
        "\n".join(
            [*lines, "", count_text(len(found), len(indexed.blocks))]
            if lines
            else [count_text(0, len(indexed.blocks))]
        )
    )


def found_record(found: Sequence[Shelved], indexed: Indexed) -> dict[str, Any]:
    """What was found, for other programs."""
    from ...sheets.block_facts import shared_names
    from ...sheets.reports.find_table import block_record

    return {
        "shelves": [
            {"title": title, "folder": folder, "note": note} for title, folder, note in indexed.shelves
        ],
        "blocks": [
            {**block_record(each.facts), "shelf": each.shelf, "file": each.file, "line": each.line}
            for each in found
        ],
        "shared_names": {
            name: list(titles) for name, titles in shared_names(each.facts for each in indexed.blocks).items()
        },
    }


def tell_faults(indexed: Indexed) -> int:
    """What is wrong on the shelves, on standard error; the exit status."""
    from ..shelves.indexing import is_error

    for fault in indexed.faults[:FAULTS_TOLD]:
        complain(f"{fault.file}:{fault.line}: Left out, for it has a mistake: {fault.message}")
    more = len(indexed.faults) - FAULTS_TOLD
    if more > 0:
        complain(f"{count_of(more, 'more file')} left out: see 'piecewright check FOLDER'.")
    show_diagnostics(indexed.diagnostics, indexed.sources, err=True)
    return COMPLAINED if is_error(indexed.diagnostics) else CLEAN
