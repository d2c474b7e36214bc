"""Files of one block are never written over by another's, in whatever order they are built."""

from __future__ import annotations

import json
import unicodedata
from itertools import permutations
from pathlib import Path
from xml.etree import ElementTree

import pytest
from piecewright.command_line.naming import digest
from pypdf import PdfReader
from support.block_files import put
from support.command import piecewright

TITLES = ("Ohio Star!", "Ohio-star", "Öhio Star")


def block(folder: Path, title: str, name: str = "x.block", more: str = "") -> Path:
    words = f'block "{title}" version 1 {{\n  finished 4in\n  seam top -- bottom\n{more}}}\n'
    return put(folder / name, f"edition 1\n\n{words}")


@pytest.mark.parametrize("kind, ending", [("pdf", ".pdf"), ("svg", "-page-1.svg"), ("png", "-page-1.png")])
def test_titles_that_make_one_name_keep_apart_over_runs_in_any_order(
    tmp_path: Path, kind: str, ending: str
) -> None:
    small = ("--format", kind, "--dpi", "36")
    fresh = {title: tmp_path / digest(title) for title in TITLES}
    for title, folder in fresh.items():
        ended = piecewright("build", block(tmp_path, title), *small, "--out", folder)
        assert ended.status == 0
    whole = {title: (folder / f"ohio-star-v1{ending}").read_bytes() for title, folder in fresh.items()}
    for number, order in enumerate(list(permutations(TITLES))[::3]):
        out = tmp_path / f"out{number}"
        for title in (*order, *reversed(order)):
            ended = piecewright("build", block(tmp_path, title), *small, "--out", out)
            own = "ohio-star-v1" if title == order[0] else f"ohio-star-{digest(title)}-v1"
            assert f"{own}{ending}" in ended.out
            assert ("Files called ohio-star-v1 are here that were made of something else" in ended.out) == (
                title != order[0]
            )
            assert (out / f"{own}{ending}").read_bytes() == whole[title]
        names = [f"ohio-star-{digest(title)}-v1" for title in order[1:]]
        assert {path.name.removesuffix(ending) for path in out.glob(f"*{ending}")} == {"ohio-star-v1", *names}


def test_pictures_and_booklets_keep_apart_too(tmp_path: Path) -> None:
    out = tmp_path / "out"
    for title in TITLES[:2]:
        file = block(tmp_path, title)
        assert piecewright("show", file, "--format", "svg,png,pdf", "--out", out).status == 0
        assert piecewright("build", file, "--booklet", "--format", "pdf,html", "--out", out).status == 0
    names = sorted(path.name for path in out.iterdir())
    other = f"ohio-star-{digest(TITLES[1])}-v1"
    assert names == sorted(
        f"{stem}-{rest}"
        for stem in ("ohio-star-v1", other)
        for rest in ("picture.svg", "picture.png", "picture.pdf", "booklet.pdf", "booklet.html")
    )
    for stem, title in (("ohio-star-v1", TITLES[0]), (other, TITLES[1])):
        for rest in ("picture", "booklet"):
            assert PdfReader(out / f"{stem}-{rest}.pdf").metadata.title == title
        ElementTree.parse(out / f"{stem}-picture.svg")


def test_a_file_that_nobody_knows_is_not_replaced_unsaid(tmp_path: Path) -> None:
    unknown = put(tmp_path / "out" / "ohio-star-v1.pdf", "words")
    put(tmp_path / "out" / "ohio-star-v1-v2.pdf", "words")  # would be of a title that goes on
    ended = piecewright("build", block(tmp_path, "Ohio Star"), "--out", tmp_path / "out")
    assert ended.status == 0 and f"{unknown} does not say what it was made of" in ended.out
    assert ended.out.count("does not say") == 1 and unknown.read_bytes().startswith(b"%PDF")


def test_accents_typed_otherwise_make_no_other_title(tmp_path: Path) -> None:
    one, two = (unicodedata.normalize(form, "Étoile à Facettes") for form in ("NFC", "NFD"))
    assert one != two
    block(tmp_path, two, "star.block")
    words = f'block "Row" version 1 {{\n  use "{one}" as star\n  grid 2 x 1 of 4in\n  row 2 star\n}}\n'
    row = put(tmp_path / "row.block", f"edition 1\n\n{words}")
    assert piecewright("check", row).status == 0
    assert piecewright("lock", row).status == 0
    lock = row.with_name("row.block.lock")
    told = json.loads(lock.read_text("utf-8"))
    for pin in (*told["blocks"], *told["uses"]):
        pin["title"] = two
    put(lock, json.dumps(told))
    assert piecewright("check", row).status == 0
    shelf = ("--shelf", tmp_path)
    assert two not in piecewright("find", two, *shelf).out and one in piecewright("find", two, *shelf).out
    for form in (one, two):
        ended = piecewright("build", tmp_path / "star.block", "--block", form, "--out", tmp_path / "out")
        assert ended.out.endswith("etoile-a-facettes-v1.pdf (2 pages).\n"), ended
    both = put(
        tmp_path / "both.block",
        "edition 1\n" + "".join(f'block "{title}" {{ finished 4in }}\n' for title in (one, two)),
    )
    assert "error[block-twice]" in piecewright("check", both).out


def test_a_maker_too_long_is_called_a_maker(tmp_path: Path) -> None:
    long, empty = (block(tmp_path, "Gate", "gate.block", f'  maker "{words}"\n') for words in ("x" * 121, ""))
    assert "There is nothing between the quotes." in piecewright("check", empty).out
    put(long, empty.read_text("utf-8").replace('maker ""', f'maker "{"x" * 121}"'))
    said = piecewright("check", long).out
    assert "A maker's name has at most 120 characters; this one has 121." in said and "title" not in said
