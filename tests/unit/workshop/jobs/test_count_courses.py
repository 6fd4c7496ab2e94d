"""Counting along while boards are tallied: how many courses they cover, and what is short."""

from dataclasses import replace

import pytest

from builders import TAPE, board, flaw, job, nm, wall
from plankwright.model import EdgeKind, EdgeProfile, Framing, Job, JointPolicy, Rules, Severity, Surface
from plankwright.workshop.jobs.count_courses import (
    CourseCount,
    Short,
    SurfaceCount,
    count_courses,
    tell_count,
)
from village import small_job

NO_JOINTS = Rules(expansion_gap_nm=0, joints=JointPolicy.NEVER)


def _wall(height: float, name: str = "wall") -> Surface:
    return wall(96, height, id=name, framing=Framing(solid=True))


def _job(height: float, *sizes: tuple[float, float], rules: Rules = NO_JOINTS) -> Job:
    boards = [board(f"A{number}", length, width) for number, (length, width) in enumerate(sizes)]
    return job(_wall(height), boards, rules)


def _short(*shorts: Short, covered: int = 1) -> CourseCount:
    one = SurfaceCount(name="wall", covered=covered, in_part=0, courses=15, about=True)
    return CourseCount(surfaces=(one,), bare_nm2=nm(96) * nm(5), short=shorts, untouched=0)


def test_boards_that_cover_a_wall_are_enough() -> None:
    """All of its courses are covered, and a board is left over."""
    count = count_courses(small_job())
    assert count.enough
    assert [(each.covered, each.courses, each.about) for each in count.surfaces] == [(2, 2, False)]
    assert (count.untouched, count.short) == (1, ())


def test_what_is_missing_is_counted_in_courses_like_those_that_are_there() -> None:
    """Two courses of five inches, of a wall thirty inches high."""
    count = count_courses(_job(30, (97, 5.25), (97, 5.25)))
    (surface,) = count.surfaces
    assert (surface.covered, surface.courses, surface.about) == (2, 6, True)
    assert not count.enough


def test_a_pile_that_is_too_small_is_short_on_wood() -> None:
    """Every board would do, and there are too few."""
    assert count_courses(_job(30, (97, 5.25), (97, 5.25))).short == (Short.WOOD,)


def test_boards_shorter_than_the_wall_are_too_short_where_no_joint_may_show() -> None:
    """However many there are."""
    assert count_courses(_job(10, *[(60, 5.25)] * 12)).short == (Short.LONG,)


def test_a_course_wider_than_what_is_left_wants_wide_boards() -> None:
    """Courses of five inches are there; of the last one strips are left that are narrower than it may be."""
    rules = replace(NO_JOINTS, narrowest_course_nm=nm(5))
    count = count_courses(_job(10, (97, 5.25), *[(97, 4.5)] * 12, rules=rules))
    assert count.short == (Short.WIDE,)


def test_boards_with_blemishes_do_not_help_where_all_is_in_sight() -> None:
    """The pile has wood enough."""
    stained = (flaw(0, 120, Severity.BLEMISH),)
    boards = [board(f"A{number}", 120, 5.25, flaws=stained) for number in range(4)]
    assert count_courses(job(_wall(10), boards, NO_JOINTS)).short == (Short.CLEAN,)


def test_boards_of_unlike_thickness_are_no_mates() -> None:
    """Half as long as the wall, each with another thickness, they cannot butt."""
    rules = Rules(expansion_gap_nm=0, shim_up_to_nm=0)
    boards = [
        board(f"A{number}", 49, 5.25, thickness_nm=nm(0.5 + number / 4), profile=profile)
        for number, profile in enumerate(
            (EdgeProfile(), EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.5)))
        )
    ]
    more = [replace(one, id=f"{one.id} spare", length_nm=nm(30)) for one in boards]
    count = count_courses(job(_wall(5), [*boards, *more], rules))
    assert Short.MATES in count.short


def test_boards_held_back_are_not_counted_on() -> None:
    """Of three, the wall takes two."""
    held = replace(small_job(), rules=replace(small_job().rules, hold_back=2))
    assert not count_courses(held).enough


def test_what_one_surface_takes_is_not_there_for_the_next() -> None:
    """Three boards, for two walls that take two each."""
    walls = [_wall(10, "entry"), _wall(10, "porch")]
    boards = [board(name, 97, 5.25) for name in "ABC"]
    count = count_courses(job(walls, boards, NO_JOINTS))
    assert [(each.name, each.covered) for each in count.surfaces] == [("entry", 2), ("porch", 1)]


def test_the_same_job_gives_the_same_count_without_another_look() -> None:
    """As when a page is asked for again."""
    assert count_courses(small_job()) is count_courses(small_job())


def test_boards_of_no_use_cover_nothing() -> None:
    """Lost from end to end."""
    count = count_courses(job(_wall(10), [board("A", 97, 5.25, flaws=(flaw(0, 97),))], NO_JOINTS))
    assert [(each.covered, each.in_part) for each in count.surfaces] == [(0, 0)]
    assert count.short == (Short.WOOD,)
    assert tell_count(count, TAPE) == ("Nothing can be hung of these boards yet, short on wood altogether.",)


def test_enough_is_said_with_what_is_to_spare() -> None:
    """And that it is a quick look."""
    first, worth = tell_count(count_courses(small_job()), TAPE)
    assert first == "Enough for all 2 courses, with one board to spare."
    assert "quick look" in worth


def test_how_far_it_reaches_is_said_with_what_is_short() -> None:
    """In one sentence; not covering is never said to prove anything."""
    first, *worth = tell_count(_short(Short.LONG, Short.WIDE, covered=11), TAPE)
    assert first == "Enough for 11 of about 15 courses, short on long boards and wide boards."
    assert "proves nothing" in " ".join(worth)


@pytest.mark.parametrize(("in_part", "told"), [(1, "One more course is"), (3, "Three more courses are")])
def test_courses_covered_in_part_are_said(in_part: int, told: str) -> None:
    """They are neither covered nor missing."""
    count = _short(Short.LONG)
    partly = replace(count, surfaces=(replace(count.surfaces[0], in_part=in_part),))
    assert f"{told} covered in part." in tell_count(partly, TAPE)


def test_several_surfaces_are_told_apart() -> None:
    """Each by its name."""
    one = SurfaceCount(name="entry", covered=2, in_part=0, courses=2)
    two = SurfaceCount(name="porch", covered=0, in_part=1, courses=1)
    count = CourseCount(surfaces=(one, two), bare_nm2=1, short=(), untouched=0)
    first, second, *_ = tell_count(count, TAPE)
    assert first == "Enough for entry: all 2 courses; porch: none of 1 course."
    assert second == "One more course of porch is covered in part."
