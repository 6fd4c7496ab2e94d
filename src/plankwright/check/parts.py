"""Where pieces lie on boards that were sawn before."""

from plankwright.check.slack import SLACK
from plankwright.model import Part


def lies_in(piece: Part, part: Part) -> bool:
    """Whether a piece lies in a part that is left of its board, rounding aside.

    Parameters
    ----------
    piece
        What of its board the piece is.
    part
        What is left of a board.
    """
    return (
        piece.board_id == part.board_id
        and piece.along_from_nm >= part.along_from_nm - SLACK
        and piece.along_to_nm <= part.along_to_nm + SLACK
        and piece.across_from_nm >= part.across_from_nm - SLACK
        and piece.across_to_nm <= part.across_to_nm + SLACK
    )
