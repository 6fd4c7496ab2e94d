"""Surfaces on solid backing, covered by boards that are laid end to end along their courses."""

import random
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from plankwright.layout.end_to_end.joining import Stretch, join
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.runs import Run
from plankwright.layout.sticks import cut_from
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import JointPolicy

_STACKS_TRIED = 3
"""Courses of so many widths are tried besides those that are there."""


@dataclass(frozen=True, slots=True)
class Found:
    """A surface laid end to end.

    Parameters
    ----------
    plan
        Its courses.
    spent
        Work that it took. [s]
    """

    plan: Plan
    spent: float


def laid_end_to_end(
    strips: Strips,
    stock: Sequence[Stick],
    plan: Plan,
    grid: Nm,
    *,
    work: float,
    chance: random.Random,
    stopped: Callable[[], bool],
) -> Iterator[Found]:
    """Lay boards end to end, where pieces may butt wherever they end.

    That is on solid backing, where joints are out of sight all along, or only counted.

    Parameters
    ----------
    strips, stock
        The surface, and the wood that it may use.
    plan
        Courses whose heights are tried first; then all as high as the commonest sticks are wide.
    grid
        Lengths count in whole steps of it. [nm]
    work
        How long to search, all stacks of courses together. [s]
    chance
        Gives the seeds of the solver.
    stopped
        Whether to stop.

    Yields
    ------
    Found
        One for each stack of courses.
    """
    if not strips.surface.framing.solid:
        return
    stacks = [plan, *_even_stacks(strips, stock)]
    for stack in stacks:
        rows = [(course, run) for course in stack for run in strips.runs(course.low, course.high)]
        if stopped() or not all(_may_butt_anywhere(strips, run) for _, run in rows):
            continue
        joined = join(
            [Stretch(run.length, course.height, _all_hidden(run)) for course, run in rows],
            stock,
            strips.rules,
            grid,
            work=work / len(stacks),
            chance=chance,
            stopped=stopped,
        )
        yield Found(_hung(strips, stack, rows, joined.chosen), joined.spent)


def _even_stacks(strips: Strips, stock: Sequence[Stick]) -> Iterator[Plan]:
    """Give the surface in courses as high as the commonest sticks are wide, the last one ripped down."""
    if not strips.level:
        return
    for width, _ in Counter(stick.width for stick in stock).most_common(_STACKS_TRIED):
        lows = range(strips.start, strips.must_end, width)
        stack = [PlannedCourse(low, min(low + width, strips.may_end), (), ()) for low in lows]
        if stack and stack[-1].height >= strips.rules.narrowest_course_nm:
            yield tuple(stack)


def _all_hidden(run: Run) -> bool:
    return run.hides(run.start, run.end)


def _may_butt_anywhere(strips: Strips, run: Run) -> bool:
    return not run.barred and (strips.rules.joints is JointPolicy.COUNT or _all_hidden(run))


def _hung(
    strips: Strips,
    stack: Plan,
    rows: Sequence[tuple[PlannedCourse, Run]],
    chosen: Sequence[Sequence[tuple[Stick, Nm]]],
) -> Plan:
    """Hang what was chosen; a run whose pieces may not butt where they would is bare."""
    pieces: dict[Nm, list[PlannedPiece]] = {course.low: [] for course in stack}
    bare: dict[Nm, list[tuple[Nm, Nm]]] = {course.low: [] for course in stack}
    for (course, run), sticks in zip(rows, chosen, strict=True):
        laid = _end_to_end(course, run, sticks)
        if laid and all(_may_hang(strips, course, run, piece) for piece in laid):
            pieces[course.low] += laid
        else:
            bare[course.low].append((run.start, run.end))
    return tuple(
        PlannedCourse(course.low, course.high, tuple(pieces[course.low]), tuple(bare[course.low]))
        for course in stack
    )


def _end_to_end(
    course: PlannedCourse, run: Run, sticks: Sequence[tuple[Stick, Nm]]
) -> Sequence[PlannedPiece]:
    """Hang pieces of so many lengths one after another along a run; none where they do not just reach."""
    pieces, at = [], run.start
    for stick, length in sticks:
        width = min(course.height, stick.width) if stick.rippable else stick.width
        wood = cut_from(stick, stick.along_from, length, stick.across_from, width)
        pieces.append(PlannedPiece(wood, at, at + length))
        at += length
    return pieces if at == run.end else ()


def _may_hang(strips: Strips, course: PlannedCourse, run: Run, piece: PlannedPiece) -> bool:
    """Whether a piece is long enough to butt others, and may butt the one before; nails go in anywhere."""
    if (piece.start, piece.end) == (run.start, run.end):
        return True
    long_enough = piece.end - piece.start >= strips.rules.shortest_piece_nm
    return long_enough and (
        piece.start == run.start or strips.takes_joint_at(piece.start, course.low, course.high)
    )
