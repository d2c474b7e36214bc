"""Block files that several tests draft: those of LANGUAGE.md first, as they stand there."""

from __future__ import annotations

from typing import Final

TIDEWATER_VANE: Final = """\
edition 1

block "Tidewater Vane" version 2 {
  finished 9in                      # or 6in x 9in; or grid 3 x 3 of 3in
  grid 3 x 3                        # across x down; 1:2:1 x 1:2:1 for unequal; none: 1 x 1
  point gate = 1 1/4in from B1 to C1  # grid points: column letter, row number; A1 is top left
  turn 4 about center {             # everything inside is repeated by quarter turns
    seam B1 -- B2 -- C2 -- C1
    seam B2 -- gate -- C2
    seam A1 -- B2
    piece sail at between B2, gate, C2 in light, dark
    piece quay at between A1, B1, B2 in dark
  }
  piece keel at center in medium
}
"""

SKERRY_STAR: Final = """\
edition 1

block "Skerry Star" {
  finished 10in
  point tip = meet center at 22.5deg, outline
  point crook = meet tip parallel to center--top-right, top--bottom
  turn 8 about center {
    seam center -- crook -- tip -- next crook
    piece ray at between center, tip in dark, light
  }
  piece corner at top-left, top-right, bottom-left, bottom-right in pale
  turn 4 about center { piece side at top in pale }
}
"""

FLYING_GOOSE: Final = """\
edition 1

block "Flying Goose" { finished 4in x 2in  faces top
  seam bottom-left -- top -- bottom-right
  piece goose at bottom in dark
  piece sky at top-left, top-right in pale }         # only the sky touches those corners
"""

PAIR: Final = """\
block "Two-Triangle Square" {
  finished 3in
  faces top-left
  seam top-right -- bottom-left
  piece first at top-left in dark
  piece second at bottom-right in pale
}
"""

HARBOUR_SQUARE: Final = (
    "edition 1\n\n"
    + PAIR
    + """
block "Harbour Square" {
  grid 3 x 3 of 3in
  use "Two-Triangle Square" version 1 as pair
  use "Two-Triangle Square" as flip with dark = pale, pale = dark
  row pair facing top-left, plain pale, pair facing top-right
  row plain pale, plain dark, plain pale
  row flip facing bottom-left, plain pale, flip facing bottom-right
}
"""
)

GOOSE_SHELF: Final = {"flying_goose": FLYING_GOOSE, "pair": "edition 1\n\n" + PAIR}
"""Files beside the one under test: a goose that faces the top, and a two-triangle square that faces its dark
top left corner."""
