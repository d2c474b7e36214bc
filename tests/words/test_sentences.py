"""Every sentence that a person reads stands in compiler/words: nobody else writes one."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import pytest
from support.sentences import is_sentence, sentences_in

COMPILER: Final = Path(__file__).parent.parent.parent / "compiler"
LEFT: Final = Path(__file__).with_name("sentences_left.txt")
"""How many sentences a module still has that is to be emptied. A number only falls, and a module only goes;
one that is moved takes its number along. `pytest tests/words/test_sentences.py --update` counts anew."""

NOT_WORDS: Final = {
    "shelves/repository.py": {"[core]": "a configuration of git's"},
    "door/records/quilt.py": {"one way": "a value in JSON, not shown"},
    "door/regenerate.py": {
        "# Piecewright": "a page written for readers of API.md",
        "## The": "of that page",
        "(in JSON": "of that page",
    },
    "language/regenerate.py": {"# ruff": "the head of a generated module, read by maintainers"},
    "sheets/setting/html_template.py": {":root {": "styles"},
    "sheets/catalogue/catalogue_template.py": {"body {": "styles", '"use strict"': "a script"},
    "sheets/drawing/ink.py": {"Cut 3": "set and measured, never shown"},
    "sheets/drawing/draw_svg.py": {"'": "names of typefaces"},
    "sheets/drawing/typeface.py": {"Source Sans Pro": "the name of a typeface"},
}
"""Strings that no person reads, by how they begin, and what they are."""


def written() -> dict[str, list[tuple[int, str]]]:
    """The sentences of every module that has some, and is none of words."""
    found = {}
    for path in sorted(COMPILER.rglob("*.py")):
        name = path.relative_to(COMPILER).as_posix()
        if not name.startswith("words/"):
            known = tuple(NOT_WORDS.get(name, ()))
            sentences = [
                each for each in sentences_in(path) if not each[1].lstrip().startswith(known or "\0")
            ]
            if sentences:
                found[name] = sentences
    return found


def table(found: dict[str, list[tuple[int, str]]]) -> str:
    """What `sentences_left.txt` has to say."""
    return "".join(f"{name} {len(sentences)}\n" for name, sentences in found.items())


def test_no_sentence_is_written_outside_words(request: pytest.FixtureRequest) -> None:
    found = written()
    if request.config.getoption("--update"):
        LEFT.write_text(table(found))
    left = {name: int(count) for name, count in map(str.split, LEFT.read_text().splitlines())}
    for name, sentences in found.items():
        listed = "\n".join(f"{name}:{line}: {text[:80]!r}" for line, text in sentences)
        assert len(sentences) <= left.get(name, 0), f"put these into compiler/words:\n{listed}"
    assert left == {name: len(each) for name, each in found.items()}, "it is less by now: lower the number"


def test_what_is_no_sentence_is_there() -> None:
    for name, known in NOT_WORDS.items():
        texts = [text.lstrip() for _, text in sentences_in(COMPILER / name)]
        for beginning in known:
            assert any(text.startswith(beginning) for text in texts), (name, beginning)


@pytest.mark.parametrize("text", ["Take it away.", "in their seams", "`\ufffc` is no side", "<p>no family"])
def test_a_sentence_is_known(text: str) -> None:
    assert is_sentence(text)


@pytest.mark.parametrize(
    "text",
    ["half-square", "\ufffc x \ufffc", "M 0 0 L 1 1 Z", '<g class="seam line">', "{% if one of %}"],
)
def test_what_a_program_reads_is_no_sentence(text: str) -> None:
    assert not is_sentence(text)


def test_docstrings_patterns_and_assertions_are_passed_over(tmp_path: Path) -> None:
    module = tmp_path / "trial.py"
    module.write_text(
        '"""A module of our own."""\nimport re\nNAME = re.compile("two words")\n'
        'def made(count: "list [int]") -> str:\n    """Says how many."""\n'
        '    assert count, "there is one"\n    return f"take {count} pages"\n'
    )
    assert [line for line, _ in sentences_in(module)] == [7]
