"""Whole quilts to arrange: texts, compiled with the library that ships, and planned."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from piecewright.cutting.plan_model import CuttingPlan
from piecewright.cutting.plans.plan import plan_cutting
from piecewright.diagnostics.source import Source
from piecewright.pipeline import compile_file
from piecewright.quilt.model import Quilt
from piecewright.shelves.folders import FolderShelf, library_folder
from support.block_files import VANE

SAMPLER = f"""{VANE}
quilt "Breakwater Sampler" version 1 {{
  maker "A. Weaver"
  use "Tidewater Vane" version 2 as vane with background = dark
  use "Ohio Star" as star with background = light
  use "Friendship Star" as friend with background = pale
  use "Churn Dash" as dash with background = pale
  fabric indigo "Indigo print" width 42in shrinks 3%
  fabric sand "Sand linen"
  fabric rose "Rose dots" one way
  fabric ecru
  roles dark = indigo, light = sand, pale = ecru, medium = rose, accent = rose
  set straight 3 across 4 down of 9in {{
    row vane, star, friend
    row dash, vane mirrored, star
    row friend, dash, vane
    row star, friend, dash
  }}
  sashing 1 1/2in in ecru posts in indigo around
  border 1in in rose
  border 4in in indigo
  binding 2 1/2in in indigo
  backing in sand 4in over
  batting 4in over
}}
"""

ON_POINT = """edition 1
quilt "Gannet Landing" version 3 {
  use "Ohio Star" as star
  use "Shoo Fly" as fly
  use "Flying Goose" as goose with light = dark, dark = light
  fabric cream "Cream solid"
  fabric navy "Navy stripe" striped
  fabric rust "Rust check" shrinks 4%
  roles "Shore" light = cream, dark = navy, medium = rust, background = cream, accent = rust
  roles "Dusk" light = rust, dark = navy, medium = cream, background = rust, accent = cream
  set on point 4 across 5 down of 6in with triangles in navy {
    alternate star, fly
  }
  border to 36in x 48in in cream
  border 3in of goose corners plain rust
  border 4in in navy mitred
  binding 2 1/4in in rust bias
  backing in cream
  batting
}
"""

BABY = """edition 1
quilt "Pebble Cot Quilt" version 1 {
  use "Pinwheel Square" as wheel with dark = rose, background = sky
  use "Nine Patch" as nine with dark = leaf, light = sky
  fabric rose "Rose sprig" fat quarter 3
  fabric sky "Sky dots" fat quarter 4
  fabric leaf "Leaf" fat quarter 2
  fabric oat "Oat cloth"
  set straight 4 across 5 down of 6in {
    alternate wheel, nine
  }
  border 3in in oat
  binding 2 1/2in in oat
  backing in oat 3in over
  batting 3in over
}
"""

LARGE_BLOCKS = (
    "Ohio Star",
    "Churn Dash",
    "Lady of the Lake",
    "Double Nine Patch",
    "Dutchman's Puzzle",
    "Jacob's Ladder",
    "Evening Star",
    "Rolling Stone",
    "Sister's Choice",
    "Storm at Sea",
)
"""Ten blocks of the library; ten of each make the large sampler."""


def large_text(across: int = 10, down: int = 10) -> str:
    """A sampler of a hundred blocks and some three thousand pieces."""
    uses = "\n".join(f'  use "{title}" as b{at}' for at, title in enumerate(LARGE_BLOCKS))
    many = len(LARGE_BLOCKS)
    rows = "\n".join(
        "    row " + ", ".join(f"b{(row + column) % many}" for column in range(across)) for row in range(down)
    )
    return f"""edition 1
quilt "Hundred Harbours" version 1 {{
{uses}
  fabric pale "Pale ground"
  fabric light "Light mixture"
  fabric medium "Medium print"
  fabric dark "Dark print"
  fabric accent "Accent"
  roles background = pale
  set straight {across} across {down} down of 9in {{
{rows}
  }}
  sashing 1in in dark posts in light
  border 5in in medium
  binding 2 1/4in in dark
  backing in pale
  batting
}}
"""


TEXTS = {"sampler": SAMPLER, "on point": ON_POINT, "baby": BABY, "large": large_text()}


@cache
def planned(name: str, number: int = 0) -> tuple[Quilt, CuttingPlan]:
    """One of the sample quilts, in one of its colourways, with its plan."""
    quilt = quilts_of(TEXTS[name])[number]
    outcome = plan_cutting(quilt, Fraction(1, 8))
    assert outcome.value is not None, "\n".join(f"{each.code} {each.message}" for each in outcome.diagnostics)
    return quilt, outcome.value


def quilts_of(text: str) -> tuple[Quilt, ...]:
    """The quilts of a text, a colourway each."""
    made = compile_file(Source("sample.quilt", text), FolderShelf(library=library_folder()))
    assert made.value is not None, "\n".join(f"{d.code} {d.message} {d.help}" for d in made.diagnostics)
    return made.value.quilts
