"""The score, counted again."""

from collections.abc import Iterator
from dataclasses import dataclass

from plankwright.check.boards import usable_across
from plankwright.check.case import SurfaceCase, open_surface
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.measure import CENTIMETRE, Nm, write_area
from plankwright.model import Board, Job, Piece, Rules, Score, Severity, SurfaceLayout

AREA_TOLERANCE_NM2 = CENTIMETRE**2
"""Areas are counted right when they are within a square centimetre: a thumbnail, far below what any board
costs, and far above what rounding widths to whole nanometres can add up to. [nm²]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """A stretch along a board. [nm]"""

    start: Nm
    end: Nm

    @property
    def length(self) -> Nm:
        """From end to end. [nm]"""
        return self.end - self.start


def recount(job: Job, layout: SurfaceLayout) -> Score:
    """Count the score of one surface again, from the job and its pieces alone.

    Parameters
    ----------
    job, layout
        The job and the layout of one of its surfaces; boards count as cut into by its own pieces only.

    Returns
    -------
    Score
        Counted anew but for the cuts, which are the layout's own.

    Raises
    ------
    KeyError
        If the job has no such surface.
    """
    return _count(open_surface(job, layout))


def check_score(case: SurfaceCase) -> Iterator[Finding]:
    """Find a score that is not the one counted again."""
    stated, counted = case.layout.score, _count(case)
    for code, what, said, is_so in (
        (FindingCode.BARE_AREA_WRONG, "bare area", stated.bare_nm2, counted.bare_nm2),
        (FindingCode.WOOD_SPENT_WRONG, "wood spent", stated.wood_spent_nm2, counted.wood_spent_nm2),
    ):
        if abs(said - is_so) > AREA_TOLERANCE_NM2:
            message = (
                f"The {what} is stated as {write_area(said, case.job.tape)};"
                f" counted again it is {write_area(is_so, case.job.tape)}."
            )
            yield found(code, (case.surface.id, "score"), message, measured=said, allowed=is_so)
    if stated.joints_in_sight != counted.joints_in_sight:
        message = (
            f"Joints in sight are stated as {stated.joints_in_sight};"
            f" counted again they are {counted.joints_in_sight}."
        )
        yield found(
            FindingCode.JOINT_COUNT_WRONG,
            (case.surface.id, "score"),
            message,
            measured=stated.joints_in_sight,
            allowed=counted.joints_in_sight,
        )


def _count(case: SurfaceCase) -> Score:
    pieces: dict[str, list[Piece]] = {}
    for piece in case.layout.pieces:
        pieces.setdefault(piece.board_id, []).append(piece)
    return Score(
        bare_nm2=round(case.uncovered.area),
        joints_in_sight=sum(joint.in_sight for joint in case.joints),
        wood_spent_nm2=sum(
            board.face_area_nm2 - _worth_keeping(board, case.rules, pieces[board.id])
            for board in case.job.boards
            if board.id in pieces
        ),
        cuts=case.layout.score.cuts,
    )


def _worth_keeping(board: Board, rules: Rules, pieces: list[Piece]) -> int:
    """Add up the offcuts of a board that are large enough for another course. [nm²]"""
    return sum(_kept_of(board, rules, run, pieces) for run in _clear_runs(board, rules))


def _clear_runs(board: Board, rules: Rules) -> Iterator[Stretch]:
    """Give the stretches without lost wood between the end trims."""
    start, last = rules.end_trim_nm, board.length_nm - rules.end_trim_nm
    for flaw in sorted(board.flaws, key=lambda flaw: flaw.start_nm):
        if flaw.severity is Severity.LOST:
            if min(flaw.start_nm, last) > start:
                yield Stretch(start=start, end=min(flaw.start_nm, last))
            start = max(start, flaw.end_nm)
    if last > start:
        yield Stretch(start=start, end=last)


def _kept_of(board: Board, rules: Rules, run: Stretch, pieces: list[Piece]) -> int:
    """Add up the offcuts of one clear run: beside its clusters of pieces, between and beyond them. [nm²]"""
    kept, free_from = 0, run.start
    for cluster in _clusters(rules, run, pieces):
        start, end = cluster[0].along_from_nm, max(piece.along_to_nm for piece in cluster)
        beside = max(piece.across_to_nm for piece in cluster) + rules.rip_kerf_nm
        kept += _kept(board, rules, Stretch(start=free_from, end=start - rules.crosscut_kerf_nm))
        kept += _kept(board, rules, Stretch(start=start, end=end), beside)
        free_from = end + rules.crosscut_kerf_nm
    return kept + _kept(board, rules, Stretch(start=free_from, end=run.end))


def _clusters(rules: Rules, run: Stretch, pieces: list[Piece]) -> list[list[Piece]]:
    """Group the pieces of a clear run that overlap along the board, or are no more than a kerf apart."""
    clusters: list[list[Piece]] = []
    reach = run.start
    for piece in sorted(pieces, key=lambda piece: piece.along_from_nm):
        if piece.along_to_nm <= run.start or piece.along_from_nm >= run.end:
            continue
        if clusters and piece.along_from_nm <= reach + rules.crosscut_kerf_nm:
            clusters[-1].append(piece)
            reach = max(reach, piece.along_to_nm)
        else:
            clusters.append([piece])
            reach = piece.along_to_nm
    return clusters


def _kept(board: Board, rules: Rules, stretch: Stretch, across_from: Nm | None = None) -> int:
    """Give the area of an offcut, from edge to edge or from a place across, or nothing if too small. [nm²]"""
    low, high = usable_across(board, rules, stretch.start, stretch.end)
    width = high - (low if across_from is None else across_from)
    if stretch.length < rules.shortest_piece_nm or width < rules.narrowest_course_nm:
        return 0
    return stretch.length * width
