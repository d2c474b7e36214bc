"""What is said of mistakes of writing, in a quilter's words; and the phrase for each thing the grammar expects."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, Fix, Label, error, warning
from ..diagnostics.source import Source, Span
from ..diagnostics.wording import count_of, one_of, quoted
from . import limits, tree
from .automaton import SPELLING
from .tokens import END, OPENERS, Token
from .value_errors import shown

PHRASES: Final = {
    "NAME": "a name",
    "GRID_POINT": "a grid point such as `B3`",
    "STRING": "text in quotes",
    "NUMBER": "a number",
    "LENGTH": "a length such as `6in`",
    "ANGLE": "an angle such as `45deg`",
    "CIRCLE": "`circle around`",
    "REGULAR": "`regular` with a number",
    END: "the end of the file",
}
"""What each kind of word is called; a keyword or sign is called by its spelling."""

_GROUPS: Final = (
    (frozenset(("NAME", "GRID_POINT", "LPAR", "NEXT", "PREVIOUS", "NUMBER", "LENGTH", "BETWEEN", "MEET", "FOOT")),
     "a point"),
    (frozenset(("NAME", "GRID_POINT", "LPAR", "NEXT", "PREVIOUS", "NUMBER", "LENGTH", "FOOT")), "a point"),
    (frozenset(("NAME", "GRID_POINT", "LPAR", "NEXT", "PREVIOUS")), "a point"),
    (frozenset(("NAME", "GRID_POINT", "LPAR")), "a point"),
    (frozenset(("NAME", "PLAIN")), "a unit or `plain`"),
    (frozenset(("DASHES", "TILDES")), "`--` or `~~`"),
)

_OFFERED: Final = 5
"""More than five things to choose from help nobody."""


def phrase(terminal: str) -> str:
    """What a reader calls a kind of word."""
    return PHRASES.get(terminal) or f"`{SPELLING[terminal]}`"


def phrases(expected: Sequence[str]) -> str:
    """What could come: `a point`, `` `,` or `in` ``."""
    left = [each for each in expected if each not in OPENERS or each == "OUTLINE"]
    ends = len(left) < len(expected) or "RBRACE" in left
    left = [each for each in left if each not in ("RBRACE", END) and not (ends and each == "OUTLINE")]
    said: list[str] = []
    for group, words in _GROUPS:
        if group <= set(left):
            said.append(words)
            left = [each for each in left if each not in group]
    said.extend(phrase(each) for each in left)
    return one_of([*said[:_OFFERED], *(["the next statement"] if ends else [])])


# ---- the whole file ---------------------------------------------------------------------------------------


def out_of_bounds(source: Source, tokens: Sequence[Token]) -> Diagnostic | None:
    """A complaint where the text nests too deep or says too much to be read at all."""
    braces = brackets = statements = 0
    for token in tokens:
        if token.type in OPENERS:
            statements += 1
            brackets = 0
            braces = 0 if token.type == "BLOCK" else braces
        braces += (token.type == "LBRACE") - (token.type == "RBRACE")
        brackets += (token.type == "LPAR") - (token.type == "RPAR")
        if max(braces, 0) + max(brackets, 0) > limits.NESTING:
            return nesting_too_deep(Span(source.name, token.start, token.end))
        if statements > limits.STATEMENTS:
            return statements_too_many(Span(source.name, token.start, token.end))
    return None


def nesting_too_deep(span: Span) -> Diagnostic:
    """More braces and brackets inside one another than any block needs."""
    return error("nesting-too-deep", f"Braces and brackets stand more than {limits.NESTING} deep here.", span,
                 help="Give the inner points names of their own, or make the inner part a unit.")


def statements_too_many(span: Span) -> Diagnostic:
    """More statements than a block of 20,000 pieces needs."""
    return error("statements-too-many", f"The file has more than {limits.STATEMENTS} statements.", span,
                 help="Make parts of it blocks of their own, and use them as units.")


def errors_too_many(first_left_out: Diagnostic, count: int) -> Diagnostic:
    """The rest is not shown."""
    return error("errors-too-many", f"The file has {count} mistakes; the first {limits.ERRORS} are shown.",
                 first_left_out.primary.span, help="Mend these first. Is it a block file?")


def whole_file(source: Source, tokens: Sequence[Token], file: tree.File, *, quiet: bool) -> tuple[Diagnostic, ...]:
    """What is missing from the file as a whole; of blocks only where nothing else was said."""
    said: list[Diagnostic] = []
    if tokens[0].type == END:
        return (file_empty(Span(source.name, 0, 0)),)
    if file.edition is None and not any(token.type == "EDITION" for token in tokens):
        start = Span(source.name, tokens[0].start, tokens[0].end)
        said.append(edition_missing(start))
    if not file.blocks and not quiet:
        end = tokens[-2].end if len(tokens) > 1 else 0
        said.append(block_missing(Span(source.name, end, end)))
    return tuple(said)


def file_empty(span: Span) -> Diagnostic:
    """Nothing, or nothing but remarks."""
    return error("file-empty", "There is nothing in this file.", span,
                 help='Begin with `edition 1` and a block, as in `block "Plain Square" { finished 6in }`.')


def block_missing(span: Span) -> Diagnostic:
    """An edition and nothing more."""
    return error("block-missing", "There is no block in this file.", span,
                 help='Write a block, as in `block "Plain Square" { finished 6in }`.')


def edition_missing(span: Span) -> Diagnostic:
    """No `edition 1` at the top."""
    return warning("edition-missing", "The file does not say which edition of the language it is written in.", span,
                   help="Write `edition 1` on the first line.",
                   fix=Fix("Write `edition 1` at the top", Span(span.source, 0, 0), "edition 1\n\n"))


def edition_not_first(span: Span) -> Diagnostic:
    """`edition` after a block, within one, or twice."""
    return error("edition-not-first", "`edition` stands once, at the top of the file.", span, help="Take it away here.")


def stand_in(token: Token, inside: bool) -> list[Token]:
    """Words to open a body whose own opening words were given up, so that what it holds is still read."""
    made = (("TURN", "turn"), ("NUMBER", "2"), ("ABOUT", "about"), ("NAME", "center")) if inside else (
        ("BLOCK", "block"), ("STRING", '"untitled"'))
    return [Token(kind, text, token.start, token.start) for kind, text in made]


# ---- braces and statements --------------------------------------------------------------------------------


def brace_open(span: Span, opened: Span, count: int) -> Diagnostic:
    """The text or the block ends before its braces are closed."""
    missing = "A closing `}` is" if count == 1 else f"{count} closing `}}` are"
    return error("brace-open", f"{missing} missing here.", span, "here at the latest", help="Write `}`.",
                 related=(Label(opened, "this brace is never closed"),))


def brace_extra(span: Span) -> Diagnostic:
    """A closing brace that closes nothing."""
    return error("brace-extra", "This `}` closes nothing.", span, help="Take it away.",
                 fix=Fix("Take it away", span, ""))


def quilt_not_yet(span: Span) -> Diagnostic:
    """`quilt`."""
    return error("quilt-not-yet", "Quilts are a part of edition 1 that this compiler does not build yet.", span,
                 help="Keep the quilt in a file of its own; blocks work today.")


def washed_not_yet(span: Span) -> Diagnostic:
    """`washed`."""
    return error("washed-not-yet",
                 "Drafts from a washed quilt are a part of edition 1 that this compiler does not build yet.", span,
                 help="Give the block its sizes before washing, with `finished` and lengths you have worked out.")


def of_a_quilt(span: Span, word: str) -> Diagnostic:
    """`border` in a block."""
    return error("statement-of-quilt", f"`{word}` belongs in a quilt, not in a block.", span,
                 help="A block holds only what is pieced into it. Quilts are not built yet.")


def outside_block(span: Span, word: str) -> Diagnostic:
    """A statement before the first block or after the last."""
    return error("statement-outside", f"`{word}` stands outside any block.", span,
                 help='Put it inside the braces of a block, as in `block "Title" { ... }`.')


def statement_unknown(span: Span, token: Token, close: Sequence[str], inside: bool) -> Diagnostic:
    """A word that opens no statement."""
    where = "a statement" if inside else "a block"
    message = f"`{shown(token.text)}` does not begin {where}."
    if close:
        return error("statement-unknown", message, span, help=f"Did you mean {one_of(quoted(close))}?",
                     fix=Fix(f"Write `{close[0]}`", span, close[0]))
    known = ("Statements begin with a word such as `seam`, `point` or `piece`." if inside
             else 'A file is `edition 1`, then blocks: `block "Title" { ... }`.')
    return error("statement-unknown", message, span, help=known)


def unfinished(span: Span, opener: Token, before: Token, expected: Sequence[str]) -> Diagnostic:
    """A statement with a hole at its end."""
    return error("statement-unfinished",
                 f"This `{opener.text}` is not finished: after `{shown(before.text)}` comes {phrases(expected)}.",
                 span, "something is missing here", help="Finish it before the next statement begins.")


def comma_last(span: Span, expected: Sequence[str]) -> Diagnostic:
    """A list that ends with a comma."""
    return error("comma-last", f"After this comma comes {phrases(expected)}, but the statement ends.", span,
                 help="Finish the list, or take the comma away.", fix=Fix("Take it away", span, ""))


def use_without_as(span: Span) -> Diagnostic:
    """`use "Title"` alone."""
    return error("use-without-as", "`use` needs `as` and a name for the unit.", span, "it is missing here",
                 help='Write a name of your own, as in `use "Two-Triangle Square" as pair`.')


# ---- single words -----------------------------------------------------------------------------------------


def unit_missing(span: Span, kind: str, right: str) -> Diagnostic:
    """`finished 6`."""
    thing = "A length needs a unit" if kind == "LENGTH" else "An angle needs `deg`"
    return error("unit-missing", f"{thing}: did you mean `{right}`?", span, help=f"Write `{right}`.",
                 fix=Fix(f"Write `{right}`", span, right))


def unit_unwanted(span: Span, text: str, kind: str, right: str) -> Diagnostic:
    """`turn 4in about center`, `gate at 45in`."""
    thing = {"NUMBER": "a number without a unit", "LENGTH": "a length", "ANGLE": "an angle"}[kind]
    return error("unit-unwanted", f"Here comes {thing}, not `{shown(text)}`.", span,
                 help=f"Did you mean `{shown(right)}`?", fix=Fix(f"Write `{shown(right)}`", span, right))


def in_eaten(span: Span, number: str) -> Diagnostic:
    """`2 in dark` read as two inches."""
    return error("unit-eaten", f"`{shown(number)} in` reads as {shown(number)} inches.", span,
                 help=f"Write `{shown(number)}in in` for a length, and then `in`.")


def dash_other(span: Span, text: str, right: str) -> Diagnostic:
    """`A1 - B1`, `A1 -> B1`, `A1-B2` for a region."""
    return error("dash-other", f"`{shown(text)}` is written `{right}` here.", span, help=f"Write `{right}`.",
                 fix=Fix(f"Write `{right}`", span, right))


def dash_stray(span: Span, text: str) -> Diagnostic:
    """A dash where none is due."""
    return error("dash-stray", f"The `{shown(text)}` means nothing here.", span,
                 help="From point to point is written `--`; corners of a region `..`.")


def title_unquoted(span: Span, title: str, opener: str) -> Diagnostic:
    """`block Tidewater Vane {`."""
    return error("title-unquoted", f"The text after `{opener}` stands in quotes.", span,
                 help=f'Write `"{shown(title)}"`.', fix=Fix("Put it in quotes", span, f'"{title}"'))


def grid_point_small(span: Span, text: str, right: str) -> Diagnostic:
    """`b3` where a grid point is due."""
    return error("grid-point-small", f"Grid points have capital letters: `{right}`.", span,
                 help=f"Write `{right}`.", fix=Fix(f"Write `{right}`", span, right))


def word_capital(span: Span, text: str, right: str) -> Diagnostic:
    """`At` for `at`."""
    return error("word-capital", f"Words of the language are in small letters: `{right}`.", span,
                 help=f"Write `{right}`.", fix=Fix(f"Write `{right}`", span, right))


def name_is_grid_point(span: Span, text: str) -> Diagnostic:
    """`point B1 = center`."""
    return error("name-is-grid-point", f"`{shown(text)}` is a grid point and cannot be a name.", span,
                 help="Names are in small letters, as in `gate` or `inner-tip`.")


def plain_name(text: str) -> str:
    """The nearest word that can be a name."""
    made = re.sub(r"[^a-z0-9_]+", "-", text.lower()).strip("-0123456789_")
    return made if re.fullmatch(r"[a-z][a-z0-9_]*(-[a-z0-9_]+)*", made) else "name"


def name_odd(span: Span, text: str, right: str) -> Diagnostic:
    """`Gate`, `café`."""
    return error("name-letters", f"`{shown(text)}` cannot be a name: names are in small letters a to z.", span,
                 help=f"Write `{shown(right)}`. Digits, `_` and a single `-` may follow the first letter.",
                 fix=Fix(f"Write `{shown(right)}`", span, right))


def name_reserved(span: Span, word: str) -> Diagnostic:
    """`piece row at A1 in dark`."""
    return error("name-reserved", f"`{word}` is a word of the language and cannot be a name.", span,
                 help=f"Choose another name, for example `{word}-one`.")


def outline_first(span: Span) -> Diagnostic:
    """`seam outline -- A1`."""
    return error("outline-first", "A seam can run on to the outline, but cannot start from it.", span,
                 help="Start at a point and end with `-- outline`: a seam has no direction before its first point.")


def word_misspelt(span: Span, text: str, right: str) -> Diagnostic:
    """`abuot` for `about`."""
    return error("word-unknown", f"`{shown(text)}` cannot come here.", span, help=f"Did you mean `{right}`?",
                 fix=Fix(f"Write `{right}`", span, right))


# ---- left out, or too many --------------------------------------------------------------------------------


def comma_extra(span: Span) -> Diagnostic:
    """A comma after a whole statement, or before nothing."""
    return error("comma-extra", "No comma comes here.", span,
                 help="Commas stand between the things of a list; a statement needs none at its end.",
                 fix=Fix("Take it away", span, ""))


def left_out(span: Span, following: Span, opener: Token, missing: str, before: Token, after: Token) -> Diagnostic:
    """A small word or sign left out."""
    code = {"=": "equals-missing", "about": "about-missing", "as": "use-without-as"}.get(missing, "word-missing")
    message = f"`{missing}` is missing between `{shown(before.text)}` and `{shown(after.text)}`."
    return error(code, message, following, help=f"Write `{missing}` before `{shown(after.text)}`.",
                 fix=Fix(f"Write `{missing}`", span, f" {missing}"))


def bracket_open(span: Span, opened: Span) -> Diagnostic:
    """A bracket that the statement never closes."""
    return error("bracket-open", "A closing `)` is missing here.", span, help="Write `)`.",
                 related=(Label(opened, "this bracket is never closed"),))


def bracket_extra(span: Span) -> Diagnostic:
    """A closing bracket that closes nothing."""
    return error("bracket-extra", "This `)` closes nothing.", span, help="Take it away.",
                 fix=Fix("Take it away", span, ""))


def unexpected(source: Source, span: Span, before: Token, token: Token, expected: Sequence[str]) -> Diagnostic:
    """Anything else that cannot come where it stands."""
    found = f"`{shown(token.text)}`" if token.text else "the end of the file"
    wanted = phrases(expected)
    if span.start == 0 or before is token:
        return error("word-unexpected", f"{found[:1].upper() + found[1:]} cannot come here.", span,
                     help=f"Here comes {wanted}.")
    return error("word-unexpected", f"{found[:1].upper() + found[1:]} cannot come after `{shown(before.text)}`.",
                 span, help=f"After `{shown(before.text)}` comes {wanted}." if count_of(1, wanted) else "")
