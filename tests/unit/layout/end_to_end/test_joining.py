"""Boards laid end to end: every stretch that can be is covered, and nothing is used twice."""

import random
from collections.abc import Sequence

import pytest

from builders import board, nm, wall
from choosing import plain, sticks_of
from plankwright.check import check_layout, faults
from plankwright.layout import Effort, lay_out
from plankwright.layout.end_to_end.joining import Joining, Stretch, join
from plankwright.measure import System, TapeStyle
from plankwright.model import Board, ConcealedZone, Framing, Job, JointPolicy, Rectangle, Rules
from published.instances import numbers_of, triplets

_RULES = plain(shortest_piece_nm=nm(20))


def _joined(stretches: Sequence[Stretch], boards: Sequence[Board], rules: Rules = _RULES) -> Joining:
    chance = random.Random(0)  # noqa: S311 - chance, not secrecy
    return join(
        stretches, sticks_of(boards, rules), rules, nm(1 / 4), work=10.0, chance=chance, stopped=lambda: False
    )


def _hidden(length: float, height: float = 6) -> Stretch:
    return Stretch(nm(length), nm(height), hidden=True)


def _ids(joined: Joining) -> list[list[int]]:
    return [sorted(stick.board for stick, _ in some) for some in joined.chosen]


def test_boards_that_just_reach_are_laid_end_to_end() -> None:
    """80 and 20, and 60 and 40, make two stretches of 100; no other pairs do."""
    boards = [board(str(length), length, 6) for length in (80, 60, 40, 20)]
    joined = _joined([_hidden(100), _hidden(100)], boards)
    assert sorted(_ids(joined)) == [[0, 3], [1, 2]]
    assert all(sum(length for _, length in some) == nm(100) for some in joined.chosen)


def test_what_is_too_long_is_taken_off_the_last_but_leaves_no_short_piece() -> None:
    """70, 25 and 25 reach 20 too far; neither short one may lose more than 5."""
    boards = [board("A", 70, 6), board("B", 25, 6), board("C", 25, 6)]
    (chosen,) = _joined([_hidden(100)], boards).chosen
    lengths = [length for _, length in chosen]
    assert sum(lengths) == nm(100)
    assert min(lengths) >= nm(20)


def test_more_pieces_than_fit_at_their_shortest_are_not_taken() -> None:
    """Four of 26 reach 100, but no piece may be shorter than 26."""
    boards = [board(name, 26, 6) for name in "ABCD"]
    assert _joined([_hidden(100)], boards, plain(shortest_piece_nm=nm(26))).chosen == ((),)


def test_as_much_as_possible_is_covered() -> None:
    """Of a long stretch and a short one that the same two boards would serve, the long one."""
    boards = [board("A", 60, 6), board("B", 60, 6)]
    joined = _joined([_hidden(100), _hidden(120)], boards)
    assert _ids(joined) == [[], [0, 1]]


def test_in_sight_thicknesses_are_not_mixed() -> None:
    """Two thick boards and two thin ones reach twice, but not one of each."""
    boards = [
        board("A", 60, 6),
        board("B", 50, 6, thickness_nm=nm(1)),
        board("C", 40, 6),
        board("D", 50, 6, thickness_nm=nm(1)),
    ]
    seen = [Stretch(nm(100), nm(6), hidden=False)] * 2
    assert sorted(_ids(_joined(seen, boards))) == [[0, 2], [1, 3]]


def test_a_narrow_board_serves_no_high_course() -> None:
    """It is left to the low one."""
    boards = [board("A", 100, 4), board("B", 100, 6)]
    assert _ids(_joined([_hidden(100, 6), _hidden(100, 4)], boards)) == [[1], [0]]


@pytest.mark.parametrize("seed", range(3))
def test_triplets_reach_as_often_as_they_can(seed: int) -> None:
    """Sixty pieces of which every three reach just 1000, as they were drawn: twenty stretches."""
    lengths = triplets(seed)
    boards = [board(str(place), length / 4, 6) for place, length in enumerate(lengths)]
    joined = _joined([_hidden(250)] * 20, boards, plain(shortest_piece_nm=nm(min(lengths) / 4)))
    used = [stick.board for some in joined.chosen for stick, _ in some]
    assert len(used) == len(set(used)) == 60
    assert all(sum(length for _, length in some) == nm(250) for some in joined.chosen)


def test_a_published_list_reaches_as_often_as_its_total_allows() -> None:
    """The items of u120_00 (Falkenauer 1996) as pieces to be joined, as often as their total would allow."""
    _, length, *pieces = numbers_of("falkenauer/Falkenauer_u120_00")
    reached = sum(pieces) // length
    boards = [board(str(place), piece, 6) for place, piece in enumerate(pieces)]
    joined = _joined([_hidden(length)] * reached, boards, plain(shortest_piece_nm=nm(min(pieces))))
    assert all(joined.chosen)


@pytest.mark.parametrize("policy", [JointPolicy.NEVER, JointPolicy.COUNT])
def test_a_wall_on_solid_backing_is_covered_by_boards_that_just_reach(policy: JointPolicy) -> None:
    """Where they butt is no multiple of anything: 61-3/8 and 34-5/8, 53-1/16 and 42-15/16."""
    place = Rectangle(left=0, bottom=0, right=nm(96), top=nm(12))
    surface = wall(
        96,
        12,
        framing=Framing(solid=True),
        concealed=(ConcealedZone(id="cupboards", place=place),) if policy is JointPolicy.NEVER else (),
    )
    lengths = (61.375, 53.0625, 42.9375, 34.625)
    job = Job(
        name="village hall",
        tape=TapeStyle(system=System.IMPERIAL),
        surfaces=(surface,),
        boards=tuple(board(f"B{place}", length, 6) for place, length in enumerate(lengths)),
        rules=plain(joints=policy, shortest_piece_nm=nm(20), narrowest_course_nm=nm(2)),
    )
    layout = lay_out(job, effort=Effort(name="test", seconds=2.0)).layout
    assert layout.covers_everything
    assert not faults(check_layout(job, layout))
