"""What the writer meant at a word that cannot come where it stands.

In: the situation: the tokens, the place of the word, the states of the grammar before it. Out: what to say,
and, where what was meant is plain, the tokens to read instead. Each kind of mistake is one function in
MENDINGS, tried in turn. A mending is proposed only where the grammar then takes the next few tokens, so that
one mistake gives one message.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from ..words.messages.expected import word_unexpected
from . import mend_quilts, mend_signs, mend_statements, mend_words
from .situation import Mending, Situation

MENDINGS: Final[tuple[Callable[[Situation], Mending | None], ...]] = (
    mend_statements.mend_open_brace,
    mend_statements.mend_extra_brace,
    mend_statements.mend_foreign_opener,
    mend_quilts.mend_in_eaten,
    mend_quilts.mend_missing_percent,
    mend_quilts.mend_set_counts,
    mend_quilts.mend_set_kind,
    mend_quilts.mend_several_words,
    mend_quilts.mend_fabric_facts,
    mend_quilts.mend_needless_word,
    mend_quilts.mend_border,
    mend_quilts.mend_width_first,
    mend_quilts.mend_other_parts,
    mend_quilts.mend_colon,
    mend_words.mend_dash,
    mend_words.mend_missing_unit,
    mend_words.mend_unwanted_unit,
    mend_words.mend_unquoted_title,
    mend_statements.mend_missing_title,
    mend_statements.mend_unknown_statement,
    mend_words.mend_outline_first,
    mend_signs.mend_open_bracket,
    mend_signs.mend_missing_brackets,
    mend_statements.mend_hole,
    mend_words.mend_reserved_name,
    mend_statements.mend_missing_words,
    mend_words.mend_odd_word,
    mend_signs.mend_extra_comma,
    mend_signs.mend_extra_bracket,
    mend_words.mend_other_word,
    mend_signs.mend_left_out,
)
"""Every kind of mistake, the surest first."""


def explain(place: Situation) -> Mending:
    """What is wrong at a place, and how to go on."""
    for mending in MENDINGS:
        found = mending(place)
        if found is not None:
            return found
    token, before = place.token, place.before
    span, after = place.span(token), "" if before is token else before.text
    return Mending(word_unexpected(span, token.text, after, place.expected))
