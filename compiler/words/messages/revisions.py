"""What is told of earlier revisions, and of a git that has them or not: sentences, no diagnostics."""

from __future__ import annotations

from typing import Final

from ...diagnostics.visible import shortened, visible

LONGEST: Final = 100  # letters shown of what cannot be a revision


def git_missing() -> str:
    """No git on this machine."""
    return "git: It is not installed, and it alone knows earlier revisions."


def git_slow(seconds: float) -> str:
    """git does not come to an end."""
    return (
        f"git: It took more than {seconds:.0f} seconds to look up a revision; the repository may be damaged."
    )


def leads_nowhere(place: str) -> str:
    """A `.git` that names no repository."""
    return f"{visible(place)}: This leads to no repository of git's."


def no_repository(folder: str) -> str:
    """No `.git` in the folder, or in one that it lies in."""
    return f"{visible(folder)}: git keeps no revisions of this folder."


def names_in_table(root: str) -> str:
    """A repository that keeps the names of its revisions in one table."""
    return (
        f"{visible(root)}: Names of revisions are kept in a table there "
        "(git's 'reftable'), which is not read."
    )


def names_too_many(folder: str, most: int) -> str:
    """More branches and tags than anybody has."""
    return f"{visible(folder)}: There are over {most:,} names of revisions."


def revision_odd(revision: str) -> str:
    """What no revision is called."""
    return f"'{shortened(visible(revision), LONGEST)}' is no revision."


def revision_unknown(revision: str) -> str:
    """A name or number that git does not know."""
    return f"git knows no revision '{visible(revision)}' here."


def nothing_recorded() -> str:
    """A repository without a commit."""
    return "git has recorded nothing here yet."


def file_is_new(file: str, revision: str) -> str:
    """A revision from before the file."""
    return f"'{visible(file)}' is not in revision '{visible(revision)}'."


def no_copy(file: str, revision: str) -> str:
    """A repository that left the file's contents where it came from."""
    return (
        f"{visible(file)}: git has no copy of it at '{visible(revision)}' in "
        "this folder, or one larger than any block file. Nothing is fetched: fetch it "
        "with git first."
    )


def no_files(revision: str) -> str:
    """A revision that has no list of files."""
    return (
        f"git knows no files of '{visible(revision)}' here: it is no commit, or the repository is not whole."
    )
