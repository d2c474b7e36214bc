"""The planar graph that a draft keeps, held against its pieces and against Euler's formula."""

from __future__ import annotations

from fractions import Fraction

import networkx
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from piecewright.drafting.model import Draft
from piecewright.drafting.pieces import graph_of
from piecewright.drafting.resize import resize
from piecewright.geometry.planar import OUTER
from piecewright.measure.tolerance import near
from support.block_files import VANE
from support.check import draft_text
from support.random_blocks import UNITS, RandomBlock, random_blocks

WINDOW = """\
edition 1

block "Round Window" {
  finished 6in
  seam circle around center radius 2in
}
"""


LAW = settings(
    derandomize=True, deadline=None, max_examples=15, database=None, suppress_health_check=list(HealthCheck)
)


def check_graph(draft: Draft) -> None:
    graph = draft.graph
    for piece, rings in zip(draft.pieces, graph.rings, strict=True):
        for ring, halves in zip((piece.ring, *piece.holes), rings, strict=True):
            parts = [part for side in ring for part in side.parts]
            assert [graph.edge(half) for half in halves] == [part.edge for part in parts]
            assert [graph.face(half ^ 1) for half in halves] == [(part.neighbour or 0) - 1 for part in parts]
            assert {graph.face(half) for half in halves} == {piece.number - 1}
            after = [*halves[1:], halves[0]]
            assert [graph.following[half] for half in halves] == after
            assert [graph.node(half ^ 1) for half in halves] == [graph.node(half) for half in after]
    net = networkx.MultiGraph(graph.ends)
    parts = networkx.number_connected_components(net)
    assert len(net) == len(graph.nodes) == len(set(graph.nodes))
    assert len(net) - len(graph.edges) + len(graph.rings) == parts
    outside = list(graph.bordering(range(len(graph.rings))))
    assert all(graph.face(half ^ 1) == OUTER for half in outside)
    round_it = graph.border(outside[0], lambda half: graph.face(half ^ 1) != OUTER)
    assert sorted(round_it) == sorted(outside)
    assert near(sum(graph.edge(half).length for half in outside), sum(edge.length for edge in draft.outline))
    assert len(list(graph.between())) == len(graph.edges) - len(outside)


@settings(
    derandomize=True, deadline=None, max_examples=15, database=None, suppress_health_check=list(HealthCheck)
)
@given(random_blocks(), st.sampled_from([Fraction(1, 3), Fraction(5, 2)]))
def test_the_graph_is_that_of_the_pieces_at_every_size(block: RandomBlock, times: Fraction) -> None:
    outcome = draft_text(block.text(), units=UNITS)
    if outcome.value is None:
        return
    draft = outcome.value[0]
    check_graph(draft)
    check_graph(resize(draft, draft.width * times, draft.height * times))
    assert graph_of(draft.pieces) == draft.graph


def test_a_window_is_a_ring_of_its_own_and_parts_the_graph() -> None:
    (draft,) = draft_text(WINDOW).value
    check_graph(draft)


def test_a_border_goes_round_any_pieces_together() -> None:
    (draft,) = draft_text(VANE).value
    graph = draft.graph
    (middle,) = [piece.number - 1 for piece in draft.pieces if piece.fabric == "medium"]
    region = {middle, *graph.across(middle)} - {OUTER}
    start = next(graph.bordering(region))
    ring = graph.border(start, lambda half: graph.face(half ^ 1) in region)
    assert sorted(ring) == sorted(graph.bordering(region))
