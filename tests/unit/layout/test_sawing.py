"""The order of work at the saw: every board cut into, every piece freed, every cut with its purpose."""

import pytest

from plankwright.layout.sawing import NoOrderOfCutsError, count_cuts, saw_boards
from plankwright.measure import INCH, System, TapeStyle
from plankwright.model import (
    Board,
    Course,
    Cut,
    CutKind,
    Framing,
    Job,
    Layout,
    Piece,
    Rectangle,
    Rules,
    Saw,
    SawKind,
    Score,
    Surface,
    SurfaceLayout,
)

RULES = Rules(expansion_gap_nm=0)
NO_SCORE = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0)
WALL = Surface(
    id="wall",
    outline=((0, 0), (90 * INCH, 0), (90 * INCH, 90 * INCH), (0, 90 * INCH)),
    framing=Framing(solid=True),
)
GABLE = Surface(
    id="gable", outline=((0, 0), (80 * INCH, 0), (40 * INCH, 40 * INCH)), framing=Framing(solid=True)
)


def board_of(name: str, width: float = 8) -> Board:
    """Give a board 96 in long."""
    size = round(width * INCH)
    return Board(id=name, length_nm=96 * INCH, width_start_nm=size, width_end_nm=size, thickness_nm=INCH)


def piece_of(
    label: str, board: str, place: tuple[float, float, float, float], at: tuple[float, float]
) -> Piece:
    """Give a piece by its blank on the surface and its near corner on the board; inches."""
    left, bottom, right, top = (round(side * INCH) for side in place)
    along, across = (round(mark * INCH) for mark in at)
    return Piece(
        label=label,
        board_id=board,
        place=Rectangle(left=left, bottom=bottom, right=right, top=top),
        along_from_nm=along,
        along_to_nm=along + right - left,
        across_from_nm=across,
        across_to_nm=across + top - bottom,
    )


def job_of(*boards: Board, surfaces: tuple[Surface, ...] = (WALL,), saws: tuple[Saw, ...] = ()) -> Job:
    """Give a job."""
    tape = TapeStyle(system=System.IMPERIAL)
    return Job(name="test", tape=tape, surfaces=surfaces, boards=boards, rules=RULES, saws=saws)


def layout_of(*pieces: Piece, surface: str = "wall") -> SurfaceLayout:
    """Give a layout of one surface with a course for each piece."""
    courses = tuple(
        Course(number=number, from_nm=piece.place.bottom, to_nm=piece.place.top, pieces=(piece,))
        for number, piece in enumerate(pieces, start=1)
    )
    return SurfaceLayout(surface_id=surface, courses=courses, score=NO_SCORE)


def whole(*surfaces: SurfaceLayout) -> Layout:
    """Give a layout of a job."""
    return Layout(job_name="test", surfaces=surfaces)


def told(cut: Cut) -> tuple[str, float, str]:
    """Give a cut as kind, mark in inches, and what it frees or is for."""
    return cut.kind.value, cut.at_nm / INCH, ", ".join(cut.yields) or cut.what


def test_cuts_are_told_with_what_they_free_or_are_for() -> None:
    """The ends are trimmed, the edge is straightened, the last rip frees the piece, the rest is kept."""
    piece = piece_of("1a", "A", (0, 0, 60, 5), (0.5, 0.125))
    (board,) = saw_boards(job_of(board_of("A")), whole(layout_of(piece)))
    assert [told(cut) for cut in board.cuts] == [
        ("crosscut", 0.375, "trim the marked end"),
        ("crosscut", 60.5, "part 1a from an offcut"),
        ("rip", 0, "straighten the reference edge"),
        ("rip", 5.125, "1a"),
    ]
    kept = [(offcut.along_from_nm / INCH, offcut.along_to_nm / INCH) for offcut in board.offcuts]
    assert kept == [(0.5, 60.5), (60.625, 95.5)]


def test_cut_between_pieces_says_what_it_parts() -> None:
    """A cut that frees nothing yet but parts two pieces names both."""
    pieces = (
        piece_of("1a", "A", (0, 0, 40, 5), (0.5, 0.125)),
        piece_of("2a", "A", (0, 5, 40, 11), (40.625, 0.125)),
    )
    (board,) = saw_boards(job_of(board_of("A")), whole(layout_of(*pieces)))
    assert ("crosscut", 40.5, "part 1a from 2a") in [told(cut) for cut in board.cuts]


def test_cut_may_free_two_pieces() -> None:
    """The last rip between two strips frees both when their other edges are the board's own."""
    rules = Rules(expansion_gap_nm=0, straight_edge_loss_nm=0, end_trim_nm=0)
    pieces = (
        piece_of("1a", "A", (0, 0, 90, 3), (0, 0)),
        piece_of("2a", "A", (0, 3, 90, 7.875), (0, 3.125)),
    )
    board = Board(
        id="A", length_nm=90 * INCH, width_start_nm=8 * INCH, width_end_nm=8 * INCH, thickness_nm=INCH
    )
    job = Job(
        name="test", tape=TapeStyle(system=System.IMPERIAL), surfaces=(WALL,), boards=(board,), rules=rules
    )
    (cuts,) = saw_boards(job, whole(layout_of(*pieces)))
    assert [told(cut) for cut in cuts.cuts] == [("rip", 3, "1a, 2a")]


def test_boards_follow_in_the_order_of_hanging() -> None:
    """The board of the starter comes first, whatever the tally's order; boards not cut into are left out."""
    first = piece_of("1a", "C", (0, 0, 90, 5), (0.5, 0.125))
    second = piece_of("2a", "A", (0, 5, 90, 10), (0.5, 0.125))
    job = job_of(board_of("A"), board_of("B"), board_of("C"))
    assert [board.board_id for board in saw_boards(job, whole(layout_of(first, second)))] == ["C", "A"]


def test_pieces_are_named_with_their_surface_when_there_are_several() -> None:
    """With two surfaces a label alone would not tell the pieces apart."""
    on_wall = piece_of("1a", "A", (0, 0, 40, 5), (0.5, 0.125))
    on_gable = piece_of("1a", "A", (5, 0, 45, 5), (40.625, 0.125))
    job = job_of(board_of("A"), surfaces=(WALL, GABLE))
    (board,) = saw_boards(job, whole(layout_of(on_wall), layout_of(on_gable, surface="gable")))
    assert board.piece_labels == ("wall 1a", "gable 1a")


def test_angled_end_is_cut_in_place_of_a_square_one() -> None:
    """When only waste lies behind it, the angled crosscut frees the piece: no square cut is made first."""
    piece = piece_of("1a", "A", (1, 1, 79, 6), (12, 0.125))
    (board,) = saw_boards(
        job_of(board_of("A", width=5.25), surfaces=(GABLE,)), whole(layout_of(piece, surface="gable"))
    )
    kinds = [cut.kind for cut in board.cuts]
    assert kinds == [CutKind.RIP, CutKind.RIP, CutKind.ANGLED, CutKind.ANGLED]
    assert board.cuts[-1].yields == ("1a",)
    assert {(cut.at_nm / INCH, cut.other_at_nm / INCH) for cut in board.cuts[2:]} == {(12, 17), (90, 85)}


def test_angled_end_never_runs_into_an_offcut() -> None:
    """Where an offcut worth keeping lies behind the end, it is cut square first."""
    piece = piece_of("1a", "A", (10, 10, 70, 15), (0.5, 0.125))
    (board,) = saw_boards(
        job_of(board_of("A", width=5.25), surfaces=(GABLE,)), whole(layout_of(piece, surface="gable"))
    )
    assert [offcut.along_from_nm / INCH for offcut in board.offcuts] == [60.625]
    assert [cut.kind for cut in board.cuts].count(CutKind.CROSSCUT) == 1
    assert [cut.kind for cut in board.cuts].count(CutKind.ANGLED) == 2


def test_offcut_is_given_up_when_the_saws_must_go_through_it() -> None:
    """A board too wide for the crosscut saw is ripped over its whole length, and so is what is left of it."""
    saws = (
        Saw(name="crosscut saw", cuts=SawKind.CROSSCUT, capacity_nm=6 * INCH),
        Saw(name="table saw", cuts=SawKind.RIP, capacity_nm=24 * INCH),
    )
    piece = piece_of("1a", "A", (0, 0, 60, 5), (0.5, 0.125))
    (board,) = saw_boards(job_of(board_of("A"), saws=saws), whole(layout_of(piece)))
    assert board.cuts[0].kind is CutKind.RIP
    left = {(offcut.across_from_nm / INCH, offcut.across_to_nm / INCH) for offcut in board.offcuts}
    assert left == {(0.125, 5.125), (5.25, 7.875)}


def test_saws_too_small_are_left_to_the_checker() -> None:
    """Paper is printed for what the checker passes; a cut list is derived even where a saw is too small."""
    saws = (Saw(name="crosscut saw", cuts=SawKind.CROSSCUT, capacity_nm=2 * INCH),)
    piece = piece_of("1a", "A", (0, 0, 60, 5), (0.5, 0.125))
    job = job_of(board_of("A"), saws=saws)
    assert count_cuts(saw_boards(job, whole(layout_of(piece)))) == 4


def test_pieces_that_no_straight_cut_frees_are_refused() -> None:
    """A pinwheel is told with its board and what to do."""
    pinwheel = (
        piece_of("1a", "A", (0, 0, 50, 2), (1, 1)),
        piece_of("2a", "A", (0, 2, 30, 6), (51.5, 1)),
        piece_of("3a", "A", (0, 6, 50, 8), (31.5, 5.25)),
        piece_of("4a", "A", (0, 8, 30, 12), (1, 3.25)),
        piece_of("5a", "A", (0, 12, 18, 13), (32, 3.5)),
    )
    with pytest.raises(NoOrderOfCutsError, match="board A: no order of straight cuts"):
        saw_boards(job_of(board_of("A")), whole(layout_of(*pinwheel)))


def test_board_hung_as_found_has_no_cuts() -> None:
    """A milled board of just the right length goes on the list with nothing to do."""
    rules = Rules(expansion_gap_nm=0, straight_edge_loss_nm=0, end_trim_nm=0)
    board = Board(
        id="A", length_nm=90 * INCH, width_start_nm=8 * INCH, width_end_nm=8 * INCH, thickness_nm=INCH
    )
    job = Job(
        name="test", tape=TapeStyle(system=System.IMPERIAL), surfaces=(WALL,), boards=(board,), rules=rules
    )
    (cuts,) = saw_boards(job, whole(layout_of(piece_of("1a", "A", (0, 0, 90, 8), (0, 0)))))
    assert (cuts.cuts, cuts.piece_labels, cuts.offcuts) == ((), ("1a",), ())
