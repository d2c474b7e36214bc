"""What changed between two drafts of a block: both read, paired by title, and compared."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from typing import TYPE_CHECKING

from ..diagnostics.diagnostic import Diagnostic, errors_in
from ..diagnostics.source import Source
from ..failures import FileIsNew, WrongUse, own_mistakes
from ..measure.record import record
from ..shelves.locking import open_lock
from ..words.commands import asked
from ..words.commands.files import versions_beside
from .compiling import FolderShelf, said_of_title
from .inputs import Input, one_input
from .naming import Names
from .pictures import Drawing
from .rewriting import read_text

if TYPE_CHECKING:
    from ..cutting.comparison import Comparison
    from ..pipeline import CompiledBlock

__all__ = ["Comparison", "CompiledBlock", "FileIsNew"]


class NoBlocks(Exception):
    """A file has errors, and so no blocks to compare: what is said of it, and the sources that is said of."""

    def __init__(self, said: Sequence[Diagnostic], sources: Mapping[str, Source]) -> None:
        super().__init__("; ".join(each.message for each in said))
        self.said, self.sources = said, sources


@record
class Reader:
    """Reads the blocks to compare, from files, from shelves, from earlier revisions of a file. NoBlocks where
    a file has an error."""

    shelf: FolderShelf
    standard: Callable[[], bytes] | None = None

    def named(self, name: str) -> Sequence[CompiledBlock]:
        """The blocks of a file, or the one block of that title and version here and on the shelves."""
        return self.compiled(one_input(name, self.standard, self.shelf))

    def compiled(self, given: Input) -> Sequence[CompiledBlock]:
        """The file's blocks as they are; of a quilt, those that it uses too."""
        from ..pipeline import compile_file

        self.shelf.forget()
        if given.titled is not None:
            self.shelf.settle(given.name, given.titled.home)
        read = read_text(given)[1]
        locked = open_lock(given.file, self.shelf)
        if locked.value is None:
            raise self._faults(locked.diagnostics, given.name, None)

        shelf = locked.value.shelf
        with own_mistakes(given.name):
            made = read.then(lambda source: compile_file(source, shelf))
        said = made.diagnostics + (said_of_title(given.titled, self.shelf) if given.titled else ())
        if made.value is None or errors_in(said):
            raise self._faults(said, given.name, read.value)
        if given.titled is not None:
            blocks = made.value.blocks
            return [each for each in blocks if (each.draft.title, each.draft.version) == given.titled.key]
        return made.value.blocks if made.value.quilts else _own(made.value.blocks)

    def at(self, revision: str, given: Input) -> Sequence[CompiledBlock]:
        """The file's blocks as they were at a revision."""
        from ..language.decode import read_source
        from ..pipeline import compile_file
        from ..shelves.revisions import RevisionShelf, file_at

        if given.path is None:
            raise WrongUse(asked.no_revisions_of_standard_input())
        self.shelf.forget()
        data, beside = file_at(revision, given.path)
        name = f"{revision}:{given.path.name}"
        shelf = RevisionShelf(beside, revision, self.shelf)
        read = read_source(name, data)
        with own_mistakes(name):
            made = read.then(lambda source: compile_file(source, shelf))
        if made.value is None or made.failed:
            raise self._faults(made.diagnostics, name, read.value)
        return made.value.blocks if made.value.quilts else _own(made.value.blocks)

    def _faults(self, diagnostics: Sequence[Diagnostic], name: str, source: Source | None) -> NoBlocks:
        """Why a file has no blocks to compare."""
        sources = {each.primary.span.source: Source(each.primary.span.source, "") for each in diagnostics}
        return NoBlocks(diagnostics, {**sources, **self.shelf.sources, name: source or Source(name, "")})


def compared(pairs: Sequence[tuple[CompiledBlock, CompiledBlock]]) -> list[Comparison]:
    """Every pair compared."""
    from ..cutting.comparison import Side
    from ..cutting.comparison import compare as compare_sides

    made = []
    for old, new in pairs:
        with own_mistakes(asked.block_called(new.draft.title)):
            made.append(compare_sides(Side(old.draft, old.templates), Side(new.draft, new.templates)))
    return made


def comparisons_told(
    comparisons: Sequence[Comparison], only_old: Sequence[str], only_new: Sequence[str], form: str
) -> str:
    """What changed, as 'text' or as 'json'; with the titles that one side alone has."""
    from ..sheets.reports.comparison_report import comparison_text
    from .records.comparison import comparisons_record

    if form == "json":
        from json import dumps

        return dumps(comparisons_record(list(comparisons), list(only_old), list(only_new)))
    parts = [comparison_text(each) for each in comparisons]
    parts += [asked.only_in(title, "old") for title in only_old]
    parts += [asked.only_in(title, "new") for title in only_new]
    return "\n\n".join(parts)


def paired(
    old: Sequence[CompiledBlock], new: Sequence[CompiledBlock]
) -> tuple[list[tuple[CompiledBlock, CompiledBlock]], list[str], list[str]]:
    """The blocks of one title, the newest version of each; and the titles that one side alone has."""
    before, after = _newest(old), _newest(new)
    if len(before) == len(after) == 1:
        return list(zip(before.values(), after.values(), strict=True)), [], []
    pairs = [(before[title], block) for title, block in after.items() if title in before]
    return (
        pairs,
        [title for title in before if title not in after],
        [title for title in after if title not in before],
    )


def _newest(blocks: Sequence[CompiledBlock]) -> dict[str, CompiledBlock]:
    found: dict[str, CompiledBlock] = {}
    for each in blocks:
        known = found.get(each.draft.title)
        if known is None or known.draft.version < each.draft.version:
            found[each.draft.title] = each
    return found


def overlays(comparisons: Sequence[Comparison], size: float, out: str) -> list[Drawing]:
    """Both outlines of each upon each other. `size` is in inches."""
    from ..sheets.arrange.overlay import overlay_page

    names, drawings = Names(out), []
    for each in comparisons:
        old, new = each.old.draft, each.new.draft
        stem = f"{names.stem(new.title, new.version, 'compare')}-beside-v{old.version}"
        subject = versions_beside(old.version, new.version)
        drawings.append(
            Drawing(
                asked.block_called(new.title),
                stem,
                new.title,
                new.maker,
                subject,
                partial(overlay_page, each, size),
            )
        )
    return drawings


def _own(blocks: Sequence[CompiledBlock]) -> list[CompiledBlock]:
    return [each for each in blocks if not each.from_elsewhere]


def older_versions(blocks: Sequence[CompiledBlock]) -> list[CompiledBlock]:
    """Of every title of which a file has several versions, the newest but one."""
    newest = _newest(blocks)
    older = [each for each in blocks if each is not newest[each.draft.title]]
    return list(_newest(older).values())
