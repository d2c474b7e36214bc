"""Where commands are tried from, unless a test stands elsewhere."""

from __future__ import annotations

from pathlib import Path

import pytest
from support.block_files import VANE, put


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder that we stand in, with `vane.block` in a folder beside it."""
    put(tmp_path / "files" / "vane.block", VANE)
    folder = tmp_path / "here"
    folder.mkdir()
    monkeypatch.chdir(folder)
    return folder
