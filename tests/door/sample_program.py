"""A program of somebody's, as mypy is asked to read it: everything it asks for has a type."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import piecewright


def chart(folder: Path, out: Path) -> list[str]:
    """A line for every cut of every quilt in a folder; sheets for all of it beside."""
    work = piecewright.compile_folder(folder, shelves=[folder / "shelf"], paper="a4", ruler="1/16in")
    if not work.ok:
        return [f"{each.file}:{each.line}: {each.message} {each.help}" for each in work.diagnostics]
    lines: list[str] = []
    for quilt in work.quilts:
        bought: dict[str, str] = {cloth.name: cloth.buy_text for cloth in quilt.cloths}
        for cut in quilt.cuts:
            area: float = float(cut.width * cut.height) * cut.cuts
            lines.append(f"{cut.key} {cut.fabric} {cut.kind} {area} of {bought[cut.fabric]}")
        rows: list[str] = [row.name for stage in quilt.steps for row in stage.rows]
        lines += rows
        if quilt.binding is not None:
            width: Fraction = quilt.binding.strip_width
            lines.append(f"binding {width}")
        written: list[Path] = quilt.write(out / "quilt.pdf", parts=["chart", "cutting"])
        lines += [path.name for path in written]
    for block in work.blocks:
        sharpest: float = block.difficulty.smallest_angle
        corners: list[tuple[float, float]] = [(float(x), float(y)) for x, y in block.pieces[0].outline]
        method: str = block.templates[0].method.kind
        parts: tuple[str, ...] = block.steps[0].parts if block.steps else ()
        lines.append(f"{block.title} {sharpest} {corners} {method} {parts}")
    return lines


def told(text: str) -> str:
    """What is wrong with a text."""
    try:
        piecewright.compile_text(text, sewing={"": "templates", "Log Cabin": "foundation"}).write("x.pdf")
    except piecewright.CompileError as wrong:
        mend = wrong.diagnostics[0].fix
        return mend.title if mend else wrong.diagnostics[0].severity
    return ""
