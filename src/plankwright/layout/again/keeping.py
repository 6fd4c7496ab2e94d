"""What of a layout can stay as it is: pieces whose wood is there and whose place is, in courses as framed."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from plankwright.layout.again.at_hand import AtHand
from plankwright.layout.again.filling_in import left_to_fill
from plankwright.layout.again.frames import FrameRow
from plankwright.layout.butting import can_butt, joints_of, reaches_barred, thickness_reach, too_near
from plankwright.layout.ground import HAIR
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.runs import Run
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import JointPolicy, Rules


def kept_plan(
    strips: Strips, frame: Sequence[FrameRow], at_hand: AtHand, taken: Iterable[Stick] = ()
) -> Plan:
    """Give the courses of a frame with what hangs and whatever else can stay.

    Parameters
    ----------
    strips
        The surface.
    frame
        Its courses, with the places that they are to have.
    at_hand
        The wood that may be used.
    taken
        Wood that other surfaces have taken of that.

    Returns
    -------
    Plan
        What nothing covers any more is bare.
    """
    cut = list(taken)
    courses = []
    for each in frame:
        runs = strips.runs(each.low, each.high)
        hung = each.row.hung.pieces if each.row is not None and each.row.hung is not None else ()
        pieces = list(hung)
        for piece in _moved_pieces(strips, each, runs, hung):
            if _has_wood(strips, each, piece, at_hand) and all(
                _apart(piece.stick, other, strips.rules) for other in cut
            ):
                pieces.append(piece)
                cut.append(piece.stick)
        pieces.sort(key=lambda piece: piece.start)
        bare = left_to_fill(strips, (each.low, each.high), pieces, hung)
        courses.append(PlannedCourse(each.low, each.high, tuple(pieces), bare))
    hanging = {piece for each in frame if each.row is not None for piece in each.row.facts}
    return _settled(strips, courses, hanging)


def _moved_pieces(
    strips: Strips, each: FrameRow, runs: Sequence[Run], hung: Sequence[PlannedPiece]
) -> Iterator[PlannedPiece]:
    """Give the pieces of a course that were still to be hung, in its new place, as far as they fit there."""
    if each.row is None:
        return
    planned = each.row.planned
    before = strips.runs(planned.low, planned.high)
    starts = {run.start for run in before}
    ends = {run.end for run in before}
    edges = {edge for piece in hung for edge in (piece.start, piece.end)}
    for piece in planned.pieces:
        if (each.low, each.high) == (planned.low, planned.high) and not hung:
            # A blank may be a little shorter than its run where nothing hangs at the end of that.
            yield piece
            continue
        run = _run_of(runs, piece)
        if run is None:
            continue
        start = run.start if piece.start in starts else piece.start
        end = run.end if piece.end in ends else piece.end
        places = {run.start, run.end, *(joint.at for joint in run.joints), *edges}
        if not {start, end} <= places or start >= end or reaches_barred(start, end, run.barred):
            continue
        if any(other.start < end and start < other.end for other in hung):
            continue
        alone = (start, end) == (run.start, run.end)
        if not alone and not can_butt(start, end, run.nails, strips.rules):
            continue
        if piece.stick.hidden_only and not run.hides(start, end):
            continue
        stick = _recut(piece, start, end, each.high - each.low, strips.rules)
        if stick is not None:
            yield replace(piece, stick=stick, start=start, end=end)


def _run_of(runs: Sequence[Run], piece: PlannedPiece) -> Run | None:
    """Give the run that a piece lies in for the most part."""
    shared = [(min(run.end, piece.end) - max(run.start, piece.start), run) for run in runs]
    most, run = max(shared, key=lambda pair: pair[0], default=(0, None))
    return run if most > 0 else None


def _recut(piece: PlannedPiece, start: Nm, end: Nm, height: Nm, rules: Rules) -> Stick | None:
    """Give the wood of a piece in another size, from the same place on its board."""
    stick = piece.stick
    width = stick.width
    if width > height or width + rules.width_tolerance_nm < height:
        width = height
        if not stick.rippable:
            return None
    along_from = stick.along_from + start - piece.start
    return replace(
        stick,
        along_from=along_from,
        along_to=along_from + end - start,
        across_to=stick.across_from + width,
    )


def _has_wood(strips: Strips, each: FrameRow, piece: PlannedPiece, at_hand: AtHand) -> bool:
    """Whether the wood of a piece is at hand; of a piece with slopes or notches only in its own place."""
    for stick in at_hand.stock:
        if not _inside(piece.stick, stick):
            continue
        own = at_hand.only_at.get(stick)
        if own is None:
            return True
        there = (strips.surface.id, piece.start, piece.end, each.low)
        return own[0] == there[0] and all(abs(a - b) <= HAIR for a, b in zip(own[1:], there[1:], strict=True))
    return False


def _inside(part: Stick, stick: Stick) -> bool:
    return (
        part.board == stick.board
        and stick.along_from - HAIR <= part.along_from
        and part.along_to <= stick.along_to + HAIR
        and stick.across_from - HAIR <= part.across_from
        and part.across_to <= stick.across_to + HAIR
    )


def _apart(one: Stick, other: Stick, rules: Rules) -> bool:
    """Whether two pieces of wood lie on different boards, or have room for the saw between them."""
    if one.board != other.board:
        return True
    along = max(one.along_from - other.along_to, other.along_from - one.along_to)
    across = max(one.across_from - other.across_to, other.across_from - one.across_to)
    return along >= rules.crosscut_kerf_nm - HAIR or across >= rules.rip_kerf_nm - HAIR


def _settled(strips: Strips, courses: Sequence[PlannedCourse], hanging: set[PlannedPiece]) -> Plan:
    """Leave pieces out that do not go with their neighbours any more; what hangs stays."""
    settled: list[PlannedCourse] = []
    for course in courses:
        pieces = list(course.pieces)
        for left, right in pairwise(course.pieces):
            if left in pieces and right in pieces and not _go_together(strips, course, left, right, hanging):
                pieces.remove(left if right in hanging else right)
        now = _with(strips, course, pieces, hanging)
        below = settled[-1] if settled else None
        if below is not None and below.high == now.low and strips.rules.joints is JointPolicy.STAGGER:
            now = _staggered(strips, below, now, hanging)
        settled.append(now)
    return tuple(settled)


def _go_together(
    strips: Strips, course: PlannedCourse, left: PlannedPiece, right: PlannedPiece, hanging: set[PlannedPiece]
) -> bool:
    if right.start > left.end or {left, right} <= hanging:
        return True
    if strips.hidden(right.start, course.low, course.high):
        return True
    alike = left.stick.profile == right.stick.profile
    step = abs(left.stick.thickness - right.stick.thickness)
    return strips.rules.joints is not JointPolicy.NEVER and alike and step <= thickness_reach(strips.rules)


def _staggered(
    strips: Strips, below: PlannedCourse, course: PlannedCourse, hanging: set[PlannedPiece]
) -> PlannedCourse:
    """Take pieces out of a course until its joints keep apart from those of the one below."""
    pieces = list(course.pieces)
    while too_near(strips, below, _with(strips, course, pieces, hanging)):
        at_joints = {
            at for at, hidden in joints_of(strips, _with(strips, course, pieces, hanging)) if not hidden
        }
        loose = [
            piece
            for piece in pieces
            if piece not in hanging and (piece.start in at_joints or piece.end in at_joints)
        ]
        if not loose:
            break
        pieces.remove(loose[-1])
    return _with(strips, course, pieces, hanging)


def _with(
    strips: Strips, course: PlannedCourse, pieces: Sequence[PlannedPiece], hanging: set[PlannedPiece]
) -> PlannedCourse:
    if len(pieces) == len(course.pieces):
        return course
    bare = left_to_fill(strips, (course.low, course.high), pieces, hanging)
    return PlannedCourse(course.low, course.high, tuple(pieces), bare)
