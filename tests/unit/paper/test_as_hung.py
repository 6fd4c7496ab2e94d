"""A piece is told as it is held up: left and right, lower and upper, whichever way its board lies."""

import pytest

from builders import board, box_outline, course, job, nm, piece, studs, surface_layout, wall
from plankwright.layout.hanging import hung_pieces
from plankwright.model import Direction, Edge, EdgeKind, EdgeProfile, EdgeTreatment, Face, Surface
from plankwright.paper.as_hung import AsHung

SQUARE = EdgeProfile()
LEVEL = wall(96, 48)
UPRIGHT = wall(
    48,
    96,
    outline=box_outline(48, 96),
    courses_run=Direction.VERTICAL,
    start=Edge.LEFT,
    framing=studs(8, 40, 72, runs=Direction.HORIZONTAL),
)


def told(
    surface: Surface,
    *,
    turned: bool = False,
    face: Face = Face.FRONT,
    profile: EdgeProfile = SQUARE,
    edges: tuple[EdgeTreatment, EdgeTreatment] = (EdgeTreatment.AS_FOUND, EdgeTreatment.AS_FOUND),
) -> AsHung:
    """Give a piece that hangs from 10 to 70 along and from 6 to 12 across."""
    one = piece(
        surface, "1a B", (10, 70), (6, 12), at=(5, 1), turned=turned, face=face, near=edges[0], far=edges[1]
    )
    wood = board("B", 96, 8, profile=profile)
    whole = job(surface, [wood])
    (hung,) = hung_pieces(whole, surface_layout(surface, course(1, (6, 12), one)))
    return AsHung(surface=surface, piece=one, board=wood, hung=hung, tape=whole.tape)


@pytest.mark.parametrize(
    ("turned", "face", "how"),
    [
        (False, Face.FRONT, "marked end to the left"),
        (True, Face.FRONT, "marked end to the right"),
        (False, Face.BACK, "marked end to the right, back face showing"),
        (True, Face.BACK, "marked end to the left, back face showing"),
    ],
)
def test_level_piece_tells_where_its_marked_end_is(turned: bool, face: Face, how: str) -> None:  # noqa: FBT001
    """On level courses the marked end is left or right; the back is worth a word."""
    assert told(LEVEL, turned=turned, face=face).how == how


@pytest.mark.parametrize(("turned", "how"), [(False, "marked end up"), (True, "marked end down")])
def test_upright_piece_tells_where_its_marked_end_is(turned: bool, how: str) -> None:  # noqa: FBT001
    """With its reference edge at the left and its front showing, a board stands on its other end."""
    assert told(UPRIGHT, turned=turned).how == how


@pytest.mark.parametrize(
    ("surface", "turned", "place"),
    [
        (LEVEL, False, (20, 2)),
        (LEVEL, True, (40, 4)),
        (UPRIGHT, False, (2, 40)),
        (UPRIGHT, True, (4, 20)),
        (wall(96, 48, start=Edge.TOP), False, (40, 4)),
        (wall(96, 48, start=Edge.TOP), True, (20, 2)),
    ],
)
def test_place_on_the_board_is_found_on_the_piece(
    surface: Surface,
    turned: bool,  # noqa: FBT001
    place: tuple[float, float],
) -> None:
    """A place 20 in along and 2 in across the blank is told from the left and from below."""
    assert told(surface, turned=turned).from_corner(nm(25), nm(3)) == (nm(place[0]), nm(place[1]))


def test_edges_are_named_by_where_they_hang() -> None:
    """The near edge is the lower one from the bottom, and the reference edge of a turned piece hangs far."""
    assert told(LEVEL).edges == ("lower", "upper")
    assert told(LEVEL, turned=True).board_edges == ("upper", "lower")
    assert told(UPRIGHT).edges == ("left", "right")


def test_treatments_name_the_edge_and_the_milling() -> None:
    """What is taken off a shiplap board is its lap."""
    edges = (EdgeTreatment.SPLINE, EdgeTreatment.TONGUE_OFF)
    tongue_off = told(LEVEL, edges=edges).treatments(EdgeTreatment.TONGUE_OFF)
    assert tongue_off == ("upper edge tongue ripped off",)
    shiplap = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.25))
    assert told(LEVEL, profile=shiplap, edges=edges).treatments(*EdgeTreatment) == (
        "lower edge loose spline",
        "upper edge lap ripped off",
    )


def test_size_is_length_by_width() -> None:
    """A plain piece has one length; no line breaks inside its numbers."""
    assert told(LEVEL).size == '60" ×\N{NO-BREAK SPACE}6"'
