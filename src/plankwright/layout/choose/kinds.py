"""The sets of the model: kinds of courses at one height, their places, and the lanes of each stick."""

from collections.abc import Iterator
from dataclasses import dataclass

from plankwright.layout.butting import mate_groups
from plankwright.layout.choose.task import Task
from plankwright.layout.rows import Row
from plankwright.measure import Nm


@dataclass(frozen=True, slots=True)
class Place:
    """A place in a kind of course where a piece may begin or end.

    Parameters
    ----------
    at
        Along the course. [nm]
    run
        Which of its runs the place lies in.
    joint
        Whether pieces may butt here; otherwise the run ends.
    hidden
        Whether a joint here would be concealed.
    """

    at: Nm
    run: int
    joint: bool
    hidden: bool


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of course at one height, with the wood that it may be made of.

    Parameters
    ----------
    row
        What such a course asks.
    height
        Its height before the closing rip. [nm]
    sticks
        Places of the sticks that may be used for it, in order.
    places
        Of all its runs, in order along the course.
    """

    row: Row
    height: Nm
    sticks: tuple[int, ...]
    places: tuple[Place, ...]

    @property
    def stays(self) -> bool:
        """Whether there is just one such course, in its own place."""
        return self.row.strip is not None

    @property
    def once(self) -> bool:
        """Whether there is at most one such course: it stays, or it lies across an edge between bands."""
        return self.stays or self.row.first_band != self.row.last_band

    def joined(self, place: int) -> bool:
        """Whether a place and the one after it belong to one run."""
        return 0 <= place < len(self.places) - 1 and self.places[place].run == self.places[place + 1].run


def lanes_of(task: Task) -> tuple[int, ...]:
    """Give for each stick into how many lanes it may be ripped: two where both could make a course.

    Parameters
    ----------
    task
        Says the most.

    Returns
    -------
    tuple of int
        One or two for each stick, in order.
    """
    enough = 2 * _lowest(task) + task.rules.rip_kerf_nm
    return tuple(
        task.lanes if stick.width >= enough and stick.rippable and not stick.endless else 1
        for stick in task.sticks
    )


def kinds_of(task: Task) -> tuple[Kind, ...]:
    """Give every kind of course at every height that it may take.

    A course that stays may take any wood, since pieces that butt in it are compared one by one. Courses that
    are only counted cannot be compared: there is a kind for each group of mates, and one of all wood together
    whose joints are all out of sight.

    Parameters
    ----------
    task
        The rows, the heights and the wood.

    Returns
    -------
    tuple of Kind
        In the order of the rows.
    """
    return tuple(
        kind for row in task.stack.rows for height in row.heights for kind in _kinds(task, row, height)
    )


def _kinds(task: Task, row: Row, height: Nm) -> Iterator[Kind]:
    wide = _wide_enough(task, height)
    if row.strip is not None:
        pinned = {each.piece.stick for each in row.pinned}
        staying = tuple(number for number, stick in enumerate(task.sticks) if stick in pinned)
        yield Kind(row, height, (*wide, *staying), _places(row, in_sight=True))
        return
    number_of = {task.sticks[number]: number for number in wide}
    groups = mate_groups(list(number_of), task.rules)
    for group in groups:
        mates = tuple(sorted(number_of[stick] for stick in group))
        yield Kind(row, height, mates, _places(row, in_sight=True))
    if len(groups) > 1:
        yield Kind(row, height, wide, _places(row, in_sight=False))


def _wide_enough(task: Task, height: Nm) -> tuple[int, ...]:
    """(1) A piece is as wide as its course, or narrower by no more than the tolerance.

    Sticks that would lose more to the rip than the task allows are left out as well, unless they are there
    now.
    """
    lanes, lowest, pinned = lanes_of(task), _lowest(task), task.pinned
    in_use = {piece.stick.board for course in task.now if course.height == height for piece in course.pieces}
    return tuple(
        number
        for number, stick in enumerate(task.sticks)
        if stick.makes(height, task.rules.width_tolerance_nm)
        and stick not in pinned
        and (
            task.rip_at_most is None
            or stick.width - height <= task.rip_at_most
            or stick.board in in_use
            or stick.endless
            or (lanes[number] > 1 and stick.width - height >= lowest + task.rules.rip_kerf_nm)
        )
    )


def _lowest(task: Task) -> Nm:
    return min((height for row in task.stack.rows for height in row.heights), default=1)


def _places(row: Row, *, in_sight: bool) -> tuple[Place, ...]:
    places = []
    for number, run in enumerate(row.runs):
        places.append(Place(run.start, number, joint=False, hidden=False))
        places += [
            Place(joint.at, number, joint=True, hidden=joint.hidden)
            for joint in run.joints
            if joint.hidden or in_sight
        ]
        places.append(Place(run.end, number, joint=False, hidden=False))
    return tuple(places)
