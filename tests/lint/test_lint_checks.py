"""Habits of pattern files: what each check sees, what silences it, and what its mend writes."""

from __future__ import annotations

import pytest
from piecewright.diagnostics.diagnostic import Diagnostic
from piecewright.diagnostics.source import Source
from piecewright.language.parser import parse
from piecewright.language.shelf import Shelf
from piecewright.lint.checks import CHECKS, lint
from piecewright.lint.linted import Linted
from piecewright.lint.mending import mended
from piecewright.pipeline import compile_file
from support.check import DictShelf
from support.library import LibraryShelf, library_sources
from support.said import GOOD


def said(
    text: str, shelf: Shelf | None = None, name: str = "block.block", **asked: object
) -> tuple[Diagnostic, ...]:
    """What is said of a text that compiles."""
    source = Source(name, text)
    made, file = compile_file(source, shelf or DictShelf({})), parse(source).value
    assert made.value is not None and file is not None, made.diagnostics
    drafts = tuple(each.draft for each in made.value.blocks if not each.from_elsewhere)
    return lint(Linted(source, file, drafts, made.value.choices, made.diagnostics), **asked)  # type: ignore[arg-type]


def codes(text: str, shelf: Shelf | None = None, **asked: object) -> list[str]:
    """The checks that have something to say."""
    return [each.code for each in said(text, shelf, **asked)]


def after(text: str, shelf: Shelf | None = None) -> str:
    """The text with every mend."""
    return mended(text, said(text, shelf))[0]


def changed(old: str, new: str) -> str:
    """The good block with other words."""
    assert old in GOOD
    return GOOD.replace(old, new, 1)


@pytest.mark.parametrize("source", library_sources(), ids=lambda source: source.name)
def test_the_library_leaves_nothing_to_better(source: Source) -> None:
    assert codes(source.text, LibraryShelf(), name=source.name) == []


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("finished 6in", "finished 15.1cm", "size-off-ruler"),
        ("finished 6in", "grid 3 x 3 of 2.1in", "size-off-ruler"),
        ("finished 6in", "grid 3 x 3 of 2 1/32in x 2in", "size-off-ruler"),
        (
            "seam top -- bottom",
            "seam (0.25in from top-left to top) -- (1/4in from bottom-left to bottom)",
            "length-decimal",
        ),
        (
            "seam top -- bottom",
            "seam (1/8in from top-left to top) -- (1/8in from bottom-left to bottom)",
            "piece-all-allowance",
        ),
        ("seam top -- bottom", "seam (1/4in from top-left to top) -- bottom-left", "piece-all-allowance"),
        (
            "seam top -- bottom",
            "seam top-left ~~ top-right through (1/8in from top to bottom)",
            "piece-all-allowance",
        ),
    ],
)
def test_it_is_seen(old: str, new: str, code: str) -> None:
    assert code in codes(changed(old, new))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("finished 6in", "finished 15cm"),
        ("finished 6in", "finished 6 1/8in x 15.25cm"),
        ("seam top -- bottom", "seam (1.23in from top-left to top) -- (1.5cm from bottom-left to bottom)"),
        ("seam top -- bottom", "seam (3/8in from top-left to top) -- (3/8in from bottom-left to bottom)"),
        (
            "seam top -- bottom",
            "seam (3 1/16in from top-left to top) -- (3 1/16in from bottom-left to bottom)",
        ),
        (
            "seam top -- bottom",
            "seam (1/4in from top-left to top) -- (1/4in from bottom-left to bottom)\n  allowance 1/8in",
        ),
    ],
)
def test_what_is_well_is_left_alone(old: str, new: str) -> None:
    assert codes(changed(old, new)) == []


@pytest.mark.parametrize(("right", "left"), [("3in", "2.02in"), ("2.02in", "3in")])
def test_near_twins_are_seen_turned_and_mirrored(right: str, left: str) -> None:
    # A triangle with legs of 3in and 2in in one corner, of 3in and 2 1/50in in the one across.
    text = changed(
        "seam top -- bottom",
        (
            "seam (3in from top-left to top-right) -- (2in from top-left to bottom-left)\n"
            f"  seam ({left} from bottom-right to bottom-left) -- ({right} from bottom-right to top-right)"
        ),
    )
    assert codes(text) == ["template-near-twin"]


def test_a_remark_silences_its_line_or_the_statement_after_it() -> None:
    bare = GOOD.replace("  family strip\n", "").replace("finished 6in", "finished 6.3in")
    assert codes(bare) == ["family-missing", "size-off-ruler"]
    line = bare.replace("6.3in", "6.3in  # so it was: lint: allow size-off-ruler")
    assert codes(line) == ["family-missing", "size-off-ruler"]
    line = bare.replace("6.3in", "6.3in  # lint: allow size-off-ruler")
    assert codes(line) == ["family-missing"]
    whole = bare.replace("\nblock", "\n# lint: allow size-off-ruler, family-missing\n# A remark.\n\nblock")
    assert codes(whole) == []
    before = bare.replace("  finished", "  #lint:allow size-off-ruler\n  finished")
    assert codes(before) == ["family-missing"]
    assert codes(bare.replace("An example", "# lint: allow size-off-ruler")) == [
        "family-missing",
        "size-off-ruler",
    ]


def test_a_silence_for_nothing_is_told() -> None:
    text = changed("finished 6in", "finished 6in  # lint: allow size-off-ruler, sise-off-ruler")
    idle, unknown = said(text)
    assert (idle.code, unknown.code) == ("allow-idle", "allow-unknown")
    assert unknown.help == "Did you mean `size-off-ruler`?"
    assert codes(text, only=("family-missing",)) == ["allow-unknown"]


@pytest.mark.parametrize("name", CHECKS)
def test_each_check_can_be_asked_for_or_left_out_alone(name: str) -> None:
    text = (
        'block "Trial  Piece" {\n  finished 6.3in  also "trial  piece"\n'
        "  point idle = 1.5in from A1 to B1\n"
        "  seam (1/8in from top-left to top) -- (1/8in from bottom-left to bottom)\n}\n"
    )
    everything = set(codes(text))
    assert set(codes(text, only=(name,))) == everything & {name}
    assert set(codes(text, allowed=(name,))) == everything - {name}


def test_mends_write_what_was_meant() -> None:
    pair = changed("Trial", "Pair").replace("version 1", "version 4")
    shelf = DictShelf({"pair.block": pair})
    text = (
        'block "Trial " {\n  finished 6.50in\n  family strip  note "x"\n  also "Two", "trial ", "Two"\n'
        '  use "Pair" as pair\n  use "Pair" as idle\n  grid 1 x 1\n  row pair\n'
        "  point gone = center  # why\n  point left-over = top\n}\n"
    )
    once = after(after(text, shelf), shelf)  # the second repeated name stands in words that the first mends
    assert once == (
        'edition 1\n\nblock "Trial" version 1 {\n  finished 6 1/2in\n  family strip  note "x"\n  also "Two"\n'
        '  use "Pair" version 4 as pair\n  grid 1 x 1\n  row pair\n'
        "  # why\n}\n"
    )
    assert after(once, shelf) == once and codes(once, shelf) == []


def test_a_unit_that_a_covered_row_calls_is_told_of_and_its_use_kept() -> None:
    """Without its `use` the quilt would no longer compile."""
    text = """edition 1
block "Plank" version 1 { family strip  note "Own."  finished 4in  piece plank at center in dark }
block "Beam" version 1 { family strip  note "Own."  finished 4in  piece beam at center in dark }
quilt "Deck" version 1 {
  note "Own."
  use "Plank" as plank  use "Beam" as beam
  fabric dark
  set straight 1 across 1 down { row beam  place plank in A1..B2 }
  binding 2in in dark  backing in dark  batting
}
"""
    assert codes(text) == ["unit-unused"]
    assert after(text) == text
