"""What the grammar expects, in words, and complaints that name it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from ...diagnostics.diagnostic import Diagnostic, error
from ...diagnostics.source import Span
from ..phrases import one_of, shown
from ..say import Say
from .mends import taken_away
from .message import message

PHRASES: Final = {
    "NAME": "a name",
    "GRID_POINT": "a grid point such as `B3`",
    "STRING": "text in quotes",
    "NUMBER": "a number",
    "LENGTH": "a length such as `6in`",
    "PERCENT": "a share such as `3%`",
    "ANGLE": "an angle such as `45deg`",
    "CIRCLE": "`circle around`",
    "REGULAR": "`regular` and a number",
    "$END": "the end of the file",
}
"""What each kind of word is called; a keyword or sign is called by its spelling."""


_POINT: Final = frozenset(("NAME", "GRID_POINT", "LPAR"))


_GROUPS: Final = (
    (_POINT | {"NEXT", "PREVIOUS", "NUMBER", "LENGTH", "BETWEEN", "MEET", "FOOT"}, "a point"),
    (_POINT | {"NEXT", "PREVIOUS", "NUMBER", "LENGTH", "FOOT"}, "a point"),
    (_POINT | {"NEXT", "PREVIOUS"}, "a point"),
    (_POINT, "a point"),
    (frozenset(("DASHES", "AT", "PARALLEL")), "the rest of a line, as in `A1--B2`"),
    (frozenset(("NAME", "PLAIN", "NUMBER")), "a unit or cloth, such as `pair` or `plain dark`"),
    (frozenset(("NAME", "PLAIN")), "a unit or cloth, such as `pair` or `plain dark`"),
)


_SELDOM: Final = frozenset(("COLON", "MIRRORED", "TURNED"))
"""What may come but is hardly ever missing: offered only where nothing else is."""


_OFFERED: Final = 4
"""More than four things to choose from help nobody."""


def phrase(terminal: str) -> str:
    """What a reader calls a kind of word."""
    from ...language.automaton import SPELLING

    return PHRASES.get(terminal) or f"`{SPELLING[terminal]}`"


def phrases(expected: Sequence[str]) -> str:
    """What could come: `a point or `outline``."""
    from ...language.tokens import END, OPENERS

    ends = "RBRACE" in expected or "BLOCK" in expected
    left = [each for each in expected if each not in OPENERS and each not in ("RBRACE", END)]
    said: list[str] = []
    for group, words in _GROUPS:
        if group <= set(left):
            said.append(words)
            left = [each for each in left if each not in group]
    said.extend(phrase(each) for each in left if each not in _SELDOM)
    if "OUTLINE" in expected and not ends:
        said.append("`outline`")
    if ends:
        said.append("the next statement")
    return one_of(said[:_OFFERED] or [phrase(each) for each in left])


@message
def word_unexpected(say: Say, span: Span, text: str, before: str, expected: Sequence[str]) -> Diagnostic:
    """A word (none: the text ends) that cannot come after another (none: it is the first)."""
    found = f"`{shown(text)}`" if text else "The end of the file"
    where, there = (f"after `{shown(before)}`", f"After `{shown(before)}`") if before else ("here", "Here")
    message = f"{found} cannot come {where}."
    return error("word-unexpected", message, span, help=f"{there} comes {phrases(expected)}.")


@message
def unfinished(say: Say, span: Span, opener: str, before: str, expected: Sequence[str]) -> Diagnostic:
    """A statement with a hole at its end."""
    return error(
        "statement-unfinished",
        f"This `{opener}` is not finished: after `{shown(before)}` comes {phrases(expected)}.",
        span,
        "something is missing here",
        help="Finish it before the next statement begins.",
    )


@message
def comma_last(say: Say, span: Span, expected: Sequence[str]) -> Diagnostic:
    """A list that ends with a comma."""
    return error(
        "comma-last",
        f"After this comma comes {phrases(expected)}, but the statement ends.",
        span,
        help="Finish the list, or take the comma away.",
        fix=taken_away(span),
    )
