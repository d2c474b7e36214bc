"""The words of every complaint about the fabrics and roles of a quilt."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from ...diagnostics.diagnostic import Diagnostic, Fix, Label, error, note
from ...diagnostics.source import Span
from ..phrases import did_you_mean, nearest, one_of
from ..say import Say
from .message import message

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from ...language import tree
    from ...measure.tolerance import Number

BLOCKS_TOLD: Final = 3  # titles of the blocks that have a role; more are counted


@message
def fabric_twice(say: Say, name: tree.Name, first: Span) -> Diagnostic:
    """Two fabrics of one name."""
    return error(
        "fabric-twice",
        f"There are two fabrics called `{name.text}`.",
        name.span,
        "named again",
        help="Give one of them another name, or write all its pieces in one statement.",
        related=(Label(first, "first named here"),),
    )


@message
def fabric_unknown(say: Say, name: tree.Name, role: str, known: Iterable[str]) -> Diagnostic:
    """A word that is no fabric."""
    names = list(known)
    if role in names and not nearest(name.text, names):
        return error(
            "fabric-unknown",
            f"There is no fabric called `{name.text}`.",
            name.span,
            help=f"The role stands on the left: did you mean `{name.text} = {role}`?",
        )
    close = nearest(name.text, names)
    return error(
        "fabric-unknown",
        f"There is no fabric called `{name.text}`.",
        name.span,
        help=did_you_mean(name.text, names) or f"Bring it in: `fabric {name.text}`.",
        fix=Fix(f"Write `{close[0]}`", name.span, close[0]) if close else None,
    )


@message
def word_without_fabric(say: Say, name: tree.Name, known: Iterable[str], colourway: str) -> Diagnostic:
    """`border 2in in gold` where there is no such fabric and no such role."""
    names = list(known)
    of = f' in "{colourway}"' if colourway else ""
    close = nearest(name.text, names)
    return error(
        "role-without-fabric",
        f"`{name.text}` is no fabric, and no role that has one{of}.",
        name.span,
        help=did_you_mean(name.text, names) or f"Bring it in: `fabric {name.text}`.",
        fix=Fix(f"Write `{close[0]}`", name.span, close[0]) if close else None,
    )


@message
def role_without_fabric(
    say: Say, span: Span, roles: Mapping[str, Sequence[str]], colourway: str
) -> Diagnostic:
    """Roles that no fabric is given, each with the titles of the blocks that have it."""
    of = f' in "{colourway}"' if colourway else ""
    verb = "has" if len(roles) == 1 else "have"
    told = [f"`{role}`{_of_blocks(blocks)}" for role, blocks in roles.items()]
    return error(
        "role-without-fabric",
        f"{one_of(told, 'and')} {verb} no fabric{of}.",
        span,
        help=f"Give one, as in `roles {next(iter(roles))} = sand`, or bring in a fabric of that name.",
    )


def _of_blocks(titles: Sequence[str]) -> str:
    """` (of "Sail Loft" and 4 more)`."""
    if not titles:
        return ""
    named = [f'"{each[:40]}"' for each in titles[:BLOCKS_TOLD]]
    more = len(titles) - BLOCKS_TOLD
    return f" (of {one_of([*named, f'{more} more'] if more > 0 else named, 'and')})"


@message
def fabric_unused(say: Say, name: tree.Name) -> Diagnostic:
    """A fabric that nothing is cut from."""
    return note("fabric-unused", f"Nothing is cut from `{name.text}`.", name.span)


@message
def role_unused(say: Say, rename: tree.Rename, known: Iterable[str]) -> Diagnostic:
    """A role that no block has."""
    return note(
        "role-unused",
        f"No block of this quilt has a role `{rename.theirs.text}`.",
        rename.theirs.span,
        help=did_you_mean(rename.theirs.text, known),
    )


@message
def role_twice(say: Say, rename: tree.Rename, first: Span) -> Diagnostic:
    """One role given two fabrics in one colourway."""
    return error(
        "role-twice",
        f"`{rename.theirs.text}` is given two fabrics.",
        rename.theirs.span,
        help="Take one away; a colourway of its own is a second `roles` with a title.",
        related=(Label(first, "given here"),),
    )


@message
def colour_unknown(say: Say, span: Span, word: str, known: Sequence[str]) -> Diagnostic:
    """A word after `looks` that is no colour."""
    return error(
        "colour-unknown",
        f"`{word[:40]}` is no colour.",
        span,
        help=did_you_mean(word[:40].lower(), known)
        or 'Write a name of CSS, as `navy`, or red, green and blue in two digits each, as `"#b7410e"`.',
    )


@message
def width_missing(say: Say, span: Span, usual: Number) -> Diagnostic:
    """A fabric with no usable width."""
    return error(
        "fabric-no-width",
        "A fabric needs a usable width of more than nothing.",
        span,
        help=f"Cloth is mostly {say.length(usual)} wide between its selvages: `width {say.length(usual)}`.",
    )


@message
def shrinkage_whole(say: Say, span: Span) -> Diagnostic:
    """A fabric that shrinks to nothing."""
    return error(
        "shrinkage-too-large",
        "Nothing is left of a fabric that shrinks so much.",
        span,
        help="Cotton shrinks by a few in a hundred: `shrinks 3%`.",
    )


@message
def colourway_twice(say: Say, title: tree.Text, first: Span) -> Diagnostic:
    """Two colourways of one title."""
    return error(
        "colourway-twice",
        f'There are two colourways "{title.text[:60]}".',
        title.span,
        related=(Label(first, "the first"),),
        help="Give each a title of its own.",
    )


@message
def colourways_untitled(say: Say, span: Span) -> Diagnostic:
    """Several roles statements, one without a title."""
    return error(
        "colourway-untitled",
        "Each of several colourways needs a title.",
        span,
        help='Write `roles "Sea" dark = indigo`.',
    )
