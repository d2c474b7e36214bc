"""What is told of locks: damage, uses that they lack, outlines that changed, what an update brings."""

from __future__ import annotations

from typing import Final, Literal

from ...diagnostics.diagnostic import Diagnostic, error, warning
from ...diagnostics.source import Span
from ..say import Say
from .files import NOT_OPENED
from .message import message

LockDamage = Literal[
    "larger",
    "pins",
    "deep",
    "not-text",
    "not-json",
    "number",
    "key",
    "half-letters",
    "changed",
    "other",
    "pin-missing",
]
"""What is wrong with a lock."""

DAMAGE: Final[dict[LockDamage, str]] = {
    "larger": "it is larger than any",
    "pins": "it pins more than {:,} blocks",
    "deep": "it is nested too deep",
    "not-text": "it is not text",
    "not-json": "line {} is not JSON",
    "number": "a number in it is longer than any",
    "key": "its `{}` is missing or is not what it should be",
    "half-letters": "the text of `{}` is no text",
    "changed": "the text of `{}` was changed by hand",
    "other": "the text of `{}` is not that block's",
    "pin-missing": "a block that it names is not there",
}


@message
def lock_damaged(say: Say, name: str, damage: LockDamage, of: str | int = "") -> Diagnostic:
    """A lock that cannot be read, or that somebody edited. `of`: the line, the key, the block's title, or
    the most blocks there may be."""
    return error(
        "lock-damaged",
        f"The lock file is damaged: {DAMAGE[damage].format(of)}.",
        Span(name, 0, 0),
        help="Take it from your backup, or delete it and pin anew with `piecewright lock`.",
    )


@message
def lock_newer(say: Say, name: str) -> Diagnostic:
    """A lock of a form that is not known yet."""
    return error(
        "lock-newer",
        "A newer Piecewright made this lock file.",
        Span(name, 0, 0),
        help="Build with that version, or delete the file and pin today's blocks.",
    )


@message
def lock_unreadable(say: Say, name: str, reason: str) -> Diagnostic:
    """The system will not let us read a lock, for a reason in its own words."""
    return error(
        "lock-unreadable",
        f"The lock file cannot be read: {reason or NOT_OPENED}.",
        Span(name, 0, 0),
        help="Look at its permissions: without it other blocks may be taken than were pinned.",
    )


@message
def lock_disagrees(say: Say, name: str, title: str, version: int) -> Diagnostic:
    """The shelf's block has the pinned one's version and other outlines."""
    return error(
        "lock-disagrees",
        f"`{title}` version {version} has other outlines on the shelf than in the lock.",
        Span(name, 0, 0),
        help="Its outlines changed and its version did not. Give the changed block a new version.",
    )


@message
def lock_lacks(say: Say, span: Span, name: str, title: str, version: int) -> Diagnostic:
    """A `use` written since the file was locked."""
    file = name.replace("\\", "/").rpartition("/")[2]
    return warning(
        "lock-lacks",
        f"`{title}` version {version} is not pinned in `{file}`.",
        span,
        help="The shelf's was taken. `piecewright lock` pins it.",
    )


@message
def lock_drafts_otherwise(say: Say, span: Span, title: str, version: int) -> Diagnostic:
    """The pinned text drafts to other outlines than when it was pinned: the compiler has changed."""
    return warning(
        "lock-drafts-otherwise",
        f"`{title}` version {version} drafts otherwise than when it was pinned.",
        span,
        "the text is the same, its outlines are not",
        help="Its templates may not fit pieces that are cut already. Compare before you sew on.",
    )
