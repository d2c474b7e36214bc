"""The nodes of a quilt, made as the parser recognises each rule. Never raises.

Stands beside `builder`, which loads it when a file first brings in a quilt: most files are blocks alone.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Any, Final, Literal, NamedTuple

from ..diagnostics.source import Span
from ..words.messages import quilts_written as complain
from ..words.messages.quilts_written import FactWord
from ..words.messages.values import Counted
from . import limits, quilt_tree, tree
from .point_builder import Parts
from .tokens import Token
from .values import Values


class Fact(NamedTuple):
    """One fact of a fabric: the words that open it, and what it says."""

    words: FactWord
    value: (
        tree.Length | quilt_tree.Percent | quilt_tree.FatQuarters | quilt_tree.Scrap | quilt_tree.Looks | bool
    )
    span: Span


TEXTURE_WORDS: Final = ("dotted", "checked", "floral", "twill", "striped")
"""Words that are a texture after `looks`."""


def _stripes_as_looks(facts: list[Fact]) -> list[Fact]:
    """The facts; of `looks navy striped` the stripes are how it looks, and not the cloth's direction."""
    told: list[Fact] = []
    for fact in facts:
        last = told[-1].value if told else None
        if fact.words == "striped" and isinstance(last, quilt_tree.Looks) and last.texture is None:
            texture = tree.Name(text="striped", span=fact.span)
            span = Span(last.span.source, last.span.start, fact.span.end)
            told[-1] = Fact("looks", quilt_tree.Looks(colour=last.colour, texture=texture, span=span), span)
        else:
            told.append(fact)
    return told


class Drawn(NamedTuple):
    """How far a border goes that is given no width: up to a size."""

    size: quilt_tree.Size


class QuiltBuilder:
    """Makes the nodes of one source's quilts; `values` reads its numbers and gathers what is said."""

    def __init__(self, source_name: str, values: Values) -> None:
        self._source = source_name
        self._values = values

    def _at(self, token: Token) -> Span:
        return Span(self._source, token.start, token.end)

    def _count(self, token: Token, counted: Counted, most: int) -> tree.Count:
        return self._values.count(token.text, self._at(token), counted, 1, most)

    def make(self, rule: str, parts: Parts, span: Span) -> Any:
        """The node of a rule; one without a method here has a class of its name, whose body its parts are."""
        if maker := getattr(self, rule, None):
            return maker(parts, span)
        node = getattr(quilt_tree, "".join(word.capitalize() for word in rule.split("_")))
        return node(body=tuple(parts), span=span)

    # ---- the quilt as a whole -----------------------------------------------------------------------------

    def quilt(self, parts: Parts, span: Span) -> quilt_tree.Quilt:
        """A quilt with its body."""
        title = self._values.title(parts[0])
        version = parts[1] if len(parts) > 1 and isinstance(parts[1], tree.Count) else None
        body = tuple(parts[2 if version else 1 :])
        return quilt_tree.Quilt(title=title, version=version, body=body, span=span)

    def roles_of_quilt(self, parts: Parts, span: Span) -> quilt_tree.RolesDef:
        """`roles [TITLE] RENAMES`."""
        title = self._values.title(parts[0]) if isinstance(parts[0], tree.Text) else None
        return quilt_tree.RolesDef(title=title, renames=tuple(parts[1 if title else 0 :]), span=span)

    def fits(self, parts: Parts, span: Span) -> quilt_tree.Fits:
        """`fits NAMES mattress [drop L]`."""
        drop = parts[-1] if isinstance(parts[-1], tree.Length) else None
        words = tuple(parts[:-1] if drop else parts)
        return quilt_tree.Fits(mattress=words, drop=drop, span=span)

    def drop(self, parts: Parts, span: Span) -> tree.Length:
        """`drop L`."""
        length: tree.Length = parts[0]
        return length

    # ---- fabrics ------------------------------------------------------------------------------------------

    def fabric(self, parts: Parts, span: Span) -> quilt_tree.FabricDef:
        """`fabric NAME [TITLE] [FACTS]`."""
        name, *rest = parts
        title = self._values.title(rest[0]) if rest and isinstance(rest[0], tree.Text) else None
        facts: dict[str, Fact] = {}
        pieces: list[quilt_tree.FatQuarters | quilt_tree.Scrap] = []
        for fact in _stripes_as_looks([each for each in rest if isinstance(each, Fact)]):
            if isinstance(fact.value, quilt_tree.FatQuarters | quilt_tree.Scrap):
                pieces.append(fact.value)
            elif fact.words in facts:
                first = facts[fact.words].span
                self._values.said.append(complain.fact_twice(fact.words, fact.span, first))
            else:
                facts[fact.words] = fact
        width, shrinks, looks = facts.get("width"), facts.get("shrinks"), facts.get("looks")
        if width and pieces:
            self._values.said.append(complain.width_of_pieces(width.span))
        return quilt_tree.FabricDef(
            name=name,
            title=title,
            one_way="one-way" in facts,
            striped="striped" in facts,
            width=width.value if width and isinstance(width.value, tree.Length) else None,
            shrinks=shrinks.value if shrinks and isinstance(shrinks.value, quilt_tree.Percent) else None,
            pieces=tuple(pieces),
            looks=looks.value if looks and isinstance(looks.value, quilt_tree.Looks) else None,
            span=span,
        )

    def looks(self, parts: Parts, span: Span) -> Fact:
        """`looks COLOUR [TEXTURE]`; one word that names a texture is one."""
        colour, texture = parts[0], parts[1] if len(parts) > 1 else None
        if texture is None and isinstance(colour, tree.Name) and colour.text in TEXTURE_WORDS:
            colour, texture = None, colour
        return Fact("looks", quilt_tree.Looks(colour=colour, texture=texture, span=span), span)

    def _texture(self, word: str, span: Span) -> tree.Name:
        return tree.Name(text=word, span=span)

    def plain_cloth(self, parts: Parts, span: Span) -> tree.Name:
        """`plain`."""
        return self._texture("plain", span)

    def dotted(self, parts: Parts, span: Span) -> tree.Name:
        """`dotted`."""
        return self._texture("dotted", span)

    def checked(self, parts: Parts, span: Span) -> tree.Name:
        """`checked`."""
        return self._texture("checked", span)

    def floral(self, parts: Parts, span: Span) -> tree.Name:
        """`floral`."""
        return self._texture("floral", span)

    def twill(self, parts: Parts, span: Span) -> tree.Name:
        """`twill`."""
        return self._texture("twill", span)

    def usable_width(self, parts: Parts, span: Span) -> Fact:
        """`width L`."""
        return Fact("width", parts[0], span)

    def shrinks(self, parts: Parts, span: Span) -> Fact:
        """`shrinks N%`."""
        return Fact("shrinks", parts[0], span)

    def percent(self, parts: Parts, span: Span) -> quilt_tree.Percent:
        """`3%`."""
        return quilt_tree.Percent(share=self._values.share(parts[0].text, span), span=span)

    def one_way(self, parts: Parts, span: Span) -> Fact:
        """`one way`."""
        return Fact("one-way", True, span)

    def striped(self, parts: Parts, span: Span) -> Fact:
        """`striped`."""
        return Fact("striped", True, span)

    def fat_quarters(self, parts: Parts, span: Span) -> Fact:
        """`fat quarter [N]`."""
        count = self._count(parts[0], "fat-quarters", limits.FAT_QUARTERS) if parts else None
        return Fact("fat-quarter", quilt_tree.FatQuarters(count=count, span=span), span)

    def scrap(self, parts: Parts, span: Span) -> Fact:
        """`scrap SIZE`."""
        return Fact("scrap", quilt_tree.Scrap(size=parts[0], span=span), span)

    def size(self, parts: Parts, span: Span) -> quilt_tree.Size:
        """`W [x H]`."""
        return quilt_tree.Size(width=parts[0], height=parts[1] if len(parts) > 1 else None, span=span)

    # ---- the set ------------------------------------------------------------------------------------------

    def set_straight(self, parts: Parts, span: Span) -> quilt_tree.SetStraight:
        """`set straight N across M down [of SIZE] { }`."""
        across, down, size, _, body = self._set(parts)
        return quilt_tree.SetStraight(across=across, down=down, size=size, body=body, span=span)

    def set_on_point(self, parts: Parts, span: Span) -> quilt_tree.SetOnPoint:
        """`set on point N across M down [of SIZE] [with triangles in F] { }`."""
        across, down, size, triangles, body = self._set(parts)
        return quilt_tree.SetOnPoint(
            across=across, down=down, size=size, triangles=triangles, body=body, span=span
        )

    def _set(
        self, parts: Parts
    ) -> tuple[
        tree.Count, tree.Count, quilt_tree.Size | None, tree.Name | None, tuple[quilt_tree.SetStatement, ...]
    ]:
        across = self._count(parts[0], "blocks-across", limits.SET_BLOCKS)
        down = self._count(parts[1], "blocks-down", limits.SET_BLOCKS)
        size = next((each for each in parts[2:-1] if isinstance(each, quilt_tree.Size)), None)
        triangles = next((each for each in parts[2:-1] if isinstance(each, tree.Name)), None)
        return across, down, size, triangles, parts[-1]

    def triangles(self, parts: Parts, span: Span) -> tree.Name:
        """`with triangles in F`."""
        name: tree.Name = parts[0]
        return name

    def set_body(self, parts: Parts, span: Span) -> tuple[quilt_tree.SetStatement, ...]:
        """What fills the set."""
        return tuple(parts)

    def sashing(self, parts: Parts, span: Span) -> quilt_tree.Sashing:
        """`sashing L in F [posts in F] [around]`."""
        width, fabric, *rest = parts
        posts = next((each for each in rest if isinstance(each, tree.Name)), None)
        return quilt_tree.Sashing(width=width, fabric=fabric, posts=posts, around=True in rest, span=span)

    def posts(self, parts: Parts, span: Span) -> tree.Name:
        """`posts in F`."""
        name: tree.Name = parts[0]
        return name

    def around(self, parts: Parts, span: Span) -> bool:
        """`around`."""
        return True

    # ---- borders and the rest -----------------------------------------------------------------------------

    def border_plain(self, parts: Parts, span: Span) -> quilt_tree.Border:
        """`border WIDTH in F [butted|mitred] [unjoined]`."""
        reach, fabric, *words = parts
        styles = [each for each in words if each.text != "unjoined"]
        for first, again in pairwise(words):
            if again.text == first.text or len(styles) > 1:
                self._values.said.append(complain.border_styles(self._at(again), self._at(first)))
                break
        style: Literal["butted", "mitred"] | None = styles[0].text if styles else None
        return self._border(reach, span, fabric=fabric, style=style, unjoined=len(styles) < len(words))

    def border_pieced(self, parts: Parts, span: Span) -> quilt_tree.Border:
        """`border WIDTH of CELLS [corners CELL]`."""
        reach, *cells = parts
        corners = cells.pop()[0] if isinstance(cells[-1], tuple) else None
        return self._border(reach, span, cells=tuple(cells), corners=corners)

    def _border(
        self,
        reach: tree.Length | Drawn,
        span: Span,
        *,
        fabric: tree.Name | None = None,
        cells: tuple[tree.Cell, ...] = (),
        corners: tree.Cell | None = None,
        style: Literal["butted", "mitred"] | None = None,
        unjoined: bool = False,
    ) -> quilt_tree.Border:
        width = reach if isinstance(reach, tree.Length) else None
        size = reach.size if isinstance(reach, Drawn) else None
        return quilt_tree.Border(
            width=width,
            to=size,
            fabric=fabric,
            cells=cells,
            corners=corners,
            style=style,
            unjoined=unjoined,
            span=span,
        )

    def border_to(self, parts: Parts, span: Span) -> Drawn:
        """`to SIZE`."""
        return Drawn(parts[0])

    def corners(self, parts: Parts, span: Span) -> tuple[tree.Cell]:
        """`corners CELL`."""
        return (parts[0],)

    def binding(self, parts: Parts, span: Span) -> quilt_tree.Binding:
        """`binding L in F [bias]`."""
        return quilt_tree.Binding(width=parts[0], fabric=parts[1], bias=len(parts) > 2, span=span)

    def bias(self, parts: Parts, span: Span) -> bool:
        """`bias`."""
        return True

    def backing(self, parts: Parts, span: Span) -> quilt_tree.Backing:
        """`backing in F [L over]`."""
        return quilt_tree.Backing(fabric=parts[0], over=parts[1] if len(parts) > 1 else None, span=span)

    def batting(self, parts: Parts, span: Span) -> quilt_tree.Batting:
        """`batting [L over]`."""
        return quilt_tree.Batting(over=parts[0] if parts else None, span=span)

    def seams_take(self, parts: Parts, span: Span) -> quilt_tree.SeamsTake:
        """`allowance L`."""
        return quilt_tree.SeamsTake(width=parts[0], span=span)

    def over(self, parts: Parts, span: Span) -> tree.Length:
        """`L over`."""
        length: tree.Length = parts[0]
        return length
