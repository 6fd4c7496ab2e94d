"""The cheapest way along each run when pieces and joints have prices: shortest paths, all heights at once."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

from plankwright.layout.whole.question import Arc, Floats, Graph, Question, Sort

Moves: TypeAlias = tuple[tuple[int, int], ...]
"""A way along a run: the places from where to where each piece reaches, in order."""

_Whole = npt.NDArray[np.int64]
_Steps: TypeAlias = tuple[_Whole, _Whole, _Whole] | None


@dataclass(frozen=True, slots=True)
class Way:
    """A way along a run.

    Parameters
    ----------
    price
        Of its pieces and joints.
    mates
        Number of the set of mates that its pieces are of.
    moves
        Its pieces.
    """

    price: float
    mates: int
    moves: Moves


@dataclass(frozen=True, slots=True)
class _Reached:
    """For each set of mates: the price of each height at the end, and where each place was reached from."""

    prices: Floats
    came: tuple[_Whole, ...]


class Graphs:
    """The runs of a question, prepared to look for ways along them.

    Parameters
    ----------
    question
        Whose runs they are.
    joint, piece
        Price of a joint in sight, and of a piece.
    """

    def __init__(self, question: Question, joint: float, piece: float) -> None:
        self.question, self.joint, self.piece = question, joint, piece
        self._steps: dict[tuple[int, int], tuple[tuple[_Steps, ...], tuple[_Steps, ...]]] = {}

    def steps(self, row: int, run: int) -> tuple[tuple[_Steps, ...], tuple[_Steps, ...]]:
        """Give the arcs into each place of a run: all of them, and those without a joint in sight."""
        if (row, run) not in self._steps:
            graph = self.question.graphs[row][run]
            hidden = [
                arc for arc in graph.arcs if not (graph.in_sight[arc.first] or graph.in_sight[arc.last])
            ]
            self._steps[row, run] = _into(graph, graph.arcs), _into(graph, hidden)
        return self._steps[row, run]


def _into(graph: Graph, arcs: list[Arc] | tuple[Arc, ...]) -> tuple[_Steps, ...]:
    steps: list[_Steps] = []
    for place in range(len(graph.places)):
        into = [(arc.first, arc.length, int(arc.hidden)) for arc in arcs if arc.last == place]
        if into:
            first, length, hidden = (np.array(part, dtype=np.int64) for part in zip(*into, strict=True))
            steps.append((first, length, hidden))
        else:
            steps.append(None)
    return tuple(steps)


class Ways:
    """The cheapest ways along every run at some prices.

    Parameters
    ----------
    graphs
        The runs.
    prices
        Of each sort of piece, indexed by mates, hidden, height and length.
    joints
        For a row, a run and a place of it, what a joint there costs besides.
    """

    def __init__(self, graphs: Graphs, prices: Floats, joints: Mapping[tuple[int, int, int], float]) -> None:
        self.graphs, self.prices, self.joints = graphs, prices, joints
        self._reached: dict[tuple[int, int], _Reached] = {}

    def cheapest(self, kind: int, run: int) -> Way | None:
        """Give the cheapest way along a run of a kind of course; nothing when no wood leads along it."""
        at = self.graphs.question.kinds[kind]
        if (at.row, run) not in self._reached:
            self._reached[at.row, run] = self._reach(at.row, run)
        reached = self._reached[at.row, run]
        prices = reached.prices[:, at.height]
        mates = int(prices.argmin())
        if not np.isfinite(prices[mates]):
            return None
        came, place, moves = reached.came[mates][:, at.height], len(reached.came[mates]) - 1, []
        while place:
            moves.append((int(came[place]), place))
            place = int(came[place])
        return Way(float(prices[mates]), mates, tuple(reversed(moves)))

    def cheap(self, kind: int, run: int, most: int) -> list[Way]:
        """Give so many of the cheapest ways along a run of a kind of course, the cheapest first."""
        question = self.graphs.question
        at = question.kinds[kind]
        places = len(question.graphs[at.row][run].places)
        found: list[Way] = []
        for mates in range(question.sets):
            steps = self.graphs.steps(at.row, run)[int(mates == question.loose)]
            best: list[list[tuple[float, Moves]]] = [[(0.0, ())], *([] for _ in range(places - 1))]
            for place, into in enumerate(steps):
                if into is None:
                    continue
                first, length, hidden = into
                prices = self.prices[mates][hidden, at.height, length] + self._besides(at.row, run, place)
                longer = [
                    (so_far + price, (*moves, (start, place)))
                    for start, price in zip(first.tolist(), prices.tolist(), strict=True)
                    if math.isfinite(price)
                    for so_far, moves in best[start]
                ]
                best[place] = sorted(longer)[:most]
            found += [Way(price, mates, moves) for price, moves in best[-1]]
        return sorted(found, key=lambda way: (way.price, way.mates, way.moves))[:most]

    def _besides(self, row: int, run: int, place: int) -> float:
        """Give what a piece that ends at a place costs besides its wood."""
        seen = self.graphs.question.graphs[row][run].in_sight[place]
        return self.graphs.piece + self.graphs.joint * seen + self.joints.get((row, run, place), 0.0)

    def _reach(self, row: int, run: int) -> _Reached:
        question = self.graphs.question
        graph, heights = question.graphs[row][run], len(question.heights)
        everywhere = np.arange(heights)
        ends, all_came = [], []
        for mates in range(question.sets):
            steps = self.graphs.steps(row, run)[int(mates == question.loose)]
            price = np.full((len(graph.places), heights), np.inf)
            price[0] = 0.0
            came = np.zeros((len(graph.places), heights), dtype=np.int64)
            for place, into in enumerate(steps):
                if into is None:
                    continue
                first, length, hidden = into
                reached = price[first] + self.prices[mates][hidden, :, length]
                reached += self._besides(row, run, place)
                which = reached.argmin(axis=0)
                price[place], came[place] = reached[which, everywhere], first[which]
            ends.append(price[-1])
            all_came.append(came)
        return _Reached(np.stack(ends), tuple(all_came))


def sorts_of(question: Question, kind: int, run: int, mates: int, moves: Moves) -> tuple[Sort, ...]:
    """Give the sorts of the pieces of a way.

    Parameters
    ----------
    question, kind, run
        Whose way it is.
    mates, moves
        The way.
    """
    at = question.kinds[kind]
    arcs = {(arc.first, arc.last): arc for arc in question.graphs[at.row][run].arcs}
    return tuple(Sort(mates, arcs[move].hidden, at.height, arcs[move].length) for move in moves)
