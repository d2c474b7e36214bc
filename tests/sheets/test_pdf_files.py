"""A PDF prints true to size, says what it is, and is the same bytes wherever and whenever it is made."""

import os
import subprocess
import sys
from io import BytesIO

import cairosvg
import pypdfium2
import pytest
from piecewright.sheets.drawing import ink
from piecewright.sheets.drawing.draw_svg import svg_of
from piecewright.sheets.drawing.files import pdf_bytes
from piecewright.sheets.drawing.lettering import width_of
from piecewright.sheets.page import Page, PathMark, TextMark
from pypdf import PdfReader
from support.pdf_reading import INCH, read_pages
from support.sample_pages import A4, HALF_SQUARE, LETTER, document_of, page_of

PROMISED = 0.001 * INCH  # points: printed geometry is within 0.001in of the model (DESIGN.md)


@pytest.fixture(scope="module")
def pdf():
    return pdf_bytes(document_of())


def in_pdf(pdf):
    return PdfReader(BytesIO(pdf), strict=True)


def corners_of(mark):
    return [segment[-2:] for segment in mark.path if segment[0] != "Z"]


def test_pages_are_the_papers_own_size(pdf):
    """8.5 x 11in and 210 x 297mm (W3C CSS Paged Media 3, after ANSI and ISO 216) at 72 points an inch."""
    letter, a4 = in_pdf(pdf).pages
    assert list(map(float, letter.mediabox)) == [0, 0, 612, 792]
    assert list(map(float, a4.mediabox)) == pytest.approx([0, 0, 210 / 25.4 * 72, 297 / 25.4 * 72], abs=1e-5)


def test_every_path_is_where_layout_put_it(pdf):
    page = page_of()
    drawn = [mark for mark in page.marks if isinstance(mark, PathMark)]
    found = read_pages(pdf)[0].paths
    assert len(found) == len(drawn)
    for mark, path in zip(drawn, found, strict=True):
        assert len(path.corners) == len(corners_of(mark))
        for got, wanted in zip(path.corners, corners_of(mark), strict=True):
            assert got == pytest.approx(wanted, abs=PROMISED)
        if mark.stroke:
            assert path.width == pytest.approx(mark.width)
            assert path.dash == mark.dash
        assert path.filled == (mark.fill is not None)
        assert path.stroked == (mark.stroke is not None)
        assert bool(path.clip) == bool(mark.clip)


def test_every_line_of_lettering_is_where_layout_put_it(pdf):
    found = read_pages(pdf)[0].texts
    lines = [mark for mark in page_of().marks if isinstance(mark, TextMark)]
    assert [text.text for text in found] == [mark.text for mark in lines]
    for mark, text in zip(lines, found, strict=True):
        share = {"start": 0.0, "middle": 0.5, "end": 1.0}[mark.anchor]
        wide = width_of(mark.text, mark.size, mark.bold)
        assert (text.x, text.y) == pytest.approx((mark.x - share * wide, mark.y), abs=PROMISED)
        assert text.size == pytest.approx(mark.size, abs=1e-4)
        assert text.font == ("SourceSansPro-Bold" if mark.bold else "SourceSansPro-Regular")


def test_lettering_is_as_wide_as_layout_measured(pdf):
    for mark, text in zip(
        [mark for mark in page_of().marks if isinstance(mark, TextMark) and not mark.turned],
        [text for text in read_pages(pdf)[0].texts if abs(text.end[1] - text.y) < 1e-6],
        strict=True,
    ):
        # a PDF keeps letters' widths to a thousandth of the size
        slack = mark.size * len(mark.text) / 1000
        assert text.end[0] - text.x == pytest.approx(width_of(mark.text, mark.size, mark.bold), abs=slack)


def test_the_painters_pdf_and_the_pictures_pdf_agree():
    """The same page through its SVG and cairosvg, another program than the painter."""
    ink.load()
    page = page_of()
    ours = read_pages(pdf_bytes(document_of(page)))[0]
    theirs = read_pages(cairosvg.svg2pdf(bytestring=svg_of(page).encode()))[0]
    assert (theirs.width, theirs.height) == pytest.approx((ours.width, ours.height))
    for one, other in zip(ours.paths, theirs.paths, strict=True):
        for a, b in zip(one.corners, other.corners, strict=True):
            assert a == pytest.approx(b, abs=PROMISED)
        assert (one.stroked, one.filled) == (other.stroked, other.filled)
        if one.stroked:
            assert one.width == pytest.approx(other.width, abs=1e-3)
            assert one.dash == pytest.approx(other.dash, abs=1e-3)
    for one, other in zip(ours.texts, theirs.texts, strict=True):
        assert one.text.replace(" ", "") == other.text.replace(" ", "")  # cairosvg sets no blanks
        assert (one.x, one.y) == pytest.approx((other.x, other.y), abs=PROMISED)
        assert one.font == other.font


def test_a_600_dpi_picture_of_the_pdf_agrees_within_a_dot(pdf):
    """pypdfium2's picture: the outermost dark dots of the cutting line, half its thickness taken off."""
    dpi = 600
    only_cut = [mark for mark in page_of().marks if getattr(mark, "role", "") == "cut"]
    one = pdf_bytes(document_of(Page(612.0, 792.0, "", tuple(only_cut))))
    picture = pypdfium2.PdfDocument(one)[0].render(scale=dpi / INCH, grayscale=True).to_pil()
    left, top, right, bottom = picture.point(lambda grey: 255 if grey < 128 else 0).getbbox()
    half = only_cut[0].width / 2
    xs = [segment[1] for segment in HALF_SQUARE if segment[0] != "Z"]
    ys = [segment[2] for segment in HALF_SQUARE if segment[0] != "Z"]
    wanted = [(min(xs) - half), (min(ys) - half), (max(xs) + half), (max(ys) + half)]
    dot = INCH / dpi
    for got, want in zip((left, top, right, bottom), wanted, strict=True):
        assert got * dot == pytest.approx(want, abs=1.5 * dot)  # a dot, and half of one for its own middle


def test_the_viewer_is_asked_not_to_scale(pdf):
    """ISO 32000-1, table 150."""
    wishes = in_pdf(pdf).trailer["/Root"]["/ViewerPreferences"]
    assert wishes["/PrintScaling"] == "/None"
    assert wishes["/PickTrayByPDFSize"]


def test_the_document_says_what_it_is(pdf):
    told = in_pdf(pdf).metadata
    assert told.title == "Tidewater Vane"
    assert told.subject == "version 2, 6in finished"
    assert told.author == "Wren Alder"
    assert told.keywords == "patchwork, templates"


def test_every_page_has_its_bookmark(pdf):
    reader = in_pdf(pdf)
    assert [(each.title, reader.get_destination_page_number(each)) for each in reader.outline] == [
        ("Templates A", 0), ("Templates B", 1),
    ]  # fmt: skip


def test_words_can_be_selected_and_searched(pdf):
    words = in_pdf(pdf).pages[0].extract_text()
    assert "Cut 4 of dark" in words
    assert "3⅛in" in words
    assert 'Say "so" <b>&</b> be' in words


def test_each_face_is_embedded_once_for_all_pages():
    many = document_of(*(page_of(title=f"Page {n}") for n in range(6)))
    one, six = (pdf_bytes(each) for each in (document_of(page_of()), many))
    assert six.count(b"/FontFile2") == one.count(b"/FontFile2") > 0


@pytest.mark.parametrize("title", [
    "../../etc/passwd", 'a "quoted" \\ back(slash', "emoji 😀 שלום \u202ex", "nul\x00line\nbreak",
    "x" * 5000, "\ud800half",
])  # fmt: skip
def test_any_title_can_be_written(title):
    hostile = document_of(page_of(title=title), title=title, author=title)
    reader = in_pdf(pdf_bytes(hostile))
    assert len(reader.pages) == 1
    told = str(reader.metadata.title)
    assert told.startswith(title[:3].replace("\x00", " ").replace("\ud800", ""))
    assert "\x00" not in told and "\u202e" not in told


MAKE = "import sys; from support.sample_pages import *; from piecewright.sheets.drawing.files import *\n"
MAKE += "sys.stdout.buffer.write(pdf_bytes(document_of()) + png_bytes(page_of(), 100) + svg_bytes(page_of()))"


def made_elsewhere(**settings):
    folder = os.path.dirname(os.path.dirname(__file__))
    environment = {"PATH": os.environ["PATH"], "PYTHONPATH": folder, **settings}
    call = [sys.executable, "-c", MAKE]
    return subprocess.run(call, env=environment, capture_output=True, check=True).stdout


def test_same_bytes_in_another_process_place_and_language(pdf, tmp_path):
    """Other clock zone, language, home folder, hash seed, and a fontconfig file of the machine's own."""
    fonts = tmp_path / "fonts.conf"
    fonts.write_text("<fontconfig><dir>/nowhere</dir></fontconfig>")
    here = made_elsewhere(HOME=str(tmp_path), PYTHONHASHSEED="1")
    there = made_elsewhere(HOME="/nowhere", PYTHONHASHSEED="2", TZ="Pacific/Auckland", LC_ALL="tr_TR.UTF-8",
                           FONTCONFIG_FILE=str(fonts), SOURCE_DATE_EPOCH="12345")  # fmt: skip
    assert here == there
    assert here.startswith(pdf)
    assert list(tmp_path.iterdir()) == [fonts]  # nothing is cached in a home folder


def test_same_bytes_twice_in_one_process(pdf):
    assert pdf_bytes(document_of()) == pdf


def test_papers_in_one_document_may_differ(pdf):
    sizes = [(page.width, page.height) for page in read_pages(pdf)]
    assert sizes[0] == (LETTER.width_points, LETTER.height_points)
    assert sizes[1] == pytest.approx((A4.width_points, A4.height_points), abs=1e-5)
