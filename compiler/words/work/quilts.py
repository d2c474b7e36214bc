"""How a quilt is set and goes together, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from .shapes import single_word

if TYPE_CHECKING:
    from ...quilt.assembly_model import Kind, QuiltAssembly, Row, Stage
    from ...quilt.ground import Setting
    from ...sewing.order.row_tree import Way

SETTINGS: Final = {"straight": "straight", "on-point": "on point", "rows": "rows"}

STAGES: Final = {
    "down": "Rows",
    "across": "Columns",
    "slantwise": "Slanted rows",
    "set-in": "Units",
    "mitred": "Units",
    "centre": "Centre",
    "border": "Border {}",
}
"""What the parts of a centre are called by how they lie in it, and what comes after them."""

TURNS: Final = {0: "", 90: " a quarter turn right", 180: " upside down", 270: " a quarter turn left"}
"""How a row lies where it is used, by its degrees clockwise from how it was made."""


def setting_words(setting: Setting | None) -> str:
    """`straight, 4 across and 5 down`; `3 rows`; of a block alone nothing."""
    if setting is None:
        return ""
    kind = SETTINGS[setting.kind]
    if not setting.across or not setting.down:
        return f"{setting.across or setting.down} {kind}"
    return f"{kind}, {setting.across} across and {setting.down} down"


def way_word(way: Way) -> str:
    """How the parts of a row lie: `across`, `set in`."""
    return "set in" if way == "set-in" else way


def stage_words(stage: Stage) -> str:
    """`Rows`, `Centre`, `Border 1`."""
    return STAGES[stage.what].format(stage.border)


def kept_words(made: QuiltAssembly, row: Row) -> dict[str, int]:
    """How many copies of a row are kept for which later stage."""
    return {stage_words(stage): count for stage, count in made.kept_for(row)}


def part_words(made: QuiltAssembly, row: Row) -> tuple[str, ...]:
    """What a row's parts are called, in order: `R1`, `R2 upside down`, `R3 a quarter turn right`, `P3`."""
    names = made.row_names
    return tuple(
        names.get(part, part) + TURNS.get(round(turned) % 360, f" turned {turned:.0f}°")
        for part, turned in zip(row.parts, row.turned, strict=True)
    )


def kind_words(kind: Kind) -> str:
    """What pieces of the top are that are alike: `Tidewater Vane`, `sashing strip`."""
    return kind.what if kind.block is not None else single_word(kind.what)
