"""Debian's Chromium for the tests of HTML."""

from __future__ import annotations

from collections.abc import Iterator
from shutil import which

import pytest
from playwright.sync_api import Browser, sync_playwright


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    path = which("chromium") or which("chromium-browser")
    assert path, "Chromium is not here: `bash .ci/setup` installs Debian's"
    with sync_playwright() as play:
        opened = play.chromium.launch(executable_path=path, args=["--no-sandbox"])
        yield opened
        opened.close()
