"""What is told of a folder's settings file."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, Literal

from ...diagnostics.diagnostic import Diagnostic, error
from ...diagnostics.source import Span
from ...diagnostics.visible import shortened
from ..phrases import did_you_mean, one_of, quoted
from ..say import Say
from .files import NOT_OPENED
from .message import message

LONGEST_KEY: Final = 40  # characters of a key in a message

Unread = Literal[
    "unreadable", "too-large", "line-too-long", "not-text", "not-toml", "too-deep", "number-too-long"
]


@message
def settings_unread(say: Say, span: Span, kind: Unread, detail: str, most: int) -> Diagnostic:
    """No TOML; `detail`: as the system or the library that reads it puts it; `most`: what there may be."""
    why = {
        "unreadable": detail or NOT_OPENED,
        "too-large": f"it is larger than {most:,} bytes",
        "line-too-long": f"this line has more than {most:,} characters",
        "not-text": "it is not text in UTF-8",
        "not-toml": detail,
        "too-deep": "its brackets stand too deep in one another",
        "number-too-long": "a number in it is longer than any",
    }[kind]
    return error(
        "settings-damaged",
        f"The settings of this folder cannot be read: {why[:1].lower()}{why[1:]}.",
        span,
        help='Write a line a setting, as in `paper = "a4"`. Nothing is made until it is mended.',
    )


@message
def setting_unknown(say: Say, span: Span, key: str, known: Sequence[str]) -> Diagnostic:
    """A setting that there is not."""
    return error(
        "setting-unknown",
        f"There is no setting `{shortened(key, LONGEST_KEY)}`.",
        span,
        help=did_you_mean(key[:LONGEST_KEY], known) or f"There are {one_of(quoted(known), 'and')}.",
    )


@message
def setting_wrong(say: Say, span: Span, key: str, why: str) -> Diagnostic:
    """A value that the setting cannot have; `why`: as the option of that name says it."""
    return error(
        "setting-wrong", f"`{key}`: {why}", span, help="The option of that name takes the same words."
    )


@message
def setting_not_text(say: Say, span: Span, key: str, several: bool) -> Diagnostic:
    """A number, or a list, where a text in quotes goes; or a text where a list goes."""
    how = f'`{key} = ["folder"]`' if several else f'`{key} = "..."`'
    what = "a list of texts in quotes" if several else "a text in quotes"
    return error("setting-wrong", f"`{key}` is {what}.", span, help=f"Write {how}.")


@message
def setting_no_folder(say: Say, span: Span, folder: str) -> Diagnostic:
    """A shelf that is not there."""
    return error(
        "setting-wrong",
        f"There is no folder `{shortened(folder, LONGEST_KEY)}` to be a shelf.",
        span,
        help="Folders are told from the folder of the settings file.",
    )
