"""Rules 3 and 7: the pieces of a course show one face width, and neither courses nor pieces are too small."""

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise

from plankwright.check.case import SurfaceCase
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.slack import differs, exceeds
from plankwright.check.wording import tell


def check_near_edges(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces whose near edge does not lie on that of their course."""
    for hung in case.judged:
        if differs(hung.v_from, hung.course.from_nm):
            lies, wanted = tell(case.job.tape, hung.v_from, hung.course.from_nm)
            message = f"Its near edge lies {lies} from the start side, that of its course {wanted}."
            yield found(
                FindingCode.COURSE_EDGE,
                hung.place,
                message,
                measured=hung.v_from,
                allowed=hung.course.from_nm,
            )


def check_face_widths(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces that are wider than their course, or narrower than the tolerance lets them be."""
    tolerance = case.rules.width_tolerance_nm
    for hung in case.judged:
        short = hung.course.to_nm - hung.v_to
        if exceeds(short, tolerance) or exceeds(0, short):
            lies, wanted, allowed = tell(case.job.tape, hung.v_to, hung.course.to_nm, tolerance)
            message = (
                f"Its far edge lies {lies} from the start side, that of its course {wanted};"
                f" a piece may be up to {allowed} narrower, and none wider."
            )
            yield found(
                FindingCode.COURSE_WIDTH,
                hung.place,
                message,
                measured=short,
                allowed=tolerance,
            )


def check_course_overlaps(case: SurfaceCase) -> Iterator[Finding]:
    """Find courses that begin before the one below them ends."""
    courses = sorted(case.layout.courses, key=lambda course: course.from_nm)
    for near, far in pairwise(courses):
        if exceeds(near.to_nm, far.from_nm) and not (case.begun(near) and case.begun(far)):
            begins, ends = tell(case.job.tape, far.from_nm, near.to_nm)
            message = f"It begins {begins} from the start side, but course {near.number} ends only at {ends}."
            yield found(
                FindingCode.COURSES_OVERLAP,
                (case.surface.id, f"course {far.number}"),
                message,
                measured=far.from_nm,
                allowed=near.to_nm,
            )


def check_course_widths(case: SurfaceCase) -> Iterator[Finding]:
    """Find courses that are narrower than the rules allow."""
    least = case.rules.narrowest_course_nm
    for course in case.layout.courses:
        if exceeds(least, course.height_nm) and not case.begun(course):
            wide, needed = tell(case.job.tape, course.height_nm, least)
            message = f"It is {wide} wide; no course may be narrower than {needed}."
            yield found(
                FindingCode.COURSE_NARROW,
                (case.surface.id, f"course {course.number}"),
                message,
                measured=course.height_nm,
                allowed=least,
            )


def check_order(case: SurfaceCase) -> Iterator[Finding]:
    """Find courses out of order or misnumbered from the start side, and pieces out of order along theirs."""
    for near, far in pairwise(case.layout.courses):
        if near.from_nm > far.from_nm:
            message = f"It stands behind course {near.number}: list the courses from the start side on."
            yield found(FindingCode.OUT_OF_ORDER, (case.surface.id, f"course {far.number}"), message)
    for number, course in enumerate(case.layout.courses, start=1):
        if course.number != number:
            message = f"It stands at place {number} in the list: number the courses 1, 2, 3 as they are hung."
            yield found(FindingCode.OUT_OF_ORDER, (case.surface.id, f"course {course.number}"), message)
    ranks = {id(hung.piece): rank for rank, hung in enumerate(case.hung)}
    for course in case.layout.courses:
        for left, right in pairwise(course.pieces):
            if ranks[id(left)] > ranks[id(right)]:
                message = (
                    f"It stands behind piece {left.label}: list the pieces from the left, or from the bottom."
                )
                where = f"course {course.number}, piece {right.label}"
                yield found(FindingCode.OUT_OF_ORDER, (case.surface.id, where), message)


def check_labels(case: SurfaceCase) -> Iterator[Finding]:
    """Find labels that more than one piece of the surface bears."""
    for label, times in Counter(piece.label for piece in case.layout.pieces).items():
        if times > 1:
            message = f"{times} pieces bear this label: nobody could tell them apart at the wall."
            yield found(
                FindingCode.LABEL_TWICE,
                (case.surface.id, f"piece {label}"),
                message,
                measured=times,
                allowed=1,
            )


def check_piece_lengths(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces that butt another and are shorter than the rules allow; a run of its own may be short."""
    least = case.rules.shortest_piece_nm
    butting = {id(hung): hung for joint in case.joints for hung in (joint.left, joint.right)}
    for hung in (hung for hung in butting.values() if not hung.hangs):
        length = hung.u_to - hung.u_from
        if exceeds(least, length):
            long, needed = tell(case.job.tape, length, least)
            message = f"It is {long} long and butts another piece; none may be shorter than {needed}."
            yield found(FindingCode.PIECE_SHORT, hung.place, message, measured=length, allowed=least)
