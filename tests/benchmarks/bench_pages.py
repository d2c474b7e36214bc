"""How long pages take, beside other ways of drawing the same marks. Run by hand:

    python tests/benchmarks/bench_pages.py

1. 200 pages like a template sheet: milliseconds a page by our painter, by cairocffi's own methods, and by
   typst (a fresh source each time, as it would be for another block).
2. A block of 600 pieces, then 200 blocks, from text to PDF, beside typst drawing the same marks.

Every time is the least of several; ratios are of times of this run.
"""

from __future__ import annotations

import gc
from io import BytesIO
from math import radians
from time import perf_counter

import cairocffi
import typst
from bench_growth import fans
from piecewright.command_line.main import CYCLES_BORN
from piecewright.diagnostics.source import Source
from piecewright.sheets.arrange.block_sheets import arrange_block
from piecewright.sheets.arrange.options import SheetOptions
from piecewright.sheets.drawing import ink
from piecewright.sheets.drawing.files import pdf_bytes
from piecewright.sheets.drawing.lines import left_of_anchor
from piecewright.sheets.drawing.typeface import FAMILY, font_file
from piecewright.sheets.page import Document, Mark, Page, PathMark, TextMark
from support.check import DictShelf, compile_source

PAGES = 200
ROUNDS = 3


def template_like(number: int) -> Page:
    """A page with four templates, a head, a foot and a legend: about 70 marks, all places its own."""
    shift = number * 0.37 % 20
    marks: list[Mark] = [
        TextMark(36, 50, f"Bench Block {number}", 18, True, role="heading"),
        TextMark(36, 62, "6in finished · version 2", 9, fill=(0.3, 0.3, 0.3)),
        TextMark(576, 50, f"page {number} of {PAGES}", 9, anchor="end"),
        PathMark((("M", 36, 72), ("L", 576, 72)), width=0.6, role="rule"),
    ]
    for x, y in ((40, 90), (310, 90), (40, 380), (310, 380)):
        marks.extend(one_template(x + shift, y + shift, 190 + number % 7))
    marks.append(square(36, 700, 72))
    marks.extend(TextMark(120, 704 + 10 * n, "Measure the square before you cut:", 8.5) for n in range(3))
    for n in range(5):
        y = 704 + 13.5 * n
        marks.append(PathMark((("M", 400, y), ("L", 430, y)), width=1.1, role="legend"))
        marks.append(TextMark(436, y + 3, "straight of grain", 8.5))
    return Page(612, 792, f"Page {number}", tuple(marks))


def square(x: float, y: float, side: float) -> PathMark:
    return PathMark((("M", x, y), ("L", x + side, y), ("L", x + side, y + side), ("L", x, y + side), ("Z",)))


def one_template(x: float, y: float, side: float) -> list[Mark]:
    def corner(inset: float) -> tuple:
        return (("M", x + inset, y + inset), ("L", x + side - 2.4 * inset, y + inset),
                ("L", x + inset, y + side - 2.4 * inset), ("Z",))  # fmt: skip

    head = (("M", x + 30, y + 34), ("L", x + 28, y + 41), ("L", x + 32, y + 41))
    marks: list[Mark] = [
        PathMark(corner(0), width=1.1, role="cut"),
        PathMark(corner(18), width=0.7, dash=(5, 3), role="sew"),
        PathMark((("M", x + 30, y + 40), ("L", x + 30, y + 110)), role="grain"),
        PathMark((*head, ("Z",)), fill=(0, 0, 0)),
    ]
    for dx, dy in ((18, 18), (side - 43, 18), (18, side - 43)):
        marks.append(dot(x + dx, y + dy, 2.25))
    marks.append(TextMark(x + 70, y + 60, "A", 26, True, "middle"))
    words = ("Cut 4 of dark", "Bench Block 6in · v2", "this side up")
    for n, line in enumerate(words):
        marks.append(TextMark(x + 70, y + 72 + 10 * n, line, 8.5, not n, "middle"))
    return marks


def dot(x: float, y: float, r: float) -> PathMark:
    k = 0.5523 * r
    return PathMark((
        ("M", x + r, y),
        ("C", x + r, y + k, x + k, y + r, x, y + r), ("C", x - k, y + r, x - r, y + k, x - r, y),
        ("C", x - r, y - k, x - k, y - r, x, y - r), ("C", x + k, y - r, x + r, y - k, x + r, y), ("Z",),
    ), width=0.5, role="dot")  # fmt: skip


def by_cairocffi(pages: list[Page]) -> bytes:
    """The marks through cairocffi's methods, as its own guide draws."""
    out = BytesIO()
    surface = cairocffi.PDFSurface(out, 612, 792)
    context = cairocffi.Context(surface)
    for page in pages:
        for mark in page.marks:
            if isinstance(mark, PathMark):
                plain_path(context, mark)
            else:
                weight = cairocffi.FONT_WEIGHT_BOLD if mark.bold else cairocffi.FONT_WEIGHT_NORMAL
                context.select_font_face(FAMILY, cairocffi.FONT_SLANT_NORMAL, weight)
                context.set_font_size(mark.size)
                context.set_source_rgb(*mark.fill)
                context.move_to(mark.x - left_of_anchor(mark), mark.y)
                context.show_text(mark.text)
        surface.show_page()
    surface.finish()
    return out.getvalue()


def plain_path(context: cairocffi.Context, mark: PathMark) -> None:
    for segment in mark.path:
        match segment[0]:
            case "M":
                context.move_to(*segment[1:])
            case "L":
                context.line_to(*segment[1:])
            case "C":
                context.curve_to(*segment[1:])
            case "Z":
                context.close_path()
    if mark.fill:
        context.set_source_rgb(*mark.fill)
        context.fill_preserve()
    if mark.stroke:
        context.set_source_rgb(*mark.stroke)
        context.set_line_width(mark.width)
        context.set_dash(list(mark.dash))
        context.stroke_preserve()
    context.new_path()


def by_typst(pages: list[Page], marker: str) -> bytes:
    """The marks as a Typst source; `marker` makes it fresh, so that nothing is remembered from the last
    run."""
    lines = [
        f"// {marker}",
        "#set page(width: 612pt, height: 792pt, margin: 0pt)",
        f'#set text(font: "{FAMILY}")',
    ]
    for number, page in enumerate(pages):
        if number:
            lines.append("#pagebreak()")
        for mark in page.marks:
            lines.append(typst_path(mark) if isinstance(mark, PathMark) else typst_text(mark))
    fonts = [str(font_file(False).parent)]
    return typst.compile("\n".join(lines).encode(), font_paths=fonts, ignore_system_fonts=True)


def typst_path(mark: PathMark) -> str:
    steps = []
    for segment in mark.path:
        n = [f"{value:.4f}pt" for value in segment[1:]]
        match segment[0]:
            case "M":
                steps.append(f"curve.move(({n[0]}, {n[1]}))")
            case "L":
                steps.append(f"curve.line(({n[0]}, {n[1]}))")
            case "C":
                steps.append(f"curve.cubic(({n[0]}, {n[1]}), ({n[2]}, {n[3]}), ({n[4]}, {n[5]}))")
            case "Z":
                steps.append("curve.close()")
    dash = f", dash: ({', '.join(f'{each}pt' for each in mark.dash)})" if mark.dash else ""
    stroke = f"(paint: black, thickness: {mark.width}pt{dash})" if mark.stroke else "none"
    fill = "black" if mark.fill else "none"
    return f"#place(top + left, curve(stroke: {stroke}, fill: {fill}, {', '.join(steps)}))"


def typst_text(mark: TextMark) -> str:
    weight = "bold" if mark.bold else "regular"
    words = mark.text.replace("\\", "\\\\").replace('"', '\\"')
    shown = f'text(size: {mark.size}pt, weight: "{weight}", top-edge: "baseline", "{words}")'
    left = mark.x - left_of_anchor(mark)
    return f"#place(top + left, dx: {left:.4f}pt, dy: {mark.y:.4f}pt, {shown})"


def least(work, rounds: int) -> float:
    """The least seconds of several runs."""
    times = []
    for number in range(rounds):
        start = perf_counter()
        work(number)
        times.append(perf_counter() - start)
    return min(times)


def bench_drawing() -> None:
    pages = [template_like(number) for number in range(PAGES)]
    document = Document("Bench", "", "", "", tuple(pages))
    ink.load()
    ours = least(lambda _: pdf_bytes(document), ROUNDS)
    plain = least(lambda _: by_cairocffi(pages), ROUNDS)
    other = least(lambda number: by_typst(pages, f"run {number} {radians(number)}"), ROUNDS)
    print(f"{PAGES} pages of {len(pages[0].marks)} marks, milliseconds a page")
    for name, seconds in (("piecewright", ours), ("cairocffi's methods", plain), ("typst", other)):
        print(f"  {name:22}{seconds / PAGES * 1000:7.2f}   piecewright takes {ours / seconds:5.2f} x")


def many_templates(across: int, down: int) -> str:
    """A block of so many pieces, every one of another shape: 24 x 25 of them take about 200 pages."""
    cells = [(x, y) for y in range(down) for x in range(across)]
    lines = [f'edition 1\nblock "Bench Field" {{\n  grid {across} x {down} of 3in']
    lines += [f"  seam (0, {y}) -- ({across}, {y})" for y in range(1, down)]
    for number, (x, y) in enumerate(cells):
        top, bottom = (number * 37 % 500 - 250) / 1000, (number * 61 % 499 - 249) / 1000
        if x:
            lines.append(f"  seam ({x + top}, {y}) -- ({x + bottom}, {y + 1})")
    lines += [
        f"  piece p{x}-{y} at ({x + 0.5}, {y + 0.5}) in {'dark' if (x + y) % 2 else 'pale'}" for x, y in cells
    ]
    return "\n".join(lines) + "\n}\n"


def bench_whole(text: str, what: str) -> None:
    """Text to PDF in one process: drafting, templates, layout and drawing, beside typst's drawing alone."""
    source = Source("bench.block", text)
    documents: list[Document] = []
    gc.set_threshold(CYCLES_BORN)  # as the command does

    def work(_: int) -> None:
        made = compile_source(source, DictShelf({})).value
        assert made, "the blocks are sound"
        documents[:] = [arrange_block(each.draft, each.templates, SheetOptions()) for each in made]
        for document in documents:
            pdf_bytes(document)

    ours = least(work, ROUNDS)
    pages = [page for document in documents for page in document.pages]
    other = least(lambda number: by_typst(pages, f"whole {number}"), ROUNDS)
    share = 1000 / len(pages)
    print(f"{len(pages)} pages of {what}, milliseconds a page, geometry, layout and drawing")
    print(f"  {'piecewright':22}{ours * share:7.2f}")
    print(f"  {'typst, drawing alone':22}{other * share:7.2f}   piecewright takes {ours / other:5.2f} x")


def main() -> None:
    """Prints every ratio."""
    bench_drawing()
    bench_whole(many_templates(24, 25), "one block")
    bench_whole(fans(200), "200 blocks")


if __name__ == "__main__":
    main()
