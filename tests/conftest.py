"""Stands here so that pytest puts this folder on the path: tests write `from support.x import y`."""

from __future__ import annotations

import os
import signal

import pytest
from hypothesis import settings

# The same examples in every run, on every machine, however busy: what passed here passes there. To look
# further, run with --hypothesis-profile=default.
settings.register_profile("fixed", derandomize=True, deadline=None)
settings.load_profile("fixed")

# A shell that starts the tests in the background has them ignore the interrupt key, and so would every
# command they start: those that test what the key does need it as a terminal gives it.
signal.signal(signal.SIGINT, signal.default_int_handler)

# Builds keep nothing for the next one, and find nothing of the user's, but where a test says so.
os.environ["PIECEWRIGHT_CACHE"] = "off"


def pytest_addoption(parser: pytest.Parser) -> None:
    """`--update` writes what is said today into the fixtures' comments, to be read before it is kept."""
    parser.addoption("--update", action="store_true", help="rewrite expectations in fixtures")
