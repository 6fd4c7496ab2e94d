"""What the saws at hand can free from a board, and layouts that ask no more of them."""

import pytest

from builders import board, crosscut_saw, job, nm, outline, rip_saw, studs, wall
from plankwright.check import check_layout, faults
from plankwright.layout import Effort, lay_out
from plankwright.layout.capacity import Capacity, capacity_of, within_reach
from plankwright.layout.sticks import cut_from, remainders, whole_sticks
from plankwright.model import Board, EdgeKind, EdgeProfile, Job, Rules, Saw, SurfaceLayout

MILLED = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
_MOMENT = Effort(name="moment", seconds=0.5)
_WALL = wall(40, 12, framing=studs(2, 20, 38))


def _laid(work: Job) -> SurfaceLayout:
    """Lay out a job of one surface; the checker finds no fault with it."""
    layout = lay_out(work, effort=Effort(name="while", seconds=2)).layout
    assert not faults(check_layout(work, layout))
    return layout.surfaces[0]


def _wall_job(boards: list[Board], *saws: Saw, rules: Rules | None = None) -> Job:
    return job(_WALL, boards, rules or Rules(expansion_gap_nm=0), saws)


def test_without_saws_listed_nothing_is_judged() -> None:
    """All of a wide board can be used."""
    capacity = capacity_of(_wall_job([]))
    assert capacity == Capacity()
    assert within_reach(board("A", 96, 30), (nm(0.125), nm(29.875)), capacity) == (nm(0.125), nm(29.875))


def test_a_board_wider_than_the_saw_crosscuts_is_ripped_down_first() -> None:
    """The strip next to the reference edge is as wide as the saw cuts across."""
    capacity = Capacity(crosscut=nm(7), rip=nm(20))
    assert within_reach(board("A", 96, 10), (nm(0.125), nm(9.875)), capacity) == (nm(0.125), nm(7.125))
    assert within_reach(board("B", 96, 7), (nm(0.125), nm(6.875)), capacity) == (nm(0.125), nm(6.875))


def test_without_a_saw_to_cut_across_no_piece_comes_free() -> None:
    """There is a table saw only."""
    assert within_reach(board("A", 96, 5), (0, nm(5)), Capacity(crosscut=0, rip=nm(20))) is None


@pytest.mark.parametrize(
    ("wood", "across", "usable"),
    [
        (board("as found", 96, 5, profile=MILLED), (0, 5), True),
        (board("to be straightened", 96, 5), (0.125, 4.875), False),
        (board("tapered", 96, 5, width_end_nm=nm(5.5), profile=MILLED), (0, 5), False),
        (board("too wide", 96, 12, profile=MILLED), (0, 12), False),
    ],
    ids=lambda value: value.id if isinstance(value, Board) else "",
)
def test_without_a_saw_to_rip_with_a_board_hangs_as_it_is(
    wood: Board, across: tuple[float, float], *, usable: bool
) -> None:
    """Or not at all."""
    near, far = (nm(edge) for edge in across)
    found = within_reach(wood, (near, far), Capacity(crosscut=nm(10), rip=0))
    assert found == ((near, far) if usable else None)


def test_only_a_strip_that_the_saw_takes_is_ripped_off() -> None:
    """Four inches can be ripped off, five cannot: then nothing is left beside the piece."""
    rules = Rules()
    (stick,) = whole_sticks(board("A", 96, 12), 0, rules, Capacity(crosscut=nm(12), rip=nm(4)))
    whole = stick.length
    for width, beside in ((4, 1), (5, 0)):
        part = cut_from(stick, stick.along_from, whole, stick.across_from, nm(width))
        assert len(remainders(stick, part, rules)) == beside


def test_boards_too_wide_to_be_cut_across_are_laid_out_in_strips() -> None:
    """Boards of 12 and a mitre saw of 7: each gives one strip, and is ripped from end to end first."""
    laid = _laid(_wall_job([board(f"B{n}", 90, 12) for n in range(3)], crosscut_saw(7), rip_saw(24)))
    assert not laid.bare
    assert all(course.height_nm <= nm(7) for course in laid.courses)


def test_without_a_saw_to_rip_with_courses_are_as_wide_as_the_boards() -> None:
    """Three courses of four inches are found; boards of five would have to be ripped."""
    fit = [board(f"A{n}", 44, 4, profile=MILLED) for n in range(3)]
    wide = [board(f"B{n}", 44, 5, profile=MILLED) for n in range(3)]
    laid = _laid(_wall_job([*wide, *fit], crosscut_saw(10)))
    assert {piece.board_id for piece in laid.pieces} == {"A0", "A1", "A2"}
    assert not laid.bare


def test_without_a_saw_to_cut_across_nothing_is_hung() -> None:
    """And no boards are asked for that could not be cut either."""
    work = _wall_job([board(f"B{n}", 90, 6) for n in range(3)], rip_saw(24))
    result = lay_out(work, effort=_MOMENT)
    assert not faults(check_layout(work, result.layout))
    assert result.layout.pieces == ()
    assert result.closing is None


def test_an_end_that_slopes_too_far_for_the_saw_is_left_bare() -> None:
    """The side rises one in four, so that a course of three inches would end in a cut of over a foot."""
    surface = wall(48, 12, outline=outline((0, 0), (48, 0), (0, 12)), framing=studs(2, 14, 26, 38))
    boards = [board(f"B{n}", 60, 3.25) for n in range(4)]
    work = job(
        surface, boards, Rules(expansion_gap_nm=0, shortest_piece_nm=nm(8)), [crosscut_saw(8), rip_saw(8)]
    )
    assert _laid(work).bare
    longer = job(surface, boards, work.rules, [crosscut_saw(14), rip_saw(8)])
    assert not _laid(longer).bare
