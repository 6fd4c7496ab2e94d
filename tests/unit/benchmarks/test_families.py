"""Instances with a planted layout: it is right by the checker, and what is said of the family holds."""

from collections import defaultdict
from dataclasses import replace
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

from benchmarks.families import exact, real
from benchmarks.instance import Instance, PlantingError
from benchmarks.job_folder import write_job
from benchmarks.lots import RULES
from benchmarks.registry import FAMILIES
from benchmarks.usable import usable_in_all
from plankwright.check import check_layout, recount
from plankwright.files import read_job
from plankwright.measure import FOOT
from plankwright.model import Board, Piece

SEEDS = (0, 1, 1000, 1001)


@cache
def made(family: str, seed: int) -> Instance:
    """Make an instance once for all tests."""
    instance = FAMILIES[family].instance(seed)
    assert isinstance(instance, Instance)
    return instance


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("family", ["exact", "real"])
def test_the_planted_layout_is_perfect(family: str, seed: int) -> None:
    """The checker finds nothing, nothing is bare, and the score is what the checker counts."""
    instance = made(family, seed)
    assert instance.planted is not None
    assert check_layout(instance.job, instance.planted) == ()
    (surface,) = instance.planted.surfaces
    assert surface.bare == ()
    assert instance.known == (recount(instance.job, surface),)
    assert instance.known[0].bare_nm2 == 0


@pytest.mark.parametrize("family", ["exact", "real"])
def test_a_seed_gives_one_job_and_another_seed_another(family: str) -> None:
    """Down to the order of the boards."""
    assert FAMILIES[family].instance(3) == FAMILIES[family].instance(3)
    assert FAMILIES[family].instance(3).job.boards != FAMILIES[family].instance(4).job.boards


@pytest.mark.parametrize("family", ["exact", "real"])
def test_a_job_folder_reads_back_as_the_job(family: str, tmp_path: Path) -> None:
    """To the nanometre."""
    job = FAMILIES[family].instance(5).job
    write_job(job, tmp_path)
    assert read_job(tmp_path).job == job


def test_a_planted_layout_with_a_fault_is_refused() -> None:
    """A piece that is gone leaves a gap."""
    instance = FAMILIES["exact"].instance(0)
    assert instance.planted is not None
    (surface,) = instance.planted.surfaces
    courses = (replace(surface.courses[0], pieces=()), *surface.courses[1:])
    planted = replace(instance.planted, surfaces=(replace(surface, courses=courses),))
    with pytest.raises(PlantingError, match="exact 0"):
        replace(instance, planted=planted)


def _by_board(instance: Instance) -> dict[str, list[Piece]]:
    assert instance.planted is not None
    pieces: defaultdict[str, list[Piece]] = defaultdict(list)
    for piece in instance.planted.pieces:
        pieces[piece.board_id].append(piece)
    return pieces


def _spare(board: Board, pieces: list[Piece]) -> tuple[int, int]:
    """Give what a board has beyond the farthest piece along and across, trims and straightening aside."""
    rules = exact.RULES
    along = max(piece.along_to_nm for piece in pieces) + rules.end_trim_nm
    across = max(piece.across_to_nm for piece in pieces) + rules.straight_edge_loss_nm
    return board.length_nm - along, board.narrowest_width_nm - across


@pytest.mark.parametrize("seed", SEEDS)
def test_exact_has_nothing_to_spare(seed: int) -> None:
    """Each board is used from end to end and from edge to edge, and only kerfs are lost."""
    instance = made("exact", seed)
    pieces, rules = _by_board(instance), exact.RULES
    assert exact.FEWEST <= len(instance.job.boards) <= exact.MOST
    for board in instance.job.boards:
        mine = pieces[board.id]
        assert _spare(board, mine) == (0, 0)
        clear = (board.length_nm - 2 * rules.end_trim_nm) * (
            board.narrowest_width_nm - 2 * rules.straight_edge_loss_nm
        )
        sawn = sum(piece.place.width_nm * piece.place.height_nm for piece in mine)
        kerf = (len(mine) - 1) * rules.rip_kerf_nm * max(board.narrowest_width_nm, mine[0].place.width_nm)
        assert sawn <= clear <= sawn + kerf


def test_exact_has_boards_with_two_pieces_and_joints_behind_fixtures() -> None:
    """Both along and across a board."""
    boards = [mine for seed in range(10) for mine in _by_board(made("exact", seed)).values()]
    twos = [mine for mine in boards if len(mine) > 1]
    assert any(one.along_from_nm != two.along_from_nm for one, two in twos)
    assert any(one.across_from_nm != two.across_from_nm for one, two in twos)
    assert all(
        instance.known[0].joints_in_sight == 0 for instance in (made("exact", seed) for seed in range(10))
    )


@pytest.mark.parametrize("seed", SEEDS)
def test_real_is_as_it_says(seed: int) -> None:
    """Size, openings, uneven studs, number of boards, and a twenty-fifth of usable area to spare."""
    instance = made("real", seed)
    (wall,) = instance.job.surfaces
    boards, used = instance.job.boards, _by_board(instance)
    assert 16 * FOOT <= wall.width_nm <= 24 * FOOT
    assert 8 * FOOT <= wall.height_nm <= 9 * FOOT
    assert len(wall.openings) in {2, 3}
    centres = [member.centre_nm for member in wall.crossing_members]
    assert len({after - before for before, after in pairwise(centres)}) > 3
    assert real.FEWEST <= len(boards) <= real.MOST
    needed = usable_in_all([board for board in boards if board.id in used], RULES)
    assert usable_in_all(boards, RULES) / needed - 1 == pytest.approx(real.SURPLUS, abs=0.01)


def test_real_boards_are_mostly_short_some_flawed_some_for_two_pieces() -> None:
    """Taken over ten walls."""
    instances = [made("real", seed) for seed in range(10)]
    boards = [(instance, board) for instance in instances for board in instance.job.boards]
    short = [board for instance, board in boards if board.length_nm < instance.job.surfaces[0].width_nm]
    flawed = [board for _, board in boards if board.flaws]
    assert len(short) > 0.9 * len(boards)
    assert len(flawed) / len(boards) == pytest.approx(1 / 3, abs=0.06)
    twos = [mine for instance in instances for mine in _by_board(instance).values() if len(mine) == 2]
    assert sum(one.along_from_nm == two.along_from_nm for one, two in twos) > 20
    assert sum(one.across_from_nm == two.across_from_nm for one, two in twos) > 20
    outlines = {len(instance.job.surfaces[0].outline) for instance in instances}
    assert outlines == {4, 5}, "level and gabled"
