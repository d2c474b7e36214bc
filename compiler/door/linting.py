"""Habits of good pattern files: what could be better in a file, and the file mended."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, errors_in
from ..diagnostics.source import Source
from ..measure.record import record
from ..shelves.locking import locked_sources, open_lock
from .compiling import FolderShelf
from .inputs import Input

ROUNDS: Final = 10  # of mending: a mend may uncover another, as a point that only an idle point used


def check_names() -> tuple[str, ...]:
    """The names of all checks."""
    from ..lint.checks import NAMES

    return tuple(NAMES)


@record
class Linter:
    """Which checks are made (`only` those, where any are named; none that is `allowed`), on which shelves."""

    shelf: FolderShelf
    only: tuple[str, ...] = ()
    allowed: tuple[str, ...] = ()

    def mend(
        self, given: Input, source: Source, said: tuple[Diagnostic, ...], outlines: list[str]
    ) -> tuple[Source, tuple[Diagnostic, ...], int]:
        """The source with every mend, what is left to say, and how many places were mended."""
        places = 0
        from ..lint.mending import mended

        for _ in range(ROUNDS):
            text, count = mended(source.text, said)
            if not count or errors_in(said):
                break
            places += count
            source = Source(source.name, text)
            said, _, after = self.said_of(given, source)
            assert after == outlines, "a mend has changed an outline"
        return source, said, places

    def said_of(
        self, given: Input, source: Source
    ) -> tuple[tuple[Diagnostic, ...], Mapping[str, Source], list[str]]:
        """What there is to say, the sources it is said of, and the fingerprints of the file's own blocks:
        one from elsewhere goes with its `use`, where nothing calls it."""
        from ..drafting.fingerprint import fingerprint_of
        from ..language.parser import parse
        from ..lint.checks import lint
        from ..lint.linted import Linted
        from ..pipeline import compile_file

        self.shelf.forget()
        locked = open_lock(given.file, self.shelf)
        if locked.value is None:
            return locked.diagnostics, locked_sources(locked.diagnostics), []
        made = compile_file(source, locked.value.shelf)
        sources = {**self.shelf.sources, **locked.value.sources}
        file = parse(source).value
        if made.value is None or made.failed or file is None:
            return tuple(errors_in(made.diagnostics)), sources, []
        drafts = tuple(each.draft for each in made.value.blocks if not each.from_elsewhere)
        linted = Linted(source, file, drafts, made.value.choices, made.diagnostics)
        outlines = sorted(fingerprint_of(each) for each in drafts)
        return lint(linted, self.only, self.allowed), sources, outlines
