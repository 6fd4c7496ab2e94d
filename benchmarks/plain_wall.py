"""A wall as the plain model sees it: places along it, and what stands between them. All in whole steps."""

from collections.abc import Iterator
from dataclasses import dataclass

from plankwright.layout.strips import Strips
from plankwright.measure import INCH, Nm
from plankwright.model import JointPolicy

STEP: Nm = INCH // 16
"""The unit of the model."""


@dataclass(frozen=True, slots=True)
class Node:
    """A place along the wall where pieces may end.

    Parameters
    ----------
    at
        [nm]
    opening
        The opening whose side it is, if any.
    joint
        Whether two pieces may butt here.
    """

    at: Nm
    opening: int | None = None
    joint: bool = False


@dataclass(frozen=True, slots=True)
class Arc:
    """A piece that there may be: between two nodes, so many steps long."""

    first: int
    last: int
    length: int


@dataclass(frozen=True, slots=True)
class Item:
    """A stick, or one of the two lanes of a wide one. [steps]"""

    stick: int
    lane: int
    length: int
    width: int


class PlainWall:
    """Places, openings, slopes and fixtures of a wall.

    Parameters
    ----------
    strips
        The wall: a rectangle, or one with a gable in the middle.
    """

    def __init__(self, strips: Strips) -> None:
        self.strips = strips
        nodes = [Node(strips.left), Node(strips.right)]
        nodes += [
            Node(site.at, joint=True)
            for site in strips.sites
            if strips.left < site.at < strips.right and self._of_use(site.at)
        ]
        for number, hole in enumerate(strips.holes):
            nodes += [Node(hole.left, number), Node(hole.right, number)]
        self.nodes = sorted(nodes, key=lambda node: (node.at, node.joint))
        self.height = (strips.may_end - strips.start) // STEP
        self.width = (strips.right - strips.left) // STEP
        corners = strips.surface.outline
        gap = strips.rules.expansion_gap_nm
        self.slope: tuple[int, int, int] | None = None
        if not strips.level:
            eaves, ridge = corners[2][1], max(y for _, y in corners)
            # Under the slope a course loses `run` for each `rise` that it lies above the eaves.
            self.slope = (
                (eaves - gap - strips.start) // STEP,
                (ridge - eaves) // STEP,
                (corners[1][0] // 2 - gap) // STEP,
            )

    def arcs(self, longest: Nm) -> Iterator[Arc]:
        """Give the pieces that a stick of some length may give. [nm]

        Between the ends of the wall and the sides of openings a piece may be short, elsewhere not. Under a
        slope the first and the last place move inwards, so that shorter sticks do than it seems.
        """
        shortest = self.strips.rules.shortest_piece_nm
        for first, start in enumerate(self.nodes):
            for last in range(first + 1, len(self.nodes)):
                end = self.nodes[last]
                sloped = self.slope is not None and (first == 0 or last == len(self.nodes) - 1)
                length = end.at - start.at
                if (length > longest and not sloped) or (length < shortest and (start.joint or end.joint)):
                    continue
                if self._from_opening_to_itself(start, end):
                    continue
                yield Arc(first, last, -(-length // STEP))

    def _of_use(self, at: Nm) -> bool:
        """Whether a joint at a place along the wall can be where the rules let it be."""
        never = self.strips.rules.joints is JointPolicy.NEVER
        return not never or any(zone.left <= at <= zone.right for zone in self.strips.zones)

    @staticmethod
    def _from_opening_to_itself(start: Node, end: Node) -> bool:
        return start.opening is not None and start.opening == end.opening
