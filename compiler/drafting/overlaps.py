"""Units and cells that lie on each other."""

from __future__ import annotations

from collections.abc import Sequence

from ..geometry.edge import Point
from ..measure.tolerance import NEAR
from ..words.messages import units as complain
from .context import Bench
from .naming import placed_polygon
from .sketch import Placed

OVERLAP_LEAST = 1e-3
"""Square inches. Less than this is two flattened arcs' chords, not two pieces of cloth."""


def check_overlaps(placed: Sequence[Placed], bench: Bench) -> None:
    """Complains of every two that overlap, once for each pair of statements."""
    import numpy as np
    import shapely

    if len(placed) < 2:
        return
    polygons = np.array([placed_polygon(each) for each in placed])
    pairs = shapely.STRtree(shapely.buffer(polygons, -NEAR * 10)).query(polygons, predicate="intersects")
    pairs = pairs[:, pairs[0] < pairs[1]]
    for one, other in sorted((int(a), int(b)) for a, b in pairs.T):
        common = polygons[one].intersection(polygons[other])
        if common.area <= OVERLAP_LEAST:
            continue
        middle = common.representative_point()
        later, earlier = sorted((placed[one], placed[other]), key=lambda each: -each.origin.start)
        bench.say(complain.units_overlap(later.origin, earlier.origin, Point(middle.x, middle.y)))
