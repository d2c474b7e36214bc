"""The glossary: the terms that a booklet's own words use."""

from __future__ import annotations

import re
from collections.abc import Iterable

from ...words.pages.glossary import CAPTION, FORMS, GLOSSARY, MEANING, TERM, TITLE, meaning_words
from ...words.say import Say
from ..content import Chapter, Column, Row, Table


def glossary_chapter(words: Iterable[str], say: Say) -> Chapter:
    """The terms that the words use."""
    text = " ".join(words).lower()
    rows = tuple(
        Row((term, meaning_words(say, term)), term)
        for term in GLOSSARY
        if re.search(rf"\b({FORMS.get(term, f'{term}(e?s)?')})(?!\w)", text)
    )
    columns = (Column(TERM, 110.0, bold=True), Column(MEANING, 0.0))
    return Chapter(TITLE, (Table(columns, rows, CAPTION, title=TITLE),), joins=True)
