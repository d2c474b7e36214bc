"""What every page of HTML is held to in a browser."""

from __future__ import annotations

NARROW = 320  # CSS pixels: WCAG 2.2, 1.4.10
RULES = {
    "runOnly": {
        "type": "tag",
        "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    }
}
"""axe-core's tags: levels A and AA of WCAG 2.0 to 2.2, and what is good practice beside them."""
