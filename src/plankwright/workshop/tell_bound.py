"""Say in plain words how good a layout is, and how much better any layout could be."""

from plankwright.measure import TapeStyle, write_area
from plankwright.model import SurfaceLayout
from plankwright.workshop.wording import capital, counted, number


def tell_bound(laid: SurfaceLayout, tape: TapeStyle) -> tuple[str, ...]:
    """Set a layout's score against what no layout can beat.

    Parameters
    ----------
    laid
        The layout of one surface. Each measure of its bound holds for layouts that are best in the earlier
        ones, so it is told only when this layout is one of them.
    tape
        How areas are written.

    Returns
    -------
    tuple of str
        A sentence each on the area left bare (when there is any), the joints in sight and the wood spent.
    """
    score, bound = laid.score, laid.bound
    # Gaps within the tolerance count as none, although they have an area.
    bare_nm2 = score.bare_nm2 if laid.bare else 0
    bare_is_best = bare_nm2 <= bound.bare_nm2
    joints_are_best = bare_is_best and score.joints_in_sight <= bound.joints_in_sight
    return (
        *((_tell_bare(bare_nm2, bound.bare_nm2, tape),) if laid.bare else ()),
        _tell_joints(
            score.joints_in_sight,
            bound.joints_in_sight if bare_is_best else 0,
            "layout that covers as much" if laid.bare else "layout",
        ),
        _tell_wood(score.wood_spent_nm2, bound.wood_spent_nm2 if joints_are_best else 0, tape),
    )


def _tell_bare(bare_nm2: int, least_nm2: int, tape: TapeStyle) -> str:
    left = write_area(bare_nm2, tape)
    if least_nm2 <= 0:
        return f"{left} stays bare, and whether any layout can cover it is not settled."
    if bare_nm2 <= least_nm2:
        return f"{left} stays bare, and no layout can leave less: proven best."
    if left == write_area(least_nm2, tape):
        return f"{left} stays bare, and no layout can leave less that one would notice."
    return (
        f"{left} stays bare, and no layout can leave less than {write_area(least_nm2, tape)}: "
        f"at most {write_area(bare_nm2 - least_nm2, tape)} more could be covered."
    )


def _tell_joints(joints: int, least: int, whose: str) -> str:
    if joints == 0:
        return "No joint is in sight."
    if least <= 0:
        return f"{capital(counted(joints, 'joint'))} in sight; whether fewer would do is not settled."
    beaten_by_none = f"No {whose} can have fewer than {counted(least, 'joint')} in sight"
    if joints <= least:
        return f"{beaten_by_none}; this one has {number(joints)}: proven best."
    return (
        f"{beaten_by_none}; this one has {number(joints)}: at most {number(joints - least)} could be saved."
    )


def _tell_wood(spent_nm2: int, least_nm2: int, tape: TapeStyle) -> str:
    spent = f"Wood spent: {write_area(spent_nm2, tape)}"
    if least_nm2 <= 0:
        return f"{spent}."
    if spent_nm2 <= least_nm2:
        return f"{spent}, and no layout as good in the rest can spend less: proven best."
    saving_pct = -(-100 * (spent_nm2 - least_nm2) // spent_nm2)
    return (
        f"{spent}, and no layout as good in the rest can spend less than {write_area(least_nm2, tape)}: "
        f"at most {saving_pct} % could be saved."
    )
