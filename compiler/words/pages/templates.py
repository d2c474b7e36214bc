"""The words about pages of templates and the page of a block: headings and safety."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from ...measure.tolerance import Number
from ..phrases import count_of
from ..say import Say
from .labels import label_runs

if TYPE_CHECKING:
    from ...diagnostics.diagnostic import Diagnostic

BLOCK: Final = "block"
NOTES: Final = "notes"
FABRICS: Final = "fabrics"
TABLE: Final = "table of templates"

SAFETY: Final = {
    "block": "Scissors, blades and irons: follow the makers’ instructions and keep them from children.",
    "allowance": "Rotary blades are very sharp: cut away from yourself, close the blade after every cut, "
    "keep it from children; follow the maker’s instructions.",
    "finished": "Scissors are sharp: cut card away from your fingers, keep scissors and needles from "
    "children; follow the maker’s instructions.",
    "window": "Craft knives are sharp: cut on a mat, away from yourself, keep them from children; "
    "follow the maker’s instructions.",
}
"""One line for the work of the page, by its kind of template."""

KEYWORDS: Final = ("patchwork", "quilt block", "templates")
"""Of a block's document, before its families and other names."""

UNITS_TOP: Final = "A triangle stands at each unit’s own top; its black half is the unit’s left."
TRUE_SIZE: Final = "the drawing is true size"


def size_and_version(finished: str, version: int) -> str:
    """`6in finished · version 2`: beneath the title."""
    return f"{finished} finished · version {version}"


def about_block(finished: str, version: int) -> str:
    """`version 2, 6in finished`: among the facts of a file."""
    return f"version {version}, {finished} finished"


def kind_words(say: Say, kind: str, allowance: Number) -> str:
    """What kind of templates a page has."""
    return {
        "allowance": f"with {say.length(allowance)} seam allowance",
        "finished": "finished size, for hand piecing: add the allowance as you cut",
        "window": "windows, for placing a motif: cut the inside out",
    }[kind]


def templates_words(labels: Sequence[str], numbers: Sequence[int]) -> str:
    """`template A`, `templates A–C, F`."""
    return f"{'templates' if len(numbers) > 1 else 'template'} {label_runs(labels, numbers)}"


def tiled_words(label: str, tiles: str) -> str:
    """`template A, tile 1.1`."""
    return f"template {label}, {tiles}"


def tiles_words(names: Sequence[str]) -> str:
    """`tile 1.1`, `tiles 1.2, 2.2`."""
    return f"{'tiles' if len(names) > 1 else 'tile'} {', '.join(names)}"


def scale_words(scale: float) -> str:
    """What the page says of the scale of its drawing."""
    if scale == 1:
        return TRUE_SIZE
    share = f"{scale * 100:.0f}" if scale >= 0.1 else f"{scale * 100:.2g}"
    return f"drawn at {share}% of true size"


def not_finished(errors: int) -> str:
    """Under the title of a block that cannot be finished."""
    return f"not finished: {count_of(errors, 'mistake')}; drawn as far as it is sound"


def mistake_line(say: Say, number: int, said: Diagnostic) -> str:
    """A mistake under the drawing, by the number that marks its place."""
    return f"{number} {said.said(say).message}"


def more_fabrics(number: int) -> str:
    """So many fabrics that have no room under a picture."""
    return f"and {number} more fabrics"
