"""What is left of the boards that are cut into, and so how much wood a layout spends.

Integer arithmetic alone, so that a search can ask for it at every step.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import TypeAlias

from plankwright.measure import Nm
from plankwright.model import Board, Job, Offcut, Part, Piece, Rules, Severity

Stretch: TypeAlias = tuple[Nm, Nm]
"""From where to where. [nm]"""


def offcuts(
    job: Job, board: Board, pieces: Iterable[Piece | Part], part: Part | None = None
) -> tuple[Offcut, ...]:
    """Give what is worth keeping of a board once its pieces are cut out.

    Parameters
    ----------
    job
        Whose rules say what is worth keeping: nothing shorter than the shortest piece, nothing narrower than
        the narrowest course.
    board
        The board.
    pieces
        The pieces that come out of it, in any order.
    part
        What there is of the board; all of it when left out.

    Returns
    -------
    tuple[Offcut, ...]
        In order along the board. They lie apart from each other and from the pieces, and each is a plain
        rectangle of sound wood inside the end trims.
    """
    ordered = sorted(pieces, key=lambda piece: piece.along_from_nm)
    found = (
        offcut
        for run in clear_runs(board, job.rules, part)
        for offcut in _left_in_run(
            job.rules, board, run, [piece for piece in ordered if run[0] <= piece.along_from_nm < run[1]]
        )
    )
    if part is None:
        return tuple(found)
    within = (
        replace(
            offcut,
            across_from_nm=max(offcut.across_from_nm, part.across_from_nm),
            across_to_nm=min(offcut.across_to_nm, part.across_to_nm),
        )
        for offcut in found
    )
    return tuple(offcut for offcut in within if offcut.width_nm >= job.rules.narrowest_course_nm)


def wood_spent_nm2(job: Job, pieces: Iterable[Piece]) -> int:
    """Add up the faces of the boards that are cut into, less the offcuts worth keeping.

    Parameters
    ----------
    job
        Whose boards and rules these are.
    pieces
        The pieces of all surfaces that are to be counted together.

    Returns
    -------
    int
        The wood spent. [nm²]
    """
    by_board: defaultdict[str, list[Piece]] = defaultdict(list)
    for piece in pieces:
        by_board[piece.board_id].append(piece)
    return sum(
        board.face_area_nm2
        - sum(offcut.length_nm * offcut.width_nm for offcut in offcuts(job, board, by_board[board.id]))
        for board in job.boards
        if board.id in by_board
    )


def clear_runs(board: Board, rules: Rules, part: Part | None = None) -> tuple[Stretch, ...]:
    """Give the stretches of a board that hold no lost flaw, inside its end trims.

    Parameters
    ----------
    board, rules
        The board, and the rules that say what its ends lose.
    part
        What there is of the board; all of it when left out.

    Returns
    -------
    tuple[tuple[Nm, Nm], ...]
        From where to where along the board, in order. [nm]
    """
    runs = []
    start, last = rules.end_trim_nm, board.length_nm - rules.end_trim_nm
    if part is not None:
        start, last = max(start, part.along_from_nm), min(last, part.along_to_nm)
    lost = sorted((f.start_nm, f.end_nm) for f in board.flaws if f.severity is Severity.LOST)
    for flaw_start, flaw_end in lost:
        if start < min(flaw_start, last):
            runs.append((start, min(flaw_start, last)))
        start = max(start, flaw_end)
    if start < last:
        runs.append((start, last))
    return tuple(runs)


def usable_across(board: Board, rules: Rules, stretch: Stretch) -> Stretch:
    """Give the widest strip with straight edges that a stretch of a board holds.

    Parameters
    ----------
    board, rules
        The board, and the rules that say what straightening a square edge costs.
    stretch
        From where to where along the board. [nm]

    Returns
    -------
    tuple[Nm, Nm]
        From where to where across the board; empty or turned round when it holds none. [nm]
    """
    loss = 0 if board.profile.milled else rules.straight_edge_loss_nm
    return loss, min(width_at_nm(board, place) for place in stretch) - loss


def width_at_nm(board: Board, along: Nm) -> Nm:
    """Give the width of a board at a place along it, rounded down. [nm]"""
    if not board.tapered:
        return board.width_start_nm
    return board.width_start_nm + (board.width_end_nm - board.width_start_nm) * along // board.length_nm


def _left_in_run(rules: Rules, board: Board, run: Stretch, pieces: list[Piece | Part]) -> Iterator[Offcut]:
    free_from, kerf = run[0], rules.crosscut_kerf_nm
    for cluster in _clusters(pieces, kerf):
        start, end = cluster[0].along_from_nm, max(piece.along_to_nm for piece in cluster)
        beside = max(piece.across_to_nm for piece in cluster) + rules.rip_kerf_nm
        yield from _kept(rules, board, (free_from, start - kerf))
        yield from _kept(rules, board, (start, end), beside)
        free_from = end + kerf
    yield from _kept(rules, board, (free_from, run[1]))


def _clusters(pieces: list[Piece | Part], kerf: Nm) -> Iterator[list[Piece | Part]]:
    """Group pieces, in order along their board, that lie no more than a kerf apart along it."""
    cluster: list[Piece | Part] = []
    reach: Nm = 0
    for piece in pieces:
        if cluster and piece.along_from_nm > reach + kerf:
            yield cluster
            cluster = []
        reach = max(reach, piece.along_to_nm) if cluster else piece.along_to_nm
        cluster.append(piece)
    if cluster:
        yield cluster


def _kept(rules: Rules, board: Board, stretch: Stretch, beside: Nm = 0) -> Iterator[Offcut]:
    start, end = stretch
    if end - start < rules.shortest_piece_nm:
        return
    near, far = usable_across(board, rules, stretch)
    near = max(near, beside)
    if far - near >= rules.narrowest_course_nm:
        yield Offcut(
            board_id=board.id, along_from_nm=start, along_to_nm=end, across_from_nm=near, across_to_nm=far
        )
