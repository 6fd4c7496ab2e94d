"""Courses where the outline slopes, drawn anew by what the prices of a programme say of other places.

What a course asks there depends on its very place, so it cannot be counted. Strips of each height are priced
every few inches, and the cheapest courses up to the end are a shortest path over places.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from plankwright.layout.plan import PlannedCourse
from plankwright.layout.rows import Row, Stack, fixed_stack, free_stack
from plankwright.layout.whole.cutting import Cutting
from plankwright.layout.whole.programme import Programme
from plankwright.layout.whole.question import Floats, Question
from plankwright.layout.whole.ways import Graphs, Ways
from plankwright.measure import INCH, Nm

_APART: Nm = 2 * INCH
"""Strips are priced so far apart; the prices of those between are interpolated."""

_STRIP_WORK = 1e-3
"""Seconds of a common machine to price a strip, as measured once."""

_LEARNT = 0.5
"""What the latest programme counts for in the prices that are gone by."""


class Slopes:
    """Courses that keep their places, drawn anew at prices that are learnt from one programme after another.

    The cheapest courses at the prices of one programme would all be alike, and dear in the next. So prices
    are the mean of those of all programmes so far, the later counting more.

    Parameters
    ----------
    question
        Its courses that are counted lie below those that keep their places.

    Attributes
    ----------
    spent
        Work done, in seconds of a common machine. [s]
    """

    def __init__(self, question: Question) -> None:
        self.strips, self.stack, self.grid = question.strips, question.stack, question.grid
        self.level = self.strips.level_until(self.stack.low)
        self.low = max(self.stack.low, self.level - max(question.course_heights))
        self.spent = 0.0
        self._counted = 0.0
        self._prices: dict[Nm, Floats] = {}

    def redrawn(self, programme: Programme, heights: Sequence[Nm]) -> Stack | None:
        """Draw courses anew, at prices that one more programme tells of.

        Parameters
        ----------
        programme
            As solved.
        heights
            That courses may take. [nm]

        Returns
        -------
        Stack or None
            The courses that are counted, and the new ones above them; nothing where none lead up to the end.
        """
        self._learn(programme, heights)
        found = self._cheapest(heights)
        if found is None:
            return None
        above = fixed_stack(
            self.strips, [PlannedCourse(*strip, (), ()) for strip in found], self.stack.beside
        )
        if above.low == self.stack.low:
            return above
        span = (self.stack.low, above.low, above.low)
        below = free_stack(self.strips, heights, span, self.stack.beside)
        return replace(below, rows=(*below.rows, *above.rows))

    def _learn(self, programme: Programme, heights: Sequence[Nm]) -> None:
        share = _LEARNT if self._prices else 1.0
        rows = [row for height in heights for row in self._rows(height)]
        self.spent += _STRIP_WORK * len(rows)
        priced: dict[Nm, list[float]] = {height: [] for height in heights}
        for row, price in zip(rows, _prices(programme, rows), strict=True):
            priced[row.heights[0]].append(price)
        for height, prices in priced.items():
            latest = np.array(prices)
            before = self._prices.get(height, latest)
            self._prices[height] = before + _LEARNT * (latest - before)
        counted = programme.height_price() / self.grid
        self._counted += share * (counted - self._counted)

    def _rows(self, height: Nm) -> Iterator[Row]:
        """Give a row for each strip of a height that is priced, from below."""
        end = self.strips.may_end
        for low in range(self.low, end - self.strips.rules.narrowest_course_nm + 1, _APART):
            strip = low, min(low + height, end)
            yield Row(self.strips.runs(*strip), (height,), 0, 0, strip)

    def _price(self, at: Nm, height: Nm) -> float:
        """Give what a course costs that begins at a place; above the last strip that was priced, as that."""
        prices = self._prices[height]
        return float(np.interp((at - self.low) / _APART, np.arange(len(prices)), prices))

    def _starts(self) -> Iterator[tuple[Nm, float]]:
        """Give where the courses may begin that are not counted, and what those cost that are."""
        highest = self.level - (self.level - self.stack.low) % self.grid
        for start in {self.low, *range(highest, self.low - 1, -self.grid)}:
            if start == self.stack.low or start - self.stack.low >= self.strips.rules.narrowest_course_nm:
                yield start, self._counted * (start - self.low)

    def _cheapest(self, heights: Sequence[Nm]) -> list[tuple[Nm, Nm]] | None:
        """Give the courses that lead to the end at the least price.

        Of places within one step of the grid the cheapest counts.
        """
        strips, narrowest = self.strips, self.strips.rules.narrowest_course_nm
        reached = {start // self.grid: _Reached(price, start, None) for start, price in self._starts()}
        end: _Reached | None = None
        for step in range(min(reached, default=0), strips.may_end // self.grid + 1):
            here = reached.get(step)
            if here is None:
                continue
            for height in heights:
                high = min(here.at + height, strips.may_end)
                ends = high >= strips.must_end
                if high - here.at < narrowest or not (ends or strips.may_end - high >= narrowest):
                    continue
                there = _Reached(here.price + self._price(here.at, height), high, step)
                if ends:
                    end = there if end is None or there.price < end.price else end
                elif high // self.grid not in reached or there.price < reached[high // self.grid].price:
                    reached[high // self.grid] = there
        courses = []
        while end is not None and end.before is not None:
            before = reached[end.before]
            courses.append((before.at, end.at))
            end = before
        return courses[::-1] or None


@dataclass(frozen=True, slots=True)
class _Reached:
    """A place that courses lead to, at what price, and the step of the grid where the last of them begins."""

    price: float
    at: Nm
    before: int | None


def _prices(programme: Programme, rows: Sequence[Row]) -> Iterator[float]:
    """Give what covering rows would cost at the prices of a programme, cheapest ways and bare runs alike."""
    asked = programme.question
    stack = replace(asked.stack, rows=(*asked.stack.rows, *rows))
    question = Question(asked.strips, asked.sticks, stack, asked.grid)
    ways = Ways(
        Graphs(question, programme.joint, programme.graphs.piece), _piece_prices(programme, question), {}
    )
    first = len(asked.stack.rows)
    for kind, at in enumerate(question.kinds):
        if at.row < first:
            continue
        price = 0.0
        for number, run in enumerate(question.stack.rows[at.row].runs):
            way = ways.cheapest(kind, number)
            bare = programme.bare_price(question.height_of(kind) * question.up(run.length))
            price += bare if way is None else min(way.price, bare)
        yield price


def _piece_prices(programme: Programme, question: Question) -> Floats:
    """Give what pieces of all sorts of another question cost, which has those of the programme, too."""
    asked = programme.question
    worth, rents = programme.market()
    heights = np.searchsorted(question.course_heights, asked.course_heights)
    lengths = np.searchsorted(question.lengths, asked.lengths)
    everywhere = np.ix_(np.arange(question.sets), np.arange(2), heights, lengths)
    worths = np.zeros((question.sets, 2, len(question.heights), len(question.lengths)))
    worths[everywhere] = worth
    prices = Cutting(question, worths).offers(rents).price
    known = np.full(worth.shape, np.inf)
    for sort in programme.sorts:
        place = sort.mates, int(sort.hidden), sort.height, sort.length
        known[place] = worth[place]
    prices[everywhere] = np.minimum(prices[everywhere], known)
    return prices
