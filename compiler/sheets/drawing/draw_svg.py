"""A page to SVG text: every mark an element, where layout put it. Decides nothing.

The drawing is in points; the size that the file states is in inches, so that it opens and prints true to
size. Each element bears its mark's role as class and the template or piece as data-subject. Lettering stays
text: the file names Source Sans Pro first and a plain face after it, for embedding two faces would make every
small picture ten times its size; where the face is missing the words are set in another, and only they. Lines
start where their measured width puts them (viewers differ over what an anchor's middle is).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ...measure.length import POINTS_PER_INCH
from ...words.markup import escaped, plain
from ..page import Mark, Page, PathMark, Segment, TextMark
from .lettering import printable
from .lines import left_of_anchor
from .typeface import FAMILY

FAMILIES: Final = f"'{FAMILY}', 'Source Sans 3', sans-serif"
NO_INK: Final = "none"

Box = tuple[float, float, float, float]


def svg_of(page: Page) -> str:
    """The page as an SVG file that states its true size."""
    width, height = _inches(page.width), _inches(page.height)
    body = _marks(page.marks, "clip")
    return "\n".join((
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="{width}" height="{height}"'
        f' viewBox="0 0 {_number(page.width)} {_number(page.height)}"'
        f' font-family="{FAMILIES}" stroke-linejoin="round">',
        f"<title>{escaped(plain(page.title))}</title>",
        *body,
        "</svg>\n",
    ))  # fmt: skip


def inline_svg(marks: Sequence[Mark], box: Box, words: str, name: str) -> str:
    """A drawing for a page of HTML, as wide as it is given room. `box`: left, top, right, bottom of what is
    shown; `words` say it to those who do not see it; `name` is one of its own in the document."""
    left, top, right, bottom = box
    return "\n".join((
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="{name}"'
        f' viewBox="{_number(left)} {_number(top)} {_number(right - left)} {_number(bottom - top)}"'
        f' width="{_number(right - left)}" height="{_number(bottom - top)}"'
        f' font-family="{FAMILIES}" stroke-linejoin="round">',
        f'<title id="{name}">{escaped(plain(words))}</title>',
        *_marks(marks, f"{name}-clip"),
        "</svg>",
    ))  # fmt: skip


def _marks(marks: Sequence[Mark], clip_name: str) -> Iterator[str]:
    """The marks as elements, with the clips they name before them."""
    clips = tuple(dict.fromkeys(mark.clip for mark in marks if isinstance(mark, PathMark) and mark.clip))
    names = {clip: f"{clip_name}{number}" for number, clip in enumerate(clips, start=1)}
    if names:
        yield "<defs>"
        for clip, name in names.items():
            yield f'<clipPath id="{name}"><path d="{_outline(clip)}"/></clipPath>'
        yield "</defs>"
    for mark in marks:
        if isinstance(mark, PathMark):
            yield _path(mark, names[mark.clip] if mark.clip else "")
        else:
            yield _text(mark)


def _path(mark: PathMark, clip: str) -> str:
    parts = [f'<path{_identity(mark.role, mark.subject)} d="{_outline(mark.path)}"']
    parts.append(f' fill="{_colour(mark.fill)}"')
    if mark.stroke is not None:
        parts.append(f' stroke="{_colour(mark.stroke)}" stroke-width="{_number(mark.width)}"')
        if mark.dash:
            parts.append(f' stroke-dasharray="{" ".join(map(_number, mark.dash))}"')
    if clip:
        parts.append(f' clip-path="url(#{clip})"')
    parts.append("/>")
    return "".join(parts)


def _text(mark: TextMark) -> str:
    words = printable(mark.text)
    x, y = _number(mark.x - left_of_anchor(mark)), _number(mark.y)
    parts = [f'<text{_identity(mark.role, mark.subject)} x="{x}" y="{y}" font-size="{_number(mark.size)}"']
    parts.append(f' fill="{_colour(mark.fill)}"')
    if mark.bold:
        parts.append(' font-weight="bold"')
    if mark.turned:
        parts.append(f' transform="rotate({_number(mark.turned)} {_number(mark.x)} {y})"')
    if words != " ".join(words.split()):
        parts.append(' xml:space="preserve"')
    parts.append(f">{escaped(words)}</text>")
    return "".join(parts)


def _identity(role: str, subject: str) -> str:
    named = f' class="{escaped(plain(role))}"' if role else ""
    return named + (f' data-subject="{escaped(plain(subject))}"' if subject else "")


def _outline(path: tuple[Segment, ...]) -> str:
    """The path in SVG's own letters, which are ours."""
    return "".join(segment[0] + " ".join(map(_number, segment[1:])) for segment in path)


def _colour(colour: tuple[float, float, float] | None) -> str:
    if colour is None:
        return NO_INK
    return "#" + "".join(f"{round(255 * share):02x}" for share in colour)


def _inches(points: float) -> str:
    return f"{points / POINTS_PER_INCH:.6f}".rstrip("0").rstrip(".") + "in"


def _number(value: object) -> str:
    """Four decimals of a point, 1/720000in, no zeros after the last figure that counts."""
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
