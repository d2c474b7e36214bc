"""Every check, run in order; what is silenced taken out, and silences that silence nothing told."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from typing import Final

from ..diagnostics.diagnostic import Diagnostic, in_order
from ..words.messages.lint import allow_idle, allow_unknown
from . import drafted, written
from .linted import Linted
from .silence import ALLOW_CODES, Allowance, allowances_of

Check = Callable[[Linted], Iterator[Diagnostic]]

CHECKS: Final[dict[str, Check]] = {
    "family-missing": written.family_missing,
    "maker-missing": written.maker_missing,
    "version-missing": written.version_missing,
    "use-unversioned": written.use_unversioned,
    "title-blanks": written.title_blanks,
    "also-repeats": written.also_repeats,
    "size-off-ruler": written.size_off_ruler,
    "length-decimal": written.length_decimal,
    "piece-all-allowance": drafted.piece_all_allowance,
    "template-near-twin": drafted.template_near_twin,
    **dict.fromkeys(written.PASSED_ON, written.passed_on),
}
"""Each check by its name, which is also the code of what it says."""

NAMES: Final = (*CHECKS, *ALLOW_CODES)


def lint(linted: Linted, only: Collection[str] = (), allowed: Collection[str] = ()) -> tuple[Diagnostic, ...]:
    """What the checks say of a file: those named in `only`, or all; none of those in `allowed`."""
    wanted = [name for name in CHECKS if (not only or name in only) and name not in allowed]
    found = [
        each
        for check in dict.fromkeys(CHECKS[name] for name in wanted)
        for each in check(linted)
        if each.code in wanted
    ]
    allowances = allowances_of(linted)
    heard = [each for each in found if not any(allowance.covers(each) for allowance in allowances)]
    said = _of_silences(allowances, found, whole=not only and not allowed)
    return in_order((*heard, *(each for each in said if each.code not in allowed)))


def _of_silences(
    allowances: Sequence[Allowance], found: Sequence[Diagnostic], *, whole: bool
) -> Iterator[Diagnostic]:
    """Silences of checks that do not exist; where every check ran, those that silence nothing, too."""
    for each in allowances:
        if each.name not in CHECKS:
            yield allow_unknown(each.span, each.name, tuple(CHECKS))
        elif whole and not any(each.covers(said) for said in found):
            yield allow_idle(each.span, each.name)
