"""Why a shape is cut as it is, what is done with it then, and how it lies on a print."""

from __future__ import annotations

from typing import Final, assert_never

from ...cutting.handling import (
    AnyWay,
    CutEnds,
    CutOnBias,
    JoinOnBias,
    JoinStrips,
    Lies,
    LongWay,
    MitreEnds,
    Parted,
    PartedByHand,
    PartedOnPrint,
    PrintAlong,
    PrintUp,
    Slant,
    SlantedCuts,
    TemplateLaid,
    Then,
    Upright,
    Zigzag,
)
from ...cutting.plan_model import Cut
from ..numbers import degrees_text
from ..phrases import count_of, one_of
from ..say import Say
from .reasons import reason_words

DIAGONALS: Final[dict[Slant, str]] = {
    "rising": "from bottom left to top right",
    "falling": "from top left to bottom right",
    "both": "twice, corner to corner",
}

PRINT_UP: Final = {
    "strip": "Its strip lies across the cloth, the print up, and the picture shows each piece{}.",
    "square": "Sew it with the print up{}.",
    "triangle": "Each triangle may lie either end up.",
}


def why_words(say: Say, cut: Cut) -> str:
    """Why it is cut so, how it lies and what follows, as sentences."""
    reason = reason_words(say, cut.reason)
    first = f"A template, for {reason}." if cut.kind == "template" else f"{reason[:1].upper()}{reason[1:]}."
    return " ".join(
        filter(None, (first, lies_words(say, cut.lies), then_words(say, cut.then, cut.cuts == 1)))
    )


def then_words(say: Say, then: tuple[Then, ...], one: bool = False) -> str:
    """What is done with each once it is cut: `Cut each square once corner to corner.` `one`: there is one."""
    return " ".join(_then(say, each, one) for each in then)


def _then(say: Say, then: Then, one: bool) -> str:
    match then:
        case Parted(box, times):
            return f"Cut {'the' if one else 'each'} {box} {times} corner to corner."
        case PartedOnPrint():
            return _parted_on_print(then)
        case PartedByHand(plain, back, first):
            ways = ["top left to bottom right", "top right to bottom left"]
            if first == "rising":
                ways.reverse()
            return f"Cut {plain} of the rectangles once from {ways[0]}, and {back} once from {ways[1]}."
        case Zigzag():
            return "Cut the strip at 60°, one way and the other."
        case SlantedCuts(angle, apart, points):
            cut = (
                f"Cut the strip at {degrees_text(angle)}, each cut {say.on_ruler(apart)} from the last, "
                "measured square to it"
            )
            off = f"; then cut both points off, {say.on_ruler(points)} from the middle" if points else ""
            return f"{cut}{off}."
        case CutEnds(ends):
            return f"Cut the strip's ends at {angles_words(ends)}."
        case JoinStrips(slanted, over):
            way = "on the slant, each join taking as much as they are wide" if slanted else "end to end"
            told = f": {say.on_ruler(over)} over in each" if over else ""
            return f"Join the strips {way}, and cut them to length{told}."
        case JoinOnBias():
            return "Join the strips on the bias."
        case CutOnBias(count, width):
            return f"Cut it at 45° into {count} strips {say.on_ruler(width)} wide, and join them."
        case MitreEnds():
            return "Mitre the ends when the corners are sewn, and trim what is over."
    assert_never(then)


def angles_words(angles: tuple[float, ...]) -> str:
    """`45°`, `45° and 60°`: each once."""
    return " and ".join(dict.fromkeys(map(degrees_text, angles)))


def _parted_on_print(then: PartedOnPrint) -> str:
    """`With the print up, cut 5 of the squares once from bottom left to top right ...`."""
    if len(then.slants) == 1:
        ((slant, _),) = then.slants
        once = "" if slant == "both" else "once "
        cut = f"each {then.box} {once}{DIAGONALS[slant]}"
    else:
        cut = one_of(
            [
                f"{count} {f'of the {then.box}s ' if not at else ''}once {DIAGONALS[slant]}"
                for at, (slant, count) in enumerate(then.slants)
            ],
            "and",
        )
    verb = "is" if then.spare == 1 else "are"
    left = f" {count_of(then.spare, 'triangle')} {verb} left over." if then.spare else ""
    return f"With the print up, cut {cut}.{left}"


def lies_words(say: Say, lies: Lies | None) -> str:
    """How the pieces lie on a print with a direction; '' where there is nothing to say."""
    match lies:
        case None:
            return ""
        case TemplateLaid():
            return _laid(lies)
        case PrintUp(of, either):
            return PRINT_UP[of].format(_either(either))
        case LongWay(across, either, shorter):
            return _long_way(across, either, shorter)
        case PrintAlong(width, height, either):
            along, broad = say.on_ruler(height), say.on_ruler(width)
            return f"The print runs along its {along}, across the cloth lie {broad}{_either(either)}."
        case Upright():
            return "Its print stands up in the quilt."
        case AnyWay():
            return "Its print may lie any way."
    assert_never(lies)


def _long_way(across: bool, either: bool, shorter: bool) -> str:
    way = "across the cloth" if across else "along the selvage"
    end = "; shorter strips, joined, buy less cloth than whole ones" if shorter else _either(either)
    return f"Cut {way}, so that the print stands up in the quilt{end}."


def _either(either: bool) -> str:
    return ", either end up" if either else ""


def _laid(lies: TemplateLaid) -> str:
    """`Lay the template 4 times as it is and 2 times turned 90° clockwise, from how it lies in the block, the
    print up.`"""
    told = {(back, turned): _turned(back, turned) for back, turned, _ in lies.ways}
    if list(told.values()) == ["as it is"]:
        how = "as it lies in the block" if lies.in_block else "with its arrow up"
        return f"Lay the template {how}, the print up{_either(lies.either)}."
    frame = "how it lies in the block" if lies.in_block else "where its arrow points up"
    ways = [
        told[back, turned] if len(lies.ways) == 1 else f"{count} times {told[back, turned]}"
        for back, turned, count in lies.ways
    ]
    return f"Lay the template {one_of(ways, 'and')}, from {frame}, the print up{_either(lies.either)}."


def _turned(back: bool, turned: float) -> str:
    turn = f"turned {degrees_text(turned)} clockwise" if turned else ""
    return " and ".join(filter(None, ("reversed" if back else "", turn))) or "as it is"
