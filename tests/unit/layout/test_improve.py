"""Steps of the search."""

import random
from dataclasses import replace
from typing import Any

from builders import board, nm, wall
from choosing import plain, sticks_of
from plankwright.layout.improve import Search, figure
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece
from plankwright.layout.strips import Strips

RULES = plain(shortest_piece_nm=nm(16), narrowest_course_nm=nm(2))
WALL = wall(96, 12)
BARE: Plan = tuple(
    PlannedCourse(nm(low), nm(low + 6), (), ((0, nm(96)),)) for low in (0, 6)
)  # Two courses that nothing hangs in.


def _search(kind: type[Search], *sizes: tuple[float, float]) -> Search:
    boards = [board(f"B{number}", *size) for number, size in enumerate(sizes)]
    return kind(
        Strips(WALL, RULES),
        sticks_of(boards, RULES),
        [each.face_area_nm2 for each in boards],
        nm(1 / 16),
        random.Random(0),  # noqa: S311 - chance, not secrecy
        BARE,
    )


class _Fickle(Search):
    """Finds as good a plan with one course less whenever it looks, which is no better."""

    def _look(self, chosen: Any, *_args: Any, **_more: Any) -> bool:  # noqa: ANN401 - handed through
        assert all(place < len(self.plan) for place in chosen)
        self.plan = self.plan[:1]
        return False


def test_the_level_part_is_looked_at_as_it_is_by_then() -> None:
    """The first look may leave fewer courses than there were."""
    assert not _search(_Fickle, (96, 6)).whole(1.0)


def test_a_level_surface_is_covered_at_once_when_it_can_be() -> None:
    """With widths that no course has yet: three boards of four inches."""
    search = _search(Search, (96, 4), (96, 4), (96, 4))
    assert search.whole(1.0)
    assert search.figure[:2] == (0, 0)
    assert [course.height for course in search.plan] == [nm(4)] * 3


def test_of_boards_that_are_asked_for_the_length_counts() -> None:
    """Where any may be asked for, what of the pile is spent does not matter."""
    search = _search(Search, (96, 6), (96, 6))
    asked = replace(search.stock[1], endless=True)
    plan = tuple(
        PlannedCourse(nm(low), nm(low + 6), (PlannedPiece(stick, 0, nm(96)),))
        for low, stick in ((0, search.stock[0]), (6, asked))
    )
    assert figure(search.strips, [search.stock[0], asked], search.faces, plan) == (0, 0, nm(96))
