"""Braces that do not close, statements in the wrong place or broken off: what to say, how to go on."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, Fix, Label, error
from ..diagnostics.source import Source, Span
from ..words.phrases import nearest, one_of, quoted
from .automaton import accepts
from .phrases import phrases
from .situation import Mending, Situation, may_end
from .tokens import BLOCK_OPENERS, END, ODD_WORD, OPENERS, QUILT_OPENERS, SET_OPENERS, Token
from .value_errors import shown

_OTHER_OPENERS: Final = {
    "line": "seam",
    "sew": "seam",
    "stitch": "seam",
    "cut": "seam",
    "size": "finished",
    "rotate": "turn",
    "repeat": "turn",
    "reflect": "mirror",
    "flip": "mirror",
    "patch": "piece",
    "shape": "piece",
    "color": "piece",
    "colour": "piece",
    "author": "maker",
    "designer": "maker",
    "comment": "note",
    "remark": "note",
    "name": "also",
    "alias": "also",
    "import": "use",
    "unit": "use",
    "put": "place",
    "strips": "rounds",
    "arrow": "grain",
    "pattern": "block",
    "define": "block",
    "language": "edition",
    "cloth": "fabric",
    "material": "fabric",
    "layout": "set",
    "setting": "set",
    "lattice": "sashing",
    "sash": "sashing",
    "frame": "border",
    "bind": "binding",
    "backer": "backing",
    "wadding": "batting",
    "colorway": "roles",
    "colourway": "roles",
    "bed": "fits",
    "mattress": "fits",
    "coverlet": "quilt",
}
"""What others call our statements, or a beginner might."""


def mend_open_brace(place: Situation) -> Mending | None:
    """The text, or a block, ends before its braces are closed."""
    if place.token.type not in (END, "BLOCK", "QUILT") or not accepts(place.states, "RBRACE"):
        return None
    braces = _open_braces(place.tokens[: place.at])
    closing = (Token("RBRACE", "}", place.before.end, place.before.end),) * len(braces)
    culprit = _never_closed(place.source, place.tokens[: place.at]) or braces[-1]
    return Mending(brace_open(place.gap(), place.span(culprit), len(braces)), closing)


def _open_braces(tokens: Iterable[Token]) -> list[Token]:
    """The braces not yet closed, the outermost first."""
    braces: list[Token] = []
    for token in tokens:
        if token.type == "LBRACE":
            braces.append(token)
        elif token.type == "RBRACE" and braces:
            braces.pop()
    return braces


def _never_closed(source: Source, tokens: Iterable[Token]) -> Token | None:
    """The first brace whose own closing one seems to be missing, going by how the lines are set in."""
    braces: list[Token] = []
    for token in tokens:
        if token.type == "LBRACE":
            braces.append(token)
        elif token.type == "RBRACE" and braces:
            opened = braces.pop()
            if token.fresh and _set_in(source, token) < _set_in(source, opened):
                return opened
    return None


def _set_in(source: Source, token: Token) -> int:
    """How many blanks the token's line begins with."""
    line = source.line(source.place(token.start)[0])
    return len(line) - len(line.lstrip())


def mend_extra_brace(place: Situation) -> Mending | None:
    """A closing brace that closes nothing."""
    if place.token.type == "RBRACE" and place.between and not accepts(place.states, "RBRACE"):
        return Mending(brace_extra(place.span(place.token)), (), 1)
    return None


def mend_foreign_opener(place: Situation) -> Mending | None:
    """A statement that cannot stand here: of a quilt, of the file, or outside any block."""
    token = place.token
    if not place.between or token.type not in OPENERS:
        return None
    span = place.span(token)
    if token.type == "EDITION":
        skip = 2 if place.tokens[place.at + 1].type == "NUMBER" else 1
        return Mending(edition_not_first(span), (), skip)
    if place.within == "file":
        return Mending(outside_block(span, token.text, "block" if token.text in BLOCK_OPENERS else "quilt"))
    if place.within == "set" and not _closes_later(place, whole=True):
        brace = _open_braces(place.tokens[: place.at])[-1]
        return Mending(brace_open(place.gap(), place.span(brace), 1), (place.put_in("RBRACE"),))
    if place.within == "quilt" and token.text in SET_OPENERS:
        return Mending(of_a_set(span, token.text))
    if place.within == "set" and token.text in SET_OPENERS:
        return Mending(rows_only(span, token.text))
    home = "quilt" if token.text in QUILT_OPENERS else "block"
    if home == place.within:
        home = "file"
    return Mending(statement_elsewhere(span, token.text, home, place.within))


def mend_unknown_statement(place: Situation) -> Mending | None:
    """A word that opens no statement, where one could open."""
    token = place.token
    if not place.between or (place.at and not token.fresh and place.before.type not in ("LBRACE", "RBRACE")):
        return None
    known = {
        "block": BLOCK_OPENERS,
        "quilt": QUILT_OPENERS,
        "set": SET_OPENERS,
        "file": ("block", "quilt", "edition"),
    }[place.within]
    close = nearest(token.text.lower(), known) if token.type in ("NAME", ODD_WORD) else []
    other = _OTHER_OPENERS.get(token.text.lower())
    if other in known:
        close = [str(other)]
    said = statement_unknown(place.span(token), token, close, place.within)
    for word in close[:1]:
        made = place.made(word.upper(), word)
        if place.reads((made,), 1, look=2):
            return Mending(said, (made,), 1)
    return Mending(said)


def mend_missing_title(place: Situation) -> Mending | None:
    """`block {`, or `block` and a version without a title."""
    if place.before.type not in ("BLOCK", "QUILT", "USE") or "STRING" not in place.expected:
        return None
    made = Token("STRING", '"untitled"', place.before.end, place.before.end)
    mend = (made,) if place.reads((made,), 0, look=1) else None
    return Mending(title_missing(place.gap(), place.before.text), mend)


def mend_hole(place: Situation) -> Mending | None:
    """The statement before is not finished when the next one opens, or the body or the text ends."""
    token = place.token
    ends = token.type in ("RBRACE", END) or (token.type in OPENERS and token.fresh)
    if not ends or place.between or may_end(place.states):
        return None
    if place.before.type == "COMMA":
        return Mending(comma_last(place.span(place.before), place.expected))
    if "LBRACE" in place.expected and _closes_later(place):
        return Mending(brace_missing(place.gap(), place.opener.text), (place.put_in("LBRACE"),))
    missing = mend_missing_words(place)
    if missing is not None:
        return missing
    return Mending(unfinished(place.gap(), place.opener, place.before, place.expected))


def _closes_later(place: Situation, *, whole: bool = False) -> bool:
    """Whether a closing brace more follows than was opened; `whole`: one for each that was opened."""
    if place.token.type == END:
        return False
    depth = len(_open_braces(place.tokens[: place.at]))
    for token in place.tokens[place.at :]:
        if token.type in (END, "BLOCK", "QUILT"):
            break
        depth += (token.type == "LBRACE") - (token.type == "RBRACE")
    return depth == 0 if whole else depth < 0


def mend_missing_words(place: Situation) -> Mending | None:
    """What a statement cannot do without, left out together with what comes after it."""
    if place.opener.type == "USE" and "AS" in place.expected:
        if place.token.type == "NAME" and not place.token.fresh and place.token.type != "WITH":
            return None
        return Mending(use_without_as(place.gap()))
    if (
        place.opener.type == "TURN"
        and "ABOUT" in place.expected
        and place.token.type in ("LBRACE", END, "RBRACE")
    ):
        made = (place.put_in("ABOUT"), Token("NAME", "center", place.before.end, place.before.end))
        return Mending(turn_without_about(place.gap()), made if place.token.type == "LBRACE" else None)
    if place.opener.type == "PLACE" and place.expected == ("UNTIL",):
        return Mending(region_half(place.gap(), place.before.text))
    return None


# ---- words ------------------------------------------------------------------------------------------------


def brace_open(span: Span, opened: Span, count: int) -> Diagnostic:
    """The text or the block ends before its braces are closed."""
    missing = "A closing `}` is" if count == 1 else f"{count} closing `}}` are"
    return error(
        "brace-open",
        f"{missing} missing here.",
        span,
        "here at the latest",
        help="Write `}`.",
        related=(Label(opened, "this brace is never closed"),),
    )


def brace_extra(span: Span) -> Diagnostic:
    """A closing brace that closes nothing."""
    return error(
        "brace-extra",
        "This `}` closes nothing.",
        span,
        help="Take it away.",
        fix=Fix("Take it away", span, ""),
    )


def brace_missing(span: Span, opener: str) -> Diagnostic:
    """`turn 4 about center` without a brace, and its statements below it."""
    return error(
        "brace-missing",
        f"A `{{` is missing where the body of this `{opener}` begins.",
        span,
        help="Write `{` here and `}` where it ends.",
        fix=Fix("Write `{`", span, " {"),
    )


def statement_elsewhere(span: Span, word: str, home: str, within: str) -> Diagnostic:
    """`border` in a block, `seam` in a quilt, `sashing` within the braces of a `set`."""
    if within == "set":
        return error(
            "statement-of-block" if home == "block" else "statement-of-quilt",
            f"`{word}` does not stand within the braces of a `set`.",
            span,
            help="Only `row`, `alternate` and `place` stand there."
            + (" Put it after the closing `}`." if home == "quilt" else ""),
        )
    if home == "quilt":
        return error(
            "statement-of-quilt",
            f"`{word}` belongs in a quilt, not in a block.",
            span,
            help='A block holds what is pieced into it. A quilt is written `quilt "Title" { ... }`.',
        )
    return error(
        "statement-of-block",
        f"`{word}` belongs in a block, not in a quilt.",
        span,
        help='Write a block, as in `block "Title" { ... }`, and bring it in with `use`.',
    )


def of_a_set(span: Span, word: str) -> Diagnostic:
    """`row a, b` in a quilt, outside its `set`."""
    return error(
        "statement-of-set",
        f"In a quilt, `{word}` stands within the braces of a `set`.",
        span,
        help=f"Write it there, as in `set straight 4 across 5 down {{ {word} ... }}`.",
    )


def rows_only(span: Span, word: str) -> Diagnostic:
    """`alternate` in `set rows`."""
    return error(
        "set-rows-only",
        f"`set rows` holds `row` lines, and no `{word}`.",
        span,
        help="Write each row out; a number repeats a block, as in `row 9 goose`.",
    )


def outside_block(span: Span, word: str, home: str) -> Diagnostic:
    """A statement before the first block or quilt, or after the last."""
    return error(
        "statement-outside",
        f"`{word}` stands outside any {home}.",
        span,
        help=f'Put it inside the braces of a {home}, as in `{home} "Title" {{ ... }}`.',
    )


def edition_not_first(span: Span) -> Diagnostic:
    """`edition` after a block, within one, or twice."""
    return error(
        "edition-not-first", "`edition` stands once, at the top of the file.", span, help="Take it away here."
    )


def statement_unknown(span: Span, token: Token, close: Sequence[str], within: str) -> Diagnostic:
    """A word that opens no statement."""
    where = "a block or quilt" if within == "file" else "a statement"
    message = f"`{shown(token.text)}` does not begin {where}."
    if close:
        return error(
            "statement-unknown",
            message,
            span,
            help=f"Did you mean {one_of(quoted(close))}?",
            fix=Fix(f"Write `{close[0]}`", span, close[0]),
        )
    known = {
        "block": "Statements begin with a word such as `seam`, `point` or `piece`.",
        "quilt": "Statements begin with a word such as `fabric`, `set` or `border`.",
        "set": "Here stand `row`, `alternate` and `place`.",
        "file": 'A file is `edition 1`, then blocks and quilts: `block "Title" { ... }`.',
    }[within]
    return error("statement-unknown", message, span, help=known)


def title_missing(span: Span, opener: str) -> Diagnostic:
    """`block { }`."""
    return error(
        "title-missing",
        f"After `{opener}` comes a title in quotes.",
        span,
        "it is missing here",
        help=f'Write one, as in `{opener} "Flying Goose"`.',
    )


def unfinished(span: Span, opener: Token, before: Token, expected: Sequence[str]) -> Diagnostic:
    """A statement with a hole at its end."""
    wanted = f"after `{shown(before.text)}` comes {phrases(expected)}"
    return error(
        "statement-unfinished",
        f"This `{opener.text}` is not finished: {wanted}.",
        span,
        "something is missing here",
        help="Finish it before the next statement begins.",
    )


def comma_last(span: Span, expected: Sequence[str]) -> Diagnostic:
    """A list that ends with a comma."""
    return error(
        "comma-last",
        f"After this comma comes {phrases(expected)}, but the statement ends.",
        span,
        help="Finish the list, or take the comma away.",
        fix=Fix("Take it away", span, ""),
    )


def use_without_as(span: Span) -> Diagnostic:
    """`use "Title"` alone."""
    return error(
        "use-without-as",
        "`use` needs `as` and a name for the unit.",
        span,
        "it is missing here",
        help='Write a name of your own, as in `use "Two-Triangle Square" as pair`.',
    )


def turn_without_about(span: Span) -> Diagnostic:
    """`turn 4 { }`."""
    return error(
        "about-missing",
        "`turn` needs `about` and the point it turns about.",
        span,
        "it is missing here",
        help="Write it, as in `turn 4 about center { ... }`.",
        fix=Fix("Turn about the center", span, " about center"),
    )


def region_half(span: Span, corner: str) -> Diagnostic:
    """`place pair in A1`."""
    return error(
        "region-half",
        f"A place lies between two corners: after `{corner}` comes `..` and the other.",
        span,
        help="The cell from A1 to B2 is written `A1..B2`.",
    )
