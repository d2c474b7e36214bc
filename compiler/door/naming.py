"""Names for the files made of a block: safe, readable, and never two blocks' at once.

`Tidewater Vane`, version 2, becomes `tidewater-vane-v2`. Letters with accents lose them, letters like AE and
O-slash are written out; whatever else is not a letter or digit of ASCII becomes one hyphen. A title of which
nothing readable is left is called `block`, with eight digits that follow from the title (always the same
ones). Where a name is taken, by another block in the same run or by files in the folder that were made of
another (see `owners`), a block gets such digits too. So a title never leads to another folder and never hides
a file.
"""

from __future__ import annotations

import os
import re
from typing import Final
from unicodedata import combining, normalize

from ..diagnostics.visible import accents_joined
from ..failures import MachineFailed
from ..words.commands.files import made_of_another, made_of_what, names_taken
from .formats import FORMATS
from .owners import Whose, whose

READABLE: Final = 60  # characters of a title in a name: some systems take 255 bytes, some far fewer
TITLE_READ: Final = 1000  # characters of a title looked at for its name
DIGITS: Final = 8

WRITTEN_OUT: Final = str.maketrans(
    {
        "æ": "ae",
        "Æ": "ae",
        "œ": "oe",
        "Œ": "oe",
        "ø": "o",
        "Ø": "o",
        "ß": "ss",
        "ẞ": "ss",
        "đ": "d",
        "Đ": "d",
        "ð": "d",
        "Ð": "d",
        "þ": "th",
        "Þ": "th",
        "ł": "l",
        "Ł": "l",
        "ħ": "h",
        "Ħ": "h",
        "ı": "i",
        "ŋ": "ng",
        "Ŋ": "ng",
        "ŧ": "t",
        "Ŧ": "t",
        "ĸ": "q",
        "ə": "e",
        "Ə": "e",
    }
)
"""Letters of the Latin script that Unicode takes apart into no others (most of them common practice in names
of files, no published source)."""

FOLLOWING: Final = r"(?:-beside-v\d+)?(?:-[a-z]+)?(?:-page-1)?"  # what may stand behind a block's name


def slug(title: str) -> str:
    """The title in small letters, digits and hyphens; empty where nothing of it can be written so."""
    plain = normalize("NFKD", title[:TITLE_READ].replace("'", "").replace("’", "").translate(WRITTEN_OUT))
    letters = "".join(letter if letter.isascii() else " " for letter in plain if not combining(letter))
    return re.sub(r"[^a-z0-9]+", "-", letters.lower()).strip("-")[:READABLE].rstrip("-")


def alias_of(title: str) -> str:
    """A name that a block or quilt may use the block by: `ohio-star`."""
    from ..language.tokens import RESERVED

    name = slug(title)
    return name if name[:1].isalpha() and name not in RESERVED else f"unit-{name}".rstrip("-")


def digest(text: str) -> str:
    """Eight digits that follow from the text alone."""
    from hashlib import sha256

    return sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:DIGITS]


class Names:
    """The names given in one run, and to which title of which source; those that files in the folder have."""

    def __init__(self, folder: str) -> None:
        self._folder = folder
        self._given: dict[str, tuple[str, str]] = {}
        self._told: list[str] = []

    def stem(self, title: str, version: int, source: str, owner: str = "") -> str:
        """The name, without an ending, of a block found in that source. `owner` is the title that its files
        say, where that is another."""
        from ..sheets.drawing.lettering import printable

        title, owner = accents_joined(title), printable(owner or title)
        readable = slug(title)
        for following in ("", title, f"{source}\0{title}"):
            if not (readable or following):
                continue
            digits = f"-{digest(following)}" if following else ""
            stem = f"{readable or 'block'}{digits}-v{version}"
            if self._given.get(stem) == (title, source):
                return stem
            if stem in self._given:
                continue
            if not self._is_taken(stem, owner):
                self._given[stem] = title, source
                return stem
            self._told.append(made_of_another(stem))
        raise MachineFailed(names_taken(self._folder, title))

    def told(self) -> list[str]:
        """What is to be said of files that were in the folder; each once."""
        said, self._told = self._told, []
        return said

    def _is_taken(self, stem: str, owner: str) -> bool:
        """Whether files of that name in the folder were made of something else."""
        wanted = re.compile(re.escape(stem) + FOLLOWING)
        try:
            with os.scandir(self._folder) as listing:
                found = [entry.path for entry in listing if entry.name.startswith(stem)]
        except OSError:
            return False  # it is not there yet
        for path in sorted(found):
            bare, ending = os.path.splitext(os.path.basename(path))
            if ending[1:] not in FORMATS or not wanted.fullmatch(bare):
                continue
            found_to_be = whose(path, owner)
            if found_to_be is Whose.ANOTHERS:
                return True
            if found_to_be is Whose.UNKNOWN and os.path.getsize(path):
                self._told.append(made_of_what(path))
        return False
