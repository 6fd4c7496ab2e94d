"""Say in a few words how far a search has come, for a line that is overwritten as it goes."""

from plankwright.layout.result import Progress
from plankwright.measure import TapeStyle, write_area
from plankwright.model import Bound, Score
from plankwright.workshop.wording import counted, number


def tell_progress(progress: Progress, tape: TapeStyle) -> str:
    """Say the best so far and what no layout can beat.

    Parameters
    ----------
    progress
        How far the search has come.
    tape
        How areas are written.

    Returns
    -------
    str
        Such as "all covered, three joints in sight (at best two), 93.1 sq ft of wood".
    """
    best, bound = progress.best, progress.bound
    if best is None:
        return "no layout yet"
    wood = (_tell_wood(best, tape),) if best.wood_spent_nm2 else ()
    return ", ".join((_tell_cover(best, bound, tape), _tell_joints(best, bound), *wood))


def _tell_cover(best: Score, bound: Bound, tape: TapeStyle) -> str:
    if not best.bare_nm2:
        return "all covered"
    bare = f"{write_area(best.bare_nm2, tape)} bare"
    if best.bare_nm2 <= bound.bare_nm2:
        return f"{bare} (best)"
    return f"{bare} (at best {write_area(bound.bare_nm2, tape)})"


def _tell_joints(best: Score, bound: Bound) -> str:
    joints = f"{counted(best.joints_in_sight, 'joint')} in sight"
    if best.bare_nm2 > bound.bare_nm2 or not best.joints_in_sight:
        return joints
    if best.joints_in_sight <= bound.joints_in_sight:
        return f"{joints} (best)"
    return f"{joints} (at best {number(bound.joints_in_sight)})"


def _tell_wood(best: Score, tape: TapeStyle) -> str:
    return f"{write_area(best.wood_spent_nm2, tape)} of wood"
