"""What is done with the long edges of pieces, so that neighbouring courses fit together."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from typing import NamedTuple

from plankwright.layout.ground import HAIR, Ground, crossings
from plankwright.layout.milling import LongEdge, Shape, edge_as_cut, interlocks
from plankwright.layout.regions import extent_in_course
from plankwright.model import Board, Course, EdgeKind, EdgeTreatment, Job, Piece


class _Side(NamedTuple):
    """A long edge of a piece, by the label of the piece."""

    label: str
    far: bool


def treat_edges(job: Job, ground: Ground, courses: tuple[Course, ...]) -> tuple[Course, ...]:
    """State what is done with each long edge, and no more than must be.

    A tongue that does not fit into all that it meets is ripped off. A groove that meets no tongue somewhere
    takes a spline if it meets grooves like it there, and is face-nailed otherwise.

    Parameters
    ----------
    job
        For the boards and the gap tolerance.
    ground
        What the courses hang on.
    courses
        From the start side on.
    """
    boards = {board.id: board for board in job.boards}
    edges = {
        _Side(piece.label, far): _as_cut(boards[piece.board_id], piece, far=far)
        for course in courses
        for piece in course.pieces
        for far in (False, True)
    }
    treatments = _treatments(edges, tuple(_meetings(job, ground, courses)))
    return tuple(
        replace(
            course,
            pieces=tuple(
                replace(
                    piece,
                    near=treatments[_Side(piece.label, far=False)],
                    far=treatments[_Side(piece.label, far=True)],
                )
                for piece in course.pieces
            ),
        )
        for course in courses
    )


def _as_cut(board: Board, piece: Piece, *, far: bool) -> LongEdge:
    return edge_as_cut(board, piece.across_from_nm, piece.across_to_nm, far=far, turned=piece.turned)


def _meetings(job: Job, ground: Ground, courses: tuple[Course, ...]) -> Iterator[tuple[_Side, _Side]]:
    """Give the edges that meet along more than the gap tolerance on the surface, either way round."""
    tolerance = job.rules.gap_tolerance_nm
    for below, above in pairwise(courses):
        if above.from_nm - below.to_nm > tolerance + HAIR:
            continue
        for one in below.pieces:
            one_left, one_right, _, across = extent_in_course(ground.surface, one.place)
            for other in above.pieces:
                left, right, _, _ = extent_in_course(ground.surface, other.place)
                left, right = max(left, one_left), min(right, one_right)
                if right - left <= tolerance:
                    continue
                seam = crossings(ground.may, (left, across), (right, across))
                if sum(part.length for part in seam) > tolerance:
                    yield _Side(one.label, far=True), _Side(other.label, far=False)
                    yield _Side(other.label, far=False), _Side(one.label, far=True)


def _treatments(
    edges: dict[_Side, LongEdge], meetings: tuple[tuple[_Side, _Side], ...]
) -> dict[_Side, EdgeTreatment]:
    treatments = {
        side: EdgeTreatment.RIPPED
        if edge.kind is not EdgeKind.SQUARE and edge.shape is Shape.SQUARE
        else EdgeTreatment.AS_FOUND
        for side, edge in edges.items()
    }
    off = {
        side
        for side, other in meetings
        if edges[side].shape is Shape.TONGUE and not interlocks(edges[side], edges[other])
    }
    treatments |= dict.fromkeys(off, EdgeTreatment.TONGUE_OFF)
    for side, other in meetings:
        edge, met = edges[side], edges[other]
        if edge.shape is not Shape.GROOVE or (met.shape is Shape.TONGUE and other not in off):
            continue
        splined = edge.kind is EdgeKind.TONGUE_AND_GROOVE and met == edge
        if splined and treatments[side] is EdgeTreatment.AS_FOUND:
            treatments[side] = EdgeTreatment.SPLINE
        elif not splined:
            treatments[side] = EdgeTreatment.FACE_NAIL
    return treatments
