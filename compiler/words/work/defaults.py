"""What was left unwritten, in words."""

from __future__ import annotations

from ...drafting.model import Default
from ..numbers import number_text
from ..say import Say


def default_words(say: Say, default: Default) -> tuple[str, str]:
    """What it is, and its value: `usable width of sand, indigo` and `42in`."""
    return _what(default), _value(say, default)


def _what(default: Default) -> str:
    of = ", ".join(default.of)
    match default.kind:
        case "version of":
            return f'version of "{of}"'
        case "unnamed":
            return "fabric of unnamed pieces"
        case "usable width" | "shrinkage":
            return f"{default.kind} of {of}"
        case "setting allowance":
            return "seam allowance of settings and borders"
        case "binding slack":
            return "binding beyond the perimeter"
        case "over":
            return "backing and batting over"
        case "mattress":
            return f"{of} mattress"
        case _:
            return default.kind


def _value(say: Say, default: Default) -> str:
    value = default.value
    if isinstance(value, tuple):
        if default.kind == "grid":
            return f"{value[0]} x {value[1]}"
        return say.size(*value) + (f" ({default.source})" if default.source else "")
    if isinstance(value, str):
        return "along an outside edge, else along the block's sides" if default.kind == "grain" else value
    match default.kind:
        case "version":
            return number_text(value)
        case "version of":
            return f"{number_text(value)}, the newest in {default.source}"
        case "shrinkage":
            return "none"
        case "trim limit":
            return f"{say.length(value)} beyond the finished point"
        case _:
            return say.length(value)
