"""How a quilt is set, in words."""

from __future__ import annotations

from ...quilt.model import Setting


def setting_words(setting: Setting) -> str:
    """`straight, 4 across and 5 down`; `3 rows`."""
    if setting.kind == "rows":
        return f"{setting.down} rows"
    return f"{setting.kind}, {setting.across} across and {setting.down} down"
