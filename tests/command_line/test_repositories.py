"""`piecewright compare` in a folder that somebody sent: its `.git` can start no program, and nothing in it,
however odd, ends the command but with a message of its own."""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from support.block_files import VANE, put
from support.command import Ended, piecewright

MOVED = VANE.replace("1 1/4in from B1", "1 3/8in from B1").replace("version 2", "version 3")
TOLD = "Tidewater Vane, version 3, beside version 2\n"


def git(folder: Path, *words: str | bytes) -> str:
    """What git says in a folder, with nothing of the user's."""
    done = subprocess.run(
        [
            "git",
            "-C",
            folder,
            "-c",
            "user.name=Wren",
            "-c",
            "user.email=wren@example.org",
            "-c",
            "protocol.file.allow=always",
            *words,
        ],
        check=True,
        capture_output=True,
    )
    return done.stdout.decode("utf-8", "replace").strip()


def committed(folder: Path, name: str = "vane.block", *kind: str) -> Path:
    """A repository with one revision of a block file, which has moved on since."""
    vane = put(folder / name, VANE)
    git(folder, "init", "--quiet", *kind)
    git(folder, "add", ".")
    git(folder, "commit", "--quiet", "-m", "The one vane")
    return put(vane, MOVED)


@pytest.fixture(scope="module")
def made_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A repository to be copied."""
    folder = tmp_path_factory.mktemp("made")
    committed(folder)
    return folder


@pytest.fixture
def vane(made_once: Path, tmp_path: Path) -> Path:
    """The file in a repository of the test's own."""
    shutil.copytree(made_once, tmp_path / "sent")
    return tmp_path / "sent" / "vane.block"


class Trap:
    """A program that would leave a mark, wherever it is named."""

    def __init__(self, folder: Path) -> None:
        self.mark = folder / "mark"
        self.program = put(folder / "trap.sh", f"#!/bin/sh\ntouch '{self.mark}'\nexit 1\n")
        self.program.chmod(0o755)

    @property
    def sprung(self) -> bool:
        return self.mark.exists()


@pytest.fixture
def trap(tmp_path: Path) -> Trap:
    return Trap(tmp_path)


def lose_object(folder: Path, name: str = "HEAD:./vane.block") -> None:
    """Takes an object out of a repository."""
    digest = git(folder, "rev-parse", name)
    (folder / ".git" / "objects" / digest[:2] / digest[2:]).unlink()


def told(vane: Path, *words: str) -> Ended:
    """A comparison that ends in good order: passed, or refused in a line."""
    ended = piecewright("compare", vane, *words)
    assert ended.status in (0, 1, 2), ended.err
    assert "mistake in Piecewright" not in ended.err
    return ended


# ---- programs that a configuration names ------------------------------------------------------------------

FETCHES = {
    "uploadpack": {"url": "{there}", "uploadpack": "{trap}"},
    "ext": {"url": "ext::{trap} %S"},
    "helper": {"url": "nowhere::there", "vcs": "trap"},
    "ssh": {"url": "ssh://there.example/x"},
    "proxy": {"url": "git://there.example/x"},
    "http": {"url": "http://localhost:9/x"},
}


@pytest.mark.parametrize("way", FETCHES)
def test_what_is_missing_is_never_fetched(
    vane: Path, trap: Trap, way: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    lose_object(vane.parent)
    sent = vane.parent
    git(sent, "config", "core.repositoryformatversion", "1")
    for name, value in {
        "extensions.partialClone": "there",
        "remote.there.promisor": "true",
        "core.sshCommand": str(trap.program),
        "core.gitProxy": str(trap.program),
        "credential.helper": f"!{trap.program}",
        "core.askPass": str(trap.program),
        "protocol.ext.allow": "always",
        "protocol.allow": "always",
    }.items():
        git(sent, "config", name, value)
    for name, value in FETCHES[way].items():
        git(sent, "config", f"remote.there.{name}", value.format(there=sent, trap=trap.program))
    shutil.copy(trap.program, sent / "git-remote-trap")
    monkeypatch.setenv("PATH", f"{os.environ['PATH']}{os.pathsep}{os.pathsep}.")
    monkeypatch.chdir(sent)
    ended = told(vane)
    assert not trap.sprung
    assert ended.status == 1 and "git has no copy of it at 'HEAD' in this folder" in ended.err
    if way in ("uploadpack", "ext", "ssh", "proxy"):  # plain git does run it
        careless = {name: value for name, value in os.environ.items() if name != "GIT_NO_LAZY_FETCH"}
        subprocess.run(
            ["git", "-C", sent, "cat-file", "blob", "HEAD:vane.block"],
            capture_output=True,
            check=False,
            env=careless,
        )
        assert trap.sprung


PROGRAMS = {
    "fsmonitor": ["core.fsmonitor"],
    "hooks": ["core.hooksPath"],
    "pager": ["core.pager", "pager.cat-file", "pager.ls-tree", "pager.rev-parse"],
    "differences": ["diff.external", "diff.odd.command", "diff.odd.textconv", "merge.odd.driver"],
    "filters": ["filter.odd.smudge", "filter.odd.clean", "filter.odd.process"],
    "editors": ["core.editor", "sequence.editor"],
    "signing": ["gpg.program", "gpg.ssh.program"],
    "alternates": ["core.alternateRefsCommand", "uploadpack.packObjectsHook"],
    "aliases": ["alias.cat-file", "alias.rev-parse", "alias.ls-tree"],
    "traces": ["trace2.eventTarget", "trace2.normalTarget"],
}


def plant(sent: Path, trap: Trap, names: list[str], file: Path) -> None:
    """Names the program under those settings, and gives it to every hook, filter and comparison."""
    for name in names:
        value = f"!{trap.program}" if name.startswith("alias") else str(trap.program)
        git(sent, "config", "--file", str(file), name, value)
    own = sent / ".git"
    for hook in ("post-index-change", "reference-transaction", "post-checkout", "fsmonitor-watchman"):
        shutil.copy(trap.program, own / "hooks" / hook)
    put(sent / ".gitattributes", "*.block diff=odd filter=odd merge=odd\n")


@pytest.mark.parametrize("way", PROGRAMS)
def test_no_program_that_a_configuration_names_is_run(vane: Path, trap: Trap, way: str) -> None:
    plant(vane.parent, trap, PROGRAMS[way], vane.parent / ".git" / "config")
    git(vane.parent, "config", "log.showSignature", "true")
    if way == "hooks":
        git(vane.parent, "config", "core.hooksPath", str(vane.parent / ".git" / "hooks"))
    assert told(vane, "--since", "HEAD@{0}").out.startswith(TOLD)
    assert not trap.sprung


def test_nor_one_that_an_included_file_names(vane: Path, trap: Trap) -> None:
    more = vane.parent / ".git" / "more"
    plant(vane.parent, trap, [name for names in PROGRAMS.values() for name in names], more)
    git(vane.parent, "config", "includeIf.onbranch:**.path", str(more))
    git(vane.parent, "config", "include.path", str(more))
    assert told(vane).out.startswith(TOLD)
    assert not trap.sprung


def test_a_git_that_lies_in_the_folder_is_not_run(
    vane: Path, trap: Trap, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copy(trap.program, vane.parent / "git")
    monkeypatch.chdir(vane.parent)
    monkeypatch.setenv("PATH", f".{os.pathsep}{os.pathsep}{os.environ['PATH']}")
    assert told(vane).out.startswith(TOLD)
    assert not trap.sprung


# ---- folders that are not what they seem ------------------------------------------------------------------


def test_a_working_tree_said_to_be_elsewhere_is_of_no_account(vane: Path, tmp_path: Path, trap: Trap) -> None:
    put(tmp_path / "private" / "vane.block", "secret words")
    git(vane.parent, "config", "core.worktree", str(tmp_path / "private"))
    git(vane.parent, "config", "core.fsmonitor", str(trap.program))
    assert told(vane).out.startswith(TOLD)
    assert not trap.sprung


def test_a_repository_that_a_file_leads_to_starts_nothing_either(
    vane: Path, tmp_path: Path, trap: Trap
) -> None:
    own = vane.parent / ".git"
    own.rename(tmp_path / "kept")
    git(tmp_path, "--git-dir", "kept", "config", "core.fsmonitor", str(trap.program))
    put(own, f"gitdir: {tmp_path / 'kept'}\n")
    assert told(vane).out.startswith(TOLD)
    assert not trap.sprung
    for leads in (
        "gitdir: nowhere\n",
        "gitdir: \n",
        "gitdir: .git\n",
        "nonsense",
        "gitdir: a\0b",
        "gitdir: " + "x/" * 5000,
    ):
        put(own, leads)
        ended = told(vane)
        assert ended.status == 1 and ".git: This leads to no repository of git's." in ended.err


def test_another_users_repository_is_read_since_nothing_of_it_is_run(vane: Path, trap: Trap) -> None:
    if os.geteuid():
        pytest.skip("only root can give a folder away")
    git(vane.parent, "config", "core.fsmonitor", str(trap.program))
    for place in (vane.parent, vane.parent / ".git"):
        os.chown(place, 65534, 65534)
    assert told(vane).out.startswith(TOLD)
    assert not trap.sprung


def test_objects_lent_by_another_repository_are_read(vane: Path, tmp_path: Path, trap: Trap) -> None:
    (vane.parent / ".git" / "objects").rename(tmp_path / "lent")
    objects = vane.parent / ".git" / "objects"
    put(objects / "info" / "alternates", f"{tmp_path / 'lent'}\n")
    git(vane.parent, "config", "core.alternateRefsCommand", str(trap.program))
    assert told(vane).out.startswith(TOLD)
    assert not trap.sprung
    put(objects / "info" / "alternates", f"{tmp_path / 'nowhere'}\n")
    assert told(vane).status in (1, 2)


def pipe(place: Path) -> None:
    place.unlink(missing_ok=True)
    os.mkfifo(place)


def endless(place: Path) -> None:
    place.unlink(missing_ok=True)
    place.symlink_to("/dev/zero")


@pytest.mark.parametrize("turned", [pipe, endless])
@pytest.mark.parametrize(
    "place",
    ["HEAD", "packed-refs", "config", "index", "shallow", "FETCH_HEAD", "refs/heads/odd", "commondir"],
)
def test_pipes_and_devices_among_gits_files_are_not_waited_for(
    vane: Path, place: str, turned: Callable[[Path], None]
) -> None:
    turned(vane.parent / ".git" / place)
    ended = told(vane)
    assert ended.out.startswith(TOLD) or "git " in ended.err


@pytest.mark.parametrize("turned", [pipe, endless])
@pytest.mark.parametrize("place", ["objects/info/alternates", "objects/pack/pack-1.idx"])
def test_objects_that_never_end_are_given_up(
    vane: Path, place: str, turned: Callable[[Path], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    from piecewright.shelves import repository

    monkeypatch.setattr(repository, "PATIENCE", 0.5)
    monkeypatch.setattr(repository, "MOST_MEMORY", 100_000_000)
    turned(vane.parent / ".git" / place)
    ended = told(vane)
    assert ended.out.startswith(TOLD) or "git" in ended.err


# ---- revisions and names ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "revision, passed",
    [
        ("HEAD:", True),
        (":/one", True),
        ("HEAD^{tree}", True),
        ("HEAD^{/one}", True),
        ("HEAD@{0}", True),
        ("@", True),
        ("HEAD^0", True),
        (":/none", False),
        ("HEAD:vane.block", False),
        (":vane.block", False),
        (":0", False),
        ("HEAD..HEAD", False),
        ("^HEAD", False),
        ("HEAD^", False),
        ("-x", False),
        ("--output=x", False),
        ("--all", False),
        ("HEAD HEAD", False),
        ("HEAD\nHEAD", False),
        ("HEAD:\n", False),
        ("\udcff", False),
        ("x" * 200_000, False),
        ("HEAD^{blob}", False),
        ("HEAD^{nonsense}", False),
        ("refs/heads/../../config", False),
        ("HEAD@{u}", False),
        ("main@{99999999}", False),
        ("a\0b", False),
    ],
)
def test_any_revision_is_found_or_refused(vane: Path, revision: str, passed: bool) -> None:
    ended = told(vane, "--since", revision)
    assert ended.out.startswith(TOLD) if passed else ended.status == 2, ended.err
    assert not (vane.parent / "x").exists()


NAMES = (
    "with blank",
    'quo"te',
    "it's",
    "-x",
    "--help",
    "a:b",
    ":x",
    "back\\slash",
    "line\nend",
    "tab\t",
    "glob*[a]",
    "naïve",
    os.fsdecode(b"latin\xe9"),
    "HEAD",
)


def test_files_and_folders_of_any_name_are_found(tmp_path: Path) -> None:
    for name in NAMES:
        put(tmp_path / f"{name}.block", VANE)
        put(tmp_path / name / "vane.block", VANE)
    committed(tmp_path)
    for name in NAMES:
        assert told(put(tmp_path / f"{name}.block", MOVED)).out.startswith(TOLD), name
        assert "Every line lies where it lay." in told(tmp_path / name / "vane.block").out, name
        assert "is not in revision" in told(put(tmp_path / name / "new.block", VANE)).err, name


# ---- repositories of every kind ---------------------------------------------------------------------------


def test_shallow_partial_packed_and_bare_ones(tmp_path: Path) -> None:
    vane = committed(tmp_path / "first")
    first = vane.parent
    git(first, "commit", "--quiet", "-am", "Moved")
    git(first, "config", "uploadpack.allowFilter", "true")
    git(tmp_path, "clone", "--quiet", "--depth", "1", f"file://{first}", "shallow")
    assert "Every line" in told(tmp_path / "shallow" / "vane.block").out
    ended = told(tmp_path / "shallow" / "vane.block", "--since", "HEAD~1")
    assert ended.status == 2 and "git knows no revision 'HEAD~1' here." in ended.err
    git(tmp_path, "clone", "--quiet", "--filter=blob:none", f"file://{first}", "partial")
    assert "Every line" in told(tmp_path / "partial" / "vane.block").out
    ended = told(tmp_path / "partial" / "vane.block", "--since", "HEAD~1")
    assert ended.status == 1 and "fetch it with git first" in ended.err
    git(first, "gc", "--quiet")
    git(first, "pack-refs", "--all")
    assert told(vane, "--since", "HEAD~1").out.startswith(TOLD)
    git(tmp_path, "clone", "--quiet", "--bare", str(first), "bare")
    lying = put(tmp_path / "bare" / "vane.block", MOVED)
    assert told(lying).status == 1


def test_working_trees_and_submodules(tmp_path: Path) -> None:
    vane = committed(tmp_path / "first")
    first = vane.parent
    git(first, "worktree", "add", "--quiet", str(tmp_path / "tree"), "-b", "other")
    beside = put(tmp_path / "tree" / "vane.block", MOVED)
    assert told(beside).out.startswith(TOLD)
    assert told(beside, "--since", "HEAD@{0}").out.startswith(TOLD)
    git(tmp_path, "init", "--quiet", "whole")
    git(tmp_path / "whole", "submodule", "--quiet", "add", str(first), "part")
    assert "Every line" not in told(put(tmp_path / "whole" / "part" / "vane.block", MOVED)).out
    assert told(tmp_path / "whole" / "part" / "vane.block").out.startswith(TOLD)


def test_longer_digests(tmp_path: Path) -> None:
    vane = committed(tmp_path, "vane.block", "--object-format=sha256")
    assert told(vane).out.startswith(TOLD)


def test_a_link_that_git_kept_is_no_file(tmp_path: Path) -> None:
    put(tmp_path / "other.block", VANE)
    (tmp_path / "vane.block").symlink_to("other.block")
    git(tmp_path, "init", "--quiet")
    git(tmp_path, "add", ".")
    git(tmp_path, "commit", "--quiet", "-m", "A link")
    assert "is not in revision" in told(tmp_path / "vane.block").err


def test_a_damaged_repository_is_told(vane: Path) -> None:
    for name in ("HEAD^{tree}", "HEAD"):
        lose_object(vane.parent, name)
        ended = told(vane)
        assert ended.status == 2 and "the repository is not whole" in ended.err
    shutil.rmtree(vane.parent / ".git" / "objects")
    assert "git keeps no revisions of this folder" in told(vane).err


def test_git_is_asked_even_where_the_environment_names_another_repository(
    vane: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, trap: Trap
) -> None:
    monkeypatch.setenv("GIT_DIR", str(tmp_path / "nowhere"))  # as git's own hooks set it
    monkeypatch.setenv("GIT_EXTERNAL_DIFF", str(trap.program))
    monkeypatch.setenv("GIT_SSH_COMMAND", str(trap.program))
    assert told(vane).out.startswith(TOLD)
    assert not trap.sprung
