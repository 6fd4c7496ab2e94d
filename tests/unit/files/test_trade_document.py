"""What job.toml says of the room, the lots, nails, times and prices, and what can be wrong with it."""

from fractions import Fraction

import pytest

from job_texts import JOB, problems, read
from plankwright.measure import INCH
from plankwright.model import Air, Fastening, Layer, Lot, Paint, Per, Price, Room, Task, Treatment

ROOM = """[room]
dry = { temperature = "68 F", humidity = 25 }
damp = { temperature = "24 °C", humidity = "60 %" }
"""
LOT = '[[lot]]\nname = "stage"\nbuilt = 1894\npaint = "none"\ntreatment = "creosote"\n'
NAILS = '[nails]\nkind = "18 gauge brad"\nbite = "1/2"\n'
TASK = '[[task]]\nname = "pull"\nminutes = 2.5\nper = "board"\n'
PRICE = '[[price]]\nname = "new pine"\ncost = "4.50"\nper = "board foot"\nwaste = 10\n'
BETWEEN = '[[surface.between]]\nwhat = "wallboard"\nthickness = "1/2"\n'


def test_the_air_of_the_room() -> None:
    """Temperatures in either unit, humidity with or without its sign."""
    assert read(JOB + ROOM).room == Room(
        dry=Air(temperature_c=20.0, humidity_pct=25.0), damp=Air(temperature_c=24.0, humidity_pct=60.0)
    )


def test_a_lot() -> None:
    """What is known of it, and only that."""
    assert read(JOB + LOT).lots == (
        Lot(name="stage", built=1894, paint=Paint.NONE, treatment=Treatment.CREOSOTE),
    )
    assert read(JOB + '[[lot]]\nname = "x"\n').lots == (Lot(name="x"),)


def test_nails_as_far_as_they_are_asked_for() -> None:
    """What is left out follows common practice and is not written down as if it was asked for."""
    assert read(JOB + NAILS).fastening == Fastening(kind="18 gauge brad", bite_nm=INCH // 2)
    assert read(JOB).fastening == Fastening()


def test_a_waste_of_nothing_is_not_one_that_was_left_out() -> None:
    """Somebody who writes 0 wants none reckoned."""
    said, left_out = (
        read(JOB + text).prices[0].waste
        for text in (PRICE.replace("10", "0"), PRICE.replace("waste = 10\n", ""))
    )
    assert said == 0
    assert left_out is None


def test_times_and_prices_are_exact() -> None:
    """A number is what it says: 2.5 is five halves, and 4.50 nine."""
    job = read(JOB + TASK + PRICE)
    assert job.tasks == (Task(name="pull", minutes=Fraction(5, 2), per=Per.BOARD),)
    assert job.prices == (
        Price(name="new pine", cost=Fraction(9, 2), per=Per.BOARD_FOOT, waste=Fraction(1, 10)),
    )


def test_what_lies_below_the_boards() -> None:
    """Layers from the framing on, and how thick they are together."""
    (surface,) = read(JOB + BETWEEN + BETWEEN.replace("wallboard", "furring")).surfaces
    assert surface.between == (
        Layer(what="wallboard", thickness_nm=INCH // 2),
        Layer(what="furring", thickness_nm=INCH // 2),
    )
    assert surface.between_nm == INCH


def test_a_framing_that_was_opened() -> None:
    """What wood it is, and that somebody looked inside."""
    (surface,) = read(JOB.replace("spacing = 16", 'wood = "spruce"\nopened = true\nspacing = 16')).surfaces
    assert (surface.framing.wood, surface.framing.opened) == ("spruce", True)


def test_decimal_commas_in_texts() -> None:
    """Where the job says so."""
    text = JOB.replace('units = "inches"', 'units = "inches"\ndecimal_comma = true')
    assert read(text + TASK.replace("2.5", '"2,5"')).tasks[0].minutes == Fraction(5, 2)


@pytest.mark.parametrize(
    ("part", "line", "told"),
    [
        (ROOM.replace('"68 F"', '"68"'), 11, 'temperature must be a temperature with its unit, like "68 F"'),
        (ROOM.replace('"68 F"', "68"), 11, "temperature must be a temperature with its unit"),
        (ROOM.replace('"68 F"', '"680 F"'), 10, "temperature is no temperature of a room"),
        (ROOM.replace("25", "0"), 10, "humidity is no humidity of a room"),
        (ROOM.replace("25", "250"), 11, "humidity must be a number of per cent from 0 to 100"),
        (ROOM.replace("humidity = 25", "h = 25"), 11, "h is not a key that is known here"),
        ("[room]\n", 10, 'dry is missing: add dry = { temperature = "68 F", humidity = 35 }'),
        (LOT.replace("1894", "94"), 12, "built is no year in which a building was built"),
        (LOT.replace('"none"', '"green"'), 13, "paint is “green” but must be unknown, none, lead or"),
        (LOT.replace("creosote", "tar"), 14, "treatment is “tar” but must be none, arsenate"),
        (LOT + "moisture = [8]\n", 15, "moisture needs two readings, like [8, 12]"),
        (LOT + "moisture = [8, 9, 12]\n", 15, "moisture has more than two readings: write it like [8, 12]"),
        (LOT + LOT, 16, "name stage is used for another lot: keep one of them"),
        (NAILS.replace("brad", "pin"), 11, "kind is “18 gauge pin” but must be common nail, box nail"),
        (NAILS.replace("1/2", "0"), 12, "bite must be more than nothing"),
        (TASK.replace("2.5", "0"), 12, "minutes must be more than nothing"),
        (TASK.replace("2.5", "-1"), 12, "minutes must be a number, like 4.50"),
        (TASK.replace('"board"', '"week"'), 13, "per is “week” but must be board, piece, cut, nail"),
        (
            PRICE.replace('"board foot"', '"nail"'),
            13,
            "per is nothing that wood is sold by: write",
        ),
        (PRICE.replace("10", "100"), 14, "waste must be less than 100 %"),
        ("[house]\nbuilt = 19\n", 11, "built is no year in which a building was built"),
        (BETWEEN.replace('"1/2"', "0"), 12, "thickness must be more than nothing"),
        ('[[surface.between]]\nwhat = "x"\n', 10, 'thickness is missing: add thickness = "1/2"'),
    ],
)
def test_what_is_wrong_is_told_on_its_line(part: str, line: int, told: str) -> None:
    """One sentence, where it is and how to mend it."""
    found = problems(JOB + part)
    assert any(at == line and sentence.startswith(told) for at, sentence in found), found
