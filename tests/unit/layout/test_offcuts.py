"""What is left of a board is counted the same way everywhere, to the last nanometre."""

from plankwright.layout.offcuts import offcuts, wood_spent_nm2
from plankwright.measure import INCH, System, TapeStyle
from plankwright.model import (
    Board,
    EdgeKind,
    EdgeProfile,
    Flaw,
    Framing,
    Job,
    Offcut,
    Piece,
    Rectangle,
    Rules,
    Severity,
    Surface,
)

SQUARE = EdgeProfile()
RULES = Rules(
    crosscut_kerf_nm=INCH // 8,
    rip_kerf_nm=INCH // 8,
    straight_edge_loss_nm=INCH // 8,
    end_trim_nm=INCH // 2,
    shortest_piece_nm=16 * INCH,
    narrowest_course_nm=2 * INCH,
)


def board_of(
    width: int = 8,
    end: int = 8,
    profile: EdgeProfile = SQUARE,
    flaws: tuple[Flaw, ...] = (),
) -> Board:
    """Give a board 100 in long; widths in inches."""
    return Board(
        id="B",
        length_nm=100 * INCH,
        width_start_nm=width * INCH,
        width_end_nm=end * INCH,
        thickness_nm=INCH,
        profile=profile,
        flaws=flaws,
    )


def piece_of(start: float, end: float, near: float, far: float) -> Piece:
    """Give a piece by where it lies on the board; inches."""
    along_from, along_to, across_from, across_to = (round(place * INCH) for place in (start, end, near, far))
    return Piece(
        label=f"{start}-{near}",
        board_id="B",
        place=Rectangle(left=0, bottom=0, right=along_to - along_from, top=across_to - across_from),
        along_from_nm=along_from,
        along_to_nm=along_to,
        across_from_nm=across_from,
        across_to_nm=across_to,
    )


def job_of(*boards: Board, rules: Rules = RULES) -> Job:
    """Give a job on solid backing."""
    outline = ((0, 0), (100 * INCH, 0), (100 * INCH, 100 * INCH), (0, 100 * INCH))
    wall = Surface(id="wall", outline=outline, framing=Framing(solid=True))
    return Job(
        name="test", tape=TapeStyle(system=System.IMPERIAL), surfaces=(wall,), boards=boards, rules=rules
    )


def left_of(board: Board, *pieces: Piece, rules: Rules = RULES) -> list[tuple[float, float, float, float]]:
    """Give the offcuts in inches: along from and to, across from and to."""
    return [in_inches(offcut) for offcut in offcuts(job_of(board, rules=rules), board, pieces)]


def in_inches(offcut: Offcut) -> tuple[float, float, float, float]:
    """Give where an offcut lay."""
    return (
        offcut.along_from_nm / INCH,
        offcut.along_to_nm / INCH,
        offcut.across_from_nm / INCH,
        offcut.across_to_nm / INCH,
    )


def test_rest_of_the_length_is_left_behind_a_kerf() -> None:
    """Behind a piece a kerf is lost, at the end the trim, at the edges the straightening."""
    left = left_of(board_of(), piece_of(0.5, 50, 0.125, 7.875))
    assert left == [(50.125, 99.5, 0.125, 7.875)]


def test_kerf_is_lost_on_both_sides_between_pieces() -> None:
    """Between two pieces a kerf is lost at each."""
    left = left_of(board_of(), piece_of(0.5, 30, 0.125, 7.875), piece_of(60, 99.5, 0.125, 7.875))
    assert left == [(30.125, 59.875, 0.125, 7.875)]


def test_strip_beside_a_piece_is_left() -> None:
    """Beside a piece a strip over its length is left behind a rip kerf."""
    left = left_of(board_of(), piece_of(0.5, 99.5, 0.125, 5.125))
    assert left == [(0.5, 99.5, 5.25, 7.875)]


def test_strip_beside_pieces_that_overlap_runs_past_all_of_them() -> None:
    """Pieces beside each other leave one strip beside the widest of them."""
    left = left_of(board_of(), piece_of(0.5, 40, 0.125, 3), piece_of(20, 60, 3.125, 5))
    assert left == [(0.5, 60, 5.125, 7.875), (60.125, 99.5, 0.125, 7.875)]


def test_pieces_a_kerf_apart_leave_one_strip() -> None:
    """Beside pieces end to end, with only a kerf between them, the strip is ripped off in one length."""
    left = left_of(board_of(), piece_of(0.5, 40, 0.125, 3), piece_of(40.125, 99.5, 0.125, 5))
    assert left == [(0.5, 99.5, 5.125, 7.875)]


def test_pieces_farther_apart_leave_a_strip_each() -> None:
    """Pieces more than a kerf apart are parted first, and each leaves its own strip."""
    left = left_of(board_of(), piece_of(0.5, 40, 0.125, 3), piece_of(40.25, 99.5, 0.125, 5))
    assert left == [(0.5, 40, 3.125, 7.875), (40.25, 99.5, 5.125, 7.875)]


def test_short_or_narrow_rest_is_scrap() -> None:
    """What is shorter than the shortest piece or narrower than the narrowest course is not kept."""
    just_too_narrow = piece_of(0.5, 83.4375, 0.125, 5.8125)
    just_too_short = 99.5 - 83.4375 - 0.125
    assert just_too_short < 16
    assert left_of(board_of(), just_too_narrow) == []


def test_rest_of_just_the_limits_is_kept() -> None:
    """What just has the length of the shortest piece and the width of the narrowest course is kept."""
    left = left_of(board_of(), piece_of(0.5, 83.375, 0.125, 5.75))
    assert left == [(0.5, 83.375, 5.875, 7.875), (83.5, 99.5, 0.125, 7.875)]


def test_lost_flaw_parts_the_rest() -> None:
    """No offcut reaches into rot, and a blemish is no reason to part one."""
    rot = Flaw(start_nm=60 * INCH, end_nm=70 * INCH, what="rot", severity=Severity.LOST)
    stain = Flaw(start_nm=75 * INCH, end_nm=76 * INCH, what="stain", severity=Severity.BLEMISH)
    left = left_of(board_of(flaws=(rot, stain)), piece_of(0.5, 30, 0.125, 7.875))
    assert left == [(30.125, 60, 0.125, 7.875), (70, 99.5, 0.125, 7.875)]


def test_rot_at_the_ends_takes_the_place_of_the_trim() -> None:
    """Rot that reaches beyond the end trims leaves what lies between; rot from end to end leaves nothing."""
    ends = (
        Flaw(start_nm=0, end_nm=20 * INCH, what="rot", severity=Severity.LOST),
        Flaw(start_nm=90 * INCH, end_nm=100 * INCH, what="rot", severity=Severity.LOST),
    )
    piece = piece_of(20, 50, 0.125, 7.875)
    assert left_of(board_of(flaws=ends), piece) == [(50.125, 90, 0.125, 7.875)]
    throughout = (Flaw(start_nm=0, end_nm=100 * INCH, what="rot", severity=Severity.LOST),)
    assert left_of(board_of(flaws=throughout)) == []


def test_taper_counts_with_its_narrowest_width() -> None:
    """A rest of a tapered board is as wide as it is where it is narrowest, rounded down."""
    board = board_of(width=8, end=6)
    (offcut,) = offcuts(job_of(board), board, [piece_of(0.5, 50, 0.125, 6.875)])
    at_its_end = 8 * INCH - (2 * INCH * 995 + 999) // 1000
    assert offcut.across_to_nm == at_its_end - INCH // 8


def test_milled_edges_are_not_straightened() -> None:
    """A tongue-and-groove board keeps its edges."""
    profile = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=INCH // 4)
    left = left_of(board_of(profile=profile), piece_of(0.5, 50, 0, 8))
    assert left == [(50.125, 99.5, 0, 8)]


def test_wood_spent_counts_only_boards_cut_into() -> None:
    """A board that stays whole costs nothing; one cut into costs its face less what is worth keeping."""
    whole = Board(id="whole", length_nm=90 * INCH, width_start_nm=INCH, width_end_nm=INCH, thickness_nm=INCH)
    board = board_of()
    spent = wood_spent_nm2(job_of(board, whole), [piece_of(0.5, 50, 0.125, 7.875)])
    assert spent * 64 == (100 * 8 * 64 - 395 * 62) * INCH**2  # 49-3/8 in x 7-3/4 in is kept


def test_boards_of_several_surfaces_are_counted_together() -> None:
    """Pieces of one board count as one board, whichever surface they hang on."""
    board = board_of()
    pieces = [piece_of(0.5, 50, 0.125, 7.875), piece_of(50.125, 99.5, 0.125, 7.875)]
    assert wood_spent_nm2(job_of(board), pieces) == board.face_area_nm2
