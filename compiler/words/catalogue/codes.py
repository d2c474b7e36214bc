"""Every code once: what it means, an example that gives it and one that does not.

`explain CODE` prints an entry. The entries stand in one module for each folder that makes diagnostics; a test
compares them with the codes in the program both ways and compiles every example.
"""

from __future__ import annotations

from functools import cache

from .entry import Entry


@cache
def catalogue() -> dict[str, Entry]:
    """Every entry by its code, in the order of the program's folders."""
    from .drafting import DRAFTING
    from .fabrics import FABRICS
    from .files import FILES
    from .language import LANGUAGE
    from .lint import LINT
    from .locks import LOCKS
    from .pieces import PIECES
    from .quilts import QUILTS
    from .sewing import SEWING
    from .units import UNITS
    from .washed import WASHED
    from .writing import WRITING

    entries = (
        *FILES,
        *LANGUAGE,
        *WRITING,
        *DRAFTING,
        *PIECES,
        *WASHED,
        *UNITS,
        *LINT,
        *LOCKS,
        *QUILTS,
        *FABRICS,
        *SEWING,
    )
    found = {entry.code: entry for entry in entries}
    assert len(found) == len(entries), "a code has one entry"
    return found
