"""The nodes of points, lines and paths, made as the parser recognises each rule. Never raises."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Any, TypeVar

from ..diagnostics.source import Span
from ..words.messages import statements as complain
from ..words.messages import values as complain_values
from . import limits, tree
from .tokens import Token
from .values import Values

Parts = list[Any]

Copied = TypeVar("Copied", tree.NextCopy, tree.PreviousCopy)


class PointBuilder:
    """Makes the nodes of where things are."""

    def __init__(self, source_name: str) -> None:
        self._source = source_name
        self.values = Values()

    def at(self, token: Token) -> Span:
        """The place of a token."""
        return Span(self._source, token.start, token.end)

    # ---- points -------------------------------------------------------------------------------------------

    def grid_point(self, parts: Parts, span: Span) -> tree.GridPoint:
        """`B3`."""
        return self.values.grid_point(parts[0].text, span)

    def named_point(self, parts: Parts, span: Span) -> tree.NamedPoint:
        """`gate`."""
        return tree.NamedPoint(name=self.values.name(parts[0].text, span).text, span=span)

    def grid_steps(self, parts: Parts, span: Span) -> tree.GridSteps:
        """`(1.5, 0)`."""
        across, down = (self.values.number(each.text, self.at(each)) for each in parts)
        if max(abs(across), abs(down)) > limits.GRID_LINES:
            self.values.said.append(complain_values.grid_point_far(span, limits.GRID_LINES))
            across = down = limits.LENGTH_MOST * 0
        return tree.GridSteps(across=across, down=down, span=span)

    def share_along(self, parts: Parts, span: Span) -> tree.ShareAlong:
        """`1/3 from P to Q`."""
        number, origin, toward = parts
        share = self.values.number(number.text, self.at(number))
        if abs(share) > limits.GRID_LINES:
            self.values.said.append(complain_values.share_too_large(self.at(number), number.text))
            share = limits.LENGTH_LEAST
        elif not 0 < share < 1:
            self.values.said.append(complain_values.share_beyond(self.at(number), number.text))
        return tree.ShareAlong(share=share, origin=origin, toward=toward, span=span)

    def length_along(self, parts: Parts, span: Span) -> tree.LengthAlong:
        """`1in from P to Q`."""
        return tree.LengthAlong(length=parts[0], origin=parts[1], toward=parts[2], span=span)

    def length_at_angle(self, parts: Parts, span: Span) -> tree.LengthAtAngle:
        """`2in from P at 22.5deg`."""
        return tree.LengthAtAngle(length=parts[0], origin=parts[1], angle=parts[2], span=span)

    def between(self, parts: Parts, span: Span) -> tree.Between:
        """`between P, Q, R`."""
        return tree.Between(points=tuple(parts), span=span)

    def meet(self, parts: Parts, span: Span) -> tree.Meet | tree.MeetOutline:
        """`meet FIGURE, FIGURE [nearest P]`; a line that goes on to the outline has a node of its own."""
        first, second, close = (*parts, None)[:3]
        for one, other in ((first, second), (second, first)):
            if close is None and isinstance(other, tree.WholeOutline) and isinstance(one, tree.Line):
                return tree.MeetOutline(line=one, span=span)
        return tree.Meet(first=first, second=second, nearest=close, span=span)

    def nearest(self, parts: Parts, span: Span) -> tree.PointPhrase:
        """`nearest P`."""
        near: tree.PointPhrase = parts[0]
        return near

    def whole_outline(self, parts: Parts, span: Span) -> tree.WholeOutline:
        """`outline`."""
        return tree.WholeOutline(span=span)

    def arc(self, parts: Parts, span: Span) -> tree.ArcFigure:
        """`P ~~ Q around C`."""
        return tree.ArcFigure(start=parts[0], hop=parts[1], span=span)

    def circle_radius(self, parts: Parts, span: Span) -> tree.Circle:
        """`circle around C radius L`."""
        return tree.Circle(center=parts[1], radius=parts[2], through=None, span=span)

    def circle_through(self, parts: Parts, span: Span) -> tree.Circle:
        """`circle around C through P`."""
        return tree.Circle(center=parts[1], radius=None, through=parts[2], span=span)

    def foot(self, parts: Parts, span: Span) -> tree.Foot:
        """`foot of P on LINE`."""
        return tree.Foot(point=parts[1], line=parts[2], span=span)

    def turned_about(self, parts: Parts, span: Span) -> tree.TurnedAbout:
        """`P turned A about Q`."""
        return tree.TurnedAbout(point=parts[0], angle=parts[1], about=parts[2], span=span)

    def mirrored_in(self, parts: Parts, span: Span) -> tree.MirroredIn:
        """`P mirrored in LINE`."""
        return tree.MirroredIn(point=parts[0], line=parts[1], span=span)

    def next_copy(self, parts: Parts, span: Span) -> tree.NextCopy:
        """`next P`."""
        return self._further(tree.NextCopy(point=parts[0], span=span))

    def previous_copy(self, parts: Parts, span: Span) -> tree.PreviousCopy:
        """`previous P`."""
        return self._further(tree.PreviousCopy(point=parts[0], span=span))

    def _further(self, copy: Copied) -> Copied:
        """A copy of a copy as one that lies further on."""
        inner = copy.point
        if not isinstance(inner, type(copy)):
            return copy
        on = self.values.count(str(inner.copies + 1), copy.span, "copies", 1, limits.TURN_COPIES)
        return replace(copy, point=inner.point, copies=on.value)

    # ---- lines and paths ----------------------------------------------------------------------------------

    def line_through(self, parts: Parts, span: Span) -> tree.LineThrough:
        """`P--Q`."""
        return tree.LineThrough(first=parts[0], second=parts[1], span=span)

    def line_at_angle(self, parts: Parts, span: Span) -> tree.LineAtAngle:
        """`P at A`."""
        return tree.LineAtAngle(point=parts[0], angle=parts[1], span=span)

    def line_parallel(self, parts: Parts, span: Span) -> tree.LineParallel:
        """`P parallel to Q--R`."""
        return tree.LineParallel(point=parts[0], first=parts[1], second=parts[2], span=span)

    def line(self, parts: Parts, span: Span) -> tree.Line:
        """A line as the whole of what a statement says."""
        line: tree.Line = parts[0]
        return line

    def path(self, parts: Parts, span: Span) -> tree.Path:
        """`P HOP...`."""
        self.values.said.extend(
            complain.hop_after_outline(following.span, hop.span)
            for hop, following in pairwise(parts[1:])
            if isinstance(hop, tree.ToOutline)
        )
        return tree.Path(start=parts[0], hops=tuple(parts[1:]), span=span)

    def straight_to(self, parts: Parts, span: Span) -> tree.StraightTo:
        """`-- Q`."""
        return tree.StraightTo(point=parts[0], span=span)

    def to_outline(self, parts: Parts, span: Span) -> tree.ToOutline:
        """`-- outline`."""
        return tree.ToOutline(span=span)

    def heading_to_outline(self, parts: Parts, span: Span) -> tree.ToOutline:
        """`at A -- outline`; its span is that of `-- outline`."""
        to_edge: tree.ToOutline = parts[1]
        return replace(to_edge, heading=parts[0])

    def arc_around(self, parts: Parts, span: Span) -> tree.ArcAround:
        """`~~ Q around C`."""
        return tree.ArcAround(point=parts[0], center=parts[1], span=span)

    def arc_through(self, parts: Parts, span: Span) -> tree.ArcThrough:
        """`~~ Q through R`."""
        return tree.ArcThrough(point=parts[0], via=parts[1], span=span)
