"""What lies at the saw while a job is worked on: what is left of a board is a board."""

from builders import board, flaw, nm
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.layout.at_saw import at_saw, part_as_board
from plankwright.layout.sawing import saw_boards
from plankwright.model import NOTHING_DONE, EdgeKind, EdgeProfile, Part, Severity

MILLED = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))


def part(along: tuple[float, float], across: tuple[float, float] = (0, 6)) -> Part:
    """Give a part of board A."""
    return Part(
        board_id="A",
        along_from_nm=nm(along[0]),
        along_to_nm=nm(along[1]),
        across_from_nm=nm(across[0]),
        across_to_nm=nm(across[1]),
    )


def test_before_work_begins_all_is_as_it_is() -> None:
    """Job and layout."""
    here = at_saw(begun_job(), begun_layout(), NOTHING_DONE)
    assert (here.job, here.layout) == (begun_job(), begun_layout())


def test_what_hangs_and_what_is_in_hand_as_it_hangs_is_left_out() -> None:
    """What is left of the long board is called after it, and measured from its own end."""
    standing = marked(happened("hung", "1"), happened("cut", "2b")).standing
    here = at_saw(begun_job(), begun_layout(), standing)
    assert [piece.label for piece in here.layout.pieces] == ["2a", "3a", "4a", "4b"]
    last = here.layout.pieces[-1]
    assert last.board_id == "long rest 1"
    assert (last.along_from_nm, last.along_to_nm) == (0, nm(56))
    assert here.job.board("long rest 1").length_nm == nm(56)
    cuts = {cuts.board_id: cuts for cuts in saw_boards(here.job, here.layout)}
    assert set(cuts) == {"B", "C", "D", "long rest 1"}
    assert cuts["long rest 1"].cuts == ()  # It is ripped already, and comes free with its neighbour.


def test_a_piece_in_hand_that_is_cut_down_is_called_by_what_is_written_on_it() -> None:
    """With its board behind."""
    work = marked(happened("miscut", "4b", length_nm=nm(90)))
    assert work.standing.cut[0].piece.label == "4b"
    here = at_saw(begun_job(), begun_layout(), work.standing)
    sources = {piece.label: piece.board_id for piece in here.layout.pieces}
    assert sources["4b"] == "4b of long"
    (cuts,) = [cuts for cuts in saw_boards(here.job, here.layout) if cuts.board_id == "4b of long"]
    assert [cut.at_nm for cut in cuts.cuts] == [nm(56)]


def test_names_do_not_meet_those_of_boards() -> None:
    """Whoever calls a board so."""
    standing = marked(happened("cut", "2b", "4b")).standing
    here = at_saw(begun_job("long rest"), begun_layout(), standing)
    assert {board.id for board in here.job.boards} >= {"long rest", "long rest'"}


def test_a_part_is_tallied_as_it_lies_there() -> None:
    """Its own length, its width at both ends, its flaws from its own end."""
    whole = board("A", 100, 6, width_end_nm=nm(8), flaws=(flaw(10, 12), flaw(50, 60, Severity.BLEMISH)))
    made = part_as_board(whole, part((55, 100), (1, 20)), "A-1")
    assert made is not None
    assert (made.id, made.length_nm) == ("A-1", nm(45))
    assert (made.width_start_nm, made.width_end_nm) == (nm(6 + 2 * 0.55 - 1), nm(7))
    assert [(one.start_nm, one.end_nm) for one in made.flaws] == [(0, nm(5))]


def test_a_ripped_part_is_no_longer_milled() -> None:
    """One of its edges is gone."""
    whole = board("A", 100, 6, profile=MILLED)
    assert [
        made.profile.milled
        for across in ((0, 6), (0, 5), (1, 6))
        if (made := part_as_board(whole, part((0, 50), across), "A-1")) is not None
    ] == [True, False, False]


def test_what_is_wider_than_long_is_no_board() -> None:
    """Grain runs along one."""
    assert part_as_board(board("A", 100, 20), part((0, 18), (0, 20)), "A-1") is None
