"""Where blemishes come to hang, worked out by hand for pieces hung every way."""

from dataclasses import replace

import pytest

from builders import board, course, flaw, job, nm, opening, piece, rectangle, surface_layout, wall
from plankwright.check.blemishes import check_blemishes
from plankwright.check.case import open_surface
from plankwright.model import (
    BlemishPolicy,
    ConcealedZone,
    Direction,
    Edge,
    EdgeTrim,
    Face,
    Flaw,
    Rectangle,
    Rules,
    Severity,
    Surface,
)
from spoil.walls import plain

ROW, RUN = (0.25, 5.25), (10, 50)


def showing(
    stain: Flaw,
    surface: Surface,
    *,
    turned: bool = False,
    face: Face = Face.FRONT,
    rules: Rules | None = None,
) -> list[int | None]:
    """Give how much of a stain shows on a piece from 10 to 50 along, cut from 20 to 60 of its board."""
    hung = piece(surface, "1a A", RUN, ROW, at=(20, 0.125), turned=turned, face=face)
    work = job(surface, [board("A", 90, 6, flaws=(stain,))], rules)
    case = open_surface(work, surface_layout(surface, course(1, ROW, hung)))
    return [finding.measured for finding in check_blemishes(case)]


def stain(start: float, end: float, face: Face | None = None) -> Flaw:
    """Make a stain."""
    return flaw(start, end, Severity.BLEMISH, face=face)


def behind(place: Rectangle, **more: object) -> Surface:
    """Make a wall with a bench in front of a place."""
    return wall(96.5, 5.5, concealed=(ConcealedZone(id="bench", place=place),), **more)


@pytest.mark.parametrize(
    ("turned", "left", "right"), [(False, 15, 18), (True, 42, 45)], ids=["as it lies", "turned"]
)
def test_a_stain_hangs_where_its_end_of_the_board_does(*, turned: bool, left: float, right: float) -> None:
    """From 25 to 28 of the board is 15 to 18 of the wall, and with the marked end at the right 42 to 45."""
    exact, beside = rectangle(left, 0, right, 6), rectangle(left + 1, 0, right + 1, 6)
    assert showing(stain(25, 28), behind(exact), turned=turned) == []
    assert showing(stain(25, 28), behind(beside), turned=turned) == [pytest.approx(nm(1))]


@pytest.mark.parametrize(
    ("start", "turned", "low", "high"),
    [
        (Edge.RIGHT, False, 15, 18),
        (Edge.RIGHT, True, 42, 45),
        (Edge.LEFT, False, 42, 45),
        (Edge.LEFT, True, 15, 18),
    ],
)
def test_a_stain_on_an_upright_piece_hangs_by_its_end_too(
    *, start: Edge, turned: bool, low: float, high: float
) -> None:
    """With its reference edge at the right and its front showing, a board stands on its marked end."""
    for shift, shows in ((0, []), (-1, [pytest.approx(nm(1))])):
        bench = ConcealedZone(id="bench", place=rectangle(0, low + shift, 6, high + shift))
        surface = wall(5.5, 96.5, courses_run=Direction.VERTICAL, start=start, concealed=(bench,))
        assert showing(stain(25, 28), surface, turned=turned) == shows


@pytest.mark.parametrize(
    ("stained", "hung", "shows"),
    [
        (None, Face.FRONT, True),
        (None, Face.BACK, True),
        (Face.FRONT, Face.FRONT, True),
        (Face.FRONT, Face.BACK, False),
        (Face.BACK, Face.BACK, True),
        (Face.BACK, Face.FRONT, False),
    ],
)
def test_a_stain_shows_on_its_face(stained: Face | None, hung: Face, *, shows: bool) -> None:
    """A stain on the face turned to the wall does not show; one on both always does."""
    assert bool(showing(stain(25, 28, stained), wall(96.5, 5.5), face=hung)) is shows


def test_only_what_is_hung_shows() -> None:
    """A stain that is sawn off does not show, of one that reaches over the end only the rest."""
    assert showing(stain(10, 20), wall(96.5, 5.5)) == []
    assert showing(stain(10, 22), wall(96.5, 5.5)) == [nm(2)]


def test_trim_and_openings_hide_stains() -> None:
    """Behind trim over the whole course, or cut away by a window, nothing of a stain shows."""
    assert showing(stain(25, 28), wall(96.5, 5.5, trim=EdgeTrim(bottom=nm(5.5)))) == []
    assert showing(stain(25, 28), wall(96.5, 5.5, trim=EdgeTrim(bottom=nm(3)))) == [nm(3)]
    assert showing(stain(25, 28), wall(96.5, 5.5, openings=(opening("window", 14, 0, 19, 5.5),))) == []


def test_two_fixtures_side_by_side_hide_a_stain_together() -> None:
    """Unlike a joint, a stain may lie half behind one fixture and half behind the next."""
    zones = tuple(
        ConcealedZone(id=name, place=rectangle(left, 0, left + 2, 6)) for name, left in (("a", 14), ("b", 16))
    )
    assert showing(stain(25, 28), wall(96.5, 5.5, concealed=zones)) == []
    assert showing(stain(25, 28), wall(96.5, 5.5, concealed=zones[:1])) == [nm(2)]


def test_where_blemishes_may_hang_anywhere_none_is_found() -> None:
    """The rules may let blemishes show."""
    anywhere = Rules(blemishes=BlemishPolicy.ANYWHERE)
    assert showing(stain(25, 28), wall(96.5, 5.5), rules=anywhere) == []


def test_rot_is_no_blemish_and_an_unknown_board_has_none() -> None:
    """Lost wood is another rule's, and of a board that nobody has nothing is known."""
    assert showing(flaw(25, 28), wall(96.5, 5.5)) == []
    work, laid = plain()
    case = open_surface(replace(work, boards=()), laid.surfaces[0])
    assert list(check_blemishes(case)) == []
