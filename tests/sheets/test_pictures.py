"""SVG and PNG open at the size the page has, and words never become markup."""

import struct
import xml.etree.ElementTree as ElementTree
from io import BytesIO

import cairosvg
import pytest
from piecewright.sheets.drawing import ink
from piecewright.sheets.drawing.files import png_bytes, svg_bytes
from piecewright.sheets.page import Page, PathMark, TextMark
from PIL import Image, ImageChops
from support.sample_pages import A4, LETTER, page_of

SVG = "{http://www.w3.org/2000/svg}"


def parsed(page):
    return ElementTree.fromstring(svg_bytes(page))


def test_an_svg_states_the_papers_size_in_inches():
    letter = parsed(page_of(LETTER))
    assert (letter.get("width"), letter.get("height")) == ("8.5in", "11in")
    assert letter.get("viewBox") == "0 0 612 792"
    a4 = parsed(page_of(A4))
    assert float(a4.get("width")[:-2]) * 25.4 == pytest.approx(210, abs=1e-4)
    assert float(a4.get("height")[:-2]) * 25.4 == pytest.approx(297, abs=1e-4)


def test_words_stay_words_in_an_svg():
    words = [element.text for element in parsed(page_of()).iter(f"{SVG}text")]
    assert words == [mark.text for mark in page_of().marks if isinstance(mark, TextMark)]


@pytest.mark.parametrize("title", [
    "</title><script>alert(1)</script>", '"><path d="', "a & b", "nul\x00 \x1b \ufffe \ud800", "]]>", "a  b ",
])  # fmt: skip
def test_words_never_become_markup(title):
    marks = (TextMark(10, 10, title, subject=title), PathMark((("M", 0, 0), ("L", 9, 9)), role=title))
    page = parsed(Page(100, 100, title, marks))
    assert [element.tag for element in page] == [f"{SVG}title", f"{SVG}text", f"{SVG}path"]


def test_each_mark_says_what_it_is():
    paths = list(parsed(page_of()).iter(f"{SVG}path"))
    assert ("cut", "A") in [(path.get("class"), path.get("data-subject")) for path in paths]


@pytest.mark.parametrize("paper, dpi, dots", [
    (LETTER, 72, (612, 792)), (LETTER, 300, (2550, 3300)), (A4, 300, (2480, 3508)), (A4, 96, (794, 1123)),
    (LETTER, 101, (858, 1111)),
])  # fmt: skip
def test_a_picture_has_exactly_the_dots_asked_for(paper, dpi, dots):
    """round(width x resolution): A4 is 8.2677 x 11.6929in (ISO 216), so 2480 x 3508 at 300 to the inch."""
    picture = Image.open(BytesIO(png_bytes(page_of(paper), dpi)))
    assert picture.size == dots


def test_a_picture_states_its_resolution():
    """pHYs in dots per metre (PNG specification, 11.3.5.3), before the picture's own data."""
    png = png_bytes(page_of(), 300)
    at = png.index(b"pHYs")
    assert at < png.index(b"IDAT")
    assert struct.unpack(">IIB", png[at + 4 : at + 13]) == (11811, 11811, 1)  # 300 / 0.0254
    assert Image.open(BytesIO(png)).info["dpi"] == pytest.approx((300, 300), abs=0.01)


def test_an_inch_is_as_many_dots_as_asked_for():
    """Measured on the picture: a filled inch on A4, whose width is no whole number of dots."""
    square = (("M", 400.0, 400.0), ("L", 472.0, 400.0), ("L", 472.0, 472.0), ("L", 400.0, 472.0), ("Z",))
    page = page_of(A4, marks=(PathMark(square, stroke=None, fill=(0, 0, 0)),))
    picture = Image.open(BytesIO(png_bytes(page, 300))).convert("L")
    left, top, right, bottom = picture.point(lambda grey: 255 if grey < 128 else 0).getbbox()
    assert abs(right - left - 300) <= 1 and abs(bottom - top - 300) <= 1
    assert abs(left - 400 / 72 * 300) <= 1 and abs(top - 400 / 72 * 300) <= 1


def test_paper_is_white():
    assert Image.open(BytesIO(png_bytes(page_of(), 72))).convert("RGB").getpixel((2, 2)) == (255, 255, 255)


def test_the_picture_and_the_svg_show_the_same():
    """The SVG drawn by cairosvg, another program; it hints letters, so only the lines are compared."""
    ink.load()
    lines = tuple(mark for mark in page_of().marks if isinstance(mark, PathMark))
    page = page_of(marks=lines)
    ours = Image.open(BytesIO(png_bytes(page, 96))).convert("L")
    drawn = cairosvg.svg2png(bytestring=svg_bytes(page), background_color="white")
    theirs = Image.open(BytesIO(drawn)).convert("L")
    assert ours.size == theirs.size == (816, 1056)
    assert ImageChops.difference(ours, theirs).getextrema()[1] <= 64  # shades of edges, not lines
