"""Statements of a quilt written another way than the language's: what to say, what to read instead."""

from __future__ import annotations

from typing import Final

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Span
from ..words.messages import quilts_written as complain
from .automaton import SPELLING
from .situation import Mending, Situation
from .tokens import Token

_SEVERAL_WORDS: Final[dict[str, tuple[str, ...]]] = {
    "on-point": ("ON", "POINT"),
    "onpoint": ("ON", "POINT"),
    "point": ("ON", "POINT"),
    "diagonal": ("ON", "POINT"),
    "diagonally": ("ON", "POINT"),
    "one-way": ("ONE", "WAY"),
    "oneway": ("ONE", "WAY"),
    "directional": ("ONE", "WAY"),
    "fat-quarter": ("FAT", "QUARTER"),
    "fat-quarters": ("FAT", "QUARTER"),
    "stripe": ("STRIPED",),
    "stripes": ("STRIPED",),
    "shrink": ("SHRINKS",),
    "shrinkage": ("SHRINKS",),
    "shrinking": ("SHRINKS",),
    "wide": ("WIDTH",),
    "scraps": ("SCRAP",),
}
"""What others write for the words after `set` and in a `fabric`."""

_NEEDLESS: Final = ("with", "and", "is", "as", "a", "of", "has")
"""Words that a sentence would have between the parts of a statement."""

_STYLES: Final = ("mitred", "butted", "mitered", "unjoined")

_SWAPPED: Final = {"ACROSS": "DOWN", "DOWN": "ACROSS"}


def mend_in_eaten(place: Situation) -> Mending | None:
    """`border 2 in ecru`: the `in` of the cloth is read as inches."""
    width, opener = place.before, place.tokens[max(place.at - 2, 0)]
    if width.type != "LENGTH" or "IN" not in place.expected or place.token.type != "NAME":
        return None
    if not width.text.endswith((" in", "\tin")):
        return None
    right = f"{width.text[:-2].rstrip()}in in"
    start = f"{opener.text} " if opener is place.opener else ""
    said = complain.in_eaten(place.span(width), start, width.text, right, place.token.text)
    return Mending(said, (place.put_in("IN"),))


def mend_missing_percent(place: Situation) -> Mending | None:
    """`shrinks 3`, `shrinks 3 percent`, `shrinks 0.03`."""
    token = place.token
    if place.expected != ("PERCENT",) or token.type not in ("NUMBER", "LENGTH"):
        return None
    number = token.text.rstrip("incm").rstrip()
    if number.startswith("0.0") and len(number) == len("0.03"):  # the share itself
        number = number[-1]
    skip = 2 if place.tokens[place.at + 1].text in ("percent", "per-cent", "pc") else 1
    made = place.made("PERCENT", f"{number}%")
    return Mending(complain.percent_missing(place.span(token), made.text), (made,), skip)


def mend_set_counts(place: Situation) -> Mending | None:
    """`set straight 4 x 5`, `set straight 5 down 4 across`."""
    due = place.expected[0] if len(place.expected) == 1 else ""
    if due not in _SWAPPED:
        return None
    first, second, third = (place.tokens[min(place.at + step, len(place.tokens) - 1)] for step in (-1, 1, 2))
    if place.token.text in ("x", "by") and second.type == "NUMBER":
        said = complain.set_counts(place.span(place.token), first.text, second.text)
        ending = () if third.text == "down" else (place.made("DOWN", "down"),)
        return Mending(said, (place.made("ACROSS", "across"), second, *ending), 2)
    if place.token.text != SPELLING[_SWAPPED[due]]:
        return None
    mend = [place.made(due, SPELLING[due])]
    if second.type == "NUMBER" and third.text == SPELLING[due]:
        mend += [second, Token(_SWAPPED[due], SPELLING[_SWAPPED[due]], third.start, third.end)]
    across = second.text if len(mend) > 1 else "4"
    said = complain.set_counts(place.span(place.token), across, first.text)
    return Mending(said, tuple(mend), len(mend))


def mend_set_kind(place: Situation) -> Mending | None:
    """`set 4 across 5 down`."""
    if place.before.type != "SET" or place.token.type != "NUMBER":
        return None
    return Mending(complain.set_kind(place.gap()), (place.put_in("STRAIGHT"),))


def mend_several_words(place: Situation) -> Mending | None:
    """`set on-point`, `fabric rose one-way`: other words for two of ours."""
    kinds = _SEVERAL_WORDS.get(place.token.text)
    if kinds is None or kinds[0] not in place.expected or (place.between and place.token.fresh):
        return None
    text = " ".join(SPELLING[kind] for kind in kinds)
    made = tuple(place.made(kind, SPELLING[kind]) for kind in kinds)
    return Mending(complain.words_other(place.span(place.token), place.token.text, text), made, 1)


def mend_fabric_facts(place: Situation) -> Mending | None:
    """`fabric rose 3 fat quarters`, `fabric sand 42in wide`, `fabric sand 3%`."""
    token = place.token
    if place.opener.type != "FABRIC" or "FAT" not in place.expected:
        return None
    following = place.tokens[place.at + 1 : place.at + 3]
    if token.type == "NUMBER" and [each.text.rstrip("s") for each in following] == ["fat", "quarter"]:
        span = Span(place.source.name, token.start, following[1].end)
        made = (place.made("FAT", "fat"), place.made("QUARTER", "quarter"), token)
        return Mending(complain.fat_quarters_first(span, token.text), made, 3)
    if token.type == "LENGTH" and following and following[0].text == "x":
        return Mending(_bare(place, "scrap", f"{token.text} x 12in"), (place.put_in("SCRAP"),))
    if token.type == "LENGTH":
        skip = 2 if following and following[0].text == "wide" else 1
        return Mending(_bare(place, "width", token.text), (place.put_in("WIDTH"), token), skip)
    if token.type == "PERCENT":
        return Mending(_bare(place, "shrinks", token.text), (place.put_in("SHRINKS"),))
    return None


def mend_needless_word(place: Situation) -> Mending | None:
    """`sashing 1in in sand with posts in indigo`: a word that the statement does without."""
    following = place.tokens[min(place.at + 1, len(place.tokens) - 1)]
    if place.within == "file" or place.token.text not in _NEEDLESS or place.token.fresh or not place.between:
        return None
    if not following.soft or following.soft not in place.expected or not place.reads((), 1, look=2):
        return None
    return Mending(complain.word_needless(place.span(place.token), place.token.text, following.text), (), 1)


def mend_border(place: Situation) -> Mending | None:
    """Corner blocks on a plain border, a mitre on a pieced one, two lengths where one width is due."""
    if place.opener.type != "BORDER":
        return None
    span, text = place.span(place.token), place.token.text
    if text == "corners" and place.between:
        return Mending(complain.corners_of_plain(span))
    if text in _STYLES and "CORNERS" in place.expected:
        return Mending(complain.style_of_pieced(span, text), (), 1)
    if text == "x" and place.tokens[place.at - 2].type == "BORDER":
        return Mending(
            complain.border_two_lengths(Span(place.source.name, place.before.start, place.token.end))
        )
    return None


def mend_width_first(place: Situation) -> Mending | None:
    """`border mitred 2in in ecru`, `binding in indigo`: the width is due."""
    if place.before.type not in ("BORDER", "SASHING", "BINDING"):
        return None
    if place.token.type not in ("IN", "NAME", "OF"):
        return None
    return Mending(complain.width_first(place.span(place.token), place.before.text))


def mend_other_parts(place: Situation) -> Mending | None:
    """Cloth for batting, triangles in a straight set, a size after them, a bed without `mattress`."""
    token, opener = place.token, place.opener.type
    following = place.tokens[min(place.at + 1, len(place.tokens) - 1)]
    span = place.span(token)
    if opener == "BATTING" and token.type == "IN" and following.type == "NAME":
        return Mending(complain.batting_of_cloth(span), (), 2)
    if opener == "SET" and token.type == "WITH" and following.text == "triangles":
        skip = 4 if place.tokens[place.at + 2].type == "IN" else 3
        return Mending(complain.triangles_straight(span, following.text), (), skip)
    if token.type == "OF" and place.expected == ("LBRACE",) and following.type == "LENGTH":
        return Mending(complain.size_after_triangles(span), (), 2)
    if opener != "FITS":
        return None
    if token.type == "STRING":
        made = tuple(place.made("NAME", word) for word in token.text.strip('"').lower().split())
        return Mending(complain.mattress_quoted(span), made, 1) if made else None
    if token.type == "LENGTH" and place.before.text == "drop":
        return Mending(complain.mattress_missing(place.span(place.before)))
    if token.type == "LENGTH" and "DROP" in place.expected:
        return Mending(_bare(place, "drop", token.text), (place.put_in("DROP"),))
    return None


def mend_colon(place: Situation) -> Mending | None:
    """`roles dark: indigo`."""
    if place.token.type != "COLON" or "EQUAL" not in place.expected:
        return None
    return Mending(complain.words_other(place.span(place.token), ":", "="), (place.made("EQUAL", "="),), 1)


def _bare(place: Situation, word: str, value: str) -> Diagnostic:
    """The complaint about a fact without the word that opens it."""
    return complain.fact_bare(place.span(place.token), place.gap(), place.token.text, word, value)
