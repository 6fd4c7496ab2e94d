"""In which order boards are best cut."""

from dataclasses import replace

from at_stake import one_long_board, twins
from builders import nm
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.layout.break_proof import cutting_order
from plankwright.model import NOTHING_DONE, EdgeKind, EdgeProfile


def test_what_cannot_be_done_without_comes_first() -> None:
    """However many others are like it."""
    job, layout = one_long_board()
    first, *rest = cutting_order(job, layout, NOTHING_DONE, {"right"})
    assert (first.board_id, first.needed) == ("right", True)
    assert [each.board_id for each in rest] == ["long", "left"]


def test_then_comes_what_nothing_is_like() -> None:
    """The long board could stand in for a short one, and none of them for the long one."""
    job, layout = one_long_board()
    long, left, right = cutting_order(job, layout, NOTHING_DONE, ())
    assert (long.board_id, long.stand_ins, long.spare_stand_ins, long.longest_nm) == ("long", 0, 0, nm(96))
    assert (left.board_id, left.stand_ins, left.spare_stand_ins) == ("left", 4, 2)
    assert right.board_id == "right"


def test_boards_that_are_thinner_or_milled_otherwise_do_not_stand_in() -> None:
    """They cannot butt what the board was to butt."""
    job, layout = twins(3)
    first, second, thin, milled, blank = job.boards
    other = (
        replace(thin, thickness_nm=nm(0.5)),
        replace(milled, profile=EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))),
        replace(blank, length_nm=nm(90)),
    )
    order = cutting_order(replace(job, boards=(first, second, *other)), layout, NOTHING_DONE, ())
    assert [(each.stand_ins, each.spare_stand_ins) for each in order] == [(1, 0), (1, 0)]


def test_only_what_is_still_to_be_cut_is_ordered() -> None:
    """And what hangs stands in for nothing any more."""
    standing = marked(happened("hung", "1", "2")).standing
    order = {each.board_id: each for each in cutting_order(begun_job(), begun_layout(), standing, ())}
    assert set(order) == {"C", "D", "long"}
    # D and the wide board are as long as C; the long one has too little left.
    assert (order["C"].stand_ins, order["C"].spare_stand_ins) == (2, 1)
