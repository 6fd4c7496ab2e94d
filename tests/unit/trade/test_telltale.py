"""What a tally tells of a board: insects, and paint."""

from dataclasses import replace

import pytest

from builders import board, job, wall
from plankwright.model import Job, Lot, Paint
from plankwright.trade.readying.telltale import has_insects, paint_of, tells_of_paint


@pytest.mark.parametrize(
    ("note", "met"),
    [("wormy", True), ("wormy, heated in March", False), ("wormy, to be heated", True), ("sound", False)],
)
def test_insects_until_they_were_heated(note: str, met: bool) -> None:  # noqa: FBT001 - what is expected
    """What is still to be heated has them."""
    assert has_insects(board("A", 96, 6, note=note)) is met


def of_lot(paint: Paint | None, note: str) -> Job:
    """Give a job of one board, of a lot of which something is known or nothing."""
    made = job(wall(96, 16), [board("A", 96, 6, lot="floor", note=note)])
    return made if paint is None else replace(made, lots=(Lot(name="floor", paint=paint),))


@pytest.mark.parametrize(
    ("paint", "note", "meant", "told"),
    [
        (None, "", Paint.UNKNOWN, False),
        (None, "white paint", Paint.UNKNOWN, True),
        (Paint.NONE, "", Paint.NONE, False),
        (Paint.NONE, "white paint", Paint.UNKNOWN, True),
        (Paint.UNKNOWN, "", Paint.UNKNOWN, True),
        (Paint.LEAD, "no paint left", Paint.LEAD, True),
        (Paint.NO_LEAD_FOUND, "white paint", Paint.NO_LEAD_FOUND, True),
    ],
)
def test_paint(paint: Paint | None, note: str, meant: Paint, told: bool) -> None:  # noqa: FBT001 - what is expected
    """A board's own words stand against a lot without paint, and against nothing else."""
    made = of_lot(paint, note)
    assert (paint_of(made, made.boards[0]), tells_of_paint(made, made.boards[0])) == (meant, told)
