"""Blocks as a quilter might draw them on graph paper, by a seeded die: curves, needles, wide allowances.

Arcs about corners and through points, circles that touch sides and seams, points of 2 to 20 degrees between
lines and curves, strips and corners of a quarter inch, allowances of up to an inch and others along some
edges, every way to trim, outlines other than rectangles. Seams mostly end where they can, so that most
programs draft.
"""

from __future__ import annotations

from cmath import exp, phase
from dataclasses import dataclass, field
from math import atan2, cos, degrees, pi, radians, sin, tan
from random import Random

from piecewright.diagnostics.diagnostic import Outcome, Severity
from piecewright.diagnostics.source import Source
from piecewright.pipeline import CompiledBlock
from support.check import compile_source

from .check import DictShelf

Place = tuple[float, float]
"""Inches from the block's top left."""

ALLOWANCES = (
    "",
    "",
    "",
    "allowance 1/2in",
    "allowance 1/2in",
    "allowance 1in",
    "allowance 3/8in",
    "allowance 1/8in",
    "allowance 0.7in",
)
EDGE_ALLOWANCES = ("1/2in", "1in", "1/4in", "1/8in", "3/8in")
TRIMS = (
    "",
    "",
    "",
    "",
    "trim none",
    "trim square",
    "trim square 1/8in",
    "trim square 1in",
    "trim matched 1/8in",
    "trim matched 1/2in",
    "trim matched 1in",
)


@dataclass
class Ground:
    """A block's size in inches, its grid, its outline's corners and what is said so far."""

    width: float
    height: float
    across: int
    down: int
    corners: list[Place]
    said: list[str] = field(default_factory=list)
    lines: list[tuple[Place, Place]] = field(default_factory=list)
    ends: list[Place] = field(default_factory=list)
    arcs: list[str] = field(default_factory=list)

    def place(self, at: Place) -> str:
        """Inches as grid steps."""
        return f"({_number(at[0] * self.across / self.width)}, {_number(at[1] * self.down / self.height)})"


def _number(value: float) -> str:
    return f"{value:.9f}".rstrip("0").rstrip(".") if abs(value) > 1e-9 else "0"


def natural_block(seed: int) -> str:
    """The program of one number."""
    die = Random(seed)
    head, ground = _ground(die)
    for _ in range(die.choice((1, 1, 2, 2, 2, 3, 3, 4))):
        die.choice(SEAMS)(die, ground)
    said = [head, *ground.said, *_allowances(die, ground)]
    return f'edition 1\nblock "Trial {seed}" {{\n  ' + "\n  ".join(each for each in said if each) + "\n}\n"


def _ground(die: Random) -> tuple[str, Ground]:
    kind = die.random()
    if kind < 0.12:
        return _path(die)
    width = die.choice((4, 6, 6, 8, 8, 9, 10, 12))
    height = width if die.random() < 0.8 else die.choice((3, 4, 6, 8))
    across, down = die.choice((1, 2, 3, 4, 4, 5, 6)), die.choice((2, 3, 4))
    if height == width:
        down = across
    corners = [(0.0, 0.0), (float(width), 0.0), (float(width), float(height)), (0.0, float(height))]
    size = f"{width}in" if height == width else f"{width}in x {height}in"
    return (
        f"finished {size}\n  grid {across} x {down}",
        Ground(
            width,
            height,
            across,
            down,
            corners,
            lines=list(zip(corners, corners[1:] + corners[:1], strict=True)),
        ),
    )


def _path(die: Random) -> tuple[str, Ground]:
    """An outline of a few corners on the box of 8in, some sides of it curved."""
    shape = die.choice(
        (
            [(0, 0), (8, 0), (8, 4), (4, 4), (4, 8), (0, 8)],
            [(4, 0), (8, 4), (4, 8), (0, 4)],
            [(0, 0), (8, 0), (4, 8)],
            [(2, 0), (6, 0), (8, 4), (6, 8), (2, 8), (0, 4)],
            [(0, 0), (8, 0), (8, 8)],
            [(0, 0), (8, 2), (8, 6), (0, 8)],
            [(0, 0), (8, 0), (8, 1)],
            [(0, 8), (1, 0), (2, 8)],
            [(0, 0), (4, 2), (8, 0), (8, 8), (0, 8)],
        )
    )
    corners = [(float(x), float(y)) for x, y in shape]
    ground = Ground(8, 8, 8, 8, corners)
    hops = ground.place(corners[0])
    for one, two in zip(corners, corners[1:] + corners[:1], strict=True):
        bulge = die.choice((0.0, 0.0, 0.0, 0.1, -0.1, 0.3))
        through = _bulged(one, two, bulge)
        if bulge and 0 <= through[0] <= 8 and 0 <= through[1] <= 8:
            hops += f" ~~ {ground.place(two)} through {ground.place(through)}"
        else:
            hops += f" -- {ground.place(two)}"
            ground.lines.append((one, two))
    return f"finished 8in\n  grid 8 x 8\n  outline {hops}", ground


def _bulged(one: Place, two: Place, bulge: float) -> Place:
    """The middle of two places, moved to the right of the way by a share of the way."""
    return (
        (one[0] + two[0]) / 2 - (two[1] - one[1]) * bulge,
        (one[1] + two[1]) / 2 + (two[0] - one[0]) * bulge,
    )


def _spot(die: Random, ground: Ground) -> Place:
    """A place where a seam may end: a corner, an end of another seam, or on a line."""
    chance = die.random()
    if chance < 0.25:
        return die.choice(ground.corners)
    if ground.ends and chance < 0.4:
        return die.choice(ground.ends)
    if not ground.lines:
        return die.choice(ground.corners)
    one, two = die.choice(ground.lines)
    share = die.choice((0.25, 0.5, 0.5, 0.75, 0.125, 0.375, 0.03125, 0.9375))
    return one[0] + (two[0] - one[0]) * share, one[1] + (two[1] - one[1]) * share


def _arc_between(one: Place, two: Place, through: Place, ground: Ground) -> str:
    """The arc as a seam; its mirror image in its chord where the arc itself leaves the block's box."""
    if not _stays(one, two, through, ground):
        along = complex(two[0] - one[0], two[1] - one[1])
        over = (complex(through[0] - one[0], through[1] - one[1]) / along).conjugate() * along
        through = one[0] + over.real, one[1] + over.imag
    return f"seam {ground.place(one)} ~~ {ground.place(two)} through {ground.place(through)}"


def _stays(one: Place, two: Place, through: Place, ground: Ground) -> bool:
    """Whether the arc through three places stays in the block's box."""
    a, b, c = (complex(*each) for each in (one, through, two))
    if abs(((b - a).conjugate() * (c - a)).imag) < 1e-9:
        return True
    w = (c - a) / (b - a)
    center = (b - a) * (w - abs(w) ** 2) / (2j * w.imag) + a
    _, mid, last = (phase((each - center) / (a - center)) % (2 * pi) for each in (a, b, c))
    sweep = last if mid < last else last - 2 * pi
    places = [center + (a - center) * exp(1j * sweep * at / 40) for at in range(41)]
    return all(
        -1e-6 <= at.real <= ground.width + 1e-6 and -1e-6 <= at.imag <= ground.height + 1e-6 for at in places
    )


def _two(die: Random, ground: Ground) -> tuple[Place, Place]:
    while True:
        one, two = _spot(die, ground), _spot(die, ground)
        if abs(one[0] - two[0]) + abs(one[1] - two[1]) > 0.2:
            return one, two


def _inner(die: Random, ground: Ground) -> Place:
    """A place inside the block's box, on halves of the grid."""
    across, down = 2 * ground.across, 2 * ground.down
    return (
        die.randint(1, across - 1) * ground.width / across if across > 2 else ground.width / 2,
        die.randint(1, down - 1) * ground.height / down if down > 2 else ground.height / 2,
    )


# ---- seams ------------------------------------------------------------------------------------------------


def _line(die: Random, ground: Ground) -> None:
    one, two = _two(die, ground)
    if die.random() < 0.4:
        middle = _inner(die, ground)
        ground.said.append(f"seam {ground.place(one)} -- {ground.place(middle)} -- {ground.place(two)}")
        ground.lines += [(one, middle), (middle, two)]
        ground.ends.append(middle)
    else:
        ground.said.append(f"seam {ground.place(one)} -- {ground.place(two)}")
        ground.lines.append((one, two))
    ground.ends += [one, two]


def _arc(die: Random, ground: Ground) -> None:
    """Any bulge: from all but straight to most of a circle."""
    one, two = _two(die, ground)
    through = (
        _inner(die, ground)
        if die.random() < 0.4
        else _bulged(one, two, die.choice((0.05, 0.1, 0.25, 0.5, 1.0)) * die.choice((1, -1)))
    )
    ground.said.append(_arc_between(one, two, through, ground))
    ground.arcs.append(ground.said[-1].removeprefix("seam "))
    ground.ends += [one, two]


def _sharp_arc(die: Random, ground: Ground) -> None:
    """An arc that leaves a line, or another arc on the same ends, at 2 to 20 degrees."""
    one, two = _two(die, ground)
    angle = die.choice((2, 3, 5, 7, 10, 15, 20, die.uniform(2, 20)))
    bulge = tan(radians(angle) / 2) / 2
    first = _bulged(one, two, bulge)
    ground.said.append(_arc_between(one, two, first, ground))
    if die.random() < 0.5:
        ground.said.append(f"seam {ground.place(one)} -- {ground.place(two)}")
        ground.lines.append((one, two))
    else:
        second = _bulged(one, two, die.choice((-bulge, bulge * 2, bulge * 3, -bulge / 2)))
        ground.said.append(_arc_between(one, two, second, ground))
    ground.ends += [one, two]


def _needle(die: Random, ground: Ground) -> None:
    """Two lines from one place, 2 to 20 degrees apart, each on to the outline."""
    one, _ = _two(die, ground)
    angle = die.choice((2, 4, 6, 8, 12, 16, 20, die.uniform(2, 20)))
    count = die.choice((1, 1, 2))
    inward = degrees(atan2(ground.width / 2 - one[0], one[1] - ground.height / 2))
    heading = inward + die.choice((0, 0, 10, 20, 30, -10, -20, -30, 40))
    for at in range(count + 1):
        ground.said.append(
            f"seam {ground.place(one)} -- "
            f"(meet {ground.place(one)} at {_number((heading + at * angle) % 360)}deg, outline)"
        )
    ground.ends.append(one)


def _circle(die: Random, ground: Ground) -> None:
    """A circle: anywhere inside, or touching a side or another seam."""
    center = _inner(die, ground)
    room = min(center[0], center[1], ground.width - center[0], ground.height - center[1])
    share = die.choice((1.0, 1.0, 0.5, 0.75, 0.9, 0.25, 0.97))
    if die.random() < 0.3:
        ground.said.append(
            f"seam circle around {ground.place(center)} through {ground.place(_inner(die, ground))}"
        )
        return
    radius = die.choice((room * share, room * share, 0.25, 0.5, 1.0, 0.3))
    ground.said.append(f"seam circle around {ground.place(center)} radius {_number(radius)}in")


def _corner_arc(die: Random, ground: Ground) -> None:
    """Quarter circles about a corner of the box: one, or a ring of two a quarter inch or more apart."""
    right, low = die.random() < 0.5, die.random() < 0.5
    corner = (ground.width if right else 0.0, ground.height if low else 0.0)
    reach = die.choice((0.25, 0.5, 1, 2, 3, 4, min(ground.width, ground.height)))
    for radius in (reach, *die.choice(((), (), (reach + 0.25,), (reach + 1,)))):
        if radius > min(ground.width, ground.height):
            continue
        one = (corner[0] + (-radius if right else radius), corner[1])
        two = (corner[0], corner[1] + (-radius if low else radius))
        ground.said.append(f"seam {ground.place(one)} ~~ {ground.place(two)} around {ground.place(corner)}")
        ground.ends += [one, two]


def _turned(die: Random, ground: Ground) -> None:
    """A star, a wheel or petals about the centre."""
    count = die.choice((3, 4, 4, 4, 5, 6, 8, 12))
    middle = (ground.width / 2, ground.height / 2)
    reach = die.choice((1, 1.5, 2, 2.5)) * min(ground.width, ground.height) / 8
    heading = die.choice((0, 0, 10, 22.5, 45, 5))
    kind = die.random()
    rim = f"point rim = {_number(reach)}in from center at {_number(heading)}deg"
    if kind < 0.3:
        said = f"seam center -- (meet center at {_number(heading)}deg, outline)"
    elif kind < 0.5:
        said = f"{rim}  seam center -- rim -- outline"
    elif kind < 0.65:
        bulge = die.choice((0.5, 0.9, 1.2, 0.1))
        through = f"({_number(bulge)} from center to (1/2 from rim to next rim))"
        said = f"{rim}  seam rim ~~ next rim through {through}  seam center -- rim"
    elif kind < 0.8:
        at = (
            middle[0] + reach * sin(radians(heading + 30)) / 2,
            middle[1] - reach * cos(radians(heading + 30)) / 2,
        )
        back = (
            middle[0] + reach * sin(radians(heading - 30)) / 2,
            middle[1] - reach * cos(radians(heading - 30)) / 2,
        )
        said = (
            f"{rim}  seam center ~~ rim through {ground.place(at)}"
            f"  seam center ~~ rim through {ground.place(back)}"
        )
    else:
        said = f"{rim}  seam rim -- ({die.choice(('1/4', '1/2', '1/8'))} from center to next rim) -- center"
        said += "  seam center -- rim -- outline"
    ground.said.append(f"turn {count} about center {{ {said} }}")


def _small(die: Random, ground: Ground) -> None:
    """A corner or a strip of a quarter inch or a little more."""
    step = die.choice((0.25, 0.25, 0.375, 0.5, 1))
    if die.random() < 0.5:
        other = die.choice((step, 1, 2, step * 2))
        one, two = (ground.width - step, 0.0), (ground.width, other)
    else:
        one, two = (0.0, step), (ground.width, die.choice((step, step, step + 0.5)))
    ground.said.append(f"seam {ground.place(one)} -- {ground.place(two)}")
    ground.lines.append((one, two))
    ground.ends += [one, two]


SEAMS = (
    _line,
    _line,
    _line,
    _arc,
    _arc,
    _arc,
    _sharp_arc,
    _sharp_arc,
    _needle,
    _circle,
    _circle,
    _corner_arc,
    _corner_arc,
    _turned,
    _turned,
    _small,
)


def _allowances(die: Random, ground: Ground) -> list[str]:
    said = [die.choice(ALLOWANCES), die.choice(TRIMS)]
    for _ in range(die.choice((0, 0, 0, 0, 1, 1, 2))):
        one, two = die.choice(ground.lines or [(ground.corners[0], ground.corners[1])])
        if die.random() < 0.3:  # one end of it only, as far as another seam
            two = (one[0] + two[0]) / 2, (one[1] + two[1]) / 2
        path = f"{ground.place(one)} -- {ground.place(two)}"
        if ground.arcs and die.random() < 0.4:
            path = die.choice(ground.arcs)
        said.append(f"allowance {die.choice(EDGE_ALLOWANCES)} on {path}")
    return said


# ---- through the compile ----------------------------------------------------------------------------------


def compiled_text(text: str) -> Outcome[tuple[CompiledBlock, ...]]:
    """The program compiled, on a shelf of nothing else."""
    return compile_source(Source("trial.block", text), DictShelf({}))


def outcome_of(text: str) -> tuple[str, str]:
    """What comes of a program (`sewn`, `sewn with warnings`, the code of its first error, `exception`) and,
    where it is the compiler's fault, what was said."""
    try:
        outcome = compiled_text(text)
    except Exception as failure:  # whatever it is, it is a failure
        return "exception", f"{type(failure).__name__}: {failure}"
    codes = [each.code for each in outcome.diagnostics if each.severity is Severity.ERROR]
    if not codes:
        warned = any(each.severity is Severity.WARNING for each in outcome.diagnostics)
        return ("sewn with warnings" if warned else "sewn"), ""
    if "block-does-not-sew" in codes:
        return "block-does-not-sew", next(
            each.message for each in outcome.diagnostics if each.code == "block-does-not-sew"
        )
    return codes[0], ""
