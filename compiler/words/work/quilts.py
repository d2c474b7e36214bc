"""How a quilt is set, in words."""

from __future__ import annotations

from ...quilt.ground import Setting
from ...sewing.order.row_tree import Way


def setting_words(setting: Setting | None) -> str:
    """`straight, 4 across and 5 down`; `3 rows`; of a block alone nothing."""
    if setting is None:
        return ""
    if not setting.across or not setting.down:
        return f"{setting.across or setting.down} {setting.kind}"
    return f"{setting.kind}, {setting.across} across and {setting.down} down"


def way_word(way: Way) -> str:
    """How the parts of a row lie: `across`, `set in`."""
    return "set in" if way == "set-in" else way
