"""See one piece of a layout: its board with its cuts, its place, what it meets, what else its board gives."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from plankwright.layout.joints import butt_joints
from plankwright.layout.sawing import NoOrderOfCutsError, piece_name
from plankwright.model import NOTHING_DONE, Course, Direction, Job, Layout, Piece, Standing, SurfaceLayout
from plankwright.paper.cut_list import BoardBlock
from plankwright.paper.hanging_sheet import PieceRow, SurfaceSheet, ToDo
from plankwright.workshop.jobs.kept import NotThereError
from plankwright.workshop.jobs.see_layout import size_of
from plankwright.workshop.list_work import list_cuts, list_hanging


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherPiece:
    """Another piece, to go to: the place of its surface in the layout, its label, and what to say of it."""

    surface: int
    label: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceInPlace:
    """A piece as a screen shows it.

    Parameters
    ----------
    surface, surface_id
        The place of its surface in the layout, from 0, and what that is called.
    course
        The number of its course.
    label, size
        What is written on it, and its length and width.
    drawn_as
        What it is called on the drawing of its board.
    board_id
        The board that it comes from.
    state
        "hangs" or "cut" where it does or is.
    board
        What is done to the board; nothing where that cannot be told, as when it is sawn already.
    todo
        What there is to do with the piece when it is hung.
    before, after
        Its neighbours in the course, left and right of it, or below and above.
    upright
        Whether its course is vertical.
    others
        What else comes from the board.
    """

    surface: int
    surface_id: str
    course: int
    label: str
    size: str
    drawn_as: str
    board_id: str
    state: str
    board: BoardBlock | None
    todo: tuple[ToDo, ...]
    before: OtherPiece | None
    after: OtherPiece | None
    upright: bool
    others: tuple[OtherPiece, ...]


def see_piece(
    job: Job, layout: Layout, standing: Standing, surface: int, label: str, *, fits: bool = True
) -> PieceInPlace:
    """Look at a piece.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.
    surface
        The place of its surface in the layout, from 0.
    label
        What is written on the piece.
    fits
        Whether the layout fits the job as it is now; what follows from both is told only then.

    Raises
    ------
    NotThereError
        If there is no such piece.
    """
    laid, course, piece = find_piece(layout, surface, label)
    row = _row(job, layout, surface, label) if fits else None
    at = course.pieces.index(piece)
    joints = _joints(job, laid, label) if fits else {}
    around = dict(_neighbours(job, course, surface, joints))
    cut = {one.key for one in standing.cut}
    hangs = label in standing.hung_labels(laid.surface_id)
    return PieceInPlace(
        surface=surface,
        surface_id=laid.surface_id,
        course=course.number,
        label=label,
        size=size_of(job, piece),
        drawn_as=piece_name(job, laid.surface_id, piece),
        board_id=piece.board_id,
        state="hangs" if hangs else "cut" if (laid.surface_id, label) in cut else "",
        board=_board(job, layout, standing, laid, piece) if fits else None,
        todo=() if row is None else row.todo,
        before=around.get(at - 1),
        after=around.get(at + 1),
        upright=_upright(job, laid),
        others=tuple(_others(job, layout, laid, piece)),
    )


def find_piece(layout: Layout, surface: int, label: str) -> tuple[SurfaceLayout, Course, Piece]:
    """Find a piece with its surface and its course.

    Parameters
    ----------
    layout
        The layout.
    surface
        The place of the surface in it, from 0.
    label
        What is written on the piece.

    Raises
    ------
    NotThereError
        If there is no such piece.
    """
    for place, laid in enumerate(layout.surfaces):
        for course in laid.courses if place == surface else ():
            for piece in course.pieces:
                if piece.label == label:
                    return laid, course, piece
    raise NotThereError(f"There is no piece {label[:20]} in the layout that is worked by, or no longer.")


@lru_cache(maxsize=16)
def _sheets(job: Job, layout: Layout) -> tuple[SurfaceSheet, ...]:
    return list_hanging(job, layout)


def _row(job: Job, layout: Layout, surface: int, label: str) -> PieceRow | None:
    """Give what the hanging sheet says of a piece, as if it were still to be hung."""
    rows = (row for course in _sheets(job, layout)[surface].courses for row in course.pieces)
    return next((row for row in rows if row.label == label), None)


def _neighbours(
    job: Job, course: Course, surface: int, joints: Mapping[str, str]
) -> Iterator[tuple[int, OtherPiece]]:
    for place, piece in enumerate(course.pieces):
        words = f"{piece.label}, board {piece.board_id}, {size_of(job, piece)}{joints.get(piece.label, '')}"
        yield place, OtherPiece(surface=surface, label=piece.label, words=words)


def _joints(job: Job, laid: SurfaceLayout, label: str) -> dict[str, str]:
    """Say of each piece that a piece meets end to end whether that is seen."""
    return {
        joint.after if joint.before == label else joint.before: (
            "; the joint between them is in sight" if joint.in_sight else "; the joint between them is hidden"
        )
        for joint in butt_joints(job, laid)
        if label in {joint.before, joint.after}
    }


def _upright(job: Job, laid: SurfaceLayout) -> bool:
    runs = {surface.id: surface.courses_run for surface in job.surfaces}
    return runs.get(laid.surface_id) is Direction.VERTICAL


def _others(job: Job, layout: Layout, of: SurfaceLayout, piece: Piece) -> Iterator[OtherPiece]:
    for place, laid in enumerate(layout.surfaces):
        for other in laid.pieces:
            if other.board_id == piece.board_id and (laid is not of or other.label != piece.label):
                name = piece_name(job, laid.surface_id, other)
                yield OtherPiece(surface=place, label=other.label, words=f"{name}, {size_of(job, other)}")


def _board(
    job: Job, layout: Layout, standing: Standing, laid: SurfaceLayout, piece: Piece
) -> BoardBlock | None:
    """Give what is done to the board of a piece, or to what is left of it; if it is sawn, what was done."""
    own = _only_of(layout, piece.board_id)
    name = piece_name(job, laid.surface_id, piece)
    for done in (standing, NOTHING_DONE):
        try:
            blocks = list_cuts(job, own, done)
        except NoOrderOfCutsError:
            continue
        for block in blocks:
            if any(freed.label == name for step in block.steps for freed in step.frees):
                return block
    return None


def _only_of(layout: Layout, board_id: str) -> Layout:
    """Give a layout less the pieces of all boards but one, of which alone there is a cut list to be made."""
    return replace(
        layout,
        surfaces=tuple(
            replace(
                laid,
                courses=tuple(
                    replace(
                        course, pieces=tuple(piece for piece in course.pieces if piece.board_id == board_id)
                    )
                    for course in laid.courses
                ),
            )
            for laid in layout.surfaces
        ),
    )
