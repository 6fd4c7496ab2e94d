"""A board as the cells of a row: what is written is read as just that board."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from any_boards import boards
from builders import board, flaw, nm
from plankwright.errors import BadInputError
from plankwright.files.board_cells import COLUMN_NAMES, cells_of, read_boards
from plankwright.files.notation import Notation
from plankwright.measure import MILLIMETRE, Unit
from plankwright.model import Board, Flaw, Lot, Severity, Treatment

INCHES = Notation(unit=Unit.INCH)
PLAIN = {"id": "F1", "length": "97", "width": "5-1/4", "thickness": "3/4"}


def refused(cells: dict[str, str], notation: Notation = INCHES) -> str:
    """Give what is wrong with a row, in sentences."""
    with pytest.raises(BadInputError) as told:
        read_boards(cells, notation)
    return "\n".join(problem.what for problem in told.value.problems)


@given(boards(), st.sampled_from([*Unit, None]), st.booleans())
def test_a_board_is_read_as_it_was_written(board: Board, unit: Unit | None, comma: bool) -> None:  # noqa: FBT001 - drawn
    """Whatever it is, in every unit and with either decimal mark."""
    notation = Notation(unit=unit, decimal_comma=comma)
    cells = cells_of(board, notation)
    assert tuple(cells) == COLUMN_NAMES
    assert read_boards(cells, notation) == (board,)


def test_cells_that_are_missing_are_empty() -> None:
    """A form sends what it has."""
    assert read_boards(PLAIN, INCHES) == (board("F1", 97, 5.25),)
    assert read_boards({**PLAIN, "lot": " hall ", "colour of a form": "red"}, INCHES)[0].lot == "hall"


def test_several_that_are_alike_get_numbers() -> None:
    """As in a tally."""
    read = read_boards({**PLAIN, "quantity": "3"}, INCHES)
    assert [one.id for one in read] == ["F1-1", "F1-2", "F1-3"]


def test_every_problem_is_told_at_once() -> None:
    """Each in a sentence that says how to mend it."""
    told = refused({**PLAIN, "length": "97 furlongs", "width": "", "edge": "wavy", "quantity": "many"})
    assert "the length “97 furlongs”" in told
    assert "the width is missing: measure it" in told
    assert "the edge is “wavy” but must be" in told
    assert "the quantity is “many” but must be a whole number from 1 to 500" in told


@pytest.mark.parametrize(
    ("cells", "told"),
    [
        ({"length": "4"}, "the board is wider than it is long: swap the width and the length"),
        ({"length": "0"}, "the length is 0"),
        ({"length": "2000 ft"}, "is more than any board has"),
        ({"length": "-3"}, "the length"),
        ({"flaws": "90-99 rot"}, "reaches beyond the end of the board"),
        ({"moisture": "wet"}, "the moisture is “wet”"),
        ({"tongue": "1/4"}, "a square edge has no tongue or lap"),
        ({"edge": "shiplap"}, "the size of the lap is missing"),
        ({"id": "x" * 31}, "is no short mark"),
        ({"id": "ditto"}, "the id is a ditto mark: write it out"),
        ({"quantity": "501"}, "a whole number from 1 to 500"),
        ({"quantity": "9" * 5_000}, "a whole number from 1 to 500"),
    ],
)
def test_what_cannot_be_is_refused(cells: dict[str, str], told: str) -> None:
    """In the words of a tally."""
    assert told in refused({**PLAIN, **cells})


@pytest.mark.parametrize("quantity", ["2", "500"])
def test_numbers_make_no_mark_too_long(quantity: str) -> None:
    """A board that was read must be readable when it was written."""
    name = "x" * 30
    assert "is no short mark" in refused({**PLAIN, "id": name, "quantity": quantity})
    short = name[: -1 - len(quantity)]
    for one in read_boards({**PLAIN, "id": short, "quantity": quantity}, INCHES):
        assert read_boards(cells_of(one, INCHES), INCHES) == (one,)


def test_without_a_unit_every_length_must_name_its_own() -> None:
    """Where the job has none that could be read."""
    assert "the length" in refused(PLAIN, Notation(unit=None))
    cells = {**PLAIN, "length": "97 in", "width": "5-1/4 in", "thickness": "3/4 in"}
    assert read_boards(cells, Notation(unit=None)) == (board("F1", 97, 5.25),)


def test_boards_of_a_treated_lot_are_treated() -> None:
    """Unless somebody says of a board that it is not; both are read again as they were written."""
    lots = (Lot(name="Deck", treatment=Treatment.CREOSOTE),)
    treated, spared = (
        read_boards({**PLAIN, "lot": "deck", "treatment": word}, INCHES, lots)[0] for word in ("", "none")
    )
    assert treated.treatment is Treatment.CREOSOTE
    assert spared.untreated
    for one in (treated, spared):
        assert read_boards(cells_of(one, INCHES), INCHES, lots) == (one,)


@pytest.mark.parametrize(
    "what", ["in bad shape", "M-shaped crack", "m rot", "feet of a ladder", "to end rot"]
)
def test_a_flaw_may_begin_like_a_unit(what: str) -> None:
    """“All in bad shape” must not become a place in inches when it is written from 0 to the end."""
    bad = Flaw(start_nm=0, end_nm=nm(97), what=what, severity=Severity.LOST)
    one = board("F1", 97, 5.25, flaws=(bad,))
    assert read_boards(cells_of(one, INCHES), INCHES) == (one,)


def test_a_treated_board_that_is_lost_besides_keeps_both() -> None:
    """What goes without saying is left out once."""
    cells = {**PLAIN, "treatment": "creosote", "flaws": "all rot"}
    (one,) = read_boards(cells, INCHES)
    assert len(one.flaws) == 2
    assert read_boards(cells_of(one, INCHES), INCHES) == (one,)


@pytest.mark.parametrize("reading", ["12.3456789", "0.00001", "7", "100.125"])
def test_a_meter_is_read_to_the_last_figure(reading: str) -> None:
    """And without an exponent."""
    (one,) = read_boards({**PLAIN, "moisture": reading}, INCHES)
    assert cells_of(one, INCHES)["moisture"] == reading
    assert read_boards(cells_of(one, INCHES), INCHES) == (one,)


def test_lengths_are_written_with_their_unit() -> None:
    """So that they say the same once the job counts in another."""
    one = board("F1", 97, 5.25, flaws=(flaw(0, 3),))
    for unit in Unit:
        notation = Notation(unit=unit)
        assert read_boards(cells_of(one, notation), Notation(unit=Unit.METRE)) == (one,)
    laser = board("F1", 97, 5.25, length_nm=2_500 * MILLIMETRE + 1)
    assert cells_of(laser, INCHES)["length"] == "2500.000001 mm"
