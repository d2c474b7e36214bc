"""The nodes of the tree, made as the parser recognises each rule of the grammar. Never raises.

In: a rule's name, its parts and its words' span. Out: a node, or a plain value that a later rule takes up.
One method a rule, named as the rule is; what a value may be is the business of `values`.
"""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, Any, Final, Literal, get_args

from ..diagnostics.source import Span
from ..words.messages import statements as complain
from ..words.messages.files import edition_unknown
from ..words.messages.values import Counted
from . import limits, tree
from .point_builder import Parts, PointBuilder
from .tokens import Token

if TYPE_CHECKING:
    from .quilt_builder import QuiltBuilder

SIDES: Final = get_args(tree.SideName)

QUARTER: Final = 90  # degrees: a square unit lies four ways on its cell


class Builder(PointBuilder):
    """Makes the nodes of one source's statements, and of all that stands in them."""

    def make(self, rule: str, parts: Parts, span: Span) -> Any:
        """The node of a rule."""
        maker = getattr(self, rule, None)
        return maker(parts, span) if maker else self._quilts.make(rule, parts, span)

    @cached_property
    def _quilts(self) -> QuiltBuilder:
        """Makes the nodes of quilts; loaded with the first of them."""
        from .quilt_builder import QuiltBuilder

        return QuiltBuilder(self._source, self.values)

    def _count(self, token: Token, counted: Counted, least: int, most: int) -> tree.Count:
        return self.values.count(token.text, self.at(token), counted, least, most)

    # ---- files --------------------------------------------------------------------------------------------

    def file(self, parts: Parts, span: Span) -> tree.File:
        """The whole file."""
        edition = next((part for part in parts if isinstance(part, tree.Count)), None)
        blocks = tuple(part for part in parts if isinstance(part, tree.Block))
        quilts = tuple(part for part in parts if not isinstance(part, tree.Block | tree.Count))
        return tree.File(edition=edition, blocks=blocks, quilts=quilts, span=span)

    def edition(self, parts: Parts, span: Span) -> tree.Count:
        """Which edition of the language."""
        edition = self._count(parts[0], "edition", 1, limits.VERSION_MOST)
        if edition.value != 1:
            self.values.said.append(edition_unknown(self.at(parts[0]), edition.value))
        return edition

    def block(self, parts: Parts, span: Span) -> tree.Block:
        """A block with its body."""
        title = self.values.title(parts[0])
        version = parts[1] if len(parts) > 1 and isinstance(parts[1], tree.Count) else None
        body = tuple(parts[2 if version else 1 :])
        return tree.Block(title=title, version=version, body=body, span=span)

    def version(self, parts: Parts, span: Span) -> tree.Count:
        """Which version of a block or quilt."""
        return self._count(parts[0], "version", 1, limits.VERSION_MOST)

    # ---- the block as a whole -----------------------------------------------------------------------------

    def finished(self, parts: Parts, span: Span) -> tree.Finished:
        """`finished W [x H]`."""
        return tree.Finished(width=parts[0], height=parts[1] if len(parts) > 1 else None, span=span)

    def washed(self, parts: Parts, span: Span) -> tree.Washed:
        """`washed W [x H] [read to L]`."""
        sizes = [part for part in parts if isinstance(part, tree.Length)]
        read_to = next((part[0] for part in parts if isinstance(part, tuple)), None)
        return tree.Washed(
            width=sizes[0], height=sizes[1] if len(sizes) > 1 else None, read_to=read_to, span=span
        )

    def read_to(self, parts: Parts, span: Span) -> tuple[tree.Length]:
        """`read to L`."""
        return (parts[0],)

    def grid(self, parts: Parts, span: Span) -> tree.Grid:
        """`grid ACROSS x DOWN [of W [x H]]`."""
        across, down, width, height = (*parts, None, None)[:4]
        return tree.Grid(across=across, down=down, cell_width=width, cell_height=height, span=span)

    def divisions(self, parts: Parts, span: Span) -> tree.Divisions:
        """`4` or `1:2:1`."""
        return tree.Divisions(
            parts=self.values.parts([(each.text, self.at(each)) for each in parts]), span=span
        )

    def outline_path(self, parts: Parts, span: Span) -> tree.OutlinePath:
        """`outline PATH`."""
        self.values.said.extend(
            complain.outline_to_outline(hop.span) for hop in parts[0].hops if isinstance(hop, tree.ToOutline)
        )
        return tree.OutlinePath(path=parts[0], span=span)

    def outline_regular(self, parts: Parts, span: Span) -> tree.OutlineRegular:
        """`outline regular N side L [turned A]`."""
        _, number, side, turned = (*parts, None)[:4]
        sides = self._count(number, "sides", limits.OUTLINE_SIDES_LEAST, limits.OUTLINE_SIDES)
        return tree.OutlineRegular(sides=sides, side=side, turned=turned, span=span)

    def allowance(self, parts: Parts, span: Span) -> tree.Allowance:
        """`allowance L [on PATH]`."""
        return tree.Allowance(width=parts[0], path=parts[1] if len(parts) > 1 else None, span=span)

    def grain_along(self, parts: Parts, span: Span) -> tree.Grain:
        """`grain along LINE on NAMES`."""
        return tree.Grain(line=parts[0], pieces=tuple(parts[1:]), span=span)

    def grain_free(self, parts: Parts, span: Span) -> tree.Grain:
        """`grain free on NAMES`."""
        return tree.Grain(line=None, pieces=tuple(parts), span=span)

    def trim(self, parts: Parts, span: Span) -> tree.Trim:
        """`trim STYLE [L] [dots L|none]`."""
        style = parts[0].text
        limit = next((part for part in parts[1:] if isinstance(part, tree.Length)), None)
        dots = next((part[0] for part in parts[1:] if isinstance(part, tuple)), None)
        if style == "none" and limit is not None:
            self.values.said.append(complain.trim_none_limit(limit.span))
        return tree.Trim(style=style, limit=limit, dots=dots, span=span)

    def dots_sized(self, parts: Parts, span: Span) -> tuple[tree.Length]:
        """`dots L`."""
        return (parts[0],)

    def dots_none(self, parts: Parts, span: Span) -> tuple[tree.Length]:
        """`dots none`: dots of no size."""
        return (tree.Length(inches=limits.LENGTH_LEAST * 0, span=span),)

    def family(self, parts: Parts, span: Span) -> tree.Family:
        """`family NAMES`."""
        return tree.Family(names=tuple(parts), span=span)

    def also(self, parts: Parts, span: Span) -> tree.Also:
        """`also TITLES`."""
        return tree.Also(titles=tuple(self.values.title(each) for each in parts), span=span)

    def note(self, parts: Parts, span: Span) -> tree.Note:
        """`note TEXT`."""
        return tree.Note(text=self.values.remark(parts[0]), span=span)

    def maker(self, parts: Parts, span: Span) -> tree.Maker:
        """`maker TEXT`."""
        return tree.Maker(text=self.values.maker(parts[0]), span=span)

    # ---- seams and pieces ---------------------------------------------------------------------------------

    def point(self, parts: Parts, span: Span) -> tree.PointDef:
        """`point NAME = PHRASE`."""
        return tree.PointDef(name=parts[0], phrase=parts[1], span=span)

    def seam(self, parts: Parts, span: Span) -> tree.Seam:
        """`seam PATH`."""
        return tree.Seam(path=parts[0], span=span)

    def seam_through(self, parts: Parts, span: Span) -> tree.SeamThrough:
        """`seam through LINE`."""
        return tree.SeamThrough(line=parts[0], span=span)

    def seam_circle(self, parts: Parts, span: Span) -> tree.SeamCircle:
        """`seam circle around C radius L`."""
        return tree.SeamCircle(circle=parts[0], span=span)

    def seam_smooth(self, parts: Parts, span: Span) -> tree.SeamSmooth:
        """`seam smooth P, Q, R`."""
        return tree.SeamSmooth(points=tuple(parts[1:]), span=span)

    def piece(self, parts: Parts, span: Span) -> tree.PieceDef:
        """`piece NAME at PLACES in ROLES`."""
        return tree.PieceDef(name=parts[0], places=parts[1], roles=parts[2], span=span)

    def places(self, parts: Parts, span: Span) -> tuple[tree.PointPhrase, ...]:
        """The points of a piece."""
        return tuple(parts)

    def roles(self, parts: Parts, span: Span) -> tuple[tree.Name, ...]:
        """The roles that take turns."""
        return tuple(parts)

    # ---- symmetry -----------------------------------------------------------------------------------------

    def turn(self, parts: Parts, span: Span) -> tree.Turn:
        """`turn N [of A] about P { }`."""
        number, *step, about, body = parts
        count = self._count(number, "copies", limits.TURN_COPIES_LEAST, limits.TURN_COPIES)
        if step and step[0].degrees == 0:
            self.values.said.append(complain.step_zero(step[0].span))
        return tree.Turn(count=count, step=step[0] if step else None, about=about, body=body, span=span)

    def turn_center(self, parts: Parts, span: Span) -> tree.PointPhrase:
        """The point that a turn goes about."""
        center: tree.PointPhrase = parts[0]
        return center

    def body(self, parts: Parts, span: Span) -> tuple[tree.Statement, ...]:
        """The statements between braces."""
        return tuple(parts)

    def mirror(self, parts: Parts, span: Span) -> tree.MirrorIn:
        """`mirror in LINE { }`."""
        return tree.MirrorIn(line=parts[0], body=parts[1], span=span)

    def repeat(self, parts: Parts, span: Span) -> tree.Repeat:
        """`repeat N along TRACK { }`."""
        number, track, body = parts
        count = self._count(number, "copies", limits.TURN_COPIES_LEAST, limits.TURN_COPIES)
        return tree.Repeat(count=count, track=track, body=body, span=span)

    def track(self, parts: Parts, span: Span) -> tree.LineThrough | tree.ArcFigure:
        """The line or arc along which something is repeated."""
        track: tree.LineThrough | tree.ArcFigure = parts[0]
        return track

    # ---- blocks from units --------------------------------------------------------------------------------

    def use(self, parts: Parts, span: Span) -> tree.Use:
        """`use TITLE [version N] as NAME [with RENAMES]`."""
        version = parts[1] if isinstance(parts[1], tree.Count) else None
        alias, *renames = parts[2 if version else 1 :]
        title = self.values.title(parts[0])
        return tree.Use(title=title, version=version, alias=alias, renames=tuple(renames), span=span)

    def rename(self, parts: Parts, span: Span) -> tree.Rename:
        """`dark = pale`."""
        return tree.Rename(theirs=parts[0], ours=parts[1], span=span)

    def row(self, parts: Parts, span: Span) -> tree.Row:
        """`row ITEMS`."""
        return tree.Row(items=tuple(parts), span=span)

    def row_item(self, parts: Parts, span: Span) -> tree.RowItem:
        """`3 pair`."""
        count = self._count(parts[0], "repeats", 1, limits.ROW_REPEATS) if len(parts) > 1 else None
        return tree.RowItem(count=count, cell=parts[-1], span=span)

    def plain_cell(self, parts: Parts, span: Span) -> tree.PlainCell:
        """`plain dark`."""
        return tree.PlainCell(role=parts[0], span=span)

    def unit_cell(self, parts: Parts, span: Span) -> tree.UnitCell:
        """`goose facing left`."""
        poses = tuple(parts[1:])
        clash = [pose for pose in poses if isinstance(pose, tree.Turned | tree.Facing)]
        if any(isinstance(pose, tree.Facing) for pose in clash) and len(clash) > 1:
            self.values.said.append(complain.pose_clash(clash[1].span, clash[0].span))
        return tree.UnitCell(unit=parts[0], poses=poses, span=span)

    def pose_turned(self, parts: Parts, span: Span) -> tree.Turned:
        """`turned 90deg`."""
        angle: tree.Angle = parts[0]
        if angle.degrees % QUARTER:
            self.values.said.append(complain.pose_not_quarter(angle.span, angle.degrees))
        return tree.Turned(angle=angle, span=span)

    def pose_facing(self, parts: Parts, span: Span) -> tree.Facing:
        """`facing left`."""
        return tree.Facing(side=parts[0], span=span)

    def pose_mirrored(self, parts: Parts, span: Span) -> tree.Mirrored:
        """`mirrored`."""
        return tree.Mirrored(span=span)

    def pose_stretched(self, parts: Parts, span: Span) -> tree.Stretched:
        """`stretched`."""
        return tree.Stretched(span=span)

    def side(self, parts: Parts, span: Span) -> str:
        """One of the eight sides and corners."""
        word: str = parts[0].text
        if word in SIDES:
            return word
        self.values.said.append(complain.side_unknown(span, word, SIDES))
        return "top"

    def alternate(self, parts: Parts, span: Span) -> tree.Alternate:
        """`alternate CELLS`."""
        return tree.Alternate(cells=tuple(parts), span=span)

    def place(self, parts: Parts, span: Span) -> tree.Place:
        """`place CELL in REGIONS`."""
        return tree.Place(cell=parts[0], regions=tuple(parts[1:]), span=span)

    def region(self, parts: Parts, span: Span) -> tree.Region:
        """`A1..B2`."""
        return tree.Region(first=parts[0], second=parts[1], span=span)

    def rounds(self, parts: Parts, span: Span) -> tree.Rounds:
        """`rounds N of L about REGION in ROLES [butted|mitred]`."""
        number, width, region, roles = parts[:4]
        corners: Literal["butted", "mitred"] | None = parts[4].text if len(parts) > 4 else None
        count = self._count(number, "rounds", 1, limits.ROUNDS)
        return tree.Rounds(count=count, width=width, region=region, roles=roles, corners=corners, span=span)

    def faces(self, parts: Parts, span: Span) -> tree.Faces:
        """`faces top`."""
        return tree.Faces(side=parts[0], span=span)

    # ---- words and numbers --------------------------------------------------------------------------------

    def name(self, parts: Parts, span: Span) -> tree.Name:
        """A name of the writer's."""
        return self.values.name(parts[0].text, span)

    def text(self, parts: Parts, span: Span) -> tree.Text:
        """Quoted text."""
        return self.values.text(parts[0].text, span)

    def length(self, parts: Parts, span: Span) -> tree.Length:
        """A length with its unit."""
        return self.values.length(parts[0].text, span)

    def angle(self, parts: Parts, span: Span) -> tree.Angle:
        """An angle in degrees."""
        return self.values.angle(parts[0].text, span)
