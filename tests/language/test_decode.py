"""Bytes to text: what is text is read, what is not is said, with the place where it shows."""

from __future__ import annotations

import pytest
from piecewright.diagnostics.diagnostic import Diagnostic
from piecewright.language import limits
from piecewright.language.decode import read_source

TEXT = 'edition 1\nblock "Café" { }\n'


def complaint(data: bytes) -> Diagnostic:
    """The one thing said of the bytes."""
    outcome = read_source("block.block", data)
    assert outcome.value is None
    (said,) = outcome.diagnostics
    return said


@pytest.mark.parametrize(
    "data",
    [
        TEXT.encode(),
        b"\xef\xbb\xbf" + TEXT.encode(),
        TEXT.replace("\n", "\r\n").encode(),
        TEXT.replace("\n", "\r").encode(),
    ],
)
def test_byte_order_mark_and_newlines_make_no_difference(data: bytes) -> None:
    outcome = read_source("block.block", data)
    assert outcome.value is not None and outcome.diagnostics == ()
    assert outcome.value.text == TEXT


@pytest.mark.parametrize("data", [b"", b"  \n\t\n", b"\xef\xbb\xbf"])
def test_empty_file(data: bytes) -> None:
    assert complaint(data).code == "file-empty"


@pytest.mark.parametrize(
    ("data", "code", "said"),
    [
        (b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", "source-not-text", "line 3"),
        (b"PK\x03\x04" + b"\0" * 40, "source-not-text", "line 1"),
        (TEXT.encode("utf-16"), "source-encoding", "UTF-16"),
        (b"\xfe\xff" + TEXT.encode("utf-16-be"), "source-encoding", "UTF-16"),
        (TEXT.encode("utf-32"), "source-encoding", "UTF-32"),
        (TEXT.encode("utf-16-le"), "source-not-text", "zero byte"),
        (TEXT.encode("latin-1"), "source-encoding", "The byte E9 (`é` in Latin-1) on line 2"),
        (b"edition 1\xff", "source-encoding", "line 1"),
        (b"edition 1\n\xc3", "source-encoding", "line 2"),
    ],
)
def test_what_is_not_text_in_utf8_is_named(data: bytes, code: str, said: str) -> None:
    found = complaint(data)
    assert found.code == code
    assert said in found.message


def test_the_caret_stands_at_the_first_byte_that_is_not_utf8() -> None:
    span = complaint(TEXT.encode("latin-1")).primary.span
    assert span.start == TEXT.index("é")


def test_file_larger_than_the_bound() -> None:
    assert complaint(b"#" * (limits.FILE_BYTES + 1)).code == "file-too-large"
