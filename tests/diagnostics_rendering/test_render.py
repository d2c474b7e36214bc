"""How a diagnostic is shown: to people with carets, on one line, as GitHub's annotations, as JSON."""

from __future__ import annotations

import json
from unicodedata import east_asian_width

import pytest
from piecewright.diagnostics.as_json import as_json, as_record
from piecewright.diagnostics.diagnostic import Diagnostic, Fix, Label, error, note, warning
from piecewright.diagnostics.render import Style, render
from piecewright.diagnostics.source import Source, Span

VANE = 'edition 1\nblock "Vane" {\n  finished 6in\n  seam center -- gate\n}\n'


def found(
    source: Source,
    words: str,
    *,
    message: str = "This seam ends inside a piece.",
    label: str = "",
    **rest: object,
) -> Diagnostic:
    """An error about the first place of some words."""
    start = source.text.index(words)
    place = Span(source.name, start, start + len(words))
    return error("seam-hangs", message, place, label, **rest)  # type: ignore[arg-type]


def shown(source: Source, diagnostic: Diagnostic, style: Style | None = None) -> str:
    """The rendering with that source at hand."""
    return render(diagnostic, {source.name: source}, style)


def caret_columns(text: str, caret: str = "^") -> tuple[str, int, int]:
    """The line above the carets, and the terminal columns between which the carets stand."""
    lines = text.split("\n")
    at = next(i for i, line in enumerate(lines) if caret in line and line.lstrip().startswith("|"))
    start = lines[at].index(caret)
    return lines[at - 1], start, start + lines[at].count(caret)


def on_terminal(line: str, start: int, end: int) -> str:
    """The letters that a terminal shows between two of its columns, wide letters taking two."""
    column, kept = 0, ""
    for letter in line:
        if start <= column < end:
            kept += letter
        column += 2 if east_asian_width(letter) in "WF" else 1
    return kept


def test_house_form_is_kept_to_the_letter() -> None:
    source = Source("vane.block", "\n" * 8 + "  seam center -- gate\n")
    diagnostic = found(
        source,
        "gate",
        label="it stops here, 1/2in from the nearest seam",
        help="Carry it on to a seam or the block's edge, or take it away.",
    )
    assert shown(source, diagnostic) == (
        "error[seam-hangs]: This seam ends inside a piece.\n"
        "  --> vane.block:9:18:\n"
        "   |\n"
        " 9 |   seam center -- gate\n"
        "   |                  ^^^^ it stops here, 1/2in from the nearest seam\n"
        "   |\n"
        "help: Carry it on to a seam or the block's edge, or take it away."
    )


def test_one_line_says_place_code_and_message() -> None:
    source = Source("vane.block", VANE)
    assert shown(source, found(source, "gate"), Style("short")) == (
        "vane.block:4:18: error[seam-hangs] This seam ends inside a piece."
    )


def test_related_place_in_the_same_file_has_its_own_marks() -> None:
    text = "piece blade at A1 in dark\n" + "\n" * 10 + "piece blade at B2 in pale\n"
    source = Source("vane.block", text)
    second = text.rindex("blade")
    place = Span("vane.block", second, second + 5)
    diagnostic = error(
        "piece-twice",
        "Two pieces are called `blade`.",
        place,
        "named again",
        related=(Label(Span("vane.block", 6, 11), "first named here"),),
    )
    assert shown(source, diagnostic).splitlines()[1:] == [
        "   --> vane.block:12:7:",
        "    |",
        " 12 | piece blade at B2 in pale",
        "    |       ^^^^^ named again",
        "    |",
        "  1 | piece blade at A1 in dark",
        "    |       ----- first named here",
        "    |",
    ]


def test_related_place_in_another_file_says_which_file() -> None:
    ours, theirs = Source("vane.block", VANE), Source("pair.block", 'edition 1\n\nblock "Pair" {\n}\n')
    diagnostic = found(ours, "gate", related=(Label(Span("pair.block", 17, 23), "the unit"),))
    text = render(diagnostic, {"vane.block": ours, "pair.block": theirs})
    assert "  ::: pair.block:3:7:\n" in text
    assert 'block "Pair" {\n   |       ------ the unit' in text
    alone = render(diagnostic, {"vane.block": ours})
    assert "  ::: pair.block:1:1: the unit" in alone


def test_no_source_at_hand_still_says_place_and_message() -> None:
    text = render(error("file-unread", "The file cannot be read.", Span("x.block", 0, 0)), {})
    assert text == "error[file-unread]: The file cannot be read.\n  --> x.block:1:1:"


@pytest.mark.parametrize(
    "text, words",
    [
        ("seam 中中中 -- gate", "gate"),
        ('note "🧵🪡" gate', "gate"),
        ("\tseam\tcenter -- gate", "gate"),
        ("seam caf\u0065\u0301 -- gate", "gate"),
        ("seam 中心 -- gate", "中心"),
        ("seam \x1b[31m -- gate", "gate"),
        ('note "\u202eevil" gate', "gate"),
    ],
)
def test_carets_stand_under_their_words(text: str, words: str) -> None:
    source = Source("a.block", text)
    line, start, end = caret_columns(shown(source, found(source, words)))
    line = line.replace("\u0301", "")  # a terminal sets it over the letter before
    assert on_terminal(line, start, end) == words


@pytest.mark.parametrize("at", [0, 1, 40, 95, 100, 101, 5_000, 99_990, 99_996])
def test_long_line_is_cut_down_to_what_stands_round_the_carets(at: int) -> None:
    text = "x" * at + "gate" + "y" * (99_996 - at)
    source = Source("a.block", text)
    rendered = shown(source, found(source, "gate"))
    line, start, end = caret_columns(rendered)
    assert line[start:end] == "gate"
    assert max(map(len, rendered.splitlines())) <= 115


def test_span_longer_than_the_room_is_cut_with_its_carets() -> None:
    source = Source("a.block", "note " + "z" * 100_000)
    rendered = shown(source, found(source, "z" * 100_000))
    line, start, end = caret_columns(rendered)
    assert line[start:].startswith("zzz") and line.endswith("…")
    assert len(line) <= 115 and end <= len(line)


def test_span_over_many_lines_shows_the_first_and_the_last() -> None:
    source = Source("a.block", "block {\n  a\n  b\n  c\n  done }\n")
    rendered = shown(source, found(source, "{\n  a\n  b\n  c\n  done }", label="this block"))
    assert rendered.splitlines()[2:-1] == [
        "   |",
        " 1 | block {",
        "   |       ^",
        "...",
        " 5 |   done }",
        "   |   ^^^^^^ this block",
    ]


def test_span_over_two_lines_leaves_nothing_out() -> None:
    source = Source("a.block", "seam A1 --\n  B2\n")
    rendered = shown(source, found(source, "--\n  B2"))
    assert rendered.splitlines()[2:-1] == [
        "   |",
        " 1 | seam A1 --",
        "   |         ^^",
        " 2 |   B2",
        "   |   ^^",
    ]


@pytest.mark.parametrize("start, end", [(0, 0), (9, 9), (10, 10), (500, 900), (3, 1)])
def test_empty_and_outside_spans_get_one_caret(start: int, end: int) -> None:
    source = Source("a.block", "edition 1\n")
    rendered = shown(source, error("x-y", "Something is due here.", Span("a.block", start, end)))
    assert sum(line.count("^") for line in rendered.splitlines()) == 1


def test_nothing_a_terminal_obeys_gets_through() -> None:
    nasty = "\x1b]0;owned\x07 \u202e \u2066 \x00 \x7f \x9b31m \u200b \u2028 \ud800 \r"
    source = Source("bad\x1b[2J\n.block", f"note {nasty} gate")
    diagnostic = found(source, "gate", message=f"`{nasty}` is odd.", label=nasty, help=nasty)
    for form in ("people", "short", "github"):
        rendered = shown(source, diagnostic, Style(form))  # type: ignore[arg-type]
        for letter in "\x1b\x07\u202e\u2066\x00\x7f\x9b\u200b\u2028\ud800\r":
            assert letter not in rendered, (form, hex(ord(letter)))
        assert rendered.encode("utf-8")


def test_endless_message_is_bounded() -> None:
    source = Source("a.block", VANE)
    rendered = shown(source, found(source, "gate", message="x" * 100_000, help="y" * 100_000))
    assert len(rendered) < 2_000


def test_colour_only_where_asked_and_words_stay_the_same() -> None:
    import re

    source = Source("a.block", VANE)
    diagnostic = found(source, "gate", label="here", help="Do this.")
    plain, colour = shown(source, diagnostic), shown(source, diagnostic, Style("people", colour=True))
    assert "\x1b" not in plain and "\x1b[1;31m" in colour
    assert re.sub(r"\x1b\[[0-9;]*m", "", colour) == plain


def test_fix_is_offered_where_no_help_is_written() -> None:
    source = Source("a.block", VANE)
    mend = Fix("Write `center`", Span("a.block", 0, 1), "center")
    assert shown(source, found(source, "gate", fix=mend)).endswith("help: Write `center`.")


def test_json_has_exactly_the_fixed_fields() -> None:
    source = Source("vane.block", VANE)
    record = as_record(found(source, "gate", help="Carry it on."), {source.name: source})
    assert record == {
        "code": "seam-hangs",
        "severity": "error",
        "message": "This seam ends inside a piece.",
        "file": "vane.block",
        "line": 4,
        "column": 18,
        "end_line": 4,
        "end_column": 22,
        "help": "Carry it on.",
    }
    assert json.loads(as_json(found(source, "gate"), {source.name: source}))["help"] == ""


def test_json_of_a_place_over_lines_and_at_the_end() -> None:
    source = Source("a.block", "block {\n}\n")
    record = as_record(found(source, "{\n}"), {"a.block": source})
    assert (record["line"], record["column"], record["end_line"], record["end_column"]) == (1, 7, 2, 2)
    record = as_record(error("x-y", "Text ends.", Span("a.block", 99, 99)), {"a.block": source})
    assert (record["line"], record["column"]) == (3, 1)


def test_github_lines_escape_what_github_reads() -> None:
    """Escapes as GitHub's documentation of workflow commands gives them (from memory)."""
    source = Source("odd,name:100%.block", VANE)
    diagnostic = found(source, "gate", message="100% of it: hangs, here.", help="Two\nlines.")
    assert shown(source, diagnostic, Style("github")) == (
        "::error file=odd%2Cname%3A100%25.block,line=4,col=18,endLine=4,endColumn=22,title=seam-hangs"
        "::100%25 of it: hangs, here.%0ATwo%0Alines."
    )
    place = Span(source.name, 0, 7)
    assert shown(source, warning("a-b", "W.", place), Style("github")).startswith("::warning ")
    assert shown(source, note("a-b", "N.", place), Style("github")).startswith("::notice ")
