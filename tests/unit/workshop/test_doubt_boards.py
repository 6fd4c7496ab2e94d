"""Rows of a tally that look like slips of the pen."""

from plankwright.measure import FOOT, INCH, Nm, System, TapeStyle
from plankwright.model import Board, Face, Flaw, Severity
from plankwright.workshop.doubt_boards import doubt_boards

IMPERIAL = TapeStyle(system=System.IMPERIAL)


def board(
    name: str = "A",
    *,
    length: Nm = 8 * FOOT,
    width: Nm = 5 * INCH,
    end: Nm | None = None,
    thickness: Nm = 3 * INCH // 4,
    flaws: tuple[Flaw, ...] = (),
    lot: str = "",
) -> Board:
    """Give a board that nobody would doubt, unless told otherwise."""
    return Board(
        id=name,
        length_nm=length,
        width_start_nm=width,
        width_end_nm=width if end is None else end,
        thickness_nm=thickness,
        flaws=flaws,
        lot=lot,
    )


def flaw(
    start: int, end: int, what: str, *, severity: Severity = Severity.LOST, face: Face | None = None
) -> Flaw:
    """Give a flaw with positions in inches."""
    return Flaw(start_nm=start * INCH, end_nm=end * INCH, what=what, severity=severity, face=face)


def reasons(*boards: Board) -> list[str]:
    """Give why boards are doubted, without which."""
    return [doubt.why for doubt in doubt_boards(boards, IMPERIAL)]


def test_an_ordinary_board_is_not_doubted() -> None:
    """A doubt that comes up on every board would be read by nobody."""
    assert reasons(board()) == []


def test_a_very_short_or_very_long_board_is_doubted() -> None:
    """An inch mark for a foot mark, or the other way round."""
    assert reasons(board(length=8 * INCH)) == ['only 8" long: is the unit right?']
    assert reasons(board(length=96 * FOOT)) == ["96' 0\" long: is the unit right?"]


def test_a_very_wide_board_is_doubted() -> None:
    """No common board is over two feet wide."""
    assert reasons(board(width=25 * INCH)) == ["2' 1\" wide: is the unit right?"]


def test_a_board_as_thick_as_wide_is_doubted() -> None:
    """Width and thickness are easily swapped in a row."""
    assert reasons(board(width=INCH, thickness=5 * INCH)) == [
        'as thick as it is wide or thicker (5"): are width and thickness swapped?'
    ]


def test_a_strong_taper_is_doubted() -> None:
    """A third of the width lost from end to end is asked about; less is not."""
    assert reasons(board(width=6 * INCH, end=4 * INCH)) == [
        '6" wide at one end and 4" at the other: is that so?'
    ]
    assert reasons(board(width=6 * INCH, end=5 * INCH)) == []


def test_a_board_twice_as_thick_as_its_lot_is_doubted() -> None:
    """Boards of a lot are alike; so is the pile when there are no lots."""
    alike = [board(f"B{count}", lot="hall") for count in range(3)]
    assert reasons(*alike, board("A", thickness=3 * INCH // 2, lot="hall")) == [
        '1-1/2" thick, where lot hall is mostly 3/4": is that so?'
    ]
    assert reasons(*alike, board("A", thickness=3 * INCH // 2, lot="stage")) == []
    assert reasons(board("A"), board("B"), board("C", thickness=INCH // 4)) == [
        '1/4" thick, where the pile is mostly 3/4": is that so?'
    ]


def test_overlapping_flaws_of_one_kind_are_doubted() -> None:
    """Two lost stretches cannot lie in one place, a blemish may lie beside rot or on the other face."""
    assert reasons(board(flaws=(flaw(20, 30, "split"), flaw(10, 24, "rot")))) == [
        "its flaws rot and split overlap: are their positions right?"
    ]
    stain = flaw(10, 24, "stain", severity=Severity.BLEMISH, face=Face.FRONT)
    paint = flaw(20, 30, "paint", severity=Severity.BLEMISH, face=Face.BACK)
    assert reasons(board(flaws=(stain, paint, flaw(20, 22, "hole")))) == []


def test_doubts_name_their_board_in_the_order_of_the_tally() -> None:
    """So that one walk along the pile settles them."""
    found = doubt_boards((board("B", length=8 * INCH), board("C"), board("A", width=25 * INCH)), IMPERIAL)
    assert [doubt.board_id for doubt in found] == ["B", "A"]
