"""Quilts to laid-out, counted quilts: one for each colourway."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final, TypeVar, get_args

from ..cutting.methods.rotary import choose_cut
from ..cutting.needs import USABLE_WIDTH, BackingNeed, BindingNeed, Fabric, Need, SizedBlock
from ..cutting.plans.lots import cloth_of
from ..cutting.ruler_marks import left_the_ruler
from ..cutting.templates.making import make_templates
from ..diagnostics.diagnostic import Diagnostic, Outcome
from ..diagnostics.source import Source, Span
from ..drafting.context import Bench, EnoughSaid
from ..drafting.details import ALLOWANCE_MOST
from ..drafting.draft import Drafter
from ..drafting.frame import Frame
from ..drafting.ground import once
from ..drafting.model import Default
from ..drafting.resize import resize
from ..drafting.sketch import Unit
from ..language import quilt_tree, tree
from ..language.limits import BORDERS, COLOURWAYS
from ..measure.marks import RULER_STEP
from ..measure.tolerance import SLIVER
from ..words.messages import quilts as complain
from ..words.messages.pieces import allowance_wide
from ..words.messages.templates import cuts_leave_ruler
from ..words.messages.units import unit_unused
from .blocks import narrowest
from .borders import add_border
from .cloths import Palette, check_palettes, colourways, read_fabrics
from .counting import ALLOWANCE, count_top
from .ground import Laid, Top, Use
from .likely import check_likely
from .mattress import MATTRESSES, MISS_MOST, covered_size
from .model import Quilt
from .settings import lay_set

BINDING_SLACK: Final = Fraction(10)
"""Inches of binding beyond the perimeter, for turning the corners and joining the ends (common practice; 10,
12 and 24in are all seen: SOURCES 2.6)."""

OVER: Final = Fraction(4)
"""Inches of backing and batting beyond each side (SOURCES 2.8: 4in is the commonest)."""

DROP: Final = Fraction(12)
"""Inches that a quilt hangs over the mattress where `fits` does not say (SOURCES 4.5)."""

PIECES_MOST: Final = 100_000
"""Pieces of one top, in all its colourways: thirty times the 3,000-piece sampler that pages are made for."""

S = TypeVar("S", bound=tree.Node)


def lay_out(quilt: quilt_tree.Quilt, source: Source, drafter: Drafter) -> Outcome[tuple[Quilt, ...]]:
    """The quilt in each of its colourways."""
    zero = Fraction(0)
    bench = Bench(Frame(zero, zero, (zero, zero), (zero, zero)))
    try:
        made = _laid_out(quilt, source, drafter, bench)
    except EnoughSaid:
        made = None
    return Outcome(made, tuple(bench.diagnostics))


def _laid_out(
    quilt: quilt_tree.Quilt, source: Source, drafter: Drafter, bench: Bench
) -> tuple[Quilt, ...] | None:
    if not _within_counts(quilt, bench):
        return None
    defaults: list[Default] = []
    uses = [each for each in quilt.body if isinstance(each, tree.Use)]
    units = drafter.units(uses, source, bench, defaults)
    fabrics = read_fabrics(quilt, bench)
    for said in check_likely(quilt):
        bench.say(said)
    top = _lay_top(quilt, units, bench)
    if top is None or bench.failed or any(each is None for each in units.values()):
        return None
    _check_units_used(units, top, bench)
    pieces = sum(len(each.unit.draft.pieces) for each in top.laid) + len(top.singles)
    if not _few_enough(quilt, pieces, bench):
        return None
    sizes = _sized_blocks(top.laid, bench)
    if sizes is None:
        return None
    placed, blocks = sizes
    _check_fit(quilt, top, bench, defaults)
    made: list[Quilt] = []
    palettes: list[tuple[str, Palette]] = []
    for title, roles in colourways(quilt, bench):
        palette = Palette(fabrics, roles)
        palettes.append((title, palette))
        made.append(_finish(quilt, title, top, placed, blocks, palette, fabrics, defaults, bench))
    check_palettes(quilt, palettes, bench)
    _check_complete(quilt, bench)
    if bench.failed:
        return None
    return tuple(made)


def _within_counts(quilt: quilt_tree.Quilt, bench: Bench) -> bool:
    """Whether there are no more borders and colourways than a quilt may have."""
    counted: tuple[tuple[type[tree.Node], complain.Several, int], ...] = (
        (quilt_tree.Border, "borders", BORDERS),
        (quilt_tree.RolesDef, "colourways", COLOURWAYS),
    )
    for kind, things, most in counted:
        written = [each for each in quilt.body if isinstance(each, kind)]
        if len(written) > most:
            bench.say(complain.too_many_of(written[most].span, things, len(written), most))
    return not bench.failed


def own_allowance(quilt: quilt_tree.Quilt, bench: Bench) -> Fraction:
    """Inches that the quilt's own seams take, between its blocks, strips and borders."""
    said = _once(quilt, quilt_tree.SeamsTake, "allowance", bench)
    if said is None:
        return ALLOWANCE
    width = said.width
    if width.inches > ALLOWANCE_MOST:
        bench.say(allowance_wide(width.span, width.inches, ALLOWANCE_MOST, ALLOWANCE))
    return width.inches


def _few_enough(quilt: quilt_tree.Quilt, pieces: int, bench: Bench) -> bool:
    """Whether the quilt has no more pieces than one may have, so many in each colourway."""
    pieces *= max(sum(isinstance(each, quilt_tree.RolesDef) for each in quilt.body), 1)
    if pieces > PIECES_MOST:
        bench.say(complain.too_many_pieces(quilt.title.span, pieces, PIECES_MOST))
    return pieces <= PIECES_MOST


def _once(quilt: quilt_tree.Quilt, kinds: type[S] | tuple[type[S], ...], word: str, bench: Bench) -> S | None:
    return once(quilt.body, kinds, word, bench, whole="quilt")


def _lay_top(quilt: quilt_tree.Quilt, units: dict[str, Unit | None], bench: Bench) -> Top | None:
    """The set with its sashing, then every border from the inside out."""
    kinds: tuple[type[quilt_tree.QuiltSet], ...] = get_args(quilt_tree.QuiltSet)
    setting = _once(quilt, kinds, "set", bench)
    sashing = _once(quilt, quilt_tree.Sashing, "sashing", bench)
    if setting is None:
        bench.say(complain.set_missing(quilt))
        return None
    if any(each is None for each in units.values()):
        return None

    def few_enough(cells: Sequence[tree.Cell]) -> bool:
        found = (units.get(cell.unit.text) for cell in cells if not isinstance(cell, tree.PlainCell))
        return _few_enough(quilt, sum(len(unit.draft.pieces) for unit in found if unit), bench)

    top = lay_set(setting, sashing, units, bench, few_enough)
    if top is None or bench.failed:
        return None
    for each in quilt.body:
        if isinstance(each, quilt_tree.Border) and not bench.failed:
            add_border(top, each, units, bench)
    return top


def _check_units_used(units: dict[str, Unit | None], top: Top, bench: Bench) -> None:
    placed = {each.unit.use.alias.text for each in top.laid}
    for name, unit in units.items():
        if unit is not None and name not in placed:
            bench.say(unit_unused(unit.use.alias))


def _sized_blocks(laid: Sequence[Laid], bench: Bench) -> tuple[list[Use], list[SizedBlock]] | None:
    """Every block at each size it is used at, with its templates, in order of first use."""
    numbers: dict[tuple[Span | None, int, str, str], int] = {}
    blocks: list[SizedBlock] = []
    uses: list[Use] = []
    for each in laid:
        draft = each.unit.draft
        key = (draft.origin, draft.version, f"{float(each.width):.6f}", f"{float(each.height):.6f}")
        if key not in numbers:
            resized = resize(draft, each.width, each.height)
            thin = narrowest(resized)
            if thin < SLIVER and resized is not draft:
                bench.say(complain.block_too_small(each.origin, draft.title, (each.width, each.height), thin))
                return None
            templates = make_templates(resized)
            for said in templates.diagnostics:
                bench.say(said)
            if templates.value is None:
                return None
            even = resized.shapes is draft.shapes
            if even and (left := left_the_ruler(resized, templates.value, draft.width)):
                bench.say(cuts_leave_ruler(each.origin, draft.title, left))
            numbers[key] = len(blocks)
            blocks.append(SizedBlock(resized, templates.value))
        uses.append(Use(numbers[key], each.unit.renames, each.transform, each.part, each.origin))
    return uses, blocks


def _finish(
    quilt: quilt_tree.Quilt,
    colourway: str,
    top: Top,
    uses: list[Use],
    blocks: list[SizedBlock],
    palette: Palette,
    fabrics: dict[str, Fabric],
    defaults: list[Default],
    bench: Bench,
) -> Quilt:
    allowance = own_allowance(quilt, bench)
    counted = count_top(uses, top.singles, blocks, palette, allowance=allowance)
    binding = _once(quilt, quilt_tree.Binding, "binding", bench)
    backing = _once(quilt, quilt_tree.Backing, "backing", bench)
    batting = _once(quilt, quilt_tree.Batting, "batting", bench)
    maker = _once(quilt, tree.Maker, "maker", bench)
    counts = [0] * len(blocks)
    for use in uses:
        counts[use.block] += 1
    _check_unjoined(counted.needs, fabrics, bench)
    return Quilt(
        title=quilt.title.text,
        version=quilt.version.value if quilt.version else 1,
        colourway=colourway,
        width=top.width,
        height=top.height,
        blocks=tuple(blocks),
        placed=tuple(counted.placed),
        pieces=tuple(counted.pieces),
        needs=tuple(counted.needs),
        binding=_binding(binding, top, palette),
        backing=_backing(backing, top, palette.fabric(backing.fabric.text)) if backing else None,
        batting=_backing(batting, top, "") if batting else None,
        fabrics=tuple(fabrics.values()),
        defaults=(*defaults, *_defaults(quilt, binding, backing, batting)),
        setting=top.setting,
        allowance=allowance,
        maker=maker.text.text if maker else "",
        notes=tuple(each.text.text for each in quilt.body if isinstance(each, tree.Note)),
        origin=quilt.title.span,
        block_counts=tuple(counts),
        rows=top.blocks_first(),
    )


def _binding(binding: quilt_tree.Binding | None, top: Top, palette: Palette) -> BindingNeed | None:
    if binding is None:
        return None
    length = 2 * (top.width + top.height) + BINDING_SLACK
    return BindingNeed(
        palette.fabric(binding.fabric.text), binding.width.inches, length, binding.bias, BINDING_SLACK
    )


def _backing(over: quilt_tree.Backing | quilt_tree.Batting, top: Top, fabric: str) -> BackingNeed:
    more = over.over.inches if over.over else OVER
    return BackingNeed(fabric, top.width + 2 * more, top.height + 2 * more)


def _check_unjoined(needs: Sequence[Need], fabrics: dict[str, Fabric], bench: Bench) -> None:
    """Complains of `unjoined` strips that no piece of their cloth holds; off the bolt they run along it."""
    for need in needs:
        if not need.unjoined or need.fabric not in fabrics or need.origin is None:
            continue
        fabric, strip = fabrics[need.fabric], choose_cut(need)
        wide = fabric.usable_width
        if fabric.is_directional and not fabric.scraps and strip.width > wide:
            bench.say(complain.border_across_print(need.origin, strip.width, strip.height, need.fabric, wide))
        if fabric.scraps and not cloth_of(fabric, RULER_STEP).takes_whole(strip):
            bench.say(complain.border_too_long(need.origin, strip.width, strip.height, need.fabric))


def _defaults(
    quilt: quilt_tree.Quilt,
    binding: object,
    backing: quilt_tree.Backing | None,
    batting: quilt_tree.Batting | None,
) -> list[Default]:
    found = []
    if quilt.version is None:
        found.append(Default("version", 1))
    bare = [
        each.name.text
        for each in quilt.body
        if isinstance(each, quilt_tree.FabricDef) and each.width is None and not each.pieces
    ]
    if bare:
        found.append(Default("usable-width", USABLE_WIDTH, of=tuple(bare)))
    unshrunk = [
        each.name.text
        for each in quilt.body
        if isinstance(each, quilt_tree.FabricDef) and each.shrinks is None
    ]
    if unshrunk:
        found.append(Default("shrinkage", 0, of=tuple(unshrunk)))
    if not any(isinstance(each, quilt_tree.SeamsTake) for each in quilt.body):
        found.append(Default("setting-allowance", ALLOWANCE))
    if binding is not None:
        found.append(Default("binding-slack", BINDING_SLACK))
    if (backing is not None and backing.over is None) or (batting is not None and batting.over is None):
        found.append(Default("over", OVER))
    return found


def _check_fit(quilt: quilt_tree.Quilt, top: Top, bench: Bench, defaults: list[Default]) -> None:
    """Remarks on a quilt that misses the bed it should fit."""
    fits = _once(quilt, quilt_tree.Fits, "fits", bench)
    if fits is None:
        return
    name = " ".join(each.text for each in fits.mattress)
    if name not in MATTRESSES:
        bench.say(complain.mattress_unknown(fits, list(MATTRESSES)))
        return
    mattress = MATTRESSES[name]
    drop = fits.drop.inches if fits.drop else DROP
    if fits.drop is None:
        defaults.append(Default("drop", DROP))
    defaults.append(
        Default("mattress", (mattress.width, mattress.length), of=(name,), source=mattress.source)
    )
    want = covered_size(mattress, drop)
    off = [
        each if abs(float(each)) > MISS_MOST else Fraction(0)
        for each in (top.width - want[0], top.height - want[1])
    ]
    if any(off):
        bench.say(complain.fits_not(fits.span, want, (top.width, top.height), off[0], off[1]))


def _check_complete(quilt: quilt_tree.Quilt, bench: Bench) -> None:
    missing = [
        word
        for kind, word in (
            (quilt_tree.Binding, "binding"),
            (quilt_tree.Backing, "backing"),
            (quilt_tree.Batting, "batting"),
        )
        if not any(isinstance(each, kind) for each in quilt.body)
    ]
    if missing:
        bench.say(complain.statement_missing(quilt, missing))


def lay_out_all(
    quilts: Sequence[quilt_tree.Quilt], source: Source, drafter: Drafter
) -> tuple[list[Quilt], list[Diagnostic]]:
    """Every quilt of a file."""
    made: list[Quilt] = []
    said: list[Diagnostic] = []
    seen: dict[tuple[str, int], Span] = {}
    for quilt in quilts:
        key = (quilt.title.text, quilt.version.value if quilt.version else 1)
        if key in seen:
            said.append(complain.quilt_twice(*key, quilt.title.span, seen[key]))
        seen.setdefault(key, quilt.title.span)
        outcome = lay_out(quilt, source, drafter)
        said += outcome.diagnostics
        made += outcome.value or ()
    return made, said
