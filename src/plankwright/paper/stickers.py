"""Labels to stick on boards and pieces: the id large, what it is, and a code that any phone reads.

The code holds the words themselves, so that it can be read in a shed without any network.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from plankwright.draw.code import code_svg
from plankwright.layout.done import done_on
from plankwright.layout.hanging import hung_pieces
from plankwright.layout.regions import extent_in_course
from plankwright.layout.sawing import name_on
from plankwright.measure import write_inches, write_length
from plankwright.model import NOTHING_DONE, Board, Course, HungPiece, Job, Layout, Piece, Standing
from plankwright.paper.hanging_sheet import Planned


@dataclass(frozen=True, slots=True, kw_only=True)
class Sticker:
    """A label.

    Parameters
    ----------
    id
        Read from afar.
    lines
        What it is.
    said
        What its code says.
    code
        The code, as SVG.
    """

    id: str
    lines: tuple[str, ...]
    said: str
    code: str


def board_stickers(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> tuple[Sticker, ...]:
    """Make a label for each board that a layout needs, in the order of the tally.

    Parameters
    ----------
    job, layout
        The job and a layout of it.
    standing
        What was sawn already needs none any more.
    """
    used = {piece.board_id for piece in layout.pieces} - set(standing.sawn)
    return tuple(_board(job, board, layout) for board in job.boards if board.id in used)


def piece_stickers(
    job: Job, layout: Layout, planned: Mapping[str, Planned], standing: Standing = NOTHING_DONE
) -> tuple[Sticker, ...]:
    """Make a label for each piece, in the order of hanging.

    Parameters
    ----------
    job, layout
        The job and a layout of it.
    planned
        What was planned for each surface, by its id.
    standing
        What hangs or is cut already has its label.
    """
    return tuple(_pieces(job, layout, planned, standing))


def _board(job: Job, board: Board, layout: Layout) -> Sticker:
    size = f"{write_length(board.length_nm, job.tape)} × {write_inches(board.narrowest_width_nm, job.tape)}"
    lot = f"lot {board.lot}" if board.lot else ""
    lines = (size, lot, "arrow at the marked end", f"gives {'; '.join(_gives(job, board, layout))}")
    told = tuple(line for line in lines if line)
    return _sticker(f"{board.id}", told, (job.name, f"board {board.id}", *told))


def _gives(job: Job, board: Board, layout: Layout) -> Iterator[str]:
    """Name the pieces out of a board, after their surface where the job has several."""
    for part in layout.surfaces:
        labels = [piece.label for piece in part.pieces if piece.board_id == board.id]
        if labels:
            yield name_on(job, part.surface_id, ", ".join(labels))


def _pieces(
    job: Job, layout: Layout, planned: Mapping[str, Planned], standing: Standing
) -> Iterator[Sticker]:
    for part in layout.surfaces:
        done = done_on(job, part, standing)
        courses = [course for course in part.courses for _ in course.pieces]
        for course, piece, hung in zip(courses, part.pieces, hung_pieces(job, part), strict=True):
            if piece.label in done.hung or piece.label in done.cut:
                continue
            yield _piece(job, part.surface_id, course, piece, hung, planned.get(part.surface_id))


def _piece(
    job: Job, surface_id: str, course: Course, piece: Piece, hung: HungPiece, planned: Planned | None
) -> Sticker:
    tape = job.tape
    along_from, along_to, *_ = extent_in_course(job.surface(surface_id), piece.place)
    size = f"{write_inches(hung.long_point_nm, tape)} × {write_inches(course.height_nm, tape)}"
    lines = (
        size,
        f"board {piece.board_id}, course {course.number}",
        f"{write_inches(along_from, tape)} to {write_inches(along_to, tape)} along",
        surface_id,
    )
    nailing = planned.pieces.get(piece.label) if planned else None
    nails = (
        [f"{group.count} × {group.nail} {group.where}".strip() for group in nailing.groups] if nailing else []
    )
    notches = [
        f"notch for {what}: {write_inches(place.width_nm, tape)} × {write_inches(place.height_nm, tape)}"
        for place, what in hung.notches
    ]
    besides = list(nailing.besides) if nailing else []
    said = (job.name, f"{surface_id}, piece {piece.label}", *lines[:3], *notches, *nails, *besides)
    return _sticker(piece.label, lines, said)


def _sticker(name: str, lines: tuple[str, ...], said: tuple[str, ...]) -> Sticker:
    text = "\n".join(said)
    return Sticker(id=name, lines=lines, said=text, code=code_svg(text))
