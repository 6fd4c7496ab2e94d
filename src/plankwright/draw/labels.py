"""Find room for lettering: inside a shape if it can be, never over another text or across an edge."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.draw.lettering import LINE, text_width
from plankwright.draw.scene import Anchor, Item, Place, Rect, Span, Text
from plankwright.draw.styles import Style

_CLEAR = 0.35
"""Paper kept free between lettering and any edge. [mm]"""

_STEP = 1.2
_MOST_STEPS = 40
"""How finely places are tried: steps of so many mm, at most so many of them each way."""

_CLUTTER_WEIGHT = 12.0
"""How much further from its best place a text may go to stand on clear ground. [mm]"""

_CLUTTER_COST = 4.0
"""The same for touching what is unclear at all, such as a dashed border. [mm]"""

_SECOND_CHOICE = 1.5
"""How much nearer a later choice of a text must be than an earlier one to stand on a leader. [mm a step]"""

_AIM = 0.98
"""How far a leader reaches into what it points at: so much of half its lesser extent."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A few lines of text that stay together.

    Parameters
    ----------
    lines
        Each a row of spans.
    size
        Font size. [mm]
    turned
        Whether they read upwards.
    """

    lines: tuple[tuple[Span, ...], ...]
    size: float
    turned: bool = False

    @property
    def extent(self) -> tuple[float, float]:
        """Width and height on the sheet. [mm]"""
        along = max(text_width(line, self.size) for line in self.lines)
        across = LINE * self.size * len(self.lines)
        return (across, along) if self.turned else (along, across)

    def drawn(self, centre: Place, *, ground: Style | None, style: Style = Style.TEXT) -> tuple[Item, ...]:
        """Give the lines around a place, on a ground of their own if one is asked for."""
        x, y = centre
        width, height = self.extent
        items: list[Item] = []
        if ground is not None:
            items.append(Rect(x=x - width / 2, y=y - height / 2, width=width, height=height, style=ground))
        for index, line in enumerate(self.lines):
            off = (index - (len(self.lines) - 1) / 2) * LINE * self.size
            items.append(
                Text(
                    x=x + off if self.turned else x,
                    y=y if self.turned else y + off,
                    spans=line,
                    size=self.size,
                    anchor=Anchor.MIDDLE,
                    turned=self.turned,
                    style=style,
                )
            )
        return tuple(items)


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where a block found room.

    Parameters
    ----------
    block, centre
        What stands where. [mm]
    cell
        Which of the offered shapes it stands in.
    leader
        The line from it to what it names; nothing when it stands inside.
    """

    block: Block
    centre: Place
    cell: int
    leader: tuple[Place, Place] | None = None


class Room:
    """What of the sheet is taken.

    Parameters
    ----------
    clutter
        Where lettering is harder to read and goes only if it must, such as on hatches.
    """

    def __init__(self, clutter: BaseGeometry) -> None:
        self._clutter = clutter
        self._taken: list[BaseGeometry] = []

    def inside(
        self, cells: Sequence[BaseGeometry], blocks: Iterable[Block], *, near: Place | None = None
    ) -> Spot | None:
        """Find room within one of some shapes, as near as can be to a place, or to the middle of each.

        Parameters
        ----------
        cells
            The shapes. [mm]
        blocks
            What would do, best first.
        near
            Where it should stand. [mm]

        Returns
        -------
        Spot | None
            The first block that fits anywhere, at its best place; it counts as taken from now on.
        """
        free = [self._free(cell) for cell in cells]
        for block in blocks:
            best: tuple[float, int, Place] | None = None
            for index, cell in enumerate(free):
                found = self._best(cell, block, near)
                if found is not None and (best is None or found[0] < best[0]):
                    best = (found[0], index, found[1])
            if best is not None:
                self.take(block, best[2])
                return Spot(block=block, centre=best[2], cell=best[1])
        return None

    def beside(
        self, cells: Sequence[BaseGeometry], blocks: Iterable[Block], target: shapely.Polygon, reach: float
    ) -> Spot | None:
        """Find room near a shape, with a leader to it that crosses no lettering.

        Parameters
        ----------
        cells
            Where the block may stand. [mm]
        blocks
            What would do, best first.
        target
            What the leader points at, into its inside. [mm]
        reach
            How far away the block may be. [mm]

        Returns
        -------
        Spot | None
            The nearest, an earlier choice before a later one; nothing when there is no such place.
        """
        around = target.buffer(reach, join_style="mitre")
        blocked = target.buffer(_CLEAR)
        near = [cell.intersection(around) for cell in cells]
        free = [self._free(cell.difference(blocked) if cell.intersects(blocked) else cell) for cell in near]
        aim = _aim(target)
        taken = shapely.union_all(self._touching(around))
        best: tuple[float, Spot] | None = None
        for choice, block in enumerate(blocks):
            for index, cell in enumerate(free):
                found = self._best_leader(cell, block, aim, taken)
                if found is not None and (best is None or found[0] + choice * _SECOND_CHOICE < best[0]):
                    spot = Spot(block=block, centre=found[1], cell=index, leader=found[2])
                    best = (found[0] + choice * _SECOND_CHOICE, spot)
        if best is None:
            return None
        self.take(best[1].block, best[1].centre)
        return best[1]

    def take(self, block: Block, centre: Place) -> None:
        """Keep others away from where a block stands."""
        self.keep_clear(_boxes(block, np.array([centre]))[0])

    def keep_clear(self, shape: BaseGeometry) -> None:
        """Keep all lettering away from a shape. [mm]"""
        self._taken.append(shape)

    def _free(self, cell: BaseGeometry) -> BaseGeometry:
        if cell.is_empty:
            return cell
        free: BaseGeometry = cell.buffer(-_CLEAR, join_style="mitre")
        for shape in self._touching(free):
            free = free.difference(shape.buffer(_CLEAR, join_style="mitre"))
        shapely.prepare(free)
        return free

    def _touching(self, region: BaseGeometry) -> list[BaseGeometry]:
        hits = shapely.intersects(region, np.array(self._taken, dtype=object))
        return [shape for shape, hit in zip(self._taken, hits, strict=True) if hit]

    def _best(self, cell: BaseGeometry, block: Block, near: Place | None) -> tuple[float, Place] | None:
        if cell.is_empty:
            return None
        middle = near or ((cell.bounds[0] + cell.bounds[2]) / 2, (cell.bounds[1] + cell.bounds[3]) / 2)
        ideal = _boxes(block, np.array([middle]))
        if shapely.contains(cell, ideal)[0] and not self._cluttered(ideal)[0]:
            return 0.0, middle
        centres = _centres(cell, block)
        if not len(centres):
            return None
        boxes = _boxes(block, centres)
        fits = shapely.contains(cell, boxes)
        if not fits.any():
            return None
        centres, boxes = centres[fits], boxes[fits]
        cost = np.hypot(*(centres - middle).T) + self._cluttered(boxes)
        return _cheapest(cost, centres)

    def _best_leader(
        self, cell: BaseGeometry, block: Block, aim: BaseGeometry, taken: BaseGeometry
    ) -> tuple[float, Place, tuple[Place, Place]] | None:
        centres = _centres(cell, block)
        if not len(centres):
            return None
        boxes = _boxes(block, centres)
        leaders = shapely.shortest_line(boxes, aim)
        fits = shapely.contains(cell, boxes) & ~shapely.intersects(leaders, taken)
        if not fits.any():
            return None
        centres, boxes, leaders = centres[fits], boxes[fits], leaders[fits]
        cost = shapely.length(leaders) + self._cluttered(boxes)
        best = int(np.argmin(np.round(cost, 6)))
        (from_x, from_y), (to_x, to_y) = leaders[best].coords
        return (
            float(cost[best]),
            (float(centres[best][0]), float(centres[best][1])),
            ((from_x, from_y), (to_x, to_y)),
        )

    def _cluttered(self, boxes: np.ndarray) -> np.ndarray:
        if self._clutter.is_empty:
            return np.zeros(len(boxes))
        covered = shapely.area(shapely.intersection(boxes, self._clutter)) / shapely.area(boxes)
        return np.where(covered > 0, _CLUTTER_COST + _CLUTTER_WEIGHT * covered, 0.0)


def _aim(target: shapely.Polygon) -> BaseGeometry:
    """Give the middle of a shape: along its length if it is an upright rectangle, else a point inside it."""
    left, top, right, bottom = target.bounds
    middle = target.buffer(-_AIM * min(right - left, bottom - top) / 2, join_style="mitre")
    return target.representative_point() if middle.is_empty else middle


def _centres(cell: BaseGeometry, block: Block) -> np.ndarray:
    """Give the places to try for a block in a shape: an even grid that holds the middle. Shape (n, 2)."""
    if cell.is_empty:
        return np.empty((0, 2))
    left, top, right, bottom = cell.bounds
    width, height = block.extent
    if right - left < width or bottom - top < height:
        return np.empty((0, 2))
    xs, ys = _steps(left + width / 2, right - width / 2), _steps(top + height / 2, bottom - height / 2)
    return np.array([(x, y) for y in ys for x in xs])


def _steps(low: float, high: float) -> np.ndarray:
    count = min(_MOST_STEPS, int((high - low) / _STEP) // 2 * 2) + 1
    return np.linspace(low, high, count) if count > 1 else np.array([(low + high) / 2])


def _boxes(block: Block, centres: np.ndarray) -> np.ndarray:
    width, height = block.extent
    x, y = centres[:, 0], centres[:, 1]
    return shapely.box(x - width / 2, y - height / 2, x + width / 2, y + height / 2)


def _cheapest(cost: np.ndarray, centres: np.ndarray) -> tuple[float, Place]:
    best = int(np.argmin(np.round(cost, 6)))
    return float(cost[best]), (float(centres[best][0]), float(centres[best][1]))
