"""Instances without a planted layout: what is said of the family holds."""

from itertools import islice
from random import Random
from statistics import mean, median

import pytest
import shapely

from benchmarks.area import must_area
from benchmarks.arriving import arriving
from benchmarks.families import pile, yard
from benchmarks.lots import RULES
from benchmarks.registry import FAMILIES
from benchmarks.usable import clear_area, usable_area, usable_in_all
from benchmarks.walls import draw_wall
from builders import board, flaw, nm
from plankwright.check import FindingCode, check_layout, recount
from plankwright.measure import FOOT, INCH
from plankwright.model import Face, Rectangle, Severity

SEEDS = (0, 1, 1000)


def _box(place: Rectangle) -> shapely.Polygon:
    return shapely.box(place.left, place.bottom, place.right, place.top)


@pytest.mark.parametrize("seed", range(12))
def test_walls_make_sense(seed: int) -> None:
    """Openings and fixtures keep apart and within the wall; studs stand in corners and beside openings."""
    wall = draw_wall(Random(seed))  # noqa: S311 - chance, not secrecy
    outline = shapely.Polygon(wall.outline)
    openings, fixtures = (
        [_box(each.place) for each in several] for several in (wall.openings, wall.concealed)
    )
    assert all(outline.contains_properly(each) or each.bounds[1] == 0 for each in openings)
    assert all(outline.covers(each) for each in (*openings, *fixtures))
    assert not any(one.intersects(other) for one in openings for other in openings if one is not other)
    assert not any(one.intersection(other).area > 0 for one in openings for other in fixtures)
    centres = {member.centre_nm for member in wall.crossing_members}
    sides = {
        side for each in wall.openings for side in (each.place.left - 19050000, each.place.right + 19050000)
    }
    assert {19050000, wall.width_nm - 19050000} | sides <= centres


@pytest.mark.parametrize("seed", SEEDS)
def test_short_is_short(seed: int) -> None:
    """By 3 to 10 % of what must be covered, counting every bit of wood that is not lost."""
    job = FAMILIES["short"].instance(seed).job
    held = sum(clear_area(each, job.rules) for each in job.boards)
    assert 0.03 <= 1 - held / must_area(job) <= 0.10
    assert FAMILIES["short"].instance(seed).job == job


@pytest.mark.parametrize("seed", SEEDS)
def test_what_is_left_of_a_short_cover_is_known(seed: int) -> None:
    """The checker has nothing against it, and as much is bare as its boards do not cover."""
    instance = FAMILIES["short"].instance(seed)
    assert instance.planted is not None
    findings = check_layout(instance.job, instance.planted)
    assert {found.code for found in findings} == {FindingCode.LEFT_BARE}
    assert recount(instance.job, instance.planted.surfaces[0]) == instance.known[0]
    assert 0.03 * must_area(instance.job) < instance.known[0].bare_nm2 < 0.3 * must_area(instance.job)


def test_clear_wood_is_more_than_usable_wood() -> None:
    """A short stretch and a painted one count as clear; a lost one does not."""
    painted = flaw(60, 100.5, severity=Severity.BLEMISH)
    given = board("A", 100.5, 5.25, flaws=(flaw(10.5, 20), painted))
    assert clear_area(given, RULES) == nm(10 + 80) * nm(5)
    assert usable_area(given, RULES) == nm(40) * nm(5)
    assert usable_in_all([given, given], RULES) == 2 * usable_area(given, RULES)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_pile_arrives_in_order(seed: int) -> None:
    """Enough of it in the end, and the first boards are the same however many follow."""
    job = FAMILIES["pile"].instance(seed).job
    assert usable_in_all(job.boards, job.rules) >= pile.MOST_SHARE * must_area(job)
    assert pile.first_boards(job, 10).boards == job.boards[:10]
    assert job == FAMILIES["pile"].instance(seed).job


def test_boards_arrive_as_stated() -> None:
    """Lengths, widths, lots and flaws, over three thousand boards."""
    boards = list(islice(arriving(Random(7)), 3000))  # noqa: S311 - chance, not secrecy
    lengths = [each.length_nm / INCH for each in boards]
    # Mean and median of a triangular distribution, by its formulas, from 30 to 150 with its mode at 66.
    assert mean(lengths) == pytest.approx((30 + 150 + 66) / 3, abs=2)
    assert median(lengths) == pytest.approx(150 - ((150 - 30) * (150 - 66) / 2) ** 0.5, abs=2)
    widths = [each.width_start_nm / INCH for each in boards]
    assert (min(widths), max(widths)) == (3.5, 8)
    assert mean(widths) == pytest.approx(5.75, abs=0.1)
    assert sum(each.lot == "stage" for each in boards) / 3000 == pytest.approx(0.4, abs=0.03)
    flaws = [one for each in boards for one in each.flaws]
    assert len(flaws) / 3000 == pytest.approx(1 / 3, abs=0.03)
    assert {(one.severity, one.face) for one in flaws} == {
        (Severity.LOST, None),
        (Severity.BLEMISH, None),
        (Severity.BLEMISH, Face.FRONT),
        (Severity.BLEMISH, Face.BACK),
    }


def test_a_yard_has_a_hundred_boards_to_a_wall() -> None:
    """With ids that tell nothing, and wood enough by area."""
    job = yard.yard_of(2)(0).job
    assert [surface.id for surface in job.surfaces] == ["wall-1", "wall-2"]
    assert [each.id for each in job.boards] == [f"B{number:04d}" for number in range(1, 201)]
    assert usable_in_all(job.boards, job.rules) > must_area(job)
    assert all(8 * FOOT <= surface.height_nm <= 9 * FOOT for surface in job.surfaces)
    assert job == yard.yard_of(2)(0).job
