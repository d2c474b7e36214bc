"""In which fabrics of a quilt a block is shown, and how many of it there are."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ..phrases import count_of


def either(titles: Sequence[str]) -> str:
    """`Navy twill or Rust dots`: a role that is cut from both."""
    return " or ".join(titles)


def many_fabrics(role: str, count: int) -> str:
    """`dark (5 fabrics)`."""
    return f"{role} ({count} fabrics)"


def in_fabrics(names: Mapping[str, str]) -> str:
    """Of which fabric each role is."""
    return f"In the fabrics of this quilt: {_listed(names)}."


def in_choices(
    names: Mapping[str, str], times: int, others: Sequence[tuple[Mapping[str, str], int]]
) -> tuple[str, str]:
    """Of several choices of fabrics the one that is shown, and how often each is used."""
    also = [f"{_listed(each)}, {count_of(count, 'time')}" for each, count in others]
    return (
        f"This quilt uses the block in {count_of(len(others) + 1, 'choice')} of fabrics. "
        f"Shown is the most common: {_listed(names)}, {count_of(times, 'time')}.",
        f"Also: {'; '.join(also)}.",
    )


def make_words(count: int) -> str:
    """How many are made."""
    return f"Make {count} of this block: counts here are for one."


def mirrored_words(count: int, mirrored: int) -> str:
    """How many of so many lie mirrored."""
    which = "It is" if count == 1 else f"{mirrored} of them {'is' if mirrored == 1 else 'are'}"
    return f"{which} mirrored: what lies left in the pictures lies right in it."


def _listed(names: Mapping[str, str]) -> str:
    return ", ".join(f"{role} is {name}" for role, name in names.items())
