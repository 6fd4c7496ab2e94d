"""Turn the search's plan of a surface into the document that leaves this room."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from plankwright.layout.ground import HAIR, Ground, box, common, less, polygons_of
from plankwright.layout.joints import Joint, butt_joints
from plankwright.layout.labels import NOTHING_NAMED, Naming, name_pieces
from plankwright.layout.nailing import nail_places
from plankwright.layout.offcuts import wood_spent_nm2
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece
from plankwright.layout.sawing import count_cuts, saw_boards
from plankwright.layout.seams import treat_edges
from plankwright.layout.strips import Span, Strips
from plankwright.measure import Nm
from plankwright.model import (
    NOTHING_DONE,
    Bound,
    Course,
    Job,
    Layout,
    Piece,
    Rectangle,
    Score,
    Standing,
    SurfaceLayout,
)

_NOT_COUNTED = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """What is done already on a surface.

    Parameters
    ----------
    hung
        The planned pieces that hang, as they do: they are written down as they are.
    edges
        By where they begin, from where to where the courses reach of which something hangs, as measured. [nm]
    naming
        The labels in use.
    standing
        How far the job has come: passes of the saw are counted as far as they are still to be made.
    """

    hung: Mapping[PlannedPiece, Piece] = field(default_factory=dict)
    edges: Mapping[Nm, tuple[Nm, Nm]] = field(default_factory=dict)
    naming: Naming = NOTHING_NAMED
    standing: Standing = NOTHING_DONE


NOTHING_HUNG = Done()


def write_surface(
    job: Job, strips: Strips, plan: Plan, bound: Bound, done: Done = NOTHING_HUNG
) -> SurfaceLayout:
    """Write the plan of a surface down: blanks, labels, edges, shims, nails and score.

    Parameters
    ----------
    job
        The job.
    strips
        The surface.
    plan
        Its courses.
    bound
        What no layout of it can beat.
    done
        What hangs already, and which labels are in use.

    Returns
    -------
    SurfaceLayout
        No blank is larger than what hangs needs, as far as the pieces of a course share its edges. The score
        counts the boards as though nothing else were cut from them on other surfaces.
    """
    ground = Ground(strips)
    named = name_pieces(tuple(_courses(job, ground, plan, done)), done.naming)
    hanging = frozenset(piece.label for piece in done.hung.values())
    bare = tuple(_bare(ground, plan))
    if done is not NOTHING_HUNG:
        bare = (*bare, *_left_open(ground, named, bare, hanging))
    draft = SurfaceLayout(
        surface_id=strips.surface.id, courses=named, bare=bare, score=_NOT_COUNTED, bound=bound
    )
    return _finished(job, ground, draft, hanging, done.standing)


def finish_surface(job: Job, strips: Strips, laid: SurfaceLayout, standing: Standing) -> SurfaceLayout:
    """State anew what follows from where pieces hang and what they are of: edges, shims, what is bare, score.

    Parameters
    ----------
    job
        The job.
    strips
        The surface.
    laid
        A layout of it, in which pieces may have come to be of other boards, or of what was taken for hung.
    standing
        What hangs already: it stays as it is.
    """
    ground, hanging = Ground(strips), standing.hung_labels(laid.surface_id)
    left_open = _left_open(ground, laid.courses, laid.bare, hanging)
    return _finished(job, ground, replace(laid, bare=(*laid.bare, *left_open)), hanging, standing)


def _finished(
    job: Job, ground: Ground, draft: SurfaceLayout, hanging: frozenset[str], standing: Standing
) -> SurfaceLayout:
    courses = _as_treated(draft.courses, treat_edges(job, ground, draft.courses), hanging)
    treated = replace(draft, courses=courses)
    joints = [joint for joint in butt_joints(job, treated) if joint.in_sight]
    written = replace(treated, courses=tuple(_shimmed(job, courses, joints, hanging)))
    score = Score(
        bare_nm2=_bare_area(ground, courses),
        joints_in_sight=len(joints),
        wood_spent_nm2=wood_spent_nm2(job, written.pieces),
        cuts=count_cuts(saw_boards(job, Layout(job_name=job.name, surfaces=(written,)), standing)),
    )
    return replace(written, score=score)


def _courses(job: Job, ground: Ground, plan: Plan, done: Done) -> Iterator[Course]:
    """Give the courses that anything hangs in, numbered, their pieces with nails but without labels."""
    number, hung = 0, done.hung
    for planned in plan:
        hanging = [
            piece
            for piece in planned.pieces
            if piece in hung or not ground.hung(_wood(piece, planned)).is_empty
        ]
        if not hanging:
            continue
        number += 1
        low, high = done.edges.get(planned.low, (planned.low, planned.high))
        if not any(piece in hung for piece in hanging):
            low, high = _edges(ground, planned, hanging)
            if not all(_held(ground, piece, planned, (low, high)) for piece in _butting(hanging)):
                low, high = planned.low, planned.high
        pieces = (
            hung[piece]
            if piece in hung
            else _piece(job, ground, piece, _blank(ground, piece, planned, (low, high)), planned)
            for piece in hanging
        )
        yield Course(number=number, from_nm=low, to_nm=high, pieces=tuple(pieces))


def _as_treated(
    found: tuple[Course, ...], treated: tuple[Course, ...], hanging: frozenset[str]
) -> tuple[Course, ...]:
    """Leave the edges of what hangs as they are, but where they meet what is still to be hung."""
    settled = [all(piece.label in hanging for piece in course.pieces) for course in found]
    beside = dict.fromkeys(range(-1, len(found) + 1), True) | dict(enumerate(settled))
    return tuple(
        replace(
            after,
            pieces=tuple(
                replace(
                    new,
                    near=old.near if beside[index - 1] else new.near,
                    far=old.far if beside[index + 1] else new.far,
                )
                if new.label in hanging
                else new
                for old, new in zip(before.pieces, after.pieces, strict=True)
            ),
        )
        for index, (before, after) in enumerate(zip(found, treated, strict=True))
    )


def _strip(piece: PlannedPiece, planned: PlannedCourse) -> Span:
    return Span(piece.start, piece.end, planned.low, planned.high)


def _wood(piece: PlannedPiece, planned: PlannedCourse) -> Span:
    """Give what of its strip a piece reaches: it may be narrower than its course by the tolerance."""
    return Span(piece.start, piece.end, planned.low, min(planned.high, planned.low + piece.stick.width))


def _edges(ground: Ground, planned: PlannedCourse, hanging: list[PlannedPiece]) -> tuple[Nm, Nm]:
    """Give the edges of a course, less what no piece of it hangs in, as above the peak of a gable. [nm]"""
    if not all(piece.stick.rippable for piece in hanging):
        return planned.low, planned.high
    bounds = [ground.hung(_strip(piece, planned)).bounds for piece in hanging]
    low, high = round(min(low for _, low, _, _ in bounds)), round(max(high for *_, high in bounds))
    narrowest = ground.rules.narrowest_course_nm
    high = max(high, min(planned.high, low + narrowest))
    return max(planned.low, min(low, high - narrowest)), high


def _butting(hanging: list[PlannedPiece]) -> Iterator[PlannedPiece]:
    """Give the pieces that butt others."""
    starts, ends = {piece.start for piece in hanging}, {piece.end for piece in hanging}
    return (piece for piece in hanging if piece.start in ends or piece.end in starts)


def _held(ground: Ground, piece: PlannedPiece, planned: PlannedCourse, edges: tuple[Nm, Nm]) -> bool:
    """Whether a piece between these edges of its course can be nailed at as many members as are asked for."""
    if ground.surface.framing.solid:
        return True
    nails = nail_places(ground, _blank(ground, piece, planned, edges))
    nailed = sum(
        any(2 * abs(along - member.centre_nm) <= member.width_nm for along, _ in nails)
        for member in ground.surface.crossing_members
    )
    return nailed >= ground.rules.nailing_points


def _blank(ground: Ground, piece: PlannedPiece, planned: PlannedCourse, edges: tuple[Nm, Nm]) -> Span:
    """Give the blank of a piece: between the edges of its course, and no longer than what hangs."""
    low, high = edges
    high = min(high, planned.low + piece.stick.width)
    left, _, right, _ = ground.hung(Span(piece.start, piece.end, low, high)).bounds
    return Span(round(left), round(right), low, high)


def _piece(job: Job, ground: Ground, piece: PlannedPiece, blank: Span, planned: PlannedCourse) -> Piece:
    stick = piece.stick
    along_from = stick.along_from + blank.left - piece.start
    across_from = stick.across_from + blank.low - planned.low
    return Piece(
        label="",
        board_id=job.boards[stick.board].id,
        place=ground.strips.rectangle(blank),
        along_from_nm=along_from,
        along_to_nm=along_from + blank.right - blank.left,
        across_from_nm=across_from,
        across_to_nm=across_from + blank.high - blank.low,
        face=stick.face,
        turned=piece.turned,
        nails=tuple(ground.point(*place) for place in nail_places(ground, blank)),
    )


def _shimmed(
    job: Job, courses: Iterable[Course], in_sight: list[Joint], hanging: frozenset[str]
) -> Iterator[Course]:
    """Shim the thinner boards at joints in sight, just so much that no step is out of tolerance.

    Behind what hangs already nothing goes any more.
    """
    thickness = {board.id: board.thickness_nm for board in job.boards}
    tolerance = job.rules.thickness_tolerance_nm
    faces = {
        piece.label: thickness[piece.board_id] + (piece.shim_nm if piece.label in hanging else 0)
        for course in courses
        for piece in course.pieces
    }
    joined = [(joint.before, joint.after) for joint in in_sight]
    for lower, higher in (*joined, *((after, before) for before, after in reversed(joined))):
        if higher not in hanging:
            faces[higher] = max(faces[higher], faces[lower] - tolerance)
    for course in courses:
        yield replace(
            course,
            pieces=tuple(
                replace(piece, shim_nm=faces[piece.label] - thickness[piece.board_id])
                for piece in course.pieces
            ),
        )


def _bare(ground: Ground, plan: Plan) -> Iterator[Rectangle]:
    """Give the blanks that no board was found for, where they must be covered."""
    for planned in plan:
        for start, end in planned.bare:
            blank = Span(start, end, planned.low, planned.high)
            if common(box(blank), ground.must).area > HAIR * (end - start):
                left, low, right, high = (round(bound) for bound in ground.hung(blank).bounds)
                yield ground.strips.rectangle(Span(left, right, low, high))


def _left_open(
    ground: Ground, courses: Iterable[Course], bare: Iterable[Rectangle], hanging: frozenset[str]
) -> Iterator[Rectangle]:
    """Give what else is bare: where courses hang farther apart than planned, nothing may fit in between.

    A gap between pieces that hang already, too narrow for any other, cannot be helped, and is not told.
    """
    pieces = [(ground.box(piece.place), piece.label) for course in courses for piece in course.pieces]
    left = less(ground.must, *(blank for blank, _ in pieces), *map(ground.box, bare))
    for part in polygons_of(left):
        around = part.buffer(2 * HAIR)
        beside = {label for blank, label in pieces if blank.intersects(around)}
        helpless = beside and beside <= hanging
        wide = ground.rules.narrowest_course_nm if helpless else ground.rules.gap_tolerance_nm
        if not part.buffer(-(wide + HAIR) / 2).is_empty:
            start, low, end, high = (round(bound) for bound in part.bounds)
            yield ground.strips.rectangle(Span(start, end, low, high))


def _bare_area(ground: Ground, courses: Iterable[Course]) -> int:
    """Give the area of what must be covered and is not. [nm²]"""
    blanks = (ground.box(piece.place) for course in courses for piece in course.pieces)
    return round(less(ground.must, *blanks).area)
