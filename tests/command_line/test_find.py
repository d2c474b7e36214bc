"""`piecewright find`: shelves searched by every condition; bad shelves; the index, kept and damaged."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from piecewright.shelves import index_work
from piecewright.shelves.kept import Kept, kept_folder
from support.command import Ended, piecewright, process


def block_text(title: str, more: str = "", version: int = 1, size: str = "4in") -> str:
    return f'edition 1\n\nblock "{title}" version {version} {{\n  finished {size}\n{more}\n}}\n'


HALVES = "  seam top -- bottom\n  piece a at left in dark\n  piece b at right in light"


def put(path: Path, text: str) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


@pytest.fixture(autouse=True)
def kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A place of its own for the index, and no shelves but those given."""
    folder = tmp_path / "kept"
    monkeypatch.setenv("PIECEWRIGHT_CACHE", str(folder))
    monkeypatch.delenv("PIECEWRIGHT_SHELVES", raising=False)
    monkeypatch.setattr("piecewright.door.compiling.library_folder", lambda: None)
    return folder


def shelf_of(folder: Path, **blocks: str) -> Path:
    for name, text in blocks.items():
        put(folder / f"{name}.block", text)
    return folder


def found(*arguments: str | Path) -> list[str]:
    """The titles that a search finds, with nothing wrong."""
    ended = piecewright("find", "--format", "json", *arguments)
    assert (ended.status, ended.err) == (0, "")
    return [each["title"] for each in json.loads(ended.out)["blocks"]]


def records(*arguments: str | Path) -> dict:
    return json.loads(piecewright("find", "--format", "json", *arguments).out)


# ---- conditions -------------------------------------------------------------------------------------------


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    return shelf_of(
        tmp_path / "own",
        vane=block_text(
            "Tidewater Vane",
            '  grid 2 x 2\n  family star\n  also "Harbour Wheel"\n'
            "  turn 4 about center {\n    seam center -- B1\n    seam center -- A1\n  }\n"
            "  turn 4 about center { piece sail at (1/2, 0) in dark }\n"
            "  turn 4 about center { piece sail at (3/2, 0) in light }",
        ),
        halves=block_text("Two Halves", HALVES + "\n  family strip"),
        pie=block_text(
            "Tide's Turn",
            "  seam (2in from A1 to B1) ~~ (2in from A1 to A2) around A1\n"
            "  piece pie at A1 in dark\n  piece crust at B2 in light\n  family curve",
            size="10in",
        ),
    )


@pytest.mark.parametrize(
    "arguments, titles",
    [
        (["tide"], ["Tide's Turn", "Tidewater Vane"]),
        (["tides"], ["Tide's Turn"]),
        (["wheel", "HARBOUR"], ["Tidewater Vane"]),
        (["wheel", "tide"], []),
        (["--family", "strip", "--family", "star"], ["Tidewater Vane", "Two Halves"]),
        (["--grid", "2x2"], ["Tidewater Vane"]),
        (["--pieces", "..2"], ["Tide's Turn", "Two Halves"]),
        (["--pieces", "8"], ["Tidewater Vane"]),
        (["--templates", "2.."], ["Tide's Turn"]),
        (["--smallest-angle", "45deg..60"], ["Tidewater Vane"]),
        (["--size", "25cm.."], ["Tide's Turn"]),
        (["--size", "4in"], ["Tidewater Vane", "Two Halves"]),
        (["--methods", "rotary,foundation"], ["Tidewater Vane", "Two Halves"]),
        (["--symmetry", "quarter-turn"], ["Tidewater Vane"]),
        (["--symmetry", "mirror"], ["Tide's Turn", "Two Halves"]),
        (["--symmetry", "mirror", "--pieces", "2", "--family", "curve"], ["Tide's Turn"]),
    ],
)
def test_every_condition_must_hold(shelf: Path, arguments: list[str], titles: list[str]) -> None:
    assert sorted(found("--shelf", shelf, *arguments)) == titles


@pytest.mark.parametrize(
    "arguments",
    [
        ["--pieces", "20..5"],
        ["--pieces", ".."],
        ["--pieces", "4in"],
        ["--size", "4"],
        ["--size", "4deg.."],
        ["--smallest-angle", "sharp"],
        ["--grid", "4"],
        ["--methods", "by-hand"],
        ["--symmetry", "round"],
        ["--pieces", "9" * 50],
    ],
)
def test_a_condition_that_is_none_is_wrong_use(shelf: Path, arguments: list[str]) -> None:
    ended = piecewright("find", "--shelf", shelf, *arguments)
    assert ended.status == 2 and f"Invalid value for '{arguments[0]}'" in ended.err


def test_the_table_tells_what_the_json_tells(shelf: Path) -> None:
    out = piecewright("find", "--shelf", shelf, "vane").out
    head, numbers, below, roles, file, use, _, count, *_ = out.splitlines()
    assert head.split() == ["Title", "Grid", "Finished", "Pieces", "Templates", "Sharpest"]
    assert numbers.split() == ["Tidewater", "Vane", "2", "x", "2", "4in", "8", "1", "45°"]
    assert below.strip() == "star; rotary, foundation; quarter-turn; also Harbour Wheel"
    assert (roles.strip(), file.strip()) == ("roles dark, light", str(shelf / "vane.block"))
    assert use.strip() == 'use "Tidewater Vane" version 1 as tidewater-vane'
    assert count == "1 of 3 blocks."
    (told,) = records("--shelf", shelf, "vane")["blocks"]
    assert told["symmetry"] == {"turns": 4, "mirror": False} and told["grid"] == {"across": 2, "down": 2}
    assert (told["finished"], told["line"]) == ({"width": 4, "height": 4}, 3)
    assert (told["file"], told["use"]) == (str(shelf / "vane.block"), use.strip())


@pytest.mark.parametrize("title", ["Seam", "9 Bars", 'The "Tide"', "Back\\slash", "…"])
def test_the_use_line_is_taken_by_the_language(tmp_path: Path, title: str) -> None:
    written = title.replace("\\", "\\\\").replace('"', '\\"')
    shelf_of(tmp_path / "own", odd=block_text(written, HALVES, 2))
    (told,) = records("--shelf", tmp_path / "own")["blocks"]
    assert told["title"] == title
    name = told["use"].rpartition(" ")[2]
    text = f'edition 1\n\nblock "Row" {{\n  grid 2 x 1 of 4in\n  {told["use"]}\n  row {name}, {name}\n}}\n'
    row = put(tmp_path / "row.block", text)
    assert piecewright("check", row, "--shelf", tmp_path / "own").out == "No mistakes in 1 file.\n"


# ---- names ------------------------------------------------------------------------------------------------


def test_one_name_of_several_blocks_and_several_names_of_one_are_told(tmp_path: Path) -> None:
    shelf = shelf_of(
        tmp_path / "own",
        a=block_text("Churn", '  also "Wrench", "Dasher"'),
        b=block_text("Snail", '  also "wrench"'),
    )
    assert found("--shelf", shelf, "wrench") == ["Churn", "Snail"]
    assert records("--shelf", shelf)["shared_names"] == {"Wrench": ["Churn", "Snail"]}
    out = piecewright("find", "--shelf", shelf, "dasher").out
    assert "also Wrench, Dasher" in out and "Wrench is a name of Churn, Snail." in out


# ---- shelves ----------------------------------------------------------------------------------------------


def test_shelves_are_searched_in_order_and_called_by_their_manifests(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    own = shelf_of(tmp_path / "own", a=block_text("Ay"))
    shared = shelf_of(tmp_path / "shared", b=block_text("Bee"))
    put(shared / "shelf.toml", 'title = "Harbour guild"\nnote = "For the winter class."\n')
    monkeypatch.setenv("PIECEWRIGHT_SHELVES", f"{shared}{os.pathsep}{own}")
    told = records("--shelf", own)
    assert [(each["title"], each["shelf"]) for each in told["blocks"]] == [
        ("Ay", str(own)),
        ("Bee", "Harbour guild"),
    ]
    assert told["shelves"][1] == {
        "title": "Harbour guild",
        "folder": str(shared),
        "note": "For the winter class.",
    }


def test_what_a_manifest_leaves_out_is_on_no_shelf(tmp_path: Path) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"), trial=block_text("Trial"))
    shelf_of(shelf / "drafts", b=block_text("Bee"))
    put(shelf / "shelf.toml", 'leave-out = ["drafts", "trial.block"]')
    assert found("--shelf", shelf) == ["Ay"]
    user = put(tmp_path / "user.block", USER.replace('"Unit"', '"Bee"'))
    assert "block-unknown" in piecewright("check", user, "--shelf", shelf).out


@pytest.mark.parametrize(
    "text, message, line",
    [
        ('title = "Harbour\n', "This shelf's manifest cannot be read: illegal character", 1),
        ('note = "x"\ntitle = Harbour\n', "This shelf's manifest cannot be read: invalid value.", 2),
        ('title = "x"\n\ntitel = "y"\n', "A shelf's manifest has no `titel`.", 3),
        ("title = 7\n", "This shelf's manifest cannot be read: `title` is a text in quotes.", 1),
        ('leave-out = "drafts"\n', "`leave-out` is a list of names in quotes.", 1),
        ('title = "x"\ntitle = "y"\n', "This shelf's manifest cannot be read: cannot overwrite a value.", 2),
    ],
)
def test_a_damaged_manifest_is_an_error_and_the_shelf_is_searched_all_the_same(
    tmp_path: Path, text: str, message: str, line: int
) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"))
    put(shelf / "shelf.toml", text)
    ended = piecewright("find", "--shelf", shelf)
    assert ended.status == 1 and "Ay" in ended.out
    assert message in ended.err and f"shelf.toml:{line}:" in ended.err


def test_a_manifest_that_is_no_text_is_told(tmp_path: Path) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"))
    (shelf / "shelf.toml").write_bytes(b'title = "\xff"')
    ended = piecewright("find", "--shelf", shelf)
    assert ended.status == 1 and "it is not text in UTF-8" in ended.err


def test_two_blocks_of_one_title_and_version_on_a_shelf_are_named(tmp_path: Path) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"), b=block_text("Ay"), c=block_text("Ay", version=2))
    ended = piecewright("find", "--shelf", shelf)
    assert ended.status == 0
    assert ended.err.count("block-on-shelf-twice") == 1
    assert f"`Ay` version 1 stands on this shelf already, in `{shelf / 'a.block'}`." in ended.err


def test_files_with_mistakes_are_left_out_and_named(tmp_path: Path) -> None:
    bad = block_text("Bad", "  seam top -- nowhere")
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"), **{f"bad{n}": bad for n in range(7)})
    ended = piecewright("find", "--shelf", shelf)
    assert ended.status == 0 and "1 of 1 block." in ended.out
    assert f"{shelf / 'bad0.block'}:5: Left out, for it has a mistake: There is no point called" in ended.err
    assert "2 more files left out" in ended.err


def test_links_that_lead_out_of_the_shelf_are_not_followed(tmp_path: Path) -> None:
    secret = put(tmp_path / "secret" / "s.block", block_text("Secret"))
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"))
    (shelf / "out.block").symlink_to(secret)
    (shelf / "outside").symlink_to(secret.parent)
    (shelf / "again.block").symlink_to(shelf / "a.block")
    assert found("--shelf", shelf) == ["Ay"]


def test_a_shelf_that_cannot_be_written_to_is_searched_and_left_as_it_was(tmp_path: Path) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"))
    before = sorted(shelf.iterdir())
    shelf.chmod(0o555)
    try:
        assert found("--shelf", shelf) == ["Ay"] == found("--shelf", shelf)
        assert sorted(shelf.iterdir()) == before
    finally:
        shelf.chmod(0o755)


def test_a_unit_is_found_on_the_block_s_own_shelf_first(tmp_path: Path) -> None:
    one = shelf_of(tmp_path / "one", unit=block_text("Unit", HALVES))
    two = shelf_of(
        tmp_path / "two",
        unit=block_text("Unit"),
        user=('edition 1\nblock "User" {\n  grid 2 x 1 of 4in\n  use "Unit" as unit\n  row unit, unit\n}\n'),
    )
    assert [each["pieces"] for each in records("--shelf", one, "--shelf", two, "user")["blocks"]] == [2]


# ---- the index --------------------------------------------------------------------------------------------


@pytest.fixture
def drafted(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The files that are worked out, in order."""
    names: list[str] = []
    work = index_work._record

    def noted(shelf, task):
        names.append(Path(task.path).stem)
        return work(shelf, task)

    monkeypatch.setattr(index_work, "_record", noted)
    return names


USER = 'edition 1\nblock "User" {\n  grid 2 x 1 of 4in\n  use "Unit" as unit\n  row unit, unit\n}\n'


def test_only_what_changed_and_what_uses_it_is_worked_out_again(tmp_path: Path, drafted: list[str]) -> None:
    shelf = shelf_of(tmp_path / "own", unit=block_text("Unit"), user=USER, other=block_text("Other"))
    assert [each["pieces"] for each in records("--shelf", shelf, "user")["blocks"]] == [2]
    assert sorted(drafted) == ["other", "unit", "user"]
    drafted.clear()
    found("--shelf", shelf)
    assert drafted == []
    put(shelf / "unit.block", block_text("Unit", HALVES))
    assert [each["pieces"] for each in records("--shelf", shelf, "user")["blocks"]] == [4]
    assert sorted(drafted) == ["unit", "user"]


def test_another_file_of_the_title_used_counts_as_a_change(tmp_path: Path, drafted: list[str]) -> None:
    shelf = shelf_of(tmp_path / "own", unit=block_text("Unit"), user=USER)
    found("--shelf", shelf)
    drafted.clear()
    put(shelf / "newer.block", block_text("Unit", HALVES, version=2))
    assert [each["pieces"] for each in records("--shelf", shelf, "user")["blocks"]] == [4]
    assert "user" in drafted


def test_the_time_of_a_file_says_nothing_its_content_does(tmp_path: Path, drafted: list[str]) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay", size="4in"))
    path = shelf / "a.block"
    facts = path.stat()
    found("--shelf", shelf)
    put(path, block_text("Ay", size="6in"))
    os.utime(path, ns=(facts.st_atime_ns, facts.st_mtime_ns))
    assert records("--shelf", shelf)["blocks"][0]["finished"]["width"] == 6
    drafted.clear()
    os.utime(path)
    found("--shelf", shelf)
    assert drafted == []


@pytest.mark.parametrize(
    "spoil",
    [
        lambda path: path.write_bytes(b""),
        lambda path: path.write_bytes(path.read_bytes()[:-9]),
        lambda path: path.write_bytes(path.read_bytes().replace(b"Ay", b"Oy")),
        lambda path: path.unlink(),
    ],
)
def test_a_damaged_index_is_made_anew(tmp_path: Path, kept: Path, drafted: list[str], spoil) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"))
    found("--shelf", shelf)
    (entry,) = kept.iterdir()
    good = entry.read_bytes()
    spoil(entry)
    assert found("--shelf", shelf) == ["Ay"]
    assert drafted == ["a", "a"] and entry.read_bytes() == good


def test_one_changed_file_of_many_costs_one_entry(tmp_path: Path, kept: Path) -> None:
    shelf = shelf_of(tmp_path / "own", **{f"b{n}": block_text(f"Block {n}") for n in range(5)})
    found("--shelf", shelf)
    before = {path: path.read_bytes() for path in kept.iterdir()}
    assert len(before) == 5
    put(shelf / "b2.block", block_text("Block 2", HALVES))
    found("--shelf", shelf)
    after = {path: path.read_bytes() for path in kept.iterdir()}
    assert len(after) == 6 and before.items() <= after.items()


def test_entries_under_each_others_names_or_of_another_user_are_passed_over(
    tmp_path: Path, kept: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"), b=block_text("Bee"))
    assert found("--shelf", shelf) == ["Ay", "Bee"]
    one, two = kept.iterdir()
    whole = one.read_bytes(), two.read_bytes()
    one.write_bytes(whole[1])
    two.write_bytes(whole[0])
    assert found("--shelf", shelf) == ["Ay", "Bee"]
    assert (one.read_bytes(), two.read_bytes()) == whole
    store = Kept(str(kept))
    store.keep(["a cause"], ["found"])
    assert store.find(["a cause"]) == ["found"] and store.find(["another"]) is None
    monkeypatch.setattr(os, "geteuid", lambda: os.getuid() + 1)
    assert store.find(["a cause"]) is None


def test_another_version_of_the_program_uses_nothing_of_this_ones(
    tmp_path: Path, drafted: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"))
    found("--shelf", shelf)
    monkeypatch.setattr("piecewright.shelves.kept.__version__", "another")
    found("--shelf", shelf)
    assert drafted == ["a", "a"]


def test_the_oldest_entries_go_where_there_are_too_many(
    tmp_path: Path, kept: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shelf = shelf_of(tmp_path / "own", **{f"b{n}": block_text(f"Block {n}") for n in range(8)})
    found("--shelf", shelf)
    left = put(kept / "half.kept.part", "a killed run's")
    other = put(kept / "letter.txt", "somebody's")
    os.utime(left, (1, 1))
    os.utime(other, (1, 1))
    size = sum(path.stat().st_size for path in kept.glob("*.kept*"))
    monkeypatch.setattr("piecewright.shelves.kept.MOST_BYTES", size // 2)
    monkeypatch.setattr("piecewright.shelves.kept.LEFT_BYTES", size // 2)
    put(shelf / "b2.block", block_text("Block 2", HALVES))
    found("--shelf", shelf)
    assert sum(path.stat().st_size for path in kept.glob("*.kept*")) <= size // 2
    assert other.exists() and not left.exists()


def test_a_folder_for_entries_is_its_users_and_none_is_no_trouble(
    tmp_path: Path, kept: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"))
    found("--shelf", shelf)
    assert kept.stat().st_mode & 0o077 == 0
    put(tmp_path / "taken", "a file")
    for folder in (str(tmp_path / "taken"), str(tmp_path / "taken" / "within"), "/proc/nowhere", "x" * 300):
        monkeypatch.setenv("PIECEWRIGHT_CACHE", folder)
        assert found("--shelf", shelf) == ["Ay"], folder


def test_entries_stand_in_the_systems_place_for_them(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PIECEWRIGHT_CACHE")
    for name in ("HOME", "XDG_CACHE_HOME"):
        monkeypatch.delenv(name, raising=False)
    assert kept_folder() is None
    monkeypatch.setenv("XDG_CACHE_HOME", "not/whole")
    assert kept_folder() is None, "a relative place would be another one in every folder"
    monkeypatch.setenv("HOME", str(tmp_path))
    assert kept_folder() == str(tmp_path / ".cache" / "piecewright")


def test_without_a_place_for_the_index_everything_is_found_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, drafted: list[str]
) -> None:
    monkeypatch.setenv("PIECEWRIGHT_CACHE", "off")
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"))
    assert found("--shelf", shelf) == ["Ay"] == found("--shelf", shelf)
    assert drafted == ["a", "a"]


def test_many_files_are_shared_out_over_processes_and_come_back_in_order(tmp_path: Path) -> None:
    titles = [f"Block {number:03}" for number in range(3 * index_work.BATCH + 1)]
    shelf = shelf_of(tmp_path / "own", **{title.replace(" ", "-"): block_text(title) for title in titles})
    assert found("--shelf", shelf) == titles


def test_two_searches_at_once_find_the_same(tmp_path: Path, kept: Path) -> None:
    shelf = shelf_of(tmp_path / "own", **{f"b{n}": block_text(f"Block {n}") for n in range(20)})

    def search(_: int) -> Ended:
        words = ("Block", "--size", "4in")
        return process("find", *words, "--shelf", shelf, env={"PIECEWRIGHT_CACHE": str(kept)})

    with ThreadPoolExecutor(2) as pool:
        one, two = pool.map(search, range(2))
    assert one == two and "20 of " in one.out
    assert not [path for path in kept.iterdir() if path.suffix != ".kept"]


# ---- workers -----------------------------------------------------------------------------------------------

SLOW_SEARCH = """
import sys, time
from piecewright.door import compiling
from piecewright.shelves import index_work
from piecewright.shelves.kept import Kept, kept_folder
from piecewright.command_line.main import run
compiling.library_folder = lambda: None
index_work.os.sched_getaffinity = lambda _: {0, 1, 2}
def slow(shelf, task):
    index_work.os.write(1, b"%d\\n" % index_work.os.getpid())  # in one piece, whoever else writes
    time.sleep(60)
index_work._record = slow
sys.exit(run(["find", "--shelf", sys.argv[1]]))
"""


def is_gone(process: int) -> bool:
    """Whether a process has ended, perhaps unheard of by its parent."""
    try:
        return Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()[0] == "Z"
    except OSError:
        return True


@pytest.fixture
def many(tmp_path: Path) -> Path:
    """A shelf that is searched by several processes."""
    count = 3 * index_work.BATCH
    return shelf_of(tmp_path / "many", **{f"b{n}": block_text(f"Block {n}") for n in range(count)})


@pytest.mark.parametrize(
    "number, status", [(signal.SIGKILL, -9), (signal.SIGTERM, 143), (signal.SIGINT, 130)]
)
def test_workers_end_with_the_search(many: Path, number: int, status: int) -> None:
    with subprocess.Popen(
        [sys.executable, "-c", SLOW_SEARCH, many], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as child:
        assert child.stdout and child.stderr
        workers = [int(child.stdout.readline()) for _ in range(3)]
        child.send_signal(number)
        assert child.wait(30) == status
        assert b"Traceback" not in child.stderr.read()  # ends when the last worker does
    for _ in range(1000):  # what it held open is closed a moment before it is gone
        if all(is_gone(each) for each in workers):
            return
        time.sleep(0.01)
    raise AssertionError(f"a worker of {workers} is still there")


def test_a_worker_that_dies_is_told_as_that(many: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(index_work.os, "sched_getaffinity", lambda _: {0, 1}, raising=False)
    monkeypatch.setattr(index_work, "draft_source", lambda *_: os.kill(os.getpid(), signal.SIGKILL))
    ended = piecewright("find", "--shelf", many)
    assert ended.status == 1
    assert "A process at work on the shelves was ended from outside" in ended.err
    assert "mistake in Piecewright" not in ended.err


def test_a_block_that_takes_too_long_is_left_out_and_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shelf = shelf_of(tmp_path / "own", a=block_text("Ay"), slow=block_text("Slow"), z=block_text("Zed"))
    real = index_work.draft_source

    def slow(source, shelf):
        while "Slow" in source.text:
            try:
                sum(range(1000))
            except Exception:
                continue
        return real(source, shelf)

    monkeypatch.setattr(index_work, "draft_source", slow)
    monkeypatch.setattr(index_work, "SLOWEST", 0.2)
    ended = piecewright("find", "--shelf", shelf)
    assert ended.status == 0 and "Ay" in ended.out and "Zed" in ended.out and "Slow" not in ended.out
    assert f"{shelf / 'slow.block'}:1: Left out" in ended.err and "to draft." in ended.err
    assert "It shows 2 blocks." in piecewright("catalogue", "--shelf", shelf, "--out", tmp_path / "out").out


# ---- the catalogue ----------------------------------------------------------------------------------------


def test_a_catalogue_shows_what_find_finds(shelf: Path, tmp_path: Path) -> None:
    ended = piecewright("catalogue", "tide", "--shelf", shelf, "--out", tmp_path / "out")
    assert (ended.status, ended.err) == (0, "") and "It shows 2 blocks." in ended.out
    page = (tmp_path / "out" / "catalogue.html").read_text(encoding="utf-8")
    assert "Tidewater Vane" in page and "Two Halves" not in page
    assert (tmp_path / "out" / "catalogue.pdf").read_bytes().startswith(b"%PDF")


def test_a_catalogue_of_the_same_shelf_has_the_same_bytes(shelf: Path, tmp_path: Path) -> None:
    for name in ("one", "two"):
        piecewright("catalogue", "--shelf", shelf, "--out", tmp_path / name)
    for file in ("catalogue.html", "catalogue.pdf"):
        assert (tmp_path / "one" / file).read_bytes() == (tmp_path / "two" / file).read_bytes()


def test_a_catalogue_of_nothing_is_not_written(shelf: Path, tmp_path: Path) -> None:
    ended = piecewright("catalogue", "zzz", "--shelf", shelf, "--out", tmp_path / "out")
    assert ended.status == 1 and "there is nothing to show" in ended.err and not (tmp_path / "out").exists()
