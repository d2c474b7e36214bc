"""Catalogue entries for files and shelves: what the command line itself complains of."""

from __future__ import annotations

from typing import Final

from .catalogue import Entry

FILES: Final = (
    Entry("file-unreadable", "A file cannot be read",
          "The system does not let Piecewright read the file: its permissions forbid it, or it went away "
          "meanwhile. Look at its permissions, or copy it to a folder of your own."),
    Entry("shelf-file-faulty", "A file that may hold a used block has a mistake",
          "A `use` asks for a title. A file on a shelf has that title, but has a mistake of its own, so none "
          "of its blocks can be used. Check that file and mend it; then the block is found."),
)
