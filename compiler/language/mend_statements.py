"""Braces that do not close, statements in the wrong place or broken off: what to say, how to go on."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from ..diagnostics.source import Source
from ..words.messages import statements as complain
from ..words.messages.expected import comma_last, unfinished
from ..words.phrases import nearest
from .automaton import accepts
from .situation import Mending, Situation, may_end
from .tokens import BLOCK_OPENERS, END, ODD_WORD, OPENERS, QUILT_OPENERS, SET_OPENERS, Token

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
    return Mending(complain.brace_open(place.gap(), place.span(culprit), len(braces)), closing)


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
        return Mending(complain.brace_extra(place.span(place.token)), (), 1)
    return None


def mend_foreign_opener(place: Situation) -> Mending | None:
    """A statement that cannot stand here: of a quilt, of the file, or outside any block."""
    token = place.token
    if not place.between or token.type not in OPENERS:
        return None
    span = place.span(token)
    if token.type == "EDITION":
        skip = 2 if place.tokens[place.at + 1].type == "NUMBER" else 1
        return Mending(complain.edition_not_first(span), (), skip)
    if place.within == "file":
        return Mending(
            complain.outside_block(span, token.text, "block" if token.text in BLOCK_OPENERS else "quilt")
        )
    if place.within == "set" and not _closes_later(place, whole=True):
        brace = _open_braces(place.tokens[: place.at])[-1]
        return Mending(complain.brace_open(place.gap(), place.span(brace), 1), (place.put_in("RBRACE"),))
    if place.within == "quilt" and token.text in SET_OPENERS:
        return Mending(complain.of_a_set(span, token.text))
    if place.within == "set" and token.text in SET_OPENERS:
        return Mending(complain.rows_only(span, token.text))
    home = "quilt" if token.text in QUILT_OPENERS else "block"
    if home == place.within:
        home = "file"
    return Mending(complain.statement_elsewhere(span, token.text, home, place.within))


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
    said = complain.statement_unknown(place.span(token), token.text, close, place.within)
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
    return Mending(complain.title_missing(place.gap(), place.before.text), mend)


def mend_hole(place: Situation) -> Mending | None:
    """The statement before is not finished when the next one opens, or the body or the text ends."""
    token = place.token
    ends = token.type in ("RBRACE", END) or (token.type in OPENERS and token.fresh)
    if not ends or place.between or may_end(place.states):
        return None
    if place.before.type == "COMMA":
        return Mending(comma_last(place.span(place.before), place.expected))
    if "LBRACE" in place.expected and _closes_later(place):
        return Mending(complain.brace_missing(place.gap(), place.opener.text), (place.put_in("LBRACE"),))
    missing = mend_missing_words(place)
    if missing is not None:
        return missing
    return Mending(unfinished(place.gap(), place.opener.text, place.before.text, place.expected))


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
        return Mending(complain.use_without_as(place.gap()))
    if (
        place.opener.type == "TURN"
        and "ABOUT" in place.expected
        and place.token.type in ("LBRACE", END, "RBRACE")
    ):
        made = (place.put_in("ABOUT"), Token("NAME", "center", place.before.end, place.before.end))
        return Mending(
            complain.turn_without_about(place.gap()), made if place.token.type == "LBRACE" else None
        )
    if place.opener.type == "PLACE" and place.expected == ("UNTIL",):
        return Mending(complain.region_half(place.gap(), place.before.text))
    return None
