"""What is doubtful about a tally although it can be read: rows that look like slips, and boards of little use.

The limits are common practice, no source: what comes out of old floors and walls is seldom larger.
"""

from collections.abc import Sequence
from itertools import pairwise

from plankwright.files.report import Report, Where
from plankwright.measure import FOOT, INCH, Nm
from plankwright.model import Board, Flaw, Rules, Severity

WIDEST_USUAL_NM = 14 * INCH
LONGEST_USUAL_NM = 20 * FOOT
THICKEST_USUAL_NM = 2 * INCH
_FEWEST_TO_JUDGE = 5
_NOMINAL_WIDTHS_NM = frozenset(inches * INCH for inches in (2, 3, 4, 5, 6, 8, 10, 12))
_NOMINAL_THICKNESSES_NM = frozenset({INCH, INCH * 5 // 4, 2 * INCH})


def remark_board(board: Board, where: Where, report: Report, *, rules: Rules) -> None:
    """Remark on what is doubtful about one board.

    Parameters
    ----------
    board
        The board.
    where
        Its row.
    report
        Where remarks go.
    rules
        They say what is too short or too narrow to be hung.
    """
    widest = max(board.width_start_nm, board.width_end_nm)
    for doubtful, sentence in (
        (widest > WIDEST_USUAL_NM, "is wider than 14 in"),
        (board.length_nm > LONGEST_USUAL_NM, "is longer than 20 ft"),
        (board.thickness_nm > THICKEST_USUAL_NM, "is thicker than 2 in"),
        (board.thickness_nm > board.narrowest_width_nm, "is thicker than it is wide"),
    ):
        if doubtful:
            report.remark(where, f"board {board.id} {sentence}: check the measurement and its unit")
    if any(
        before.end_nm > after.start_nm
        for before, after in pairwise(board.flaws)
        if before.severity is after.severity
    ):
        report.remark(where, f"board {board.id} has flaws that overlap: check their positions")
    edges = 0 if board.profile.milled else 2 * rules.straight_edge_loss_nm
    if widest - edges < rules.narrowest_course_nm:
        report.remark(
            where, f"board {board.id} is too narrow for any course: narrowest_course is more than it gives"
        )
    elif longest_clear_nm(board, rules) < rules.shortest_piece_nm:
        report.remark(
            where, f"board {board.id} has no clear run as long as shortest_piece: it gives short pieces only"
        )


def remark_pile(boards: Sequence[Board], report: Report) -> None:
    """Remark on what is doubtful about all the boards together.

    Parameters
    ----------
    boards
        The pile.
    report
        Where remarks go.
    """
    if len(boards) >= _FEWEST_TO_JUDGE and all(
        board.width_start_nm in _NOMINAL_WIDTHS_NM and board.thickness_nm in _NOMINAL_THICKNESSES_NM
        for board in boards
    ):
        report.remark(
            (),
            "every width and thickness is a size that boards are sold under: measure a few, "
            "since a dressed 1 by 6 measures 3/4 by 5-1/2 in",
        )


def longest_clear_nm(board: Board, rules: Rules) -> Nm:
    """Give the longest stretch of a board without lost wood, inside its end trims. [nm]

    Parameters
    ----------
    board
        The board.
    rules
        They say how much is trimmed off its ends.
    """
    lost: list[Flaw] = [flaw for flaw in board.flaws if flaw.severity is Severity.LOST]
    at, longest = rules.end_trim_nm, 0
    for flaw in lost:
        longest = max(longest, flaw.start_nm - at)
        at = max(at, flaw.end_nm)
    return max(longest, board.length_nm - rules.end_trim_nm - at)
