"""Dealing wood out: every board to one surface, in proportion, widths together."""

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builders import nm
from plankwright.layout.dealing import AMPLE, FEW, PLENTY, area_of, deal, served_together
from plankwright.layout.plan import Stick
from plankwright.model import EdgeProfile, Face


def stick(board: int, length: float, width: float, start: float = 0) -> Stick:
    """Give a stretch of a board of three quarters."""
    return Stick(
        board,
        nm(start),
        nm(start + length),
        0,
        nm(width),
        Face.FRONT,
        False,  # noqa: FBT003 - without a blemish
        nm(0.75),
        EdgeProfile(),
    )


@st.composite
def piles(draw: st.DrawFn) -> list[Stick]:
    """Draw a pile of boards of one or two sticks, of few widths."""
    sizes = st.tuples(st.integers(10, 150), st.sampled_from([3, 4.5, 6]))
    boards = draw(st.lists(st.lists(sizes, min_size=1, max_size=2), max_size=30))
    return [
        stick(place, length, width, 200 * number)
        for place, sticks in enumerate(boards)
        for number, (length, width) in enumerate(sticks)
    ]


@given(piles(), st.lists(st.integers(1, 1000), min_size=1, max_size=6), st.integers(0, 9))
def test_every_board_is_handed_to_exactly_one_surface(
    sticks: list[Stick], needs: list[int], seed: int
) -> None:
    """Whole, in the order that the sticks were in, and the same for the same chance."""
    shares = deal(sticks, needs, random.Random(seed))  # noqa: S311 - chance, not secrecy
    assert len(shares) == len(needs)
    assert sorted((one for share in shares for one in share), key=sticks.index) == sticks
    assert [list(share) for share in shares] == [[one for one in sticks if one in share] for share in shares]
    boards = [{one.board for one in share} for share in shares]
    assert sum(map(len, boards)) == len({one.board for one in sticks})
    assert shares == deal(sticks, needs, random.Random(seed))  # noqa: S311 - as above


@given(piles(), st.lists(st.integers(1, 1000), min_size=1, max_size=6))
def test_shares_are_as_large_as_they_should_be_but_for_a_board(sticks: list[Stick], needs: list[int]) -> None:
    """Each end of a share falls within half the board that lies there."""
    shares = deal(sticks, needs, random.Random(0))  # noqa: S311 - chance, not secrecy
    boards = {one.board for one in sticks}
    largest = max((area_of([one for one in sticks if one.board == board]) for board in boards), default=0)
    for share, need in zip(shares, needs, strict=True):
        assert abs(area_of(share) - area_of(sticks) * need / sum(needs)) <= largest


def test_the_first_gets_the_widest_boards() -> None:
    """And each few widths: here one."""
    sticks = [stick(n, 100, width) for n, width in enumerate([3, 7, 5, 7, 3, 5])]
    wide, middling, narrow = deal(sticks, [7, 5, 3], random.Random(0))  # noqa: S311 - chance, not secrecy
    assert {one.width for one in wide} == {nm(7)}
    assert {one.width for one in middling} == {nm(5)}
    assert {one.width for one in narrow} == {nm(3)}


def test_boards_of_one_width_are_mixed() -> None:
    """A tally in order of length does not give one surface all the long ones."""
    sticks = [stick(n, 100 if n < 10 else 20, 5) for n in range(20)]
    for seed in range(5):
        shares = deal(sticks, [1, 1], random.Random(seed))  # noqa: S311 - chance, not secrecy
        assert all({one.length for one in share} == {nm(100), nm(20)} for share in shares)


@pytest.mark.parametrize(
    ("needs", "wood", "count"),
    [
        ([10] * 9, 90 * PLENTY, 9),
        ([10] * 9, 90 * PLENTY - 1, 8),
        ([10] * 9, 90 * AMPLE, FEW),
        ([10] * 9, 10 * FEW * AMPLE - 1, FEW - 1),
        ([10] * 9, 10 * AMPLE, 1),
        ([10] * 9, 0, 1),
        ([30, 1], 10 * AMPLE, 1),
        ([10], 1000, 1),
    ],
)
def test_as_many_share_the_wood_as_there_is_plenty_for(needs: list[int], wood: int, count: int) -> None:
    """Or a few for which it is ample; and one is always served."""
    assert served_together(needs, wood) == count
