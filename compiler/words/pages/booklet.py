"""The words of a booklet's cover, of its contents, and at the foot of its pages."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from ..phrases import count_of
from ..work.proofs import proof_text

if TYPE_CHECKING:
    from ...sewing.model import Proof
    from ...sheets.work import CutOut

CONTENTS: Final = "Contents"
CONTENTS_NOTE: Final = "Pages that must be true to size have a check square: measure it before you cut."
READ_ONLY: Final = "Nothing on this page is true to size."
COVER: Final = "Cover"
BOOKLET: Final = "booklet"
NOTES: Final = "Notes"
TEMPLATES: Final = "Templates"
SETTING_TEMPLATES: Final = "Setting and borders: templates"
WHOLE_COUNTS: Final = "counts are for the whole quilt"
DRAFT_ON: Final = "Paper to draft on"
DRAFT_UNDER: Final = "for the drafting exercises of all blocks"


def continued(title: str) -> str:
    """`Counts, continued`."""
    return f"{title}, continued"


def finished_words(alone: bool, title: str) -> str:
    """What a cover's picture shows."""
    return f"The finished {'block' if alone else 'quilt'} {title}."


def also_called(names: Sequence[str]) -> str:
    """A block's other names."""
    return f"also called {', '.join(names)}"


def block_counts(pieces: int, templates: int, cut_out: CutOut, seams: int) -> str:
    """`16 pieces, 3 templates, 11 seams`."""
    cut = f"{count_of(templates, cut_out)}, " if cut_out else ""
    return f"{count_of(pieces, 'piece')}, {cut}{count_of(seams, 'seam')}"


def quilt_counts(blocks: int, setting: str) -> str:
    """`20 blocks, set straight, 4 across and 5 down`."""
    return f"{count_of(blocks, 'block')}, set {setting}"


def checked(proof: Proof) -> str:
    """What sewing it again found."""
    return f"Checked by sewing it from the printed numbers: {proof_text(proof)}."


def about(version: int, size: str, colourway: str) -> str:
    """`version 1, 60in x 72in finished, colourway Sea`: what a file is, told to programs."""
    words = f"version {version}, {size} finished"
    return f"{words}, colourway {colourway}" if colourway else words


def keywords(alone: bool, what: Sequence[str], names: Sequence[str]) -> str:
    """Words by which a file is found."""
    return ", ".join(("patchwork", "quilt block" if alone else "quilt", *what, *names))


CLASS_BOOKLET: Final = ("class booklet",)
BLOCK_SHEETS: Final = ("templates",)
QUILT_SHEETS: Final = ("cutting plan", "templates")
"""What documents are, among their keywords."""
