"""Stands here so that pytest puts this folder on the path: tests write `from support.x import y`."""

from __future__ import annotations

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    """`--update` writes what is said today into the fixtures' comments, to be read before it is kept."""
    parser.addoption("--update", action="store_true", help="rewrite expectations in fixtures")
