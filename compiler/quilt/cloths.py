"""Fabrics and colourways: what each role of each block is cut from."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Final, get_args

from ..cutting.needs import FAT_QUARTER, NOTHING_SAID, USABLE_WIDTH, Fabric, Looks, Scrap
from ..diagnostics.source import Span
from ..drafting.context import Bench
from ..language import quilt_tree, tree
from ..words.cloth_words import Texture
from ..words.css_names import CSS
from ..words.messages import fabrics as complain
from .cells import all_cells

HEX: Final = re.compile("#[0-9a-f]{6}")


def read_fabrics(quilt: quilt_tree.Quilt, bench: Bench) -> dict[str, Fabric]:
    """The fabrics that the quilt brings in, by name, in the order of the file."""
    fabrics: dict[str, Fabric] = {}
    first: dict[str, Span] = {}
    for each in quilt.body:
        if not isinstance(each, quilt_tree.FabricDef):
            continue
        name = each.name.text
        if name in first:
            bench.say(complain.fabric_twice(each.name, first[name]))
            continue
        first[name] = each.name.span
        width = each.width.inches if each.width else USABLE_WIDTH
        if width <= 0:
            bench.say(complain.width_missing(each.span, USABLE_WIDTH))
        shrinkage = each.shrinks.share if each.shrinks else Fraction(0)
        if shrinkage >= 1 and each.shrinks is not None:
            bench.say(complain.shrinkage_whole(each.shrinks.span))
            shrinkage = Fraction(0)
        scraps: list[Scrap] = []
        for piece in each.pieces:
            if isinstance(piece, quilt_tree.FatQuarters):
                scraps += [FAT_QUARTER] * (piece.count.value if piece.count else 1)
            else:
                scraps.append(Scrap(piece.size.width.inches, (piece.size.height or piece.size.width).inches))
        fabrics[name] = Fabric(
            name,
            each.title.text if each.title else name,
            width,
            shrinkage,
            each.one_way,
            each.striped,
            tuple(scraps),
            each.name.span,
            _looks(each.looks, bench),
        )
    return fabrics


def _looks(said: quilt_tree.Looks | None, bench: Bench) -> Looks:
    """The looks said, as far as they are some; complains of a colour that is none."""
    if said is None:
        return NOTHING_SAID
    colour = ""
    if said.colour is not None:
        word = said.colour.text
        known = CSS.get(word.lower(), "") if isinstance(said.colour, tree.Name) or word.isalpha() else ""
        colour = f"#{known}" if known else word.lower()
        if not HEX.fullmatch(colour):
            bench.say(complain.colour_unknown(said.colour.span, word, tuple(CSS)))
            colour = ""
    word = said.texture.text if said.texture else ""
    return Looks(colour, next((each for each in get_args(Texture) if each == word), None))


def colourways(quilt: quilt_tree.Quilt, bench: Bench) -> list[tuple[str, dict[str, tree.Name]]]:
    """Title and fabrics by role of each colourway; one without a title where none is written."""
    written = [each for each in quilt.body if isinstance(each, quilt_tree.RolesDef)]
    if not written:
        return [("", {})]
    found: list[tuple[str, dict[str, tree.Name]]] = []
    titles: dict[str, Span] = {}
    for each in written:
        if each.title is not None:
            if each.title.text in titles:
                bench.say(complain.colourway_twice(each.title, titles[each.title.text]))
            titles.setdefault(each.title.text, each.title.span)
        if each.title is None and len(written) > 1:
            bench.say(complain.colourways_untitled(each.span))
        given: dict[str, tree.Name] = {}
        first: dict[str, Span] = {}
        for rename in each.renames:
            role = rename.theirs.text
            if role in first:
                bench.say(complain.role_twice(rename, first[role]))
            first.setdefault(role, rename.theirs.span)
            given[role] = rename.ours
        found.append((each.title.text if each.title and len(written) > 1 else "", given))
    return found


class Palette:
    """One colourway: has the fabric of a role, and remembers roles that have none."""

    def __init__(self, fabrics: Mapping[str, Fabric], roles: Mapping[str, tree.Name]) -> None:
        self.fabrics, self.roles = fabrics, roles
        self.missing: dict[str, dict[str, None]] = {}  # titles of the blocks that have the role
        self.used: dict[str, None] = {}
        self.asked: dict[str, None] = {}

    def fabric(self, word: str, block: str = "") -> str:
        """The fabric of a role, or of a fabric's own name; `block`: the title of the block that has it."""
        self.asked.setdefault(word)
        name = self.roles[word].text if word in self.roles else word
        if name not in self.fabrics and word not in self.roles:
            self.missing.setdefault(word, {}).update({block: None} if block else {})
        self.used.setdefault(name)
        return name


def check_palettes(quilt: quilt_tree.Quilt, palettes: Sequence[tuple[str, Palette]], bench: Bench) -> None:
    """Complains of roles without fabric and of fabrics that there are not; remarks on what is brought in
    and not used."""
    written = {name.text: name for name in reversed(written_words(quilt))}
    for title, palette in palettes:
        for role, name in palette.roles.items():
            if name.text not in palette.fabrics:
                bench.say(complain.fabric_unknown(name, role, palette.fabrics))
        for word in palette.missing:
            if word in written:
                known = (*palette.fabrics, *palette.roles)
                bench.say(complain.word_without_fabric(written[word], known, title))
        unwritten = {word: tuple(of) for word, of in palette.missing.items() if word not in written}
        if unwritten:
            bench.say(complain.role_without_fabric(quilt.title.span, unwritten, title))
    for each in quilt.body:
        if isinstance(each, quilt_tree.FabricDef) and not any(each.name.text in p.used for _, p in palettes):
            bench.say(complain.fabric_unused(each.name))
        if isinstance(each, quilt_tree.RolesDef):
            for rename in each.renames:
                if not any(rename.theirs.text in p.asked for _, p in palettes):
                    roles = dict.fromkeys(
                        word for _, p in palettes for word in p.asked if word not in p.fabrics
                    )
                    bench.say(complain.role_unused(rename, roles))


def written_words(quilt: quilt_tree.Quilt) -> list[tree.Name]:
    """Every role or fabric that the quilt itself writes down, `roles` and `fabric` apart, in order."""
    found: list[tree.Name] = []
    for each in quilt.body:
        match each:
            case tree.Use():
                found += [rename.ours for rename in each.renames]
            case _ if isinstance(each, quilt_tree.QuiltSet):
                found += [cell.role for cell in all_cells(each.body) if isinstance(cell, tree.PlainCell)]
                if isinstance(each, quilt_tree.SetOnPoint) and each.triangles:
                    found.append(each.triangles)
            case quilt_tree.Sashing():
                found += [name for name in (each.fabric, each.posts) if name]
            case quilt_tree.Border():
                cells = (*each.cells, *((each.corners,) if each.corners else ()))
                found += [cell.role for cell in cells if isinstance(cell, tree.PlainCell)]
                found += each.fabrics
            case quilt_tree.Binding() | quilt_tree.Backing():
                found.append(each.fabric)
            case _:
                pass
    return found
