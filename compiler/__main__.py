"""`python -m piecewright`: the same as the command `piecewright`."""

from __future__ import annotations

from .command_line.main import main

if __name__ == "__main__":
    raise SystemExit(main())
