"""The look of what is written down."""

from dataclasses import replace

import pytest

from builders import board, job, nm, studs, wall
from choosing import plain
from looking import boards, pieced
from plankwright.layout.lay_out import lay_out
from plankwright.layout.look import look_of, milled_of
from plankwright.layout.result import Effort
from plankwright.model import EdgeKind, EdgeProfile, Job, SurfaceLayout

STUDS = studs(*range(0, 97, 8))
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))


def test_what_is_written_down_looks_as_it_was_planned() -> None:
    """Tones, joints, odd boards and seams."""
    dark, light = boards("D", 3, 48, tone="dark"), boards("L", 9, 48, 6.5, tone="light", profile=TONGUE)
    odd = board("O", 48, 6, lot="chapel")
    rows = [[(dark[0], 48), (dark[1], 48)], [(light[0], 40), (light[1], 48)], [(light[2], 48), (odd, 48)]]
    dresser, plan = pieced(wall(96, 18, framing=STUDS), rows, spare=light[3:])
    (laid,) = dresser.layout(plan).surfaces
    look = dresser.look(plan)
    assert all((look.clumped, look.odd, look.loose, look.touching))
    assert look_of(dresser.work, laid) == look


@pytest.mark.parametrize(
    ("width", "across", "whole", "narrower"),
    [
        (5, (0, 5), 1, ()),
        (6, (0, 5), 0, (1,)),
        (6, (1, 6), 0, (1,)),
    ],
)
def test_a_milled_board_is_ripped_when_it_hangs_narrower_than_it_is(
    width: float, across: tuple[float, float], whole: int, narrower: tuple[float, ...]
) -> None:
    """Whichever edge went; square boards do not count."""
    rows = [[(board("M", 96, width, profile=TONGUE), 96)], [(board("S", 96, 7), 96)]]
    dresser, plan = pieced(wall(96, 10, framing=STUDS), rows, height=5)
    (piece,) = plan[0].pieces
    stick = replace(piece.stick, across_from=nm(across[0]), across_to=nm(across[1]))
    plan = (replace(plan[0], pieces=(replace(piece, stick=stick),)), plan[1])
    (laid,) = dresser.layout(plan).surfaces
    found = milled_of(dresser.work, laid)
    assert (found.whole, found.narrower_nm) == (whole, tuple(nm(each) for each in narrower))


def _found(height: float, milled: int, square: int) -> tuple[Job, SurfaceLayout]:
    """Search a wall with milled boards of five inches and square ones of six, in turns in the tally."""
    wood = [board(f"M{n}", 96, 5, profile=TONGUE) for n in range(milled)]
    wood += [board(f"S{n}", 96, 6) for n in range(square)]
    work = job(wall(96, height, framing=STUDS), sorted(wood, key=lambda each: each.id[1]), plain())
    result = lay_out(work, effort=Effort(name="moment", seconds=2.0))
    (laid,) = result.layout.surfaces
    assert not laid.bare
    return work, laid


def test_milled_boards_hang_whole_and_together_where_the_wall_lets_them() -> None:
    """Three of five inches, three of six: two seams interlock, at most two do not."""
    work, laid = _found(33, 3, 3)
    look, milled = look_of(work, laid), milled_of(work, laid)
    assert (milled.whole, milled.narrower_nm) == (3, ())
    assert look.fitted == nm(2 * 96)
    assert nm(96) <= look.loose <= nm(2 * 96)


def test_where_they_must_be_ripped_what_that_leaves_is_counted() -> None:
    """Two boards of five inches for eight: one gives up two inches of its face."""
    work, laid = _found(8, 2, 0)
    milled = milled_of(work, laid)
    assert (milled.whole, milled.narrower_nm) == (1, (nm(2),))
