"""The plain model keeps the rules, and covers small walls whole."""

from dataclasses import replace

import pytest

from benchmarks.plain_model import lay_plainly
from builders import board, job, nm, opening, outline, studs, wall
from plankwright.check import check_layout, faults
from plankwright.model import Board, ConcealedZone, Job, JointPolicy, Rectangle, Rules

LIMIT_S = 60.0
"""Far more than it takes: the solver ends when it has proved its best."""
PLAIN = Rules(expansion_gap_nm=0)


def _lengths(*lengths: float, width: float = 5.25) -> list[Board]:
    return [board(f"B{number}", length, width) for number, length in enumerate(lengths)]


def _bare(given: Job) -> int:
    """Give what is left bare, once the checker has let the layout pass. [nm²]"""
    layout = lay_plainly(given, LIMIT_S)
    assert faults(check_layout(given, layout)) == ()
    return layout.surfaces[0].score.bare_nm2


def test_a_plain_wall_is_covered() -> None:
    """Heights follow from the boards; one board gives two pieces."""
    boards = [*_lengths(98, 98), *_lengths(197.5, width=4.25)]
    named = [replace(each, id=f"C{number}") for number, each in enumerate(boards)]
    assert _bare(job(wall(96, 18), named, PLAIN)) == 0


def test_a_wide_board_gives_two_courses() -> None:
    """Ripped from end to end."""
    assert _bare(job(wall(96, 16), [board("A", 98, 10.375), board("B", 98, 6.25)], PLAIN)) == 0


def test_joints_are_staggered_on_framing() -> None:
    """Neighbouring courses butt at different studs."""
    surface = wall(96, 10, framing=studs(0.75, 24, 48, 72, 95.25))
    given = job(surface, _lengths(26, 74, 50, 50), PLAIN)
    layout = lay_plainly(given, LIMIT_S)
    assert faults(check_layout(given, layout)) == ()
    assert layout.covers_everything
    assert layout.surfaces[0].score.joints_in_sight == 2


def test_joints_are_hidden_where_none_may_show() -> None:
    """Behind the bench only."""
    bench = ConcealedZone(id="bench", place=Rectangle(left=nm(40), bottom=0, right=nm(60), top=nm(5)))
    surface = wall(96, 10, framing=studs(0.75, 24, 48, 72, 95.25), concealed=(bench,))
    rules = replace(PLAIN, joints=JointPolicy.NEVER)
    assert _bare(job(surface, _lengths(50, 50, 98), rules)) == 0
    assert _bare(job(surface, _lengths(50, 50, 50, 50), rules)) > 0


def test_an_opening_is_gone_round() -> None:
    """One course below it in one piece, two beside it in two, one above."""
    surface = wall(
        96,
        20,
        framing=studs(0.75, 29, 47, 65, 95.25),
        openings=(opening("window", 30, 5, 64, 15),),
    )
    assert _bare(job(surface, _lengths(98, 98, 32, 32, 34, 34), PLAIN)) == 0


def test_a_gable_is_covered_with_boards_that_follow_the_slope() -> None:
    """The upper course is shorter, and so may its board be."""
    gable = outline((0, 0), (96, 0), (96, 5), (48, 15), (0, 5))
    surface = wall(96, 15, outline=gable)
    assert _bare(job(surface, _lengths(98, 98, 50), PLAIN)) == 0


@pytest.mark.parametrize("count", [0, 1])
def test_too_little_wood_leaves_bare(count: int) -> None:
    """As much as there is no board for."""
    assert _bare(job(wall(96, 10), _lengths(*[98.0] * count), PLAIN)) == (2 - count) * nm(96) * nm(5)
