"""Plans whose best look is known are dressed; whatever they look like, they cost no more."""

import random
from dataclasses import replace

import pytest

from builders import board, flaw, nm, rectangle, studs, wall
from choosing import plain
from looking import Dresser, boards, joints_of, pieced, tones_of
from plankwright.check import check_layout, faults
from plankwright.layout.plan import Plan, PlannedCourse
from plankwright.model import (
    BlemishPolicy,
    Board,
    ConcealedZone,
    EdgeKind,
    EdgeProfile,
    JointPolicy,
    Rules,
    Severity,
    Surface,
)

STUDS = studs(*range(0, 97, 8))
WALL = wall(96, 24, framing=STUDS)
STAGGERED = plain(joints=JointPolicy.STAGGER, stagger_nm=nm(12))
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))


def _no_worse(dresser: Dresser, before: Plan, after: Plan) -> bool:
    """Whether a plan keeps the rules and costs no more, by the search's figure and by the checker's score."""
    figures = zip(dresser.figure(before), dresser.figure(after), strict=True)
    assert not faults(check_layout(dresser.work, dresser.layout(before)))
    assert not faults(check_layout(dresser.work, dresser.layout(after)))
    then, now = (dresser.layout(plan).surfaces[0].score for plan in (before, after))
    assert now.wood_spent_nm2 <= then.wood_spent_nm2
    return all(now <= then for then, now in figures)


def _joined(*joints: float, rules: Rules = STAGGERED, surface: Surface = WALL) -> tuple[Dresser, Plan]:
    rows = [
        list(zip((board(f"{n}a", at, 6), board(f"{n}b", 96 - at, 6)), (at, 96 - at), strict=True))
        for n, at in enumerate(joints)
    ]
    return pieced(surface, rows, rules=rules)


def test_two_tones_make_a_checkerboard() -> None:
    """Eight dark boards below eight light ones of their size."""
    wood = [*boards("D", 8, 24, tone="dark"), *boards("L", 8, 24, tone="light")]
    dresser, plan = pieced(WALL, [[(each, 24) for each in wood[row : row + 4]] for row in (0, 4, 8, 12)])
    dressed = dresser.dressed(plan)
    assert dresser.look(plan).clumped > 0 == dresser.look(dressed).clumped
    assert all(
        (tone == "dark") == ((row + place) % 2 == (tones_of(dresser, dressed)[0][0] != "dark"))
        for row, tones in enumerate(tones_of(dresser, dressed))
        for place, tone in enumerate(tones)
    )
    assert _no_worse(dresser, plan, dressed)


def test_a_few_dark_boards_do_not_touch() -> None:
    """Four of them among twelve."""
    wood = [*boards("D", 4, 24, tone="dark"), *boards("L", 12, 24, tone="light")]
    dresser, plan = pieced(WALL, [[(each, 24) for each in wood[row : row + 4]] for row in (0, 4, 8, 12)])
    tones = tones_of(dresser, dresser.dressed(plan))
    dark = [(row, place) for row in range(4) for place in range(4) if tones[row][place] == "dark"]
    assert len(dark) == 4
    assert all(
        abs(row - other) + abs(place - there) > 1
        for row, place in dark
        for other, there in dark
        if (row, place) != (other, there)
    )


def test_two_equal_courses_with_one_between_no_longer_have_their_joints_in_line() -> None:
    """One of them is turned round, or the courses change places."""
    dresser, plan = _joined(24, 56, 24, 40)
    assert dresser.look(plan).in_line == 1
    dressed = dresser.dressed(plan)
    assert dresser.look(dressed).fault == 0
    assert _no_worse(dresser, plan, dressed)


def test_a_stair_of_joints_is_broken_up() -> None:
    """Four courses that each step a stud farther."""
    dresser, plan = _joined(16, 32, 48, 64)
    assert dresser.look(plan).steps == 2
    dressed = dresser.dressed(plan)
    assert dresser.look(dressed).fault == 0
    assert _no_worse(dresser, plan, dressed)


def test_a_joint_is_shifted_where_that_costs_nothing() -> None:
    """What is cut off the boards is scrap either way."""
    surface = wall(96, 18, framing=STUDS)
    wood = boards("B", 6, 60)
    rows = [[(wood[2 * row], at), (wood[2 * row + 1], 96 - at)] for row, at in enumerate((40, 56, 40))]
    rules = replace(STAGGERED, shortest_piece_nm=nm(30), stagger_nm=nm(6))
    dresser, plan = pieced(surface, rows, rules=rules)
    dressed = dresser.dressed(plan)
    assert dresser.look(plan).in_line == 1
    assert dresser.look(dressed).fault == 0
    assert sorted(joints_of(dressed)) != sorted(joints_of(plan))
    assert _no_worse(dresser, plan, dressed)


def test_no_joint_leaves_the_framing_for_the_looks() -> None:
    """Turned round the course would be joined between two studs."""
    surface = wall(96, 18, framing=studs(0, 24, 56, 96))
    dresser, plan = _joined(24, 56, 24, surface=surface)
    assert dresser.look(plan).in_line == 1
    assert joints_of(dresser.dressed(plan)) == joints_of(plan)


def test_an_odd_board_goes_behind_a_fixture() -> None:
    """One board of the chapel among eleven of the hall, and a mirror as large as a piece."""
    hall, chapel = boards("H", 11, 32, lot="hall"), board("C", 32, 6, lot="chapel")
    mirror = ConcealedZone(id="mirror", place=rectangle(64, 12, 96, 18))
    surface = wall(96, 24, framing=STUDS, concealed=(mirror,))
    wood = [chapel, *hall]
    dresser, plan = pieced(surface, [[(each, 32) for each in wood[row : row + 3]] for row in (0, 3, 6, 9)])
    dressed = dresser.dressed(plan)
    assert dresser.look(plan).odd == nm(32)
    assert dresser.look(dressed).odd == 0
    assert _no_worse(dresser, plan, dressed)


def test_a_blemish_that_may_show_is_hidden_all_the_same() -> None:
    """Where the rules let blemishes hang anywhere."""
    stained = board("S", 32, 6, flaws=(flaw(4, 12, Severity.BLEMISH),))
    wood = [stained, *boards("B", 11, 32)]
    mirror = ConcealedZone(id="mirror", place=rectangle(64, 12, 96, 18))
    dresser, plan = pieced(
        wall(96, 24, framing=STUDS, concealed=(mirror,)),
        [[(each, 32) for each in wood[row : row + 3]] for row in (0, 3, 6, 9)],
        rules=plain(blemishes=BlemishPolicy.ANYWHERE),
    )
    dressed = dresser.dressed(plan)
    assert (dresser.look(plan).blemished, dresser.look(dressed).blemished) == (nm(8), 0)
    assert _no_worse(dresser, plan, dressed)


def test_an_odd_board_stays_on_the_pile_where_another_does() -> None:
    """A board of the hall of the same size was not needed."""
    hall, chapel = boards("H", 10, 96, lot="hall"), board("C", 96, 6, lot="chapel")
    dresser, plan = pieced(WALL, [[(each, 96)] for each in (chapel, *hall[:3])], spare=hall[3:])
    dressed = dresser.dressed(plan)
    assert dresser.look(dressed).odd == 0
    assert _no_worse(dresser, plan, dressed)


@pytest.mark.parametrize("length", [94, 97, 180])
def test_no_board_is_taken_for_its_looks_that_costs_more(length: float) -> None:
    """It is too short, or an inch is lost, or a long board no longer long."""
    chapel = board("C", 96, 6, lot="chapel")
    hall = boards("H", 10, length, lot="hall")
    dresser, plan = pieced(
        wall(96, 6, framing=STUDS), [[(chapel, 96)]], spare=hall, rules=plain(shortest_piece_nm=nm(16))
    )
    assert dresser.dressed(plan) == plan


def test_courses_that_interlock_come_together() -> None:
    """Of courses milled and square by turns one seam is left that cannot interlock."""
    wood = [board(f"B{n}", 96, 6, profile=TONGUE if n % 2 else EdgeProfile()) for n in range(4)]
    dresser, plan = pieced(WALL, [[(each, 96)] for each in wood])
    dressed = dresser.dressed(plan)
    assert (dresser.look(plan).loose, dresser.look(dressed).loose) == (nm(3 * 96), nm(96))
    assert _no_worse(dresser, plan, dressed)


def test_courses_of_other_heights_move_up_or_down_for_it() -> None:
    """Milled boards of five inches between square ones of six; starter and closing course stay."""
    surface = wall(96, 34, framing=STUDS)
    wood = [
        board(f"B{n}", 96, 5 if n in {1, 3} else 6, profile=TONGUE if n in {1, 3} else EdgeProfile())
        for n in range(6)
    ]
    dresser, high = pieced(surface, [[(each, 96)] for each in wood])
    plan: Plan = ()
    for course in high:
        low = plan[-1].high if plan else 0
        plan = (*plan, replace(course, low=low, high=low + course.pieces[0].stick.width))
    dressed = dresser.dressed(plan)
    assert (dresser.look(plan).loose, dresser.look(dressed).loose) == (nm(4 * 96), nm(2 * 96))
    assert [course.height for course in (dressed[0], dressed[-1])] == [nm(6), nm(6)]
    assert _no_worse(dresser, plan, dressed)


def test_boards_that_would_not_match_where_they_butt_stay_apart() -> None:
    """The dark ones of one course are thicker than the light ones of the next."""
    thick = boards("D", 4, 24, tone="dark", thickness_nm=nm(1))
    thin = boards("L", 4, 24, tone="light")
    dresser, plan = pieced(wall(96, 12, framing=STUDS), [[(e, 24) for e in thick], [(e, 24) for e in thin]])
    tones = tones_of(dresser, dresser.dressed(plan))
    assert sorted(tones) == [["dark"] * 4, ["light"] * 4]


def test_the_same_seed_gives_the_same_plan_and_another_may_give_another() -> None:
    """Chance comes from nowhere else."""
    wood = [*boards("D", 8, 24, tone="dark"), *boards("L", 8, 24, tone="light")]
    dresser, plan = pieced(WALL, [[(each, 24) for each in wood[row : row + 4]] for row in (0, 4, 8, 12)])
    assert dresser.dressed(plan, 7) == dresser.dressed(plan, 7)
    assert len({dresser.dressed(plan, seed) for seed in range(4)}) > 1


def test_nothing_is_done_without_leave_or_work() -> None:
    """The plan comes back as it was."""
    dresser, plan = _joined(16, 32, 48, 64)
    assert dresser.dressed(plan, over=lambda: True) is plan
    assert dresser.dressed(plan, work=0) is plan


def test_what_is_stopped_on_the_way_is_kept_as_far_as_it_got() -> None:
    """Somebody interrupts after a hundred moves."""
    wood = [*boards("D", 8, 24, tone="dark"), *boards("L", 8, 24, tone="light")]
    dresser, plan = pieced(WALL, [[(each, 24) for each in wood[row : row + 4]] for row in (0, 4, 8, 12)])
    asked = iter(range(10**6))
    stopped = dresser.dressed(plan, over=lambda: next(asked) >= 100)
    assert next(asked) == 101
    assert dresser.look(stopped).fault < dresser.look(plan).fault


def test_bare_walls_and_boards_that_are_asked_for_are_left_alone() -> None:
    """There is nothing to see, or nothing that hangs yet."""
    bare: Plan = (PlannedCourse(0, nm(24), (), ((0, nm(96)),)),)
    dresser, plan = _joined(16, 32, 48, 64)
    assert dresser.dressed(bare) is bare
    asked = replace(dresser.stock[0], endless=True)
    object.__setattr__(dresser, "stock", (*dresser.stock, asked))
    assert dresser.dressed(plan) is plan


def test_what_is_bare_stays_where_it_is() -> None:
    """Courses change places around it."""
    dresser, plan = _joined(16, 32, 48, 64)
    first = replace(plan[1], pieces=plan[1].pieces[:1], bare=((nm(32), nm(96)),))
    gap: Plan = (plan[0], first, *plan[2:])
    dressed = dresser.dressed(gap)
    assert [course.bare for course in dressed] == [course.bare for course in gap]
    assert dresser.figure(dressed) <= dresser.figure(gap)


def _tiny(chance: random.Random) -> list[Board]:
    return [
        board(f"B{n}", 24, 6, tone=chance.choice(("dark", "light")), lot=chance.choice("ab"))
        for n in range(8)
    ]


def test_of_all_ways_to_hang_eight_boards_one_of_the_best_is_found() -> None:
    """Every way is looked at: which boards are dark tells all, since their size is one."""
    chance = random.Random(5)  # noqa: S311 - chance, not secrecy
    surface = wall(96, 12, framing=STUDS)
    for _ in range(3):
        wood = _tiny(chance)
        dresser, plan = pieced(
            surface, [[(each, 24) for each in wood[:4]], [(each, 24) for each in wood[4:]]]
        )
        best = min(_clumped(ways) for ways in _ways([each.tone == "dark" for each in wood]))
        assert dresser.look(dresser.dressed(plan)).clumped == best


def _ways(dark: list[bool]) -> list[list[bool]]:
    numbers = range(2 ** len(dark))
    every = [[bool(number >> place & 1) for place in range(len(dark))] for number in numbers]
    return [way for way in every if sum(way) == sum(dark)]


def _clumped(dark: list[bool]) -> int:
    """Count by hand: six inches where ends meet, two feet where one lies above another."""
    ends = sum(dark[place] == dark[place + 1] for place in (0, 1, 2, 4, 5, 6))
    return ends * nm(6) + sum(dark[place] == dark[place + 4] for place in range(4)) * nm(24)
