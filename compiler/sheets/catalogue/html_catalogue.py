"""The catalogue as one HTML page, with a search that needs nothing but the page."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from ...searching.block_facts import FOUNDATION, METHODS, ROTARY, SYMMETRIES, BlockFacts
from ...searching.finding import words_of
from ...words.pages import catalogue as words
from ...words.phrases import count_of
from ..arrange.style import lettering
from ..drawing.draw_svg import inline_svg
from ..reports.find_table import same_text
from ..setting.html_template import STYLE
from .catalogue_template import CATALOGUE_STYLE, PAGE, SCRIPT
from .entries import Entry, borne, in_order, numbers_of, picture_of, titled

SIDE: Final = 132.0  # points of a picture's longer side: 11/6in
EDGE: Final = 2.0  # about it, so that the lines on its border are drawn whole


def catalogue_html(entries: Sequence[Entry], title: str) -> bytes:
    """The catalogue as a page of HTML, UTF-8. The same entries give the same bytes."""
    from jinja2 import Environment, StrictUndefined
    from markupsafe import Markup

    ordered = in_order(entries)
    names = borne(ordered)
    shared = {name: found for name, found in names.items() if len({each.facts.title for each in found}) > 1}
    world = Environment(autoescape=True, undefined=StrictUndefined, keep_trailing_newline=True)
    text = world.from_string(PAGE).render(
        words=words,
        title=title,
        count=count_of(len(ordered), "block"),
        style=Markup(STYLE + CATALOGUE_STYLE),
        script=Markup(SCRIPT.replace("FOUND_OF_BLOCKS", words.found_of("${found}", "${blocks.length}"))),
        methods=METHODS,
        symmetries=SYMMETRIES,
        families=sorted({family for entry in ordered for family in entry.facts.family}),
        entries=[_shown(number, entry, shared) for number, entry in enumerate(ordered, 1)],
    )
    return text.encode()


def _shown(number: int, entry: Entry, shared: dict[str, list[Entry]]) -> dict[str, Any]:
    from markupsafe import Markup

    facts = entry.facts
    marks = picture_of(entry.draft, SIDE, SIDE)
    box = (-EDGE, -EDGE, SIDE + EDGE, SIDE + EDGE)
    return {
        "id": f"block-{number}",
        "title": titled(facts),
        "also": facts.also,
        "names": "|".join(" ".join(words_of(name)) for name in facts.names),
        "family": " ".join(facts.family),
        "families": ", ".join(facts.family),
        "pieces": facts.pieces,
        "methods": " ".join(facts.methods),
        "symmetries": " ".join(facts.symmetries),
        "svg": Markup(inline_svg(marks, box, words.picture_words(facts.title), f"picture-{number}")),
        "lines": _lines(facts),
        "notes": facts.notes,
        "shelf": entry.shelf,
        "shared": [
            (name, ", ".join(each.facts.title for each in found if each is not entry))
            for name, found in shared.items()
            if entry in found
        ],
    }


def _lines(facts: BlockFacts) -> list[str]:
    """The block in numbers, and how it can be made."""
    made = words.made_words(ROTARY in facts.methods, FOUNDATION in facts.methods, same_text(facts))
    return [lettering(" · ".join(numbers_of(facts))), made]
