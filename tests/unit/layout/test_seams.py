"""What is done with long edges where courses meet; the checker must agree each time."""

from collections.abc import Sequence
from typing import NamedTuple

import pytest

from builders import board, course, job, layout, nm, opening, piece, surface_layout, wall
from plankwright.check import FindingCode, check_layout
from plankwright.layout.ground import Ground
from plankwright.layout.seams import treat_edges
from plankwright.layout.strips import Strips
from plankwright.model import EdgeKind, EdgeProfile, EdgeTreatment, Opening, Piece

AS_FOUND, RIPPED = EdgeTreatment.AS_FOUND, EdgeTreatment.RIPPED
TONGUE_OFF, SPLINE, FACE_NAIL = EdgeTreatment.TONGUE_OFF, EdgeTreatment.SPLINE, EdgeTreatment.FACE_NAIL

SQUARE = EdgeProfile()
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
LONGER = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.375))
LAP = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.25))
WIDER_LAP = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.375))

SEAM_CODES = {FindingCode.EDGE_MISSTATED, FindingCode.TONGUE_CLASH, FindingCode.GROOVE_OPEN}


class Hung(NamedTuple):
    """A piece five inches wide: its board's milling, where it hangs along the course and how it is cut."""

    profile: EdgeProfile
    along: tuple[float, float] = (0.25, 96.25)
    across_from: float = 0
    board_width: float = 5
    turned: bool = False
    taper: float = 0


def _treated(
    lower: Sequence[Hung],
    upper: Sequence[Hung],
    *,
    openings: tuple[Opening, ...] = (),
    apart: float = 0,
) -> tuple[list[Piece], list[Piece]]:
    """Treat two courses, each given from the left, and let the checker agree."""
    surface = wall(96.5, 11, openings=openings)
    boards, rows = [], []
    for number, (row, low) in enumerate(((lower, 0.25), (upper, 5.25 + apart)), start=1):
        pieces = []
        for letter, each in zip("abc", row, strict=False):
            name = f"{number}{letter}"
            width_end = nm(each.board_width + each.taper)
            boards.append(
                board(name.upper(), 98, each.board_width, width_end_nm=width_end, profile=each.profile)
            )
            pieces.append(
                piece(
                    surface,
                    f"{name} {name.upper()}",
                    each.along,
                    (low, low + 5),
                    at=(0.5, each.across_from),
                    turned=each.turned,
                )
            )
        rows.append(course(number, (low, low + 5), *pieces))
    work = job(surface, boards)
    treated = treat_edges(work, Ground(Strips(surface, work.rules)), tuple(rows))
    found = check_layout(work, layout(surface_layout(surface, *treated)))
    assert not SEAM_CODES & {finding.code for finding in found}
    return list(treated[0].pieces), list(treated[1].pieces)


RIPPED_BOARD = Hung(TONGUE, board_width=6)
"""A milled board whose tongue is sawn off with an inch of it."""


@pytest.mark.parametrize(
    ("lower", "upper", "far", "near"),
    [
        (Hung(SQUARE), Hung(SQUARE), AS_FOUND, AS_FOUND),
        (Hung(TONGUE), Hung(TONGUE), AS_FOUND, AS_FOUND),
        (Hung(LAP), Hung(LAP), AS_FOUND, AS_FOUND),
        (Hung(TONGUE), Hung(LONGER), AS_FOUND, AS_FOUND),
        (Hung(LONGER), Hung(TONGUE), TONGUE_OFF, FACE_NAIL),
        (Hung(LAP), Hung(WIDER_LAP), TONGUE_OFF, FACE_NAIL),
        (Hung(LAP), Hung(TONGUE), TONGUE_OFF, FACE_NAIL),
        (Hung(TONGUE), Hung(SQUARE), TONGUE_OFF, AS_FOUND),
        (Hung(SQUARE), Hung(TONGUE), AS_FOUND, FACE_NAIL),
        (RIPPED_BOARD, Hung(TONGUE), RIPPED, FACE_NAIL),
        (Hung(TONGUE), Hung(TONGUE, across_from=1, board_width=6), TONGUE_OFF, RIPPED),
        (Hung(TONGUE, taper=0.5), Hung(TONGUE), RIPPED, FACE_NAIL),
        (Hung(TONGUE, turned=True), Hung(TONGUE), SPLINE, SPLINE),
        (Hung(TONGUE, turned=True), Hung(LONGER), FACE_NAIL, FACE_NAIL),
        (Hung(LAP, turned=True), Hung(LAP), FACE_NAIL, FACE_NAIL),
        (Hung(TONGUE), Hung(TONGUE, turned=True), TONGUE_OFF, TONGUE_OFF),
        (Hung(TONGUE, turned=True), Hung(TONGUE, turned=True), AS_FOUND, AS_FOUND),
    ],
)
def test_a_seam_takes_the_least_that_makes_its_edges_fit(
    lower: Hung, upper: Hung, far: EdgeTreatment, near: EdgeTreatment
) -> None:
    """Far edges have the tongue and near edges the groove, unless turned or sawn off."""
    ((below,), (above,)) = _treated([lower], [upper])
    assert (below.far, above.near) == (far, near)


def test_outer_edges_are_left_as_found() -> None:
    """The groove on the floor and the tongue under the ceiling meet nothing."""
    ((below,), (above,)) = _treated([Hung(TONGUE)], [Hung(TONGUE)])
    assert (below.near, above.far) == (AS_FOUND, AS_FOUND)


def test_milled_edges_that_are_sawn_off_are_told_even_where_they_meet_nothing() -> None:
    """The starter is ripped along the floor, the closing course along the ceiling."""
    ((below,), (above,)) = _treated([Hung(TONGUE, across_from=0.5, board_width=5.5)], [RIPPED_BOARD])
    assert (below.near, above.far) == (RIPPED, RIPPED)


def test_a_tongue_that_fits_one_neighbour_only_goes_off_and_leaves_the_other_open() -> None:
    """Over one tongue hang a groove and a square edge: the groove, without its tongue, is face-nailed."""
    ((below,), (groove, square)) = _treated(
        [Hung(TONGUE)], [Hung(TONGUE, (0.25, 40)), Hung(SQUARE, (40, 96.25))]
    )
    assert (below.far, groove.near, square.near) == (TONGUE_OFF, FACE_NAIL, AS_FOUND)


def test_a_groove_over_a_tongue_and_a_square_edge_keeps_the_tongue() -> None:
    """The groove is face-nailed for the square edge; the tongue beside it still fits."""
    ((tongue, square), (above,)) = _treated(
        [Hung(TONGUE, (0.25, 40)), Hung(SQUARE, (40, 96.25))], [Hung(TONGUE)]
    )
    assert (tongue.far, square.far, above.near) == (AS_FOUND, AS_FOUND, FACE_NAIL)


@pytest.mark.parametrize("square_first", [True, False])
def test_a_groove_over_a_groove_and_a_square_edge_is_face_nailed(square_first: bool) -> None:  # noqa: FBT001 - drawn by pytest
    """A spline would hold it to one of them only, in whatever order they hang."""
    along = ((0.25, 40), (40, 96.25))
    first, second = (SQUARE, TONGUE) if square_first else (TONGUE, SQUARE)
    lower = [Hung(first, along[0], turned=True), Hung(second, along[1], turned=True)]
    (below, (above,)) = _treated(lower, [Hung(TONGUE)])
    assert above.near is FACE_NAIL
    assert {piece.far for piece in below} == {AS_FOUND, SPLINE}


def test_pieces_that_overlap_by_less_than_a_gap_do_not_meet() -> None:
    """The tongue ends 1/32 in beyond where the square edge begins."""
    ((below,), (above,)) = _treated([Hung(TONGUE, (0.25, 40))], [Hung(SQUARE, (39.96875, 96.25))])
    assert (below.far, above.near) == (AS_FOUND, AS_FOUND)


def test_edges_that_meet_only_within_an_opening_are_left_alone() -> None:
    """Tongue and square edge overlap from 30 to 60, all of it inside a window."""
    window = opening("window", 29, 3, 61, 8)
    ((below,), (above,)) = _treated(
        [Hung(TONGUE, (0.25, 60))], [Hung(SQUARE, (30, 96.25))], openings=(window,)
    )
    assert (below.far, above.near) == (AS_FOUND, AS_FOUND)


def test_courses_with_one_missing_between_them_do_not_meet() -> None:
    """Half an inch of bare wall lies between them."""
    ((below,), (above,)) = _treated([Hung(TONGUE)], [Hung(SQUARE)], apart=0.5)
    assert (below.far, above.near) == (AS_FOUND, AS_FOUND)
