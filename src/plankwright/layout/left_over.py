"""What is left once all hangs, as one would tally it for the next surface."""

from collections.abc import Iterator
from dataclasses import replace

from plankwright.layout.at_saw import at_saw, named_parts, part_as_board
from plankwright.layout.offcuts import offcuts
from plankwright.layout.sawing import rests_after
from plankwright.model import Board, Job, Layout, Standing, part_of


def left_over(job: Job, layout: Layout, standing: Standing) -> tuple[tuple[Board, Board], ...]:
    """Give what is left of the pile once all of a layout hangs.

    Parameters
    ----------
    job, layout, standing
        The job, its layout, and how far it has come.

    Returns
    -------
    tuple of (Board, Board)
        In the order of the tally: a board or an offcut as measured from its own marked end, and the board
        that it was. Boards that nothing was cut from are all there; offcuts only if they have a clear stretch
        as long as the shortest piece and as wide as the narrowest course, once their ends are trimmed again.
    """
    here = at_saw(job, layout, standing)
    was = {board.id: board for board in job.boards}
    was |= {name: job.board(part.board_id) for part, name in named_parts(job, standing)}
    rests = rests_after(here.job, here.layout)
    used = {piece.board_id for piece in here.layout.pieces} | set(_hanging_as_cut(job, layout, standing))
    taken = set(was)
    order = {board.id: number for number, board in enumerate(job.boards)}
    found: list[tuple[Board, Board]] = []
    for board in here.job.boards:
        if board.id in used:
            parts = [part_as_board(board, part, board.id) for part in rests.get(board.id, ())]
        elif board.id in order:
            found.append((board, board))
            continue
        else:
            parts = [board]
        origin = was[board.id]
        found += [
            (_named(part, origin.id, taken), origin)
            for part in parts
            if part is not None and offcuts(job, part, ())
        ]
    return tuple(sorted(found, key=lambda pair: order[pair[1].id]))


def _hanging_as_cut(job: Job, layout: Layout, standing: Standing) -> Iterator[str]:
    """Give the names of pieces in hand that the layout hangs, as they are or not."""
    hanging = [part_of(piece) for piece in layout.pieces]
    in_hand = {cut.part for cut in standing.cut}
    for part, name in named_parts(job, standing):
        if part in in_hand and part in hanging:
            yield name


def _named(board: Board, after: str, taken: set[str]) -> Board:
    """Name an offcut after its board, with a number that nothing has yet."""
    number = 1
    while f"{after}-{number}" in taken:
        number += 1
    taken.add(f"{after}-{number}")
    return replace(board, id=f"{after}-{number}")
