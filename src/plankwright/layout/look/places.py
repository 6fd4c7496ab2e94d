"""Whether courses that were changed keep every rule where they hang now."""

from collections.abc import Iterable, Mapping, Sequence

from plankwright.layout.butting import can_butt, joints_of, match, too_near
from plankwright.layout.ground import Ground, box, crossings
from plankwright.layout.plan import PlannedCourse, PlannedPiece
from plankwright.layout.runs import Run
from plankwright.layout.strips import Span, Strips
from plankwright.measure import Nm
from plankwright.model import JointPolicy, Rules

Changes = Mapping[int, PlannedCourse]
"""Courses by their number in the plan, as they are to be."""

_Seat = tuple[Nm, Nm, Nm, Nm]
"""From where to where along the courses and across them. [nm]"""

_Joint = tuple[Nm, Nm, Nm]
"""Where it is along the courses, and from where to where across them. [nm]"""


class Places:
    """The places of a surface, each looked at once.

    Only pieces that hang whole as they are cut ever move, and only to where they do: not to a slope, an edge
    out of true or an opening that bites into the course. So what is cut stays what it was, to the nanometre,
    and no end is sloped that was not.

    Parameters
    ----------
    strips
        The surface.
    """

    def __init__(self, strips: Strips) -> None:
        self._strips, self._ground = strips, Ground(strips)
        self._whole: dict[_Seat, bool] = {}
        self._sound: dict[_Seat, bool] = {}
        self._showing: dict[_Joint, bool] = {}

    def allow(self, plan: Sequence[PlannedCourse], changes: Changes) -> bool:
        """Say whether a plan keeps every rule, and shows no more joints, once some courses are changed.

        Parameters
        ----------
        plan
            A plan that keeps every rule.
        changes
            What is to be changed; the changed courses, taken together, cover what they covered before.
        """
        old = {
            (plan[number].low, plan[number].high, piece)
            for number in changes
            for piece in plan[number].pieces
        }
        new = {(course.low, course.high, piece) for course in changes.values() for piece in course.pieces}
        return (
            all(self._hangs_whole(_seat(low, high, piece)) for low, high, piece in old ^ new)
            and all(self._may_hang(*each) for each in new - old)
            and all(self._is_covered(course, plan[number]) for number, course in changes.items())
            and all(match(self._strips, course) for course in changes.values())
            and _slits(changes.values()) <= _slits(plan[number] for number in changes)
            and self._shows_no_more([plan[number] for number in changes], changes.values())
            and self._is_staggered(plan, changes)
        )

    def _hangs_whole(self, seat: _Seat) -> bool:
        """Whether all of a blank hangs that fills a seat."""
        if seat not in self._whole:
            self._whole[seat] = bool(self._ground.may.covers(box(Span(*seat))))
        return self._whole[seat]

    def _may_hang(self, low: Nm, high: Nm, piece: PlannedPiece) -> bool:
        """Whether a piece fits a seat, and may show what it shows there."""
        width = piece.stick.width
        if not width <= high - low <= width + self._strips.rules.width_tolerance_nm:
            return False
        run = self._run_of(low, high, piece)
        if run is None or (piece.stick.hidden_only and not run.hides(piece.start, piece.end)):
            return False
        seat = _seat(low, high, piece)
        if seat not in self._sound:
            self._sound[seat] = _is_sound(run, piece, self._strips.rules)
        return self._sound[seat]

    def _run_of(self, low: Nm, high: Nm, piece: PlannedPiece) -> Run | None:
        runs = self._strips.runs(low, high)
        return next((run for run in runs if run.start <= piece.start and piece.end <= run.end), None)

    def _is_covered(self, course: PlannedCourse, before: PlannedCourse) -> bool:
        """Whether a course covers what its strip asks for, but for what is bare, which stays where it is."""
        stays = (course.low, course.high) == (before.low, before.high)
        if course.bare != before.bare or (course.bare and not stays):
            return False
        stretches = (*((piece.start, piece.end) for piece in course.pieces), *course.bare)
        asked = sum(run.length for run in self._strips.runs(course.low, course.high))
        return sum(end - start for start, end in stretches) == asked

    def _shows_no_more(self, before: Iterable[PlannedCourse], after: Iterable[PlannedCourse]) -> bool:
        """Whether courses have no more joints that no fixture hides, nor more that trim shows, too."""
        then, now = self._joints(before), self._joints(after)
        return len(now) <= len(then) and sum(map(self._shows, now)) <= sum(map(self._shows, then))

    def _joints(self, courses: Iterable[PlannedCourse]) -> list[_Joint]:
        return [
            (at, course.low, course.high)
            for course in courses
            for at, hidden in joints_of(self._strips, course)
            if not hidden
        ]

    def _shows(self, joint: _Joint) -> bool:
        """Whether anything of a joint lies where trim does not hide it."""
        if joint not in self._showing:
            at, low, high = joint
            self._showing[joint] = bool(crossings(self._ground.must, (at, low), (at, high)))
        return self._showing[joint]

    def _is_staggered(self, plan: Sequence[PlannedCourse], changes: Changes) -> bool:
        """Whether joints in sight of the changed courses keep their stagger from their neighbours'."""
        if self._strips.rules.joints is not JointPolicy.STAGGER:
            return True
        seams = {below for number in changes for below in (number - 1, number) if 0 <= below < len(plan) - 1}
        for below in seams:
            lower, upper = (changes.get(number, plan[number]) for number in (below, below + 1))
            if lower.high == upper.low and too_near(self._strips, lower, upper):
                return False
        return True


def _is_sound(run: Run, piece: PlannedPiece, rules: Rules) -> bool:
    """Whether a piece fills its run alone or can butt where it ends."""
    if (piece.start, piece.end) == (run.start, run.end):
        return True
    places = {run.start, run.end, *(joint.at for joint in run.joints)}
    return {piece.start, piece.end} <= places and can_butt(piece.start, piece.end, run.nails, rules)


def _slits(courses: Iterable[PlannedCourse]) -> int:
    """Give by how much pieces are narrower than their courses, which the width tolerance lets pass. [nm²]"""
    return sum(
        (course.height - piece.stick.width) * (piece.end - piece.start)
        for course in courses
        for piece in course.pieces
    )


def _seat(low: Nm, high: Nm, piece: PlannedPiece) -> _Seat:
    return piece.start, piece.end, low, high
