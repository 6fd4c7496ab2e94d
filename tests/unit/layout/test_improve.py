"""Steps of the search."""

import random
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest

from benched import benched
from builders import board, nm, wall
from choosing import plain, sticks_of
from plankwright.layout import improve
from plankwright.layout.choose import Chooser
from plankwright.layout.figure import figure
from plankwright.layout.first import build
from plankwright.layout.grid import grid_for
from plankwright.layout.improve import Search
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.rows import free_stack
from plankwright.layout.sticks import whole_sticks
from plankwright.layout.strips import Strips
from plankwright.model import Job

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


@pytest.mark.parametrize("heights", [1, 3])
def test_a_look_takes_the_boards_in_use_and_no_more_others_than_it_can_weigh(
    monkeypatch: pytest.MonkeyPatch, heights: int
) -> None:
    """At most twelve heights times sticks, of forty boards."""
    offered: list[Sequence[Stick]] = []

    class Noted(Chooser):
        def __init__(self, strips: Strips, sticks: Sequence[Stick], *rest: Any, **more: Any) -> None:  # noqa: ANN401 - handed on
            offered.append(sticks)
            super().__init__(strips, sticks, *rest, **more)

    monkeypatch.setattr(improve, "Chooser", Noted)
    monkeypatch.setattr(improve, "_LOOK_AT_MOST", 12)
    search = _search(Search, *[(96, 6 + number / 16) for number in range(40)])
    used = search.stock[7]
    course = PlannedCourse(
        0, nm(6), (PlannedPiece(replace(used, across_to=used.across_from + nm(6)), 0, nm(96)),)
    )
    search.take((course, *BARE[1:]))
    search._look(
        (0, 1),
        free_stack(search.strips, [nm(6 + more / 16) for more in range(heights)], (0, nm(12), nm(12)), ()),
        work=0.1,
        thorough=False,
    )
    [sticks] = offered
    assert len(sticks) == 12 // heights
    assert any(stick.board == used.board for stick in sticks)


def test_of_boards_that_are_asked_for_the_length_counts() -> None:
    """Where any may be asked for, what of the pile is spent does not matter."""
    search = _search(Search, (96, 6), (96, 6))
    asked = replace(search.stock[1], endless=True)
    plan = tuple(
        PlannedCourse(nm(low), nm(low + 6), (PlannedPiece(stick, 0, nm(96)),))
        for low, stick in ((0, search.stock[0]), (6, asked))
    )
    assert figure(search.strips, [search.stock[0], asked], search.faces, plan) == (0, 0, nm(96))


def test_what_is_settled_is_never_taken_down() -> None:
    """Neither by a look, nor by drawing courses anew; all above it may change."""
    work, strips, stock = _benched()
    chance = random.Random(2)  # noqa: S311 - chance, not secrecy
    plan = build(strips, stock, chance)
    settled = frozenset(course.low for course in plan[:3])
    search = _holding(work, strips, stock, plan, settled)
    for _ in range(12):
        search.step()
        search.begin_again()
    search.whole(0.1)
    assert not search.repack(5.0)
    assert search.plan[:3] == plan[:3]
    assert search.figure < figure(strips, stock, [one.face_area_nm2 for one in work.boards], plan)


def test_a_stretch_ends_where_something_is_settled() -> None:
    """Courses in a row on one side of it."""
    work, strips, stock = _benched()
    plan = build(strips, stock, random.Random(2))  # noqa: S311 - chance, not secrecy
    search = _holding(work, strips, stock, plan, frozenset({plan[4].low}))
    for _ in range(50):
        stretch = search._stretch()
        assert 4 not in stretch
        assert max(stretch) < 4 or min(stretch) > 4
        assert 4 not in search._scattered(4)


def _benched() -> tuple[Job, Strips, list[Stick]]:
    """Give a wall, as the courses see it, and the wood for it."""
    work = benched(3)
    stock = [stick for place, one in enumerate(work.boards) for stick in whole_sticks(one, place, work.rules)]
    return work, Strips(work.surfaces[0], work.rules), stock


def _holding(work: Job, strips: Strips, stock: list[Stick], plan: Plan, settled: frozenset[int]) -> Search:
    return Search(
        strips,
        stock,
        [one.face_area_nm2 for one in work.boards],
        grid_for(strips, stock, work.tape.system),
        random.Random(1),  # noqa: S311 - chance, not secrecy
        plan,
        settled=settled,
    )
