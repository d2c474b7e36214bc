"""Why what is printed does not make what was drafted."""

from __future__ import annotations

from typing import Literal

from ...measure.record import record

FlawKind = Literal[
    # of a template, as cut
    "dot-off-corner",
    "mark-off-line",
    "outline-open",
    "cut-uneven",
    "arc-misses-its-end",
    "no-template",
    "cut-count",
    # of a seam
    "edge-counts",
    "side-lengths",
    "straight-to-curved",
    "no-length",
    "sides-apart",
    "allowances-differ",
    "edge-inside",
    "seam-length",
    "seam-not-curved",
    "seam-turns",
    "seam-pins",
    "seam-not-closed",
    "needle-stops",
    "seam-of-others",
    "none-to-leave-open",
    "left-open-elsewhere",
    # of a mitre
    "no-plain-side",
    "mitre-allowances",
    "mitre-count",
    # of what is made
    "numbers-disagree",
    "part-missing",
    "part-taken",
    "parts-left",
    "window-count",
    "finished-width",
    "finished-height",
    "unfinished-width",
    "unfinished-height",
    "printed-a-rectangle",
    "not-printed-a-rectangle",
    "other-pieces",
    "its-outline-open",
    "its-length-round",
    "its-area",
    "its-outline",
    # of the whole
    "outer-allowance",
    "piece-twice-or-never",
    "piece-of-other-cloth",
    "first-copy-moved",
    "copy-of-other-pieces",
]


@record
class Flaw:
    """What does not fit. `names` are labels, parts, fabrics and counts, `lengths` inches: those found first,
    then those printed."""

    kind: FlawKind
    names: tuple[str | int, ...] = ()
    lengths: tuple[float, ...] = ()


class Misfit(Exception):
    """What is printed cannot be sewn."""

    def __init__(self, kind: FlawKind, *names: str | int, lengths: tuple[float, ...] = ()) -> None:
        super().__init__(kind)
        self.flaw = Flaw(kind, names, lengths)
