"""`python -m piecewright`: the same as the command `piecewright`."""

from __future__ import annotations

from .command_line.main import run

if __name__ == "__main__":
    raise SystemExit(run())
