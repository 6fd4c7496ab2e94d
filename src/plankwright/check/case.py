"""A layout laid open for judging: every piece with its board, its shape and its joints, worked out once."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise, permutations

from shapely import prepare
from shapely.geometry import LineString
from shapely.geometry.base import BaseGeometry

from plankwright.check.frame import Frame, box_of, frame_of
from plankwright.check.parts import lies_in
from plankwright.check.regions import may_cover, must_cover
from plankwright.check.shapes import common, less, line_in, line_off
from plankwright.check.slack import SLACK, exceeds
from plankwright.measure import Nm
from plankwright.model import (
    NOTHING_DONE,
    Board,
    Course,
    Job,
    Layout,
    Part,
    Piece,
    Rules,
    Standing,
    Surface,
    SurfaceLayout,
    part_of,
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Hung:
    """A piece where it hangs.

    Parameters
    ----------
    surface_id, course, piece
        The piece, its course and its surface.
    board
        Its board, or nothing when the tally has no such board.
    u_from, u_to, v_from, v_to
        Its blank in the frame of the courses. [nm]
    within
        Its blank less whatever lies outside the surface or in an opening.
    shape
        What hangs: the same less cut-outs.
    hangs
        Whether it hangs already: it is a fact then, and not judged.
    """

    surface_id: str
    course: Course
    piece: Piece
    board: Board | None
    u_from: Nm
    u_to: Nm
    v_from: Nm
    v_to: Nm
    within: BaseGeometry
    shape: BaseGeometry
    hangs: bool = False

    @property
    def place(self) -> tuple[str, str]:
        """The surface, and the piece as findings name it."""
        return self.surface_id, f"course {self.course.number}, piece {self.piece.label}"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Joint:
    """Where two pieces of a course meet end to end.

    Parameters
    ----------
    left, right
        The two pieces; left is below in a vertical course.
    at_nm
        The middle of the joint, along the course. [nm]
    in_sight
        Whether neither trim nor a fixture hides it.
    """

    left: Hung
    right: Hung
    at_nm: Nm
    in_sight: bool

    @property
    def hangs(self) -> bool:
        """Whether both pieces hang already."""
        return self.left.hangs and self.right.hangs

    @property
    def place(self) -> tuple[str, str]:
        """The surface, and the joint as findings name it."""
        labels = f"{self.left.piece.label} and {self.right.piece.label}"
        return self.left.surface_id, f"course {self.left.course.number}, joint of {labels}"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SurfaceCase:
    """One surface of a layout, laid open.

    Parameters
    ----------
    job, surface, layout
        What is judged.
    frame
        The frame of its courses.
    may_cover, must_cover
        The parts of the surface that boards may and must lie on.
    concealed
        What each fixture hides.
    rows
        The pieces, course by course, courses from the start side on and pieces along them.
    uncovered
        The part that must be covered and is not.
    joints
        Every butt joint.
    standing
        How far the job has come.
    """

    job: Job
    surface: Surface
    layout: SurfaceLayout
    frame: Frame
    may_cover: BaseGeometry
    must_cover: BaseGeometry
    concealed: tuple[BaseGeometry, ...]
    rows: tuple[tuple[Hung, ...], ...]
    uncovered: BaseGeometry
    joints: tuple[Joint, ...]
    standing: Standing = NOTHING_DONE

    @property
    def rules(self) -> Rules:
        """The rules of the job."""
        return self.job.rules

    @property
    def hung(self) -> tuple[Hung, ...]:
        """Every piece, in the order of the rows."""
        return tuple(hung for row in self.rows for hung in row)

    @property
    def judged(self) -> tuple[Hung, ...]:
        """Every piece that does not hang yet, in the order of the rows."""
        return tuple(hung for hung in self.hung if not hung.hangs)

    def begun(self, course: Course) -> bool:
        """Whether anything of a course hangs already, so that its edges are facts."""
        labels = self.standing.hung_labels(self.surface.id)
        return any(piece.label in labels for piece in course.pieces)

    @property
    def neighbouring_rows(self) -> Iterator[tuple[tuple[Hung, ...], tuple[Hung, ...]]]:
        """Pairs of rows that touch, or nearly: between others a course is missing."""
        for near, far in pairwise(filter(None, self.rows)):
            if not exceeds(far[0].course.from_nm - near[0].course.to_nm, self.rules.gap_tolerance_nm):
                yield near, far


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Case:
    """A whole layout, laid open.

    Parameters
    ----------
    job, layout
        What is judged.
    surfaces
        Those of its surfaces that can be judged.
    standing
        How far the job has come.
    """

    job: Job
    layout: Layout
    surfaces: tuple[SurfaceCase, ...]
    standing: Standing = NOTHING_DONE

    @property
    def by_board(self) -> tuple[tuple[Board, tuple[Hung, ...]], ...]:
        """The boards cut into, in the order of the tally, each with its pieces on all surfaces."""
        pieces: dict[str, list[Hung]] = {}
        for surface in self.surfaces:
            for hung in surface.hung:
                pieces.setdefault(hung.piece.board_id, []).append(hung)
        return tuple((board, tuple(pieces[board.id])) for board in self.job.boards if board.id in pieces)

    @property
    def by_part(self) -> tuple[tuple[Board, Part | None, tuple[Hung, ...]], ...]:
        """What is still to be sawn: boards, and parts that are left of others, each with its pieces.

        Pieces that come from no such part are told of elsewhere, and left out here.
        """
        groups: list[tuple[Board, Part | None, tuple[Hung, ...]]] = []
        for board, pieces in self.by_board:
            to_saw = tuple(hung for hung in pieces if not hung.hangs)
            if board.id not in self.standing.sawn:
                groups.append((board, None, to_saw))
                continue
            groups += [
                (board, part, tuple(hung for hung in to_saw if lies_in(part_of(hung.piece), part)))
                for part in self.standing.parts_of(board.id)
            ]
        return tuple(group for group in groups if group[2])


def open_surface(job: Job, layout: SurfaceLayout, standing: Standing = NOTHING_DONE) -> SurfaceCase:
    """Lay one surface of a layout open.

    Parameters
    ----------
    job, layout
        The job and the layout of one of its surfaces.
    standing
        How far the job has come.

    Returns
    -------
    SurfaceCase
        The same, worked out.

    Raises
    ------
    KeyError
        If the job has no such surface.
    """
    surface = job.surface(layout.surface_id)
    frame = frame_of(surface)
    may, must = may_cover(surface, job.rules), must_cover(surface, job.rules)
    prepare(may)
    concealed = tuple(box_of(zone.place) for zone in surface.concealed)
    boards = {board.id: board for board in job.boards}
    hanging = standing.hung_labels(surface.id)
    rows = tuple(
        tuple(
            sorted(
                (
                    replace(
                        hang(surface, frame, may, course, piece, boards.get(piece.board_id)),
                        hangs=piece.label in hanging,
                    )
                    for piece in course.pieces
                ),
                key=lambda hung: hung.u_from,
            )
        )
        for course in sorted(layout.courses, key=lambda course: course.from_nm)
    )
    return SurfaceCase(
        job=job,
        surface=surface,
        layout=layout,
        frame=frame,
        may_cover=may,
        must_cover=must,
        concealed=concealed,
        rows=rows,
        uncovered=less(must, *(box_of(piece.place) for piece in layout.pieces)),
        joints=tuple(
            joint
            for row in rows
            for joint in _joints(row, frame, may, must, concealed, job.rules.gap_tolerance_nm)
        ),
        standing=standing,
    )


def hang(
    surface: Surface, frame: Frame, may: BaseGeometry, course: Course, piece: Piece, board: Board | None
) -> Hung:
    """Hang a piece: give it with what hangs of its blank.

    Parameters
    ----------
    surface, frame, may
        The surface, the frame of its courses, and what of it may be covered.
    course, piece, board
        The piece, its course, and its board if the tally has it.
    """
    place = piece.place
    blank = box_of(place)
    within = blank if may.covers(blank) else common(blank, may)
    holes = [hole for cut_out in surface.cut_outs if (hole := box_of(cut_out.place)).intersects(blank)]
    extent = frame.extent(place.left, place.bottom, place.right, place.top)
    return Hung(
        surface_id=surface.id,
        course=course,
        piece=piece,
        board=board,
        u_from=round(extent.u_from),
        u_to=round(extent.u_to),
        v_from=round(extent.v_from),
        v_to=round(extent.v_to),
        within=within,
        shape=less(within, *holes),
    )


def _joints(
    row: tuple[Hung, ...],
    frame: Frame,
    may: BaseGeometry,
    must: BaseGeometry,
    concealed: tuple[BaseGeometry, ...],
    gap_tolerance: Nm,
) -> Iterator[Joint]:
    for left, right in permutations(row, 2):
        low, high = max(left.v_from, right.v_from), min(left.v_to, right.v_to)
        if exceeds(abs(right.u_from - left.u_to), gap_tolerance) or not exceeds(high, low):
            continue
        at = (left.u_to + right.u_from) // 2
        line = LineString((frame.surface_point(at, low), frame.surface_point(at, high)))
        if line_in(line, may).length > SLACK:
            showing = line_in(line, must)
            hidden = showing.length <= SLACK or any(
                line_off(showing, zone).length <= SLACK for zone in concealed
            )
            yield Joint(left=left, right=right, at_nm=at, in_sight=not hidden)
