"""What is doubtful about a tally that can be read: rows that look like slips, and boards of little use.

The limits are common practice, no source: what comes out of old floors and walls is seldom larger.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import pairwise
from statistics import median_low

from plankwright.files.report import Report, Where
from plankwright.files.sentences import nearest, quoted
from plankwright.measure import FOOT, INCH, Nm
from plankwright.model import Board, Flaw, Lot, Rules, Severity, Treatment
from plankwright.model.board import lot_key
from plankwright.trade.wood.species import family_words, not_understood

WIDEST_USUAL_NM = 14 * INCH
LONGEST_USUAL_NM = 20 * FOOT
THICKEST_USUAL_NM = 2 * INCH
_TAPER_SHARE = 3
_THICKNESS_FACTOR = 2
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
    if board.treatment is not Treatment.NONE:
        report.remark(
            where,
            f"board {board.id} is treated ({board.treatment}): it is kept out of the house and counts as "
            f"lost",
        )
        return
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
    narrowing = widest - board.narrowest_width_nm
    if _TAPER_SHARE * narrowing >= widest:
        report.remark(
            where, f"board {board.id} loses a third of its width or more from end to end: is that so?"
        )
    edges = 0 if board.profile.milled else 2 * rules.straight_edge_loss_nm
    if widest - edges < rules.narrowest_course_nm:
        report.remark(
            where, f"board {board.id} is too narrow for any course: narrowest_course is more than it gives"
        )
    elif longest_clear_nm(board, rules) < rules.shortest_piece_nm:
        report.remark(
            where, f"board {board.id} has no clear run as long as shortest_piece: it gives short pieces only"
        )


def remark_pile(boards: Sequence[tuple[int, Board]], report: Report) -> None:
    """Remark on what is doubtful about all the boards together.

    Parameters
    ----------
    boards
        The pile, each board with its row.
    report
        Where remarks go.
    """
    for number, board in _odd_ones(boards):
        whose = f"lot {board.lot}" if board.lot else "the pile"
        report.remark(
            (number,),
            f"board {board.id} is {_THICKNESS_FACTOR} times thicker or thinner than {whose} mostly is: "
            "check the measurement and its unit",
        )
    if len(boards) >= _FEWEST_TO_JUDGE and all(
        board.width_start_nm in _NOMINAL_WIDTHS_NM and board.thickness_nm in _NOMINAL_THICKNESSES_NM
        for _, board in boards
    ):
        report.remark(
            (),
            "every width and thickness is a size that boards are sold under: measure a few, "
            "since a dressed 1 by 6 measures 3/4 by 5-1/2 in",
        )


def remark_lots(boards: Sequence[tuple[int, Board]], lots: Sequence[Lot], report: Report) -> None:
    """Remark on lots of which the job says something and that no board is of.

    Parameters
    ----------
    boards
        The pile, each board with its row.
    lots
        As job.toml has them.
    report
        Where remarks go.
    """
    met = {board.lot_key: board.lot for _, board in boards if board.lot}
    for lot in lots:
        if boards and lot_key(lot.name) not in met:
            report.remark(
                (),
                f"no board is of lot {lot.name}, of which job.toml says something: write it as the tally "
                f"does{nearest(lot.name, met.values())}",
            )


def remark_woods(boards: Sequence[tuple[int, Board]], report: Report) -> None:
    """Remark once on each species that no figures are known of.

    Parameters
    ----------
    boards
        The pile, each board with its row.
    report
        Where remarks go.
    """
    for species, count in not_understood(board.species for _, board in boards).items():
        report.remark(
            (),
            f"no figures are known of {quoted(species)} ({count} board{'' if count == 1 else 's'})"
            f"{nearest(species, family_words())}: the range of all species is used for what it weighs and "
            "how it moves",
        )


def _odd_ones(boards: Sequence[tuple[int, Board]]) -> Iterator[tuple[int, Board]]:
    """Give the boards that are much thicker or thinner than the middle one of their lot."""
    by_lot: defaultdict[str, list[Nm]] = defaultdict(list)
    for _, board in boards:
        by_lot[board.lot_key].append(board.thickness_nm)
    usual = {lot: median_low(sizes) for lot, sizes in by_lot.items()}
    for number, board in boards:
        thinner, thicker = sorted((usual[board.lot_key], board.thickness_nm))
        if thicker >= _THICKNESS_FACTOR * thinner:
            yield number, board


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
