"""What lies at the saw while a job is worked on: boards as found, and what is left of others as boards too.

A part of a board that was sawn has a marked end of its own, the one that was nearer to that of its board, and
so has a piece in hand. Whoever measures has nothing else to measure from.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from plankwright.layout.done import cut_as_hung
from plankwright.layout.offcuts import width_at_nm
from plankwright.layout.sawing import piece_name, sawn_from
from plankwright.model import (
    Board,
    CutPiece,
    EdgeProfile,
    Flaw,
    Job,
    Layout,
    Part,
    Piece,
    Standing,
    part_of,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class AtSaw:
    """What is still to be sawn.

    Parameters
    ----------
    job
        The job, with each part that is left of a board as a board of its own.
    layout
        The layout, less what hangs and what is in hand and hangs as it is; each piece from such a board.
    """

    job: Job
    layout: Layout


def at_saw(job: Job, layout: Layout, standing: Standing) -> AtSaw:
    """Give what is still to be sawn, as one would find it.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it goes on by, and how far it has come.
    """
    if not standing.begun:
        return AtSaw(job=job, layout=layout)
    named = dict(named_parts(job, standing))
    boards = [board for board in job.boards if board.id not in standing.sawn]
    boards += [_board(job, part, name) for part, name in named.items()]
    untouched = cut_as_hung(job, layout, standing)
    surfaces = tuple(
        replace(
            laid,
            courses=tuple(
                replace(
                    course,
                    pieces=tuple(
                        _moved(piece, sawn_from(standing, part_of(piece)), named)
                        for piece in course.pieces
                        if piece.label not in standing.hung_labels(laid.surface_id)
                        and (laid.surface_id, piece.label) not in untouched
                    ),
                )
                for course in laid.courses
            ),
        )
        for laid in layout.surfaces
    )
    return AtSaw(job=replace(job, boards=tuple(boards)), layout=replace(layout, surfaces=surfaces))


def part_as_board(board: Board, part: Part, name: str) -> Board | None:
    """Give a part of a board as one would tally it.

    Parameters
    ----------
    board
        The board.
    part
        What is left of it.
    name
        Its id from now on.

    Returns
    -------
    Board or None
        With the flaws that lie in it, and milled only where both of its edges are; nothing when it is wider
        than it is long, since grain runs along a board.
    """
    widths = [
        min(part.across_to_nm, width_at_nm(board, along)) - part.across_from_nm
        for along in (part.along_from_nm, part.along_to_nm)
    ]
    if min(widths) <= 0 or max(widths) > part.length_nm:
        return None
    widest = max(board.width_start_nm, board.width_end_nm)
    whole_width = part.across_from_nm == 0 and part.across_to_nm >= widest
    return replace(
        board,
        id=name,
        length_nm=part.length_nm,
        width_start_nm=widths[0],
        width_end_nm=widths[1],
        profile=board.profile if whole_width else EdgeProfile(),
        flaws=tuple(_flaws_in(board, part)),
    )


def _flaws_in(board: Board, part: Part) -> Iterator[Flaw]:
    for flaw in board.flaws:
        start, end = max(flaw.start_nm, part.along_from_nm), min(flaw.end_nm, part.along_to_nm)
        if start < end:
            yield replace(flaw, start_nm=start - part.along_from_nm, end_nm=end - part.along_from_nm)


def named_parts(job: Job, standing: Standing) -> Iterator[tuple[Part, str]]:
    """Name what is left of boards after them, and pieces in hand by what is written on them.

    Parameters
    ----------
    job, standing
        The job, and how far it has come.

    Yields
    ------
    tuple of (Part, str)
        Each part with a name that no board has.
    """
    taken = {board.id for board in job.boards}
    for cut in standing.cut:
        yield cut.part, _free_name(f"{_label(job, cut)} of {cut.piece.board_id}", taken)
    for board_id in standing.sawn:
        rests = sorted(
            (part for part in standing.left if part.board_id == board_id),
            key=lambda part: (part.along_from_nm, part.across_from_nm),
        )
        for number, part in enumerate(rests, start=1):
            name = f"{board_id} rest" if len(rests) == 1 else f"{board_id} rest {number}"
            yield part, _free_name(name, taken)


def _label(job: Job, cut: CutPiece) -> str:
    return piece_name(job, cut.surface_id, cut.piece)


def _free_name(name: str, taken: set[str]) -> str:
    while name in taken:
        name = f"{name}'"
    taken.add(name)
    return name


def _board(job: Job, part: Part, name: str) -> Board:
    """Give a part as a board to be sawn, also where nobody would tally it."""
    board = job.board(part.board_id)
    found = part_as_board(board, part, name)
    if found is not None:
        return found
    length = max(part.length_nm, part.width_nm)
    return replace(
        board,
        id=name,
        length_nm=length,
        width_start_nm=part.width_nm,
        width_end_nm=part.width_nm,
        profile=EdgeProfile(),
        flaws=(),
    )


def _moved(piece: Piece, part: Part | None, named: dict[Part, str]) -> Piece:
    """Give a piece as it lies on what it is sawn from."""
    if part is None:
        return piece
    along, across = part.along_from_nm, part.across_from_nm
    return replace(
        piece,
        board_id=named[part],
        along_from_nm=piece.along_from_nm - along,
        along_to_nm=piece.along_to_nm - along,
        across_from_nm=piece.across_from_nm - across,
        across_to_nm=piece.across_to_nm - across,
    )
