"""First layouts: quick, whole, and the same for the same chance."""

import random
from itertools import pairwise

import pytest

from benched import benched
from builders import board, nm, opening, outline, studs, wall
from choosing import plain, sticks_of
from plankwright.layout.first import build, extend
from plankwright.layout.plan import Plan
from plankwright.layout.strips import Strips
from plankwright.model import Board, EdgeTrim, Framing, JointPolicy, Rules, Surface

RULES = plain(narrowest_course_nm=nm(2), shortest_piece_nm=nm(16))


def _built(surface: Surface, boards: list[Board], rules: Rules = RULES, seed: int = 0) -> Plan:
    return build(Strips(surface, rules), sticks_of(boards, rules), _chance(seed))


def _chance(seed: int) -> random.Random:
    return random.Random(seed)  # noqa: S311 - chance, not secrecy


def _bare(plan: Plan) -> int:
    return sum(course.bare_area for course in plan)


def test_boards_that_just_cover_a_wall_cover_it() -> None:
    """Three courses of four, five and six, in whatever order."""
    boards = [board("A", 96, 4), board("B", 96, 5), board("C", 96, 6)]
    plan = _built(wall(96, 15, framing=Framing(solid=True)), boards)
    assert _bare(plan) == 0
    assert sorted(course.height for course in plan) == [nm(4), nm(5), nm(6)]


@pytest.mark.parametrize("seed", range(5))
@pytest.mark.parametrize(
    "surface",
    [
        wall(96, 40),
        wall(96, 40, openings=(opening("window", 30, 12, 60, 30, trim=1),)),
        wall(96, 60, outline=outline((0, 0), (96, 0), (96, 30), (48, 60), (0, 30))),
        wall(96, 40, trim=EdgeTrim(top=nm(3))),
    ],
    ids=["plain", "window", "gable", "trim"],
)
def test_courses_lie_on_each_other_and_every_run_is_covered_or_bare(surface: Surface, seed: int) -> None:
    """From the start to where the surface must be covered and no farther than it may be, with any pile."""
    chance = _chance(seed)
    boards = [board(f"A{n}", chance.uniform(20, 100), chance.uniform(3, 9)) for n in range(20)]
    strips, plan = Strips(surface, RULES), _built(surface, boards, seed=seed)
    assert plan[0].low == strips.start
    assert all(lower.high == upper.low for lower, upper in pairwise(plan))
    assert strips.must_end <= plan[-1].high <= strips.may_end
    for course in plan:
        hung = [(piece.start, piece.end) for piece in course.pieces]
        assert sum(end - start for start, end in (*hung, *course.bare)) == sum(
            run.length for run in strips.runs(course.low, course.high)
        )
        assert all(piece.stick.width <= course.height for piece in course.pieces)
        assert all(piece.stick.length == piece.end - piece.start for piece in course.pieces)


def test_no_board_is_cut_twice_in_one_place() -> None:
    """Pieces of one board lie a kerf apart along it or across it."""
    rules = plain(
        crosscut_kerf_nm=nm(0.125), rip_kerf_nm=nm(0.125), shortest_piece_nm=nm(16), narrowest_course_nm=nm(2)
    )
    boards = [board(f"A{n}", 130, 13) for n in range(5)]
    plan = _built(wall(120, 48), boards, rules)
    parts = [piece.stick for course in plan for piece in course.pieces]
    for place, one in enumerate(parts):
        for other in parts[:place]:
            if one.board == other.board:
                along = max(one.along_from - other.along_to, other.along_from - one.along_to)
                across = max(one.across_from - other.across_to, other.across_from - one.across_to)
                assert along >= nm(0.125) or across >= nm(0.125)


def test_without_wood_the_wall_is_bare_from_end_to_end() -> None:
    """It is still parted into courses."""
    plan = _built(wall(96, 12), [])
    assert _bare(plan) == nm(96) * nm(12)


def test_the_same_chance_gives_the_same_layout() -> None:
    """And another may give another."""
    (surface,), boards, rules = benched(0).surfaces, list(benched(0).boards), benched(0).rules
    assert _built(surface, boards, rules, 1) == _built(surface, boards, rules, 1)
    assert len({_built(surface, boards, rules, seed) for seed in range(8)}) > 1


def test_courses_given_stay_and_the_rest_is_laid_on_them() -> None:
    """Out of the wood that they left."""
    surface, boards = wall(96, 12, framing=studs(48)), [board("A", 96, 6), board("B", 96, 6)]
    strips, sticks = Strips(surface, RULES), sticks_of(boards, RULES)
    below = build(strips, sticks, _chance(0))[:1]
    plan = extend(
        strips,
        [stick for stick in sticks if stick.board != below[0].pieces[0].stick.board],
        below,
        _chance(3),
    )
    assert plan[:1] == below
    assert _bare(plan) == 0


def test_a_plan_that_is_whole_is_left_as_it_is() -> None:
    """Nothing lies above its last course."""
    surface, boards = wall(96, 12), [board("A", 96, 6), board("B", 96, 6)]
    plan = _built(surface, boards)
    assert extend(Strips(surface, RULES), [], plan, _chance(0)) == plan


def test_no_course_is_narrower_than_allowed() -> None:
    """Thirteen inches out of boards of six: not twelve and one."""
    plan = _built(wall(96, 13), [board(name, 96, 6) for name in "ABC"])
    assert min(course.height for course in plan) >= nm(2)
    assert _bare(plan) == 0


def test_joints_of_neighbouring_courses_are_staggered() -> None:
    """Halves and thirds, on studs a foot apart."""
    rules = plain(
        joints=JointPolicy.STAGGER, stagger_nm=nm(12), shortest_piece_nm=nm(16), narrowest_course_nm=nm(2)
    )
    surface = wall(96, 24, framing=studs(24, 36, 48, 60, 72))
    plan = _built(surface, [board(f"A{n}", 72, 6) for n in range(12)], rules)
    for lower, upper in pairwise(plan):
        joints = [{piece.start for piece in course.pieces[1:]} for course in (lower, upper)]
        assert all(abs(one - other) >= nm(12) for one in joints[0] for other in joints[1])
