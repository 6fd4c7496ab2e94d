"""Rule 2: a piece comes out of one clear run of one board, and a kerf lies between the pieces of a board."""

from collections.abc import Iterator
from itertools import combinations

from plankwright.check.case import Case, Hung, SurfaceCase
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.slack import differs, exceeds
from plankwright.check.wording import tell
from plankwright.measure import Nm
from plankwright.model import Board, Rules, Severity


def width_at(board: Board, along: Nm) -> Nm:
    """Give the width of a board at a place along it, rounded down. [nm]"""
    return board.width_start_nm + (board.width_end_nm - board.width_start_nm) * along // board.length_nm


def usable_across(board: Board, rules: Rules, along_from: Nm, along_to: Nm) -> tuple[Nm, Nm]:
    """Give what is usable across a board over a stretch of it.

    Parameters
    ----------
    board, rules
        A square board loses both its edges to being made straight, a milled one neither.
    along_from, along_to
        The stretch, from the marked end. [nm]

    Returns
    -------
    tuple of int
        From where to where, from the reference edge. [nm]
    """
    loss = 0 if board.profile.milled else rules.straight_edge_loss_nm
    return loss, min(width_at(board, along_from), width_at(board, along_to)) - loss


def check_known(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces of boards that are not in the tally."""
    for hung in case.hung:
        if hung.board is None:
            message = f"It is cut from board {hung.piece.board_id}, which is not in the tally."
            yield found(FindingCode.BOARD_UNKNOWN, hung.place, message)


def check_ends(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces that reach into the end trims of their board, or beyond it."""
    trim = case.rules.end_trim_nm
    for hung, board in _with_boards(case):
        into = max(trim - hung.piece.along_from_nm, hung.piece.along_to_nm - (board.length_nm - trim))
        if exceeds(into, 0):
            over, trimmed = tell(case.job.tape, into, trim)
            message = (
                f"It reaches {over} into the {trimmed} that are trimmed off the ends of board {board.id}."
            )
            yield found(FindingCode.IN_END_TRIM, hung.place, message, measured=into, allowed=0)


def check_lost_wood(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces with lost wood in them."""
    for hung, board in _with_boards(case):
        for flaw in board.flaws:
            shared = min(flaw.end_nm, hung.piece.along_to_nm) - max(flaw.start_nm, hung.piece.along_from_nm)
            if flaw.severity is Severity.LOST and exceeds(shared, 0):
                length, start = tell(case.job.tape, shared, flaw.start_nm)
                message = f"It holds {length} of lost wood ({flaw.what}), {start} along board {board.id}."
                yield found(FindingCode.IN_LOST_WOOD, hung.place, message, measured=shared, allowed=0)


def check_widths(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces that are wider than their board gives once its edges are straight."""
    for hung, board in _with_boards(case):
        piece = hung.piece
        low, high = usable_across(board, case.rules, piece.along_from_nm, piece.along_to_nm)
        if exceeds(low, piece.across_from_nm) or exceeds(piece.across_to_nm, high):
            wanted_from, wanted_to, usable_from, usable_to = tell(
                case.job.tape, piece.across_from_nm, piece.across_to_nm, low, high
            )
            message = (
                f"It takes {wanted_from} to {wanted_to} across board {board.id},"
                f" of which {usable_from} to {usable_to} can be used there."
            )
            yield found(
                FindingCode.BEYOND_WIDTH,
                hung.place,
                message,
                measured=max(low - piece.across_from_nm, piece.across_to_nm - high),
                allowed=0,
            )


def check_sizes(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces that are cut to another size than the place that they hang in."""
    for hung in case.judged:
        piece = hung.piece
        for code, cut, hangs, what in (
            (
                FindingCode.LENGTH_DIFFERS,
                piece.along_to_nm - piece.along_from_nm,
                hung.u_to - hung.u_from,
                "long",
            ),
            (
                FindingCode.WIDTH_DIFFERS,
                piece.across_to_nm - piece.across_from_nm,
                hung.v_to - hung.v_from,
                "wide",
            ),
        ):
            if differs(cut, hangs):
                cut_text, hangs_text = tell(case.job.tape, cut, hangs)
                message = f"It is cut {cut_text} {what}, but its place is {hangs_text} {what}."
                yield found(code, hung.place, message, measured=cut, allowed=hangs)


def clashes(rules: Rules, pieces: tuple[Hung, ...]) -> Iterator[tuple[Hung, Hung, Nm, Nm]]:
    """Give the pairs of pieces of one board without room for the saw between them.

    Parameters
    ----------
    rules
        They say how wide the kerfs are.
    pieces
        Pieces of one board.

    Yields
    ------
    tuple
        Both pieces, the distance between them where they are farther apart (negative when they overlap), and
        the kerf needed there. [nm]
    """
    for one, other in combinations(pieces, 2):
        a, b = one.piece, other.piece
        along = max(a.along_from_nm - b.along_to_nm, b.along_from_nm - a.along_to_nm)
        across = max(a.across_from_nm - b.across_to_nm, b.across_from_nm - a.across_to_nm)
        if exceeds(rules.crosscut_kerf_nm, along) and exceeds(rules.rip_kerf_nm, across):
            yield one, other, *max((along, rules.crosscut_kerf_nm), (across, rules.rip_kerf_nm))


def check_kerfs(case: Case) -> Iterator[Finding]:
    """Find pieces of one board, all surfaces together, that overlap or leave no room for the saw."""
    for board, _, pieces in case.by_part:
        for one, other, apart, kerf in clashes(case.job.rules, pieces):
            distance, needed = tell(case.job.tape, max(apart, 0), kerf)
            near = f"lies {distance} from" if apart >= 0 else "overlaps"
            elsewhere = "" if one.surface_id == other.surface_id else f" on {one.surface_id}"
            message = (
                f"On board {board.id} it {near} piece {one.piece.label}{elsewhere};"
                f" the saw takes {needed} between them."
            )
            yield found(FindingCode.PIECES_CLASH, other.place, message, measured=apart, allowed=kerf)


def check_spares(case: Case) -> Iterator[Finding]:
    """Warn when fewer boards stay whole than the rules ask to hold back."""
    cut_into = {board.id for board, _ in case.by_board} | set(case.standing.sawn)
    asked, whole = case.job.rules.hold_back, sum(board.id not in cut_into for board in case.job.boards)
    if whole < asked:
        message = f"Boards left whole as spares: {whole}; the rules ask to hold back {asked}."
        yield found(FindingCode.SPARES_SHORT, ("", "pile"), message, measured=whole, allowed=asked)


def _with_boards(case: SurfaceCase) -> Iterator[tuple[Hung, Board]]:
    for hung in case.judged:
        if hung.board is not None:
            yield hung, hung.board
