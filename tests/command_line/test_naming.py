"""Titles to file names: safe, readable, and never two blocks' at once."""

from __future__ import annotations

import re

import pytest
from piecewright.door.naming import Names, slug

SAFE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


def stem(title: str, version: int = 1) -> str:
    """The name of a lone block."""
    return Names("nowhere").stem(title, version, "a.block")


@pytest.mark.parametrize(
    "title, name",
    [
        ("Tidewater Vane", "tidewater-vane-v1"),
        ("Bachelor's Puzzle", "bachelors-puzzle-v1"),
        ("54-40 or Fight", "54-40-or-fight-v1"),
        ("Étoile à Facettes", "etoile-a-facettes-v1"),
        ("  Star  &  Sky  ", "star-sky-v1"),
        ("CON", "con-v1"),
        ("Æbleskiver", "aebleskiver-v1"),
        ("Ørsted Øst", "orsted-ost-v1"),
        ("Straße", "strasse-v1"),
        ("Łódź", "lodz-v1"),
        ("Þing", "thing-v1"),
        ("Cafe\u0301", "cafe-v1"),
        ("½ Star", "1-2-star-v1"),
    ],
)
def test_plain_titles_read_as_they_are(title: str, name: str) -> None:
    assert stem(title) == name


@pytest.mark.parametrize(
    "title",
    [
        "../../etc/passwd",
        "/etc/passwd",
        "..",
        ".",
        "...",
        ".hidden",
        "a/b\\c",
        "C:\\blocks",
        "nul\0byte",
        "-rf",
        "<b>bold</b>",
        "a\nb",
        "quo\"te's",
        "%2e%2e",
        "🧵🪡",
        "בלוק מים",
        "ブロック",
        "",
        " ",
        "x" * 100_000,
        "~root",
        "a*b?c",
        "$(id)",
        "\u202egpj",
        "\ud800",
    ],
)
def test_any_title_gives_a_short_safe_name(title: str) -> None:
    name = stem(title, 9_999)
    assert SAFE.fullmatch(name), name
    assert len(name) <= 80


def test_titles_of_which_nothing_is_readable_keep_apart_and_stay_the_same() -> None:
    assert stem("🧵") != stem("🪡")
    assert stem("🧵") == stem("🧵")
    assert stem("🧵").startswith("block-")


def test_titles_that_read_alike_do_not_share_a_name() -> None:
    titles = ("Sea Star", "Sea-Star", "SEA STAR!", "sea/star")
    first, second = Names("nowhere"), Names("nowhere")
    given = [first.stem(title, 1, "a.block") for title in titles]
    assert given[0] == "sea-star-v1"
    assert len(set(given)) == 4
    assert given == [second.stem(title, 1, "a.block") for title in titles]


def test_one_title_in_two_files_does_not_share_a_name() -> None:
    names = Names("nowhere")
    given = [names.stem("Sea Star", 1, name) for name in ("a.block", "b.block", "c.block")]
    assert len(set(given)) == 3
    assert names.stem("Sea Star", 1, "b.block") == given[1]


def test_versions_do_not_share_a_name() -> None:
    names = Names("nowhere")
    assert names.stem("Sea Star", 1, "a.block") != names.stem("Sea Star", 2, "a.block")


def test_title_cut_off_keeps_apart_from_one_that_begins_alike() -> None:
    names = Names("nowhere")
    assert names.stem("x" * 200, 1, "a.block") != names.stem("x" * 201, 1, "a.block")
    assert len(slug("word " * 50)) <= 60


def test_a_title_is_one_however_its_accents_were_typed() -> None:
    names = Names("nowhere")
    assert names.stem("\u00c9toile \u9ec4", 1, "a.block") == names.stem("E\u0301toile \u9ec4", 1, "a.block")
    assert names.stem("\u00c5\u9ec4", 1, "a.block") == names.stem("\u212b\u9ec4", 1, "a.block")
