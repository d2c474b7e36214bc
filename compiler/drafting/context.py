"""Where a statement is worked out: the names it sees, and how its copy lies in the block.

A body is drawn in *local* places, those of its first copy; `to_block` carries them to where this copy lies.
Everything turns with the copy but the outline, which is brought back into local places when it is asked for.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, Severity
from ..diagnostics.source import Span
from ..geometry.edge import Edge, Point
from ..geometry.motion import IDENTITY, Transform
from ..language import tree
from ..language.limits import ERRORS
from ..words.messages.files import errors_too_many, told_as_one
from .frame import Frame


class EnoughSaid(Exception):
    """Raised at the first mistake of a block or quilt beyond those that are told in one run."""


GATHERED: Final = (
    *("grid-point-off", "seam-outside", "piece-outside", "piece-ambiguous", "piece-clash"),
    "piece-fabrics-clash",
)
"""Codes of which several in one block mostly have one cause: another grid or size than was meant, a seam that
is missing."""


def gathered(said: Sequence[Diagnostic]) -> list[Diagnostic]:
    """What was said of a block, the mistakes of one kind that mostly have one cause told as one."""
    kept: list[Diagnostic] = []
    for each in said:
        alike = tuple(one for one in said if _one_cause(one, each))
        if len(alike) > 1 and alike[0] is each:
            kept.append(told_as_one(alike))
        elif len(alike) < 2:
            kept.append(each)
    return kept


def _one_cause(one: Diagnostic, other: Diagnostic) -> bool:
    """Whether one cause is likely for both; of points, that one definition is missing."""
    if one.code != other.code or one.code not in (*GATHERED, "point-unknown"):
        return one is other
    if one.code == "point-unknown":
        return one.message == other.message
    return one.facts is not None and other.facts is not None and one.facts.alike(other.facts)


class Bench:
    """What drafting one block gathers: the ground, and everything there is to say.

    No more than ERRORS mistakes: at the next, `say` puts that in its place and raises EnoughSaid.
    """

    def __init__(self, frame: Frame) -> None:
        self.frame = frame
        self.diagnostics: list[Diagnostic] = []
        self.used_points: set[Span] = set()
        self.repeats: set[Span] = set()  # the `repeat` statements drawn
        self.links = 0  # edges of the noded block
        self._said: set[tuple[str, Span]] = set()
        self._errors = 0

    @property
    def failed(self) -> bool:
        """Whether anything said is an error."""
        return self._errors > 0

    def say(self, diagnostic: Diagnostic) -> None:
        """Adds a complaint; one about the same words (in another copy) is one complaint."""
        key = (diagnostic.code, diagnostic.primary.span)
        if key in self._said:
            return
        self._said.add(key)
        self._errors += diagnostic.severity is Severity.ERROR
        if self._errors > ERRORS:
            self.diagnostics.append(errors_too_many(diagnostic.primary.span, ERRORS))
            raise EnoughSaid
        self.diagnostics.append(diagnostic)


class Context:
    """One copy of one body."""

    def __init__(
        self,
        bench: Bench,
        body: tuple[tree.Statement, ...],
        parent: Context | None = None,
        to_block: Transform = IDENTITY,
        copy: int = 0,
    ) -> None:
        self.bench = bench
        self.parent = parent
        self.to_block = to_block
        self.copy = copy  # which copy of its turn or mirror, from 0
        self.statement: tree.Copying | None = None
        self.step: Transform | None = parent.step if parent else None  # from one copy to the next
        self.first: Context = self  # the same body in the first copy of the nearest turn
        self.definitions: dict[str, tree.PointDef] = {}
        self.places: dict[str, Point | None] = {}
        self._children: dict[tuple[Span, int], Context] = {}
        for each in body:
            if isinstance(each, tree.PointDef):
                self.definitions.setdefault(each.name.text, each)

    def copies(
        self, statement: tree.Turn | tree.Repeat, motion: Callable[[int], Transform]
    ) -> Iterator[Context]:
        """One context for each copy of a turn or repeat; `motion` carries the first onto the copy of a
        number."""
        for copy in range(statement.count.value):
            if (statement.span, copy) not in self._children:
                moved = self.to_block.after(motion(copy))
                child = Context(self.bench, statement.body, self, moved, copy)
                child.statement, child.step = statement, motion(1)
                self._children[statement.span, copy] = child
                child.first = self._children[statement.span, 0]
            yield self._children[statement.span, copy]

    def images(self, statement: tree.MirrorIn, mirror: Transform) -> Iterator[Context]:
        """The body as drawn, and its mirror image."""
        for copy, transform in enumerate((IDENTITY, mirror)):
            if (statement.span, copy) not in self._children:
                child = Context(self.bench, statement.body, self, self.to_block.after(transform), copy)
                child.statement = statement
                self._children[statement.span, copy] = child
                if self.first is not self:
                    child.first = next(self.first.images(statement, mirror))
                else:
                    child.first = self._children[statement.span, 0]
            yield self._children[statement.span, copy]

    def chain(self) -> Iterator[Context]:
        """This context and those round it, inside first."""
        at: Context | None = self
        while at is not None:
            yield at
            at = at.parent

    def known_names(self) -> list[str]:
        """Every point that has a name here."""
        names = [name for at in self.chain() for name in at.definitions]
        return [*names, *self.bench.frame.predefined]

    def local_outline(self) -> tuple[Edge, ...] | None:
        """The block's outline, in this body's places."""
        outline = self.bench.frame.outline
        if outline is None or self.to_block is IDENTITY:
            return outline
        back = self.to_block.inverse()
        return tuple(back.edge(each) for each in outline)
