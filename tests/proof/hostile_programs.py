"""Hostile and spoilt programs through `check`, each with its cost. Run by hand:

    PYTHONPATH=tests python tests/proof/hostile_programs.py 100000 --seed 1

prints how many came to which end, whatever ended otherwise than with a status of 0 or 1 (there must be
none), and the ten slowest. The programs are of five kinds in turn: put together from every statement by a
seeded die; files of the library with words dropped, doubled and changed; the same with numbers made extreme;
with letters changed; and what asks for much in few words.
"""

from __future__ import annotations

import argparse
import re
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import cache
from importlib.resources import files
from pathlib import Path
from random import Random
from time import process_time

from support.command import piecewright
from support.programs import ODD, SIGNS, WHOLE, WHOLE_QUILT
from support.random_blocks import UNITS
from support.random_programs import Programmer

SLOWEST = 10
NUMBER = re.compile(r"\d+(?:/\d+|\.\d+)?")
EXTREMES = (
    "0",
    "1",
    "2",
    "-1",
    "1/64",
    "1/65",
    "0.0000000001",
    "1/3",
    "7/1009",
    "359.99999999",
    "360",
    "361",
    "500",
    "999",
    "1000",
    "1001",
    "65535",
    "100000",
    "999999999999999999999999",
    "1/999999999999999999999",
    "9" * 25,
    "1/0",
    "1 1/2",
)
WORD = re.compile(r'"[^"\n]*"|\S+|\n')
HEADS = ("finished 8in", "finished 8in grid 8 x 8", "grid 40 x 40 of 1in", "outline regular 7 side 3in")


@cache
def sound_programs() -> tuple[str, ...]:
    """Every block of the library, and the two files with every statement."""
    folder = files("piecewright.library")
    found = sorted(
        str(each)
        for family in folder.iterdir()
        if family.is_dir()
        for each in family.iterdir()
        if each.name.endswith(".block")
    )
    return (*(Path(each).read_text() for each in found), WHOLE, WHOLE_QUILT)


def made(die: Random) -> str:
    """Statements and phrases put together as they come."""
    body = Programmer(die.randrange(1 << 30)).program()
    return f'{UNITS}\nblock "Trial" {{ {body} }}\n'


def respelt(die: Random) -> str:
    """A sound program with words dropped, doubled, exchanged, or replaced by odd ones."""
    words = WORD.findall(die.choice(sound_programs()))
    for _ in range(die.randint(1, 6)):
        at, to = die.randrange(len(words)), die.randrange(len(words))
        match die.randrange(5):
            case 0:
                words[at] = ""
            case 1:
                words[at] = f"{words[at]} {words[to]}"
            case 2:
                words[at], words[to] = words[to], words[at]
            case 3:
                words[at] = die.choice(ODD)
            case _:
                words[at:at] = words[at : at + die.randint(1, 30)] * die.choice((1, 2, 20))
    return " ".join(words)


def extreme(die: Random) -> str:
    """A sound program with a few of its numbers as small, as large or as odd as may be."""
    text = die.choice((*sound_programs(), made(die)))
    places = [each.span() for each in NUMBER.finditer(text)]
    for start, end in sorted(die.sample(places, min(len(places), die.randint(1, 4))), reverse=True):
        text = text[:start] + die.choice(EXTREMES) + text[end:]
    return text


def miswritten(die: Random) -> str:
    """A sound program with letters left out, put in, or copied elsewhere."""
    text = die.choice(sound_programs())
    for _ in range(die.randint(1, 10)):
        at, onto, width = die.randrange(len(text)), die.randrange(len(text)), die.randint(0, 40)
        new = die.choice((text[at : at + width], "".join(die.choices(SIGNS, k=die.randint(0, 3)))))
        text = text[:onto] + new + text[onto + die.randint(0, 3) :]
    return text


def greedy(die: Random) -> str:
    """A few words that ask for much: deep nesting, many copies, crossings, cells, names of nothing."""
    count = int(10 ** die.uniform(0.3, 2.5))
    angle, share = die.choice((1, 7, 13, 22.5, 0.001)), die.choice(("1/3", "2", "1000", "1/1000"))
    steps = [f"({die.randrange(800)}/100, {die.randrange(800)}/100)" for _ in range(min(count, 60))]
    body: Callable[[], str] = die.choice(
        (
            lambda: f"turn {min(count, 400)} about center {{ seam top -- right -- outline seam A1 -- I9 }}",
            lambda: f"turn {min(count, 200)} of {angle}deg about left {{ seam left -- top -- outline }}",
            lambda: (
                "turn 3 about center { mirror in top--right { " * min(count, 40)
                + f"seam center -- (1in from center at {angle}deg) "
                + "} } " * min(count, 40)
            ),
            lambda: "seam " + " -- ".join(steps or ["top", "left"]),
            lambda: "seam top " + " ".join(f"~~ {step} around center" for step in steps),
            lambda: " ".join(
                f"seam circle around {step} radius {die.randint(1, 90)}/16 in" for step in steps
            ),
            lambda: "alternate plain dark, plain pale " + f"rounds {count} of 1/4in about A1..B2 in dark",
            lambda: " ".join(f"seam name{at} -- other{at}" for at in range(count)),
            lambda: f"seam {'(' * min(count, 90)}{share} from top to left{')' * min(count, 90)} -- right",
            lambda: (
                " ".join(
                    f"point p{at} = {share} from p{at - 1} to right" if at else "point p0 = top"
                    for at in range(count)
                )
                + f" seam left ~~ right through p{count - 1}"
            ),
            lambda: f"seam left ~~ right through (meet top at {angle}deg, right at {angle + 1e-9:.9f}deg)",
            lambda: (
                f"allowance {die.choice(('1/64', '1', '2', '3'))}in seam through left--top seam top -- left"
            ),
            lambda: f'note "{die.choice(SIGNS) * count}"',
            lambda: die.choice(SIGNS) * count * 20,
        )
    )
    return f'edition 1\nblock "Trial" {{ {die.choice(HEADS)}\n{body()} }}\n'


KINDS = (made, respelt, extreme, miswritten, greedy)


def programs(count: int, seed: int) -> Iterator[str]:
    """So many programs, the same for the same seed."""
    for number in range(count):
        yield KINDS[number % len(KINDS)](Random(f"{seed} {number}"))


@dataclass
class Tally:
    """How many came to which end; those that came to none; and the slowest with their seconds."""

    ends: Counter[str] = field(default_factory=Counter)
    codes: Counter[str] = field(default_factory=Counter)
    broken: list[str] = field(default_factory=list)
    slowest: list[tuple[float, int, str]] = field(default_factory=list)


def try_all(count: int, seed: int, folder: Path) -> Tally:
    """Every program through `piecewright check`, in this process."""
    tally = Tally()
    path = folder / "trial.block"
    for number, text in enumerate(programs(count, seed)):
        path.write_bytes(text.encode("utf-8", "surrogatepass"))
        begun = process_time()
        try:
            ended = piecewright("check", path)
        except Exception as problem:  # a fault of the program under test, told with all the others
            tally.broken.append(f"{number}: {problem!r}"[:2000])
            continue
        taken = process_time() - begun
        tally.ends[("clean", "refused")[ended.status] if ended.status in (0, 1) else "broken"] += 1
        if ended.status not in (0, 1):
            tally.broken.append(f"{number}: status {ended.status}: {ended.err[-600:]}")
        told = re.findall(r"^(?:error|warning|note)\[([a-z-]+)\]", ended.out + ended.err, re.MULTILINE)
        tally.codes.update(set(told))
        tally.slowest = sorted([*tally.slowest, (taken, number, text)], reverse=True)[:SLOWEST]
    return tally


def main() -> int:
    """Prints the tally; 1 where anything broke."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("count", type=int, nargs="?", default=100_000)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--keep", type=Path, help="a folder for the slowest and the broken")
    given = asked.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        tally = try_all(given.count, given.seed, Path(folder))
    print(f"{given.count} programs of seed {given.seed}: {dict(tally.ends)}, {len(tally.codes)} codes met")
    print(f"broken: {len(tally.broken)}")
    for each in tally.broken[:20]:
        print(f"  {each}")
    for taken, number, text in tally.slowest:
        print(f"{taken:8.2f}s  number {number}, {KINDS[number % len(KINDS)].__name__}: {text[-90:]!r}")
        if given.keep:
            given.keep.mkdir(parents=True, exist_ok=True)
            (given.keep / f"{given.seed}-{number}.block").write_text(text, errors="surrogatepass")
    return 1 if tally.broken else 0


if __name__ == "__main__":
    sys.exit(main())
