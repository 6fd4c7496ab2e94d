"""What sticks are worth, held against every way to cut them."""

from dataclasses import replace
from itertools import combinations_with_replacement, product
from random import Random

import numpy as np
import pytest

from asking import question
from builders import board, nm
from choosing import plain
from plankwright.layout.whole.cutting import Cutting
from plankwright.layout.whole.question import Floats, Question, Sort


def _prices(asked: Question, seed: int) -> Floats:
    chance = np.random.default_rng(seed)
    shape = (asked.sets, 2, len(asked.heights), len(asked.lengths))
    return np.floor(chance.random(shape) * 100) * (chance.random(shape) < 0.5)


def _best_lane(asked: Question, prices: Floats, height: int, room: int) -> float:
    """Look at every set of at most three pieces."""
    each = [
        (int(asked.sizes[length]), float(prices[:, :, : height + 1, length].max()))
        for length in range(len(asked.lengths))
    ]
    best = 0.0
    for count in range(1, 4):
        for pieces in combinations_with_replacement(each, count):
            if sum(size for size, _ in pieces) <= room:
                best = max(best, sum(price for _, price in pieces))
    return best


@pytest.mark.parametrize("seed", range(20))
def test_no_way_to_cut_a_stick_is_worth_more(seed: int) -> None:
    """Neither more lanes nor other pieces."""
    chance = Random(seed)  # noqa: S311 - chance, not secrecy
    rules = plain(
        shortest_piece_nm=nm(20),
        narrowest_course_nm=nm(2),
        crosscut_kerf_nm=nm(0.25),
        rip_kerf_nm=nm(0.25),
    )
    boards = [board("A", chance.choice((50, 72.5, 90)), chance.choice((3, 4, 7.25, 9)))]
    asked = question(boards, (3, 4), rules=rules)
    prices = _prices(asked, seed)
    worth, cut = Cutting(asked, prices).best(0)
    lanes = [_best_lane(asked, prices, height, asked.wood[0].room) for height in range(2)]
    width, kerf = asked.wood[0].width, asked.rip_kerf
    best = 0.0
    for count in range(1, 4):
        for heights in product(range(2), repeat=count):
            if sum(int(asked.heights[height]) + kerf for height in heights) <= width + kerf:
                best = max(best, sum(lanes[height] for height in heights))
    assert worth == pytest.approx(best)
    assert sum(float(prices[tuple(map(int, sort))]) for lane in cut for sort in lane) == pytest.approx(worth)


@pytest.mark.parametrize("seed", range(10))
def test_a_piece_costs_what_its_stick_would_earn_without_it(seed: int) -> None:
    """Of the wood that would miss it least."""
    asked = question([board("A", 96, 4), board("B", 60, 3)], (3, 4))
    prices = _prices(asked, seed)
    cutting = Cutting(asked, prices)
    rents = np.array([cutting.best(number)[0] for number in range(len(asked.wood))]) + 5
    offers = cutting.offers(rents)
    for height, length in product(range(2), range(len(asked.lengths))):
        costs = [
            rents[number] - _best_lane(asked, prices, height, wood.room - int(asked.sizes[length]))
            for number, wood in enumerate(asked.wood)
            if height in wood.heights and asked.sizes[length] <= wood.room
        ]
        expected = max(0.0, min(costs)) if costs else np.inf
        assert offers.price[0, 0, height, length] == pytest.approx(expected)


def test_a_cut_around_a_piece_has_that_piece_and_fits() -> None:
    """Along the board and across it."""
    asked = question([board("A", 96, 8)], (3, 4))
    cutting = Cutting(asked, _prices(asked, 3))
    offers = cutting.offers(np.array([10.0]))
    for height, length in product(range(2), range(len(asked.lengths))):
        if offers.source[0, 0, height, length] < 0:
            continue
        sort = next(sort for sort in _sorts(asked) if (sort.height, sort.length) == (height, length))
        cut = cutting.around(0, sort)
        assert sort in cut[0]
        assert all(
            sum(int(asked.sizes[piece.length]) for piece in lane) <= asked.wood[0].room for lane in cut
        )
        assert (
            sum(max(int(asked.heights[piece.height]) for piece in lane) for lane in cut)
            <= asked.wood[0].width
        )


def _sorts(asked: Question) -> list[Sort]:
    return [
        Sort(mates=0, hidden=False, height=height, length=length)
        for height in range(len(asked.heights))
        for length in range(len(asked.lengths))
    ]


def test_no_lane_is_wider_than_the_saws_can_rip() -> None:
    """A stick that cannot be ripped gives one lane, of its own width."""
    asked = question([board("A", 96, 8)], (4, 8))
    fixed = replace(asked.sticks[0], widest_rip=0)
    same = Question(asked.strips, [fixed], asked.stack, asked.grid)
    prices = np.ones((1, 2, 2, len(same.lengths)))
    _, cut = Cutting(same, prices).best(0)
    assert len(cut) == 1
