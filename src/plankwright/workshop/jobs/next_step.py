"""Which board is cut next and which course is hung next, with all that is done already in its place."""

from collections.abc import Sequence
from dataclasses import dataclass

from plankwright.layout.at_saw import at_saw
from plankwright.layout.done import done_on
from plankwright.layout.parting import PieceKey
from plankwright.layout.sawing import piece_name
from plankwright.measure import Nm
from plankwright.model import Course, Job, Layout, Piece, Standing, SurfaceLayout
from plankwright.paper.cut_list import BoardBlock
from plankwright.paper.hanging_sheet import CourseBlock, PieceRow, SurfaceSheet
from plankwright.workshop.list_work import list_cuts, list_hanging


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardStep:
    """A board to be cut, or what is left of one; or what was cut of a board.

    Parameters
    ----------
    id
        What it goes by at the saw.
    of
        The board of the tally that it is, or is left of.
    pieces, names
        The pieces that come out of it, and what they are called on paper.
    block
        What is to be done to it; nothing when it is done.
    """

    id: str
    of: str
    pieces: tuple[PieceKey, ...]
    names: tuple[str, ...]
    block: BoardBlock | None

    @property
    def done(self) -> bool:
        """Whether its pieces are cut."""
        return self.block is None


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceStep:
    """A piece of a course, and how far it is.

    Parameters
    ----------
    key
        Its surface and its label.
    piece
        The piece as it is laid out.
    hangs, cut
        Whether it hangs; whether it is cut and has only to be hung.
    row
        How it is hung; nothing when it hangs.
    """

    key: PieceKey
    piece: Piece
    hangs: bool
    cut: bool
    row: PieceRow | None

    @property
    def label(self) -> str:
        """What is written on it."""
        return self.piece.label


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseStep:
    """A course to be hung, or one that hangs.

    Parameters
    ----------
    number
        From the start edge.
    edge_nm
        Where its far edge is, from the start side. [nm]
    pieces
        In order along it.
    block
        How it is hung; nothing when all of it hangs.
    """

    number: int
    edge_nm: Nm
    pieces: tuple[PieceStep, ...]
    block: CourseBlock | None

    @property
    def done(self) -> bool:
        """Whether nothing of it is left to be hung."""
        return all(step.hangs for step in self.pieces)

    @property
    def to_hang(self) -> tuple[PieceStep, ...]:
        """The pieces that do not hang yet."""
        return tuple(step for step in self.pieces if not step.hangs)


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceStep:
    """A surface, with its courses in the order of hanging.

    Parameters
    ----------
    sheet
        What holds for all of it.
    courses
        From the start edge on.
    """

    sheet: SurfaceSheet
    courses: tuple[CourseStep, ...]

    @property
    def id(self) -> str:
        """The surface."""
        return self.sheet.id

    @property
    def done(self) -> bool:
        """Whether all of it hangs."""
        return all(course.done for course in self.courses)

    @property
    def pieces(self) -> int:
        """How many pieces it has."""
        return sum(len(course.pieces) for course in self.courses)

    @property
    def hung(self) -> int:
        """How many of them hang."""
        return sum(step.hangs for course in self.courses for step in course.pieces)


def boards_to_cut(job: Job, layout: Layout, standing: Standing) -> tuple[BoardStep, ...]:
    """Give the boards of a layout in the order in which their pieces are hung.

    Parameters
    ----------
    job, layout, standing
        The job, a layout of it that was checked, and how far it has come.

    Returns
    -------
    tuple of BoardStep
        Those to be cut and those that are; a board of which some pieces are cut stands there as both.
    """
    blocks = {block.id: block for block in list_cuts(job, layout, standing)}
    still = {
        (laid.surface_id, piece.label): piece
        for laid in at_saw(job, layout, standing).layout.surfaces
        for piece in laid.pieces
    }
    sources: dict[tuple[str, bool], list[tuple[PieceKey, str]]] = {}
    tallied: dict[str, str] = {}
    for laid in layout.surfaces:
        for piece in laid.pieces:
            key = laid.surface_id, piece.label
            source = still.get(key, piece).board_id, key not in still
            tallied[source[0]] = piece.board_id
            sources.setdefault(source, []).append((key, piece_name(job, laid.surface_id, piece)))
    return tuple(
        BoardStep(
            id=board_id,
            of=tallied[board_id],
            pieces=tuple(key for key, _ in pieces),
            names=tuple(name for _, name in pieces),
            block=None if done else blocks[board_id],
        )
        for (board_id, done), pieces in sources.items()
    )


def board_named(boards: Sequence[BoardStep], board_id: str) -> BoardStep | None:
    """Give the board of that id that is still to be cut; without one, the first; nothing when all are cut."""
    left = [board for board in boards if not board.done]
    return next((board for board in left if board.id == board_id), next(iter(left), None))


def board_after(boards: Sequence[BoardStep], board_id: str) -> BoardStep | None:
    """Give the next board to be cut after one of them, the first after the last; nothing if it is alone.

    Parameters
    ----------
    boards
        In order.
    board_id
        One that is still to be cut.
    """
    left = [board for board in boards if not board.done]
    place = next((place for place, board in enumerate(left) if board.id == board_id), -1)
    others = left[place + 1 :] + left[: max(place, 0)]
    return others[0] if others else None


def board_before(boards: Sequence[BoardStep], board_id: str) -> BoardStep | None:
    """Give the board to be cut before one of them; nothing before the first."""
    left = [board for board in boards if not board.done]
    place = next((place for place, board in enumerate(left) if board.id == board_id), 0)
    return left[place - 1] if place else None


def surfaces_to_hang(job: Job, layout: Layout, standing: Standing) -> tuple[SurfaceStep, ...]:
    """Give the surfaces of a layout, each with its courses as far as they are.

    Parameters
    ----------
    job, layout, standing
        The job, a layout of it that was checked, and how far it has come.
    """
    sheets = list_hanging(job, layout, standing)
    return tuple(
        _surface(job, laid, standing, sheet) for laid, sheet in zip(layout.surfaces, sheets, strict=True)
    )


def course_numbered(surface: SurfaceStep, number: int | None) -> CourseStep | None:
    """Give the course of that number; without one, the first that is not done; nothing when all hang."""
    asked = (course for course in surface.courses if course.number == number)
    left = (course for course in surface.courses if not course.done)
    return next(asked, next(left, None))


def course_after(surface: SurfaceStep, number: int) -> CourseStep | None:
    """Give the next course to be hung after one, the first after the last; nothing when it is alone."""
    left = [course for course in surface.courses if not course.done and course.number != number]
    return next((course for course in left if course.number > number), next(iter(left), None))


def _surface(job: Job, laid: SurfaceLayout, standing: Standing, sheet: SurfaceSheet) -> SurfaceStep:
    done = done_on(job, laid, standing)
    blocks = {block.number: block for block in sheet.courses}
    return SurfaceStep(
        sheet=sheet,
        courses=tuple(
            _course(laid.surface_id, course, blocks.get(course.number), standing, done.cut)
            for course in laid.courses
        ),
    )


def _course(
    surface_id: str, course: Course, block: CourseBlock | None, standing: Standing, cut: frozenset[str]
) -> CourseStep:
    hanging = standing.hung_labels(surface_id)
    rows = {row.label: row for row in (block.pieces if block else ())}
    return CourseStep(
        number=course.number,
        edge_nm=course.to_nm,
        block=block,
        pieces=tuple(
            PieceStep(
                key=(surface_id, piece.label),
                piece=piece,
                hangs=piece.label in hanging,
                cut=piece.label in cut,
                row=rows.get(piece.label),
            )
            for piece in course.pieces
        ),
    )
