"""Every pass, in order. Start reading here.

    text --read--> Source --parse--> File --draft--> Drafts --cut, assemble, sew again--> CompiledBlocks

Pages are made from compiled blocks by `sheets.arrange`, and written by the command line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from .cutting.model import Template
from .diagnostics.diagnostic import Diagnostic, Outcome, Severity, in_order
from .diagnostics.source import Source
from .drafting.model import Draft
from .language.parser import parse
from .language.shelf import Choice, Shelf
from .language.tree import File, Node
from .measure.record import record

if TYPE_CHECKING:
    from .diagnostics.source import Span
    from .drafting.draft import Drafter
    from .drafting.rough import RoughDraft
    from .drafting.washed.model import Measured
    from .quilt.assembly_model import QuiltAssembly
    from .quilt.model import Quilt
    from .sewing.model import Assembly, Proof


@record
class CompiledBlock:
    """A drafted block, its templates, and how it goes together: `proof` says that it comes out as drafted.

    `from_elsewhere`: used by this file, but written in another; where a quilt uses it, at its size there.
    """

    draft: Draft
    templates: tuple[Template, ...]
    assembly: Assembly
    proof: Proof
    from_elsewhere: bool = False


@record
class Compilation:
    """All that a file makes: its blocks, then those it uses from elsewhere; its quilts, each colourway
    one, and how each of them goes together."""

    blocks: tuple[CompiledBlock, ...]
    quilts: tuple[Quilt, ...] = ()
    assemblies: tuple[QuiltAssembly, ...] = ()
    choices: tuple[Choice, ...] = ()  # what every `use` was found to mean
    measured: tuple[Measured, ...] = ()  # the file's washed blocks, as they were drafted
    drafts: tuple[Draft, ...] = ()  # every block, its own and used, at its own size


def compile_file(source: Source, shelf: Shelf, maker: str = "") -> Outcome[Compilation]:
    """Text to compiled blocks and laid-out quilts; `maker`: who is named where the text names nobody."""
    from .drafting.draft import Drafter

    parsed = parse(source)
    if parsed.value is None:
        return Outcome(None, in_order(parsed.diagnostics))
    drafter = Drafter(source, parsed.value, shelf, maker=maker)
    own = drafter.draft_blocks(parsed.value, parsed.diagnostics)
    quilts, said = _quilts_of(parsed.value, parsed.diagnostics, source, drafter)
    sewn = _sew_quilts(quilts)
    drafts = (*own, *drafter.from_elsewhere)
    blocks = _compile_blocks(drafts, source, _quilt_blocks(quilts, sewn.value))
    measured = tuple(
        drafter.measured[each.span] for each in parsed.value.blocks if each.span in drafter.measured
    )
    outcome = Outcome(
        Compilation(
            blocks.value or (), tuple(quilts), sewn.value or (), tuple(drafter.choices), measured, drafts
        ),
        in_order([*parsed.diagnostics, *drafter.diagnostics, *said, *blocks.diagnostics, *sewn.diagnostics]),
    )
    return Outcome(None, outcome.diagnostics) if outcome.failed else outcome


def _sew_quilts(quilts: Sequence[Quilt]) -> Outcome[tuple[QuiltAssembly, ...]]:
    """How the quilts go together, sewn again: none leaves that does not come out as laid out."""
    if not quilts:
        return Outcome(())
    from .quilt.assembly import assemble_quilts

    return assemble_quilts(quilts)


def _quilt_blocks(
    quilts: Sequence[Quilt], assemblies: Sequence[QuiltAssembly] | None
) -> dict[Span | None, list[CompiledBlock]]:
    """The blocks of the quilts at the sizes they have there, each once, by where they are written."""
    found: dict[Span | None, list[CompiledBlock]] = {}
    known: set[int] = set()
    for quilt, made in zip(quilts, assemblies or (), strict=bool(assemblies)):
        for block, sewn in zip(quilt.blocks, made.blocks, strict=True):
            if id(block) not in known:
                known.add(id(block))
                found.setdefault(block.draft.origin, []).append(
                    CompiledBlock(block.draft, block.templates, sewn.assembly, sewn.proof, True)
                )
    return found


def _quilts_of(
    file: File, read: tuple[Diagnostic, ...], source: Source, drafter: Drafter
) -> tuple[list[Quilt], list[Diagnostic]]:
    """The file's quilts, those without errors in their text. A file without quilts loads nothing for them."""
    sound = [each for each in file.quilts if not misread(each, read)]
    if not sound:
        return [], []
    from .quilt.layout import lay_out_all

    quilts, said = lay_out_all(sound, source, drafter)
    return [each if each.maker else replace(each, maker=drafter.maker) for each in quilts], said


def misread(node: Node, diagnostics: tuple[Diagnostic, ...]) -> bool:
    """Whether the parser found an error inside a node."""
    return any(
        each.severity is Severity.ERROR and node.span.start <= each.primary.span.start <= node.span.end
        for each in diagnostics
    )


def draft_source(source: Source, shelf: Shelf) -> Outcome[tuple[Draft, ...]]:
    """The file's own blocks drafted, and no more; none where anything in the file is wrong."""
    from .drafting.draft import Drafter

    parsed = parse(source)
    if parsed.value is None:
        return Outcome(None, in_order(parsed.diagnostics))
    drafter = Drafter(source, parsed.value, shelf)
    drafts = tuple(drafter.draft_blocks(parsed.value, parsed.diagnostics))
    outcome = Outcome(drafts, in_order([*parsed.diagnostics, *drafter.diagnostics]))
    return Outcome(None, outcome.diagnostics) if outcome.failed else outcome


def rough_drafts(source: Source, shelf: Shelf, said: Sequence[Diagnostic]) -> list[RoughDraft]:
    """The file's blocks in which an error was told, as far as they are sound; none
    of those that are drafted, whose mistakes lie elsewhere."""
    from .drafting.draft import Drafter
    from .drafting.rough import rough_drafts as roughly

    parsed = parse(source)
    if parsed.value is None:
        return []
    drafter = Drafter(source, parsed.value, shelf)
    finished = {each.origin for each in drafter.draft_blocks(parsed.value, parsed.diagnostics)}
    blocks = [each for each in parsed.value.blocks if each.title.span not in finished]
    return roughly(blocks, source, drafter, said)


def _compile_blocks(
    drafts: tuple[Draft, ...], source: Source, in_quilts: dict[Span | None, list[CompiledBlock]]
) -> Outcome[tuple[CompiledBlock, ...]]:
    """Blocks of the file at their own size; those from elsewhere that its quilts use, at the sizes which they
    have there."""
    compiled: list[CompiledBlock] = []
    said: list[Diagnostic] = []
    for draft in drafts:
        elsewhere = draft.origin is not None and draft.origin.source != source.name
        sized = in_quilts.get(draft.origin, [])
        if elsewhere and sized:
            compiled += sized
            continue
        same = next((each for each in sized if each.draft is draft), None)
        made = _compile_block(draft, same, from_elsewhere=elsewhere)
        said += made.diagnostics
        if made.value is not None:
            compiled.append(made.value)
    outcome = Outcome(tuple(compiled), tuple(said))
    return Outcome(None, outcome.diagnostics) if outcome.failed else outcome


def _compile_block(
    draft: Draft, same: CompiledBlock | None, *, from_elsewhere: bool
) -> Outcome[CompiledBlock]:
    """The block cut, and sewn again: none leaves that does not come out as drafted. `same`: as a quilt of the
    file has it."""
    from .cutting.templates.making import make_templates

    made = make_templates(draft) if same is None else Outcome(same.templates)
    if draft.units and made.value is not None and not from_elsewhere:
        from .cutting.ruler_marks import check_units

        made = Outcome(made.value, (*made.diagnostics, *check_units(draft, made.value)))
    if same is not None:
        return Outcome(replace(same, from_elsewhere=False), made.diagnostics)
    return made.then(lambda templates: _sew(draft, templates, from_elsewhere))


def _sew(draft: Draft, templates: tuple[Template, ...], from_elsewhere: bool) -> Outcome[CompiledBlock]:
    from .sewing.order.assembly import assemble
    from .sewing.proof.resew import prove

    assembly = assemble(draft)
    return prove(draft, templates, assembly).then(
        lambda proof: Outcome(CompiledBlock(draft, templates, assembly, proof, from_elsewhere))
    )
