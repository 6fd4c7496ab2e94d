"""What the checker finds, as values; docs/checker.md says of each code what it means and how to mend it."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import IntEnum, StrEnum, unique


@unique
class FindingCode(IntEnum):
    """What is found, numbered by subject."""

    # 1xx: the surfaces and how they are covered
    SURFACE_UNKNOWN = 101
    SURFACE_MISSING = 102
    SURFACE_TWICE = 103
    BEYOND_MEASURE = 104
    OTHER_JOB = 105
    GAP = 111
    OVERLAP = 112
    OUTSIDE = 113
    BLANK_TOO_LARGE = 114
    LEFT_BARE = 115
    BARE_BUT_COVERED = 116
    HUNG_MISSING = 117
    HUNG_CHANGED = 118
    # 2xx: the boards that pieces come from
    BOARD_UNKNOWN = 201
    IN_END_TRIM = 202
    IN_LOST_WOOD = 203
    BEYOND_WIDTH = 204
    LENGTH_DIFFERS = 205
    WIDTH_DIFFERS = 206
    PIECES_CLASH = 207
    BLEMISH_SHOWS = 208
    SPARES_SHORT = 209
    WOOD_GONE = 210
    SHAPE_GONE = 211
    # 3xx: courses, joints and seams
    COURSE_EDGE = 301
    COURSE_WIDTH = 302
    COURSES_OVERLAP = 303
    COURSE_NARROW = 304
    OUT_OF_ORDER = 305
    LABEL_TWICE = 306
    PIECE_SHORT = 307
    SLIVER = 308
    CORNER = 309
    JOINT_PROFILE = 311
    JOINT_THICKNESS = 312
    SHIM = 313
    JOINT_OFF_FRAMING = 314
    JOINT_IN_SIGHT = 315
    JOINT_STAGGER = 316
    EDGE_MISSTATED = 321
    TONGUE_CLASH = 322
    GROOVE_OPEN = 323
    # 4xx: saws
    NO_STRAIGHT_CUT = 401
    CROSSCUT_TOO_WIDE = 402
    RIP_TOO_WIDE = 403
    ANGLED_CUT_TOO_LONG = 404
    # 5xx: nails
    NAIL_OFF_PIECE = 501
    NAIL_NEAR_EDGE = 502
    NAIL_NEAR_END = 503
    NAIL_OFF_FRAMING = 504
    NAIL_IN_KEEP_OUT = 505
    NAILS_TOO_FEW = 506
    JOINED_BUT_NOT_HELD = 507
    ADD_BLOCKING = 508
    # 9xx: the score
    BARE_AREA_WRONG = 901
    JOINT_COUNT_WRONG = 902
    WOOD_SPENT_WRONG = 903


class FindingSeverity(StrEnum):
    """How much a finding weighs."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


_LESS_THAN_ERRORS = {
    FindingCode.OTHER_JOB: FindingSeverity.WARNING,
    FindingCode.BLANK_TOO_LARGE: FindingSeverity.WARNING,
    FindingCode.LEFT_BARE: FindingSeverity.NOTE,
    FindingCode.BARE_BUT_COVERED: FindingSeverity.WARNING,
    FindingCode.SPARES_SHORT: FindingSeverity.WARNING,
    FindingCode.SLIVER: FindingSeverity.WARNING,
    FindingCode.ADD_BLOCKING: FindingSeverity.WARNING,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing found in a layout.

    Parameters
    ----------
    code
        What is found.
    severity
        An error breaks a rule; a warning is left to the user's judgement; a note only tells.
    surface_id
        The surface; empty when it concerns the job as a whole.
    where
        Where on it, such as "course 4, piece 4b".
    message
        One sentence, with measures as read off the job's tape.
    measured, allowed
        The measure found and the limit that it breaks, where there is one. [nm; nm² for areas; 1 for counts]
    """

    code: FindingCode
    severity: FindingSeverity
    surface_id: str
    where: str
    message: str
    measured: int | None = None
    allowed: int | None = None

    def __str__(self) -> str:
        place = ", ".join(filter(None, (self.surface_id, self.where)))
        return f"{place}: {self.message} [{self.code.value}]"


def severity_of(code: FindingCode) -> FindingSeverity:
    """Give how much findings of a code weigh."""
    return _LESS_THAN_ERRORS.get(code, FindingSeverity.ERROR)


def found(
    code: FindingCode,
    place: tuple[str, str],
    message: str,
    *,
    measured: float | None = None,
    allowed: float | None = None,
) -> Finding:
    """Make a finding that weighs what its code weighs.

    Parameters
    ----------
    code, message, measured, allowed
        As in `Finding`; measures are rounded to whole units.
    place
        The surface and where on it.

    Returns
    -------
    Finding
        The finding.
    """
    return Finding(
        code=code,
        severity=severity_of(code),
        surface_id=place[0],
        where=place[1],
        message=message,
        measured=None if measured is None else round(measured),
        allowed=None if allowed is None else round(allowed),
    )


def faults(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Give only the findings that break a rule."""
    return tuple(finding for finding in findings if finding.severity is FindingSeverity.ERROR)
