"""A template's outline in each way it may be laid, and how near two of them may lie. Inches; places are
complex numbers, an outline's box starts at 0, 0."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...geometry.pose import Pose
from ..methods.method import box_of, to_corner
from .profiles import Profile, across, apart, down

Outline = tuple[complex, ...]


def posed(outline: Sequence[complex], pose: Pose) -> Outline:
    """The outline as it lies in a pose, its box at 0, 0."""
    lay = pose.motion()
    return to_corner([lay(place) for place in outline])


class Shapes:
    """An outline in some poses; distances are worked out once each."""

    def __init__(self, outline: Sequence[complex], poses: Iterable[Pose]) -> None:
        outlines = {pose: posed(outline, pose) for pose in poses}
        boxes = {pose: box_of(shape) for pose, shape in outlines.items()}
        self.sizes: dict[Pose, tuple[float, float]] = {pose: box[2:] for pose, box in boxes.items()}
        self._across: dict[Pose, Profile] = {pose: across(shape) for pose, shape in outlines.items()}
        self.below: dict[Pose, Profile] = {pose: down(shape) for pose, shape in outlines.items()}
        self._gaps: dict[tuple[Pose, Pose], float] = {}

    def gap(self, one: Pose, two: Pose) -> float:
        """How far after the first's left the second may start, in one row."""
        if (one, two) not in self._gaps:
            self._gaps[one, two] = apart(self._across[one], self._across[two])
        return self._gaps[one, two]

    def drop(self, one: Pose, two: Pose, aside: float) -> float:
        """How far below the first's top the second may start, `aside` further right; minus infinity where it
        passes it by."""
        return apart(self.below[one], self.below[two], aside)
