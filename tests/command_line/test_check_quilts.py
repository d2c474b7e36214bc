"""Quilts that cannot be made, as a quilter meets them: told in words, with carets under the ones that are
wrong, by `check` and by `build` alike, and nothing written."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import NamedTuple

import pytest
from support.block_files import HALVES, put
from support.command import Ended, piecewright
from support.quilts import quilt_text

SET = "set straight 2 across 2 down { alternate pair }"
CLOTH = "fabric dark  fabric pale  fabric sand  fabric indigo"


class Bad(NamedTuple):
    """One quilt: its body and fabrics, the code it is told by, the words under the carets, the message's."""

    body: str
    code: str
    pointed: str
    said: str
    fabrics: str = CLOTH
    uses: str = 'use "Pair" as pair  use "Goose" as goose'


BAD = {
    "a block that does not fit its cell": Bad(
        "set straight 2 across 2 down of 4in { alternate goose }",
        "unit-proportions",
        "goose",
        "4in x 2in as it lies, and its cell is 4in x 4in",
    ),
    "a size that does not divide": Bad(
        SET + "\nborder 3in of pair",
        "border-unfit",
        "border 3in of pair",
        "The top is 14in long: 4 units make 12in, 5 make 15in",
    ),
    "a block at a size that nobody can sew": Bad(
        "set straight 2 across 2 down of 1/64in { alternate pair }",
        "block-too-small",
        "pair",
        'a piece of "Pair" is at most',
    ),
    "a role with no fabric": Bad(
        SET,
        "role-without-fabric",
        '"Trial"',
        '`pale` (of "Pair") has no fabric',
        CLOTH.replace("fabric pale", ""),
    ),
    "a word that is no fabric": Bad(
        SET + "\nborder 2in in gold", "role-without-fabric", "gold", "`gold` is no fabric"
    ),
    "a row too long": Bad(
        "set straight 2 across 2 down {\nrow 2 pair\nrow pair, pair, pair\n}",
        "row-too-long",
        "row pair, pair, pair",
        "This row has 3 cells and the set is 2 across: 3 make 12in, 2 make 8in",
    ),
    "a row too many": Bad(
        "set straight 2 across 1 down {\nrow 2 pair\nrow 2 pair\n}",
        "row-off-grid",
        "row 2 pair",
        "The set is 1 row down",
    ),
    "a border longer than its cloth, of one piece": Bad(
        "set straight 20 across 20 down { alternate pair }\nborder 2in in rose unjoined",
        "border-too-long",
        "border 2in in rose unjoined",
        "2 1/2in x 82 1/2in, and no piece of `rose` is as long",
        CLOTH + "  fabric rose fat quarter 20",
    ),
    "a thousand blocks by a thousand": Bad(
        "set straight 1000 across 1000 down { alternate pair }",
        "quilt-too-large",
        "set straight 1000 across 1000 down { alternate pair }",
        "1,000,000 cells, and 40,000 is the most",
    ),
    "more than a thousand across": Bad(
        "set straight 100000 across 2 down { alternate pair }", "count-too-large", "100000", "at most 1000"
    ),
    "no usable width": Bad(
        SET, "length-zero", "0in", "`0in` is no length", CLOTH.replace("dark", "dark width 0in", 1)
    ),
    "less than no usable width": Bad(
        SET, "length-negative", "-3in", "below zero", CLOTH.replace("dark", "dark width -3in", 1)
    ),
    "a cloth narrower than any piece": Bad(
        SET,
        "piece-too-wide",
        "dark",
        "`dark` is 1/2in wide, too narrow for a square 4 7/8in x 4 7/8in",
        CLOTH.replace("dark", "dark width 1/2in", 1),
    ),
    "a cloth narrower than a ruler's mark": Bad(
        SET, "piece-too-wide", "dark", "`dark` is 0.016in wide", CLOTH.replace("dark", "dark width 1/64in", 1)
    ),
    "a fabric that shrinks to nothing": Bad(
        SET, "shrinkage-too-large", "100%", "Nothing is left", CLOTH.replace("dark", "dark shrinks 100%", 1)
    ),
    "a scrap smaller than any piece": Bad(
        SET,
        "cloth-short",
        "dark",
        "1 scrap of `dark` leaves no room for 2 squares 4 7/8in x 4 7/8in",
        CLOTH.replace("dark", "dark scrap 1in", 1),
    ),
    "a back from scraps": Bad(
        SET, "backing-from-scraps", "sand", "cut off the bolt", CLOTH.replace("sand", "sand fat quarter 9")
    ),
    "a version that there is not": Bad(
        SET, "version-unknown", "3", '"Pair" has no version 3', uses='use "Pair" version 3 as pair'
    ),
    "a block that is nowhere": Bad(
        SET, "block-unknown", '"Pears"', 'There is no block "Pears"', uses='use "Pears" as pair'
    ),
}


def pointed_at(out: str, code: str) -> list[str]:
    """The words under the carets, for each time that the code is told."""
    found = re.findall(
        rf"^error\[{code}\]: .*\n +--> .*\n +\|\n *\d+ \| (.*)\n +\| ( *)(\^+)", out, re.MULTILINE
    )
    return [line[len(space) : len(space) + len(carets)] for line, space, carets in found]


def refused(folder: Path, text: str) -> Ended:
    """What `check` says of a quilt; `build` says the same, and neither writes anything."""
    file = put(folder / "trial.quilt", text)
    checked = piecewright("check", file)
    built = piecewright("build", file, "--out", folder / "sheets", "--tables", "--blocks")
    assert (checked.status, built.status) == (1, 1)
    assert checked.err == "" and built.out == "" and built.err == checked.out
    assert [each.name for each in folder.iterdir()] == ["trial.quilt"]
    return checked


@pytest.mark.parametrize("name", BAD)
def test_each_is_told_at_its_words_and_nothing_is_written(tmp_path: Path, name: str) -> None:
    bad = BAD[name]
    told = refused(tmp_path, quilt_text(bad.body, fabrics=bad.fabrics, uses=bad.uses))
    assert pointed_at(told.out, bad.code) == [bad.pointed]
    assert bad.said in told.out and "\nhelp: " in told.out
    assert told.out.rstrip().splitlines()[-1].startswith("1 error")


@pytest.mark.parametrize("name", BAD)
def test_each_is_one_record_of_json_at_the_same_words(tmp_path: Path, name: str) -> None:
    bad = BAD[name]
    text = quilt_text(bad.body, fabrics=bad.fabrics, uses=bad.uses)
    ended = piecewright("check", "-", "--format", "json", stdin=text.encode())
    (record,) = [each for each in json.loads(ended.out) if each["severity"] == "error"]
    line = text.splitlines()[record["line"] - 1]
    assert record["code"] == bad.code and line[record["column"] - 1 :].startswith(bad.pointed)
    assert bad.said in record["message"] and record["help"]


def test_fabric_with_no_role_is_noted_and_the_quilt_is_made(tmp_path: Path) -> None:
    file = put(tmp_path / "trial.quilt", quilt_text(SET, fabrics=CLOTH + "  fabric rose"))
    ended = piecewright("check", file)
    assert ended.status == 0 and "note[fabric-unused]: Nothing is cut from `rose`." in ended.out


def test_scrap_that_holds_nothing_is_a_warning_where_other_pieces_do(tmp_path: Path) -> None:
    file = put(
        tmp_path / "trial.quilt",
        quilt_text(SET, fabrics=CLOTH.replace("dark", "dark scrap 1in fat quarter", 1)),
    )
    ended = piecewright("check", file)
    assert ended.status == 0
    assert "warning[scrap-too-small]: No piece of `dark` can be cut from the scrap 1in x 1in." in ended.out
    assert piecewright("check", file, "--strict").status == 1


# ---- blocks of the quilt that stand elsewhere --------------------------------------------------------------

ASKING = """edition 1
quilt "Asking" {
  use "Two Halves" as half
  fabric dark  fabric pale
  set straight 2 across 2 down { alternate half }
  binding 2in in dark  backing in pale  batting
}
"""


def test_block_is_found_beside_the_quilt_on_shelves_and_in_the_environments_shelves(tmp_path: Path) -> None:
    quilt = put(tmp_path / "quilts" / "asking.quilt", ASKING)
    assert "block-unknown" in piecewright("check", quilt).out
    put(tmp_path / "shelf" / "deep" / "halves.block", HALVES)
    assert piecewright("check", quilt, "--shelf", tmp_path / "shelf").status == 0
    assert piecewright("check", quilt, env={"PIECEWRIGHT_SHELVES": str(tmp_path / "shelf")}).status == 0
    put(tmp_path / "quilts" / "halves.block", HALVES)
    assert piecewright("check", quilt).status == 0


def test_error_in_a_used_block_is_told_in_the_blocks_own_file(tmp_path: Path) -> None:
    broken = HALVES.replace("top-left -- bottom-right", "top-left -- center")
    quilt = put(tmp_path / "asking.quilt", ASKING)
    put(tmp_path / "halves.block", broken)
    ended = piecewright("check", quilt)
    assert ended.status == 1 and "error[seam-hangs]" in ended.out
    assert f"--> {tmp_path / 'halves.block'}:5:" in ended.out and "asking.quilt:3" in ended.out
    assert piecewright("build", quilt, "--out", tmp_path / "sheets").status == 1
    assert not (tmp_path / "sheets").exists()


def test_used_block_that_cannot_be_read_is_pointed_at(tmp_path: Path) -> None:
    quilt = put(tmp_path / "asking.quilt", ASKING)
    put(tmp_path / "halves.block", HALVES.replace("finished", "finnished"))
    ended = piecewright("check", quilt)
    assert ended.status == 1 and "error[block-unknown]" in ended.out
    assert "note[shelf-file-faulty]" in ended.out and "halves.block" in ended.out
    assert "Mend the file that has it" in ended.out and "Did you mean" not in ended.out


def test_files_with_mistakes_that_the_quilt_does_not_need_are_not_told_of(tmp_path: Path) -> None:
    put(tmp_path / "other.block", HALVES.replace("finished", "finnished"))
    told = refused_among(
        tmp_path,
        ASKING.replace("2 across 2 down", "2 across 2 down of 4in x 2in") + HALVES.partition("\n")[2],
    )
    assert "unit-proportions" in told and "other.block" not in told


def refused_among(folder: Path, text: str) -> str:
    """What is said of a quilt in a folder that has other files."""
    ended = piecewright("check", put(folder / "trial.quilt", text))
    assert ended.status == 1
    return ended.out


# ---- titles ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "title",
    [
        "../../etc/passwd",
        "/etc/passwd",
        "..",
        ".hidden",
        'say "hi"',
        "<b>bold</b> & co",
        "🧵🪡",
        "מרובע ים",
        "C:\\x",
        "%s %n {0}",
        "$(rm x)",
        "a" * 120,
        "=1+1",
    ],
)
def test_title_of_a_quilt_never_leads_out_of_the_folder(tmp_path: Path, title: str) -> None:
    quoted = title.replace("\\", "\\\\").replace('"', '\\"')
    text = quilt_text(SET + f'\nnote "{quoted}"').replace('"Trial"', f'"{quoted}"')
    file = put(tmp_path / "here" / "trial.quilt", text)
    ended = piecewright("build", file, "--out", tmp_path / "here" / "sheets", "--tables")
    assert ended.status == 0, ended.err
    assert sorted(each.name for each in tmp_path.iterdir()) == ["here"]
    assert sorted(each.name for each in (tmp_path / "here").iterdir()) == ["sheets", "trial.quilt"]
    names = [each.name for each in (tmp_path / "here" / "sheets").iterdir()]
    assert len(names) == 5 and all(each.isascii() and not each.startswith(".") for each in names)
    numbers = next(each for each in (tmp_path / "here" / "sheets").iterdir() if each.suffix == ".json")
    assert json.loads(numbers.read_text())["title"] == title


def test_title_with_letters_that_cannot_be_seen_is_refused(tmp_path: Path) -> None:
    told = refused(tmp_path, quilt_text(SET).replace("Trial", "Tri\u202eal"))
    assert "error[character-unseen]" in told.out and "\u202e" not in told.out


@pytest.mark.parametrize(
    "body",
    [
        "",
        "set straight 2 across 2 down { alternate pair } border to 8in in dark",
        "set on point 1 across 1 down { row pair } sashing 1in in dark",
    ],
)
def test_quilt_that_is_only_begun_is_told_in_few_words(tmp_path: Path, body: str) -> None:
    told = refused(tmp_path, quilt_text(body))
    assert told.out.count("error[") == 1
