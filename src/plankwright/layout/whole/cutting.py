"""What sticks are worth when each sort of piece has a price: how best to cut them, and what a piece costs.

A stick is ripped into lanes, and each lane is crosscut into pieces no higher than it. The best filling of a
lane is found for every room at once by dynamic programming, a piece more in each round.
"""

from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

from plankwright.layout.whole.question import Floats, Question, Sort

Lane: TypeAlias = tuple[Sort, ...]
Cut: TypeAlias = tuple[Lane, ...]
"""How a stick is cut: its lanes, each with its pieces."""

_LANES = 3
"""Into so many lanes a stick is ripped at the most."""

_PIECES = 9
"""So many pieces a lane has at the most."""

_NOTHING = 1e-9

_Whole = npt.NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class _Table:
    """For each height of a lane: its worth by room, the last piece by room, and the pieces worth offering."""

    worth: Floats
    last: _Whole
    offers: tuple[tuple[Sort, ...], ...]


@dataclass(frozen=True, slots=True)
class Offers:
    """What a piece of each sort costs at the least, and which wood it would then come from.

    Parameters
    ----------
    price
        Indexed by mates, hidden, height and length; infinite where no stick gives such a piece.
    source
        Number of the wood, or -1 where nothing new need be cut.
    """

    price: Floats
    source: _Whole


class Cutting:
    """What can be got out of the wood at some prices.

    Parameters
    ----------
    question
        The wood, and the sorts of pieces.
    prices
        Of each sort of piece, indexed by mates, hidden, height and length.
    """

    def __init__(self, question: Question, prices: Floats) -> None:
        self.question, self.prices = question, prices
        self._tables: dict[tuple[tuple[int, ...], bool], _Table] = {}
        self._room = max((wood.room for wood in question.wood), default=0)

    def best(self, number: int) -> tuple[float, Cut]:
        """Give the worthiest cut of a stick of some wood, and its worth."""
        wood = self.question.wood[number]
        table = self._table(number)
        worths = table.worth[:, wood.room]
        best: tuple[float, tuple[int, ...]] = 0.0, ()
        for height in wood.heights:
            if worths[height] > best[0]:
                best = float(worths[height]), (height,)
        ripped = self._lanes(number, wood.width, worths, _LANES)
        worth, lanes = ripped if ripped[0] > best[0] else best
        return worth, tuple(filter(None, (self._filling(table, height, wood.room) for height in lanes)))

    def offers(self, rents: Floats) -> Offers:
        """Say what pieces cost when a stick of each wood costs so much.

        Parameters
        ----------
        rents
            For each wood, what a stick of it costs.
        """
        question = self.question
        shape = self.prices.shape
        price, source = np.full(shape, np.inf), np.full(shape, -1, dtype=np.int64)
        for number, wood in enumerate(question.wood):
            fitting = int(np.searchsorted(question.sizes, wood.room, side="right"))
            if not fitting or not wood.heights:
                continue
            worth = self._table(number).worth
            base = np.full(len(question.heights), np.inf)
            for height in wood.heights:
                base[height] = rents[number] - self._beside(number, height, worth[:, wood.room])[0]
            cost = base[:, None] - worth[:, wood.room - question.sizes[:fitting]]
            for mates in wood.mates:
                for hidden in (1,) if wood.blemished else (0, 1):
                    cheaper = cost < price[mates, hidden, :, :fitting]
                    price[mates, hidden, :, :fitting][cheaper] = cost[cheaper]
                    source[mates, hidden, :, :fitting][cheaper] = number
        return Offers(np.maximum(price, 0.0), source)

    def around(self, number: int, sort: Sort) -> Cut:
        """Give the worthiest cut of a stick that has a piece of some sort."""
        wood, table = self.question.wood[number], self._table(number)
        rest = wood.room - int(self.question.sizes[sort.length])
        lane = (sort, *self._filling(table, sort.height, rest))
        beside = self._beside(number, sort.height, table.worth[:, wood.room])[1]
        others = (self._filling(table, height, wood.room) for height in beside)
        return tuple(filter(None, (lane, *others)))

    def worth(self, cut: Cut) -> float:
        """Give what the pieces of a cut are worth together."""
        return float(
            sum(
                self.prices[sort.mates, int(sort.hidden), sort.height, sort.length]
                for lane in cut
                for sort in lane
            )
        )

    def gives(self, number: int, sort: Sort) -> bool:
        """Whether a piece of some sort can be cut out of a stick of some wood."""
        question, wood = self.question, self.question.wood[number]
        return (
            sort.mates in wood.mates
            and (sort.hidden or not wood.blemished)
            and int(question.sizes[sort.length]) <= wood.room
            and int(question.heights[sort.height]) <= wood.width
            and (
                sort.height in wood.heights
                or (wood.sticks[0].rippable and self._may_rip(number, sort.height))
            )
        )

    def _beside(self, number: int, height: int, worths: Floats) -> tuple[float, tuple[int, ...]]:
        """Give the worthiest lanes beside one of some height."""
        question, wood = self.question, self.question.wood[number]
        if not self._may_rip(number, height):
            return 0.0, ()
        left = wood.width - int(question.heights[height]) - question.rip_kerf
        return self._lanes(number, left, worths, _LANES - 1)

    def _lanes(self, number: int, width: int, worths: Floats, most: int) -> tuple[float, tuple[int, ...]]:
        """Give the worthiest lanes that lie side by side in a width, at most so many, and their worth."""
        question = self.question
        choices = question.rips.lanes(width, question.wood[number].sticks[0].widest_rip, most)
        if not len(choices):
            return 0.0, ()
        each = np.append(worths, 0.0)[choices].sum(axis=1)
        best = int(each.argmax())
        if each[best] <= 0:
            return 0.0, ()
        return float(each[best]), tuple(height for height in choices[best].tolist() if height < len(worths))

    def _may_rip(self, number: int, height: int) -> bool:
        """Whether the saws can take a lane of some height off a stick."""
        stick = self.question.wood[number].sticks[0]
        return stick.widest_rip is None or self.question.course_heights[height] <= stick.widest_rip

    def _table(self, number: int) -> _Table:
        wood = self.question.wood[number]
        key = wood.mates, wood.blemished
        if key not in self._tables:
            self._tables[key] = self._tabulate(*key)
        return self._tables[key]

    def _tabulate(self, mates: tuple[int, ...], blemished: bool) -> _Table:  # noqa: FBT001 - as wood has it
        hidden = (True,) if blemished else (False, True)
        sources = [(of, out_of_sight) for of in mates for out_of_sight in hidden]
        prices = np.stack([self.prices[of, int(out_of_sight)] for of, out_of_sight in sources])
        dearest, best = prices.argmax(axis=0), prices.max(axis=0)
        heights = len(self.question.heights)
        worth = np.zeros((heights, self._room + 1))
        last = np.full((heights, self._room + 1), -1, dtype=np.int64)
        offers: list[tuple[Sort, ...]] = []
        for height in range(heights):
            # A piece lower than its lane is ripped once more.
            lower, price = best[: height + 1].argmax(axis=0), best[: height + 1].max(axis=0)
            sorts, dearer = [], _NOTHING
            for length in np.flatnonzero(price > 0):
                if price[length] > dearer and self.question.sizes[length] <= self._room:
                    dearer = float(price[length])
                    low = int(lower[length])
                    of, out_of_sight = sources[dearest[low, length]]
                    sorts.append(Sort(of, out_of_sight, low, int(length)))
            offers.append(tuple(sorts))
            if sorts:
                self._fill(offers[-1], price, worth[height], last[height])
        return _Table(worth, last, tuple(offers))

    def _fill(self, sorts: tuple[Sort, ...], prices: Floats, worth: Floats, last: _Whole) -> None:
        lengths = [sort.length for sort in sorts]
        before = np.arange(len(worth))[None, :] - self.question.sizes[lengths][:, None]
        too_long = before < 0
        before[too_long] = 0
        each = prices[lengths][:, None]
        everywhere = np.arange(len(worth))
        for _ in range(_PIECES):
            with_one_more = np.where(too_long, -1.0, worth[before] + each)
            which = with_one_more.argmax(axis=0)
            found = with_one_more[which, everywhere]
            better = found > worth + _NOTHING
            if not better.any():
                return
            worth[better], last[better] = found[better], which[better]

    def _filling(self, table: _Table, height: int, room: int) -> Lane:
        pieces: list[Sort] = []
        while room > 0 and table.last[height, room] >= 0 and len(pieces) < 2 * _PIECES:
            sort = table.offers[height][table.last[height, room]]
            pieces.append(sort)
            room -= int(self.question.sizes[sort.length])
        return tuple(pieces)
