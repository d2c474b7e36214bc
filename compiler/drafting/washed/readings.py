"""A block's tree to its readings: every length in a `point` line, and where in the block it was read."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, replace
from fractions import Fraction
from math import hypot
from typing import Any

from ...diagnostics.source import Span
from ...geometry.curves import along
from ...geometry.motion import mirror_in
from ...language import tree
from ...language.walk import nodes_in
from ...measure.angle import cosine_sine
from ...measure.tolerance import NEAR, Number
from ..context import Bench, Context
from ..copies import copies_of
from ..frame import Frame
from ..points import line_of, place_of
from .model import Reading

Drafted = Mapping[Span, Fraction | tree.ShareAlong]
"""What stands in the place of each reading, by the span of its phrase: a length, or a share of the way."""

Body = tuple[tree.Statement, ...]


def read_block(block: tree.Block, frame: Frame, drafted: Drafted) -> list[Reading]:
    """The block's readings in their order. Where they lie is worked out in the block as drafted so far."""
    bench = Bench(frame)
    body = with_drafted(block.body, drafted)
    return list(_read_body(block.body, body, Context(bench, body)))


def _read_body(read: Body, body: Body, here: Context) -> Iterator[Reading]:
    """The readings of one body, inside a turn those of the first copy: it is the one that was read."""
    for old, new in zip(read, body, strict=True):
        if isinstance(old, tree.PointDef) and isinstance(new, tree.PointDef):
            places = {each.span: each for each in nodes_in(new.phrase)}
            for phrase in nodes_in(old.phrase):
                if isinstance(phrase, tree.LengthAlong | tree.LengthAtAngle):
                    yield _reading(old.name.text, phrase, places[phrase.span], here)
        elif isinstance(old, tree.Copying) and isinstance(new, tree.Copying):
            inside = _first_copy(new, here)
            if inside is not None:
                yield from _read_body(old.body, new.body, inside)


def _first_copy(statement: tree.Copying, here: Context) -> Context | None:
    if not isinstance(statement, tree.MirrorIn):
        return next(copies_of(statement, here), None)
    ray = line_of(statement.line, here)
    return next(here.images(statement, mirror_in(ray[0], along(*ray, 1)))) if ray else None


def _reading(name: str, phrase: tree.LengthAlong | tree.LengthAtAngle, placed: Any, here: Context) -> Reading:
    """One reading; `placed` is its phrase as drafted so far, which says where it starts."""
    origin = place_of(placed.origin, here)
    lost = Reading(name, phrase, phrase.length.inches, None, (0.0, 0.0), None)
    if origin is None:
        return lost
    if isinstance(phrase, tree.LengthAtAngle):
        cosine, sine = cosine_sine(phrase.angle.degrees)
        return replace(lost, origin=origin, step=(float(sine), -float(cosine)))
    toward = place_of(placed.toward, here)
    if toward is None:
        return lost
    across, down = toward.x - origin.x, toward.y - origin.y
    reach: Number = hypot(float(across), float(down))
    if across == 0 or down == 0:
        reach = max(across, down, -across, -down)
    if float(reach) <= NEAR:
        return lost
    step = (float(across) / float(reach), float(down) / float(reach))
    return replace(lost, origin=origin, step=step, reach=reach, toward=toward)


def with_drafted(node: Any, drafted: Drafted) -> Any:
    """A tree with every reading replaced by what it was drafted as."""
    if isinstance(node, tuple):
        return tuple(with_drafted(each, drafted) for each in node)
    if not isinstance(node, tree.Copying | tree.PointDef) and not _holds_reading(node):
        return node
    changed = {
        part.name: with_drafted(getattr(node, part.name), drafted)
        for part in fields(node)
        if part.name != "span"
    }
    if isinstance(node, tree.LengthAlong | tree.LengthAtAngle) and node.span in drafted:
        length = drafted[node.span]
        if isinstance(length, tree.ShareAlong):
            return replace(length, origin=changed["origin"], toward=changed["toward"])
        changed["length"] = replace(node.length, inches=length)
    return replace(node, **changed)


def _holds_reading(node: object) -> bool:
    """Whether a node is a phrase or line: what a reading can stand in."""
    return isinstance(node, tree.PointPhrase | tree.Line)
