"""What is told of a folder's settings file."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ...diagnostics.diagnostic import Diagnostic, error
from ...diagnostics.source import Span
from ...diagnostics.visible import shortened
from ..phrases import did_you_mean, one_of, quoted
from ..say import Say
from .message import message
from .shelves import TomlDamage, damage_words

LONGEST_KEY: Final = 40  # characters of a key in a message


@message
def settings_damaged(say: Say, span: Span, damage: TomlDamage, of: str | int = "") -> Diagnostic:
    """No TOML; `of`: the most there may be, or why, in the words of the system or of the library that reads
    it."""
    return error(
        "settings-damaged",
        f"The settings of this folder cannot be read: {damage_words(damage, of)}.",
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
