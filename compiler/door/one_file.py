"""One path to write to: what its ending says is made of blocks and quilts, whole or not at all."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from json import dumps
from pathlib import Path
from typing import Any

from ..diagnostics.source import Source
from ..failures import Refused, WrongUse
from ..measure.record import record
from ..words.commands import asked
from .blocks import write_file, write_files
from .choices import DPI_LEAST, DPI_MOST, Chosen, all_among, shown
from .documents import (
    BLOCK_PARTS,
    PARTS,
    QUILT_ONLY,
    Wanted,
    laying_out,
)
from .drawn_files import Subject
from .formats import FORMATS, JSON, files_in, is_one_file, of_books
from .messages import CompileError, message_of
from .naming import Names


@record
class Maker:
    """What makes the documents of one block or quilt, as was chosen; and the sources of its file."""

    subject: Subject
    chosen: Chosen
    sources: Mapping[str, Source]


def formats_known(formats: Sequence[str], booklet: bool) -> tuple[str, ...]:
    """The kinds of file, each once; WrongUse for one that there is not."""
    known = all_among(formats, tuple(FORMATS))
    for kind in filter(of_books, () if booklet else known):
        raise WrongUse(asked.for_booklets(kind))
    return known


def dpi_known(dpi: int) -> int:
    """The dots to the inch; WrongUse where there are too few or too many of them."""
    if not DPI_LEAST <= dpi <= DPI_MOST:
        raise WrongUse(asked.dpi_out_of_bounds(DPI_LEAST, DPI_MOST))
    return dpi


def write_one(
    path: str | os.PathLike[str],
    makers: Sequence[Maker],
    record: Callable[[], dict[str, Any]],
    wanted: tuple[Sequence[str], bool, int],
) -> list[Path]:
    """Writes what the ending of the path says; `wanted` are the parts, whether a booklet, and dots to the
    inch."""
    target, (given, booklet, dpi) = Path(path), wanted
    kind, parts = target.suffix[1:].lower(), all_among(given, PARTS)
    if kind not in (known := (*FORMATS, JSON)):
        raise WrongUse(asked.not_one_of(shown(target.suffix), (f".{each}" for each in known)))
    if parts and (kind == JSON or of_books(kind)):
        raise WrongUse(asked.parts_of_everything(shown(target.suffix)))
    if kind == JSON:
        return [Path(write_file(str(target), dumps(record()).encode() + b"\n"))]
    files = _files(target, makers, kind, (parts, booklet or of_books(kind), dpi_known(dpi)))
    return written(target.parent, files, [each.sources for each in makers])


def written(
    folder: str | os.PathLike[str],
    files: Iterable[tuple[str, bytes]],
    sources: Iterable[Mapping[str, Source]],
) -> list[Path]:
    """The paths written, all or none; CompileError for what has more pages than anybody prints; WrongUse
    where there is nothing to write."""
    try:
        paths = write_files(os.fspath(folder), files)
    except Refused as refused:
        known = {name: source for each in sources for name, source in each.items()}
        raise CompileError((message_of(refused.said, known),)) from refused
    return [Path(each) for each in paths]


def _files(
    target: Path, makers: Sequence[Maker], kind: str, wanted: tuple[tuple[str, ...], bool, int]
) -> Iterator[tuple[str, bytes]]:
    """Every file, made one document at a time."""
    parts, booklet, dpi = wanted
    names, ending = Names(""), target.suffix
    found = 0
    for maker in makers:
        subject, chosen = maker.subject, maker.chosen
        with laying_out(subject.called, subject.place):
            made = list(subject.made(Wanted(chosen.options, chosen.sewing, parts, booklet)))
        found += len(made)
        stem = target.stem if len(makers) == 1 else f"{target.stem}-{subject.stem(names)}"
        for each in made:
            own = f"{stem}-{each.ending}" if len(made) > 1 else stem
            files = files_in(kind, each, own, chosen.options, dpi, subject.called)
            alone = is_one_file(kind) or len(each.document.pages) == 1
            for name, data in files:
                yield f"{own}{ending}" if alone else name, data
    if not found:
        raise WrongUse(asked.no_such_part(BLOCK_PARTS, QUILT_ONLY) if makers else asked.nothing_compiled())
