"""The page of reference: it says what the door has, and its examples run."""

from __future__ import annotations

import re
from pathlib import Path

import piecewright
import pytest
from piecewright.door.regenerate import PAGE, page
from support.block_files import HALVES, VANE, put

EXAMPLES = re.findall(r"(?ms)^```python\n(.*?)^```", PAGE.read_text())
MAKES = (["vane.pdf"], [], ["chart.pdf"], [], ["tidewater-vane-v2-booklet.html", "two-halves-v1-booklet.pdf"])
README = Path(__file__).parents[2] / "README.md"


def test_the_page_is_as_the_docstrings_are() -> None:
    assert PAGE.read_text() == page(), "run `python -m piecewright.door.regenerate`"


def test_the_page_tells_of_everything_that_is_offered() -> None:
    for name in piecewright.__all__:
        assert re.search(rf"(?m)^### (piecewright\.)?{name}\b", page()), name
        assert getattr(piecewright, name).__doc__, name


def test_there_is_nothing_that_is_not_offered() -> None:
    with pytest.raises(AttributeError, match="compile_everything"):
        piecewright.compile_everything  # noqa: B018


@pytest.mark.parametrize("number", range(len(MAKES)))
def test_each_example_runs(
    tmp_path: Path, number: int, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert len(EXAMPLES) == len(MAKES)
    quilt = re.search(r'(?ms)^    quilt "Breakwater Rows".*?^    }', README.read_text())
    assert quilt
    put(tmp_path / "breakwater.quilt", "edition 1\n" + re.sub(r"(?m)^    ", "", quilt[0]) + "\n")
    put(tmp_path / "vane.block", VANE)
    put(tmp_path / "blocks" / "vane.block", VANE)
    put(tmp_path / "blocks" / "halves.block", HALVES)
    monkeypatch.chdir(tmp_path)
    exec(EXAMPLES[number], {})
    assert capsys.readouterr().out or number == 0
    made = {path.name for path in tmp_path.rglob("*")}
    assert set(MAKES[number]) <= made
