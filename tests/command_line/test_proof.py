"""No sheet leaves of a block that does not come together: every command cuts and sews it again first."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest
from piecewright.drafting.model import Draft
from piecewright.sewing.model import Assembly
from piecewright.sewing.order import assembly as assembling
from support.block_files import VANE, put
from support.command import piecewright

ASSEMBLE = assembling.assemble


@pytest.fixture
def misprinted(monkeypatch: pytest.MonkeyPatch) -> None:
    """The last step's finished width comes out an eighth too wide."""

    def misprint(draft: Draft) -> Assembly:
        made = ASSEMBLE(draft)
        last = made.steps[-1]
        wide = replace(last, finished=replace(last.finished, width=last.finished.width + 0.125))
        return replace(made, steps=(*made.steps[:-1], wide))

    monkeypatch.setattr(assembling, "assemble", misprint)


@pytest.mark.usefixtures("misprinted")
@pytest.mark.parametrize("command", [("build", "--out", "out"), ("show", "--out", "out"), ("explain",)])
def test_a_wrong_number_stops_every_sheet(
    command: tuple[str, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    ended = piecewright(command[0], put(tmp_path / "vane.block", VANE), *command[1:])
    assert ended.status == 1
    assert "error[block-does-not-sew]: At step 11, the finished width of u11 comes out 9.000in" in ended.err
    assert "nothing was printed" in ended.err
    assert not (tmp_path / "out").exists() and not ended.out.startswith("Tidewater")


@pytest.mark.usefixtures("misprinted")
def test_check_says_so_too(tmp_path: Path) -> None:
    ended = piecewright("check", put(tmp_path / "vane.block", VANE), "--format", "json")
    (said,) = json.loads(ended.out)
    assert (ended.status, said["code"], said["severity"]) == (1, "block-does-not-sew", "error")
