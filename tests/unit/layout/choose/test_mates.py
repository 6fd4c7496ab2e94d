"""Rule (15): pieces that butt in sight match."""

from typing import Any

import pytest

from builders import board, nm, rectangle, studs, wall
from choosing import can_cover, plain
from plankwright.model import Board, ConcealedZone, EdgeKind, EdgeProfile

IN_PLACE: dict[str, Any] = {"courses": [(0, 6)]}
COUNTED: dict[str, Any] = {"heights": [6], "span": (0, 6, 6)}


def _halves(**of_the_second: Any) -> list[Board]:  # noqa: ANN401 - any field of a board
    return [board("A", 48, 6), board("B", 48, 6, **of_the_second)]


@pytest.mark.parametrize("courses", [IN_PLACE, COUNTED])
@pytest.mark.parametrize(("thickness", "right"), [(0.8125, True), (0.828125, False), (0.6875, True)])
def test_thicknesses_lie_within_the_tolerance(
    thickness: float, courses: dict[str, Any], *, right: bool
) -> None:
    """(15) Three quarters of an inch, and a sixteenth of tolerance either way."""
    rules = plain(thickness_tolerance_nm=nm(0.0625))
    assert can_cover(_halves(thickness_nm=nm(thickness)), rules, **courses) is right


@pytest.mark.parametrize("courses", [IN_PLACE, COUNTED])
@pytest.mark.parametrize(("thinner", "right"), [(0.1875, True), (0.203125, False)])
def test_a_shim_makes_up_for_more(thinner: float, courses: dict[str, Any], *, right: bool) -> None:
    """(15) Shims of an eighth of an inch, and a sixteenth may be left."""
    boards = _halves(thickness_nm=nm(0.75 - thinner))
    assert not can_cover(boards, plain(thickness_tolerance_nm=nm(0.0625)), **courses)
    shims = plain(thickness_tolerance_nm=nm(0.0625), shim_up_to_nm=nm(0.125))
    assert can_cover(boards, shims, **courses) is right


@pytest.mark.parametrize(("thinnest", "right"), [(0.625, True), (0.609375, False)])
def test_shims_add_up_along_a_course(thinnest: float, *, right: bool) -> None:
    """(15) Three pieces, each thinner than the one before by less than a shim of an eighth.

    With 1/32 left at both joints the thinnest may be 1/8 + 2/32 thinner than the thickest.
    """
    boards = [
        board("A", 24, 6, thickness_nm=nm(thinnest)),
        board("B", 24, 6, thickness_nm=nm(0.71875)),
        board("C", 48, 6, thickness_nm=nm(0.8125)),
    ]
    rules = plain(thickness_tolerance_nm=nm(0.03125), shim_up_to_nm=nm(0.125))
    assert can_cover(boards, rules, **IN_PLACE) is right


def test_thicknesses_off_the_grid_are_compared_as_they_are() -> None:
    """(15) 3/4 and 13/16 in are a sixteenth apart, however coarse the steps; a third board is thinner."""
    boards = [*_halves(thickness_nm=nm(0.8125)), board("C", 12, 6, thickness_nm=nm(0.71875))]
    for grid in (1 / 16, 1):
        assert can_cover(boards, plain(thickness_tolerance_nm=nm(0.0625)), grid=grid, **IN_PLACE)
        assert not can_cover(boards, plain(thickness_tolerance_nm=nm(0.046875)), grid=grid, **IN_PLACE)


@pytest.mark.parametrize("courses", [IN_PLACE, COUNTED])
def test_profiles_are_one(courses: dict[str, Any]) -> None:
    """(15) A tongue of three eighths does not butt one of a quarter, nor a square edge."""
    tongue, longer = (
        EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(reach)) for reach in (0.25, 0.375)
    )
    assert not can_cover(_halves(profile=tongue), **courses)
    both = [board("A", 48, 6, profile=tongue), board("B", 48, 6, profile=longer)]
    assert not can_cover(both, **courses)
    assert can_cover([board(name, 48, 6, profile=tongue) for name in "AB"], **courses)


@pytest.mark.parametrize("courses", [IN_PLACE, COUNTED])
def test_a_hidden_joint_takes_any_two(courses: dict[str, Any]) -> None:
    """(15) Behind a bench a thick board with a tongue butts a thin one without."""
    zone = ConcealedZone(id="bench", place=rectangle(40, 0, 60, 6))
    surface = wall(96, 12, concealed=(zone,), framing=studs(24, 48, 72))
    tongue = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
    assert can_cover(_halves(profile=tongue, thickness_nm=nm(1)), surface=surface, **courses)
