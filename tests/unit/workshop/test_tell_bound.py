"""How good a layout is, in plain words."""

from dataclasses import replace

from plankwright.measure import FOOT, System, TapeStyle
from plankwright.model import Bound, Rectangle, Score, SurfaceLayout
from plankwright.workshop.tell_bound import tell_bound

IMPERIAL = TapeStyle(system=System.IMPERIAL)
SQUARE_FOOT = FOOT * FOOT


def score(*, bare: int = 0, joints: int = 0, wood: int = 10) -> Score:
    """Give a score in square feet."""
    return Score(
        bare_nm2=bare * SQUARE_FOOT, joints_in_sight=joints, wood_spent_nm2=wood * SQUARE_FOOT, cuts=0
    )


def bound(*, bare: int = 0, joints: int = 0, wood: int = 0) -> Bound:
    """Give a bound in square feet."""
    return Bound(bare_nm2=bare * SQUARE_FOOT, joints_in_sight=joints, wood_spent_nm2=wood * SQUARE_FOOT)


def told(score: Score, bound: Bound, tape: TapeStyle = IMPERIAL) -> tuple[str, ...]:
    """Tell a score and a bound; a square foot left bare is one rectangle of it."""
    bare = (Rectangle(left=0, bottom=0, right=FOOT, top=FOOT),) if score.bare_nm2 >= SQUARE_FOOT else ()
    return tell_bound(SurfaceLayout(surface_id="wall", courses=(), bare=bare, score=score, bound=bound), tape)


def test_as_few_joints_as_the_bound_are_proven_best() -> None:
    """A layout that meets the bound says so."""
    joints, _ = told(score(joints=2), bound(joints=2))
    assert joints == "No layout can have fewer than two joints in sight; this one has two: proven best."


def test_more_joints_than_the_bound_say_how_many_could_be_saved() -> None:
    """The distance to the bound is told as a number of joints."""
    joints, _ = told(score(joints=3), bound(joints=2))
    assert joints == (
        "No layout can have fewer than two joints in sight; this one has three: at most one could be saved."
    )


def test_one_joint_is_told_in_the_singular() -> None:
    """Nobody reads "one joints"."""
    joints, _ = told(score(joints=1), bound(joints=1))
    assert joints == "No layout can have fewer than one joint in sight; this one has one: proven best."


def test_no_joint_in_sight_needs_no_bound() -> None:
    """There is nothing to save on none."""
    joints, _ = told(score(), bound())
    assert joints == "No joint is in sight."


def test_joints_without_a_bound_are_not_called_best() -> None:
    """A bound of nought proves nothing."""
    joints, _ = told(score(joints=13), bound())
    assert joints == "13 joints in sight; whether fewer would do is not settled."


def test_wood_at_the_bound_is_proven_best() -> None:
    """The bound on wood counts once the joints are best."""
    _, wood = told(score(joints=1, wood=90), bound(joints=1, wood=90))
    assert wood == "Wood spent: 90.0 sq ft, and no layout as good in the rest can spend less: proven best."


def test_wood_over_the_bound_says_the_share_rounded_up() -> None:
    """10 of 93 is 10.75 %, so at most 11 %."""
    _, wood = told(score(wood=93), bound(wood=83))
    assert wood == (
        "Wood spent: 93.0 sq ft, and no layout as good in the rest can spend less than 83.0 sq ft: "
        "at most 11 % could be saved."
    )


def test_a_bound_on_wood_is_not_told_of_a_layout_with_more_joints() -> None:
    """It holds for layouts with the fewest joints, which this one is not."""
    _, wood = told(score(joints=3, wood=93), bound(joints=2, wood=83))
    assert wood == "Wood spent: 93.0 sq ft."


def test_a_bound_on_joints_is_not_told_of_a_layout_that_leaves_more_bare() -> None:
    """It holds for layouts that cover the most, which this one does not."""
    _, joints, _ = told(score(bare=2, joints=3), bound(bare=1, joints=2))
    assert joints == "Three joints in sight; whether fewer would do is not settled."


def test_joints_of_a_layout_in_part_are_measured_against_layouts_that_cover_as_much() -> None:
    """A layout that covers less could have fewer joints."""
    _, joints, _ = told(score(bare=1, joints=2), bound(bare=1, joints=2))
    assert joints == (
        "No layout that covers as much can have fewer than two joints in sight; "
        "this one has two: proven best."
    )


def test_bare_wall_at_the_bound_is_proven_best() -> None:
    """What no layout can cover is said to be so."""
    bare, *_ = told(score(bare=4), bound(bare=4))
    assert bare == "4.0 sq ft stays bare, and no layout can leave less: proven best."


def test_bare_wall_over_the_bound_says_how_much_more_could_be_covered() -> None:
    """The distance to the bound is told as an area."""
    bare, *_ = told(score(bare=4), bound(bare=1))
    assert bare == (
        "4.0 sq ft stays bare, and no layout can leave less than 1.0 sq ft: "
        "at most 3.0 sq ft more could be covered."
    )


def test_bare_wall_a_hair_over_the_bound_is_not_set_against_it_in_equal_numbers() -> None:
    """The words 4.0 sq ft, and no layout less than 4.0, would make anybody stop and think."""
    hair = replace(score(bare=4), bare_nm2=4 * SQUARE_FOOT + 1)
    bare, *_ = told(hair, bound(bare=4))
    assert bare == "4.0 sq ft stays bare, and no layout can leave less that one would notice."


def test_bare_wall_without_a_bound_is_not_settled() -> None:
    """Without a bound nobody knows whether it can be covered."""
    bare, *_ = told(score(bare=4), bound())
    assert bare == "4.0 sq ft stays bare, and whether any layout can cover it is not settled."


def test_areas_are_written_for_the_users_tape() -> None:
    """A square foot is 0.09290304 m² by the definition of the foot as 0.3048 m."""
    _, wood = told(score(wood=100), bound(), TapeStyle(system=System.METRIC))
    assert wood == "Wood spent: 9.29 m²."


def test_gaps_within_the_tolerance_leave_nothing_bare() -> None:
    """They have an area, but nobody would call the wall bare, and the bounds hold as for a whole cover."""
    hairlines = Score(bare_nm2=FOOT, joints_in_sight=1, wood_spent_nm2=90 * SQUARE_FOOT, cuts=0)
    assert told(hairlines, bound(joints=1, wood=90)) == (
        "No layout can have fewer than one joint in sight; this one has one: proven best.",
        "Wood spent: 90.0 sq ft, and no layout as good in the rest can spend less: proven best.",
    )
