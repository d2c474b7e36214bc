"""What is said of a block's sizes: at which its cuts lie on the ruler, and what happens at others."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from ...cutting.reasons import OffMark
from ...cutting.sizes import tried_from, unit_of
from ..phrases import count_of
from .reasons import reason_words
from .shapes import shape_word

if TYPE_CHECKING:
    from ...cutting.methods.method import Method
    from ...cutting.sizes import BlockSize, CutAt
    from ...drafting.model import Draft
    from ..say import Say

EVENLY: Final = 3  # sizes; more of them, all as far apart, are told by their distance

OTHERS: Final = "Other sizes, the best first"
HEADS: Final = ("size", "off the ruler", "furthest from the next mark")


def title_words(title: str, version: int) -> str:
    """`Vane, version 1`."""
    return f"{title}, version {version}"


def drafted_words(say: Say, draft: Draft) -> str:
    """`Drafted 12in x 12in; cut to 1/8in.`"""
    return f"Drafted {say.size_on_ruler(draft.width, draft.height)}; cut to {say.on_ruler(say.ruler)}."


def good_lines(say: Say, good: Sequence[BlockSize], others: Sequence[BlockSize]) -> Iterator[str]:
    """`At 6, 9 and 12in all cuts are to the 1/8in.` Whole inches first, then all between; what was tried."""
    to = say.on_ruler(say.ruler)
    first, last = (say.on_ruler(each) for each in tried_from(say.ruler))
    tried = f"Tried: sizes from {first} to {last}, {to} apart."
    if not good:
        yield f"At no size are all cuts to the {to}."
    elif not others and all(each.always for size in good for each in size.cuts):
        yield "At every size all pieces are cut by templates."
        return
    else:
        widths = [Fraction(each.width) for each in good]
        whole = [each for each in widths if each % unit_of(say.ruler) == 0]
        yield f"At {say.each_on_ruler(whole or widths)} all cuts are to the {to}."
        if whole and len(whole) < len(widths):
            yield f"They are {_between(say, widths)}."
    yield tried


def _between(say: Say, widths: Sequence[Fraction]) -> str:
    """`at every 3/8in from 3in to 24in`; sizes that do not go on so evenly, one by one: those not whole."""
    steps = {later - earlier for earlier, later in pairwise(widths)}
    if len(steps) == 1 and len(widths) > EVENLY:
        step, first, last = (say.on_ruler(each) for each in (*steps, widths[0], widths[-1]))
        return f"at every {step} from {first} to {last}"
    return f"also at {say.each_on_ruler([each for each in widths if each % unit_of(say.ruler)])}"


def always_words(count: int) -> str:
    """Above the templates that no size makes cuts of the ruler."""
    return f"Cut by {'a template' if count == 1 else 'templates'} at every size"


def size_cells(say: Say, size: BlockSize) -> tuple[str, str, str]:
    """A size off the ruler below HEADS: how many of its cuts are, and the furthest from a mark."""
    worst = max(size.off, key=lambda each: each.off)
    return (
        say.on_ruler(size.width),
        f"{len(size.off)} of {len(size.cuts)}: {', '.join(each.label for each in size.off)}",
        f"{say.on_ruler(round(worst.off, 3))} ({worst.label})",
    )


def more_words(count: int) -> str:
    """Of the sizes that are not listed."""
    return f"and {count} more"


def at_size(say: Say, size: BlockSize) -> str:
    """`At 9in x 9in 2 cuts fall off the ruler.`"""
    count = len(size.off)
    off = (
        f"{count_of(count, 'cut falls', 'cuts fall')} off the ruler" if count else "all cuts are on the ruler"
    )
    return f"At {say.size_on_ruler(size.width, size.height)} {off}."


def cut_words(say: Say, cut: CutAt) -> str:
    """`square, cut 3 1/2in x 3 1/2in`, or why it is a template here."""
    method = cut.method
    why = reason_words(say, method.reason)
    if cut.always:
        return f"template, as at every size: {why}"
    if method.kind == "template":
        by = f" (off by {say.on_ruler(round(cut.off, 3))})"
        return f"becomes a template: {why}{'' if isinstance(method.reason, OffMark) else by}"
    over = f", {say.on_ruler(round(method.excess, 3))} over the exact" if method.excess > 0 else ""
    return f"{shape_word(method.kind)}, cut {_measures(say, method)}{over}"


def _measures(say: Say, method: Method) -> str:
    if method.strip is not None:
        return f"from a strip of {say.on_ruler(method.strip)}"
    return say.size_on_ruler(method.width, method.height)
