"""Whatever a row, a unit or a strip takes was made by an earlier step, and just as many of it: in the
numbers, in what `explain` says, in the booklet as PDF and as HTML."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from pypdf import PdfReader
from rows_before_use import ROW, check_file, check_print, printed_lines, run

BLOCKS = """
block "Ripple" {
  finished 4in x 2in  faces top
  seam bottom-left -- top -- bottom-right
  piece crest at bottom in dark
  piece sky at top-left, top-right in pale
}
block "Halves" {
  finished 4in  faces top-left
  seam top-right -- bottom-left
  piece one at top-left in dark
  piece two at bottom-right in pale
}
"""

USES = '  use "Ripple" as ripple\n  use "Halves" as halves\n  fabric dark  fabric pale  fabric sand\n'

LAST = "  binding 2in in dark  backing in sand  batting\n"

BODIES = {
    # Six ripples are a row, and the sides of the third border; seven are the second border's.
    "Strip in Border and Centre": """
  set rows {
    row 6 ripple
    row 6 halves
    row 6 ripple
    row 2 ripple, 2 plain dark, 2 ripple, 2 plain sand
    row 6 halves
  }
  border to 28in x 20in in sand
  border 2in of ripple corners plain dark
  border 2in of ripple corners plain dark
""",
    # Five halves are a row at two places, and a part of a longer row at others.
    "Short and Long Alike": """
  roles "Ebb" dark = dark, pale = pale
  roles "Flood" dark = pale, pale = sand
  set rows {
    row 5 halves  row 10 ripple turned 90deg  row 5 halves  row 5 ripple  row 5 halves turned 180deg  row 5
    ripple
  }
  border 4in of halves corners plain sand
""",
    "Twice Round": """
  set straight 3 across 3 down of 4in { alternate halves, plain sand }
  border 2in of ripple corners plain dark
  border 2in of ripple corners plain dark
  border 1in in pale mitred
""",
    "On Point Twice": """
  set on point 2 across 3 down of 4in with triangles in sand { alternate halves, halves turned 90deg }
  border to 16in x 20in in pale
  border 2in of ripple corners plain dark
  border 2in of ripple corners plain dark
""",
}


def quilts() -> str:
    """All of them in one file."""
    made = [f'quilt "{title}" {{\n{USES}{body}{LAST}}}\n' for title, body in BODIES.items()]
    return f"edition 1\n{''.join(made)}{BLOCKS}"


def test_what_is_used_is_made_before_and_all_that_is_made_is_used(tmp_path: Path) -> None:
    (tmp_path / "twice.quilt").write_text(quilts())
    assert check_file(tmp_path / "twice.quilt", tmp_path / "out") > 800
    pages = [
        page.extract_text().split("\n")
        for pdf in sorted((tmp_path / "out").glob("*.pdf"))
        for page in PdfReader(pdf).pages
    ]
    rows = [page for page in pages if any(ROW.match(line) and "·" in line for line in page)]
    assert len(rows) > 5
    assert not any(ROW.match(page[3]) for page in rows), "a page goes on and does not say of what"
    assert any(re.fullmatch(r"(Rows|Centre|Border \d), continued", page[3]) for page in rows)
    words = " ".join(line for page in rows for line in page)
    assert "Keep 2 for Border 3." in words, "rows that are made early for a border are kept for it"


@pytest.mark.parametrize("way", ["templates", "papers"])
def test_the_steps_of_the_librarys_blocks_are_in_one_order_too(tmp_path: Path, way: str) -> None:
    """Blocks with many units, sewn by machine and over papers; as a quilt holds them."""
    uses = {"star": "Ohio Star", "paws": "Bear's Paws", "cabin": "Log Cabin", "chain": "Double Irish Chain"}
    named = "".join(f'  use "{title}" as {word}\n' for word, title in uses.items())
    roles = ("dark", "medium", "light", "background", "pale", "hearth", "accent")
    cloths = "  fabric one  fabric two\n  roles " + ", ".join(
        f"{role} = {'one' if at % 2 else 'two'}" for at, role in enumerate(roles)
    )
    (tmp_path / "four.quilt").write_text(
        f'edition 1\nquilt "Four" {{\n{named}{cloths}\n  set straight 2 across 2 down of 12in {{\n'
        "    row star, paws\n    row cabin, chain\n  }\n  binding 2in in one  backing in two  batting\n}\n"
    )
    run("build", tmp_path / "four.quilt", "--parts", "steps", "--sew", way, "--out", tmp_path)
    assert check_print(printed_lines(next(tmp_path.glob("*.pdf")))) >= 60
