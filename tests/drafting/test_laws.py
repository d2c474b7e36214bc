"""What holds of every block, on random ones with a fixed seed."""

from __future__ import annotations

from fractions import Fraction
from math import pi

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from piecewright.diagnostics.diagnostic import Severity
from piecewright.drafting.model import Draft, Piece, Side
from piecewright.drafting.whole_sides import whole_sides
from piecewright.measure.tolerance import NEAR, near
from support.check import draft_text, said
from support.random_blocks import EXCUSED, UNITS, RandomBlock, RandomRows, random_blocks, random_rows

LAW = settings(
    derandomize=True,
    deadline=None,
    max_examples=30,
    database=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)


def drafted(text: str) -> Draft:
    """The one draft of a random block's text; blocks with a sliver or a clash are passed over."""
    outcome = draft_text(text, units=UNITS)
    errors = {each.code for each in outcome.diagnostics if each.severity is Severity.ERROR}
    assert errors <= EXCUSED, f"{text}\n{said(outcome)}"
    assume(outcome.value is not None)
    assert outcome.value is not None
    return outcome.value[0]


def templates(draft: Draft) -> list[tuple[object, ...]]:
    """Every shape's look and count, in an order that no numbering decides."""
    found = []
    for shape in draft.shapes:
        first = draft.pieces[shape.members[0].piece - 1]
        back = sum(member.reversed for member in shape.members)
        sides = sorted(
            round(side.stroke.length, 5) for ring in (first.ring, *first.holes) for side in whole_sides(ring)
        )
        found.append(
            (
                round(float(first.area), 5),
                tuple(sides),
                shape.reversible,
                shape.turns,
                tuple(sorted((back, len(shape.members) - back))),
            )
        )
    return sorted(found)


def geometry(draft: Draft) -> tuple[object, ...]:
    """Everything a draft says but the places of its words."""

    def side(each: Side) -> tuple[object, ...]:
        return each.edge, tuple((part.edge, part.neighbour) for part in each.parts), each.allowance

    def piece(each: Piece) -> tuple[object, ...]:
        rings = tuple(tuple(side(one) for one in ring) for ring in (each.ring, *each.holes))
        return each.number, each.name, each.fabric, rings, each.area, each.inside, each.grain, each.unit

    return (
        draft.width,
        draft.height,
        draft.outline,
        tuple(piece(each) for each in draft.pieces),
        draft.shapes,
        draft.units,
    )


def edges(draft: Draft) -> list[float]:
    return [
        side.edge.length for piece in draft.pieces for ring in (piece.ring, *piece.holes) for side in ring
    ]


@LAW
@given(random_blocks())
def test_areas_sum_to_the_outline(block: RandomBlock) -> None:
    draft = drafted(block.text())
    assert near(sum(piece.area for piece in draft.pieces), (block.cells * block.cell) ** 2, 1e-5)
    assert all(piece.area > 0 for piece in draft.pieces)


@LAW
@given(random_blocks())
def test_both_sides_of_every_seam_are_one_length(block: RandomBlock) -> None:
    draft = drafted(block.text())
    lengths: dict[tuple[int, int], float] = {}
    for piece in draft.pieces:
        for ring in (piece.ring, *piece.holes):
            for side in ring:
                assert near(side.edge.length, sum(part.edge.length for part in side.parts))
                for part in side.parts:
                    if part.neighbour is not None:
                        key = (piece.number, part.neighbour)
                        lengths[key] = lengths.get(key, 0.0) + part.edge.length
    assert all(near(length, lengths[other, one]) for (one, other), length in lengths.items())


@LAW
@given(random_blocks())
def test_sides_run_on_from_corner_to_corner(block: RandomBlock) -> None:
    """Every ring closes, runs the right way round, and no side is outside in part only."""
    for piece in drafted(block.text()).pieces:
        for ring in (piece.ring, *piece.holes):
            for before, after in zip(ring, ring[1:] + ring[:1], strict=True):
                assert before.edge.end == after.edge.start
            for side in ring:
                assert len({part.neighbour is None for part in side.parts}) == 1
                assert side.edge.length > NEAR


@LAW
@given(random_blocks())
def test_turning_a_block_changes_no_template(block: RandomBlock) -> None:
    assert templates(drafted(block.text())) == templates(drafted(block.turned().text()))


@LAW
@given(random_blocks())
def test_mirroring_a_block_changes_no_template(block: RandomBlock) -> None:
    assert templates(drafted(block.text())) == templates(drafted(block.mirrored().text()))


@LAW
@given(random_blocks())
def test_doubling_the_size_doubles_every_edge(block: RandomBlock) -> None:
    """Pieces come in the same order, each twice as long and four times as large."""
    once, twice = drafted(block.text()), drafted(block.text(scale=2))
    assert len(once.pieces) == len(twice.pieces)
    assert all(near(2 * a, b, 1e-5) for a, b in zip(edges(once), edges(twice), strict=True))
    assert [shape.members for shape in once.shapes] == [shape.members for shape in twice.shapes]


@LAW
@given(random_blocks(), st.randoms(use_true_random=False))
def test_the_order_of_statements_does_not_matter(block: RandomBlock, luck: object) -> None:
    order = list(range(block.statements))
    luck.shuffle(order)  # type: ignore[attr-defined]
    one, other = drafted(block.text()), drafted(block.text(order=tuple(order)))
    assert [(piece.number, piece.name, piece.fabric) for piece in one.pieces] == [
        (piece.number, piece.name, piece.fabric) for piece in other.pieces
    ]
    assert all(near(a.area, b.area, 1e-5) for a, b in zip(one.pieces, other.pieces, strict=True))
    assert [(s.label, [m.piece for m in s.members]) for s in one.shapes] == [
        (s.label, [m.piece for m in s.members]) for s in other.shapes
    ]


@LAW
@given(
    random_blocks(),
    st.sampled_from(
        ['note "Press open."', "point spare = (1/3, 1/5)", 'maker "Orla Fenn"', 'family star also "Other"']
    ),
)
def test_an_unrelated_line_changes_no_number_and_no_label(block: RandomBlock, line: str) -> None:
    assert geometry(drafted(block.text())) == geometry(drafted(block.text(extra=line)))


@LAW
@given(random_blocks())
def test_centimetres_and_inches_are_the_same_lengths(block: RandomBlock) -> None:
    """1in = 2.54cm exactly (CSS Values and Units 3, absolute lengths)."""
    assert geometry(drafted(block.text())) == geometry(drafted(block.text(unit="cm")))


@LAW
@given(random_blocks(curves=False))
def test_a_block_without_roots_is_exact(block: RandomBlock) -> None:
    draft = drafted(block.text())
    for piece in draft.pieces:
        assert not isinstance(piece.area, float)
        for ring in (piece.ring, *piece.holes):
            for side in ring:
                for part in side.parts:
                    assert not any(isinstance(value, float) for value in (*part.edge.start, *part.edge.end))
    assert sum(piece.area for piece in draft.pieces) == (block.cells * block.cell) ** 2


@LAW
@given(random_blocks())
def test_drafting_twice_gives_the_same(block: RandomBlock) -> None:
    assert geometry(drafted(block.text())) == geometry(drafted(block.text()))


# ---- rows of units ----------------------------------------------------------------------------------------

KITE = {Fraction(2): "kite"}


@LAW
@given(random_rows())
def test_units_bring_their_pieces(rows: RandomRows) -> None:
    """A pair has two pieces, a fan two, a kite three, a plain cell one; a kite's red piece is always as
    large."""
    draft = drafted(rows.text())
    cells = [cell for row in rows.rows for cell in row]
    pieces = {"pair": 2, "fan": 2, "kite": 3}
    assert len(draft.pieces) == sum(pieces[cell[0]] if cell else 1 for cell in cells)
    assert near(sum(piece.area for piece in draft.pieces), 4 * len(cells), 1e-5)
    assert [unit.alias for unit in draft.units] == [cell[0] for cell in cells if cell]
    assert all(near(piece.area, pi) for piece in draft.pieces if piece.name == "fan")


@LAW
@given(random_rows())
def test_turned_and_mirrored_rows_have_the_same_templates(rows: RandomRows) -> None:
    made = templates(drafted(rows.text()))
    assert made == templates(drafted(rows.mirrored().text()))
    assert made == templates(drafted(rows.turned().text()))


@LAW
@given(random_rows())
def test_units_tell_how_they_lie(rows: RandomRows) -> None:
    """`turned` is degrees clockwise after mirroring; written here is a turn, then perhaps a mirroring, which
    is
    mirroring first and then the turn the other way."""
    draft = drafted(rows.text())
    written = [(cell, at) for at, cell in enumerate(cell for row in rows.rows for cell in row) if cell]
    for unit, (cell, at) in zip(draft.units, written, strict=True):
        down, across = divmod(at, len(rows.rows[0]))
        assert unit.box == (2 * across, 2 * down, 2 * across + 2, 2 * down + 2)
        assert unit.mirrored == cell[2]
        assert unit.turned % 360 == (90 * cell[1] * (-1 if cell[2] else 1)) % 360
