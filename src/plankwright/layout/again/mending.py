"""Holes in a plan mended with as little change as can be: a board for another first, then wider and wider.

Each look asks the chooser about some courses that keep their places. Whatever else hangs, or is planned and
not looked at, stays; of what is looked at a piece costs extra that is not just where it was.
"""

from collections.abc import Sequence
from dataclasses import replace

from plankwright.layout.again.filling_in import left_to_fill, runs_to_fill, within
from plankwright.layout.again.repair import PRICES, Repair
from plankwright.layout.choose import Chooser, RowCuts
from plankwright.layout.ground import HAIR
from plankwright.layout.plan import PlannedCourse, PlannedPiece, Stick
from plankwright.layout.rows import Pinned, Row, Stack
from plankwright.layout.runs import JointPlace, Run
from plankwright.measure import Nm

_SUBSTITUTE_WORK = 0.2
_LOOKS: tuple[tuple[int, float], ...] = ((0, 0.2), (1, 0.3), (2, 0.4), (4, 0.6), (8, 1.0), (1000, 2.0))
"""How many further courses are looked at with those that have holes, and how long. [deterministic seconds]"""

_COVER_DONORS, _COVER_WORK = 2, 0.4
"""The same where something must stay bare."""

_RESTORE_WORK = 1.0
"""For putting pieces back. [deterministic seconds]"""


def mend(repair: Repair) -> bool:
    """Fill the holes of a plan. Whether none is left.

    Parameters
    ----------
    repair
        Holding the plan; it is given the better one.
    """
    if not repair.holes or _look(repair, repair.holes, frozenset(), _SUBSTITUTE_WORK):
        return True
    for more, work in _LOOKS:
        if repair.over:
            return False
        chosen = sorted({*repair.holes, *_donors(repair, more)})
        if _look(repair, chosen, repair.loose(chosen), work):
            return True
        if len(chosen) >= len(repair.open):
            break
    return False


def cover(repair: Repair) -> bool:
    """Cover as much of the holes as can be, one after the other. Whether anything more is covered."""
    better = False
    for number in repair.holes:
        if repair.over:
            break
        if not repair.plan[number].bare:
            continue
        chosen = sorted({number, *_donors(repair, _COVER_DONORS)})
        better |= _look(repair, chosen, repair.loose(chosen), _COVER_WORK, bare_allowed=True)
    return better


def restore(repair: Repair) -> None:
    """Put as many pieces back where they were as can be, in the courses that were changed.

    Parameters
    ----------
    repair
        Holding the plan; it is given the better one.
    """
    begun = {low for low, *_ in repair.before.in_place}
    chosen = [
        number
        for number, course in enumerate(repair.plan)
        if course.low in begun and repair.before.changed((course,))
    ]
    # A single changed piece for each course is as little as can be where one was lost in each.
    changes = repair.before.changed(repair.plan)
    if 0 < len(chosen) < changes and not repair.stopped():
        _look(repair, chosen, repair.loose(chosen), _RESTORE_WORK)


def _look(
    repair: Repair,
    chosen: Sequence[int],
    released: frozenset[PlannedPiece],
    work: float,
    *,
    bare_allowed: bool = False,
) -> bool:
    """Lay some pieces of some courses out anew. Whether less is bare then."""
    courses = tuple(repair.plan[number] for number in chosen)
    rows = tuple(_row(repair, band, course, released) for band, course in enumerate(courses))
    stack = Stack(
        rows,
        courses[0].low,
        courses[-1].high,
        courses[-1].high,
        tuple(course.high for course in courses[:-1]),
        tuple(course for number, course in enumerate(repair.plan) if number not in chosen),
    )
    chooser = Chooser(
        repair.strips,
        [*repair.free(released), *(each.piece.stick for row in rows for each in row.pinned)],
        stack,
        prices=PRICES,
        grid=repair.grid,
        bare_allowed=bare_allowed,
        now=courses,
        terms=repair.terms,
    )
    choice = repair.solve(chooser, work)
    if choice.cuts is None:
        return False
    found = {course.low: course for course in (_placed(repair, cut) for cut in choice.cuts)}
    return repair.take(tuple(found.get(course.low, course) for course in repair.plan))


def _row(repair: Repair, band: int, course: PlannedCourse, released: frozenset[PlannedPiece]) -> Row:
    """Give a course as a row of the model, with the pieces that stay in it."""
    staying = [piece for piece in course.pieces if piece not in released]
    hung = [piece for piece in staying if piece in repair.hung]
    parts = runs_to_fill(repair.strips, (course.low, course.high), hung)
    pinned = tuple(
        Pinned(inside, repair.hung[piece].shim_nm if piece in repair.hung else None)
        for piece in staying
        for run in parts
        if (inside := within(piece, run)) is not None
    )
    ends = sorted({end for each in pinned for end in (each.piece.start, each.piece.end)})
    runs = tuple(_with_joints(repair, run, course, ends) for run in parts)
    return Row(runs, (course.height,), band, band, (course.low, course.high), pinned)


def _with_joints(repair: Repair, run: Run, course: PlannedCourse, ends: Sequence[Nm]) -> Run:
    """Let pieces butt where those end that stay, wherever that is."""
    known = {joint.at for joint in run.joints}
    more = (
        JointPlace(end, repair.strips.hidden(end, course.low, course.high))
        for end in ends
        if run.start < end < run.end and end not in known
    )
    return replace(run, joints=tuple(sorted((*run.joints, *more), key=lambda joint: joint.at)))


def _placed(repair: Repair, cut: RowCuts) -> PlannedCourse:
    """Put the pieces of a row into their course; what stays is as it was."""
    low, high = cut.row.strip or (0, 0)
    (before,) = (course for course in repair.plan if course.low == low)
    pinned = {(each.piece.start, each.piece.end) for each in cut.row.pinned}
    new = [piece for piece in cut.pieces if (piece.start, piece.end) not in pinned]
    staying = [
        piece
        for piece in before.pieces
        if any(piece.start <= start and end <= piece.end for start, end in pinned)
    ]
    pieces = tuple(sorted((*staying, *new), key=lambda piece: piece.start))
    bare = left_to_fill(repair.strips, (low, high), pieces, repair.hung)
    return PlannedCourse(low, high, pieces, bare)


def _donors(repair: Repair, count: int) -> list[int]:
    """Give the courses that most likely help: their wood would fill a hole, and other wood their places."""
    holes = set(repair.holes)
    free = repair.free()
    needs = [
        (end - start, repair.plan[number].height)
        for number in repair.holes
        for start, end in repair.plan[number].bare
    ]
    worth = {
        number: sum(
            _help(repair, repair.plan[number].height, piece, needs, free)
            for piece in repair.plan[number].pieces
            if piece not in repair.hung
        )
        for number in repair.open
        if number not in holes
    }
    near = min(holes, default=0)
    return sorted(worth, key=lambda number: (-worth[number], abs(number - near)))[:count]


def _help(
    repair: Repair, height: Nm, piece: PlannedPiece, needs: Sequence[tuple[Nm, Nm]], free: Sequence[Stick]
) -> float:
    """Say how much is gained where a piece gives up its wood: most if that fits a hole and can be spared."""
    tolerance = repair.strips.rules.width_tolerance_nm
    wood = _with_neighbours(repair, piece.stick, free)
    fits = any(wood.length >= length and wood.makes(needed, tolerance) for length, needed in needs)
    spared = any(stick.length >= piece.end - piece.start and stick.makes(height, tolerance) for stick in free)
    return 2.0 * (fits and spared) + 0.5 * fits + 0.1 * spared


def _with_neighbours(repair: Repair, stick: Stick, free: Sequence[Stick]) -> Stick:
    """Give the wood of a piece with what lies free beyond it on its board."""
    reach = repair.strips.rules.crosscut_kerf_nm + HAIR
    start, end = stick.along_from, stick.along_to
    for other in free:
        if other.board == stick.board and other.across_from <= stick.across_from:
            if 0 <= other.along_from - end <= reach:
                end = other.along_to
            if 0 <= start - other.along_to <= reach:
                start = other.along_from
    return replace(stick, along_from=start, along_to=end)
