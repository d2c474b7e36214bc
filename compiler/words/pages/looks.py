"""How each fabric is drawn, and where that was read."""

from __future__ import annotations

from typing import Final

LOOKS: Final = "How cloth is drawn"
GUESSED: Final = (
    "Colours and textures that no `looks` states were read off titles and names, or chosen where those say "
    "nothing."
)


def look_words(name: str, colour: str, texture: str, *, named: bool, stated: bool) -> str:
    """`Rust dots: #b7410e, dotted, as it is called`."""
    if stated:
        return f"{name}: {colour}, {texture}, as the file says"
    how = "as it is called" if named else "chosen, since its name tells no colour"
    return f"{name}: {colour}, {texture}, {how}"
