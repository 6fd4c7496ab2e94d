"""Where planned pieces butt, and which may."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from itertools import pairwise

from plankwright.layout.plan import PlannedCourse, Stick
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import EdgeProfile, Rules


def joints_of(strips: Strips, course: PlannedCourse) -> list[tuple[Nm, bool]]:
    """Give the joints of a course.

    Parameters
    ----------
    strips, course
        The surface and a course of it.

    Returns
    -------
    list of (int, bool)
        Where each is along the course [nm], and whether a concealed zone hides it.
    """
    ends = {piece.end for piece in course.pieces}
    return [
        (piece.start, strips.hidden(piece.start, course.low, course.high))
        for piece in course.pieces
        if piece.start in ends
    ]


def joints_near(strips: Strips, low: Nm, high: Nm, courses: Sequence[PlannedCourse]) -> list[Nm]:
    """Give the joints in sight of the courses that touch a strip.

    Parameters
    ----------
    strips
        The surface.
    low, high
        The strip. [nm]
    courses
        Any, touching it or not.

    Returns
    -------
    list of int
        Along the courses. [nm]
    """
    return [
        at
        for course in courses
        if course.high == low or course.low == high
        for at, hidden in joints_of(strips, course)
        if not hidden
    ]


def too_near(strips: Strips, lower: PlannedCourse, upper: PlannedCourse) -> bool:
    """Say whether joints in sight of two courses stand nearer along them than the stagger.

    Parameters
    ----------
    strips
        The surface.
    lower, upper
        Two courses that touch.
    """
    return any(
        not hidden and not also_hidden and abs(at - also_at) < strips.rules.stagger_nm
        for at, hidden in joints_of(strips, lower)
        for also_at, also_hidden in joints_of(strips, upper)
    )


def can_butt(start: Nm, end: Nm, nails: Sequence[Nm], rules: Rules) -> bool:
    """Say whether a piece is long enough, and nailed often enough, to butt another.

    Parameters
    ----------
    start, end
        Where it hangs along its course. [nm]
    nails
        Where pieces of its run can be nailed, in rising order. [nm]
    rules
        For the shortest piece, the nailing points and the distance of a nail from the end.
    """
    if end - start < rules.shortest_piece_nm:
        return False
    reach = rules.nail_end_nm
    nailed = max(0, bisect_right(nails, end - reach) - bisect_left(nails, start + reach))
    if reach and nailed < rules.nailing_points:
        # At a joint on framing both pieces are nailed, however near the end that is.
        nailed += _among(start, nails) + _among(end, nails)
    return nailed >= rules.nailing_points


def _among(at: Nm, rising: Sequence[Nm]) -> bool:
    place = bisect_left(rising, at)
    return place < len(rising) and rising[place] == at


def reaches_barred(start: Nm, end: Nm, barred: Sequence[tuple[Nm, Nm]]) -> bool:
    """Say whether a piece would have an end that no saw at hand cuts.

    Parameters
    ----------
    start, end
        Where it hangs along its course. [nm]
    barred
        Stretches of its run with such ends. [nm]
    """
    return any(left < end and start < right for left, right in barred)


def thickness_reach(rules: Rules) -> Nm:
    """Give how far apart the thicknesses of pieces that butt in sight may be at the most. [nm]"""
    return rules.thickness_tolerance_nm + rules.shim_up_to_nm


def match(strips: Strips, course: PlannedCourse) -> bool:
    """Say whether the pieces of a course that butt in sight have one milling and faces that can be levelled.

    Parameters
    ----------
    strips, course
        The surface and a course of it.
    """
    rows: list[list[Stick]] = []
    end: Nm | None = None
    for piece in course.pieces:
        if piece.start != end or strips.hidden(end, course.low, course.high):
            rows.append([])
        rows[-1].append(piece.stick)
        end = piece.end
    return all(_can_be_levelled(row, strips.rules) for row in rows)


def _can_be_levelled(row: Sequence[Stick], rules: Rules) -> bool:
    """Whether shims that are thin enough bring the faces of a row within the tolerance of each other.

    No face can be lower than any board of the row less a tolerance for each joint between; and faces just so
    high will do.
    """
    thick = [stick.thickness for stick in row]
    faces = [
        max(other - rules.thickness_tolerance_nm * abs(place - there) for there, other in enumerate(thick))
        for place in range(len(thick))
    ]
    shimmed = (face - own for face, own in zip(faces, thick, strict=True))
    return all(shim <= rules.shim_up_to_nm for shim in shimmed) and all(
        one.profile == other.profile for one, other in pairwise(row)
    )


def mate_groups(sticks: Sequence[Stick], rules: Rules) -> list[list[Stick]]:
    """Give the largest sets of sticks of which all may butt each other in sight.

    Parameters
    ----------
    sticks
        The wood at hand.
    rules
        For the tolerance of thickness and the thickest shim.

    Returns
    -------
    list of list of Stick
        Each of one profile, with thicknesses within reach; a stick may be in several.
    """
    reach = thickness_reach(rules)
    by_profile: dict[EdgeProfile, list[Stick]] = {}
    for stick in sticks:
        by_profile.setdefault(stick.profile, []).append(stick)
    groups: list[list[Stick]] = []
    for alike in by_profile.values():
        thickest_yet = -1
        for thinnest in sorted({stick.thickness for stick in alike}):
            group = [stick for stick in alike if 0 <= stick.thickness - thinnest <= reach]
            thickest = max(stick.thickness for stick in group)
            if thickest > thickest_yet:
                groups.append(group)
                thickest_yet = thickest
    return groups
