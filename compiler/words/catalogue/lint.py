"""Catalogue entries for `piecewright lint`: habits of pattern files that are good to read and to keep."""

from __future__ import annotations

from typing import Final

from .entry import Entry

GOOD: Final = """\
edition 1

block "Trial" version 1 {
  finished 6in
  family strip
  note "An example."
  seam top -- bottom
}
"""
"""A block about which no check has anything to say."""


def _entry(code: str, title: str, explanation: str, good: str, bad: str, text: str = GOOD) -> Entry:
    """An entry whose wrong example has `bad` where the right one has `good`."""
    assert good in text, code
    return Entry(code, title, explanation, text.replace(good, bad, 1), text)


LINT: Final = (
    _entry(
        "family-missing",
        "A block without a family",
        "A library is searched by family, as in star, nine-patch or basket. Write `family` and the words "
        "that you would look for.",
        "  family strip\n",
        "",
    ),
    _entry(
        "maker-missing",
        "Nobody knows where a block comes from",
        "Neither a `maker` nor a `note` tells who drafted the block, or where its name comes from. In a "
        "year nobody remembers.",
        '  note "An example."\n',
        "",
    ),
    _entry(
        "version-missing",
        "A block or quilt without a version",
        "A version that is left out is 1. Written down, it is seen and raised when outlines change, and "
        "whoever uses the block can say which one is meant.",
        '"Trial" version 1',
        '"Trial"',
    ),
    Entry(
        "use-unversioned",
        "A `use` that takes the newest version",
        "The newest version of the block is used, whichever that is when the file is built. Another "
        "version may have other outlines. Say which one is meant, or pin it with `piecewright lock`. Uses "
        "of blocks in the "
        "same file need no version.",
    ),
    _entry(
        "title-blanks",
        "A title with blanks that nobody sees",
        "The title begins or ends with a blank, or has two together. A `use` that spells it as it looks "
        "does not find it.",
        '"Trial"',
        '"Trial "',
    ),
    _entry(
        "also-repeats",
        "Another name that is not another",
        "A name after `also` is the block's own title, or stands there twice. Capitals make no other name.",
        'also "Trial Two"',
        'also "Trial Two", "TRIAL"',
        GOOD.replace("  seam", '  also "Trial Two"\n  seam'),
    ),
    _entry(
        "size-off-ruler",
        "A size that no ruler marks",
        "The size of the block, or of a cell of its grid, is neither a whole number of eighths of an inch "
        "nor of quarters of a centimetre. What is cut by it falls between two marks of the ruler.",
        "finished 6in",
        "finished 6.3in",
    ),
    _entry(
        "length-decimal",
        "Inches written as a decimal",
        "A ruler shows a quarter inch as 1/4, not as 0.25. A length in inches that is a whole number of "
        "32nds is easier to read as a fraction.",
        "finished 6 1/2in",
        "finished 6.5in",
        GOOD.replace("6in", "6 1/2in"),
    ),
    _entry(
        "piece-all-allowance",
        "A piece that is all seam allowance",
        "The piece is nowhere wider than the seam allowance that lies behind it from each side. Such a "
        "piece is thick, ravels, and cannot be pressed. A narrow fold of cloth, sewn into the seam, looks "
        "the same.",
        "seam top -- bottom",
        "seam (1/8in from top-left to top) -- (1/8in from bottom-left to bottom)",
    ),
    _entry(
        "template-near-twin",
        "Two templates that are nearly one",
        "Two templates differ by less than 1/32in. Their pieces get mixed up, and each is sewn where the "
        "other belongs. Mostly one shape is meant, and a point is a little off: a third of the way "
        "written as a decimal, for one.",
        "seam top -- bottom",
        "seam (3.01in from top-left to top) -- (3.01in from bottom-left to bottom)",
    ),
    _entry(
        "allow-unknown",
        "A silence of a check that does not exist",
        "`# lint: allow` names a check. This name is none; `piecewright lint --list` has them all.",
        "  note",
        "  # lint: allow famly-missing\n  note",
    ),
    _entry(
        "allow-idle",
        "A silence that silences nothing",
        "`# lint: allow` names a check that has nothing to say here any more, or not here. Take it away, "
        "so that it hides nothing later.",
        "  note",
        "  # lint: allow family-missing\n  note",
    ),
)
