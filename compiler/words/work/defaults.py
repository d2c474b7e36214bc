"""What was left unwritten, in words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from ...drafting.model import Default, DefaultKind
from ..numbers import number_text
from ..say import Say

WHAT: Final[Mapping[DefaultKind, str]] = {
    "version": "version",
    "version-of": 'version of "{of}"',
    "version-unpinned": 'version of "{of}"',
    "finished": "finished",
    "grid": "grid",
    "allowance": "allowance",
    "trim": "trim",
    "trim-limit": "trim limit",
    "dots": "dots",
    "grain": "grain",
    "unnamed": "fabric of unnamed pieces",
    "usable-width": "usable width of {of}",
    "shrinkage": "shrinkage of {of}",
    "setting-allowance": "seam allowance of settings and borders",
    "binding-slack": "binding beyond the perimeter",
    "over": "backing and batting over",
    "drop": "drop",
    "mattress": "{of} mattress",
}

SOURCES: Final = {
    "own-file": "this file",
    "class-list": "class list: 39 x 75, 54 x 75, 60 x 80, 76 x 80in",
    "crib-rule": "16 CFR 1508.3, inside of a full-size crib",
}
"""Where a value comes from that is no folder of a shelf."""


def default_words(say: Say, default: Default) -> tuple[str, str]:
    """What it is, and its value: `usable width of sand, indigo` and `42in`."""
    return WHAT[default.kind].format(of=", ".join(default.of)), _value(say, default)


def _value(say: Say, default: Default) -> str:
    value, source = default.value, SOURCES.get(default.source, default.source)
    if isinstance(value, tuple):
        if default.kind == "grid":
            return f"{value[0]} x {value[1]}"
        return say.size(*value) + (f" ({source})" if source else "")
    if isinstance(value, str):
        return "along an outside edge, else along the block's sides" if default.kind == "grain" else value
    match default.kind:
        case "version":
            return number_text(value)
        case "version-of":
            return f"{number_text(value)}, the newest in {source}"
        case "version-unpinned":
            return f"{number_text(value)}, the newest in {source}, not pinned"
        case "shrinkage":
            return "none"
        case "trim-limit":
            return f"{say.length(value)} beyond the finished point"
        case _:
            return say.length(value)
