"""A git repository of others, read so that nothing it says can be run.

git acts on a repository's own configuration: it may name programs for fetching what is missing, for paging,
comparing, converting, watching, signing. A folder that somebody sent may bring such a configuration along. So
git never sees it: it is run on a git folder of our own, with our configuration, a copy of the names of
revisions (plain files, bounded, through no link), and the other's folder of objects to read from. Objects are
data. What is missing there is told as missing; nothing can be fetched, for no place to fetch from is known.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from ..failures import MachineFailed
from ..measure.record import record
from ..words.messages import revisions as told_of
from .reading import plain_bytes

GIT: Final = "git"
PATIENCE: Final = 30.0  # seconds that git may take: a folder of a large repository takes a tenth of one
MOST_SAID: Final = 64_000_000  # bytes that git may say: some thousand block files
MOST_MEMORY: Final = 2_000_000_000  # bytes that git may ask for
MOST_NAMES: Final = 64_000_000  # bytes of a file of names of revisions: a million of them
SHORT: Final = 4096  # bytes of a file that holds one name or place
MOST_LOOSE: Final = 100_000  # names of revisions in a file each
LONG_DIGEST: Final = re.compile(rb"(?m)^[0-9a-f]{64}\b")  # of a repository whose digests are SHA-256

OUR_CONFIG: Final = (
    "[core]\n\trepositoryformatversion = 1\n\tbare = true\n[extensions]\n\tobjectformat = {}\n"
)

QUIET: Final = {
    "GIT_CONFIG_NOSYSTEM": "1",
    "GIT_CONFIG_SYSTEM": os.devnull,
    "GIT_CONFIG_GLOBAL": os.devnull,
    "GIT_ATTR_NOSYSTEM": "1",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_ALLOW_PROTOCOL": "none",
    "GIT_TERMINAL_PROMPT": "0",
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_LITERAL_PATHSPECS": "1",
    "LC_ALL": "C",
}
"""Around git: no configuration but ours. The rest would only matter if that failed."""


@record
class Repository:
    """Where a repository is: the folder that it keeps, its own folder, and what its working trees share."""

    root: Path
    own: Path
    common: Path


@record
class Reader:
    """A git folder of our own before the objects of a repository."""

    home: Path
    environment: Mapping[str, str]

    def ask(self, *words: str | bytes, given: bytes = b"") -> bytes | None:
        """What git says; None where it does not know what is asked; MachineFailed where it cannot be."""
        answer, question = self.home / "answer", self.home / "question"
        question.write_bytes(given)
        with question.open("rb") as asked, answer.open("w+b") as told:
            try:
                done = subprocess.run(
                    [_program(), *words],
                    stdin=asked,
                    stdout=told,
                    stderr=subprocess.DEVNULL,
                    check=False,
                    timeout=PATIENCE,
                    cwd=self.home,
                    env=self.environment,
                    preexec_fn=_bounded if os.name == "posix" else None,
                )
            except subprocess.TimeoutExpired as problem:
                raise MachineFailed(told_of.git_slow(PATIENCE)) from problem
            if done.returncode:
                return None
            told.seek(0)
            said = told.read(MOST_SAID + 1)
        return said if len(said) <= MOST_SAID else None


def repository_of(folder: Path) -> Repository:
    """The repository that keeps a folder: that of the nearest folder, upwards, with a `.git`.

    MachineFailed where there is none, or its `.git` leads to none.
    """
    real = Path(os.path.realpath(folder))
    for root in (real, *real.parents):
        named = root / ".git"
        if named.is_file():
            own = _led_to(named, root, b"gitdir:")
            if own is None or not _is_own(own):
                raise MachineFailed(told_of.leads_nowhere(str(named)))
        elif _is_own(named):
            own = named
        else:
            continue
        common = _led_to(own / "commondir", own, b"") or own
        return Repository(root, own, common)
    raise MachineFailed(told_of.no_repository(str(folder)))


def _is_own(folder: Path) -> bool:
    """Whether a folder is git's: enough to tell it from one that only bears the name."""
    return (folder / "HEAD").exists() and ((folder / "objects").is_dir() or (folder / "commondir").is_file())


def _led_to(file: Path, home: Path, head: bytes) -> Path | None:
    """The place that a short file names, after those words; None where it does not."""
    try:
        data = plain_bytes(file, SHORT)
    except OSError:
        return None
    place = data[len(head) :].strip(b" \r\n")
    if not data.startswith(head) or not place or b"\0" in place or len(data) > SHORT:
        return None
    return Path(os.path.realpath(home / os.fsdecode(place)))


@contextmanager
def reader_of(repository: Repository, revision: str) -> Iterator[Reader]:
    """Something to ask about the repository; the revision tells whether its log is needed."""
    with TemporaryDirectory(prefix="piecewright-") as made:
        home = Path(made)
        names = dict(_names(repository, "@{" in revision))
        for name, data in names.items():
            place = home / name
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(data)
        for name in ("refs", "objects"):
            (home / name).mkdir(exist_ok=True)
        long = any(LONG_DIGEST.search(data) for data in names.values())
        (home / "config").write_text(OUR_CONFIG.format("sha256" if long else "sha1"))
        around = {name: value for name, value in os.environ.items() if not name.startswith("GIT_")}
        yield Reader(
            home,
            {
                **around,
                **QUIET,
                "HOME": made,
                "XDG_CONFIG_HOME": made,
                "GIT_DIR": made,
                "GIT_OBJECT_DIRECTORY": str(repository.common / "objects"),
            },
        )


def _names(repository: Repository, with_log: bool) -> Iterator[tuple[str, bytes]]:
    """Every file of names of revisions, by its path within a git folder."""
    own, common = repository.own, repository.common
    if (common / "reftable").is_dir():
        raise MachineFailed(told_of.names_in_table(str(repository.root)))
    places = [own / "HEAD", common / "packed-refs", common / "shallow"]
    places += [place for place in own.glob("*_HEAD")]
    for place in places:
        yield from _name(place, place.name)
    for top in dict.fromkeys((common, own)):
        yield from _below(top, "refs", SHORT)
    if with_log:
        yield from _name(own / "logs" / "HEAD", "logs/HEAD")
        yield from _below(common, "logs/refs", MOST_NAMES)


def _below(top: Path, within: str, most: int) -> Iterator[tuple[str, bytes]]:
    """Every plain file in a folder and those below it."""
    count = 0
    for folder, _, files in os.walk(top / within):
        for file in files:
            count += 1
            if count > MOST_LOOSE:
                raise MachineFailed(told_of.names_too_many(str(top), MOST_LOOSE))
            place = Path(folder) / file
            yield from _name(place, str(place.relative_to(top)), most)


def _name(place: Path, name: str, most: int = MOST_NAMES) -> Iterator[tuple[str, bytes]]:
    """One file, where it is a plain one of that size."""
    try:
        data = plain_bytes(place, most)
    except OSError:
        return
    if len(data) <= most:
        yield name, data


def _program() -> str:
    """Where git is: in a folder named whole, never the one we are in. MachineFailed where it is not."""
    places = [place for place in os.environ.get("PATH", "").split(os.pathsep) if os.path.isabs(place)]
    found = shutil.which(GIT, path=os.pathsep.join(places))
    if found is None or not os.path.isabs(found):
        raise MachineFailed(told_of.git_missing())
    return found


def _bounded() -> None:
    """Bounds what git may take, where the system knows how: a damaged object may claim any size."""
    try:
        import resource
    except ImportError:
        return
    for kind, most in (
        (resource.RLIMIT_FSIZE, MOST_SAID),
        (resource.RLIMIT_DATA, MOST_MEMORY),
        (resource.RLIMIT_CORE, 0),
    ):
        _, highest = resource.getrlimit(kind)
        resource.setrlimit(kind, (most if highest == resource.RLIM_INFINITY else min(most, highest), highest))
