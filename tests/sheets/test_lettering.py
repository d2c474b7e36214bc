"""Lettering measures what is printed, shows what it cannot set, and never falls back on another typeface."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from piecewright.sheets.drawing import lettering, typeface


def test_widths_are_those_the_drawing_library_sets():
    """Against cairo's own text extents, the face loaded from the same file."""
    from piecewright.sheets.drawing import ink

    text = "Cut 4 of dark · 3⅛in “Tidewater Vane” Ångström fi ☐"
    for bold in (False, True):
        set_by_cairo = ink.load().advance(text, 1000.0, bold)
        assert lettering.width_of(text, 1000.0, bold) == pytest.approx(set_by_cairo, abs=0.01)


def test_width_grows_with_size_and_adds_up():
    assert lettering.width_of("AB", 26.0) == pytest.approx(2 * lettering.width_of("AB", 13.0))
    parts = lettering.width_of("Cut 4", 9.0, True) + lettering.width_of(" of dark", 9.0, True)
    assert lettering.width_of("Cut 4 of dark", 9.0, True) == pytest.approx(parts)
    assert lettering.width_of("", 9.0) == 0


def test_bold_is_wider_than_regular():
    assert lettering.width_of("Cut 4 of dark", 9.0, True) > lettering.width_of("Cut 4 of dark", 9.0)


def test_capitals_stand_within_the_line():
    assert 0 < lettering.cap_height(26) < lettering.ascent(26)
    assert 0 < lettering.descent(26) < 26


@pytest.mark.parametrize("written, set_", [
    ("3 1/8in", "3⅛in"), ("1/2in", "½in"), ("6in x 9in", "6in x 9in"), ("12 3/4in x 2/3in", "12¾in x ⅔in"),
    ("3 1/16in", "3 1/16in"), ("15/16in", "15/16in"), ("2 1/4 yd", "2¼ yd"), ("on 1/2/26", "on 1/2/26"),
])  # fmt: skip
def test_sizes_are_set_with_the_faces_own_fractions(written, set_):
    assert lettering.fraction_glyphs(written) == set_
    assert lettering.printable(set_) == set_


@pytest.mark.parametrize("title, shown", [
    ("Vane 😀", "Vane ☐"), ("שלום", "☐☐☐☐"), ("风车", "☐☐"), ("a\u202eb\u2066c", "abc"),
    ("e\u0301tude", "étude"),
    ("a\tb\nc", "a b c"), ("nul\x00here", "nulhere"), ("<b>&amp;", "<b>&amp;"), ("\u00a0x", " x"),
])  # fmt: skip
def test_letters_the_face_lacks_are_seen_to_be_missing(title, shown):
    assert lettering.printable(title) == shown


@given(st.text())
def test_any_text_can_be_set(text):
    shown = lettering.printable(text)
    assert all(lettering.has_letter(letter) for letter in shown)
    assert lettering.printable(shown) == shown
    assert lettering.width_of(text, 10.0) == lettering.width_of(shown, 10.0) >= 0


def test_a_missing_typeface_is_told(monkeypatch):
    monkeypatch.setattr(typeface, "PACKAGE", "no_such_typeface_package")
    with pytest.raises(typeface.FontMissing, match="install the package font-source-sans-pro"):
        typeface.font_file(True)


def test_a_missing_weight_is_told(monkeypatch):
    monkeypatch.setitem(typeface.FILES, True, "SourceSansPro-Gone.ttf")
    with pytest.raises(typeface.FontMissing, match="lacks SourceSansPro-Gone"):
        typeface.font_file(True)


def test_a_broken_font_file_is_told(monkeypatch, tmp_path):
    broken = tmp_path / "broken.ttf"
    broken.write_bytes(b"not a font")
    monkeypatch.setattr(typeface, "font_file", lambda bold: broken)
    with pytest.raises(typeface.FontMissing, match=r"broken\.ttf cannot be read"):
        typeface.face.__wrapped__(True)
