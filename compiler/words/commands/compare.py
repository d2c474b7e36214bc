"""`piecewright compare`: its help, and what is told where drafts cannot be compared."""

from __future__ import annotations

from typing import Final

from .asked import named

HELP: Final = """\
Say what changed from OLD to NEW: which templates are the same, so that you keep your plastic, of which
another number is cut, which are new or gone, and how far the outlines lie apart.

OLD and NEW are files, or titles with a version as in 'Vane@2', found here and on the shelves. Blocks are
compared by title; where each file has one block, those two. Nothing has to be set up for git.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright compare old/vane.block vane.block      two files
  piecewright compare vane.block --since HEAD~1      the file, and as git had it before
  piecewright compare vane.block                     its two newest versions; else since git's last
  piecewright compare "Vane@1" "Vane@2"              two versions on your shelves
  piecewright compare vane.block --picture svg       both drafts upon each other
  piecewright compare --check *.block                no outline may change under one version
"""

SINCE: Final = "Compare with the file as it was then; git is asked."
CHECK: Final = (
    "For any number of files: status 1 where outlines changed since the revision, HEAD unless --since says "
    "another, and the version did not."
)
FORMAT: Final = "Lines to read, or JSON."
PICTURE: Final = "Draw both outlines upon each other, too; several kinds with commas."
SIZE: Final = "Longer side of the block in the picture, from 1/2in to 40in."


def two_files() -> str:
    """Too many files to compare."""
    return "Give two files, or one with --since."


def no_common_title() -> str:
    """Nothing that both sides have."""
    return "No block of the one has the title of a block of the other."


def unversioned(title: str, version: int, file: str = "") -> str:
    """Outlines that changed under one version; in that file, where it is told."""
    where = f"{file}: " if file else ""
    changed = f"The outlines of '{named(title)}' changed and its version did not"
    return f"{where}{changed}: write 'version {version + 1}'."
