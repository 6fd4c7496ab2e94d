"""Which boards can still be lost, and what there is without one."""

from collections.abc import Iterator
from dataclasses import replace

from plankwright.layout.capacity import capacity_of
from plankwright.layout.plan import Stick
from plankwright.layout.short_runs import shortest_of_use
from plankwright.layout.sticks import whole_sticks
from plankwright.layout.strips import Strips
from plankwright.model import Job, Layout, Piece, Standing, part_of


def boards_at_risk(job: Job, layout: Layout, standing: Standing) -> tuple[str, ...]:
    """Give the boards of which there is wood to lose that is not cut to pieces yet.

    Parameters
    ----------
    job, layout
        The job, and the layout that it is worked by.
    standing
        How far it has come.

    Returns
    -------
    tuple of str
        Ids, in the order of the tally; boards that give nothing long and wide enough are left out, as nothing
        is lost with them.
    """
    to_cut = set(boards_to_cut(layout, standing))
    narrowest = job.rules.narrowest_course_nm - job.rules.width_tolerance_nm
    return tuple(
        board_id
        for board_id, left in wood_left(job, standing).items()
        if board_id in to_cut or any(stick.width >= narrowest for stick in left)
    )


def wood_left(job: Job, standing: Standing) -> dict[str, tuple[Stick, ...]]:
    """Give the clear wood that is left of each board, pieces that are cut already aside.

    Parameters
    ----------
    job
        The job.
    standing
        How far it has come.

    Returns
    -------
    dict of str to tuple of Stick
        By the boards' ids, in the order of the tally; some have none.
    """
    capacity = capacity_of(job)
    surfaces = [Strips(surface, job.rules, capacity) for surface in job.surfaces]
    shortest = shortest_of_use(surfaces, job.rules)
    left: dict[str, tuple[Stick, ...]] = {}
    for place, board in enumerate(job.boards):
        if board.id not in standing.sawn:
            left[board.id] = whole_sticks(board, place, job.rules, capacity, shortest=shortest)
            continue
        parts = (part for part in standing.left if part.board_id == board.id)
        left[board.id] = tuple(
            stick
            for part in parts
            for stick in whole_sticks(board, place, job.rules, capacity, part, shortest=shortest)
        )
    return left


def boards_to_cut(layout: Layout, standing: Standing) -> tuple[str, ...]:
    """Give the boards that a layout is still to be cut from, in the order in which it first uses them.

    Parameters
    ----------
    layout
        The layout that the job is worked by.
    standing
        How far it has come.
    """
    return tuple(dict.fromkeys(piece.board_id for piece in pieces_to_cut(layout, standing)))


def pieces_to_cut(layout: Layout, standing: Standing) -> Iterator[Piece]:
    """Give the pieces of a layout that neither hang nor are cut from one in hand.

    Parameters
    ----------
    layout
        The layout that the job is worked by.
    standing
        How far it has come.
    """
    in_hand = [cut.part for cut in standing.cut]
    for laid in layout.surfaces:
        hanging = standing.hung_labels(laid.surface_id)
        for piece in laid.pieces:
            part = part_of(piece)
            if piece.label not in hanging and not any(cut.holds(part) for cut in in_hand):
                yield piece


def without(standing: Standing, board_id: str) -> Standing:
    """Give how far a job has come once a board is lost, as far as nothing was cut from it.

    Parameters
    ----------
    standing
        How far it had come.
    board_id
        The board; pieces that were cut from it are still there.
    """
    return replace(
        standing,
        left=tuple(part for part in standing.left if part.board_id != board_id),
        sawn=tuple(dict.fromkeys((*standing.sawn, board_id))),
        lost=tuple(dict.fromkeys((*standing.lost, board_id))),
    )
