"""Cloth cut by the printed pages alone: the cuts in the pictures, in order, give the pieces that the chart
and the counts promise, at the sizes that the words say."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

import pytest
from piecewright.cutting.plans.plan import plan_cutting
from shapely import STRtree, intersection
from shapely.geometry import Polygon
from support.on_papers import cut_on_papers
from support.printed_cutting import (
    DRAWN,
    Box,
    ChartRow,
    Section,
    cut_into,
    is_box,
    measures,
    parted,
    read_chart,
    read_pictures,
    read_totals,
    sides,
)
from support.random_quilts import TWELVE, compiled_quilt
from support.sample_quilts import BABY, ON_POINT, SAMPLER, quilts_of
from support.works import quilt_sheets

JOIN = 0.5  # inches: 1/4in of seam from each of two strips
STEP = 0.125  # inches: the ruler's
TEXTS = {"sampler": SAMPLER, "on point": ON_POINT, "baby": BABY}
QUILTS = (
    {name: (lambda text=text: quilts_of(text)[0]) for name, text in TEXTS.items()}
    | {text.split('"')[1]: (lambda text=text: compiled_quilt(text)) for text in (*TWELVE[6:10], TWELVE[11])}
    | {
        f"{name}, on foundations": (lambda text=text: cut_on_papers(quilts_of(text)[0]))
        for name, text in (("sampler", SAMPLER), ("on point", ON_POINT))
    }
)


@pytest.fixture(params=QUILTS, scope="module")
def printed(request):
    """Chart, counts and pictures as they are read."""
    quilt = QUILTS[request.param]()
    plan = plan_cutting(quilt).value
    assert plan is not None
    chart, counts, pictures = (quilt_sheets(quilt, plan, part) for part in ("chart", "counts", "cutting"))
    return read_chart(chart), read_totals(counts), read_pictures(pictures)


def scale_of(section: Section) -> float:
    """Points to an inch of cloth: `54 3/4in of cloth 42in wide`; of fat quarters, the first piece's strip."""
    if "wide" in section.under:
        cloth = section.views[0].cloth
        return (cloth[2] - cloth[0]) / measures(section.under)[1]
    words, shape = next(
        (section.keys[key], shape)
        for view in section.views
        for key, shape in view.pieces
        if not section.keys[key].startswith("template")
    )
    return sides(shape)[0] / min(measures(words))


def test_every_cut_runs_from_edge_to_edge_and_every_piece_comes_out(printed):
    _, _, sections = printed
    assert sections
    for section in sections:
        for view in section.views:
            cloth = parted(view)
            boxes = [is_box(section.keys[key], shape) for key, shape in view.pieces]
            for (_, shape), box in zip(view.pieces, boxes, strict=True):
                if box:
                    off = min(
                        max(abs(a - b) for a, b in zip(shape.bounds, piece, strict=True)) for piece in cloth
                    )
                    assert off < DRAWN, f"no cut goes round a piece of {section.title}"
            _lie_apart([shape for (_, shape), box in zip(view.pieces, boxes, strict=True) if not box], cloth)


def _lie_apart(shapes: Sequence[Polygon], cloth: Sequence[Box]) -> None:
    if not shapes:
        return
    holding = [Polygon([(a, b), (c, b), (c, d), (a, d)]).buffer(DRAWN) for a, b, c, d in cloth]
    assert all(any(piece.covers(shape) for piece in holding) for shape in shapes)
    for one, two in zip(*STRtree(shapes).query(shapes), strict=True):
        if one < two:
            assert intersection(shapes[one], shapes[two], grid_size=1e-6).area < DRAWN


def test_pieces_measure_what_their_letter_says(printed):
    chart, _, sections = printed
    for section in sections:
        scale = scale_of(section)
        for view in section.views:
            for key, shape in view.pieces:
                _check_size(section.keys[key], chart[section.title][key], shape, scale)


def _check_size(words: str, row: ChartRow, shape: Polygon, scale: float) -> None:
    """A box to the printed mark; a template within the ruler's step of its `about`; a slanted piece to its
    strip."""
    said = sorted(measures(words.split(":")[0]))
    short, long = (side / scale for side in sides(shape))
    if words.startswith("template"):
        assert (short, long) == pytest.approx(tuple(said), abs=STEP)
    elif not is_box(words, shape):
        assert any(side == pytest.approx(measure, abs=1e-3) for side in (short, long) for measure in said)
    elif "joined" in row.what or "binding" in row.purpose:
        assert said[0] in (pytest.approx(short, abs=1e-6), pytest.approx(long, abs=1e-6))
    else:
        assert (short, long) == pytest.approx((said[0], said[-1]), abs=1e-6)


def strips_told(words: str) -> list[float]:
    """The length of each strip of `2 strips of 42in and 1 of 15 1/2in`."""
    return [
        length
        for part in re.split(", | and ", words)
        if " of " in part
        for length in measures(part.split(" of ")[1])
        for _ in range(int(part.split()[0]))
    ]


def test_as_many_come_out_as_the_chart_says(printed):
    chart, _, sections = printed
    for section in sections:
        drawn = Counter(key for view in section.views for key, _ in view.pieces)
        rows = chart[section.title]
        assert set(drawn) == set(rows)
        for key, row in rows.items():
            if "joined" in row.what:
                lengths = [
                    sides(shape)[1] / scale_of(section)
                    for view in section.views
                    for letter, shape in view.pieces
                    if letter == key
                ]
                joined = sum(lengths) - JOIN * (len(lengths) - 1)
                whole, strips = row.what.split("from ")
                assert sorted(strips_told(strips)) == pytest.approx(sorted(lengths))
                assert joined >= row.pieces * max(measures(whole)) - 1e-6
                continue
            assert drawn[key] == row.cuts
            if row.purpose == "binding" and ": " in row.what:
                lengths = [
                    sides(shape)[1] / scale_of(section)
                    for view in section.views
                    for letter, shape in view.pieces
                    if letter == key
                ]
                assert sorted(strips_told(row.what.split(": ")[1])) == pytest.approx(sorted(lengths))
            if row.purpose == "binding":
                continue  # one square gives many bias strips
            each = cut_into(section.keys[key])
            assert row.cuts * each - row.pieces in range(2 * each - 1)


def test_the_charts_pieces_are_the_counts(printed):
    chart, totals, _ = printed
    apart = ("binding", "backing")
    made = {
        title: sum(row.pieces for row in rows.values() if not row.purpose.startswith(apart))
        for title, rows in chart.items()
    }
    assert {title: count for title, count in made.items() if count} == totals
