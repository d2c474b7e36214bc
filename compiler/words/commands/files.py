"""What is told of files and folders that were named, of those made, and of what is being done."""

from __future__ import annotations

from ...diagnostics.visible import visible
from ..phrases import count_of


def no_files_in(folder: str, kinds: str) -> str:
    """A folder without such files."""
    return f"There is no {kinds} file in the folder '{visible(folder)}'."


def no_such_file(name: str, meant: str) -> str:
    """A name that is not there, and the one that was probably meant."""
    near = f" Did you mean '{visible(meant)}'?" if meant else ""
    return f"There is no file or folder '{visible(name)}'.{near}"


def no_file_and_no_title(name: str, meant: str) -> str:
    """A name that neither a file nor a block on a shelf has, and the one that was probably meant."""
    near = f" Did you mean '{visible(meant)}'?" if meant else " 'piecewright find WORD' searches the shelves."
    return f"There is no file or folder '{visible(name)}', and no block of that title on a shelf.{near}"


def file_wanted(name: str) -> str:
    """A folder where one file is taken."""
    return f"'{visible(name)}' is a folder; this command takes one file."


def folder_wanted(name: str) -> str:
    """A file in the place of a folder."""
    return f"{name}: This is a file, not a folder."


def made_of_another(stem: str) -> str:
    """Files of that name that are left alone."""
    return f"Files called {stem} are here that were made of something else: they stay as they are."


def made_of_what(path: str) -> str:
    """A file of that name that does not say what it was made of."""
    return f"{path} does not say what it was made of; if it is made now, the new one takes its place."


def names_taken(folder: str, title: str) -> str:
    """A folder in which no name is left."""
    return f"{folder}: Other files have every name that '{visible(title)}' could have."


def drafting(source: str) -> str:
    """What is being drafted."""
    return f"{source}: drafting"


def laying_out(source: str, count: int, what: str) -> str:
    """What is being laid out."""
    return f"{source}: laying out {count_of(count, what)}"


def drawing_pages(source: str, pages: int) -> str:
    """What is being drawn."""
    return f"{source}: drawing {count_of(pages, 'page')}"


def drawing_files(number: int, total: int) -> str:
    """How far the pictures of a catalogue are."""
    return f"drawing: {number:,} of {total:,} files"


def indexing_files(number: int, total: int) -> str:
    """How far the index of the shelves is."""
    return f"indexing: {number:,} of {total:,} files"


def a_picture(version: int) -> str:
    """The subject of a picture's file."""
    return f"version {version}, a picture"


def versions_beside(old: int, new: int) -> str:
    """The subject of a picture of two drafts."""
    return f"versions {old} and {new}"


def a_link() -> str:
    """Why a file of others is not read."""
    return "it is a link to another file"


def not_plain() -> str:
    """Why a file of others is not read."""
    return "it is not a plain file"


def of_another_user() -> str:
    """Why a file of others is not read."""
    return "it belongs to another user"


def wrote(path: str) -> str:
    """A file that was made."""
    return f"Wrote {path}."


def from_keyboard() -> str:
    """Standard input is a terminal."""
    return "Reading from the keyboard; Ctrl-D on a line of its own ends."
