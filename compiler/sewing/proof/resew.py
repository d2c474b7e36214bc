"""Proof by re-sewing: cloth cut by the printed templates, sewn by the printed steps, must make the drafted
block.

A path of its own. It reads what leaves on paper (cut and sewing outlines, how many to cut, each step's two
sides, sizes, copies) and compares what it has sewn, at the end alone, with the draft.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from ...cutting.model import Template
from ...diagnostics.diagnostic import Outcome
from ...diagnostics.source import NOWHERE
from ...drafting.model import Draft
from ...geometry.edge import Point
from ...geometry.pose import STAY, TURN_OVER, Motion
from ...geometry.stroke import Stroke, place_of, stretches
from ...measure.tolerance import EXACT
from ...words.messages.sewing import does_not_sew
from ..measuring import allowance_at, corners_along, is_rectangular, measure, pins_along, stray_between
from ..model import Assembly, Proof, SeamSide, Step, Unit
from .cut_cloth import cut_out
from .misfit import FlawKind, Misfit
from .mitres import closed, parted
from .simulated import Hem, SewnCloth, along_of, laid, motion_onto, sewn, strokes_of

Pile = dict[int, tuple[str, tuple[int, ...]]]
"""What lies on the table, by its first piece: its name and its pieces."""


def prove(
    draft: Draft, templates: Sequence[Template], assembly: Assembly, mitred: Sequence[Sequence[int]] = ()
) -> Outcome[Proof]:
    """The block cut and sewn again from the printed numbers; an error where it does not come out as
    drafted.

    `mitred` are steps that are printed as one: their seams are sewn from dot to dot, then the mitres closed.
    """
    table = _Table(draft, templates, assembly)
    table.mitred = {step: max(steps) for steps in mitred for step in steps}
    try:
        table.cut_pieces()
        table.sew_steps()
        table.compare()
    except Misfit as misfit:
        said = does_not_sew(draft.origin or NOWHERE, draft.title, table.at, misfit.flaw)
        return Outcome(None, (said,))
    return Outcome(Proof(len(assembly.pieces), assembly.seams, True, table.furthest))


class _Table:
    """The sewing table: what has been cut and sewn so far, and how far it strays."""

    def __init__(self, draft: Draft, templates: Sequence[Template], assembly: Assembly) -> None:
        self.draft = draft
        self.templates = templates
        self.assembly = assembly
        self.cloths: dict[str, SewnCloth] = {}
        self.sizes: dict[str, int] = {}  # pieces in each part
        self.widths = sorted(
            {
                float(side.allowance)
                for piece in draft.pieces
                for ring in (piece.ring, *piece.holes)
                for side in ring
            }
        )
        self.laid_down: dict[str, tuple[tuple[str, Motion], tuple[str, Motion]]] = {}
        self.kinds = {
            cloth.number: (cloth.template, cloth.reversed, cloth.fabric) for cloth in assembly.pieces
        }
        self.mitred: dict[int, int] = {}  # steps sewn from dot to dot, each with the last before mitres close
        self.open_mitres = 0
        self.furthest = 0.0
        self.at = 0  # the step in hand

    # ---- cutting ---------------------------------------------------------------------------------

    def cut_pieces(self) -> None:
        """Cuts every piece by its template, and counts what the templates say to cut."""
        by_label = {template.label: template for template in self.templates}
        cut: dict[tuple[str, bool], SewnCloth] = {}
        wanted: Counter[tuple[str, str, bool]] = Counter()
        for cloth in self.assembly.pieces:
            template = by_label.get(cloth.template)
            if template is None:
                raise Misfit("no-template", cloth.number, cloth.template)
            key = (cloth.template, cloth.reversed)
            if key not in cut:
                cut[key] = cut_out(template, cloth.reversed)
            wanted[cloth.template, cloth.fabric, cloth.reversed] += 1
            self.cloths[str(cloth.number)] = cut[key]
            self.sizes[str(cloth.number)] = 1
        printed: Counter[tuple[str, str, bool]] = Counter()
        for template in self.templates:
            for count in template.counts:
                printed[template.label, count.fabric, False] += count.cut
                printed[template.label, count.fabric, True] += count.reversed
        for each in sorted(wanted.keys() | printed.keys()):
            if wanted[each] != printed[each]:
                raise Misfit("cut-count", each[0], printed[each], each[1], wanted[each])

    # ---- sewing ----------------------------------------------------------------------------------

    def sew_steps(self) -> None:
        """Sews each step once, and holds it against what is printed of it."""
        left: Pile = {cloth.number: (str(cloth.number), (cloth.number,)) for cloth in self.assembly.pieces}
        for number, (step, unit) in enumerate(zip(self.assembly.steps, self.assembly.units, strict=True), 1):
            self.at = number
            if step.step != number or step.makes != unit.id or step.batch != len(unit.copies):
                raise Misfit("numbers-disagree")
            self._sew(step, unit)
            for copy in unit.copies:
                self._take(left, step, copy.pieces)
                left[copy.pieces[0]] = unit.id, copy.pieces
        self.at = len(self.assembly.steps)
        if len(left) != 1:
            raise Misfit("parts-left", len(left))

    def _sew(self, step: Step, unit: Unit) -> None:
        seam = strokes_of(step.seam)
        back = [stroke.reversed() for stroke in reversed(seam)]
        first = self._lay(step.sides[0], seam)
        second = self._lay(step.sides[1], back)
        made = self._joined(step, first, second, seam)
        self.laid_down[unit.id] = first, second
        self.sizes[unit.id] = self.sizes[first[0]] + self.sizes[second[0]]
        self._check_seam(step, seam)
        self._check_unit(step, unit, made)

    def _joined(
        self, step: Step, first: tuple[str, Motion], second: tuple[str, Motion], seam: Sequence[Stroke]
    ) -> SewnCloth:
        """Both parts sewn together as they lie when pressed; open mitres are laid edge to edge."""
        one, two = (laid(self.cloths[name], motion) for name, motion in (first, second))
        last = self.mitred.get(step.step, 0)
        if not last:
            self.cloths[step.makes] = made = sewn(one, two, seam)
            return made
        sides, mitres = parted(seam, strokes_of(self.assembly.units[last - 1].outline))
        made = sewn(one, two, sides)
        flat, count = closed(made)
        self.open_mitres += len(mitres)
        if count != self.open_mitres:
            raise Misfit("mitre-count", count, self.open_mitres)
        self.cloths[step.makes] = flat if step.step == last else made
        self.open_mitres = 0 if step.step == last else count
        return flat

    def _lay(self, side: SeamSide, seam: Sequence[Stroke]) -> tuple[str, Motion]:
        """One part laid down with its printed edges on the seam."""
        if side.part not in self.cloths:
            raise Misfit("part-missing", side.part)
        own = strokes_of(side.edges)
        if self._is_reversed(side.part):
            own = [TURN_OVER.stroke(stroke) for stroke in own]
        motion, stray = motion_onto(own, seam)
        self.furthest = max(self.furthest, stray)
        return side.part, motion

    def _is_reversed(self, part: str) -> bool:
        return part.isdigit() and self.assembly.pieces[int(part) - 1].reversed

    def _check_seam(self, step: Step, seam: Sequence[Stroke]) -> None:
        length = sum(stroke.length for stroke in seam)
        self._hold(length, step.seam_length, "seam-length")
        if step.curved != any(stroke.center is not None for stroke in seam):
            raise Misfit("seam-not-curved")
        self._hold_places(corners_along(seam, step.closed), step.turns, "seam-turns")
        ends = [place for run in stretches(seam, EXACT) for place in (run[0].start, run[-1].end)]
        if step.closed != (abs(ends[0] - ends[-1]) <= EXACT):
            raise Misfit("seam-not-closed")
        for stop in step.stops:
            if all(abs(place_of(stop) - end) > EXACT for end in ends):
                raise Misfit("needle-stops")
        self._hold_places(pins_along(seam), step.eased, "seam-pins")
        if not self._runs_along(step, seam):
            raise Misfit("seam-of-others")
        if step.partial is not None:
            opened = self.assembly.steps[max(step.partial.opened, 1) - 1 : step.step - 1]
            if not opened or all(
                abs(place_of(step.partial.at) - place_of(turn)) > EXACT for turn in step.turns
            ):
                raise Misfit("none-to-leave-open")
            if all(abs(place_of(step.partial.at) - end) > EXACT for end in _ends(opened[0])):
                raise Misfit("left-open-elsewhere")

    def _runs_along(self, step: Step, seam: Sequence[Stroke]) -> bool:
        """Whether the edges of the draft that a step names follow each other along its whole seam."""
        graph = self.draft.graph
        if not step.path or not all(0 <= half < 2 * len(graph.edges) for half in step.path):
            return False
        path = strokes_of([graph.edge(half) for half in step.path])
        own = stretches(path, EXACT)
        ends = [(run[0].start, run[-1].end) for run in stretches(seam, EXACT)]
        if step.closed:
            ends = [(path[0].start, path[0].start)]
        follows = len(own) == len(ends) and all(
            abs(run[0].start - start) <= EXACT and abs(run[-1].end - end) <= EXACT
            for run, (start, end) in zip(own, ends, strict=True)
        )
        return follows and all(
            any(along_of(run, stroke.at(0.5)) is not None for run in seam) for stroke in path
        )

    def _check_unit(self, step: Step, unit: Unit, made: SewnCloth) -> None:
        if len(made.rings) != 1 + len(unit.holes):
            raise Misfit("window-count", unit.id, len(made.rings) - 1, len(unit.holes))
        self.furthest = max(self.furthest, stray_between(made.rings[0], strokes_of(unit.outline)))
        windows = list(made.rings[1:])
        for hole in unit.holes:
            self._match_window(windows, strokes_of(hole))
        width, height, across, down = measure(made.rings[0])
        for finished, unfinished in ((unit.finished, unit.unfinished), (step.finished, step.unfinished)):
            self._hold(width, finished.width, "finished-width", unit.id)
            self._hold(height, finished.height, "finished-height", unit.id)
            self._hold_cloth(width, across, unfinished.width, "unfinished-width", unit.id)
            self._hold_cloth(height, down, unfinished.height, "unfinished-height", unit.id)
        if unit.rectangle != is_rectangular(made.rings[0]):
            raise Misfit("printed-a-rectangle" if unit.rectangle else "not-printed-a-rectangle", unit.id)
        if len(unit.pieces) != self.sizes[unit.id] or not _same(unit.copies[0].pieces, unit.pieces):
            raise Misfit("other-pieces", unit.id)

    def _match_window(self, windows: list[tuple[Hem, ...]], printed: Sequence[Stroke]) -> None:
        """Takes out of the windows that are left the one that is printed so."""
        for ring in windows:
            try:
                self.furthest = max(self.furthest, stray_between(ring, printed))
            except Misfit:
                if ring is windows[-1]:
                    raise
            else:
                windows.remove(ring)
                return

    def _take(self, left: Pile, step: Step, pieces: tuple[int, ...]) -> None:
        """Takes one copy's parts from the pile: the very pieces printed for it, sewn together as printed."""
        first = self.sizes[step.parts[0]]
        for part, own in zip(step.parts, (pieces[:first], pieces[first:]), strict=True):
            if part.isdigit() and len(own) == 1 and self.kinds[int(part)] == self.kinds.get(own[0]):
                part = str(own[0])
            if not own or left.pop(own[0], None) != (part, own):
                raise Misfit("part-taken", part)

    def _hold(self, found: float, printed: float, what: FlawKind, *names: str) -> None:
        stray = abs(found - printed)
        if not stray <= EXACT:
            raise Misfit(what, *names, lengths=(found, printed))
        self.furthest = max(self.furthest, stray)

    def _hold_cloth(
        self, finished: float, ends: tuple[float, float], printed: float, what: FlawKind, part: str
    ) -> None:
        """Holds a size with its allowances. One that can't be measured, for others leave none of its cutting
        line, is as wide as some allowance of the draft."""
        one, other = ((end,) if end >= 0 else self.widths for end in ends)
        self._hold_one([finished + first + second for first in one for second in other], printed, what, part)

    def _hold_one(self, choices: Sequence[float], printed: float, what: FlawKind, *names: str) -> None:
        self._hold(min(choices, key=lambda each: abs(each - printed), default=0.0), printed, what, *names)

    def _hold_places(self, found: Sequence[complex], printed: Sequence[Point], what: FlawKind) -> None:
        if len(found) != len(printed) or any(
            abs(one - place_of(two)) > EXACT for one, two in zip(found, printed, strict=True)
        ):
            raise Misfit(what, len(found), len(printed))

    # ---- comparing -------------------------------------------------------------------------------

    def compare(self) -> None:
        """Holds the sewn block against the draft: its outline, its outer allowance, and where each piece
        lies."""
        last = self.assembly.units[-1].id if self.assembly.units else "1"
        block = self.cloths[last]
        if not self.assembly.units:
            block = laid(block, STAY)
        self.furthest = max(self.furthest, stray_between(block.rings[0], strokes_of(self.draft.outline)))
        for piece in self.draft.pieces:
            for side in piece.ring:
                if side.outside:
                    middle = strokes_of([side.edge])[0].at(0.5)
                    width = allowance_at(block.rings[0], middle)
                    choices = (width,) if width >= 0 else self.widths
                    self._hold_one(choices, float(side.allowance), "outer-allowance")
        self._compare_pieces(last)
        self._compare_copies()

    def _compare_pieces(self, last: str) -> None:
        """Every piece of the sewn block must lie on the drafted piece of its number."""
        whole = self.assembly.units[-1].pieces if self.assembly.units else (1,)
        stack = [(last, STAY, whole)]
        covered = []
        while stack:
            part, motion, pieces = stack.pop()
            if part.isdigit():
                self._compare_piece(pieces[0], laid(self.cloths[part], motion))
                covered.append(pieces[0])
                continue
            at = 0
            for name, own in self.laid_down[part]:
                count = self.sizes[name]
                stack.append((name, motion.after(own), pieces[at : at + count]))
                at += count
        if sorted(covered) != [piece.number for piece in self.draft.pieces]:
            raise Misfit("piece-twice-or-never")

    def _compare_piece(self, number: int, cloth: SewnCloth) -> None:
        piece, printed = self.draft.pieces[number - 1], self.assembly.pieces[number - 1]
        if piece.fabric != printed.fabric:
            raise Misfit("piece-of-other-cloth", number, printed.fabric, piece.fabric)
        for ring, drafted in zip(cloth.rings, (piece.ring, *piece.holes), strict=True):
            self.furthest = max(
                self.furthest, stray_between(ring, strokes_of([side.edge for side in drafted]))
            )

    def _compare_copies(self) -> None:
        """Each further copy of a unit must lie as printed, on the pieces printed for it."""
        middles = {
            piece.number: _middle(strokes_of([side.edge for side in piece.ring]))
            for piece in self.draft.pieces
        }
        for number, unit in enumerate(self.assembly.units, 1):
            self.at = number
            for copy in unit.copies:
                motion = copy.motion
                if copy is unit.copies[0] and abs(motion.turn - 1) + abs(motion.shift) > EXACT:
                    raise Misfit("first-copy-moved", unit.id)
                for own, other in (
                    zip(unit.pieces, copy.pieces, strict=True) if copy is not unit.copies[0] else ()
                ):
                    stray = abs(motion(middles[own]) - middles[other])
                    if self.kinds[own] != self.kinds[other] or stray > EXACT:
                        raise Misfit("copy-of-other-pieces", unit.id, other, own)


def _ends(step: Step) -> tuple[complex, complex]:
    """Where a step's seam starts and ends."""
    return place_of(step.seam[0].start), place_of(step.seam[-1].end)


def _same(one: tuple[int, ...], two: tuple[int, ...]) -> bool:
    """Whether two lists are equal; most often they are one."""
    return one is two or one == two


def _middle(strokes: Sequence[Stroke]) -> complex:
    """The mean of a ring's corners."""
    return sum(stroke.start for stroke in strokes) / len(strokes)
