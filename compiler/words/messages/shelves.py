"""What is told of shelves: manifests, blocks that stand twice, files with mistakes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, Literal

from ...diagnostics.diagnostic import Diagnostic, error, note, warning
from ...diagnostics.source import Span
from ...diagnostics.visible import shortened
from ..phrases import did_you_mean
from ..say import Say
from .files import NOT_OPENED
from .message import message

LONGEST_KEY: Final = 40  # characters of a key in a message


TomlDamage = Literal["unreadable", "larger", "line", "not-text", "not-toml", "deep", "number"]
"""What keeps a file from being TOML."""

ManifestDamage = TomlDamage | Literal["not-names", "not-quoted"]
"""What is wrong with a manifest."""

DAMAGE: Final[dict[ManifestDamage, str]] = {
    "unreadable": "{}",
    "larger": "it is larger than {:,} bytes",
    "line": "this line has more than {:,} characters",
    "not-text": "it is not text in UTF-8",
    "not-toml": "{}",
    "deep": "its brackets stand too deep in one another",
    "number": "a number in it is longer than any",
    "not-names": "`{}` is a list of names in quotes",
    "not-quoted": "`{}` is a text in quotes",
}


def damage_words(damage: ManifestDamage, of: str | int) -> str:
    """Why a file cannot be read, within a sentence."""
    reason = DAMAGE[damage].format(of) or NOT_OPENED
    return reason[:1].lower() + reason[1:]


@message
def manifest_damaged(say: Say, span: Span, damage: ManifestDamage, of: str | int = "") -> Diagnostic:
    """A manifest that says nothing we understand. `of`: the key, the most there may be, or why, in the words
    of the system or of the library that reads it."""
    return error(
        "manifest-damaged",
        f"This shelf's manifest cannot be read: {damage_words(damage, of)}.",
        span,
        help='It is TOML, as in `title = "Harbour guild"`; until it is mended, '
        "nobody knows what is on the shelf.",
    )


@message
def manifest_key_unknown(say: Say, span: Span, key: str, known: Sequence[str]) -> Diagnostic:
    """A line that no manifest has."""
    return error(
        "manifest-key-unknown",
        f"A shelf's manifest has no `{shortened(key, LONGEST_KEY)}`.",
        span,
        help=did_you_mean(key[:LONGEST_KEY], known) or "It has `title`, `note` and `leave-out`.",
    )


@message
def on_shelf_twice(say: Say, file: str, title: str, version: int, first: str) -> Diagnostic:
    """Two files of a shelf hold a block of one title and version."""
    return warning(
        "block-on-shelf-twice",
        f"`{title}` version {version} stands on this shelf already, in `{first}`.",
        Span(file, 0, 0),
        help="Give one of them another version, or take it off the shelf.",
    )


@message
def block_twice_on_shelf(
    say: Say, span: Span, title: str, version: int, files: tuple[str, str], differing: bool
) -> Diagnostic:
    """Two files of one shelf hold a block of the title and version used; whether their outlines differ."""
    told = f'"{title[:60]}" version {version} stands in `{files[0]}` and in `{files[1]}`'
    if differing:
        return error(
            "block-drawn-twice",
            f"{told}, with other outlines: their templates would bear one name and not fit each other.",
            span,
            help="Give one of the two another version or another title.",
        )
    return warning(
        "block-on-shelf-twice",
        f"{told}, drawn alike: the first is taken.",
        span,
        help="Take one of the two away, so that a change in one cannot be missed in the other.",
    )


@message
def block_hides_another(say: Say, span: Span, title: str, version: int, files: tuple[str, str]) -> Diagnostic:
    """A block on a farther shelf has the same title and version and other outlines."""
    return warning(
        "block-hides-another",
        f'"{title[:60]}" version {version} is taken from `{files[0]}`; `{files[1]}` has one of that '
        f"title and version with other outlines.",
        span,
        help="Do not mix their templates. Give yours a title or a version of its own.",
    )


@message
def shelf_file_faulty(say: Say, fault: Diagnostic) -> Diagnostic:
    """A file on a shelf holds a title that was asked for, and a mistake that keeps it from being used."""
    place = fault.primary.span
    return note(
        "shelf-file-faulty",
        f"`{place.source}` may have the block asked for, but has a mistake.",
        place,
        fault.said(say).message,
        help=f"See `piecewright check {place.source}`.",
    )
