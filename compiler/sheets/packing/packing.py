"""Templates on pages: where each lies, and how it is turned, so that little paper is left over.

In: items, each with the poses it may take (a pose is an outline as it lies, with the words beside it), and
the page's room. Out: a Placement for each item, at least a gap from all others. Lengths are points, as on
all pages; x right, y down from the top left of the room.

The idea: outlines become rows of cells (`raster`), and items are laid down one after another, each at the
free place and in the pose that enlarges the box around the page's items least (`laying`). With coarse
cells that is so quick that many orders can be tried; the best is laid once more with fine cells. No chance
and no clock: the same items come out the same, in whatever order they are given.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import islice
from math import atan2, degrees, hypot, inf
from typing import Final

from ...measure.record import record
from ...measure.tolerance import CELL_TOUCH
from .laying import Attempt, Shape, lay, shape_of
from .raster import Ring, Rings, box_of

GAP: Final = 9.0
"""Points, 1/8in: what scissors need to pass between two outlines."""

COARSE: Final = 6.0  # points, 1/12in: the cells in which orders are tried
FINE: Final = 2.25  # points, 1/32in: the cells in which the best is laid

FINELY: Final = 150
"""Items, up to which fine cells are worth their time. On blocks of more, tried at templates of 1in to
4 1/2in, they never saved a page."""

EFFORT: Final = 500
"""How many times a pose may be looked for on a page, over all orders: about a hundredth of a second."""

ENOUGH: Final = 0.78
"""Share of its box that one page's outlines cover at which no further order is tried: few come denser."""

NARROWER: Final = (1.0, 0.75, 0.6, 0.45)  # shares of the room's width that are tried in turn

LONG_SIDE: Final = 27.0  # points, 3/8in: a shorter side is a trimmed point, not one to lay level
SAME_TURN: Final = 0.5  # degrees: turns nearer than this are one


@record
class Cover:
    """One way an item may lie: turned so many degrees clockwise, and the polygons it then covers. The
    first is the template's outline; others, such as the box of the words beside it, may overlap it and
    each other.

    `along`: whether its grain then runs the sheet's common way; such poses are taken where little is lost
    by it.
    """

    turned: float
    rings: Rings
    along: bool = True


@record
class Item:
    """Something to place, in one of its poses. Poses listed earlier win ties."""

    poses: tuple[Cover, ...]


@record
class Placement:
    """Where an item lies: its pose's polygons moved by (dx, dy) on a page. All are counted from 0."""

    item: int
    page: int
    pose: int
    dx: float
    dy: float


def useful_turns(ring: Ring) -> tuple[float, ...]:
    """Turns worth trying: half turns, quarter turns, then those that lay a long side level or upright."""
    turns: list[float] = [0.0, 180.0, 90.0, 270.0]
    for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if hypot(x2 - x1, y2 - y1) >= LONG_SIDE:
            level = -degrees(atan2(y2 - y1, x2 - x1))
            for turn in (round((level + quarter) % 360, 6) for quarter in (0, 180, 90, 270)):
                if all(abs((turn - known + 180) % 360 - 180) > SAME_TURN for known in turns):
                    turns.append(turn)
    return tuple(turns)


def fits(item: Item, width: float, height: float) -> bool:
    """Whether some pose of the item fits the room; an item that does not must be tiled."""
    return any(_fits(pose, width, height) for pose in item.poses)


def _fits(pose: Cover, width: float, height: float) -> bool:
    left, top, right, bottom = box_of(pose.rings)
    return right - left <= width + CELL_TOUCH and bottom - top <= height + CELL_TOUCH


def pack(items: Sequence[Item], width: float, height: float, gap: float = GAP) -> tuple[Placement, ...]:
    """A place for every item, in the items' order. Each must fit the room by itself (`fits`)."""
    if not items:
        return ()
    poses = [[n for n, pose in enumerate(item.poses) if _fits(pose, width, height)] for item in items]
    assert all(poses), "an item larger than the page must be tiled"
    shapes = [_shapes(item, wanted, COARSE, gap) for item, wanted in zip(items, poses, strict=True)]
    narrowest = max(min(shape.width for shape in each) for each in shapes)
    dense = sum(area_of(item.poses[0].rings[0]) for item in items) / ENOUGH
    plans = dict.fromkeys((order, max(share * width, narrowest)) for order, share in _plans(shapes))
    rough: Attempt | None = None
    for order, room in plans:
        rough = lay(shapes, order, (room, height), COARSE, rough.worth if rough else (inf, inf)) or rough
        if rough and rough.worth[0] == 1 and rough.worth[1] <= dense:
            break
    assert rough, "the first plan always comes out"
    laid = _laid_finely(items, rough, height, gap) if len(items) <= FINELY else rough
    return tuple(Placement(*each) for each in sorted(laid.places))


def _shapes(item: Item, poses: Sequence[int], cell: float, gap: float) -> tuple[Shape, ...]:
    """The poses as shapes."""
    chosen = [(number, item.poses[number]) for number in poses]
    return tuple(shape_of(number, pose.rings, pose.along, cell, gap) for number, pose in chosen)


def _plans(shapes: Sequence[tuple[Shape, ...]]) -> Iterator[tuple[tuple[int, ...], float]]:
    """Orders of laying down, each with a share of the room's width, the likeliest first."""
    searches = sum(len(each) for each in shapes)
    orders = _orders([each[0] for each in shapes])
    if len(shapes) == 1:
        yield next(orders), NARROWER[0]
        return
    plans = ((order, share) for order in orders for share in NARROWER)
    yield from islice(plans, max(1, EFFORT // searches))


def _orders(shapes: Sequence[Shape]) -> Iterator[tuple[int, ...]]:
    """Largest first, by cover, by box and by length; then with each item in turn put first. Each only once,
    and made only when its turn comes: hundreds of items have time for one order."""
    met: set[tuple[int, ...]] = set()
    for order in _every_order(shapes):
        if order not in met:
            met.add(order)
            yield order


def _every_order(shapes: Sequence[Shape]) -> Iterator[tuple[int, ...]]:
    by_cover = _ordered(shapes, _covered)
    yield by_cover
    yield _ordered(shapes, _boxed)
    yield _ordered(shapes, _longest)
    for n in by_cover[1:]:
        yield n, *(other for other in by_cover if other != n)


def _ordered(shapes: Sequence[Shape], size: Callable[[Shape], float]) -> tuple[int, ...]:
    return tuple(sorted(range(len(shapes)), key=lambda n: (-size(shapes[n]), *_looks(shapes[n]))))


def _covered(shape: Shape) -> float:
    return shape.mask.covered


def _boxed(shape: Shape) -> float:
    return shape.width * shape.height


def _longest(shape: Shape) -> float:
    return max(shape.width, shape.height)


def _looks(shape: Shape) -> tuple[float, ...]:
    """Settles which of two equally large items goes first by their looks, not by their place in the list."""
    return shape.width, shape.height, *shape.mask.rows


def _laid_finely(items: Sequence[Item], rough: Attempt, height: float, gap: float) -> Attempt:
    """The attempt with the same order and poses, but closer; or as it was, should that come out worse."""
    shapes: list[tuple[Shape, ...]] = [()] * len(items)
    for place in rough.places:
        shapes[place.item] = _shapes(items[place.item], [place.pose], FINE, gap)
    order = [place.item for place in rough.places]
    return lay(shapes, order, (rough.width, height), FINE, rough.worth) or rough


def area_of(ring: Ring) -> float:
    """The area inside a ring."""
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs)) / 2
