"""What a tally tells of a board in words: insects, and paint that nobody tested."""

from plankwright.model import Board, Job, Paint
from plankwright.trade.readying.signs import shows_insects, shows_paint, tells_heated


def words_of(board: Board) -> str:
    """Give the words of its flaws and its note, each apart from the others.

    Parameters
    ----------
    board
        The board.
    """
    return "; ".join((*(flaw.what for flaw in board.flaws), board.note))


def has_insects(board: Board) -> bool:
    """Tell whether a board has signs of insects and was not heated since.

    Parameters
    ----------
    board
        The board.
    """
    words = words_of(board)
    return shows_insects(words) and not tells_heated(words)


def paint_of(job: Job, board: Board) -> Paint:
    """Give what is on a board, as far as anybody knows.

    Parameters
    ----------
    job
        With what is known of its lots.
    board
        One of its boards. Where its own words speak of paint, its lot is not believed to have none.
    """
    known = job.lot_of(board)
    paint = Paint.UNKNOWN if known is None else known.paint
    return Paint.UNKNOWN if paint is Paint.NONE and shows_paint(words_of(board)) else paint


def tells_of_paint(job: Job, board: Board) -> bool:
    """Tell whether anybody speaks of paint on a board: its own words, or what is known of its lot.

    Parameters
    ----------
    job, board
        As in `paint_of`.
    """
    known = job.lot_of(board)
    return shows_paint(words_of(board)) or (known is not None and known.paint is not Paint.NONE)
