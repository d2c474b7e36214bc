"""Every rotary rule followed by its printed numbers: the shape off the ruler is the template's own.

What is read of a rule is what the chart prints: the kind, what is measured, the strip, the angle, and what is
done then. The shape wanted is the finished outline with its allowances, points untrimmed (SOURCES 1.1).
"""

from __future__ import annotations

from cmath import phase
from fractions import Fraction
from math import cos, degrees, pi, radians, sin, sqrt, tan

import pytest
from piecewright.cutting.handling import Parted
from piecewright.cutting.methods.method import cut_corners
from piecewright.cutting.methods.recognise import recognise
from piecewright.cutting.methods.rotary import choose_cut
from piecewright.cutting.plan_model import Cut
from piecewright.cutting.reasons import TemplateReason
from support.needs import box, half_square, need, quarter_square

STEPS = {
    "1/8in": Fraction(1, 8),
    "1/16in": Fraction(1, 16),
    "1/4in": Fraction(1, 4),
    "0.25cm": Fraction(25, 254),
}
THREE_CM = Fraction(300, 254)
"""An inch as three centimetres: the allowance of 1/4in comes to 0.75cm, the trade's own in centimetres
(common practice, no published source)."""

ROOT_2, ROOT_3 = sqrt(2), sqrt(3)
HALF = 1.5 * 2 / ROOT_3

SHAPES = {
    "square": box(3, 3),
    "rectangle": box(2, 4),
    "half-square-triangle": half_square(3),
    "quarter-square-triangle": quarter_square(4),
    "half-rectangle-triangle": [(0, 0), (3, 0), (0, 4)],
    "equilateral-triangle": [(0, 0), (6 / ROOT_3, 0), (3 / ROOT_3, 3)],
    "diamond": [(0, 0), (2.5 * ROOT_2, 0), (2.5 * ROOT_2 + 2.5, 2.5), (2.5, 2.5)],
    "diamond of 60deg": [(0, 0), (6 / ROOT_3, 0), (9 / ROOT_3, 3), (3 / ROOT_3, 3)],
    "parallelogram": [(0, 0), (3 * ROOT_2, 0), (3 * ROOT_2 + 2, 2), (2, 2)],
    "trapezoid": [(0, 2), (2, 0), (4, 0), (6, 2)],
    "hexagon": [(0, 0), (HALF, 0), (HALF * 1.5, 1.5), (HALF, 3), (0, 3), (-HALF / 2, 1.5)],
    "kite": [(0, 0), (2, 1), (0, 5), (-2, 1)],
}
TRADE_OVER = {"half-square-triangle": 0.021447, "quarter-square-triangle": 0.042893, "trapezoid": 0.042893}
"""How far the trade's + 7/8in and + 1 1/4in lie over the exact (SOURCES 1.1); a trapezoid's long side at
45deg is as a quarter-square triangle's."""


def wanted(kind: str, step: str, grow: Fraction = Fraction(0)):
    unit = THREE_CM if step == "0.25cm" else Fraction(1)
    corners = [
        (
            x * unit if isinstance(x, int) else x * float(unit),
            y * unit if isinstance(y, int) else y * float(unit),
        )
        for x, y in SHAPES[kind]
    ]
    return need([(x * (1 + grow), y * (1 + grow)) for x, y in corners], 4, allowances=unit / 4)


def off_the_ruler(cut: Cut) -> list[complex]:
    """The corners of one piece, cut as the chart says, clockwise."""
    wide, high = float(cut.width), float(cut.height)
    strip = float(cut.strip) if cut.strip is not None else high
    angle = radians(float(cut.angle)) if cut.angle is not None else pi / 2
    match cut.kind:
        case "square" | "rectangle":
            return [0, wide, wide + 1j * high, 1j * high]
        case "half-square-triangle" | "half-rectangle-triangle":
            (parted,) = cut.then
            assert isinstance(parted, Parted) and parted.times == "once"
            return [0, wide, 1j * high]
        case "quarter-square-triangle":
            (parted,) = cut.then
            assert isinstance(parted, Parted) and parted.times == "twice"
            return [0, wide, complex(wide / 2, wide / 2)]
        case "equilateral-triangle":
            return [0, strip / tan(angle) * 2, complex(strip / tan(angle), strip)]
        case "diamond" | "parallelogram":
            along, lean = wide / sin(angle), strip / tan(angle)
            return [0, along, complex(along + lean, strip), complex(lean, strip)]
        case "trapezoid":
            lean = strip / tan(angle)
            return [complex(0, strip), lean, wide - lean, complex(wide, strip)]
        case "hexagon":
            side = strip / ROOT_3  # a diamond's points cut off as far from its middle as its sides are
            return [side * complex(cos(pi / 3 * turn), sin(pi / 3 * turn)) for turn in range(6)]
    raise AssertionError(f"no way is known to cut {cut.kind}")


def corners_of(places) -> list[tuple[float, float]]:
    """Each corner's angle in degrees and the length of the side after it, in order."""
    found = []
    for at, place in enumerate(places):
        before, after = places[at - 1] - place, places[(at + 1) % len(places)] - place
        found.append((abs(degrees(phase(after / before))), abs(after)))
    return found


def most_over(made: list[complex], exact: list[complex]) -> float:
    """The most that a side is longer than the exact one's, the corners of both alike; either may be up."""
    best = float("inf")
    for hand in (exact, [each.conjugate() for each in reversed(exact)]):
        sides = corners_of(hand)
        for first in range(len(sides)):
            turned = [*sides[first:], *sides[:first]]
            pairs = list(zip(corners_of(made), turned, strict=True))
            if all(abs(mine[0] - other[0]) < 0.01 for mine, other in pairs):
                over = [mine[1] - other[1] for mine, other in pairs]
                if min(over) > -1e-6:
                    best = min(best, max(over))
    return best


@pytest.mark.parametrize("step", STEPS)
@pytest.mark.parametrize("kind", SHAPES)
def test_a_rule_gives_the_templates_own_shape(kind, step):
    """To the last digit where the exact cut lies on the ruler; else longer by no more than the excess makes a
    side between two of the sharpest points, 1 / tan of its half angle at each."""
    asked = wanted(kind, step)
    cut = choose_cut(asked, STEPS[step])
    if cut.kind == "template":
        assert isinstance(cut.reason, TemplateReason), cut.reason
        return
    exact = list(cut_corners(recognise(asked.outline, asked.allowances)))
    made = off_the_ruler(cut)
    sharpest = min(angle for angle, _ in corners_of(exact))
    assert most_over(made, exact) <= 2 * cut.excess / tan(radians(sharpest / 2)) + 1e-6
    if cut.outline:
        drawn = [complex(x, y) for x, y in cut.outline]
        assert most_over(made, drawn) < 1e-6, "the cutting picture shows what comes off the ruler"


@pytest.mark.parametrize("kind", [kind for kind in SHAPES if kind != "kite"])
def test_each_shape_has_a_rule_on_some_ruler(kind):
    kinds = {choose_cut(wanted(kind, step), each).kind for step, each in STEPS.items()}
    assert kind.split(" of ")[0] in kinds


@pytest.mark.parametrize("step", STEPS)
@pytest.mark.parametrize("kind", SHAPES)
def test_between_marks_it_is_a_template_and_says_why(kind, step):
    """Three hundredths larger: a rule only where its own size lies on the mark or within 1/32in under it."""
    cut = choose_cut(wanted(kind, step, Fraction(3, 100)), STEPS[step])
    if cut.kind == "template":
        assert isinstance(cut.reason, TemplateReason), cut.reason
    else:
        assert cut.excess <= TRADE_OVER.get(cut.kind, 0) + 1 / 32 + 1e-9
