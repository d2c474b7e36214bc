"""Numbers, lengths, angles, counts and texts: the written words to exact values, each within its bounds.

A value out of bounds is complained of and replaced by a harmless one, so that reading goes on.
Lengths are Fractions of an inch, angles Fractions of a degree.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Final

from ..diagnostics.diagnostic import Diagnostic
from ..diagnostics.source import Span
from ..diagnostics.visible import accents_joined
from ..measure.length import UNITS, exact_number
from ..words.messages import values as complain
from . import limits
from .tree import Angle, Count, GridPoint, Length, Name, Text

_DIGITS: Final = "0123456789"
_LETTERS_IN_ALPHABET: Final = 26


@dataclass(slots=True)
class Values:
    """Reads written values; `said` grows by every complaint."""

    said: list[Diagnostic] = field(default_factory=list)

    def number(self, words: str, span: Span) -> Fraction:
        """The exact number; 1 beside a complaint."""
        if len(words) > limits.NUMBER_LETTERS:
            self.said.append(complain.number_too_long(span, limits.NUMBER_LETTERS))
            return Fraction(1)
        value = exact_number(words)
        if value is None:
            self.said.append(complain.fraction_by_zero(span, words))
            return Fraction(1)
        return value

    def length(self, words: str, span: Span) -> Length:
        """The length in inches; 1in beside a complaint."""
        before = len(self.said)
        number, unit = words[:-2].rstrip(), words[-2:]
        inches = self.number(number, span) * UNITS[unit]
        if len(self.said) == before:
            self.said.extend(_length_bounds(span, words, inches))
        return Length(inches=inches if len(self.said) == before else Fraction(1), span=span)

    def angle(self, words: str, span: Span) -> Angle:
        """The angle in degrees; 90deg beside a complaint."""
        before = len(self.said)
        degrees = self.number(words.removesuffix("deg").rstrip(), span)
        if abs(degrees) > limits.ANGLE_MOST:
            self.said.append(complain.angle_too_large(span, words, limits.ANGLE_MOST))
        return Angle(degrees=degrees if len(self.said) == before else Fraction(90), span=span)

    def share(self, words: str, span: Span) -> Fraction:
        """`3%` as 3/100; nothing beside a complaint."""
        before = len(self.said)
        number = self.number(words.removesuffix("%").rstrip(), span)
        if len(self.said) == before:
            self.said.extend(_share_bounds(span, words, number))
        return number / 100 if len(self.said) == before else Fraction(0)

    def count(self, words: str, span: Span, counted: complain.Counted, least: int, most: int) -> Count:
        """A whole number of things between the bounds; the lower bound beside a complaint."""
        before = len(self.said)
        value = self.number(words, span)
        if len(self.said) == before:
            self.said.extend(_count_bounds(span, words, value, counted, least, most))
        return Count(value=int(value) if len(self.said) == before else least, span=span)

    def parts(self, numbers: list[tuple[str, Span]]) -> tuple[Fraction, ...]:
        """`4` as four equal parts, `1:2:1` as parts in proportion."""
        if len(numbers) == 1:
            count = self.count(*numbers[0], "grid-parts", 1, limits.GRID_LINES)
            return (Fraction(1),) * count.value
        before = len(self.said)
        parts = tuple(self.number(words, span) for words, span in numbers)
        for value, (words, span) in zip(parts, numbers, strict=True):
            if value <= 0:
                self.said.append(complain.part_not_positive(span, words))
        if len(parts) > limits.GRID_LINES:
            first, last = numbers[0][1], numbers[-1][1]
            self.said.append(
                complain.parts_too_many(
                    Span(first.source, first.start, last.end), len(parts), limits.GRID_LINES
                )
            )
        return parts if len(self.said) == before else (Fraction(1), Fraction(1))

    def grid_point(self, words: str, span: Span) -> GridPoint:
        """Column and row; A1 beside a complaint."""
        column = words.rstrip(_DIGITS)
        row = words[len(column) :]
        if not row.strip("0"):
            self.said.append(complain.row_zero(span, words, column))
        elif row.startswith("0"):
            self.said.append(complain.row_leading_zero(span, column + row.lstrip("0")))
        elif (
            len(words) > limits.NUMBER_LETTERS
            or max(int(row), _column_number(column)) > limits.GRID_LINES + 1
        ):
            self.said.append(complain.grid_point_far(span, limits.GRID_LINES))
        else:
            return GridPoint(column=column, row=int(row), span=span)
        return GridPoint(column="A", row=1, span=span)

    def name(self, words: str, span: Span) -> Name:
        """The name; complained of where it is longer than any column."""
        if len(words) > limits.NAME_LETTERS:
            self.said.append(complain.name_too_long(span, len(words), limits.NAME_LETTERS))
            words = words[: limits.NAME_LETTERS]
        return Name(text=words, span=span)

    def text(self, words: str, span: Span) -> Text:
        """Quoted text without its quotes and escapes."""
        letters: list[str] = []
        at, inside = 0, words[1:-1]
        if "\\" not in inside and "\t" not in inside:
            return Text(text=inside, span=span)
        while at < len(inside) and len(self.said) <= limits.ERRORS:
            if inside[at] == "\\":
                if inside[at + 1] not in '"\\':
                    place = Span(span.source, span.start + 1 + at, span.start + 3 + at)
                    self.said.append(complain.text_escape(place, inside[at : at + 2]))
                at += 1
            elif inside[at] == "\t":
                place = Span(span.source, span.start + 1 + at, span.start + 2 + at)
                self.said.append(complain.text_tab(place))
            letters.append(inside[at])
            at += 1
        return Text(text="".join(letters), span=span)

    def title(self, text: Text) -> Text:
        """A title: not empty, and short enough to print."""
        text = _joined(text)
        if not text.text.strip():
            self.said.append(complain.title_empty(text.span))
        elif len(text.text) > limits.TITLE_LETTERS:
            self.said.append(complain.title_too_long(text.span, len(text.text), limits.TITLE_LETTERS))
        return text

    def maker(self, text: Text) -> Text:
        """A maker's name, as long as a title."""
        text = _joined(text)
        if text.text.strip() and len(text.text) > limits.TITLE_LETTERS:
            self.said.append(complain.maker_too_long(text.span, len(text.text), limits.TITLE_LETTERS))
            return text
        return self.remark(text)

    def remark(self, text: Text) -> Text:
        """A note: not empty, and within its bound."""
        if not text.text.strip():
            self.said.append(complain.text_empty(text.span))
        elif len(text.text) > limits.NOTE_LETTERS:
            self.said.append(complain.text_too_long(text.span, len(text.text), limits.NOTE_LETTERS))
        return text


def _length_bounds(span: Span, words: str, inches: Fraction) -> Iterator[Diagnostic]:
    """A complaint about a length that is zero, negative, or beyond what anyone could cut; or nothing."""
    if inches == 0:
        yield complain.length_zero(span, words)
    elif inches < 0:
        yield complain.length_negative(span, words)
    elif inches > limits.LENGTH_MOST:
        yield complain.length_too_large(span, words, limits.LENGTH_MOST)
    elif inches < limits.LENGTH_LEAST:
        yield complain.length_too_small(span, words, limits.LENGTH_LEAST)


def _share_bounds(span: Span, words: str, number: Fraction) -> Iterator[Diagnostic]:
    """A complaint about a share below nothing or far above the whole; or nothing."""
    if number < 0:
        yield complain.share_negative(span, words)
    elif number > limits.SHARE_MOST:
        yield complain.share_of_many(span, words)


def _count_bounds(
    span: Span, words: str, value: Fraction, counted: complain.Counted, least: int, most: int
) -> Iterator[Diagnostic]:
    """A complaint about a count that is not whole or out of its bounds; or nothing."""
    if value.denominator != 1:
        yield complain.count_not_whole(span, words, counted)
    elif value < least:
        yield complain.count_too_small(span, words, counted, least)
    elif value > most:
        yield complain.count_too_large(span, words, counted, most)


def _joined(text: Text) -> Text:
    """The same with accents joined to their letters."""
    return replace(text, text=accents_joined(text.text))


def _column_number(letters: str) -> int:
    """A is 1, Z is 26, AA is 27."""
    number = 0
    for letter in letters[: limits.NUMBER_LETTERS]:
        number = number * _LETTERS_IN_ALPHABET + ord(letter) - ord("A") + 1
    return number
