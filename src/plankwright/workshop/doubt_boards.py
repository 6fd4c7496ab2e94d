"""Which rows of a tally look like slips of the pen, so that somebody measures those boards again.

A doubt is a question, never an error: such a board is used as it was tallied. The thresholds are common
practice, no source; they are wide, so that a doubt is worth the walk to the pile.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import median_low

from plankwright.measure import FOOT, INCH, TapeStyle, write_length
from plankwright.model import Board

SHORT_NM = FOOT
LONG_NM = 30 * FOOT
WIDE_NM = 24 * INCH
TAPER_SHARE = 3
"""A board that loses a third of its width from end to end is doubted."""
THICKNESS_FACTOR = 2
"""So many times thicker or thinner than the middle one of its lot is doubted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """A row of the tally that may be a slip.

    Parameters
    ----------
    board_id
        The board.
    why
        One clause that says what is odd and what to look at.
    """

    board_id: str
    why: str


def doubt_boards(boards: Sequence[Board], tape: TapeStyle) -> tuple[Doubt, ...]:
    """Find the rows that look like slips of the pen.

    Parameters
    ----------
    boards
        The tally.
    tape
        How lengths are written.

    Returns
    -------
    tuple of Doubt
        In the order of the tally; a board may be doubted more than once.
    """
    usual = _usual_thickness(boards)
    return tuple(
        Doubt(board_id=board.id, why=why)
        for board in boards
        for why in (*_of_its_size(board, tape), *_beside_its_lot(board, usual, tape), *_of_its_flaws(board))
    )


def _of_its_size(board: Board, tape: TapeStyle) -> Iterator[str]:
    if board.length_nm < SHORT_NM:
        yield f"only {write_length(board.length_nm, tape)} long: is the unit right?"
    if board.length_nm > LONG_NM:
        yield f"{write_length(board.length_nm, tape)} long: is the unit right?"
    widest = max(board.width_start_nm, board.width_end_nm)
    if widest > WIDE_NM:
        yield f"{write_length(widest, tape)} wide: is the unit right?"
    if board.thickness_nm >= board.narrowest_width_nm:
        yield (
            f"as thick as it is wide or thicker ({write_length(board.thickness_nm, tape)}): "
            "are width and thickness swapped?"
        )
    if TAPER_SHARE * (widest - board.narrowest_width_nm) >= widest:
        yield (
            f"{write_length(board.width_start_nm, tape)} wide at one end and "
            f"{write_length(board.width_end_nm, tape)} at the other: is that so?"
        )


def _beside_its_lot(board: Board, usual: dict[str, int], tape: TapeStyle) -> Iterator[str]:
    middle = usual[board.lot]
    thinner, thicker = sorted((middle, board.thickness_nm))
    if thicker >= THICKNESS_FACTOR * thinner:
        whose = f"lot {board.lot}" if board.lot else "the pile"
        yield (
            f"{write_length(board.thickness_nm, tape)} thick, where {whose} is mostly "
            f"{write_length(middle, tape)}: is that so?"
        )


def _of_its_flaws(board: Board) -> Iterator[str]:
    in_order = sorted(board.flaws, key=lambda flaw: (flaw.start_nm, flaw.end_nm))
    for one, other in pairwise(in_order):
        if other.start_nm < one.end_nm and one.severity is other.severity and one.face is other.face:
            yield f"its flaws {one.what} and {other.what} overlap: are their positions right?"


def _usual_thickness(boards: Iterable[Board]) -> dict[str, int]:
    by_lot: defaultdict[str, list[int]] = defaultdict(list)
    for board in boards:
        by_lot[board.lot].append(board.thickness_nm)
    return {lot: median_low(thicknesses) for lot, thicknesses in by_lot.items()}
