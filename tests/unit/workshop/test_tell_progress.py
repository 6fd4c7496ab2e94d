"""How far a search has come, in a few words."""

from plankwright.layout.result import Progress
from plankwright.measure import FOOT, System, TapeStyle
from plankwright.model import Bound, Score
from plankwright.workshop.tell_progress import tell_progress

IMPERIAL = TapeStyle(system=System.IMPERIAL)
SQUARE_FOOT = FOOT * FOOT


def told(best: tuple[int, int, int] | None, bound: tuple[int, int] = (0, 0)) -> str:
    """Tell a score of (bare, joints, wood) and a bound of (bare, joints), areas in square feet."""
    score = best and Score(
        bare_nm2=best[0] * SQUARE_FOOT,
        joints_in_sight=best[1],
        wood_spent_nm2=best[2] * SQUARE_FOOT,
        cuts=0,
    )
    least = Bound(bare_nm2=bound[0] * SQUARE_FOOT, joints_in_sight=bound[1])
    return tell_progress(
        Progress(surface_id="wall", stage="improving", done=0.5, best=score, bound=least), IMPERIAL
    )


def test_nothing_found_yet_is_said() -> None:
    """There is no score to tell."""
    assert told(None) == "no layout yet"


def test_joints_are_told_with_their_bound() -> None:
    """What could still be saved is in sight."""
    assert told((0, 3, 93), (0, 2)) == "all covered, three joints in sight (at best two), 93.0 sq ft of wood"
    assert told((0, 2, 93), (0, 2)) == "all covered, two joints in sight (best), 93.0 sq ft of wood"
    assert told((0, 0, 93)) == "all covered, no joints in sight, 93.0 sq ft of wood"


def test_wood_is_told_once_any_is_spent() -> None:
    """Where what is left is mended it may be long until a board is cut into."""
    assert told((4, 0, 0), (4, 0)) == "4.0 sq ft bare (best), no joints in sight"


def test_bare_wall_is_told_with_its_bound() -> None:
    """The bound on joints is left out while less could be bare: it holds for the best cover only."""
    assert (
        told((4, 3, 93), (2, 2))
        == "4.0 sq ft bare (at best 2.0 sq ft), three joints in sight, 93.0 sq ft of wood"
    )
    assert told((2, 3, 93), (2, 2)) == (
        "2.0 sq ft bare (best), three joints in sight (at best two), 93.0 sq ft of wood"
    )
