"""Whatever else a process has made, the same text and options make the same bytes. Run by hand.

    python tests/proof/same_bytes.py [COUNT] [ROUNDS] [SEED]

COUNT blocks and quilts, of turned and mirrored units above all, are each made in a process of its own. Then
one process makes all of them ROUNDS times over, each time in another order: alone, and with others in one
command. Every file and every word must be as it was.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Final

sys.path.insert(0, str(Path(__file__).parent.parent))

from support.command import piecewright, process
from support.library import library_sources
from support.planar_blocks import planar_block
from support.random_blocks import UNITS

COUNT, ROUNDS, SEED = 60, 3, 1

TOGETHER: Final = 4
"""Files that are given to one command."""

RULERS: Final = ("1/16in", "1/16in", "1/8in", "1/4in", "0.25cm")
UNIT_NAMES: Final = ("pair", "fan", "kite")

CLOTHS: Final = """  fabric indigo shrinks 3%
  fabric rose one way
  fabric sand striped
  roles dark = indigo, pale = sand, red = rose, background = sand
"""

Made = Mapping[str, str]
"""Digests of files by name, and of what was said."""


@dataclass(frozen=True, slots=True)
class Job:
    """A file and what is to be made of it."""

    name: str
    text: str
    command: str
    options: tuple[str, ...]


def jobs(count: int, seed: int) -> Iterator[Job]:
    """So many files, no two of one title."""
    for number in range(count):
        chance = Random(seed * 1_000_003 + number)
        kind = chance.choice(("rows", "rows", "rows", "quilt", "flat", "library"))
        if kind == "flat":
            text = planar_block(chance.randrange(10**6))
        elif kind == "library":
            text = chance.choice(library_sources()).text
        else:
            text = _units(chance, number, kind == "quilt")
        command = chance.choice(("build", "build", "build", "check", "resize"))
        if kind == "quilt" and command == "resize":
            command = "build"
        yield Job(
            f"job-{number}.{'quilt' if kind == 'quilt' else 'block'}",
            text,
            command,
            tuple(_options(chance, command, kind == "quilt")),
        )


def _units(chance: Random, number: int, quilted: bool) -> str:
    """A block of turned and mirrored units; as many quilts again have it in their cells."""
    across, down = chance.randint(1, 4), chance.randint(1, 4)
    rows = ["row " + ", ".join(_cell(chance) for _ in range(across)) for _ in range(down)]
    uses = "".join(f'  use "{name.capitalize()}" as {name}\n' for name in UNIT_NAMES)
    side = chance.choice(("2in", "3in", "2 1/2in", "7cm"))
    text = f'{UNITS}block "Rows {number}" version 1 {{\n{uses}  grid {across} x {down} of {side}\n'
    text += "".join(f"  {row}\n" for row in rows) + "}\n"
    if quilted:
        setting = chance.choice(("straight 3 across 3 down", "on point 2 across 3 down"))
        ground = " with triangles in sand" if "point" in setting else ""
        border = chance.choice(("", "  border 2 1/2in in rose\n", "  border 3in in indigo mitred\n"))
        text += (
            f'quilt "Quilt {number}" version 1 {{\n  use "Rows {number}" as rows\n{CLOTHS}'
            f"  set {setting} of {3 * across}in x {3 * down}in{ground} {{ alternate rows stretched, "
            f"plain sand }}\n{border}  binding 2 1/2in in indigo\n  backing in sand\n}}\n"
        )
    return text


def _cell(chance: Random) -> str:
    if chance.random() < 0.15:
        return "plain pale"
    turned = chance.choice(("", " turned 90deg", " turned 180deg", " turned 270deg"))
    return chance.choice(UNIT_NAMES) + turned + chance.choice(("", " mirrored"))


def _options(chance: Random, command: str, quilted: bool) -> Iterator[str]:
    if command == "check":
        return
    yield from ("--ruler", chance.choice(RULERS))
    if command == "resize":
        yield from ("--to", chance.choice(("9in", "11in", "24cm")))
        yield from ("--format", chance.choice(("text", "json")))
        return
    yield from ("--paper", chance.choice(("letter", "a4")))
    yield from ("--kind", chance.choice(("allowance", "finished")))
    yield from ("--lines", chance.choice(("cut-solid", "cut-dashed")))
    if chance.random() < 0.5:
        yield "--booklet"
        yield from ("--format", chance.choice(("pdf", "pdf,html", "svg")))
    if quilted:
        yield "--tables"


def digests(folder: Path, *said: str) -> Made:
    """What lies in a folder beside the sources, and what was said."""
    made = {
        path.name: sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.iterdir())
        if path.suffix not in (".block", ".quilt")
    }
    return {**made, "said": sha256("\n".join(said).encode()).hexdigest()}


def made_alone(job: Job, env: Mapping[str, str] | None = None) -> Made:
    """What a process of its own makes."""
    with TemporaryDirectory() as given:
        folder = Path(given)
        (folder / job.name).write_text(job.text, encoding="utf-8")
        ended = process(job.command, job.name, *job.options, env=env or {}, folder=folder)
        assert ended.status in (0, 1), ended.err
        return digests(folder, ended.out, ended.err)


def made_here(job: Job, others: tuple[Job, ...] = ()) -> Made:
    """What this process makes, with other files in the same command; then only files are told of."""
    with TemporaryDirectory() as given:
        folder, before = Path(given), Path.cwd()
        for each in (job, *others):
            (folder / each.name).write_text(each.text, encoding="utf-8")
        os.chdir(folder)
        try:
            names = [each.name for each in (*others, job)]
            ended = piecewright(job.command, *names, *job.options)
        finally:
            os.chdir(before)
        return digests(folder, ended.out, ended.err)


def differences(first: Made, second: Made, *, files_only: bool = False) -> list[str]:
    """The files that differ; those that only one has, but where other files were made beside them."""
    names = first.keys() if files_only else first.keys() | second.keys()
    return sorted(
        name for name in names if not (files_only and name == "said") and first.get(name) != second.get(name)
    )


def compared(wanted: Mapping[Job, Made], rounds: int, seed: int) -> tuple[int, list[str]]:
    """How many builds were held against those made alone, and what was otherwise."""
    chance, builds, wrong = Random(seed), 0, []
    every = list(wanted)
    for turn in range(rounds):
        for job in chance.sample(every, len(every)):
            found = {"alone": (made_here(job), False)}
            if job.command == "build":
                alike = [each for each in every if each.options == job.options and each is not job]
                others = tuple(chance.sample(alike, min(TOGETHER - 1, len(alike))))
                found["together"] = made_here(job, others), True
            for way, (made, files_only) in found.items():
                builds += 1
                off = differences(wanted[job], made, files_only=files_only)
                if off:
                    wrong.append(f"{job.name} {way}, round {turn + 1}, {' '.join(job.options)}: {off}")
    return builds, wrong


def main(count: int, rounds: int, seed: int) -> int:
    """Prints what differed, and how many builds were compared."""
    wanted = {job: made_alone(job) for job in jobs(count, seed)}
    again = [job.name for job, made in wanted.items() if made_alone(job, {"PYTHONHASHSEED": "7"}) != made]
    builds, wrong = compared(wanted, rounds, seed)
    for each in wrong:
        print(each)
    files = sum(len(made) - 1 for made in wanted.values())
    print(f"{count} jobs, {files} files; alone again: {len(again)} otherwise {' '.join(again)}")
    print(f"{builds} builds in one process, {len(wrong)} otherwise")
    return 1 if wrong or again else 0


if __name__ == "__main__":
    given = [int(each) for each in sys.argv[1:]]
    raise SystemExit(main(*given, *(COUNT, ROUNDS, SEED)[len(given) :]))
