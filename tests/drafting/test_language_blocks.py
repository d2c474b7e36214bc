"""The blocks written out in LANGUAGE.md, with answers worked out by hand."""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

from piecewright.measure.tolerance import near
from support.check import areas, clean_drafts, counts, named
from support.texts import FLYING_GOOSE, HARBOUR_SQUARE, SKERRY_STAR, TIDEWATER_VANE


def test_tidewater_vane() -> None:
    """Every patch lies in a 3in square. A sail has a 3in base and is 3in high: 4 1/2 sq in; beside it the
    1 1/4in and 1 3/4in of the outer edge leave 1 7/8 and 2 5/8. A quay is half its square, the keel all of
    the middle one. Cut 4 of each slanted shape, this side up; 8 halves and the middle, either side up."""
    vane = clean_drafts(TIDEWATER_VANE)[0]
    assert (vane.title, vane.version, vane.width, vane.height) == ("Tidewater Vane", 2, 9, 9)
    assert sorted(counts(vane)) == [(1, 0), (4, 0), (4, 0), (4, 0), (8, 0)]
    sizes = [Fraction(15, 8)] * 4 + [Fraction(21, 8)] * 4 + [Fraction(9, 2)] * 12 + [Fraction(9)]
    assert sorted(piece.area for piece in vane.pieces) == sizes
    assert areas(vane, "sail") == areas(vane, "quay") == {Fraction(9, 2)} and areas(vane, "keel") == {9}
    assert [piece.fabric for piece in vane.pieces if piece.name is None] == ["background"] * 12
    assert sorted(piece.fabric for piece in named(vane, "sail")) == ["dark", "dark", "light", "light"]
    assert [piece.fabric for piece in named(vane, "keel")] == ["medium"]
    assert sum(shape.reversible for shape in vane.shapes) == 2


def test_skerry_star() -> None:
    """Eight rays, four corners and four sides. The tips divide a 10in side as a regular octagon's corners do:
    a corner's leg is 10/(2 + sqrt 2), a side's base what the two legs leave."""
    star = clean_drafts(SKERRY_STAR)[0]
    assert len(star.pieces) == 16
    assert sorted(counts(star)) == [(4, 0), (4, 0), (8, 0)]
    leg = 10 / (2 + sqrt(2))
    assert all(near(area, leg * leg) for area in areas(star, "corner"))
    assert all(near(area, leg * leg / 2) for area in areas(star, "side"))
    assert sorted(piece.fabric for piece in named(star, "ray")) == ["dark"] * 4 + ["light"] * 4
    assert near(sum(piece.area for piece in star.pieces), 100)


def test_neighbouring_rays_take_turns() -> None:
    """`dark, light` go round: no ray has a neighbour of its own cloth."""
    star = clean_drafts(SKERRY_STAR)[0]
    rays = {piece.number: piece for piece in named(star, "ray")}
    for ray in rays.values():
        beside = [rays[part.neighbour] for side in ray.ring for part in side.parts if part.neighbour in rays]
        assert len(beside) == 2 and all(other.fabric != ray.fabric for other in beside)


def test_flying_goose() -> None:
    """The goose is half of its box; the two skies are a quarter each and one template (turned, not reversed:
    each is a half-square triangle)."""
    goose = clean_drafts(FLYING_GOOSE)[0]
    assert (goose.width, goose.height, goose.faces) == (4, 2, "top")
    assert areas(goose, "goose") == {4} and areas(goose, "sky") == {2}
    assert counts(goose) == [(2, 0), (1, 0)]
    assert all(shape.reversible for shape in goose.shapes)


def test_harbour_square() -> None:
    """Nine 3in cells, four of them halved on the diagonal: 13 pieces of two shapes."""
    drafts = clean_drafts(HARBOUR_SQUARE)
    harbour = drafts[-1]
    assert len(harbour.pieces) == 13 and counts(harbour) == [(8, 0), (5, 0)]
    assert sorted(piece.area for piece in harbour.pieces) == [Fraction(9, 2)] * 8 + [9] * 5
    assert harbour.uses == (("Two-Triangle Square", 1),)


def test_harbour_square_lies_as_written() -> None:
    """`pair` faces its dark corner; facing top-left the dark lies there. `flip` swaps the two cloths."""
    harbour = clean_drafts(HARBOUR_SQUARE)[-1]
    from support.check import at

    assert (at(harbour, 0.5, 0.5).fabric, at(harbour, 2.5, 2.5).fabric) == ("dark", "pale")
    assert (at(harbour, 8.5, 0.5).fabric, at(harbour, 6.5, 2.5).fabric) == ("dark", "pale")
    assert (at(harbour, 0.5, 8.5).fabric, at(harbour, 2.5, 6.5).fabric) == ("pale", "dark")
    assert (at(harbour, 8.5, 8.5).fabric, at(harbour, 6.5, 6.5).fabric) == ("pale", "dark")
    assert at(harbour, 4.5, 4.5).fabric == "dark"
