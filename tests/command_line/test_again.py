"""Builds run again: the same bytes from what was kept, and never from what is damaged, old or another's."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from piecewright.command_line.keeping import again, kept, kept_sheets
from support.block_files import HALVES, put
from support.command import Ended, piecewright, process

SAME = "Nothing has changed: this is what was made before.\n"
TITLES = ("Ant", "Bee", "Cow", "Dog", "Eel", "Fox", "Gnu", "Hen", "Ibis", "Jay")


def block(title: str, share: str = "1/3") -> str:
    """A block of two pieces, parted at that share of its top."""
    return (
        f'block "{title}" {{\n  finished 4in\n  point notch = {share} from top-left to top-right\n'
        "  seam notch -- bottom\n  piece one at left in dark\n  piece two at right in pale\n}\n"
    )


def sampler(*, changed: str = "") -> str:
    """A quilt of ten blocks, one of them drafted otherwise where a title says so."""
    uses = "".join(f'  use "{title}" as {title.lower()}\n' for title in TITLES)
    rows = f"    row {', '.join(each.lower() for each in TITLES)}\n"
    blocks = "".join(block(each, "1/4" if each == changed else "1/3") for each in TITLES)
    return (
        f'edition 1\nquilt "Ten" {{\n{uses}  fabric dark\n  fabric pale\n'
        "  set straight 10 across 1 down {\n"
        f"{rows}  }}\n  binding 2in in dark\n  backing in pale\n  batting\n}}\n{blocks}"
    )


@pytest.fixture
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder for what is kept, empty; and we stand beside it with `ten.quilt` and `halves.block`."""
    monkeypatch.setenv("PIECEWRIGHT_CACHE", str(tmp_path / "cache"))
    monkeypatch.chdir(tmp_path)
    put(tmp_path / "ten.quilt", sampler())
    put(tmp_path / "halves.block", HALVES)
    return tmp_path / "cache"


def build(*more: str, out: str = "out", file: str = "ten.quilt") -> Ended:
    """A build that goes well."""
    ended = piecewright("build", file, "--out", out, *more)
    assert ended.status == 0, ended.err
    return ended


def made(out: str = "out") -> dict[str, bytes]:
    """Every file of a folder."""
    return {each.name: each.read_bytes() for each in Path(out).iterdir()}


def fresh(*more: str, file: str = "ten.quilt") -> dict[str, bytes]:
    """What a build makes that keeps and finds nothing."""
    assert SAME not in build("--no-cache", *more, out="fresh", file=file).out
    return made("fresh")


# ---- nothing changed ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "more",
    [
        (),
        ("--tables",),
        ("--parts", "picture,chart"),
        ("--format", "svg,pdf"),
        ("--blocks",),
        ("--paper", "a4"),
    ],
)
def test_second_build_gives_the_same_bytes_and_says_so(cache: Path, more: tuple[str, ...]) -> None:
    first = build(*more)
    files = made()
    for path in Path("out").iterdir():
        path.unlink()
    second = build(*more)
    assert second.out == first.out + SAME and second.err == first.err
    assert made() == files == fresh(*more)


def test_second_build_compiles_nothing(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from piecewright.command_line.commands import build as building

    build()

    def never(*_given: object) -> None:
        raise AssertionError("compiled again")

    monkeypatch.setattr(building, "compile_input", never)
    assert build().out.endswith(SAME)


def test_block_files_and_folders_of_files_are_built_again_alike(cache: Path) -> None:
    for file in ("halves.block", "."):
        first = build(file=file, out="sheets")
        assert build(file=file, out="sheets").out == first.out + SAME


def test_remarks_are_made_again(cache: Path) -> None:
    put(Path("ten.quilt"), sampler().replace("  batting\n", "  fabric rose\n"))
    first, second = build(), build()
    assert "note[fabric-unused]" in first.err and "note[quilt-incomplete]" in first.err
    assert second.err == first.err and second.out.endswith(SAME)


def test_time_of_a_file_does_not_matter_its_words_do(cache: Path) -> None:
    build()
    os.utime("ten.quilt", (1, 1))
    assert build().out.endswith(SAME)
    file = Path("ten.quilt")
    facts = file.stat()
    put(file, sampler().replace("binding 2in", "binding 3in"))
    os.utime(file, ns=(facts.st_atime_ns, facts.st_mtime_ns))
    assert SAME not in build().out and made() == fresh()


def test_sheets_changed_by_hand_are_written_again(cache: Path) -> None:
    build()
    files = made()
    put(Path("out", "ten-v1.pdf"), b"scribbled on")
    assert build().out.endswith(SAME) and made() == files


# ---- something changed -------------------------------------------------------------------------------------


def test_one_block_changed_leaves_the_sheets_of_nine(cache: Path) -> None:
    assert "Reused" not in build().out
    put(Path("ten.quilt"), sampler(changed="Fox"))
    assert build().out.endswith("Reused the sheets of 9 blocks, made 1.\n")
    assert made() == fresh()


def test_remark_above_all_blocks_changes_no_sheet(cache: Path) -> None:
    build()
    put(Path("ten.quilt"), sampler().replace("edition 1\n", "edition 1\n# mine\n\n"))
    assert build().out.endswith("Reused the sheets of 10 blocks, made 0.\n")
    assert made() == fresh()


def test_parts_use_the_sheets_of_the_whole(cache: Path) -> None:
    build()
    assert "Reused the sheets of 10 blocks, made 0." in build("--parts", "templates", out="parts").out
    assert made("parts") == fresh("--parts", "templates")


@pytest.mark.parametrize(
    "more",
    [
        ("--kind", "finished"),
        ("--lines", "cut-dashed"),
        ("--measured", "0.97in"),
        ("--paper", "a4"),
        ("--ruler", "1/4in"),
        ("--margin", "50%"),
        ("--buy", "metres"),
        ("--format", "svg"),
        ("--tables",),
    ],
)
def test_another_option_makes_anew(cache: Path, more: tuple[str, ...]) -> None:
    build()
    before = made()
    assert SAME not in build(*more).out
    after = made()
    assert after != before
    assert {name: after[name] for name in fresh(*more)} == fresh(*more)


def test_changed_block_on_a_shelf_is_seen(cache: Path) -> None:
    put(Path("shelf", "fox.block"), "edition 1\n" + block("Fox"))
    put(Path("ten.quilt"), sampler().replace(block("Fox"), ""))
    build("--shelf", "shelf")
    assert build("--shelf", "shelf").out.endswith(SAME)
    put(Path("shelf", "fox.block"), "edition 1\n" + block("Fox", "1/5"))
    assert build("--shelf", "shelf").out.endswith("Reused the sheets of 9 blocks, made 1.\n")
    assert made() == fresh("--shelf", "shelf")


def test_new_file_that_comes_before_the_one_used_is_seen(cache: Path) -> None:
    put(Path("shelf", "fox.block"), "edition 1\n" + block("Fox"))
    put(Path("ten.quilt"), sampler().replace(block("Fox"), ""))
    build("--shelf", "shelf")
    put(Path("fox.block"), "edition 1\n" + block("Fox", "1/5"))
    assert SAME not in build("--shelf", "shelf").out
    assert made() == fresh("--shelf", "shelf")


def test_used_file_that_goes_missing_is_seen(cache: Path) -> None:
    put(Path("fox.block"), "edition 1\n" + block("Fox"))
    put(Path("ten.quilt"), sampler().replace(block("Fox"), ""))
    build()
    Path("fox.block").unlink()
    ended = piecewright("build", "ten.quilt", "--out", "out")
    assert ended.status == 1 and "block-unknown" in ended.err and SAME not in ended.out


def test_lock_that_comes_or_changes_is_seen(cache: Path) -> None:
    put(Path("shelf", "fox.block"), "edition 1\n" + block("Fox"))
    put(Path("ten.quilt"), sampler().replace(block("Fox"), ""))
    build("--shelf", "shelf")
    assert piecewright("lock", "ten.quilt", "--shelf", "shelf").status == 0
    assert SAME not in build("--shelf", "shelf").out
    assert build("--shelf", "shelf").out.endswith(SAME)
    put(Path("ten.quilt.lock"), Path("ten.quilt.lock").read_text() + "\n")
    ended = piecewright("build", "ten.quilt", "--out", "out", "--shelf", "shelf")
    assert SAME not in ended.out
    Path("ten.quilt.lock").unlink()
    assert SAME not in build("--shelf", "shelf").out


def test_file_changed_while_it_is_built_is_built_again(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from piecewright.command_line import drawn_files as building

    real = building.documents_of_quilt

    def meanwhile(*given: object) -> object:
        put(Path("ten.quilt"), sampler(changed="Fox"))
        return real(*given)  # type: ignore[arg-type]

    with monkeypatch.context() as patched:
        patched.setattr(building, "documents_of_quilt", meanwhile)
        build()
    old = made()
    assert SAME not in build().out
    assert made() == fresh() != old


def test_file_that_reads_two_ways_in_one_build_is_not_kept(tmp_path: Path) -> None:
    file = put(tmp_path / "a.block", HALVES)
    record = again.Record()
    record.read(str(file), b"one")
    record.read(str(file), b"two")
    assert not record.whole


def test_another_version_of_the_program_uses_nothing_of_this_ones(
    cache: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    build()
    for module in (again, kept_sheets):
        monkeypatch.setattr(module, "program_digest", lambda: "another")
    ended = build()
    assert SAME not in ended.out and "Reused" not in ended.out and made() == fresh()


def test_mistakes_are_found_again_each_time(cache: Path) -> None:
    put(Path("ten.quilt"), sampler().replace("fabric pale", "fabric pail"))
    for _ in range(2):
        ended = piecewright("build", "ten.quilt", "--out", "out")
        assert ended.status == 1 and "role-without-fabric" in ended.err and ended.out == ""
    assert not Path("out").exists()


def test_standard_input_is_read_each_time(cache: Path) -> None:
    for text in (sampler(), sampler(changed="Fox")):
        ended = piecewright("build", "-", "--out", "out", stdin=text.encode())
        assert ended.status == 0 and SAME not in ended.out
        put(Path("ten.quilt"), text)
        assert made() == fresh()


def test_page_left_from_longer_builds_is_pointed_at_again(cache: Path) -> None:
    build("--format", "svg", file="halves.block")
    count = len(made())
    left = put(Path("out", f"two-halves-v1-page-{count + 1}.svg"), b"old")
    for _ in range(2):
        ended = build("--format", "svg", file="halves.block")
        assert left.name in ended.err and SAME not in ended.out


# ---- what is kept is damaged, deleted or not ours ----------------------------------------------------------


def entries(cache: Path) -> list[Path]:
    """What is kept."""
    return sorted(cache.iterdir())


DAMAGE: dict[str, Callable[[bytes], bytes]] = {
    "emptied": lambda data: b"",
    "cut in half": lambda data: data[: len(data) // 2],
    "one byte short": lambda data: data[:-1],
    "one byte more": lambda data: data + b" ",
    "a bit of its head": lambda data: flipped(data, 20),
    "a bit of its middle": lambda data: flipped(data, len(data) // 2),
    "its last bit": lambda data: flipped(data, len(data) - 1),
    "all noughts": lambda data: bytes(len(data)),
    "something else": lambda data: b"\x89PNG\r\n",
}


def flipped(data: bytes, at: int) -> bytes:
    """The bytes with one bit changed."""
    return data[:at] + bytes([data[at] ^ 1]) + data[at + 1 :]


@pytest.mark.parametrize("kind", DAMAGE)
def test_damaged_entries_are_never_trusted(cache: Path, kind: str) -> None:
    build()
    files = made()
    for path in entries(cache):
        path.write_bytes(DAMAGE[kind](path.read_bytes()))
    ended = build()
    assert SAME not in ended.out and "Reused" not in ended.out and made() == files
    assert build().out.endswith(SAME), "what was damaged has been replaced"


def test_any_single_flipped_bit_is_found(cache: Path) -> None:
    build(file="halves.block")
    (entry,) = entries(cache)
    whole, key = entry.read_bytes(), entry.name.removesuffix(kept.ENDING)
    store = kept.Kept(str(cache))
    assert store.find(key) is not None
    for at in range(0, len(whole), max(1, len(whole) // 400)):
        entry.write_bytes(flipped(whole, at))
        assert store.find(key) is None, at


def test_entries_under_each_others_names_are_never_trusted(cache: Path) -> None:
    build()
    before = {path: path.read_bytes() for path in entries(cache)}
    for path, data in zip(before, [*list(before.values())[1:], next(iter(before.values()))], strict=True):
        path.write_bytes(data)
    ended = build()
    assert SAME not in ended.out and "Reused" not in ended.out and made() == fresh()


def test_entries_that_another_user_wrote_are_never_trusted(
    cache: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    build()
    monkeypatch.setattr(kept.os, "geteuid", lambda: os.getuid() + 1)
    ended = build()
    assert SAME not in ended.out and "Reused" not in ended.out


@pytest.mark.parametrize("what", ["all", "one", "folder"])
def test_what_is_kept_may_be_deleted_at_any_time(cache: Path, what: str) -> None:
    build()
    files = made()
    for path in entries(cache)[:1] if what == "one" else entries(cache):
        path.unlink()
    if what == "folder":
        cache.rmdir()
    build()
    assert made() == files and build().out.endswith(SAME)


def test_parts_of_entries_that_a_killed_build_left_do_no_harm(cache: Path) -> None:
    build()
    put(cache / f".{entries(cache)[0].name}.1-0.part", b"half")
    assert build().out.endswith(SAME)
    put(Path("ten.quilt"), sampler(changed="Fox"))
    assert "made 1." in build().out


def test_oldest_are_dropped_when_there_is_too_much(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    build()
    before = entries(cache)
    sizes = sum(path.stat().st_size for path in before)
    for at, path in enumerate(before):
        os.utime(path, (at, at))
    monkeypatch.setattr(kept, "MOST_BYTES", sizes)
    monkeypatch.setattr(kept, "LEFT_BYTES", sizes // 2)
    build(file="halves.block")
    left = entries(cache)
    assert sum(path.stat().st_size for path in left) <= sizes // 2
    assert before[0] not in left


# ---- where it is kept --------------------------------------------------------------------------------------


def test_off_and_no_cache_keep_nothing_and_find_nothing(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    build("--no-cache")
    assert not cache.exists()
    build()
    before = {path: path.stat().st_mtime_ns for path in entries(cache)}
    for _ in range(2):
        ended = build("--no-cache")
        assert SAME not in ended.out and "Reused" not in ended.out
    monkeypatch.setenv("PIECEWRIGHT_CACHE", "off")
    for _ in range(2):
        ended = build()
        assert SAME not in ended.out and "Reused" not in ended.out
    assert {path: path.stat().st_mtime_ns for path in entries(cache)} == before


def test_folder_that_cannot_be_written_is_no_trouble(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    put(Path("taken"), b"a file")
    for folder in ("taken", "taken/within", "/proc/nowhere", "x" * 300):
        monkeypatch.setenv("PIECEWRIGHT_CACHE", folder)
        for _ in range(2):
            ended = build()
            assert SAME not in ended.out and ended.err == "", folder
    assert made() == fresh()


def test_folder_that_can_only_be_read_still_serves(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As for any user but root, whom no mode of a folder stops: writing fails as on a read-only disk."""
    build()

    def refused(*_given: object) -> None:
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr(kept.os, "utime", refused)
    ended = build()
    assert ended.status == 0 and made() == fresh()


def test_without_a_home_nothing_is_kept(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PIECEWRIGHT_CACHE")
    for name in ("HOME", "XDG_CACHE_HOME"):
        monkeypatch.delenv(name, raising=False)
    assert kept.kept_folder() is None
    assert build().err == "" and SAME not in build().out
    monkeypatch.setenv("XDG_CACHE_HOME", "not/whole")
    assert kept.kept_folder() is None, "a relative place would be another one in every folder"
    monkeypatch.setenv("HOME", str(cache))
    assert kept.kept_folder() == str(cache / ".cache" / "piecewright")


def test_folder_is_for_its_user_alone(cache: Path) -> None:
    build()
    assert cache.stat().st_mode & 0o077 == 0


def test_the_same_words_in_another_folder_are_another_build(
    cache: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    build(file="halves.block")
    put(Path("elsewhere", "halves.block"), HALVES.replace("4in", "5in"))
    monkeypatch.chdir("elsewhere")
    assert SAME not in build(file="halves.block").out and made() == fresh(file="halves.block")


def test_two_builds_at_once_are_both_right(cache: Path) -> None:
    command = [sys.executable, "-m", "piecewright", "build", "ten.quilt", "--tables", "--out"]
    around = dict(os.environ)  # as `process` does: readline sets COLUMNS where os.environ does not see it
    running = [
        subprocess.Popen([*command, f"out{at}"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=around)
        for at in range(3)
    ]
    assert [(each.communicate()[1], each.returncode) for each in running] == [(b"", 0)] * 3
    assert made("out0") == made("out1") == made("out2") == fresh("--tables")
    assert not [path for path in cache.iterdir() if path.suffix != kept.ENDING]
    assert process(*command[3:], "out0", folder=Path.cwd()).out.endswith(SAME)


def test_a_process_of_its_own_finds_what_another_kept(cache: Path) -> None:
    first = process("build", "ten.quilt", "--out", "out", folder=Path.cwd())
    second = process("build", "ten.quilt", "--out", "out", folder=Path.cwd())
    assert (first.status, second.status) == (0, 0) and second.out == first.out + SAME
    assert made() == fresh()
