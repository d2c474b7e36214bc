"""Quilts for the tests: a few blocks of our own, texts to quilts, and what must hold of every quilt."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from math import atan2, degrees
from typing import Final

import shapely
from hypothesis import strategies as st
from piecewright.diagnostics.diagnostic import Diagnostic, Outcome
from piecewright.diagnostics.source import Source
from piecewright.geometry.curves import flattened
from piecewright.geometry.edge import Edge
from piecewright.pipeline import Compilation, compile_file
from piecewright.quilt.assembly import assemble_quilts
from piecewright.quilt.assembly_model import QuiltAssembly
from piecewright.quilt.model import Quilt, QuiltPiece
from support.check import DictShelf

BLOCKS: Final = """
block "Pair" {
  finished 4in  faces top-left
  seam top-right -- bottom-left
  piece half at top-left in dark
  piece rest at bottom-right in pale
}
block "Goose" {
  finished 4in x 2in  faces top
  seam bottom-left -- top -- bottom-right
  piece goose at bottom in dark
  piece sky at top-left, top-right in pale
}
block "Sail" {
  finished 4in
  point mast = 1in from top-left to top-right
  seam mast -- bottom-left
  seam mast -- bottom-right
  piece lee at top-left in pale
  piece sail at bottom in dark
  piece luff at top-right in pale
}
block "House" {
  finished 6in x 4in  faces top
  point eave = 1/3 from top-left to bottom-left
  seam eave -- top -- right
  seam left -- bottom
  piece sky at top-left in pale
  piece rest at top-right in pale
  piece front at center in dark
  piece step at bottom-left in pale
}
"""
"""A two-triangle square, a flying goose, and two blocks that are not their own mirror images: a `Sail` of 4in
with three triangles of different shapes, and a long `House`."""

USES: Final = """
  use "Pair" as pair
  use "Goose" as goose
  use "Sail" as sail
  use "House" as house
"""

FABRICS: Final = """
  fabric dark  fabric pale  fabric sand  fabric indigo
"""

LAST: Final = """
  binding 2 1/2in in indigo  backing in sand  batting
"""
"""What a quilt needs so that nothing is missing from it."""

AREA_NEAR: Final = 1e-6
"""Square inches by which areas may differ: rounding of floats, far below any thread."""


GRID: Final = 1e-6
"""Inches: corners are snapped to this before they are joined, or a float's last digit would leave holes."""


def assemble_quilt(quilt: Quilt) -> Outcome[QuiltAssembly]:
    """How one quilt goes together."""
    made = assemble_quilts([quilt])
    return Outcome(made.value[0] if made.value else None, made.diagnostics)


def compile_text(text: str, **other_files: str) -> Outcome[Compilation]:
    """A whole file with everything said of it; other files are found by title."""
    shelf = DictShelf({f"{name}.block": other for name, other in other_files.items()})
    return compile_file(Source("quilt.quilt", text), shelf)


def quilt_text(body: str, *, uses: str = USES, fabrics: str = FABRICS, last: str = LAST) -> str:
    """A file of one quilt, with the blocks after it."""
    return f'edition 1\nquilt "Trial" {{{uses}\n{fabrics}\n{body}\n{last}}}\n{BLOCKS}'


def try_quilt(
    body: str, *, uses: str = USES, fabrics: str = FABRICS, last: str = LAST
) -> Outcome[Compilation]:
    """One quilt's body, with everything said of it."""
    return compile_text(quilt_text(body, uses=uses, fabrics=fabrics, last=last))


UNUSED: Final = ("unit-unused", "fabric-unused", "role-unused")
"""Remarks that most short tests give rise to, since they do not use all that stands above."""


def matters(outcome: Outcome[Compilation]) -> list[Diagnostic]:
    """All that is said but of things not used."""
    return [each for each in outcome.diagnostics if each.code not in UNUSED]


def codes(outcome: Outcome[Compilation]) -> list[str]:
    """The codes of all that is said but of things not used."""
    return [each.code for each in matters(outcome)]


def lay(body: str, **parts: str) -> Quilt:
    """The one quilt of a body of which nothing is said but that some things are not used. Checked whole."""
    (quilt,) = lay_all(body, **parts)
    return quilt


def lay_all(body: str, **parts: str) -> tuple[Quilt, ...]:
    """Every colourway of a body, each checked whole."""
    outcome = try_quilt(body, **parts)
    assert not matters(outcome) and outcome.value is not None, matters(outcome)
    for quilt in outcome.value.quilts:
        check_quilt(quilt)
    return outcome.value.quilts


# ---- what holds of every quilt ----------------------------------------------------------------------------


def check_quilt(quilt: Quilt) -> None:
    """The pieces tile the quilt, the needs are the pieces counted, and the blocks' counts are the blocks."""
    check_tiling(quilt)
    check_counts(quilt)
    assert list(quilt.block_counts) == [
        sum(each.block == index for each in quilt.placed) for index in range(len(quilt.blocks))
    ]
    for index, block in enumerate(quilt.blocks):
        places = quilt.block_counts[index]
        assert sum(each.block == index for each in quilt.pieces) == places * len(block.draft.pieces)


def check_tiling(quilt: Quilt) -> None:
    """Nothing is left bare, nothing overlaps, nothing sticks out; every ring runs clockwise."""
    whole = shapely.box(0, 0, float(quilt.width), float(quilt.height))
    faces = [polygon_of(each) for each in quilt.pieces]
    assert all(signed_area(each.outline) > 0 for each in quilt.pieces), "a ring runs anticlockwise"
    assert all(signed_area(hole) < 0 for each in quilt.pieces for hole in each.holes), "a hole runs clockwise"
    slack = AREA_NEAR * max(1, len(faces))
    curved = 1e-3 * sum(1 for each in quilt.pieces for ring in each.rings for edge in ring if edge.arc)
    assert abs(sum(face.area for face in faces) - whole.area) < slack + curved
    union = shapely.union_all(faces, grid_size=GRID)
    assert abs(union.area - whole.area) < GRID * sum(face.length for face in faces) + curved
    index = shapely.STRtree(faces)
    for one, other in index.query(faces, predicate="intersects").T:
        assert one >= other or faces[one].intersection(faces[other]).area < AREA_NEAR + curved
    assert all(face.difference(whole).area < slack + curved for face in faces)


def check_counts(quilt: Quilt) -> None:
    """The needs of each cloth and part hold exactly the picture's pieces: so many of each shape as drawn, and
    so many of its mirror image."""
    shown: Counter[tuple[str, str, Shape]] = Counter()
    for piece in quilt.pieces:
        shown[piece.fabric, piece.part, shape_of(piece.outline)] += 1
    needed: Counter[tuple[str, str, Shape]] = Counter()
    for need in quilt.needs:
        shape = shape_of(need.outline)
        assert need.reversible == (shape == mirrored(shape)), need
        assert not (need.reversible and need.reversed), "what is its own mirror image is never reversed"
        assert len(need.allowances) == len(need.outline)
        needed[need.fabric, need.part, shape] += need.count
        if need.reversed:
            needed[need.fabric, need.part, mirrored(shape)] += need.reversed
    assert +needed == +shown


Shape = tuple[tuple[int, int, int], ...]
"""Sides clockwise, each with its length in thousandths of an inch, the angle turned to the next and its bend
in tenths of a degree; the least of all ways to begin."""

TIE: Final = 0.317
"""Keeps lengths and angles that lie half-way between two whole numbers from being rounded either way."""


def shape_of(outline: Sequence[Edge]) -> Shape:
    """What all outlines of one shape share, however they are turned. Worked out from the edges alone."""
    sides = []
    for at, edge in enumerate(outline):
        following = outline[(at + 1) % len(outline)]
        turn = (heading(following, start=True) - heading(edge, start=False)) % 360
        bend = degrees(edge.sweep)
        sides.append((round(1000 * edge.length + TIE), round(10 * turn + TIE) % 3600, round(10 * bend)))
    return least(sides)


def mirrored(shape: Shape) -> Shape:
    """The shape seen from the back."""
    sides = [(length, shape[at - 1][1], -bend) for at, (length, _, bend) in enumerate(shape)]
    return least([(length, turn, -bend) for length, turn, bend in reversed(sides)])


def least(sides: Sequence[tuple[int, int, int]]) -> Shape:
    """The least of all ways to begin going round."""
    return min(tuple([*sides[at:], *sides[:at]]) for at in range(len(sides)))


def heading(edge: Edge, *, start: bool) -> float:
    """Degrees of the way that an edge sets out, or arrives."""
    chord = degrees(atan2(float(edge.end.y - edge.start.y), float(edge.end.x - edge.start.x)))
    half = degrees(edge.sweep) / 2
    return chord - half if start else chord + half


def signed_area(outline: Sequence[Edge]) -> float:
    """Square inches within a ring, arcs as many short sides; above zero where it runs clockwise."""
    corners = [p for edge in outline for p in flattened(edge)]
    return (
        sum(float(p.x * q.y - q.x * p.y) for p, q in zip(corners, [*corners[1:], corners[0]], strict=True))
        / 2
    )


def polygon_of(piece: QuiltPiece) -> shapely.Polygon:
    """The piece for shapely, arcs as many short sides."""
    around, *holes = (
        [(float(p.x), float(p.y)) for edge in ring for p in flattened(edge)] for ring in piece.rings
    )
    return shapely.Polygon(around, holes)


def pieces_called(quilt: Quilt, what: str) -> list[QuiltPiece]:
    """The pieces of that name."""
    return [each for each in quilt.pieces if each.what == what]


def needed(quilt: Quilt, what: str) -> int:
    """How many of that name are to be cut, reversed ones too."""
    return sum(each.count + each.reversed for each in quilt.needs if each.what == what)


def size_of(piece: QuiltPiece) -> tuple[float, float]:
    """Width and height of a piece's box, to a thousandth of an inch."""
    left, top, right, bottom = polygon_of(piece).bounds
    return round(right - left, 3), round(bottom - top, 3)


def area_of(pieces: Sequence[QuiltPiece]) -> float:
    """Square inches of some pieces."""
    return sum(polygon_of(each).area for each in pieces)


# ---- random quilts ----------------------------------------------------------------------------------------

CLOTHS: Final = st.sampled_from(("dark", "pale", "sand", "indigo"))
SQUARES: Final = st.sampled_from(
    (
        "pair",
        "sail",
        "pair turned 90deg",
        "sail mirrored",
        "sail turned 180deg mirrored",
        "pair facing bottom-right",
        "plain sand",
        "plain dark",
    )
)
WIDTHS: Final = st.sampled_from(("1in", "1 1/2in", "2in", "3/4in", "5cm"))


@st.composite
def settings_of_quilts(draw: st.DrawFn) -> str:
    """A set with its sashing: straight, on point or in rows."""
    kind = draw(st.sampled_from(("straight", "on point", "rows")))
    around = draw(st.sampled_from(("", " around")))
    posts = draw(st.sampled_from(("", f" posts in {draw(CLOTHS)}")))
    sashing = draw(st.sampled_from(("", f"sashing {draw(WIDTHS)} in {draw(CLOTHS)}{posts}{around}")))
    if kind == "rows":
        rows = draw(
            st.lists(
                st.sampled_from(
                    (
                        "row 6 goose",
                        "row 6 pair",
                        "row 3 sail, 3 plain sand",
                        "row 4 house",
                        "row 12 goose turned 90deg",
                    )
                ),
                min_size=1,
                max_size=4,
            )
        )
        return f"set rows {{ {' '.join(rows)} }}\n" + sashing.replace(posts, "")
    across, down = draw(st.integers(1, 4)), draw(st.integers(1, 4))
    cells = draw(st.lists(SQUARES, min_size=1, max_size=3))
    over = ""
    if kind == "straight" and across > 1 and draw(st.booleans()):
        over = f"place {draw(st.sampled_from(('plain indigo', 'sail')))} in A1..{'C3' if down > 1 else 'B2'}"
    filled = f"{{ alternate {', '.join(cells)} {over} }}"
    if kind == "straight":
        size = draw(st.sampled_from((" of 4in", " of 8in", " of 6 1/2in")))
        return f"set straight {across} across {down} down{size} {filled}\n{sashing}"
    if sashing and not posts:
        sashing = ""
    triangles = f"with triangles in {draw(CLOTHS)}"
    return f"set on point {across} across {down} down of 4in {triangles} {filled}\n{sashing}"


@st.composite
def quilts(draw: st.DrawFn) -> str:
    """The body of a random quilt, of which a border or a row may not come out."""
    borders = draw(
        st.lists(
            st.sampled_from(
                (
                    "border 2in in sand",
                    "border 1 1/2in in indigo mitred",
                    "border 1in in dark unjoined",
                    "border 2in of goose",
                    "border 2in of goose, plain sand corners pair",
                    "border 4in of plain dark corners sail",
                    "border to 60in x 72in in pale",
                    "border to 80in in dark mitred",
                )
            ),
            max_size=3,
        )
    )
    return "\n".join((draw(settings_of_quilts()), *borders))
