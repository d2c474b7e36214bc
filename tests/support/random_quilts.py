"""Twelve varied quilts from the library's blocks, and random needs: for tests of cutting plans."""

from __future__ import annotations

from functools import lru_cache
from random import Random

from piecewright.cutting.needs import Fabric, Need
from piecewright.cutting.plan_model import FabricPlan
from piecewright.diagnostics.source import Source
from piecewright.pipeline import compile_file
from piecewright.quilt.model import Quilt

from .library import LibraryShelf
from .needs import box, fabric, half_square, need, quarter_square

ROLES = """  fabric indigo shrinks 3%
  fabric rust
  fabric sand
  fabric cream width 40in
  roles dark = indigo, medium = rust, light = cream, background = sand, pale = cream
"""

FINISH = """  binding 2 1/2in in indigo
  backing in sand 4in over
  batting 4in over
"""

BODIES = """
Slipway: star=Evening Star
  set straight 4 across 5 down of 8in { alternate star, plain cream }
  border 2in in rust
  border 4in in indigo
Sluice: shoo=Shoo Fly; dash=Churn Dash
  set straight 5 across 6 down of 9in { alternate shoo, dash }
  sashing 1 1/2in in sand posts in rust
  border 3in in indigo mitred
Ferry: pin=Pinwheel Square
  set on point 4 across 5 down of 8in with triangles in sand { alternate pin, plain cream }
  border 5in in rust
Capstan: nine=Nine Patch; ohio=Ohio Star
  set on point 4 across 4 down of 9in with triangles in rust { alternate ohio, nine }
Gangway: rail=Rail Fence
  set straight 6 across 8 down of 6in { alternate rail, rail turned 90deg }
  border 4 1/2in in sand
Jetty: star=Ohio Star
  set straight 3 across 4 down of 12in { alternate star, star }
  sashing 3in in cream posts in indigo around
Towpath: cabin=Log Cabin
  set straight 6 across 6 down { alternate cabin, cabin turned 90deg }
  border 6in in indigo
Lockgate: paws=Bear's Paws
  set straight 3 across 4 down of 14in { alternate paws, paws }
  sashing 2in in sand
  border 4in in rust
Dinghy: spools=Spools
  set straight 6 across 6 down of 6in { alternate spools, spools turned 90deg }
Tideline: star=Eight-pointed Star
  set straight 4 across 4 down of 12in { alternate star, star }
  border 2in in rust
Causeway: chain=Double Irish Chain; pond=Goose in the Pond
  set straight 5 across 5 down of 10in { alternate chain, pond }
  border 3in in cream
Mooring: leaf=Maple Leaf; friend=Friendship Star
  set straight 6 across 7 down of 9in { alternate leaf, friend }
  sashing 2in in cream posts in rust
  border 5in in sand
"""

OTHER_CLOTHS = {
    "Towpath": ROLES.replace("dark = ", "hearth = rust, dark = "),
    "Dinghy": ROLES.replace("cream width 40in", "cream fat quarter 6")
    .replace("sand\n", "sand fat quarter 6\n", 1)
    .replace("indigo shrinks 3%", "indigo fat quarter 5"),
}

OTHER_FINISHES = {
    "Dinghy": "  binding 2 1/4in in indigo\n",
    "Mooring": "  binding 2 1/4in in rust bias\n  backing in indigo 4in over\n",
}


def _texts() -> tuple[str, ...]:
    found = []
    for part in BODIES.strip().split("\n"):
        if part.startswith(" "):
            found[-1][2] += f"{part}\n"
        else:
            title, uses = part.split(": ")
            found.append([title, uses, ""])
    return tuple(_quilt(*each) for each in found)


def _quilt(title: str, uses: str, body: str) -> str:
    named = [each.split("=") for each in uses.split("; ")]
    lines = "".join(f'  use "{name}" as {word}\n' for word, name in named)
    cloths, finish = OTHER_CLOTHS.get(title, ROLES), OTHER_FINISHES.get(title, FINISH)
    return f'edition 1\nquilt "{title}" {{\n{lines}{cloths}{body}{finish}}}\n'


TWELVE: tuple[str, ...] = _texts()
"""Settings straight and on point, sashed and not, bordered, from the bolt and from fat quarters."""


@lru_cache(maxsize=16)
def compiled_quilt(text: str) -> Quilt:
    """The one quilt of a text."""
    outcome = compile_file(Source("trial.quilt", text), LibraryShelf())
    assert outcome.value is not None, [each.message for each in outcome.diagnostics]
    (made,) = outcome.value.quilts
    return made


def cloth_used(plan: FabricPlan) -> float:
    """Square inches cut up: off the bolt all that is cut off; of scraps all but what the last keeps whole."""
    *others, last = plan.cloths
    down = max(placed.top + placed.height for placed in last.placed)
    across = max(placed.left + placed.width for placed in last.placed)
    cut_up = last.width * last.length if last.scrap is None else min(last.width * down, last.length * across)
    return float(sum(cloth.width * cloth.length for cloth in others) + cut_up)


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
