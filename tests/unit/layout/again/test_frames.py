"""Where courses go that do not hang yet, once those that do came out as they did."""

import pytest

from builders import board, course, job, layout, nm, piece, surface_layout, wall
from plankwright.layout.again.carried import carried_rows
from plankwright.layout.again.frames import FrameRow, frames_for
from plankwright.layout.strips import Strips
from plankwright.model import HungCourse, Rules, Standing, SurfaceLayout

RULES = Rules(expansion_gap_nm=0)
WALL = wall(96, 24)
JOB = job(WALL, [board(name, 97, 6.25) for name in ("A", "B", "C", "D")], RULES)
NAMES = "ABCD"


def laid(*edges: tuple[float, float]) -> SurfaceLayout:
    """Give courses of one piece each."""
    rows = (
        course(number, edge, piece(WALL, f"{number}a {NAMES[number - 1]}", (0, 96), edge))
        for number, edge in enumerate(edges, start=1)
    )
    return surface_layout(WALL, *rows)


FOUR = laid((0, 6), (6, 12), (12, 18), (18, 24))


def hung(number: int, edge: tuple[float, float]) -> HungCourse:
    """Give a course as it hangs."""
    one = piece(WALL, f"{number}a {NAMES[number - 1]}", (0, 96), edge)
    return HungCourse(surface_id="wall", course=course(number, edge, one))


def frames(*hanging: HungCourse, of: SurfaceLayout = FOUR) -> list[list[tuple[float, float]]]:
    """Give the ways in which courses can follow what hangs."""
    sawn = tuple(row.course.pieces[0].board_id for row in hanging)
    rows = carried_rows(JOB, Strips(WALL, RULES), of, Standing(hung=hanging, sawn=sawn))
    found: list[tuple[FrameRow, ...]] = frames_for(Strips(WALL, RULES), rows)
    return [[(row.low / nm(1), row.high / nm(1)) for row in frame] for frame in found]


def test_where_all_came_out_as_planned_nothing_moves() -> None:
    """There is one way only."""
    assert frames(hung(1, (0, 6))) == [[(0, 6), (6, 12), (12, 18), (18, 24)]]
    assert frames() == [[(0, 6), (6, 12), (12, 18), (18, 24)]]


def test_a_gap_that_counts_as_none_may_stay() -> None:
    """A sixteenth lower: the course that hangs is taken to reach as far as the next."""
    assert frames(hung(1, (0, 5.9375)))[0] == [(0, 6), (6, 12), (12, 18), (18, 24)]


def test_a_course_that_came_out_higher_shifts_others_until_one_takes_it_up() -> None:
    """The next, the one after, or the last."""
    assert frames(hung(1, (0, 6.125))) == [
        [(0, 6.125), (6.125, 12), (12, 18), (18, 24)],
        [(0, 6.125), (6.125, 12.125), (12.125, 18), (18, 24)],
        [(0, 6.125), (6.125, 12.125), (12.125, 18.125), (18.125, 24)],
    ]


def test_a_course_that_came_out_lower_leaves_more_to_cover() -> None:
    """One of the others gets higher, or all move down and the last does."""
    assert frames(hung(1, (0, 5.5)))[0] == [(0, 5.5), (5.5, 12), (12, 18), (18, 24)]


def test_between_courses_that_hang_there_is_only_so_much_room() -> None:
    """Whoever hung the third before the second."""
    assert frames(hung(1, (0, 6.25)), hung(3, (12.25, 18.25)))[0] == [
        (0, 6.25),
        (6.25, 12.25),
        (12.25, 18.25),
        (18.25, 24),
    ]


def test_a_course_that_has_no_room_left_is_given_up() -> None:
    """What hangs has taken its place."""
    thin = laid((0, 6), (6, 8.5), (8.5, 14.5), (14.5, 24))
    assert [(0, 8), (8, 14.5), (14.5, 24)] in frames(hung(1, (0, 8)), of=thin)


def test_room_for_a_course_that_nothing_was_planned_in_is_covered() -> None:
    """Below what hangs, and above the last."""
    assert frames(hung(1, (3, 6)), of=laid((0, 6)))[0] == [(0, 3), (3, 6), (6, 24)]


def test_a_course_that_hangs_and_is_not_in_the_layout_is_there_all_the_same() -> None:
    """Where it hangs."""
    assert (18, 24) in frames(hung(4, (18, 24)), of=laid((0, 6), (6, 12), (12, 18)))[0]


@pytest.mark.parametrize("count", [1, 3])
def test_rows_say_what_hangs_of_them(count: int) -> None:
    """And what does not."""
    standing = Standing(
        hung=tuple(hung(n, (6 * n - 6, 6 * n)) for n in range(1, count + 1)), sawn=tuple("ABC"[:count])
    )
    rows = carried_rows(JOB, Strips(WALL, RULES), layout(FOUR).surfaces[0], standing)
    assert [row.hung is not None for row in rows] == [number < count for number in range(4)]
    assert [len(row.facts) for row in rows] == [int(number < count) for number in range(4)]
    assert [len(row.planned.pieces) for row in rows] == [int(number >= count) for number in range(4)]
