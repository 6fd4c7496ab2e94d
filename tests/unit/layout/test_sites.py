"""Where nails go in."""

import pytest

from builders import nm, rectangle, socket, studs, wall
from choosing import plain
from plankwright.layout.sites import Blocked, nail_room, sites_of
from plankwright.model import Direction, Edge, Framing, FramingMember, KeepOut, Surface

RULES = plain(bearing_nm=nm(0.5), nail_edge_nm=nm(0.5), nail_end_nm=nm(0.25), nail_clearance_nm=nm(1))


def _blocked(surface: Surface) -> dict[float, list[tuple[float, float]]]:
    """Give for each site the stretches that are blocked there. [in]"""
    sites = sites_of(surface, RULES, 0, surface.width_nm)
    return {site.at / nm(1): [(low / nm(1), high / nm(1)) for low, high in site.blocked] for site in sites}


def _pipe(left: float, bottom: float, right: float, top: float) -> KeepOut:
    return KeepOut(id="pipe", place=rectangle(left, bottom, right, top))


def test_each_crossing_member_is_a_site() -> None:
    """A rail along the courses is none."""
    framing = Framing(
        members=(
            *studs(24, 8).members,
            FramingMember(centre_nm=nm(20), width_nm=nm(3.5), runs=Direction.HORIZONTAL),
        )
    )
    assert list(_blocked(wall(96, 96, framing=framing))) == [8, 24]


@pytest.mark.parametrize(("width", "sites"), [(1, [24]), (0.984375, [])])
def test_a_member_bears_both_pieces_of_a_joint(width: float, sites: list[float]) -> None:
    """Half an inch each."""
    assert list(_blocked(wall(96, 96, framing=studs(24, width=width)))) == sites


@pytest.mark.parametrize(("end", "sites"), [(0.625, [24]), (0.75, [])])
def test_a_member_takes_a_nail_beside_the_end_of_both_pieces(end: float, sites: list[float]) -> None:
    """Of the 3/4 inch that a stud gives each, 1/8 is left for the nail; or nothing."""
    rules = plain(nail_end_nm=nm(end))
    assert [site.at / nm(1) for site in sites_of(wall(96, 96, framing=studs(24)), rules, 0, nm(96))] == sites


def test_of_members_that_all_but_coincide_one_is_taken() -> None:
    """Pieces that end 1/32 inch apart butt; those on a doubled stud, an inch and a half apart, do not."""
    surface = wall(96, 96, framing=studs(8, 8.03125, 24, 25.5))
    assert list(_blocked(surface)) == [8, 24, 25.5]


def test_solid_backing_is_looked_at_every_four_inches() -> None:
    """Not at the very ends."""
    assert list(_blocked(wall(20, 96, framing=Framing(solid=True)))) == [4, 8, 12, 16]


@pytest.mark.parametrize(
    ("left", "blocked"),
    [(25, True), (26.484375, True), (26.5, False)],
)
def test_a_pipe_blocks_a_stud_that_a_nail_beside_the_joint_would_be_too_near_it(
    left: float, *, blocked: bool
) -> None:
    """An inch of clearance, and the bearing and the clearance again for nails beside the joint."""
    surface = wall(96, 96, framing=studs(24), keep_outs=(_pipe(left, 10, left + 2, 20),))
    assert _blocked(surface) == {24: [(9, 21)] if blocked else []}


def test_a_socket_blocks_only_itself() -> None:
    """Without clearance."""
    assert _blocked(wall(96, 96, framing=studs(24), cut_outs=(socket(23, 10, 25, 14),))) == {24: [(10, 14)]}


def test_blocked_stretches_are_told_from_the_start_side() -> None:
    """From the top of a wall of 96, in order."""
    surface = wall(
        96, 96, start=Edge.TOP, framing=studs(24), keep_outs=(_pipe(23, 10, 25, 20), _pipe(23, 60, 25, 62))
    )
    assert _blocked(surface) == {24: [(33, 37), (75, 87)]}


@pytest.mark.parametrize(
    ("blocked", "room"),
    [
        ((), (0.5, 5.5)),
        (((2, 3),), (3, 5.5)),
        (((0, 1), (2, 5)), (1, 2)),
        (((0, 3), (1, 5.25)), (5.25, 5.5)),
        (((0, 5.75),), None),
        (((7, 9),), (0.5, 5.5)),
    ],
)
def test_the_widest_room_for_a_nail_is_found(
    blocked: tuple[tuple[float, float], ...], room: tuple[float, float] | None
) -> None:
    """In a strip of six inches, half an inch from its edges."""
    stretches: Blocked = tuple((nm(low), nm(high)) for low, high in blocked)
    found = nail_room(stretches, 0, nm(6), RULES)
    assert found == (None if room is None else tuple(nm(edge) for edge in room))


def test_a_strip_narrower_than_two_edge_distances_takes_no_nail() -> None:
    """A little wider, it takes one in its middle."""
    assert nail_room((), 0, nm(0.875), RULES) is None
    assert nail_room((), 0, nm(1), RULES) is None
    assert nail_room((), 0, nm(1.25), RULES) == (nm(0.5), nm(0.75))
