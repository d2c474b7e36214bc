"""What a caller may choose of how things are cut, drawn and sewn, and how choices are written in words."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import field, replace
from fractions import Fraction
from typing import TYPE_CHECKING, Any, Final, Literal, TypedDict, get_args

from ..diagnostics.visible import accents_joined, shortened
from ..failures import WrongUse
from ..measure.length import UNITS, exact_number
from ..measure.marks import metric
from ..measure.record import record
from ..sheets.paper import NAMES as PAPERS
from ..sheets.paper import Paper
from ..words.commands import asked
from ..words.say import INCHES, Say

if TYPE_CHECKING:
    from ..cutting.needs import SizedBlock
    from ..pipeline import CompiledBlock
    from ..planning import Cutting
    from ..sheets.arrange.options import SheetOptions

__all__ = ["PAPERS", "Cutting"]

LENGTH: Final = re.compile(r"\s*(\d+(?:\.\d+)?|\d+/\d+|\d+ \d+/\d+)\s*(in|cm|mm)\s*")
SHARE: Final = re.compile(r"\s*(\d+(?:\.\d+)?|\d+/\d+|\d+ \d+/\d+)\s*%\s*")
RULERS: Final = ("1/8in", "1/16in", "1/4in", "0.25cm", "1mm", "2.5mm", "5mm")
"""What rulers for rotary cutters are marked in; 0.25cm and 2.5mm are one."""

USUAL_RULERS: Final = {"in": "1/8in", "cm": "2.5mm"}
"""What a ruler is marked in that nobody named."""

WRITTEN: Final = re.compile(r'"(?:[^"\\\n]|\\.)*"|#[^\n]*')
METRIC: Final = re.compile(r"(?<![A-Za-z])\d+(?:cm|mm)\b")
INCH: Final = re.compile(r"(?<![A-Za-z])\d+in\b")
"""Lengths as a file writes them; `C2 in dark` is none."""
MOST_SHARE: Final = Fraction(1)  # of a margin: more than twice the cloth is no margin
MOST_MARGIN: Final = Fraction(72)  # inches: two yards
DPI_LEAST: Final = 36
DPI_MOST: Final = 1200
LONGEST: Final = 40  # letters of a length: more is no length that a person means
LONGEST_WAY: Final = 60  # letters of a way of sewing in a message

Kind = Literal["allowance", "finished", "window"]
Lines = Literal["cut-solid", "cut-dashed"]
Sold = Literal["yards", "metres"]
Units = Literal["in", "cm"]
Way = Literal["templates", "foundation", "papers"]

KINDS: Final[tuple[Kind, ...]] = get_args(Kind)
LINES: Final[tuple[Lines, ...]] = get_args(Lines)
SOLD: Final[tuple[Sold, ...]] = get_args(Sold)
UNIT_WORDS: Final[tuple[Units, ...]] = get_args(Units)
WAYS: Final[tuple[Way, ...]] = get_args(Way)  # those of sheets.work
MARKS: Final = {"square": Fraction(1), "bar": Fraction(250, 127)}
"""Inches of the two marks that a page is checked by: the 1in square and the 5cm bar."""

NEARLY: Final = Fraction(1, 10)
"""Of a mark: a length no further from it was measured on it. Printers are out by up to a twentieth (common
practice, no published source); a length further from both might be of either, so the user is asked."""


class Choices(TypedDict, total=False):
    """What may be chosen when something is compiled. All of it may be left out.

    `paper`: 'letter', 'a4' or another that `piecewright build --help` lists. `units`: 'in' or 'cm', in which
    everything is told; left out, those of the ruler, else those that the file is written in. `kind`:
    templates with seam 'allowance', 'finished' size, or a 'window'. `lines`: 'cut-solid' or 'cut-dashed'.
    `measured`: what the 1in check square of an earlier print measured, '0.97in', or the 5cm bar, 'bar=4.9cm'.
    `ruler`: the step between its marks, '1/8in', '1/16in', '1/4in', '1mm', '2.5mm' or '5mm'. `margin`: cloth
    over what the plan takes, '5%' or '3in'. `buy`: 'yards' or 'metres'. `sewing`: a way for all blocks,
    'templates', 'foundation' or 'papers', or a way by each block's title ('' stands for all others).
    `blocks`: the titles of the blocks that are wanted, where not all are.
    """

    paper: Paper
    kind: Kind
    lines: Lines
    measured: str
    ruler: str
    units: Units
    margin: str
    buy: Sold
    sewing: Way | Mapping[str, Way]
    blocks: Sequence[str]


@record
class Sewing:
    """How each block is to be sewn: the last word for a title counts. `met`: titles that a block had."""

    ways: tuple[tuple[str, str], ...] = ()
    met: dict[str, bool] = field(default_factory=dict)

    def way_for(self, block: CompiledBlock | SizedBlock) -> Any:
        """The way for a block: by its title or another of its names, else that for all, else templates."""
        names = {name.casefold() for name in (block.draft.title, *block.draft.also)}
        own = [way for title, way in self.ways if title.casefold() in names]
        self.met.update({title: True for title, _ in self.ways if title.casefold() in names})
        return (own or [way for title, way in self.ways if not title] or ["templates"])[-1]

    def on_paper(self, block: SizedBlock) -> bool:
        """Whether a block of a quilt is to be cut for foundations and sewn on them."""
        return bool(self.way_for(block) == "foundation")

    @property
    def unmet(self) -> list[str]:
        """The titles that no block had."""
        return [title for title, _ in self.ways if title and title not in self.met]


@record
class Chosen:
    """The same, understood."""

    options: SheetOptions
    cutting: ToCut
    sewing: Sewing
    titles: tuple[str, ...] = ()


def understood(choices: Choices) -> Chosen:
    """The choices; WrongUse where one of them is none, with the choices that there are."""
    known = Choices.__annotations__
    for name in choices:
        if name not in known:
            raise WrongUse(asked.choice_unknown(shown(name), known))
    paper: Paper = one_of(choices, "paper", PAPERS)
    kind: Kind = one_of(choices, "kind", KINDS)
    lines: Lines = one_of(choices, "lines", LINES)
    buy: Sold | None = one_of(choices, "buy", SOLD) if "buy" in choices else None
    measured = measured_square(choices["measured"]) if "measured" in choices else None
    margin = margin_of(choices["margin"]) if "margin" in choices else None
    ruler = ruler_step(choices["ruler"]) if "ruler" in choices else None
    units: Units | None = one_of(choices, "units", UNIT_WORDS) if "units" in choices else None
    given = choices.get("sewing", "templates")
    ways = {"": given} if isinstance(given, str) else given
    sewing = Sewing(tuple((accents_joined(title), way_named(way)) for title, way in ways.items()))
    titles = choices.get("blocks", ())
    if isinstance(titles, str):
        raise WrongUse(asked.blocks_no_list())
    options = sheet_options(paper, kind, lines, measured)
    return Chosen(options, cutting_of(ruler, units, margin, buy, sewing), sewing, tuple(titles))


def one_of(choices: Choices, name: str, known: tuple[str, ...]) -> Any:
    """A choice among a few words; the first where nothing was chosen."""
    return among(choices.get(name, known[0]), known)


def among(value: Any, known: Sequence[str]) -> Any:
    """The value; WrongUse where it is none of a few words."""
    if value not in known:
        raise WrongUse(asked.not_one_of(shown(value), known))
    return value


def all_among(given: str | Sequence[str], known: Sequence[str]) -> tuple[str, ...]:
    """The words, or the one word, each once; WrongUse for one that there is not."""
    return tuple(dict.fromkeys(among(each, known) for each in ([given] if isinstance(given, str) else given)))


def shown(value: object) -> str:
    """A value in a message."""
    return shortened(str(value), LONGEST)


def sheet_options(paper: Paper, kind: Kind, lines: Lines, measured: Fraction | None) -> SheetOptions:
    """How sheets are to be made."""
    from ..sheets.arrange.options import SheetOptions

    return SheetOptions(paper=paper, kind=kind, lines=lines, measured=measured or Fraction(1))


@record
class ToCut:
    """How quilts are to be cut and told, as far as it was chosen; the rest follows from the file."""

    ruler: Fraction | None = None
    units: Units | None = None
    margin: tuple[Fraction, Fraction] | None = None
    buy: Sold | None = None
    sewing: Sewing | None = None

    def for_text(self, text: str) -> Cutting:
        """The same for a file: in the units chosen, else those of the ruler chosen, else those that the file
        is written in; by the ruler chosen, else the usual one of those units."""
        from ..cutting.plans.yardage import Margin
        from ..planning import Cutting

        units = self.units or (units_of(self.ruler) if self.ruler else units_written(text))
        ruler = self.ruler or ruler_step(USUAL_RULERS[units])
        margin = Margin(*self.margin, sold=self.buy) if self.margin else Margin(sold=self.buy)
        cutting = Cutting(ruler, margin, say=Say(units, ruler, strictly=self.units is not None))
        return replace(cutting, on_paper=self.sewing.on_paper) if self.sewing else cutting


def cutting_of(
    ruler: Fraction | None,
    units: Units | None,
    margin: tuple[Fraction, Fraction] | None = None,
    buy: Sold | None = None,
    sewing: Sewing | None = None,
) -> ToCut:
    """How quilts are to be cut; WrongUse where the ruler is marked in other units than all is told in."""
    if ruler is not None and units is not None and units_of(ruler) != units:
        raise WrongUse(asked.ruler_of_other_units(units))
    return ToCut(ruler, units, margin, buy, sewing)


def units_of(ruler: Fraction) -> Units:
    """What a ruler is marked in."""
    return "cm" if metric(ruler) else "in"


def units_written(text: str) -> Units:
    """The units that a file is written in: centimetres where it has those, or millimetres, and no inch."""
    words = WRITTEN.sub("", text)
    return "cm" if METRIC.search(words) and not INCH.search(words) else "in"


# ---- words ------------------------------------------------------------------------------------------------


def length_of(value: str, examples: str = asked.LENGTHS) -> Fraction:
    """A length with its unit, `0.97in`, `15/16in`, `2.46cm`, in exact inches."""
    found = LENGTH.fullmatch(value) if len(value) <= LONGEST else None
    number = exact_number(found[1]) if found else None
    if found is None or number is None:
        raise WrongUse(asked.no_length(value[:LONGEST], examples))
    return number * UNITS[found[2]]


def ruler_step(value: str) -> Fraction:
    """The step between a ruler's marks, one of RULERS, in exact inches."""
    step = length_of(value)
    if step not in map(length_of, RULERS):
        raise WrongUse(asked.not_one_of(value[:LONGEST], RULERS))
    return step


def margin_of(value: str) -> tuple[Fraction, Fraction]:
    """Cloth over what the plan takes, `5%` or `3in`: the share of the length and the least length in inches,
    one of them 0."""
    found = SHARE.fullmatch(value) if len(value) <= LONGEST else None
    number = exact_number(found[1]) if found else None
    share, least = Fraction(0), Fraction(0)
    if number is not None:
        share = number / 100
    else:
        least = length_of(value, asked.MARGINS)
    if share > MOST_SHARE or least > MOST_MARGIN:
        raise WrongUse(asked.margin_too_large(INCHES, MOST_SHARE, MOST_MARGIN))
    return share, least


def measured_square(value: str) -> Fraction:
    """A length measured on a mark as what the inch square would have measured, in inches."""
    return square_measured(measured_mark(value))


def measured_mark(value: str) -> tuple[str, Fraction]:
    """A length measured on a mark, which may be named, `0.97in`, `bar=4.9cm`: the mark, '' where it is not
    named, and inches."""
    mark, _, length = value.rpartition("=")
    if mark.strip().lower() not in ("", *MARKS):
        raise WrongUse(asked.not_one_of(mark[:LONGEST], MARKS))
    return mark.strip().lower(), length_of(length.strip())


def square_measured(measured: tuple[str, Fraction]) -> Fraction:
    """What the inch square would have measured, in inches; WrongUse where no printer is that far out, and
    a question where it is not plain which of the two marks was measured."""
    from ..sheets.arrange.options import LEAST_MEASURED, MOST_MEASURED

    mark, length = measured
    shares = {each: length / true for each, true in MARKS.items() if mark in (each, "")}
    likely = [share for share in shares.values() if LEAST_MEASURED <= share <= MOST_MEASURED]
    if not likely:
        raise WrongUse(asked.measured_too_far())
    if mark or any(abs(share - 1) <= NEARLY for share in likely):
        return likely[0]
    raise WrongUse(asked.which_mark(shares, MARKS))


def way_named(way: str) -> Way:
    """A way of sewing by its name."""
    for each in WAYS:
        if way.strip().lower() == each:
            return each
    raise WrongUse(asked.not_one_of(way.strip()[:LONGEST_WAY], WAYS))


def sewing_way(value: str) -> tuple[str, Way]:
    """A way of sewing, for all blocks or one, `foundation`, `Log Cabin=foundation`: the title, '' for all,
    and the way."""
    title, _, way = value.rpartition("=")
    return accents_joined(title.strip()), way_named(way)
