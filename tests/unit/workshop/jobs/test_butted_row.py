"""Pieces that butt in sight go together if their edges are alike and shims can level their faces."""

from dataclasses import replace

import pytest

from builders import board, job, nm, piece, wall
from in_progress import begun_job, begun_layout
from plankwright.model import EdgeKind, EdgeProfile, Job, Piece, Rules
from plankwright.workshop.jobs.butted_row import pairs_in_sight, shims_between
from porch import porch_job, porch_layout

WALL = wall(96, 6)
PAIRS = (("1a", "1b"), ("1b", "1c"))
RULES = Rules(thickness_tolerance_nm=nm(0.0625), shim_up_to_nm=nm(0.25))


def row(*thick: float, milled: str = "") -> Job:
    """Give boards of some thicknesses, called a, b and c; of those named, the edges are milled."""
    profile = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.25))
    boards = [
        board(name, 97, 6.25, thickness_nm=nm(each), profile=profile if name in milled else EdgeProfile())
        for name, each in zip("abc", thick, strict=False)
    ]
    return job(WALL, boards, RULES)


def pieces(count: int = 3, **shims: float) -> list[Piece]:
    """Give a piece of each board, some of them shimmed."""
    return [
        replace(
            piece(WALL, f"1{name} {name}", (32 * at, 32 * at + 32), (0, 6)), shim_nm=nm(shims.get(name, 0))
        )
        for at, name in enumerate("abc"[:count])
    ]


@pytest.mark.parametrize(
    ("thick", "shims"),
    [
        ((0.75, 0.75, 0.75), (0, 0, 0)),
        ((0.75, 0.8125, 0.75), (0, 0, 0)),
        ((0.75, 0.75, 1.0), (0.125, 0.1875, 0)),
        ((1.0, 0.75, 0.75), (0, 0.1875, 0.125)),
        ((1.0, 0.75, 1.0), (0, 0.1875, 0)),
    ],
)
def test_each_piece_gets_the_thinnest_shim_that_will_do(
    thick: tuple[float, ...], shims: tuple[float, ...]
) -> None:
    """No step may be more than a sixteenth."""
    assert shims_between(row(*thick), pieces(), PAIRS, ()) == dict(
        zip(("1a", "1b", "1c"), map(nm, shims), strict=True)
    )


def test_pieces_that_do_not_go_together_get_none() -> None:
    """Too unequal, or milled otherwise."""
    assert shims_between(row(0.75, 0.75, 1.25), pieces(), PAIRS, ()) is None
    assert shims_between(row(0.75, 0.75, 0.75, milled="b"), pieces(), PAIRS, ()) is None
    assert shims_between(row(0.75, 0.75, 0.75, milled="abc"), pieces(), PAIRS, ()) is not None


def test_what_butts_none_of_the_others_is_not_looked_at() -> None:
    """Here what would be between them is left out."""
    ends = [pieces()[0], pieces()[2]]
    assert shims_between(row(0.75, 0.75, 1.5, milled="c"), ends, PAIRS, ()) == {"1a": 0, "1c": 0}


def test_what_hangs_stays_as_it_is_shimmed() -> None:
    """Others are shimmed up to it, and may be no higher; two that hang both are a fact."""
    assert shims_between(row(0.75, 0.75), pieces(2, a=0.25), PAIRS, {"1a"}) == {
        "1a": nm(0.25),
        "1b": nm(0.1875),
    }
    assert shims_between(row(0.75, 1.0), pieces(2), PAIRS, {"1a"}) is None
    assert shims_between(row(0.75, 1.0), pieces(2), PAIRS, {"1a", "1b"}) == {"1a": 0, "1b": 0}


def test_only_joints_in_sight_count() -> None:
    """Those of the porch are behind its bench; those of the job in progress are not."""
    (porch,) = porch_layout().surfaces
    assert all(not pairs_in_sight(porch_job(), porch, course) for course in porch.courses[:2])
    (laid,) = begun_layout().surfaces
    assert [list(pairs_in_sight(begun_job(), laid, course)) for course in laid.courses] == [
        [],
        [("2a", "2b")],
        [],
        [("4a", "4b")],
    ]
