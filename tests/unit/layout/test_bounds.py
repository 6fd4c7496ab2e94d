"""Tests of what no layout can beat, on walls whose best layout can be worked out by hand.

With the rules as they are by default, a wall 144 by 30 inches asks for 143 1/2 by 29 1/2, a board gives an
inch less than its length and a quarter less than its width; studs stand every 16 inches from 8 inches on.
"""

from dataclasses import replace
from math import pi
from typing import Any

import pytest

from builders import board, box_outline, flaw, nm, opening, outline, rectangle, studs, wall
from plankwright.layout.bounds import bound
from plankwright.layout.strips import Strips
from plankwright.measure import INCH
from plankwright.model import (
    Board,
    Bound,
    ConcealedZone,
    Direction,
    Edge,
    EdgeTrim,
    Framing,
    JointPolicy,
    Rules,
    Surface,
)

RULES = Rules()
NEVER = Rules(joints=JointPolicy.NEVER)
SQUARE_INCH = INCH**2


def boards(count: int, length: float, width: float = 6.25, **more: Any) -> list[Board]:  # noqa: ANN401 - any field
    """Make some boards that are alike."""
    return [board(f"{length}-{width}-{place}", length, width, **more) for place in range(count)]


def found(surface: Surface, pile: list[Board], rules: Rules = RULES) -> Bound:
    """Give the bound of a surface."""
    return bound(Strips(surface, rules), pile, rules)


def zone(left: float, bottom: float, right: float, top: float) -> ConcealedZone:
    """Make a bench that hides what is behind it."""
    return ConcealedZone(id="bench", place=rectangle(left, bottom, right, top))


def test_short_boards_make_a_joint_in_every_course() -> None:
    """Two boards of 73 reach over 143 1/2 by one joint, on the stud at 72, in each of five courses."""
    assert found(wall(144, 30), boards(10, 74)).joints_in_sight == 5


def test_who_stops_it_gets_what_is_proven_by_then() -> None:
    """Less than could be proven of the joints, and nothing that is not so."""
    stopped = bound(Strips(wall(144, 30), RULES), boards(10, 74), RULES, lambda: True)
    assert stopped == Bound()


def test_prices_are_looked_for_no_longer_than_so_much_work(monkeypatch: pytest.MonkeyPatch) -> None:
    """After a step or two there are prices already, and what they prove holds."""
    monkeypatch.setattr("plankwright.layout.bound_programme._WORK", 1e-9)
    least = found(wall(144, 30), boards(10, 74))
    assert not least.bare_nm2
    assert least.joints_in_sight < 5


def test_a_high_wall_is_counted_course_by_course() -> None:
    """Of a wall 96 high 95 1/2 are to cover: sixteen courses of six."""
    assert found(wall(144, 96), boards(40, 74)).joints_in_sight == 16


def test_each_long_board_saves_a_joint() -> None:
    """Two of five courses are covered by a board each."""
    assert found(wall(144, 30), [*boards(8, 74), *boards(2, 146)]).joints_in_sight == 3


def test_boards_that_reach_all_the_way_need_no_joint() -> None:
    """Five of them cover the wall."""
    assert found(wall(144, 30), boards(5, 146)).joints_in_sight == 0


def test_three_boards_a_course_make_two_joints() -> None:
    """Pieces of 71 reach over 142 only: a third is needed in each of five courses."""
    assert found(wall(144, 30), boards(15, 72)).joints_in_sight == 10


def test_one_wide_board_does_not_make_up_for_many_joints() -> None:
    """A board 12 wide covers two courses' height without a joint; the other three courses have theirs."""
    assert found(wall(144, 30), [*boards(6, 74), *boards(1, 146, 12.25)]).joints_in_sight == 3


def test_joints_anywhere_on_solid_backing_are_counted_too() -> None:
    """Two boards a course, one joint, wherever it is."""
    assert found(wall(144, 30, framing=Framing(solid=True)), boards(10, 74)).joints_in_sight == 5


def test_joints_behind_a_fixture_are_free() -> None:
    """The fixture covers the stud at 72 over the whole height."""
    assert found(wall(144, 30, concealed=(zone(60, 0, 84, 30),)), boards(10, 74)).joints_in_sight == 0


def test_joints_beside_a_fixture_are_not_free() -> None:
    """The fixture stands where no board ends: the studs at 56 and 88 leave pieces too long."""
    assert found(wall(144, 30, concealed=(zone(84, 0, 120, 30),)), boards(10, 74)).joints_in_sight == 5


def test_a_low_fixture_hides_the_low_courses_only() -> None:
    """Two courses of five are as high as the fixture."""
    assert found(wall(144, 30, concealed=(zone(60, 0, 84, 12.25),)), boards(10, 74)).joints_in_sight == 3


def test_a_door_parts_the_courses() -> None:
    """A run on either side of the door is covered by a board each."""
    parted = wall(144, 30, openings=(opening("door", 60, 0, 84, 30),))
    assert found(parted, boards(10, 62)).joints_in_sight == 0


def test_each_side_of_a_door_has_its_joints() -> None:
    """Each run is 59 1/2 long, each board gives 41: a joint in each of ten runs."""
    parted = wall(144, 30, openings=(opening("door", 60, 0, 84, 30),))
    assert found(parted, boards(20, 42)).joints_in_sight == 10


def test_a_pile_with_too_little_area_leaves_so_much_bare() -> None:
    """Nine boards give 9 × 73 × 6 = 3942 square inches of the 4233 1/4."""
    bare = found(wall(144, 30), boards(9, 74)).bare_nm2
    assert bare == pytest.approx(291.25 * SQUARE_INCH, rel=1e-3)
    assert bare <= 291.25 * SQUARE_INCH


def test_nothing_to_cover_with_leaves_everything_bare() -> None:
    """All of 143 1/2 by 29 1/2."""
    assert found(wall(144, 30), []).bare_nm2 == pytest.approx(143.5 * 29.5 * SQUARE_INCH, rel=1e-5)


def test_boards_that_meet_on_no_stud_do_not_cover() -> None:
    """The only stud is at 72, and 61 and 89 do not meet there; a gap left open is a disc at least."""
    pile = [*boards(5, 62), *boards(5, 90)]
    bare = found(wall(144, 30, framing=studs(72)), pile).bare_nm2
    assert bare == int(pi / 4 * RULES.gap_tolerance_nm**2)
    anywhere = found(wall(144, 30, framing=Framing(solid=True)), pile)
    assert (anywhere.bare_nm2, anywhere.joints_in_sight) == (0, 5)


def test_a_joint_may_fall_anywhere_on_a_wide_post() -> None:
    """Boards of 61 and 89 meet on a post from 54 to 90, both with their bearing."""
    pile = [*boards(5, 62), *boards(5, 90)]
    laid = found(wall(144, 30, framing=studs(72, width=36)), pile)
    assert (laid.bare_nm2, laid.joints_in_sight) == (0, 5)


def test_a_joint_needs_bearing_on_both_sides() -> None:
    """On a stud an inch wide each piece bears on half an inch; when 3/4 is asked none does."""
    narrow = wall(144, 30, framing=studs(72, width=1))
    assert found(narrow, boards(10, 74)).bare_nm2 == 0
    assert found(narrow, boards(10, 74), replace(RULES, bearing_nm=nm(0.75))).bare_nm2 > 0


def test_where_no_joint_may_show_short_boards_do_not_cover() -> None:
    """Unless a fixture hides the joints."""
    assert found(wall(144, 30), boards(10, 74), NEVER).bare_nm2 > 0
    assert found(wall(144, 30, concealed=(zone(60, 0, 84, 30),)), boards(10, 74), NEVER).bare_nm2 == 0


def test_the_kerf_between_two_pieces_counts() -> None:
    """Each board gives 119 1/8, two runs of 59 1/2 and an eighth; with a kerf of an inch it does not."""
    parted = wall(144, 30, openings=(opening("door", 60, 0, 84, 30),))
    pile = boards(5, 120.125)
    assert found(parted, pile, NEVER).bare_nm2 == 0
    assert found(parted, pile, replace(NEVER, crosscut_kerf_nm=INCH)).bare_nm2 > 0


def test_lost_wood_parts_a_board() -> None:
    """Long boards with rot in the middle give two pieces of less than half the run each."""
    rotten = boards(10, 146, flaws=(flaw(70, 76),))
    assert found(wall(144, 30), rotten, NEVER).bare_nm2 > 0


def test_pieces_shorter_than_allowed_do_not_help() -> None:
    """Two boards of 61 leave 21 1/2 of each course to a third piece, which may be too short to be allowed."""
    pile = [*boards(10, 62), *boards(5, 23)]
    framing = Framing(solid=True)
    surface = wall(144, 30, framing=framing)
    assert found(surface, pile, replace(RULES, shortest_piece_nm=nm(16))).bare_nm2 == 0
    assert found(surface, pile, replace(RULES, shortest_piece_nm=nm(24))).bare_nm2 > 0


def test_a_run_of_its_own_may_be_short() -> None:
    """Between the door and the corner there are only 10 inches, less than the shortest piece."""
    surface = wall(144, 30, openings=(opening("door", 0.25, 0, 133.5, 30),))
    assert found(surface, boards(5, 12)).bare_nm2 == 0
    assert found(surface, boards(5, 10)).bare_nm2 > 0


def test_gaps_within_the_tolerance_count_as_none() -> None:
    """Five boards 5 7/8 wide are 1/8 short of 29 1/2, less than the four gaps between them may be."""
    pile = boards(5, 146, 6.125)
    tight = replace(RULES, gap_tolerance_nm=0, width_tolerance_nm=0)
    assert found(wall(144, 30), pile).bare_nm2 == 0
    assert found(wall(144, 30), pile, tight).bare_nm2 > 0


def test_a_tapered_board_is_as_wide_as_its_narrow_end_where_it_is_cut_whole() -> None:
    """Two boards that taper from 6 to 3 cover two courses of 3; one is not enough."""
    tapered = boards(2, 146, 6.25, width_end_nm=nm(3.25))
    assert found(wall(144, 6.5), tapered, NEVER).bare_nm2 == 0
    assert found(wall(144, 6.5), tapered[:1], NEVER).bare_nm2 > 0


def test_a_wide_board_is_ripped_into_several_pieces() -> None:
    """One board of 24 gives four courses of 5 7/8 and three rips of an eighth; the fifth needs another."""
    surface = wall(144, 24)
    assert found(surface, boards(1, 146, 24.25), NEVER).bare_nm2 == 0
    assert found(surface, boards(1, 146, 23), NEVER).bare_nm2 > 0


def test_wood_spent_is_bounded_from_below_but_not_beyond_what_is_spent() -> None:
    """Ten boards of 74 by 6 1/4 make five courses and leave nothing worth keeping: 4625 square inches."""
    spent = 4625 * SQUARE_INCH
    assert 0.95 * spent <= found(wall(144, 30), boards(10, 74)).wood_spent_nm2 <= spent


def test_offcuts_worth_keeping_are_not_spent() -> None:
    """Boards of 200 are cut at 143 1/2, and an offcut of 55 of each is kept."""
    left = 5 * (199 - 143.5 - 0.125) * 6
    spent = (5 * 200 * 6.25 - left) * SQUARE_INCH
    assert 0.95 * spent <= found(wall(144, 30), boards(5, 200), NEVER).wood_spent_nm2 <= spent


def test_offcuts_too_short_to_keep_are_spent() -> None:
    """Boards of 159 leave an offcut of 14 3/8, shorter than the shortest piece."""
    spent = 5 * 159 * 6.25 * SQUARE_INCH
    assert 0.95 * spent <= found(wall(144, 30), boards(5, 159), NEVER).wood_spent_nm2 <= spent


@pytest.mark.parametrize(
    ("runs", "start"),
    [
        (Direction.HORIZONTAL, Edge.TOP),
        (Direction.VERTICAL, Edge.LEFT),
        (Direction.VERTICAL, Edge.RIGHT),
    ],
)
def test_bounds_do_not_depend_on_which_way_the_courses_run(runs: Direction, start: Edge) -> None:
    """The same wall turned over has the same bounds: a bench where it starts, a window, the same studs."""
    pile = [*boards(7, 74), *boards(3, 100, 8)]
    upright = wall(
        144, 30, concealed=(zone(60, 0, 84, 12.25),), openings=(opening("window", 20, 10, 50, 25),)
    )
    if runs is Direction.HORIZONTAL:
        turned = wall(
            144,
            30,
            start=start,
            concealed=(zone(60, 17.75, 84, 30),),
            openings=(opening("window", 20, 5, 50, 20),),
        )
    else:
        near, far = (0.0, 12.25) if start is Edge.LEFT else (17.75, 30.0)
        low, high = (10, 25) if start is Edge.LEFT else (5, 20)
        turned = wall(
            30,
            144,
            courses_run=runs,
            start=start,
            framing=studs(*(8 + 16 * place for place in range(9)), runs=Direction.HORIZONTAL),
            concealed=(zone(near, 60, far, 84),),
            openings=(opening("window", low, 20, high, 50),),
        )
    assert found(turned, pile) == found(upright, pile)


def test_a_gable_is_covered_by_shorter_and_shorter_courses() -> None:
    """Boards of 73 need a joint until the slopes are so near: nine courses.

    The sides are 30 high and the ridge is 48 above them, so 73 are left at 53 2/3: 8.9 courses up.
    """
    gable = wall(144, 78, outline=outline((0, 0), (144, 0), (144, 30), (72, 78), (0, 30)))
    assert found(gable, boards(60, 74)).joints_in_sight == 9


def test_trim_leaves_less_to_cover() -> None:
    """With trim of 4 inches all round 136 by 22 are left, and boards of 137 reach."""
    trimmed = wall(144, 30, trim=EdgeTrim(bottom=nm(4), top=nm(4), left=nm(4), right=nm(4)))
    assert found(wall(144, 30), boards(6, 138), NEVER).bare_nm2 > 0
    assert found(trimmed, boards(6, 138), NEVER).bare_nm2 == 0


def test_rules_that_let_pieces_hide_in_gaps_prove_nothing() -> None:
    """Where a course may be narrower than a gap that counts as none, no line need be covered."""
    assert found(wall(144, 30), [], replace(RULES, narrowest_course_nm=nm(1 / 32))) == Bound()


def test_the_same_job_has_the_same_bound() -> None:
    """To the last square nanometre."""
    surface, pile = wall(144, 60, outline=box_outline(144, 60)), [*boards(11, 74), *boards(9, 101, 7.5)]
    assert found(surface, pile) == found(surface, pile)
