"""The steps of a block: every step a card, how to read the pictures, and how the seams are pressed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ...drafting.model import Draft
from ...sewing.model import Assembly, Step, Unit
from ...sewing.pressing.copies import by_rows, shaded_way
from ...sewing.pressing.pressing import press
from ...sewing.pressing.pressing_model import Pressing, PressingPlan, Toward
from ...words.pages import block_steps as words
from ...words.pages.booklet import checked
from ...words.pages.papers import PAPERS_OUT
from ...words.pages.steps import seam_words, step_lines, step_title
from ...words.work.pressing import ROWS, places_words, pressing_words
from ..arrange.block_drawing import piece_rings
from ..arrange.fills import Fill
from ..arrange.options import SheetOptions
from ..content import NOT_DRAWN, Card, Cards, Chapter, List, Paragraph, Part, Picture, Section
from ..pictures.places_picture import draw_places
from ..pictures.step_picture import WIDE, Scene, Shown, draw_step
from ..quilts.wearing import Worn
from ..work import Needle, WorkBlock
from .step_parts import added_side, step_parts


def block_steps(block: WorkBlock, options: SheetOptions) -> Chapter:
    """Every step a card, in the fabrics in which the block is shown."""
    draft, made, worn = block.draft, block.work.assembly.blocks[block.index], block.worn
    told: list[Part] = [Paragraph(text) for text in worn.words]
    told.insert(0, Paragraph(checked(made.proof), strong=True))
    parts = _parts(options, draft, worn.assembly(made.assembly), block.needle(options), worn)
    return Chapter(block.titled(words.TITLE), (*told, *parts))


def _parts(
    options: SheetOptions, draft: Draft, assembly: Assembly, needle: Needle, worn: Worn
) -> Iterator[Part]:
    if not assembly.steps:
        yield Paragraph(words.ONE_PIECE)
        return
    plan = press(draft, assembly, worn.lightness)
    cards = tuple(_cards(options, draft, assembly, plan, needle, worn.fills))
    if not worn.always and needle != "papers":
        yield Paragraph(words.AS_SHOWN)
    yield Paragraph(" ".join(_read(options, assembly, plan, needle)))
    if not all(unit.rectangle for unit in assembly.units):
        yield Paragraph(words.SHAPED)
    pressed = zip(assembly.units, plan.seams, cards, strict=True)
    if needle != "papers" and any(_tells_rows(draft, *each) for each in pressed):
        yield Paragraph(ROWS.format("block"))
    if needle == "hand":
        yield Section(words.BY_HAND)
        yield List(words.HAND, "number")
    yield Cards(cards)
    if needle == "papers":
        yield Section(words.PAPERS_OUT)
        yield List(PAPERS_OUT, "number")
        return
    yield Section(words.PRESSING)
    machine = pressing_words(plan, pictured=options.pictures)
    yield Paragraph(words.HAND_PRESSED if needle == "hand" else machine)


def _read(options: SheetOptions, assembly: Assembly, plan: PressingPlan, needle: Needle) -> Iterator[str]:
    """How to read the steps and their pictures: what these have in them."""
    if options.pictures:
        yield words.PICTURES
        opened = any("open" in each.ways for each in plan.seams)
        yield words.NO_ARROW if needle == "papers" else words.arrow_words(needle if opened else None)
        if any(step.turns or step.stops for step in assembly.steps):
            yield words.DOTS
        if any(step.eased for step in assembly.steps) and needle != "papers":
            yield words.TICKS
    yield words.NAMED
    yield words.SEWN[needle]


def _cards(
    options: SheetOptions,
    draft: Draft,
    assembly: Assembly,
    plan: PressingPlan,
    needle: Needle,
    fills: Mapping[str, Fill],
) -> Iterator[Card]:
    """A card for every step."""
    say, pictures = options.say, options.pictures
    for step, unit, pressing in zip(assembly.steps, assembly.units, plan.seams, strict=True):
        shaded = shaded_way(draft, unit, pressing) if pictures and needle != "papers" else None
        beside = _places(draft, unit, pressing, shaded) if shaded else None
        parts, marked = step_parts(assembly, step, shaded=pictures), shaded if beside else None
        lines = step_lines(say, draft, assembly, step, pressing, parts, needle, marked)
        if not pictures:
            told = (seam_words(say, step, pressing),)
            yield Card(step_title(assembly, step), NOT_DRAWN, lines, told=told)
            continue
        scene = scene_of(draft, assembly, step, None if needle == "papers" else pressing.toward)
        marks, tall = draw_step(scene, fills)
        picture = Picture(marks, WIDE, tall, words.pictured(step.step, lines[0]))
        yield Card(step_title(assembly, step), picture, lines, beside)


def _tells_rows(draft: Draft, unit: Unit, pressing: Pressing, card: Card) -> bool:
    """Whether a card's words tell copies by rows: where no picture beside them shows which."""
    return card.beside is None and by_rows(draft, unit, pressing)


def _places(draft: Draft, unit: Unit, pressing: Pressing, shaded: Toward) -> Picture | None:
    """The block with the copies shaded that are pressed so; None where they would be too small to see."""
    copies = [copy for copy, way in zip(unit.copies, pressing.ways, strict=True) if way == shaded]
    drawn = draw_places(draft, unit, copies)
    return drawn and Picture(*drawn, words.places_pictured(places_words(draft, unit, pressing, shaded)))


def scene_of(draft: Draft, assembly: Assembly, step: Step, toward: Toward | None) -> Scene:
    """The step as it lies in the block, in its first copy."""
    pieces = assembly.units[step.step - 1].pieces
    first = step.parts[0]
    count = len(assembly.units[int(first[1:]) - 1].pieces) if first.startswith("u") else 1
    return Scene(
        tuple(_shown(draft, assembly, number) for number in pieces[:count]),
        tuple(_shown(draft, assembly, number) for number in pieces[count:]),
        added_side(assembly, step), step.seam, toward, (*step.turns, *step.stops), step.eased,
    )  # fmt: skip


def _shown(draft: Draft, assembly: Assembly, number: int) -> Shown:
    piece, cloth = draft.pieces[number - 1], assembly.pieces[number - 1]
    return Shown(piece_rings(piece), cloth.fabric, cloth.template)
