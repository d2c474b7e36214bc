"""Programs that read well and mean little: every statement and phrase, put together by a seeded die.

Names and grid points are mostly there to be found, so that most programs come as far as their geometry; seams
hang, cross and leave the block as they please.
"""

from __future__ import annotations

from random import Random

HEADS = (
    "finished 6in grid 2 x 2",
    "finished 6in x 4in grid 3 x 2",
    "grid 2 x 2 of 3in",
    "finished 6in",
    "finished 6in grid 1:2:1 x 1:1",
    "outline regular 6 side 3in grid 2 x 2",
    "outline regular 8 side 2in",
    "finished 8in grid 2 x 2 outline top -- right ~~ bottom around center -- left",
    "finished 6in grid 2 x 2 outline left ~~ right through top ~~ left through bottom",
    "outline start -- (4in from start at 90deg) -- (5in from start at 180deg)",
)
PLACES = (
    "A1",
    "B1",
    "B2",
    "C3",
    "A3",
    "center",
    "top",
    "left",
    "right",
    "bottom",
    "bottom-right",
    "top-left",
    "(1.5, 0)",
    "(1, 2)",
    "(0.3, 1.7)",
    "(0.5, 0.5)",
)
LENGTHS = ("1in", "1/2in", "2in", "3in", "1 1/2in", "0.7in", "2cm", "6in")
ANGLES = ("0deg", "45deg", "90deg", "22.5deg", "30deg", "180deg", "-45deg", "17deg", "270deg")
SHARES = ("1/2", "1/3", "1", "3/4", "0")
POSES = ("", "", " turned 90deg", " mirrored", " stretched", " facing top-left", " turned 180deg mirrored")
REGIONS = ("A1..B2", "B1..C2", "A1..C3", "B2..C3", "A2..B3")
USES = 'use "Pair" as pair use "Fan" as fan use "Kite" as kite '


class Programmer:
    """Writes one program after another from one seed."""

    def __init__(self, seed: int) -> None:
        self.die = Random(seed)
        self.names = 0

    def program(self) -> str:
        """The body of a block."""
        head = self.die.choice(HEADS)
        body = " ".join(self._statement(0) for _ in range(self.die.randint(1, 5)))
        uses = USES if any(word in body for word in ("pair", "fan", "kite")) else ""
        return f"{uses}{head} {body}"

    def _place(self, deep: int) -> str:
        if deep < 2 and self.die.random() < 0.15:
            return f"({self._phrase(deep + 1)})"
        return self.die.choice(PLACES)

    def _line(self, deep: int) -> str:
        p, q, r = self._place(deep), self._place(deep), self._place(deep)
        return self.die.choice(
            (f"{p}--{q}", f"{p} at {self.die.choice(ANGLES)}", f"{p} parallel to {q}--{r}")
        )

    def _phrase(self, deep: int) -> str:
        p, q, r = self._place(deep), self._place(deep), self._place(deep)
        length, angle = self.die.choice(LENGTHS), self.die.choice(ANGLES)
        return self.die.choice(
            (
                p,
                f"{self.die.choice(SHARES)} from {p} to {q}",
                f"{length} from {p} to {q}",
                f"{length} from {p} at {angle}",
                f"between {p}, {q}, {r}",
                f"meet {self._line(deep)}, {self._line(deep)}",
                f"meet {self._line(deep)}, outline",
                f"foot of {p} on {self._line(deep)}",
                f"{p} turned {angle} about {q}",
                f"{p} mirrored in {self._line(deep)}",
            )
        )

    def _hop(self) -> str:
        p, q = self._place(0), self._place(0)
        return self.die.choice((f"-- {p}", f"-- {p}", f"-- {p}", f"~~ {p} around {q}", f"~~ {p} through {q}"))

    def _seam(self) -> str:
        chance = self.die.random()
        if chance < 0.6:
            hops = " ".join(self._hop() for _ in range(self.die.randint(1, 3)))
            return f"seam {self._place(0)} {hops}" + (" -- outline" if self.die.random() < 0.2 else "")
        if chance < 0.8:
            return f"seam through {self._line(0)}"
        how = self.die.choice((f"radius {self.die.choice(LENGTHS)}", f"through {self._place(0)}"))
        return f"seam circle around {self._place(0)} {how}"

    def _cell(self) -> str:
        unit = self.die.choice(("pair", "fan", "kite")) + self.die.choice(POSES)
        return self.die.choice(("plain dark", "plain pale", unit))

    def _group(self, deep: int) -> str:
        count, angle = self.die.choice((2, 3, 4, 6, 8)), self.die.choice(ANGLES)
        round_it = self.die.choice(
            (
                f"turn {count} about center",
                f"turn {count} about {self._place(0)}",
                f"turn 2 of {angle} about {self._place(0)}",
                f"mirror in {self._line(0)}",
            )
        )
        inside = " ".join(self._statement(deep + 1) for _ in range(self.die.randint(1, 3)))
        return f"{round_it} {{ {inside} }}"

    def _statement(self, deep: int) -> str:
        chance = self.die.random()
        if chance < 0.4:
            return self._seam()
        if chance < 0.5:
            self.names += 1
            return f"point p{self.names} = {self._phrase(0)}"
        if chance < 0.63:
            roles = self.die.choice(("dark", "pale", "dark, pale"))
            return f"piece {self.die.choice('xyz')} at {self._place(0)} in {roles}"
        if chance < 0.8 and deep < 2:
            return self._group(deep)
        region = self.die.choice(REGIONS)
        return self.die.choice(
            (
                f"place {self._cell()} in {region}",
                f"rounds 1 of {self.die.choice(LENGTHS)} about {region} in dark, pale mitred",
                f"row {self._cell()}, {self._cell()}",
                f"alternate {self._cell()}, {self._cell()}",
                f"grain along {self._line(0)} on {self.die.choice('xyz')}",
                f"allowance 1/2in on {self._place(0)} {self._hop()}",
            )
        )
