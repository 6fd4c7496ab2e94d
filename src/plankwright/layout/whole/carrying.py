"""Ways and cuts that one programme has found, taken into another about the same wood."""

from collections import defaultdict
from collections.abc import Iterator

from plankwright.layout.whole.cutting import Cut
from plankwright.layout.whole.programme import Programme, Track
from plankwright.layout.whole.question import Graph, Question, Sort


def carry_over(found: Programme, into: Programme, share: float) -> None:
    """Take in what another programme has found, but for what is too dear.

    The courses may be others: their ways go wherever a course of the same height has the same run, and cuts
    lose the pieces that no course asks for.

    Parameters
    ----------
    found
        As solved.
    into
        About the same sticks, in the same order.
    share
        What would raise the price of the first by more than this share of it is left behind.
    """
    dear = set(found.idle(share))
    carried = _Carried(found.question, into)
    for track, column in found.tracks.items():
        if column not in dear:
            for there in carried.tracks(track):
                into.add_way(*there)
    for (wood, cut), column in found.sawn.items():
        if column not in dear:
            into.add_cut(wood, carried.cut(cut))


class _Carried:
    """What ways and cuts about one question are in another programme."""

    def __init__(self, one: Question, into: Programme) -> None:
        self._one, other = one, into.question
        self._heights = _heights_of(one, other)
        self._lengths = _places_of(one.lengths.tolist(), other.lengths.tolist())
        self._runs: dict[tuple[int, object], list[tuple[int, int]]] = defaultdict(list)
        for number in into.kinds:
            kind = other.kinds[number]
            for run, graph in enumerate(other.graphs[kind.row]):
                self._runs[kind.height, _shape(graph)].append((number, run))

    def tracks(self, track: Track) -> Iterator[Track]:
        kind, run, mates, moves = track
        at = self._one.kinds[kind]
        height = self._heights.get(at.height)
        if height is not None:
            for number, other in self._runs.get((height, _shape(self._one.graphs[at.row][run])), ()):
                yield number, other, mates, moves

    def cut(self, cut: Cut) -> Cut:
        lanes = (
            tuple(
                Sort(sort.mates, sort.hidden, self._heights[sort.height], self._lengths[sort.length])
                for sort in lane
                if sort.height in self._heights and sort.length in self._lengths
            )
            for lane in cut
        )
        return tuple(filter(None, lanes))


def _heights_of(one: Question, other: Question) -> dict[int, int]:
    """Give which height of the other question stands for each: alike in whole steps, and no higher.

    A stick that is ripped to the one, or just wide enough for it, then makes the other as well. That would
    not be so of any two that are rounded up to the same step.
    """
    return {
        place: max(serving)
        for place, height in enumerate(one.course_heights)
        if (
            serving := [
                number
                for number, lower in enumerate(other.course_heights)
                if lower <= height and other.down(lower) == one.down(height)
            ]
        )
    }


def _places_of(some: list[int], others: list[int]) -> dict[int, int]:
    """Give where each number stands among others, by where it stands here; none for those that are not."""
    places = {number: place for place, number in enumerate(others)}
    return {place: places[number] for place, number in enumerate(some) if number in places}


def _shape(graph: Graph) -> object:
    """Give all that ways along a run depend on, but for wood: arcs by what they are, not by number."""
    return graph.places, graph.in_sight, tuple((arc.first, arc.last, arc.hidden) for arc in graph.arcs)
