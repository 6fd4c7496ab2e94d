"""What covering costs, in parts of boards, and in whole ones."""

import math
import random
from dataclasses import replace

import pytest

from asking import RULES, question
from builders import board, nm, studs, wall
from choosing import WALL, plain
from plankwright.layout.butting import joints_of
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece
from plankwright.layout.rows import fixed_stack
from plankwright.layout.whole import Covering, Question, mended
from plankwright.layout.whole.cutting import Cutting
from plankwright.layout.whole.programme import Programme
from plankwright.layout.whole.rounding import whole_together, whole_ways
from plankwright.layout.whole.ways import Ways, sorts_of
from plankwright.model import JointPolicy

_AREA = 4 * 96 * 4 * 12  # Of the wall, in square quarter inches.


def _never() -> bool:
    return False


def _covered(asked: Question) -> Plan:
    """Cover a wall that can be covered whole, at the first try."""
    chance = random.Random(0)  # noqa: S311 - chance, not secrecy
    covering = Covering(asked, tries=1, chance=chance, over=_never)
    before, plan = covering.spent, covering.whole()
    assert plan is not None
    assert covering.spent > before > 0
    return plan


def test_boards_that_just_cover_cost_their_area() -> None:
    """And a little for each piece."""
    asked = question([board("A", 96, 6), board("B", 96, 6)], (6,))
    programme = Programme(asked)
    pieces = 2 * programme.graphs.piece
    assert programme.grow() == pytest.approx(_AREA / programme.unit + pieces)
    assert programme.bare_area() == pytest.approx(0)


def test_where_no_course_fills_the_wall_the_price_is_infinite() -> None:
    """One that can only be twelve inches high, on a wall of eleven and no rip."""
    asked = question(
        [board("A", 98, 12)], (12,), surface=wall(96, 11), rules=replace(RULES, narrowest_course_nm=nm(12))
    )
    programme = Programme(asked)
    assert programme.grow() == programme.price == math.inf


def test_the_price_of_height_is_what_a_higher_wall_costs_more() -> None:
    """A quarter of an inch of it, in parts of courses."""
    boards = [board(f"A{number}", 98, 6) for number in range(4)]
    low, high = (Programme(question(boards, (6,), surface=wall(96, height))) for height in (12, 12.25))
    price, higher = low.grow(), high.grow()
    assert low.height_price() == pytest.approx((higher - price) * low.unit / high.unit, rel=1e-3)
    assert low.height_price() > 0


def test_roughly_is_sooner_and_leaves_no_more_bare() -> None:
    """Boards of many widths and lengths, of which the cheapest cover is far to seek."""
    sizes = [(30 + 37 * number % 70, 3 + number % 13 / 4) for number in range(40)]
    asked = question(
        [board(f"A{number}", *size) for number, size in enumerate(sizes)],
        sorted({width for _, width in sizes}),
        surface=wall(96, 60, framing=studs(*range(8, 96, 8))),
    )
    rough, fine = Programme(asked), Programme(asked)
    price, least = rough.grow(roughly=True), fine.grow()
    assert least < price < 1.1 * least
    assert rough.bare_area() < 1 > fine.bare_area()
    assert rough.columns < fine.columns


def test_what_no_wood_reaches_is_bare() -> None:
    """One board for two courses."""
    programme = Programme(question([board("A", 96, 6)], (6,)))
    programme.grow()
    assert programme.bare_area() == pytest.approx(_AREA / 2)


@pytest.mark.parametrize("seed", range(3))
def test_whole_ways_lead_along_each_run_once_and_leave_nothing_bare_that_need_not_be(seed: int) -> None:
    """Two courses of two boards each, whose joints must not meet: in parts either could be of any of them."""
    rules = plain(
        joints=JointPolicy.STAGGER, stagger_nm=nm(12), shortest_piece_nm=nm(20), narrowest_course_nm=nm(2)
    )
    surface = wall(96, 12, framing=studs(0.75, 24, 48, 72, 95.25))
    boards = [board("A", 48, 6), board("B", 48, 6), board("C", 72, 6), board("D", 24, 6)]
    asked = question(boards, (6,), surface=surface, rules=rules)
    programme = Programme(asked, {0: 2})
    in_parts = programme.grow()
    ways = whole_ways(programme, seed, _never)
    assert sum(ways.values()) == 2
    assert programme.solve() == pytest.approx(in_parts, rel=1e-2)
    assert programme.bare_area() == pytest.approx(0)


def test_joints_of_courses_that_touch_stand_apart() -> None:
    """Four boards of 48 and of 72 and 24 inches, two courses: the joints fall on two studs."""
    rules = plain(
        joints=JointPolicy.STAGGER, stagger_nm=nm(12), shortest_piece_nm=nm(20), narrowest_course_nm=nm(2)
    )
    surface = wall(96, 12, framing=studs(0.75, 24, 48, 72, 95.25))
    boards = [board("A", 48, 6), board("B", 48, 6), board("C", 72, 6), board("D", 24, 6)]
    asked = question(boards, (6,), surface=surface, rules=rules)
    plan = _covered(asked)
    assert not any(course.bare for course in plan)
    lower, upper = (joints_of(asked.strips, course) for course in plan)
    assert {at for at, _ in lower} | {at for at, _ in upper} in ({nm(48), nm(72)}, {nm(48), nm(24)})


def test_courses_that_stay_are_covered_where_they_lie() -> None:
    """Laid out anew, in the places that they had."""
    asked = question([board("A", 96, 8), board("B", 96, 4)], (8, 4))
    plan = _covered(asked)
    stays = fixed_stack(asked.strips, plan, ())
    again, _ = mended(
        Question(asked.strips, asked.sticks, stays, asked.grid),
        random.Random(1),  # noqa: S311 - chance, not secrecy
        _never,
        joints=None,
    )
    assert again is not None
    assert [(course.low, course.high) for course in again] == [(course.low, course.high) for course in plan]
    assert not any(course.bare for course in again)


def test_courses_that_cannot_add_up_have_no_price() -> None:
    """No courses do not fill a wall."""
    programme = Programme(question([board("A", 96, 5)], (5,), surface=WALL))
    programme.bound(programme.counts[0], 0, 0)
    assert math.isinf(programme.solve())


def test_no_joint_stands_near_one_of_a_course_beside() -> None:
    """Two boards of 48 over a course with its joint on the middle stud: none may butt there."""
    rules = plain(
        joints=JointPolicy.STAGGER, stagger_nm=nm(12), shortest_piece_nm=nm(20), narrowest_course_nm=nm(2)
    )
    boards = [board(name, 48, 6) for name in "ABCD"]
    asked = question(boards, (6,), rules=rules)
    hung = [
        PlannedPiece(asked.sticks[number], nm(start), nm(start + 48)) for number, start in ((0, 0), (1, 48))
    ]
    below, above = (PlannedCourse(nm(low), nm(low + 6), (), ()) for low in (0, 6))
    stays = fixed_stack(asked.strips, [above], [replace(below, pieces=tuple(hung))])
    chance = random.Random(0)  # noqa: S311 - chance, not secrecy
    plan, _ = mended(Question(asked.strips, asked.sticks[2:], stays, asked.grid), chance, _never, joints=None)
    assert plan is not None
    assert nm(48) not in {piece.start for piece in plan[0].pieces}
    apart = fixed_stack(asked.strips, [above], ())
    plan, _ = mended(Question(asked.strips, asked.sticks[2:], apart, asked.grid), chance, _never, joints=None)
    assert plan is not None
    assert [piece.start for piece in plan[0].pieces] == [0, nm(48)]


def _two_halves(joints: int | None) -> tuple[Question, Programme]:
    """One course of two boards of 48 inches: only with a joint in sight."""
    asked = question([board(name, 48, 12) for name in "AB"], (12,), rules=plain(narrowest_course_nm=nm(2)))
    (row,) = asked.stack.rows
    course = PlannedCourse(0, row.heights[0], (), ())
    stays = Question(asked.strips, asked.sticks, fixed_stack(asked.strips, [course], ()), asked.grid)
    return stays, Programme(stays, joints=joints)


@pytest.mark.parametrize(("joints", "bare"), [(None, False), (1, False), (0, True)])
def test_joints_in_sight_can_be_limited(joints: int | None, bare: bool) -> None:  # noqa: FBT001 - of a table
    """Where two boards are to butt, no joint leaves a half bare at the least."""
    stays, programme = _two_halves(joints)
    programme.grow()
    assert (programme.bare_area() > 1) == bare
    found, spent = mended(stays, random.Random(0), _never, joints=joints)  # noqa: S311 - chance, not secrecy
    assert (found is None) == bare
    assert spent > 0


def test_ways_and_cuts_that_come_in_besides_change_no_price() -> None:
    """They are no better than what is known, since the programme was grown as far as it goes."""
    boards = [board("A", 60, 6), board("B", 36, 6), board("C", 48, 8), board("D", 72, 8), board("E", 90, 13)]
    programme = Programme(question(boards, (6,)), {0: 2})
    price, ways, cuts = programme.grow(), len(programme.tracks), len(programme.sawn)
    programme.widen_ways(0.5, 10)
    programme.widen_cuts(0.5)
    assert len(programme.tracks) > ways
    assert len(programme.sawn) > cuts
    assert programme.grow() == pytest.approx(price, rel=1e-6)


def test_ways_and_cuts_chosen_together_go_together() -> None:
    """Each run has one way, no wood is cut twice, and each piece is cut."""
    boards = [board("A", 60, 6), board("B", 36, 6), board("C", 48, 6), board("D", 48, 6), board("E", 96, 6)]
    programme = Programme(question(boards, (6,)), {0: 2})
    programme.grow()
    chosen = whole_together(programme, 1.0, 0, _never)
    assert chosen is not None
    ways, cuts = chosen
    assert sum(ways.values()) == 2
    asked = programme.question
    for number, wood in enumerate(asked.wood):
        assert sum(times for (of, _), times in cuts.items() if of == number) <= len(wood.sticks)
    needed = sum(
        times * asked.area(sort) for track, times in ways.items() for sort in sorts_of(asked, *track)
    )
    given = sum(times * asked.area(sort) for (_, cut), times in cuts.items() for lane in cut for sort in lane)
    assert given >= needed == _AREA


def test_the_cheapest_ways_come_in_order_and_begin_with_the_cheapest() -> None:
    """Each once, at the same prices as the one cheapest way is found at."""
    boards = [board("A", 60, 6), board("B", 36, 6), board("C", 48, 6), board("D", 72, 6), board("E", 96, 6)]
    programme = Programme(question(boards, (6,)), {0: 2})
    programme.grow()
    worth, rents = programme.market()
    offers = programme.offers(worth, rents, Cutting(programme.question, worth))
    ways = Ways(programme.graphs, offers.price, programme.nearness())
    cheap, cheapest = ways.cheap(0, 0, 5), ways.cheapest(0, 0)
    assert cheapest is not None
    assert len(cheap) > 1
    assert cheap[0].price == pytest.approx(cheapest.price)
    assert [way.price for way in cheap] == sorted(way.price for way in cheap)
    assert len({(way.mates, way.moves) for way in cheap}) == len(cheap)
