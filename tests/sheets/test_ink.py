"""A machine that lacks a part of what sheets need is told which, in words that say what to install."""

import pytest
from piecewright.sheets.drawing import cairo_library, ink
from piecewright.sheets.drawing.files import png_bytes
from piecewright.sheets.drawing.typeface import FontMissing, MachineLacks
from piecewright.sheets.page import Page


def test_a_missing_library_is_told(monkeypatch):
    monkeypatch.setattr(cairo_library, "FONTCONFIG_NAMES", ("libnothing-of-the-kind.so.0",))
    told = r"fontconfig is missing: install it \(on Debian: libfontconfig1\)"
    with pytest.raises(MachineLacks, match=told):
        cairo_library.fontconfig.__wrapped__()


def test_another_face_than_ours_is_never_taken_silently(monkeypatch):
    """Where cairo would set other letters than were measured, nothing is drawn at all."""
    monkeypatch.setattr(ink, "width_of", lambda text, size, bold: 1.0)
    with pytest.raises(FontMissing, match="cairo cannot find the typeface"):
        ink.load.__wrapped__()


def test_a_picture_too_large_for_cairo_is_told():
    with pytest.raises(MachineLacks, match="is too large: cairo draws up to 32,767 a side"):
        png_bytes(Page(612.0, 792.0, "", ()), 6000)
