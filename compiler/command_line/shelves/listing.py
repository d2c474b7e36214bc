"""The block and quilt files of a folder. Loads nothing: a build that only looks for changes asks, too."""

from __future__ import annotations

import os
from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from ...diagnostics.diagnostic import Diagnostic
    from ...diagnostics.source import Source

EXTENSIONS: Final = (".block", ".quilt")
MANIFEST: Final = "shelf.toml"
DEEPEST: Final = 8  # folders within folders that are looked through


class ShelfDamaged(Exception):
    """A shelf's manifest cannot be read, so nobody knows what is on the shelf: as told in `said`."""

    def __init__(self, said: tuple[Diagnostic, ...], source: Source) -> None:
        super().__init__(said[0].code)
        self.said, self.source = said, source


def names_in(folder: str, depth: int = 0, *, anyway: bool = False) -> list[str]:
    """The path of every block or quilt file in a folder, sorted; with `depth`, of folders within it too.

    Hidden files, anything that is not a plain file, and links that lead out of the folder are passed over; so
    is what a shelf's manifest leaves out. ShelfDamaged where the manifest cannot be read, unless `anyway`.
    """
    left = _left_out(folder, anyway) if depth else frozenset()
    found = _walk(folder, os.path.realpath(folder), depth, left)
    return [path for path in found if path not in left] if left else list(found)


def _left_out(folder: str, anyway: bool) -> frozenset[str]:
    """The paths that the shelf's manifest leaves out."""
    path = os.path.join(folder, MANIFEST)
    if not os.path.lexists(path):
        return frozenset()
    from .manifest import read_manifest

    read = read_manifest(path)
    manifest = read.value
    assert manifest is not None, "there is always a manifest"
    if read.diagnostics and manifest.source and not anyway:
        raise ShelfDamaged(read.diagnostics, manifest.source)
    return frozenset(os.path.join(folder, *each.split("/")) for each in manifest.leave_out)


def _walk(folder: str, home: str, depth: int, left: frozenset[str]) -> Iterator[str]:
    try:
        with os.scandir(folder) as listing:
            entries = sorted(listing, key=lambda entry: entry.name)
    except OSError:
        return
    for entry in entries:
        if entry.name.startswith(".") or not _stays_inside(entry, home):
            continue
        try:
            if entry.name.endswith(EXTENSIONS) and entry.is_file():
                yield entry.path
            elif depth and entry.is_dir(follow_symlinks=False) and entry.path not in left:
                yield from _walk(entry.path, home, depth - 1, left)
        except OSError:
            continue


def _stays_inside(entry: os.DirEntry[str], home: str) -> bool:
    """Whether an entry is what it seems, or a link to something in the same shelf."""
    if not entry.is_symlink():
        return True
    return os.path.realpath(entry.path).startswith(os.path.join(home, ""))
