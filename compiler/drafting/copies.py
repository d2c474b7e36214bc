"""The copies of a turn or repeat: how each lies to the first."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import degrees

from ..geometry.motion import Transform, move_by, turn_about
from ..language import tree
from ..measure.tolerance import ROUNDED, near
from ..words.messages import seams as complain
from .context import Context
from .points import arc_of, line_of, place_of


def copies_of(statement: tree.Turn | tree.Repeat, here: Context) -> Iterator[Context]:
    """One context for each copy, the first as it is written; none where something was complained of."""
    if isinstance(statement, tree.Turn):
        return _turned(statement, here)
    here.bench.repeats.add(statement.span)
    if isinstance(statement.track, tree.LineThrough):
        return _moved(statement, statement.track, here)
    return _moved_round(statement, statement.track, here)


def _turned(turn: tree.Turn, here: Context) -> Iterator[Context]:
    about = place_of(turn.about, here)
    count = turn.count.value
    step = turn.step.degrees if turn.step else Fraction(360, count)
    if turn.step is not None and abs(step) * count > 360:
        here.bench.say(complain.turn_overlaps(turn.step.span, count, abs(step)))
        return
    if about is not None:
        yield from here.copies(turn, lambda copy: turn_about(about, step * copy))


def _moved(repeat: tree.Repeat, track: tree.LineThrough, here: Context) -> Iterator[Context]:
    """Each copy a share of the way further along a line."""
    ray = line_of(track, here)
    if ray is None:
        return
    right, down = ray[1]

    def motion(copy: int) -> Transform:
        share = Fraction(copy, repeat.count.value)
        return move_by(share * right, share * down)

    yield from here.copies(repeat, motion)


def _moved_round(repeat: tree.Repeat, track: tree.ArcFigure, here: Context) -> Iterator[Context]:
    """Each copy a share of the way further along an arc, and turned with it."""
    arc = arc_of(track.start, track.hop, here)
    if arc is None or arc.arc is None:
        return
    center = arc.arc.center
    swept = degrees(arc.sweep)
    even = Fraction(round(swept))  # an arc of 90 degrees is drawn as exactly as a quarter turn
    step = (even if near(swept, even, ROUNDED) else swept) / repeat.count.value
    yield from here.copies(repeat, lambda copy: turn_about(center, step * copy))
