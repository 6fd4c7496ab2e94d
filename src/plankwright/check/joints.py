"""Rules 4 to 6 where two pieces meet end to end: profile, thickness, framing, sight and stagger."""

from collections.abc import Iterator

from plankwright.check.case import Joint, SurfaceCase
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.slack import differs, exceeds
from plankwright.check.wording import tell
from plankwright.model import Board, EdgeProfile, JointPolicy


def _seen(case: SurfaceCase) -> Iterator[Joint]:
    """Give the joints in sight that are judged: those of which anything is still to be hung."""
    return (joint for joint in case.joints if joint.in_sight and not joint.hangs)


def _seen_with_boards(case: SurfaceCase) -> Iterator[tuple[Joint, Board, Board]]:
    for joint in _seen(case):
        if joint.left.board and joint.right.board:
            yield joint, joint.left.board, joint.right.board


def _same_milling(one: EdgeProfile, other: EdgeProfile) -> bool:
    return one.kind is other.kind and not differs(one.reach_nm, other.reach_nm)


def check_profiles(case: SurfaceCase) -> Iterator[Finding]:
    """Find joints in sight of boards with different edge profiles."""
    for joint, left, right in _seen_with_boards(case):
        if not _same_milling(left.profile, right.profile):
            one, other = tell(case.job.tape, left.profile.reach_nm, right.profile.reach_nm)
            message = (
                f"Board {left.id} is {left.profile.kind} ({one}), board {right.id} is"
                f" {right.profile.kind} ({other}): in sight only like edges may butt."
            )
            yield found(FindingCode.JOINT_PROFILE, joint.place, message)


def check_thicknesses(case: SurfaceCase) -> Iterator[Finding]:
    """Find joints in sight with a step in the face, shims counted in."""
    allowed = case.rules.thickness_tolerance_nm
    for joint, left, right in _seen_with_boards(case):
        step = abs(
            left.thickness_nm + joint.left.piece.shim_nm - right.thickness_nm - joint.right.piece.shim_nm
        )
        if exceeds(step, allowed):
            found_step, allowed_step = tell(case.job.tape, step, allowed)
            message = f"The faces step by {found_step}, shims counted in; {allowed_step} may show."
            yield found(
                FindingCode.JOINT_THICKNESS,
                joint.place,
                message,
                measured=step,
                allowed=allowed,
            )


def check_shims(case: SurfaceCase) -> Iterator[Finding]:
    """Find shims too thick for a joint in sight, and any that are less than nothing."""
    allowed = case.rules.shim_up_to_nm
    seen = {id(hung) for joint in _seen(case) for hung in (joint.left, joint.right)}
    for hung in case.judged:
        shim = hung.piece.shim_nm
        if shim < 0 or (id(hung) in seen and exceeds(shim, allowed)):
            thick, most = tell(case.job.tape, shim, allowed)
            message = f"Its shim is {thick} thick; from nothing up to {most} may level a joint in sight."
            yield found(FindingCode.SHIM, hung.place, message, measured=shim, allowed=allowed)


def check_bearing(case: SurfaceCase) -> Iterator[Finding]:
    """Find joints without framing behind them that gives both pieces their bearing."""
    needed = case.rules.bearing_nm
    if case.surface.framing.solid:
        return
    for joint in case.joints:
        if joint.hangs:
            continue
        bearing = max(
            (
                min(
                    joint.left.u_to - (2 * member.centre_nm - member.width_nm) / 2,
                    (2 * member.centre_nm + member.width_nm) / 2 - joint.right.u_from,
                )
                for member in case.surface.crossing_members
            ),
            default=None,
        )
        if bearing is None or exceeds(needed, bearing):
            at, has, wants = tell(case.job.tape, joint.at_nm, max(bearing or 0, 0), needed)
            message = (
                f"At {at} along the course the framing gives its pieces {has} of bearing; each needs {wants}."
            )
            yield found(
                FindingCode.JOINT_OFF_FRAMING,
                joint.place,
                message,
                measured=bearing,
                allowed=needed,
            )


def check_sight(case: SurfaceCase) -> Iterator[Finding]:
    """Find joints in sight where the rules forbid them."""
    if case.rules.joints is JointPolicy.NEVER:
        for joint in _seen(case):
            (at,) = tell(case.job.tape, joint.at_nm)
            message = f"At {at} along the course it is in sight; the rules allow none."
            yield found(FindingCode.JOINT_IN_SIGHT, joint.place, message)


def check_stagger(case: SurfaceCase) -> Iterator[Finding]:
    """Find joints in sight of neighbouring courses that stand too near to one another."""
    needed = case.rules.stagger_nm
    if case.rules.joints is not JointPolicy.STAGGER:
        return
    by_course: dict[int, list[Joint]] = {}
    for joint in (joint for joint in case.joints if joint.in_sight):
        by_course.setdefault(id(joint.left.course), []).append(joint)
    for near, far in case.neighbouring_rows:
        for below in by_course.get(id(near[0].course), ()):
            for above in by_course.get(id(far[0].course), ()):
                apart = abs(below.at_nm - above.at_nm)
                if exceeds(needed, apart) and not (below.hangs and above.hangs):
                    stands, wanted = tell(case.job.tape, apart, needed)
                    message = (
                        f"It stands {stands} beside the joint of {below.left.piece.label} and"
                        f" {below.right.piece.label} in course {below.left.course.number};"
                        f" {wanted} are asked for."
                    )
                    yield found(
                        FindingCode.JOINT_STAGGER,
                        above.place,
                        message,
                        measured=apart,
                        allowed=needed,
                    )
