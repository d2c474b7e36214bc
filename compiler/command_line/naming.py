"""Names for the files made of a block: safe, readable, and never two blocks' at once.

`Tidewater Vane`, version 2, becomes `tidewater-vane-v2`. Letters with accents lose them; whatever is not a
letter or digit of ASCII becomes one hyphen. A title of which nothing readable is left is called `block`, with
eight digits that follow from the title (always the same ones). Of two blocks that would share a name in one
run, the later gets such digits too. So a title never leads to another folder and never hides a file.
"""

from __future__ import annotations

import re
from typing import Final
from unicodedata import normalize

READABLE: Final = 60  # characters of a title in a name: some systems take 255 bytes, some far fewer
TITLE_READ: Final = 1000  # characters of a title looked at for its name
DIGITS: Final = 8


def slug(title: str) -> str:
    """The title in small letters, digits and hyphens; empty where nothing of it can be written so."""
    plain = normalize("NFKD", title[:TITLE_READ].replace("'", "").replace("’", ""))
    letters = plain.encode("ascii", "ignore").decode("ascii").lower() if plain.isascii() else _folded(plain)
    return re.sub(r"[^a-z0-9]+", "-", letters).strip("-")[:READABLE].rstrip("-")


def _folded(text: str) -> str:
    """Letters without their accents; anything else outside ASCII parts two words."""
    from unicodedata import combining

    return "".join(letter if letter.isascii() else " " for letter in text if not combining(letter)).lower()


def digest(text: str) -> str:
    """Eight digits that follow from the text alone."""
    from hashlib import sha256

    return sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:DIGITS]


class Names:
    """The names given in one run, and to which title of which source."""

    def __init__(self) -> None:
        self._given: dict[str, tuple[str, str]] = {}

    def stem(self, title: str, version: int, source: str) -> str:
        """The name, without an ending, of a block found in that source."""
        readable = slug(title)
        for following in ("", title, f"{source}\0{title}"):
            if not (readable or following):
                continue
            digits = f"-{digest(following)}" if following else ""
            stem = f"{readable or 'block'}{digits}-v{version}"
            if self._given.setdefault(stem, (title, source)) == (title, source):
                return stem
        raise AssertionError(f"three names of `{title[:80]}` are taken")
