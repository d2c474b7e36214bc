"""The words of a picture of two drafts of a block, one upon the other."""

from __future__ import annotations


def overlay_title(title: str) -> str:
    """The picture's own title."""
    return f"{title}, two drafts"


def draft_words(title: str, version: int, *, named: bool, is_new: bool) -> str:
    """`version 2`, `Vane, version 1, before`: beside the kind of line that a draft is drawn in."""
    return f"{f'{title}, ' if named else ''}version {version}{'' if is_new else ', before'}"


def moved_words(label: str, distance: str) -> str:
    """`A, up to 1/8in off`; the label alone where nothing moved."""
    return f"{label}, up to {distance} off" if distance else label
