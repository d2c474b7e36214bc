"""What a quilt's tables say, row by row: counts, cuts, fabrics. Pages, JSON and CSV are all set from these
rows.

In: a laid-out quilt and its cutting plan. Lengths are inches.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from ...cutting.needs import Fabric, Need
from ...cutting.plan_model import Cut, CuttingPlan, FabricPlan
from ...cutting.shapes import Kind, Shape
from ...measure.record import record
from ...measure.tolerance import Number
from ...quilt.model import Quilt
from ...words.pages import counts as words
from ...words.say import Say
from ...words.work.foundations import patch_words
from ...words.work.shapes import single_word

KEY_LETTERS: Final = "abcdefghjkmnprstuvwxyz"
"""Letters that name cuts on the chart and in the pictures: small ones, for templates have capitals; none that
could be read as a figure or as its neighbour."""

SQUARES: Final = ("square", "half-square-triangle", "quarter-square-triangle")
"""Kinds that are cut as squares."""

NAMES_MOST: Final = 2  # names of pieces that a row gives; more say nothing


@record
class CutRow:
    """One cut of the chart. `key` names it within its fabric; `template` is a block's letter, or one like S1
    of a template that belongs to no block; `purpose` says what it is for. `lengths`: of the strips that are
    joined for it, the longest first, as they are cut."""

    key: str
    cut: Cut
    need: Need | None
    template: str
    purpose: str
    lengths: tuple[Number, ...] = ()


@record
class FabricCuts:
    """A fabric's cuts, the largest first, with the plan for its cloth."""

    fabric: Fabric
    title: str
    plan: FabricPlan
    rows: tuple[CutRow, ...]


@record
class CountRow:
    """Pieces of one shape and fabric in the whole quilt. `plain` as drawn, `back` reversed."""

    template: str
    what: str
    fabric: str
    plain: int
    back: int
    kind: Kind

    @property
    def pieces(self) -> int:
        """Both ways round."""
        return self.plain + self.back


@record
class CountGroup:
    """The pieces of one block (`times` of it in the quilt), or of one part of the setting (0 times)."""

    title: str
    version: int
    size: str
    times: int
    rows: tuple[CountRow, ...]

    @property
    def pieces(self) -> int:
        """All of them."""
        return sum(row.pieces for row in self.rows)


def fabric_titles(quilt: Quilt) -> dict[str, str]:
    """Every fabric's title as pages give it: with its name after it where two have one title."""
    titles = [fabric.title for fabric in quilt.fabrics]
    return {
        fabric.name: fabric.title if titles.count(fabric.title) == 1 else f"{fabric.title} ({fabric.name})"
        for fabric in quilt.fabrics
    }


def fabric_cuts(quilt: Quilt, plan: CuttingPlan, say: Say) -> tuple[FabricCuts, ...]:
    """Every fabric that is cut, in order of mention, with its cuts."""
    titles, by_name = fabric_titles(quilt), {fabric.name: fabric for fabric in quilt.fabrics}
    own, names = own_templates(quilt, plan), names_of(quilt)
    found = []
    for each in plan.fabrics:
        numbers = [number for number, cut in enumerate(plan.cuts) if cut.fabric == each.fabric]
        numbers.sort(key=lambda number: _size_order(plan.cuts[number], number))
        rows = tuple(
            CutRow(cut_key(place), plan.cuts[number], need_of(quilt, plan.cuts[number]),
                   template_letter(quilt, plan.cuts[number], own.get(number, "")),
                   purpose_of(quilt, plan.cuts[number], names, own.get(number, ""), say),
                   _joined_lengths(plan.cuts[number], number, each))
            for place, number in enumerate(numbers)
        )  # fmt: skip
        found.append(FabricCuts(by_name[each.fabric], titles[each.fabric], each, rows))
    return tuple(found)


def _joined_lengths(cut: Cut, number: int, cloth: FabricPlan) -> tuple[Number, ...]:
    """How long each strip is cut that is joined for a cut; none where nothing is joined."""
    if cut.joined <= 1:
        return ()
    placed = [each for piece in cloth.cloths for each in piece.placed if each.cut == number]
    wide = strip_width(cut)
    lengths = [each.width if each.height == wide else each.height for each in placed]
    return tuple(sorted(lengths, reverse=True))


def strip_width(cut: Cut) -> Number:
    """How wide the strip is that a cut is made of: one of its own, or the cut itself."""
    return cut.strip if cut.strip is not None else min(cut.width, cut.height)


def keys_of(plan: CuttingPlan, cuts: FabricCuts) -> dict[int, CutRow]:
    """The chart's row for every number that the plan gives a cut of the fabric."""
    rows = {id(row.cut): row for row in cuts.rows}
    return {number: rows[id(cut)] for number, cut in enumerate(plan.cuts) if id(cut) in rows}


def _size_order(cut: Cut, number: int) -> tuple[float, float, str, int]:
    """The largest first: by the longer side, then by the shorter; of one size, like shapes together."""
    sides = sorted((float(cut.width), float(cut.height)))
    return -sides[1], -sides[0], measured_shape(cut), number


def measured_shape(cut: Cut) -> Shape:
    """What the ruler is laid on: `square`, `rectangle`, `strip`, `panel`; a shape's own name where cut
    aslant."""
    if cut.part == "backing":
        return "panel"
    if cut.part == "binding" and cut.angle is not None:
        return "square" if cut.width == cut.height else "rectangle"
    if cut.kind in SQUARES:
        return "square"
    if cut.kind == "half-rectangle-triangle":
        return "rectangle"
    return cut.kind


def cut_key(number: int) -> str:
    """a, b, ..., z, aa, ab, ... without the letters left out, for 0, 1, ..."""
    name, number = "", number + 1
    while number:
        number, rest = divmod(number - 1, len(KEY_LETTERS))
        name = KEY_LETTERS[rest] + name
    return name


def need_of(quilt: Quilt, cut: Cut) -> Need | None:
    """What a cut is for; None for binding and backing."""
    return quilt.needs[cut.need] if cut.part not in ("binding", "backing") and cut.need >= 0 else None


def own_templates(quilt: Quilt, plan: CuttingPlan) -> dict[int, str]:
    """Letters for the cuts that need a template and have none of a block: S1, S2, ... by the cut's number."""
    numbers = [
        number for number, cut in enumerate(plan.cuts)
        if cut.kind == "template" and (need := need_of(quilt, cut)) is not None and not need.template
    ]  # fmt: skip
    return {number: f"S{place}" for place, number in enumerate(numbers, 1)}


def template_letter(quilt: Quilt, cut: Cut, own: str) -> str:
    """The template's letter, '' where there is none."""
    need = need_of(quilt, cut)
    return own or (need.label if need else "")


def template_name(quilt: Quilt, row: CutRow) -> str:
    """`Tidewater Vane A`; the quilt's title before a letter of its own; '' where there is no template."""
    if row.cut.template or not row.template:
        return row.cut.template
    return f"{quilt.title} {row.template}"


Names = dict[tuple[str, str, str], str]


def names_of(quilt: Quilt) -> Names:
    """What the pieces of each template, fabric and part are called; '' where they have no names, or many."""
    found: dict[tuple[str, str, str], dict[str, None]] = {}
    for piece in quilt.pieces:
        if piece.template:
            found.setdefault((piece.template, piece.fabric, piece.part), {}).setdefault(piece.what)
    return {
        key: " and ".join(names) if "" not in names and len(names) <= NAMES_MOST else ""
        for key, names in found.items()
    }


def purpose_of(quilt: Quilt, cut: Cut, names: Names, own: str, say: Say) -> str:
    """What a cut is for: `Ohio Star A, point`, of a block alone `A, point`; `border strip`, `binding`."""
    need = need_of(quilt, cut)
    if need is None:
        return cut.part
    if need.block is None:
        where = need.part if need.part == "border" and "border" not in need.what else ""
        return words.single_purpose(single_word(need.what), where, own)
    name = names.get((need.template, need.fabric, need.part), "")
    named = patch_words(need.patches) if need.is_patch else f"{need.label}{', ' if name else ''}{name}"
    block = block_name(quilt, need.block, say) if quilt.setting else ""  # a block alone is no quilt
    return words.block_purpose(block, named, need.part == "border")


def block_name(quilt: Quilt, index: int, say: Say) -> str:
    """The block's title, with its size or version where two would have one name."""
    drafts = [each.draft for each in quilt.blocks]
    draft = drafts[index]
    same = [each for each in drafts if each.title == draft.title]
    if len(same) == 1:
        return draft.title
    if all(each is draft or (each.width, each.height) != (draft.width, draft.height) for each in same):
        return words.block_of_size(draft.title, size_text(say, draft.width, draft.height))
    return words.block_of_size(draft.title, size_text(say, draft.width, draft.height), draft.version)


def size_text(say: Say, width: Number, height: Number) -> str:
    """`6in`, or `6in x 9in` where the sides differ."""
    wide, tall = say.length(width), say.length(height)
    return wide if wide == tall else f"{wide} x {tall}"


def under_title(quilt: Quilt, say: Say) -> str:
    """`60in x 72in finished · version 1 · colourway Sea`."""
    return words.under_quilt(size_text(say, quilt.width, quilt.height), quilt.version, quilt.colourway)


def count_groups(quilt: Quilt, plan: CuttingPlan, say: Say) -> tuple[CountGroup, ...]:
    """Every piece of the top, by block and then by part of the setting."""
    methods = {cut.need: cut for cut in plan.cuts if need_of(quilt, cut) is not None}
    own = {plan.cuts[number].need: letter for number, letter in own_templates(quilt, plan).items()}
    names = names_of(quilt)
    order = {fabric.name: number for number, fabric in enumerate(quilt.fabrics)}
    found: list[CountGroup] = []
    for index, block in enumerate(quilt.blocks):
        labels = [template.label for template in block.templates]
        needs = [number for number, need in enumerate(quilt.needs) if need.block == index]
        needs.sort(
            key=lambda number: (
                0 if quilt.needs[number].is_patch else labels.index(quilt.needs[number].label),
                order[quilt.needs[number].fabric],
                number,
            )
        )
        rows = _together(_count_row(quilt.needs[number], methods[number], names, "", say)
                         for number in needs)  # fmt: skip
        size = size_text(say, block.draft.width, block.draft.height)
        found.append(
            CountGroup(block.draft.title, block.draft.version, size, quilt.block_counts[index], rows)
        )
    for part, title in words.PART_WORDS.items():
        needs = [n for n, need in enumerate(quilt.needs) if need.block is None and need.part == part]
        if needs:
            rows = _together(
                _count_row(quilt.needs[number], methods[number], names, own.get(number, ""), say)
                for number in needs
            )
            found.append(CountGroup(title.capitalize(), 0, "", 0, rows))
    return tuple(found)


def _together(rows: Iterable[CountRow]) -> tuple[CountRow, ...]:
    """Rows of one shape as one, which a print with a direction has cut in several ways."""
    found: dict[tuple[str, str, str, str], CountRow] = {}
    for row in rows:
        key = (row.template, row.what, row.fabric, row.kind)
        old = found.get(key)
        found[key] = replace(row, plain=old.plain + row.plain, back=old.back + row.back) if old else row
    return tuple(found.values())


def _count_row(need: Need, cut: Cut, names: Names, own: str, say: Say) -> CountRow:
    if need.block is None:
        what = words.single_of_size(single_word(need.what), box_text(need, say))
    else:
        what = (
            patch_words(need.patches)
            if need.is_patch
            else names.get((need.template, need.fabric, need.part), "")
        )
        what = words.in_border(what) if need.part == "border" else what
    return CountRow(need.label or own, what, need.fabric, need.count, need.reversed, cut.kind)


def box_of(need: Need) -> list[float]:
    """The sides of the box round a finished shape as it lies for cutting, the shorter first."""
    xs = [float(edge.start.x) for edge in need.outline]
    ys = [float(edge.start.y) for edge in need.outline]
    return sorted((max(xs) - min(xs), max(ys) - min(ys)))


def box_text(need: Need, say: Say) -> str:
    """`about 1in x 36in`: the box round a finished shape as it lies for cutting, the shorter side first; in
    centimetres, `6cm x 113cm`, for a ruler marked in those."""
    short, long = box_of(need)
    return words.about_box(say, short, long)


def fabric_totals(groups: Sequence[CountGroup]) -> dict[str, int]:
    """How many pieces of each fabric the top has."""
    totals: dict[str, int] = {}
    for row in (row for group in groups for row in group.rows):
        totals[row.fabric] = totals.get(row.fabric, 0) + row.pieces
    return totals
