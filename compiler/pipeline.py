"""Every pass, in order. Start reading here.

    text --read--> Source --parse--> File --draft--> Drafts --make templates--> CompiledBlocks

Pages are made from compiled blocks by `sheets.arrange`, and written by the command line.
"""

from __future__ import annotations

from dataclasses import dataclass

from .cutting.model import Template
from .diagnostics.diagnostic import Outcome, in_order
from .diagnostics.source import Source
from .drafting.model import Draft
from .language.parser import parse
from .language.shelf import Shelf


@dataclass(frozen=True, slots=True)
class CompiledBlock:
    """A drafted block with its templates. `from_elsewhere`: used by this file, but written in another."""

    draft: Draft
    templates: tuple[Template, ...]
    from_elsewhere: bool = False


def compile_source(source: Source, shelf: Shelf) -> Outcome[tuple[CompiledBlock, ...]]:
    """Text to compiled blocks: those of the file in its order, then those it uses from elsewhere."""
    from .drafting.draft import draft_file

    parsed = parse(source)
    if parsed.value is None:
        return Outcome(None, in_order(parsed.diagnostics))
    drafted = draft_file(source, parsed.value, shelf, parsed.diagnostics)
    said = Outcome(drafted.value, parsed.diagnostics + drafted.diagnostics)
    made = said.then(lambda drafts: _with_templates(drafts, source))
    return Outcome(made.value, in_order(made.diagnostics))


def _with_templates(drafts: tuple[Draft, ...], source: Source) -> Outcome[tuple[CompiledBlock, ...]]:
    from .cutting.templates import make_templates

    compiled, said = [], []
    for draft in drafts:
        templates = make_templates(draft)
        said += templates.diagnostics
        elsewhere = draft.origin is not None and draft.origin.source != source.name
        compiled.append(CompiledBlock(draft, templates.value or (), elsewhere))
    outcome = Outcome(tuple(compiled), tuple(said))
    return Outcome(None, outcome.diagnostics) if outcome.failed else outcome
