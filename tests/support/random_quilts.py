"""Twelve varied quilts from the library's blocks, and random needs: for tests of cutting plans."""

from __future__ import annotations

from functools import lru_cache
from random import Random

from piecewright.diagnostics.source import Source
from piecewright.pipeline import compile_file
from piecewright.quilt.model import Fabric, Need, Quilt

from .library import LibraryShelf
from .needs import box, fabric, half_square, need, quarter_square

ROLES = ("  fabric indigo shrinks 3%\n  fabric rust\n  fabric sand\n  fabric cream width 40in\n"
         "  roles dark = indigo, medium = rust, light = cream, background = sand, pale = cream\n")


def _quilt(title: str, uses: str, body: str, fabrics: str = ROLES) -> str:
    named = "".join(f'  use "{name}" as {word}\n' for word, name in (each.split("=") for each in uses.split("; ")))
    return f'edition 1\nquilt "{title}" {{\n{named}{fabrics}{body}}}\n'


FINISH = "  binding 2 1/2in in indigo\n  backing in sand 4in over\n  batting 4in over\n"

TWELVE: tuple[str, ...] = (
    _quilt("Slipway", "star=Evening Star", "  set straight 4 across 5 down of 8in { alternate star, plain cream }\n"
           "  border 2in in rust\n  border 4in in indigo\n" + FINISH),
    _quilt("Sluice", "shoo=Shoo Fly; dash=Churn Dash", "  set straight 5 across 6 down of 9in { alternate shoo, dash }\n"
           "  sashing 1 1/2in in sand posts in rust\n  border 3in in indigo mitred\n" + FINISH),
    _quilt("Ferry", "pin=Pinwheel Square", "  set on point 4 across 5 down of 8in with triangles in sand "
           "{ alternate pin, plain cream }\n  border 5in in rust\n" + FINISH),
    _quilt("Capstan", "nine=Nine Patch; ohio=Ohio Star", "  set on point 4 across 4 down of 9in with triangles in rust "
           "{ alternate ohio, nine }\n" + FINISH),
    _quilt("Gangway", "rail=Rail Fence", "  set straight 6 across 8 down of 6in { alternate rail, rail turned 90deg }\n"
           "  border 4 1/2in in sand\n" + FINISH),
    _quilt("Jetty", "goose=Flying Goose; star=Ohio Star", "  set straight 3 across 4 down of 12in { alternate star, star }\n"
           "  sashing 3in in cream posts in indigo around\n" + FINISH),
    _quilt("Towpath", "cabin=Log Cabin", "  roles hearth = rust, dark = indigo, light = cream\n"
           "  set straight 6 across 6 down { alternate cabin, cabin turned 90deg }\n"
           "  border 6in in indigo\n" + FINISH, "  fabric indigo\n  fabric rust\n  fabric cream\n  fabric sand\n"),
    _quilt("Lockgate", "paws=Bear's Paws", "  set straight 3 across 4 down of 14in { alternate paws, paws }\n"
           "  sashing 2in in sand\n  border 4in in rust\n" + FINISH),
    _quilt("Dinghy", "spools=Spools", "  set straight 6 across 6 down of 6in { alternate spools, spools turned 90deg }\n"
           "  binding 2 1/4in in indigo\n",
           "  fabric indigo fat quarter 5\n  fabric rust fat quarter 5\n  fabric cream fat quarter 6\n"
           "  fabric sand fat quarter 6\n  roles dark = indigo, medium = rust, light = cream, background = sand, "
           "pale = cream\n"),
    _quilt("Tideline", "tumbler=The Tumbler; star=Eight-pointed Star",
           "  set straight 4 across 4 down of 12in { alternate star, star }\n  border 2in in rust\n" + FINISH),
    _quilt("Causeway", "chain=Double Irish Chain; pond=Goose in the Pond",
           "  set straight 5 across 5 down of 10in { alternate chain, pond }\n  border 3in in cream\n" + FINISH),
    _quilt("Mooring", "leaf=Maple Leaf; friend=Friendship Star", "  set straight 6 across 7 down of 9in "
           "{ alternate leaf, friend }\n  sashing 2in in cream posts in rust\n  border 5in in sand\n"
           "  binding 2 1/4in in rust bias\n  backing in indigo 4in over\n"),
)
"""Settings straight and on point, sashed and not, bordered, from the bolt and from fat quarters."""


@lru_cache(maxsize=16)
def compiled_quilt(text: str) -> Quilt:
    """The one quilt of a text."""
    outcome = compile_file(Source("trial.quilt", text), LibraryShelf())
    assert outcome.value is not None, [each.message for each in outcome.diagnostics]
    (made,) = outcome.value.quilts
    return made


def random_needs(seed: int, cloth: Fabric | None = None) -> list[Need]:
    """A few shapes of one fabric, in ruler sizes."""
    chance = Random(seed)
    cloth = cloth or fabric()
    found = []
    for _ in range(chance.randint(1, 8)):
        size = chance.choice([1.5, 2, 2.5, 3, 4, 4.5, 6])
        other = chance.choice([1, 2, 3.5, 5, 8, 12, 20, 60])
        part = "border" if other > 12 else "blocks"
        corners = chance.choice([box(size, size), box(size, other), half_square(size), quarter_square(size)])
        found.append(need(corners, chance.choice([1, 3, 8, 24, 80]), fabric=cloth.name, part=part))
    return found
