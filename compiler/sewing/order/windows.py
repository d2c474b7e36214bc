"""What fills the windows of a piece, in an order in which each can be set in.

Fillings that touch one another in a point share one window, and all that touch hang together like the leaves
of a tree: else they would enclose a patch and be one. A filling is sewn when its edge lies unbroken in what
is left of the window, so that some leaf can always be sewn next.
"""

from __future__ import annotations

from collections.abc import Sequence

from .seam_graph import SeamGraph

Window = tuple[int, tuple[int, ...], bool]
"""An island's number; the halves round it with the piece on their right; whether they start beside another
edge of the window."""


def windows_in_turn(graph: SeamGraph, piece: int, islands: Sequence[int]) -> list[Window]:
    """The islands of a piece in the order they are sewn: as they are numbered, wherever that can be."""
    number_of = {each: number for number in islands for each in graph.islands[number - 1].pieces}
    rings = [
        [(half, number_of.get(graph.beyond(half // 2, piece), 0)) for half in ring]
        for ring in graph.rings[piece]
    ]
    waiting, found = list(islands), []
    while waiting:
        window = next((each for number in waiting if (each := _window(rings, number))), None)
        assert window is not None, f"a window of piece {piece + 1} is not closed"
        found.append(window)
        waiting.remove(window[0])
        rings = [[each for each in ring if each[1] != window[0]] for ring in rings]
    return found


def _window(rings: Sequence[Sequence[tuple[int, int]]], number: int) -> Window | None:
    """The island's window, if it lies unbroken in its ring."""
    for ring in rings:
        own = [at for at, (_, each) in enumerate(ring) if each == number]
        if not own:
            continue
        starts = [at for at in own if ring[at - 1][1] != number]
        if len(starts) > 1:
            return None
        first = starts[0] if starts else 0
        turned = [*ring[first:], *ring[:first]]
        return number, tuple(half for half, _ in turned[: len(own)]), bool(starts)
    return None
