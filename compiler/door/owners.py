"""Whose a file in a folder of sheets is: what it was made of, as the file itself says.

A PDF says its title among its facts. Pictures and pages of HTML bear a mark that follows from the title: a
remark at their end, or a chunk of text (PNG specification, 11.3.4.3). Loads little: a build that is only
repeated asks, too.
"""

from __future__ import annotations

from enum import Enum, auto
from hashlib import blake2b
from struct import pack
from typing import Final
from zlib import crc32

from ..shelves.reading import plain_bytes

LARGEST: Final = 64_000_000  # bytes of a file looked at; a booklet has a few million
MARK: Final = b"piecewright "
DIGITS: Final = 16  # of a title's digest
REMARK: Final = b"<!-- " + MARK + b"%s -->\n"
LAST_CHUNK: Final = 12  # bytes: a PNG ends in the empty chunk IEND
COMMENT: Final = b"tEXtComment\0" + MARK
OURS: Final = b"/Creator (Piecewright)"


def marked(kind: str, data: bytes, title: str) -> bytes:
    """A file of a kind, that says what it was made of."""
    if kind == "pdf":
        return data
    if kind == "png":
        content = COMMENT + _digest(title)
        chunk = pack(">I", len(content) - 4) + content + pack(">I", crc32(content))
        return data[:-LAST_CHUNK] + chunk + data[-LAST_CHUNK:]
    return data + REMARK % _digest(title)


def owner_in(name: str, data: bytes) -> bytes | None:
    """What follows from the title of what a file was made of; None where it does not say."""
    if name.endswith(".pdf"):
        end = data.rfind(OURS)
        return _title_in(data[data.rfind(b"/Producer", 0, end) : end]) if end >= 0 else None
    start, after = (COMMENT, LAST_CHUNK + 4) if name.endswith(".png") else (b"<!-- " + MARK, len(b" -->\n"))
    told = data[-DIGITS - after : -after]
    return told if data[: -DIGITS - after].endswith(start) else None


class Whose(Enum):
    """Whose a file is, seen from what bears a title."""

    OWN = auto()
    ANOTHERS = auto()
    UNKNOWN = auto()  # a sheet changed by hand, or something else altogether


def whose(path: str, title: str) -> Whose:
    """Whose a file is. One that cannot be read as a plain file is left to the writing, which tells of it."""
    try:
        owner = owner_in(path, plain_bytes(path, LARGEST))
    except OSError:
        return Whose.OWN
    return Whose.UNKNOWN if owner is None else Whose.OWN if owner == _digest(title) else Whose.ANOTHERS


def _title_in(facts: bytes) -> bytes | None:
    """The digest of the title among a PDF's facts: in brackets, or in UTF-16 (ISO 32000-1, 7.9.2)."""
    _, found, rest = facts.partition(b"/Title ")
    if not found:
        return None
    if rest.startswith(b"<"):
        try:
            return _digest(bytes.fromhex(rest[1:].partition(b">")[0].decode()).decode("utf-16"))
        except ValueError:
            return None
    letters, at = bytearray(), 1
    while at < len(rest) and rest[at : at + 1] != b")":
        at += rest[at : at + 1] == b"\\"
        letters += rest[at : at + 1]
        at += 1
    return _digest(letters.decode("latin-1"))


def _digest(title: str) -> bytes:
    return blake2b(title.encode("utf-8", "surrogatepass"), digest_size=20).hexdigest()[:DIGITS].encode()
