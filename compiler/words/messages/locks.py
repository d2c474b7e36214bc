"""What is told of locks: damage, uses that they lack, outlines that changed, what an update brings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...diagnostics.diagnostic import Diagnostic, error, warning
from ...diagnostics.source import Span
from ..say import Say
from .files import NOT_OPENED
from .message import message

if TYPE_CHECKING:
    from ...drafting.pinned import Change


def _damaged(name: str, what: str) -> Diagnostic:
    """A lock that cannot be read, or that somebody edited."""
    return error(
        "lock-damaged",
        f"The lock file is damaged: {what}.",
        Span(name, 0, 0),
        help="Take it from your backup, or delete it and pin anew with `piecewright lock`.",
    )


@message
def lock_too_large(say: Say, name: str) -> Diagnostic:
    """More bytes than any lock."""
    return _damaged(name, "it is larger than any")


@message
def lock_pins_too_many(say: Say, name: str, most: int) -> Diagnostic:
    """More blocks than any quilt uses."""
    return _damaged(name, f"it pins more than {most:,} blocks")


@message
def lock_too_deep(say: Say, name: str) -> Diagnostic:
    """Brackets within brackets."""
    return _damaged(name, "it is nested too deep")


@message
def lock_not_text(say: Say, name: str) -> Diagnostic:
    """Bytes that are not UTF-8."""
    return _damaged(name, "it is not text")


@message
def lock_not_json(say: Say, name: str, line: int) -> Diagnostic:
    """A line that JSON does not have."""
    return _damaged(name, f"line {line} is not JSON")


@message
def lock_number_too_long(say: Say, name: str) -> Diagnostic:
    """A number of thousands of digits."""
    return _damaged(name, "a number in it is longer than any")


@message
def lock_key_odd(say: Say, name: str, key: str) -> Diagnostic:
    """Something missing, or of another kind."""
    return _damaged(name, f"its `{key}` is missing or is not what it should be")


@message
def lock_half_letters(say: Say, name: str, title: str) -> Diagnostic:
    """A pinned text with letters that no file can hold."""
    return _damaged(name, f"the text of `{title}` is no text")


@message
def lock_text_changed(say: Say, name: str, title: str) -> Diagnostic:
    """A pinned text that somebody edited."""
    return _damaged(name, f"the text of `{title}` was changed by hand")


@message
def lock_text_other(say: Say, name: str, title: str) -> Diagnostic:
    """A pinned text of another block."""
    return _damaged(name, f"the text of `{title}` is not that block's")


@message
def lock_pin_missing(say: Say, name: str) -> Diagnostic:
    """A use of a block that is not among the pinned ones."""
    return _damaged(name, "a block that it names is not there")


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


def change_text(change: Change) -> str:
    """`Pair: version 2 in place of 1, other outlines`: what a `use` means in a newer lock."""
    old, new = change.old, change.new
    if old is None or new is None:
        pin, what = (new, "new") if new else (old, "no longer used")
        assert pin is not None, "a change has one side at least"
        return f"{pin.title}, version {pin.version}: {what}"
    outlines = "the same outlines" if old.fingerprint == new.fingerprint else "other outlines"
    if old.version == new.version:
        return f"{old.title}, version {old.version}: {outlines}, other words"
    return f"{old.title}: version {new.version} in place of {old.version}, {outlines}"
