"""Cut the pieces that the plain model has chosen out of its sticks."""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from benchmarks.plain_wall import STEP, Item, PlainWall
from plankwright.layout.butting import can_butt
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.sticks import cut_from
from plankwright.layout.strips import Strips
from plankwright.measure import Nm

Chosen = tuple[int, int, int]
"""First and last place of a piece, and its item."""


def nothing(strips: Strips) -> Plan:
    """Give a plan with nothing in it."""
    low, high = strips.start, strips.may_end
    bare = tuple((run.start, run.end) for run in strips.runs(low, high))
    return (PlannedCourse(low, high, (), bare),)


def cut(
    wall: PlainWall,
    sticks: Sequence[Stick],
    items: Sequence[Item],
    heights: Sequence[int],
    chosen: Mapping[int, Sequence[Chosen]],
) -> Plan:
    """Cut pieces out of sticks, one after the other; what cannot be nailed or does not reach is left bare.

    Parameters
    ----------
    wall
        The wall.
    sticks, items
        The wood, and the lanes of it that the model knows.
    heights
        Of the courses; those without any are not there. [steps]
    chosen
        For each course its pieces.
    """
    return tuple(_Cutting(wall, sticks, items, heights, chosen).courses())


class _Cutting:
    def __init__(
        self,
        wall: PlainWall,
        sticks: Sequence[Stick],
        items: Sequence[Item],
        heights: Sequence[int],
        chosen: Mapping[int, Sequence[Chosen]],
    ) -> None:
        self.wall, self.strips, self.rules = wall, wall.strips, wall.strips.rules
        self.sticks, self.items, self.heights, self.chosen = sticks, items, heights, chosen
        self.lanes: defaultdict[int, int] = defaultdict(int)
        self.at: dict[int, Nm] = {}
        for row, pieces in chosen.items():
            for _, _, item in pieces:
                self.lanes[item] = max(self.lanes[item], heights[row])

    def courses(self) -> list[PlannedCourse]:
        """Give the courses that are there, from the start side on."""
        courses, low = [], self.strips.start
        for row, height in enumerate(self.heights):
            if height:
                high = low + height * STEP
                if self.strips.may_end - high < STEP:
                    high = self.strips.may_end
                courses.append(self._course(low, high, sorted(self.chosen.get(row, ()))))
                low = high
        return courses

    def _course(self, low: Nm, high: Nm, chosen: Sequence[Chosen]) -> PlannedCourse:
        pieces: list[PlannedPiece] = []
        bare: list[tuple[Nm, Nm]] = []
        for run in self.strips.runs(low, high):
            reached = run.start
            for first, last, item in chosen:
                start, end = self._ends(first, last, run.start, run.end)
                if not run.start <= start < end <= run.end:
                    continue
                whole = (start, end) == (run.start, run.end)
                part = self._part(item, end - start, high - low)
                if part is None or not (whole or can_butt(start, end, run.nails, self.rules)):
                    continue
                if start > reached:
                    bare.append((reached, start))
                pieces.append(PlannedPiece(part, start, end))
                self.at[item] = part.along_to + self.rules.crosscut_kerf_nm
                reached = end
            if reached < run.end:
                bare.append((reached, run.end))
        return PlannedCourse(low, high, tuple(pieces), tuple(bare))

    def _ends(self, first: int, last: int, left: Nm, right: Nm) -> tuple[Nm, Nm]:
        """Give from where to where a piece reaches; the ends of the wall move inwards under a slope. [nm]"""
        nodes = self.wall.nodes
        start = max(nodes[first].at, left) if first == 0 else nodes[first].at
        end = min(nodes[last].at, right) if last == len(nodes) - 1 else nodes[last].at
        return start, end

    def _part(self, item: int, length: Nm, height: Nm) -> Stick | None:
        """Give the rectangle of a piece beyond what was cut before; nothing if the stick does not reach."""
        stick = self.sticks[self.items[item].stick]
        across = stick.across_from
        if self.items[item].lane and self.lanes[item - 1]:
            across += self.lanes[item - 1] * STEP + self.rules.rip_kerf_nm
        along = self.at.get(item, stick.along_from)
        room = stick.across_to - across
        if along + length > stick.along_to or height > room + self.rules.width_tolerance_nm:
            return None
        return cut_from(stick, along, length, across, min(height, room))
