"""The patch families of the library that ships: four-, nine-, five- and seven-patch, and the shared units."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Final

import piecewright.library
import pytest
from piecewright.drafting.model import Draft, Piece
from piecewright.language.decode import read_source
from piecewright.shelves.folders import FolderShelf
from support.check import compile_source
from support.webster import is_in_webster

LIBRARY: Final = Path(piecewright.library.__file__ or "").parent
FAMILIES: Final = ("four-patch", "nine-patch", "five-patch", "seven-patch", "units")
FILES: Final = tuple(path for family in FAMILIES for path in sorted((LIBRARY / family).glob("*.block")))

IN_WEBSTER: Final = "Name: Webster 1915 list."
IN_COMMON_USE: Final = "Name: in common use; no published source."

# Other names that two blocks bear: common use.
SHARED: Final = frozenset(("Monkey Wrench", "Snowball", "Variable Star"))

# Pieces, templates and finished inches: common practice, no published source (Shoo Fly has its own test).
# Each is the sum of its units: Bear's Paws are 16 two-triangle squares, 4 pads, 4 corners, 4 bars, 1 centre.
COUNTED: Final = {
    "album": (19, 4, 12),
    "broken-dish": (32, 1, 8),
    "crosses-and-losses": (16, 3, 12),
    "dutchmans-puzzle": (24, 2, 12),
    "economy": (9, 3, 8),
    "evening-star": (17, 4, 12),
    "flock-of-geese": (20, 2, 12),
    "hour-glass": (16, 1, 8),
    "necktie": (5, 2, 8),
    "pinwheel-square": (8, 1, 6),
    "spools": (5, 2, 8),
    "storm-at-sea": (24, 7, 9),
    "wild-goose-chase-no-2": (33, 4, 12),
    "wind-mill": (12, 2, 8),
    "birds-in-the-air": (10, 2, 6),
    "churn-dash": (17, 3, 9),
    "double-nine-patch": (49, 2, 9),
    "friendship-star": (13, 2, 9),
    "jacobs-ladder": (28, 2, 9),
    "maple-leaf": (15, 4, 9),
    "nine-patch": (9, 1, 9),
    "ohio-star": (21, 2, 9),
    "puss-in-the-corner": (9, 3, 8),
    "rolling-stone": (29, 4, 9),
    "shoo-fly": (13, 2, 9),
    "snowball": (5, 2, 6),
    "double-irish-chain": (25, 1, 10),
    "ducks-and-ducklings": (21, 4, 10),
    "goose-in-the-pond": (77, 4, 15),
    "lady-of-the-lake": (34, 2, 10),
    "sisters-choice": (33, 2, 10),
    "bears-paws": (45, 4, 14),
    "triple-irish-chain": (49, 1, 14),
    "double-wrench": (17, 2, 10),
    "twenty-five-patch": (25, 1, 10),
    "arkansas-snowflake": (8, 2, 8),
    "attic-windows": (3, 2, 8),
    "bright-hopes": (5, 2, 8),
    "buckeye-beauty": (12, 2, 8),
    "center-diamond": (17, 5, 16),
    "clays-choice": (16, 3, 8),
    "double-four-patch": (10, 2, 8),
    "martha-washingtons-star": (24, 3, 12),
    "postage-stamp": (64, 1, 8),
    "rising-star": (33, 6, 12),
    "sailboat": (21, 2, 12),
    "signature-block": (3, 2, 6),
    "single-irish-chain": (20, 2, 12),
    "sixteen-patch": (16, 1, 8),
    "snails-trail": (20, 5, 8),
    "streak-of-lightning": (32, 1, 8),
    "fifty-four-forty-or-fight": (32, 3, 12),
    "nine-patch-star": (25, 4, 12),
    "split-nine-patch": (12, 2, 6),
    "checkerboard": (49, 1, 14),
    "chimneys-and-cornerstones": (25, 3, 14),
    "trip-around-the-world": (49, 1, 14),
    "housetop": (13, 7, 14),
    "wedding-ring": (41, 2, 10),
    "garden-of-eden": (25, 4, 10),
    "red-cross": (11, 3, 10),
    "card-trick": (24, 2, 9),
    "contrary-wife": (13, 2, 6),
    "eccentric-star": (17, 2, 9),
    "prairie-queen": (25, 3, 9),
    "weather-vane": (41, 5, 12),
    "louisiana": (16, 3, 8),
    "london-stairs": (8, 1, 8),
    "cracker": (7, 2, 8),
}

# How each looks the same again: common practice. A pinwheel looks the same turned, never in a mirror.
TURNED_ONLY: Final = (
    "broken-dish",
    "dutchmans-puzzle",
    "friendship-star",
    "hour-glass",
    "pinwheel-square",
    "wind-mill",
    "clays-choice",
    "martha-washingtons-star",
    "eccentric-star",
    "louisiana",
    "london-stairs",
    "prairie-queen",
)
TURNED_AND_MIRRORED: Final = (
    "bears-paws",
    "churn-dash",
    "double-irish-chain",
    "double-nine-patch",
    "ducks-and-ducklings",
    "economy",
    "evening-star",
    "goose-in-the-pond",
    "nine-patch",
    "ohio-star",
    "puss-in-the-corner",
    "rolling-stone",
    "shoo-fly",
    "sisters-choice",
    "snowball",
    "triple-irish-chain",
    "wild-goose-chase-no-2",
    "double-wrench",
    "center-diamond",
    "rising-star",
    "nine-patch-star",
    "trip-around-the-world",
    "checkerboard",
    "wedding-ring",
    "garden-of-eden",
    "weather-vane",
)
HALF_TURNED_ONLY: Final = (
    "album",
    "crosses-and-losses",
    "jacobs-ladder",
    "necktie",
    "spools",
    "arkansas-snowflake",
    "bright-hopes",
    "snails-trail",
    "signature-block",
    "single-irish-chain",
    "card-trick",
    "contrary-wife",
    "cracker",
    "red-cross",
)

Corner = tuple[float, float]
Look = Counter[tuple[frozenset[Corner], str]]


def file_called(name: str) -> Path:
    """The library file of that name."""
    return next(path for path in FILES if path.stem == name)


@cache
def drafted(path: Path) -> Draft:
    """The one block of a file, which must compile with nothing said."""
    source = read_source(path.name, path.read_bytes())
    assert source.value is not None and not source.diagnostics
    compiled = compile_source(source.value, FolderShelf(library=LIBRARY))
    assert [(each.code, each.message) for each in compiled.diagnostics] == []
    own = [each.draft for each in compiled.value or () if not each.from_elsewhere]
    assert len(own) == 1
    return own[0]


def block(name: str) -> Draft:
    """The block in the library file of that name."""
    return drafted(file_called(name))


def corners(piece: Piece) -> list[Corner]:
    """The piece's corners, to a thousandth of an inch."""
    return [(round(float(side.edge.start.x), 3), round(float(side.edge.start.y), 3)) for side in piece.ring]


def look(draft: Draft, move: Callable[[float, float], Corner] = lambda x, y: (x, y)) -> Look:
    """Every piece as its corners and its fabric, after a move."""

    def moved(piece: Piece) -> frozenset[Corner]:
        places = (move(x, y) for x, y in corners(piece))
        return frozenset((round(x, 3), round(y, 3)) for x, y in places)

    return Counter((moved(piece), piece.fabric) for piece in draft.pieces)


def turned(draft: Draft) -> Look:
    """The block a quarter turn on."""
    width = float(draft.width)
    return look(draft, lambda x, y: (width - y, x))


def half_turned(draft: Draft) -> Look:
    """The block upside down."""
    width = float(draft.width)
    return look(draft, lambda x, y: (width - x, width - y))


def mirrored(draft: Draft) -> Look:
    """The block with left and right changed over."""
    width = float(draft.width)
    return look(draft, lambda x, y: (width - x, y))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_block_compiles_with_nothing_said_and_states_where_it_comes_from(path: Path) -> None:
    draft = drafted(path)
    family = "unit" if path.parent.name == "units" else path.parent.name
    assert draft.family[0] == family
    assert draft.notes[0].startswith("Traditional")
    assert "Draft: common practice" in draft.notes[0]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_name_is_on_websters_list_or_said_to_be_in_common_use(path: Path) -> None:
    draft = drafted(path)
    listed = is_in_webster(draft.title) or any(map(is_in_webster, draft.also))
    assert (IN_WEBSTER in draft.notes[0]) == listed
    assert (IN_COMMON_USE in draft.notes[0]) == (not listed)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_file_is_called_by_its_title_and_each_of_its_names_finds_it(path: Path) -> None:
    draft = drafted(path)
    assert path.stem == re.sub(r"[^a-z0-9]+", "-", draft.title.lower().replace("'", ""))
    shelf = FolderShelf(library=LIBRARY)
    for name in (draft.title, *draft.also):
        found = [each.block.title.text for each in shelf.find(name, "quilt.block")]
        assert draft.title in found
        assert len(found) == 1 or name in SHARED


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_piece_has_a_fabric_that_a_quilter_can_sort_by(path: Path) -> None:
    fabrics = {piece.fabric for piece in drafted(path).pieces}
    assert fabrics <= {"dark", "medium", "light", "background"}
    assert len(fabrics) >= 2


@pytest.mark.parametrize("name", sorted(COUNTED))
def test_pieces_templates_and_size(name: str) -> None:
    draft = block(name)
    pieces, templates, inches = COUNTED[name]
    assert (len(draft.pieces), len(draft.shapes)) == (pieces, templates)
    assert (draft.width, draft.height) == (inches, inches)


def test_every_block_is_counted() -> None:
    assert {path.stem for path in FILES if path.parent.name != "units"} == set(COUNTED)


def test_shoo_fly_has_the_squares_and_triangles_of_the_schools_unit() -> None:
    """M. B. Martin, "Quilts" unit, College of Education, University of Illinois, 1995-96: six squares of A
    and three of B, of which two of each are cut into two triangles."""
    cut = Counter((len(piece.ring), piece.fabric) for piece in block("shoo-fly").pieces)
    assert cut == {(4, "background"): 4, (4, "dark"): 1, (3, "background"): 4, (3, "dark"): 4}
    area = Counter[str]()
    for piece in block("shoo-fly").pieces:
        area[piece.fabric] += int(piece.area * 2)
    assert area["background"] * 3 == area["dark"] * 6


def test_puss_in_the_corner_has_a_larger_centre_and_small_corners() -> None:
    """Webster 1915: a Nine Patch whose centre is larger and whose four corners are quite small."""
    areas = sorted(float(piece.area) for piece in block("puss-in-the-corner").pieces)
    assert areas == [4.0] * 4 + [8.0] * 4 + [16.0]
    middle = next(piece for piece in block("puss-in-the-corner").pieces if float(piece.area) == areas[-1])
    assert sorted(corners(middle)) == [(2, 2), (2, 6), (6, 2), (6, 6)]


def test_evening_star_has_eight_points() -> None:
    """Quilts A to Z, Nebraska State Historical Society: Evening Star is an eight-point star."""
    pieces = block("evening-star").pieces
    dark = [piece for piece in pieces if piece.fabric == "dark" and len(piece.ring) == 3]
    tips = [at for piece in dark for at in corners(piece) if {0, 12} & set(at)]
    assert sorted(tips) == [(0, 3), (0, 9), (3, 0), (3, 12), (9, 0), (9, 12), (12, 3), (12, 9)]


@pytest.mark.parametrize("name", TURNED_ONLY)
def test_pinwheels_look_the_same_turned_and_not_in_a_mirror(name: str) -> None:
    draft = block(name)
    assert turned(draft) == look(draft)
    assert mirrored(draft) != look(draft)


@pytest.mark.parametrize("name", TURNED_AND_MIRRORED)
def test_even_blocks_look_the_same_turned_and_in_a_mirror(name: str) -> None:
    draft = block(name)
    assert turned(draft) == look(draft)
    assert mirrored(draft) == look(draft)


@pytest.mark.parametrize("name", HALF_TURNED_ONLY)
def test_two_way_blocks_look_the_same_upside_down_only(name: str) -> None:
    draft = block(name)
    assert half_turned(draft) == look(draft)
    assert turned(draft) != look(draft)


def test_geese_of_the_dutchmans_puzzle_fly_round_in_pairs() -> None:
    geese = [piece for piece in block("dutchmans-puzzle").pieces if piece.name == "goose"]
    assert Counter(piece.fabric for piece in geese) == {"dark": 4, "medium": 4}


def test_every_card_of_the_trick_lies_half_over_one_and_half_under_the_next() -> None:
    """A card is a square on point of eighteen square inches, of which a quarter lies under the next; of its
    neighbour it hides as much: common practice."""
    draft = block("card-trick")
    areas = Counter[str]()
    for piece in draft.pieces:
        areas[piece.fabric] += int(piece.area * 4)
    assert areas == {"background": 4 * 27, "dark": 4 * 27, "medium": 4 * 27}
    meeting = [piece for piece in draft.pieces if (4.5, 4.5) in corners(piece)]
    assert sorted(piece.fabric for piece in meeting) == ["dark", "dark", "medium", "medium"]
