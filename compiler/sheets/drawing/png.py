"""What a picture says of its own resolution: the chunk pHYs (PNG specification, 11.3.5.3)."""

from __future__ import annotations

from struct import pack
from typing import Final
from zlib import crc32

METRES_PER_INCH: Final = 0.0254
HEADER_END: Final = 33  # the signature, 8 bytes, and the chunk IHDR, 25; pHYs may stand right behind


def with_resolution(png: bytes, dpi: int) -> bytes:
    """The picture, stating `dpi` dots per inch (as whole dots per metre, the nearest)."""
    assert png[12:16] == b"IHDR", "not a PNG"
    per_metre = round(dpi / METRES_PER_INCH)
    said = b"pHYs" + pack(">IIB", per_metre, per_metre, 1)
    chunk = pack(">I", len(said) - 4) + said + pack(">I", crc32(said))
    return png[:HEADER_END] + chunk + png[HEADER_END:]
