"""The example quilts: nothing to complain of, one command for each, and charts that agree with hand sums."""

from __future__ import annotations

import csv
import json
from io import BytesIO, StringIO
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from support.command import piecewright

FOLDER = Path(__file__).parent.parent / "examples" / "ropewalk-winter-quilts"
QUILTS = sorted(FOLDER.glob("*.quilt"))
PARTS = ("what you need", "counts", "cutting chart", "cutting pictures")


def told(name: str) -> list[dict[str, Any]]:
    """What programs are told of a quilt, a colourway each."""
    ended = piecewright("explain", FOLDER / name, "--format", "json")
    assert ended.status == 0, ended.err
    return list(json.loads(ended.out)["quilts"])


def cuts_of(quilt: dict[str, Any]) -> set[tuple[str, str, float, float, int, int]]:
    """Fabric, kind, the two sizes (the smaller first), how many are cut and how many pieces they give."""
    return {
        (cut["fabric"], cut["kind"], *sorted((cut["width"], cut["height"])), cut["cuts"], cut["pieces"])
        for cut in quilt["cutting"]
    }


@pytest.mark.parametrize("path", QUILTS, ids=[path.stem for path in QUILTS])
def test_a_quilt_opens_with_what_it_shows_and_checks_clean(path):
    assert path.read_text(encoding="utf-8").startswith("# The Ropewalk winter quilts")
    ended = piecewright("check", path)
    assert ended.status == 0 and "No mistakes" in ended.out


@pytest.mark.parametrize("path", QUILTS, ids=[path.stem for path in QUILTS])
def test_one_command_makes_everything_for_a_quilt(path, tmp_path):
    ended = piecewright("build", path, "--out", tmp_path, "--tables")
    assert ended.status == 0, ended.err
    documents = sorted(tmp_path.glob("*.pdf"))
    assert len(documents) == len(told(path.name))
    for document in documents:
        pages = [page.extract_text() for page in PdfReader(BytesIO(document.read_bytes())).pages]
        assert all(any(part in page for page in pages) for part in PARTS)
        assert all(f"page {number} of {len(pages)}" in page for number, page in enumerate(pages, 1))


def test_a_table_opens_in_a_spreadsheet_with_the_counts_of_the_picture(tmp_path):
    assert piecewright("build", FOLDER / "cradle-boat.quilt", "--out", tmp_path, "--tables").status == 0
    text = (tmp_path / "cradle-boat-v1-counts.csv").read_text(encoding="utf-8")
    rows = list(csv.DictReader(StringIO(text)))
    (quilt,) = told("cradle-boat.quilt")
    assert sum(int(row["pieces"]) for row in rows) == quilt["pieces"] == 375


def test_gannet_landing_by_hand():
    """Worked out with pencil and paper from the quilt's text, by the trade's rules (SOURCES 1.1 to 1.4).

    Blocks: 3 x 4 stars and 2 x 3 hour glasses. The middle is 3 x 8.485in by 4 x 8.485in: 25.456in x 33.941in,
    so the border to 28in x 36in is 1.272in and 1.029in wide. Geese: (28 + 36) x 2 / 4 = 32.
    """
    (quilt,) = told("gannet-landing.quilt")
    assert quilt["finished"] == {"width": 28 + 4 + 8, "height": 36 + 4 + 8}
    assert [block["count"] for block in quilt["blocks"]] == [12, 6, 32]
    assert cuts_of(quilt) >= {
        ("sand", "square", 2, 2, 48, 48),  # star corners: 1 1/2 + 1/2
        ("sand", "quarter-square triangle", 4.25, 4.25, 12, 48),  # star geese: 3 + 1 1/4
        ("slate", "half-square triangle", 2.375, 2.375, 48, 96),  # star skies: 1 1/2 + 7/8
        ("slate", "square", 3.5, 3.5, 12, 12),  # star middles: 3 + 1/2
        ("slate", "quarter-square triangle", 4.25, 4.25, 12, 48),  # hour glasses: 3 + 1 1/4
        ("rust", "quarter-square triangle", 5.25, 5.25, 8, 32),  # border geese: 4 + 1 1/4
        ("sand", "half-square triangle", 2.875, 2.875, 32, 64),  # border skies: 2 + 7/8
        ("slate", "quarter-square triangle", 9.75, 9.75, 3, 10),  # sides: 6 x 1.414 + 1 1/4 = 9.734
        ("slate", "half-square triangle", 5.125, 5.125, 2, 4),  # corners: 6 / 1.414 + 7/8 = 5.118
        ("sand", "strip", 1.875, 36.5, 2, 2),  # 1.272 + 1/2; 33.941 + 1/2, and 2 to trim
        ("sand", "strip", 1.625, 30.5, 2, 2),  # 1.029 + 1/2; 28 + 1/2, and 2 to trim
        ("slate", "square", 2.5, 2.5, 4, 4),  # corners of the pieced border
    }
    assert quilt["binding"]["length"] == 2 * (40 + 48) + 10
    # Sand in strips: 3 of 4 1/4, 3 of 2 7/8, 3 of 2, 1 of 1 5/8; 5% over, 4% lost in washing, 1/8 yd up.
    sand = next(each for each in quilt["fabrics"] if each["name"] == "sand")
    assert sand["used"] == 3 * 4.25 + 3 * 2.875 + 3 * 2 + 1.625 == 29
    assert 31.5 < 29 * 1.05 / 0.96 < 36 and sand["buy_text"] == "1 yd"


def test_colourways_differ_in_cloth_alone():
    """Two each of blocks of 13, 21, 17, 13, 13 and 28 pieces; 31 sashing strips, 20 posts, 8 borders."""
    tide, marsh = told("harbour-sampler.quilt")
    assert (tide["colourway"], marsh["colourway"]) == ("Winter tide", "Saltmarsh")
    sizes = [{cut[1:4] for cut in cuts_of(each) if cut[1] != "strip"} for each in (tide, marsh)]
    assert sizes[0] == sizes[1]
    assert tide["pieces"] == marsh["pieces"] == 2 * (13 + 21 + 17 + 13 + 13 + 28) + 31 + 20 + 8
    assert tide["fabrics"] != marsh["fabrics"]


def test_the_cradle_quilt_is_cut_from_the_fat_quarters_there_are():
    (quilt,) = told("cradle-boat.quilt")
    given = {"cream": 7, "teal": 4, "coral": 3, "lemon": 3}
    used = {each["name"]: each["pieces_of_cloth"] for each in quilt["fabrics"] if each["name"] in given}
    assert all(0 < used[name] <= given[name] for name in given)
    assert {each["buy_text"] for each in quilt["fabrics"]} >= {f"{used[name]} fat quarters" for name in used}
