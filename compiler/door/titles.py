"""A block named by its title where a file could be: looked for here and on the shelves."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ..diagnostics.visible import accents_joined
from ..failures import WrongUse
from ..shelves.listing import EXTENSIONS
from ..words.commands import asked
from .inputs import Input, Titled

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ..language.shelf import ShelfBlock
    from ..shelves.folders import FolderShelf

AT: Final = "@"  # between a title and a version: `Ohio Star@2`


def is_title(name: str) -> bool:
    """Whether a name that no file has may be a block's: it does not end as files do, and names no folder."""
    return bool(name.strip()) and not name.endswith(EXTENSIONS) and "/" not in name and name != "-"


def titled_input(name: str, shelf: FolderShelf) -> Input | None:
    """The shelf's file that holds the block called so, capitals or not, and which of its blocks is meant: the
    newest version on the nearest shelf, or the version after `@`. None where nothing is called so; a use
    error for a version that there is not, and for another name that several blocks bear."""
    from ..drafting.twins import twins_of

    title, version = _parted(accents_joined(name.strip()))
    known = {each.casefold(): each for each in reversed(list(shelf.titles("")))}
    spelt = title if title in known.values() else known.get(title.casefold())
    called = shelf.find(spelt, "") if spelt is not None else ()
    if not called:
        return None
    near = [each for each in called if each.home == called[0].home]
    titles = list(dict.fromkeys(each.block.title.text for each in near))
    if len(titles) > 1 and spelt not in titles:
        raise WrongUse(asked.name_shared(title, titles))
    if version is None:
        meant = max(near, key=lambda each: (each.block.title.text == spelt, each.version))
    else:
        wanted = [each for each in called if each.version == version]
        if not wanted:
            raise WrongUse(asked.version_unknown(name, versions_of(called)))
        meant = wanted[0]
    twins = tuple(twins_of(meant, called))
    home = shelf.home_of(meant)
    return Input(meant.source.name, home[1], titled=Titled(meant, home, twins))


def versions_of(blocks: Iterable[ShelfBlock]) -> list[int]:
    """The versions that there are, in order."""
    return sorted({each.version for each in blocks})


def near_titles(name: str, shelf: FolderShelf) -> list[str]:
    """The title that was probably meant, or none."""
    from difflib import get_close_matches

    known = {each.casefold(): each for each in shelf.titles("")}
    close = get_close_matches(accents_joined(name.strip()).casefold(), known, n=1, cutoff=0.7)
    return [known[each] for each in close]


def _parted(name: str) -> tuple[str, int | None]:
    title, found, version = name.rpartition(AT)
    return (title, int(version)) if found and version.isdecimal() and len(version) < 10 else (name, None)
