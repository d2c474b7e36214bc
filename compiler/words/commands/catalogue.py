"""`piecewright catalogue`: its help, and what is told of the pictures of the shelves."""

from __future__ import annotations

from typing import Final

from ..phrases import count_of

HELP: Final = """\
Make a picture catalogue of the blocks on your shelves and in the library, or of those that are found.

The HTML page needs no network and no other file: open it, and search by name, family and more. The PDF
has twenty pictures a page, and a list of every name with the pages it is on.
"""
EXAMPLES: Final = """
\b
Examples:
  piecewright catalogue                              catalogue.html and catalogue.pdf of everything
  piecewright catalogue --format html --out site     the page alone, in the folder 'site'
  piecewright catalogue star --methods rotary        what 'piecewright find' finds with the same words
"""

FORMAT: Final = "A page of HTML to search in, sheets to print as PDF; both with a comma.  [default: both]"
PAPER: Final = "Paper of the PDF."
TITLE: Final = "What stands at its head."
DEFAULT_TITLE: Final = "Catalogue of blocks"
SUBJECT: Final = "the catalogue"


def nothing_found() -> str:
    """No picture to make."""
    return "No block was found: there is nothing to show."


def too_many(found: int, most: int) -> str:
    """More pictures than a page of HTML can bear."""
    return f"{found:,} blocks are too many for one catalogue; it takes {most:,}."


def shown(blocks: int) -> str:
    """How many pictures there are."""
    return f"It shows {count_of(blocks, 'block')}."
