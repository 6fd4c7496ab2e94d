"""Counted courses put in their places."""

import random

import pytest

from builders import board, job, nm, opening, rectangle, studs, wall
from choosing import plain
from plankwright.layout.butting import joints_of
from plankwright.layout.choose import RowCuts
from plankwright.layout.courses import courses_from
from plankwright.layout.plan import Plan, PlannedPiece
from plankwright.layout.rows import Stack, fixed_stack, free_stack
from plankwright.layout.strips import Strips
from plankwright.model import ConcealedZone, JointPolicy, KeepOut, Rules, Surface
from plans import planned_course, planned_piece

HALVES = wall(96, 12, framing=studs(48))
_WORK = job(HALVES, [board(f"A{number}", 200, 20) for number in range(12)])


def _piece(number: int, start: float, end: float, width: float = 6) -> PlannedPiece:
    return planned_piece(_WORK, number, (start, end), width)


def _stack(
    surface: Surface, *heights: float, rules: Rules, span: tuple[float, float, float] = (0, 12, 12)
) -> Stack:
    low, must_end, may_end = (nm(place) for place in span)
    return free_stack(
        Strips(surface, rules), [nm(height) for height in heights], (low, must_end, may_end), ()
    )


def _cuts(
    stack: Stack,
    *pieces: PlannedPiece,
    row: int = 0,
    height: float = 6,
    count: int = 2,
    given_up: float = 0,
    bare: tuple[tuple[float, float], ...] = (),
) -> RowCuts:
    return RowCuts(
        row=stack.rows[row],
        height=nm(height),
        given_up=nm(given_up),
        count=count,
        pieces=pieces,
        bare=tuple((nm(start), nm(end)) for start, end in bare),
    )


def _placed(
    surface: Surface, rules: Rules, stack: Stack, *cuts: RowCuts, grid: float = 1 / 16, like: Plan = ()
) -> Plan | None:
    chance = random.Random(0)  # noqa: S311 - chance, not secrecy
    return courses_from(Strips(surface, rules), stack, cuts, grid=nm(grid), chance=chance, like=like)


def _edges(plan: Plan | None) -> list[tuple[float, float]]:
    assert plan is not None
    return [(course.low / nm(1), course.high / nm(1)) for course in plan]


def test_courses_are_stacked_from_the_start() -> None:
    """Two of six, each with its board."""
    stack = _stack(HALVES, 6, rules=plain())
    plan = _placed(HALVES, plain(), stack, _cuts(stack, _piece(0, 0, 96), _piece(1, 0, 96)))
    assert _edges(plan) == [(0, 6), (6, 12)]
    assert sorted(piece.stick.board for course in plan or () for piece in course.pieces) == [0, 1]


@pytest.mark.parametrize(("below", "right"), [(6, True), (5.5, False)])
@pytest.mark.parametrize(
    ("rules", "boards"),
    [
        (plain(joints=JointPolicy.NEVER), {}),
        (plain(joints=JointPolicy.COUNT, thickness_tolerance_nm=0, shim_up_to_nm=0), {"thickness_nm": nm(1)}),
    ],
)
def test_a_joint_that_comes_to_lie_in_sight_may_be_there_or_the_courses_have_no_place(
    rules: Rules, boards: dict[str, int], below: float, *, right: bool
) -> None:
    """Two halves butt behind a bench from six up; above a course of five and a half the joint shows.

    Where none may show, or the halves are not equally thick, that will not do.
    """
    bench = ConcealedZone(id="bench", place=rectangle(0, 6, 96, 12))
    surface = wall(96, 12, framing=studs(48), concealed=(bench,))
    work = job(surface, [board("A", 200, 20), board("B", 200, 20, **boards), board("C", 200, 20)], rules)
    stack = _stack(surface, below, 6, rules=rules, span=(0, below + 6, 12))
    rows = {(row.first_band, row.last_band): place for place, row in enumerate(stack.rows)}
    lowest = _cuts(stack, planned_piece(work, 2, (0, 96), below), row=rows[0, 0], height=below, count=1)
    halves = (planned_piece(work, 0, (0, 48), 6), planned_piece(work, 1, (48, 96), 6))
    behind = _cuts(stack, *halves, row=rows[1, 1], count=1)
    assert (_placed(surface, rules, stack, lowest, behind) is not None) is right


def test_courses_of_a_lower_band_come_first() -> None:
    """Beside a window from six up there are two runs."""
    surface = wall(96, 12, openings=(opening("window", 30, 6, 60, 12),))
    stack = _stack(surface, 6, rules=plain())
    rows = {(row.first_band, row.last_band): place for place, row in enumerate(stack.rows)}
    beside = _cuts(stack, _piece(0, 0, 30), _piece(1, 60, 96), row=rows[1, 1], count=1)
    below = _cuts(stack, _piece(2, 0, 96), row=rows[0, 0], count=1)
    plan = _placed(surface, plain(), stack, beside, below)
    assert _edges(plan) == [(0, 6), (6, 12)]
    assert [[piece.stick.board for piece in course.pieces] for course in plan or ()] == [[2], [0, 1]]


def test_bare_and_covered_halves_are_put_together_so_that_nothing_butts() -> None:
    """Two courses with a half of each: no joint was counted, so none may come of it."""
    rules = plain(joints=JointPolicy.NEVER)
    stack = _stack(HALVES, 6, rules=rules)
    cuts = _cuts(stack, _piece(0, 0, 48), _piece(1, 48, 96), bare=((0, 48), (48, 96)))
    plan = _placed(HALVES, rules, stack, cuts)
    assert plan is not None
    assert [len(course.pieces) for course in plan] == [1, 1]
    assert not any(joints_of(Strips(HALVES, rules), course) for course in plan)


def test_touching_bare_stretches_are_told_as_one() -> None:
    """From end to end of a course that has nothing."""
    stack = _stack(HALVES, 6, rules=plain())
    plan = _placed(HALVES, plain(), stack, _cuts(stack, _piece(0, 0, 96), bare=((48, 96), (0, 48))))
    assert sorted(course.bare for course in plan or ()) == [(), ((0, nm(96)),)]


@pytest.mark.parametrize(
    ("narrowest", "heights"), [(2, [2, 5, 6]), (4, [4, 4, 5]), (4.25, [4.25, 4.25, 4.5])]
)
def test_the_closing_rip_is_shared_by_as_few_courses_as_the_narrowest_allows(
    narrowest: float, heights: list[float]
) -> None:
    """Three of six on thirteen inches give up five."""
    rules = plain(narrowest_course_nm=nm(narrowest))
    surface = wall(96, 13)
    stack = _stack(surface, 6, rules=rules, span=(0, 13, 13))
    cuts = _cuts(stack, *(_piece(number, 0, 96) for number in range(3)), count=3, given_up=5)
    plan = _placed(surface, rules, stack, cuts)
    assert sorted(course.height / nm(1) for course in plan or ()) == heights
    assert all(piece.stick.width == course.height for course in plan or () for piece in course.pieces)


def test_the_last_course_goes_on_behind_the_trim() -> None:
    """No farther than it may, and ripped there."""
    surface = wall(96, 12)
    stack = _stack(surface, 6, rules=plain(), span=(0, 11, 11.5))
    plan = _placed(surface, plain(), stack, _cuts(stack, _piece(0, 0, 96), _piece(1, 0, 96)))
    assert _edges(plan) == [(0, 6), (6, 11.5)]


def test_heights_off_the_grid_are_rounded_down() -> None:
    """Boards of six and a 32nd make courses of six in sixteenths, and the last takes up what is left."""
    surface = wall(96, 12.03125)
    stack = _stack(surface, 6.03125, rules=plain(), span=(0, 12, 12.03125))
    wide = (_piece(number, 0, 96, 6.03125) for number in range(2))
    plan = _placed(surface, plain(), stack, _cuts(stack, *wide, height=6.03125))
    assert _edges(plan) == [(0, 6), (6, 12)]


def test_joints_in_sight_are_kept_apart_by_the_order_of_courses() -> None:
    """Two with a joint at 48 and one without: it goes between them."""
    rules = plain(joints=JointPolicy.STAGGER, stagger_nm=nm(12))
    surface = wall(96, 18, framing=studs(48))
    stack = _stack(surface, 6, rules=rules, span=(0, 18, 18))
    halves = [_piece(number, *ends) for number, ends in enumerate(((0, 48), (48, 96)) * 2)]
    plan = _placed(surface, rules, stack, _cuts(stack, *halves, _piece(5, 0, 96), count=3))
    assert [len(course.pieces) for course in plan or ()] == [2, 1, 2]


@pytest.mark.parametrize("order", [(0, 1, 2, 3), (3, 1, 0, 2), (2, 7, 3, 0)])
def test_courses_keep_the_order_of_those_that_were_there(order: tuple[int, ...]) -> None:
    """Board by board; one that is new takes the place of one that is gone."""
    surface = wall(96, 24, framing=studs(48))
    stack = _stack(surface, 6, rules=plain(), span=(0, 24, 24))
    before = tuple(
        planned_course((6 * place, 6 * place + 6), _piece(number, 0, 96))
        for place, number in enumerate(order)
    )
    cuts = _cuts(stack, *(_piece(number, 0, 96) for number in range(4)), count=4)
    plan = _placed(surface, plain(), stack, cuts, like=before)
    boards = [piece.stick.board for course in plan or () for piece in course.pieces]
    assert boards == [number if number < 4 else 1 for number in order]


def test_courses_that_no_order_staggers_are_none() -> None:
    """Halves over halves; counted rather than staggered they are a plan."""
    halves = [_piece(number, *ends) for number, ends in enumerate(((0, 48), (48, 96)) * 2)]
    for policy, right in ((JointPolicy.STAGGER, False), (JointPolicy.COUNT, True)):
        rules = plain(joints=policy, stagger_nm=nm(12))
        stack = _stack(HALVES, 6, rules=rules)
        assert (_placed(HALVES, rules, stack, _cuts(stack, *halves)) is not None) is right


def test_the_ripped_course_is_no_narrower_than_allowed_behind_the_trim_either() -> None:
    """The last would end an inch up: the stretch may end there."""
    surface = wall(96, 12)
    rules = plain(narrowest_course_nm=nm(2))
    stack = _stack(surface, 6, rules=rules, span=(0, 7, 7))
    assert _placed(surface, rules, stack, _cuts(stack, _piece(0, 0, 96), _piece(1, 0, 96))) is None


def test_a_joint_where_a_pipe_lets_no_nail_in_is_none() -> None:
    """Six inches of pipe lie behind the one course, and both have the joint."""
    pipe = KeepOut(id="pipe", place=rectangle(47, -1, 49, 7))
    surface = wall(96, 12, framing=studs(48), keep_outs=(pipe,))
    stack = _stack(surface, 6, rules=plain())
    halves = [_piece(number, *ends) for number, ends in enumerate(((0, 48), (48, 96)) * 2)]
    assert _placed(surface, plain(), stack, _cuts(stack, *halves)) is None
    assert _placed(HALVES, plain(), stack, _cuts(stack, *halves)) is not None


def test_a_piece_that_is_nailed_too_seldom_in_its_place_is_none() -> None:
    """From the end to the joint at 72 there is a stud at 40, but a box sits on it behind the upper course."""
    box = KeepOut(id="box", place=rectangle(39, 5.875, 41, 13))
    rules = plain(nailing_points=2)
    boxed, clear = (
        wall(96, 12, framing=studs(40, 72, 90), keep_outs=keep_outs) for keep_outs in ((box,), ())
    )
    pieces = [_piece(number, *ends) for number, ends in enumerate(((0, 72), (72, 96)) * 2)]
    stack = _stack(clear, 6, rules=rules)
    assert _placed(clear, rules, stack, _cuts(stack, *pieces)) is not None
    assert _placed(boxed, rules, stack, _cuts(stack, *pieces)) is None


def test_courses_that_stay_are_put_back() -> None:
    """With the boards chosen for each."""
    strips = Strips(HALVES, plain())
    stack = fixed_stack(strips, [planned_course((0, 5)), planned_course((7, 12))], ())
    cuts = [
        RowCuts(
            row=stack.rows[place],
            height=nm(5),
            given_up=0,
            count=1,
            pieces=(_piece(place, 0, 96, 5),),
            bare=(),
        )
        for place in (1, 0)
    ]
    plan = _placed(HALVES, plain(), stack, *cuts)
    assert _edges(plan) == [(0, 5), (7, 12)]
    assert [course.pieces[0].stick.board for course in plan or ()] == [0, 1]
