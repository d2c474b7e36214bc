"""A quilt in one colourway: every cut of its chart, every piece counted, its cloth, and how it is sewn."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar

from ...cutting.plan_model import CuttingPlan
from ...looks.colour import to_hex
from ...measure.tolerance import Number
from ...planning import PlannedQuilt
from ...quilt.model import Quilt as ModelQuilt
from ...sheets.arrange.fills import Fill
from ...sheets.pictures.quilt import quilt_fills
from ...sheets.quilts.tables import (
    CountGroup,
    CutRow,
    FabricCuts,
    count_groups,
    fabric_cuts,
    keys_of,
    need_of,
    template_name,
)
from ...sheets.quilts.thread import HAND_SHARE, MACHINE_SHARE, seam_inches, thread_yards
from ...words.say import Say, by_ruler
from ...words.work.cloth import bought_words
from ...words.work.cuts import lies_words, then_words
from ...words.work.offers import making_words, way_words
from ...words.work.quilts import setting_words
from ...words.work.reasons import reason_words
from ...words.work.shapes import shape_word
from .quilt_sewing import Stage, Top, top_of
from .shapes import Default, Extent, defaults_of, record_of


@dataclass(frozen=True, slots=True)
class BlockCount:
    """A block at the size that the quilt has it, and how many there are."""

    title: str
    version: int
    finished: Extent
    count: int


@dataclass(frozen=True, slots=True)
class Offer:
    """Another way to cut the same, with the square inches of cloth that it takes, and that cutting singly
    takes."""

    method: str
    text: str
    cloth: Number
    singly: Number


@dataclass(frozen=True, slots=True)
class Lie:
    """How so many pieces lie on a print with a direction: mirrored if `reversed`, then turned clockwise."""

    turned: int
    reversed: bool
    pieces: int


@dataclass(frozen=True, slots=True)
class Cut:
    """One cut of the chart. `key` names it within its fabric; `purpose` says what it is for. `strip` is the
    width of the strip that it is cut from, `angle` that of a slanted cut; `joined`: strips that are joined
    for it. `lies`, `outline` and `ways` are told of prints with a direction."""

    KEYS: ClassVar = {"purpose": "for"}

    fabric: str
    key: str
    part: str
    kind: str
    width: Number
    height: Number
    cuts: int
    pieces: int
    as_drawn: int
    reversed: int
    in_all: int
    template: str
    purpose: str
    yields: int
    excess: float
    reason: str
    then: str
    offers: tuple[Offer, ...]
    strip: Number | None = None
    angle: Number | None = None
    joined: int = 0
    lies: str = ""
    outline: tuple[tuple[float, float], ...] = ()
    ways: tuple[Lie, ...] = ()


@dataclass(frozen=True, slots=True)
class Count:
    """Pieces of one shape and fabric in the whole quilt, in a block or a part of the setting."""

    of: str
    template: str
    piece: str
    fabric: str
    pieces: int
    as_drawn: int
    reversed: int
    in_all: int
    kind: str


@dataclass(frozen=True, slots=True)
class Laid:
    """A piece as it is cut from the cloth, its print up: `key` is its cut's on the chart; `turned` degrees
    clockwise, after mirroring where it is `reversed`; `slant`: which way a box is cut again."""

    key: str
    left: Number
    top: Number
    width: Number
    height: Number
    turned: float
    reversed: bool
    slant: str


@dataclass(frozen=True, slots=True)
class LaidCloth:
    """One piece of a cloth whose print has a direction, with all that is cut from it."""

    width: Number
    height: Number
    laid: tuple[Laid, ...]


@dataclass(frozen=True, slots=True)
class Cloth:
    """One fabric, and how much of it to buy. `used` and `buy` are inches along the bolt, `area` the square
    inches of all its pieces. `pieces_of_cloth`: bolts and scraps that it is cut from. `print` is 'one way' or
    'striped' where the print has a direction; then `laid` says how every piece lies. `colour` (`#rrggbb`) and
    `texture` are as it is drawn; `looks` is 'said' where the file states it, and 'guessed' where it was read
    off title or name."""

    KEYS: ClassVar = {"laid": "cloths"}

    name: str
    title: str
    usable_width: Number
    used: Number
    strips: int
    margin: Number
    shrinkage: Fraction
    buy: Number
    buy_text: str
    area: Number
    pieces_of_cloth: int
    colour: str
    texture: str
    looks: str
    print: str = ""
    laid: tuple[LaidCloth, ...] | None = None


@dataclass(frozen=True, slots=True)
class Thread:
    """How long all seams of the top are, in inches, and about how many yards of thread they take."""

    seams: float
    machine_yards: int
    hand_yards: int


@dataclass(frozen=True, slots=True)
class Binding:
    """Strips of a cut width, joined to a length."""

    fabric: str
    strip_width: Fraction
    length: Number
    bias: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    """Backing or batting, all of it; batting has no fabric."""

    fabric: str = ""
    width: Number
    height: Number


@dataclass(frozen=True, kw_only=True)
class QuiltNumbers:
    """What is cut, counted and bought for a quilt. `pieces`: how many its top has."""

    KEYS: ClassVar = {"cuts": "cutting", "cloths": "fabrics"}

    title: str
    version: int
    colourway: str
    finished: Extent
    setting: str
    maker: str
    notes: tuple[str, ...]
    blocks: tuple[BlockCount, ...]
    pieces: int
    ruler_step: Fraction
    cuts: tuple[Cut, ...]
    counts: tuple[Count, ...]
    cloths: tuple[Cloth, ...]
    thread: Thread
    defaults: tuple[Default, ...]
    binding: Binding | None = None
    backing: Whole | None = None
    batting: Whole | None = None


@dataclass(frozen=True, kw_only=True)
class QuiltRecord(QuiltNumbers):
    """Everything about a quilt in one colourway: what is cut, counted and bought, and how it is sewn."""

    assembly: Top

    @property
    def steps(self) -> tuple[Stage, ...]:
        """What is made before the next thing, row by row: the stages of `assembly`."""
        return self.assembly.stages


def quilt_of(planned: PlannedQuilt) -> QuiltRecord:
    """The record of a planned quilt."""
    numbers = numbers_of(planned.quilt, planned.plan)
    return QuiltRecord(**vars(numbers), assembly=top_of(planned.assembly))


def numbers_of(quilt: ModelQuilt, plan: CuttingPlan) -> QuiltNumbers:
    """What is cut, counted and bought."""
    say, fills = by_ruler(plan.ruler_step), quilt_fills(quilt)
    cuts, groups = fabric_cuts(quilt, plan, say), count_groups(quilt, plan, say)
    return record_of(
        QuiltNumbers,
        quilt,
        finished=Extent(quilt.width, quilt.height),
        setting=setting_words(quilt.setting),
        blocks=_blocks_of(quilt),
        pieces=sum(group.pieces for group in groups),
        ruler_step=plan.ruler_step,
        cuts=tuple(_cut_of(quilt, row, say) for each in cuts for row in each.rows),
        counts=tuple(count for group in groups for count in _counts_of(group)),
        cloths=tuple(_cloth_of(each, plan, fills[each.plan.fabric]) for each in cuts),
        thread=Thread(
            seam_inches(quilt), thread_yards(quilt, MACHINE_SHARE), thread_yards(quilt, HAND_SHARE)
        ),
        defaults=defaults_of(quilt.defaults),
    )


def _blocks_of(quilt: ModelQuilt) -> tuple[BlockCount, ...]:
    drafts = [block.draft for block in quilt.blocks]
    return tuple(
        BlockCount(draft.title, draft.version, Extent(draft.width, draft.height), count)
        for draft, count in zip(drafts, quilt.block_counts, strict=True)
    )


def _cut_of(quilt: ModelQuilt, row: CutRow, say: Say) -> Cut:
    cut, need = row.cut, need_of(quilt, row.cut)
    turned, ways = (need.reversed, need.ways) if need else (0, ())
    return record_of(
        Cut,
        cut,
        kind=shape_word(cut.kind),
        key=row.key,
        as_drawn=cut.pieces - turned,
        reversed=turned,
        in_all=cut.pieces,
        template=template_name(quilt, row),
        purpose=row.purpose,
        reason=reason_words(say, cut.reason),
        then=then_words(say, cut.then),
        offers=tuple(
            Offer(way_words(each.made), making_words(say, each.made), each.cloth, each.singly)
            for each in cut.offers
        ),
        lies=lies_words(say, cut.lies) if cut.lies else "",
        outline=cut.outline if ways else (),
        ways=tuple(Lie(each.turned, each.reversed, each.count) for each in ways),
    )


def _counts_of(group: CountGroup) -> list[Count]:
    return [
        record_of(
            Count,
            row,
            of=group.title,
            piece=row.what,
            kind=shape_word(row.kind),
            as_drawn=row.plain,
            reversed=row.back,
            in_all=row.pieces,
        )
        for row in group.rows
    ]


def _cloth_of(cuts: FabricCuts, plan: CuttingPlan, fill: Fill) -> Cloth:
    own, fabric = cuts.plan, cuts.fabric
    return record_of(
        Cloth,
        own,
        name=own.fabric,
        title=fabric.title,
        shrinkage=fabric.shrinkage,
        buy_text=bought_words(own),
        pieces_of_cloth=len(own.cloths),
        colour=to_hex(fill.ground),
        texture=fill.texture,
        looks="said" if fill.stated else "guessed",
        print=("one way" if fabric.one_way else "striped") if fabric.is_directional else "",
        laid=_laid_of(cuts, keys_of(plan, cuts)) if fabric.is_directional else None,
    )


def _laid_of(cuts: FabricCuts, keys: Mapping[int, CutRow]) -> tuple[LaidCloth, ...]:
    return tuple(
        LaidCloth(
            cloth.width,
            cloth.length,
            tuple(record_of(Laid, each, key=keys[each.cut].key) for each in cloth.placed),
        )
        for cloth in cuts.plan.cloths
    )
